"""Prose on a page: pieces of HTML that are ready, with live sizes and names put into their holes."""

from __future__ import annotations

import html
import re
from collections.abc import Mapping
from functools import lru_cache

from markupsafe import Markup

from benchalong.ground.prose import Address, Later, LiveNumber, LiveSize, PartName, Prose
from benchalong.ground.put_off import put_off
from benchalong.ground.words import in_sentence
from benchalong.pages.shown import Shows

BLOCK = re.compile(r"</?(?:p|li|ul|ol|dl|dt|dd|h[1-6]|br|hr|blockquote|pre|table|tr|td|th)\b[^>]*>")
BEGINS = re.compile(
    r"""(?:^|[.!?…]["”’')\]]*(?:</[^>]*>)?\s+|<(?:p|li|dt|dd|h[1-6]|br|td|th)\b[^>]*>\s*)"""
    r"""(?:<[^/][^>]*>|["“‘'(\[])*\Z"""
)
"""What stands before the first word of a sentence."""
LOOKED_BACK = 300
"""How many characters of what stands before a name are looked at."""
TAG = re.compile(r"<[^>]*>")
HEADING = re.compile(r"(</?h)([1-6])(?=>)")
EMPTY = Markup("")

AS_HTML, AS_TITLE, AS_WORDS = "html", "title", "words"
"""How prose is filled: a page's own text, without links, or as plain words."""
FOR_PAPER = "paper"
PAGES = {
    "part": "{root}parts/{of}.html",
    "step": "{root}steps/{of}.html",
    "question": "{root}questions.html#question-{of}",
    "picture": "{root}{of}",
}
"""Where things are found on the site; `root` leads from a page back to the site's root."""
PAPER = {**PAGES, "part": "#part-{of}", "step": "#step-{of}"}
"""On paper a part or step is found further down, not on another page."""


class Fills:
    """Fills prose for the pages that stand in one folder, whose way to the site's root is `root`. What is put
    off leaves a hole that says how it is to be filled; `later.py` does so."""

    def __init__(self, shows: Shows, root: str, *, places: Mapping[str, str] = PAGES) -> None:
        self._shows = shows
        self._root = root
        self._places = places
        self._name = FOR_PAPER if places is PAPER else root

    def fill(self, prose: Prose, *, headings: int = 3) -> Markup:
        """Safe HTML; part names lead to their pages. The prose's own headings begin at the level given."""
        if not prose:
            return EMPTY
        text = self._joined(prose, AS_HTML, headings)
        return Markup(levelled(text, headings) if "<h" in text else text)

    def title(self, prose: Prose) -> Markup:
        """The same without links to parts, for what is itself a link or a heading."""
        if not prose:
            return EMPTY
        return Markup(self._joined(prose, AS_TITLE))

    def plain(self, prose: Prose) -> str:
        """Plain text in one line, sizes in the author's system."""
        return plain(self._joined(prose, AS_WORDS))

    def _joined(self, prose: Prose, as_what: str, headings: int = 0) -> str:
        pieces: list[str] = []
        for piece in prose:
            if isinstance(piece, PartName):
                before = "".join(pieces)[-LOOKED_BACK:]
                pieces.append(self._part(piece, before, with_links=as_what == AS_HTML))
            elif isinstance(piece, Later):
                pieces.append(put_off(as_what, self._name, headings, piece.step, *piece.where))
            else:
                pieces.append(piece if isinstance(piece, str) else self._bare(piece))
        return "".join(pieces)

    def _part(self, piece: PartName, before: str, *, with_links: bool) -> str:
        name = html.escape(piece.name if BEGINS.search(before) else in_sentence(piece.name))
        if with_links and piece.leads:
            return f'<a href="{self._place("part", piece.part)}">{name}</a>'
        return name

    def _bare(self, piece: LiveSize | LiveNumber | Address) -> str:
        if isinstance(piece, LiveSize):
            return self._shows.size(piece.length)
        if isinstance(piece, Address):
            return html.escape(self._place(piece.kind, piece.of))
        return html.escape(piece.text)

    def _place(self, kind: str, of: str) -> str:
        return self._places[kind].format(root=self._root, of=of)


def levelled(safe: str, level: int) -> str:
    """The same HTML with its headings moved so that the highest stands at this level: none is left out."""
    levels = [int(found[2]) for found in HEADING.finditer(safe)]
    shift = level - min(levels, default=level)
    return HEADING.sub(lambda found: f"{found[1]}{min(6, int(found[2]) + shift)}", safe)


@lru_cache(maxsize=4096)
def plain(safe: str) -> str:
    """The words of a stretch of HTML, in one line. Kept: a note's are asked for by the search, by the piece's
    own page and by `plan.json`."""
    if "<" in safe:
        safe = TAG.sub("", BLOCK.sub(" ", safe))
    return " ".join(html.unescape(safe).split())
