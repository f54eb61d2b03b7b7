"""Prose on a page: pieces of HTML that are ready, with live sizes and names put into their holes."""

from __future__ import annotations

import html
import re

from markupsafe import Markup

from benchalong.ground.prose import LiveNumber, LiveSize, PartName, Prose
from benchalong.pages.shown import Shows

BLOCK = re.compile(r"</?(?:p|li|ul|ol|dl|dt|dd|h[1-6]|br|hr|blockquote|pre|table|tr|td|th)\b[^>]*>")
TAG = re.compile(r"<[^>]*>")
SPACE = re.compile(r"\s+")
EMPTY = Markup("")


class Fills:
    """Fills prose for the pages that stand in one folder.

    `root` leads from those pages to the site's root; links to parts and pictures need it.
    """

    def __init__(self, shows: Shows, root: str, *, part_link: str = "{root}parts/{part}.html") -> None:
        self._shows = shows
        self._root = root
        self._part_link = part_link

    def fill(self, prose: Prose) -> Markup:
        """Safe HTML; part names lead to their pages."""
        if not prose:
            return EMPTY
        return Markup("".join(piece if isinstance(piece, str) else self._live(piece) for piece in prose))

    def title(self, prose: Prose) -> Markup:
        """The same without links, for what is itself a link or a heading."""
        if not prose:
            return EMPTY
        return Markup("".join(piece if isinstance(piece, str) else self._bare(piece) for piece in prose))

    def plain(self, prose: Prose) -> str:
        """Plain text in one line, sizes in the author's system."""
        return plain("".join(piece if isinstance(piece, str) else self._bare(piece) for piece in prose))

    def _live(self, piece: LiveSize | LiveNumber | PartName) -> str:
        if not isinstance(piece, PartName):
            return self._bare(piece)
        link = self._part_link.format(root=self._root, part=piece.part)
        return f'<a href="{link}">{html.escape(piece.name)}</a>'

    def _bare(self, piece: LiveSize | LiveNumber | PartName) -> str:
        if isinstance(piece, LiveSize):
            return self._shows.size(piece.length)
        return html.escape(piece.text if isinstance(piece, LiveNumber) else piece.name)


def plain(safe: str) -> str:
    """The words of a stretch of HTML, in one line."""
    if "<" in safe:
        safe = TAG.sub("", BLOCK.sub(" ", safe))
    return SPACE.sub(" ", html.unescape(safe)).strip()
