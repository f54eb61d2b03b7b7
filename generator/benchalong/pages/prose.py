"""Prose on a page: pieces of HTML that are ready, with live sizes and names put into their holes."""

from __future__ import annotations

import html
import re
from collections.abc import Mapping
from functools import lru_cache
from typing import TypeAlias

from markupsafe import Markup

from benchalong.ground.prose import Address, LiveNumber, LiveSize, PartName, Prose
from benchalong.pages.shown import Shows

BLOCK = re.compile(r"</?(?:p|li|ul|ol|dl|dt|dd|h[1-6]|br|hr|blockquote|pre|table|tr|td|th)\b[^>]*>")
TAG = re.compile(r"<[^>]*>")
HEADING = re.compile(r"(</?h)([1-6])(?=>)")
EMPTY = Markup("")


Live: TypeAlias = LiveSize | LiveNumber | PartName | Address

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
    """Fills prose for the pages that stand in one folder, whose way to the site's root is `root`."""

    def __init__(self, shows: Shows, root: str, *, places: Mapping[str, str] = PAGES) -> None:
        self._shows = shows
        self._root = root
        self._places = places

    def fill(self, prose: Prose, *, headings: int = 3) -> Markup:
        """Safe HTML; part names lead to their pages. The prose's own headings begin at the level given."""
        if not prose:
            return EMPTY
        text = "".join([piece if isinstance(piece, str) else self._live(piece) for piece in prose])
        return Markup(levelled(text, headings) if "<h" in text else text)

    def title(self, prose: Prose) -> Markup:
        """The same without links to parts, for what is itself a link or a heading."""
        if not prose:
            return EMPTY
        return Markup("".join([piece if isinstance(piece, str) else self._bare(piece) for piece in prose]))

    def plain(self, prose: Prose) -> str:
        """Plain text in one line, sizes in the author's system."""
        return plain("".join([piece if isinstance(piece, str) else self._bare(piece) for piece in prose]))

    def _live(self, piece: Live) -> str:
        if isinstance(piece, PartName) and piece.leads:
            return f'<a href="{self._place("part", piece.part)}">{html.escape(piece.name)}</a>'
        return self._bare(piece)

    def _bare(self, piece: Live) -> str:
        if isinstance(piece, LiveSize):
            return self._shows.size(piece.length)
        if isinstance(piece, Address):
            return html.escape(self._place(piece.kind, piece.of))
        return html.escape(piece.text if isinstance(piece, LiveNumber) else piece.name)

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
