"""Markdown -> pieces of safe HTML and holes, once, when a note is read.

CommonMark with tables. What the library does: find out what is a list, a link, a code span. What is
done here: live sizes as one more inline rule; links and pictures led to where they may lead; raw HTML
refused; the HTML itself, put together in one pass, since pages may hold no style of its own.
Everything is sanitised once more on the way out, so that a mistake here can't reach a reader.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import TYPE_CHECKING, TypeAlias
from urllib.parse import unquote

from benchalong.ground.marks import Path, Place
from benchalong.ground.prose import Hole, HoleKind, WrittenProse
from benchalong.ground.words import nearest_words
from benchalong.reading.holes import CLOSES, OPENS, closing, escaped, hole, never_closes
from benchalong.reading.tally import Tally

if TYPE_CHECKING:
    import nh3
    from markdown_it import MarkdownIt
    from markdown_it.rules_inline import StateInline
    from markdown_it.token import Token

OWN_PAGE = re.compile(r"(?:step|part|question):[\w-]+\Z")
OUTSIDE = re.compile(r"(?:https?://[^/\s?#]+\S*|mailto:[^@\s]+@[^@\s]+)\Z", re.IGNORECASE)
LINKS = "https://…, http://…, mailto:…, or step:, part: or question: with a name"
NUMBERED = re.compile(f"{OPENS}(\\d+){CLOSES}")
ALIGNED = {
    "text-align:right": ' class="right"',
    "text-align:center": ' class="centre"',
    "text-align:left": "",
}
MOST_HEADING = 6
MOST_COMPLAINTS = 100
"""About one note."""
TAGS = {
    "a", "blockquote", "br", "code", "em", "h3", "h4", "h5", "h6", "hr", "img", "li", "ol", "p", "pre",
    "strong", "table", "tbody", "td", "th", "thead", "tr", "ul",
}  # fmt: skip


def markdown(text: str, path: Path, tally: Tally) -> tuple[WrittenProse, tuple[str, ...]]:
    """The prose of a Markdown text, and the picture files it shows. `path` is where the text stands."""
    if not text.strip():
        return (), ()
    note = _Note(text, path, tally)
    return note.prose(), tuple(dict.fromkeys(note.pictures))


class _Note:
    """One text on its way to HTML."""

    def __init__(self, text: str, path: Path, tally: Tally) -> None:
        self.text = text
        self.path = path
        self.tally = tally
        self.pictures: list[str] = []
        self._holes: list[Hole] = []
        self._out: list[str] = []
        self._line_starts: list[int] = []
        self._found_up_to: dict[int, int] = {}
        self._links = 0
        self._complaints = 0

    def prose(self) -> WrittenProse:
        for token in _parser().parse(self.text, {}):
            if token.type == "inline":
                self._inline(token)
            elif not token.hidden:
                BLOCKS.get(token.type, _tag)(self, token)
        clean = _cleaner().clean("".join(self._out))
        if not self._holes:
            return (clean,) if clean else ()
        pieces = NUMBERED.split(clean)
        pieces[1::2] = [self._holes[int(number)] for number in pieces[1::2]]
        return tuple(piece for piece in pieces if piece)

    def put(self, html: str) -> None:
        self._out.append(html)

    def opens(self, text: str, words: str, block: Token) -> str:
        """A stand-in for a hole that fills an attribute; `words` are how it was typed."""
        kind: HoleKind = "picture" if text.startswith("pictures/") else "link"
        return self._stand_in(Hole(kind, text, self._search(words, block)))

    def line_start(self, line: int) -> int:
        """The first character of a line, both from 0."""
        if not self._line_starts:
            self._line_starts = [0, *(found.end() for found in re.finditer("\n", self.text))]
        return self._line_starts[line] if line < len(self._line_starts) else len(self.text)

    def complain(
        self, block: Token, words: str, message: str, expected: str, meant: tuple[str, ...] = ()
    ) -> None:
        """A problem with some words in a block; not told without end."""
        self._complaints += 1
        if self._complaints > MOST_COMPLAINTS:
            return
        self.tally.add(self._search(words, block), message, expected=expected, meant=meant)

    def _search(self, words: str, block: Token) -> Place:
        """Where the words stand in a block, looked for past those found before; its first line when they
        aren't there as they are."""
        first, last = block.map or (0, 1)
        start, words = self.line_start(first), words.split("\n")[0]
        end = self.line_start(last)
        after = block.meta.get("searched", start)
        found = self.text.find(words, after, end) if words else -1
        block.meta["searched"] = max(after, found)
        return Place(
            self.path, start=max(start, found), end=max(start, found) + (len(words) if found >= 0 else 1)
        )

    def _stand_in(self, filled: Hole) -> str:
        self._holes.append(filled)
        return f"{OPENS}{len(self._holes) - 1}{CLOSES}"

    def _inline(self, block: Token) -> None:
        put = self._out.append
        for token in block.children or ():
            kind = token.type
            if kind == "text":
                put(escaped(token.content))
            elif kind == "softbreak":
                put("\n")
            else:
                INLINES[kind](self, token, block)

    def live(self, token: Token, block: Token) -> None:
        """`(=…)`: token.content is what stands inside, token.meta says where in the block's own text."""
        at = token.meta["at"]
        place = self._place(token.content, at, block)
        if token.meta["open"]:
            never_closes(Place(self.path, start=(place.start or 2) - 2, end=place.start), self.tally)
            return
        filled = hole(token.content, place, self.tally, part="name" if self._links else "part")
        if filled:
            self.put(self._stand_in(filled))

    def link(self, token: Token, block: Token) -> None:
        href, title = str(token.attrs.get("href", "")), str(token.attrs.get("title", ""))
        self._links += 1
        told = f' title="{escaped(title)}"' if title else ""
        self.put(f'<a href="{self._leads(href, block)}"{told}>')

    def link_end(self) -> None:
        self._links -= 1
        self.put("</a>")

    def picture(self, token: Token, block: Token) -> None:
        alt = "".join(_words(token))
        file = unquote(str(token.attrs.get("src", ""))).removeprefix("../")
        if any(child.type == "live" for child in token.children or ()):
            found, expected = "a live size can't stand in what a picture shows", "plain words, without (=…)"
            self.complain(block, f"![{token.content}", found, expected)
        elif not alt.strip():
            found = "this picture has no words for those who can't see it"
            self.complain(block, f"![{token.content}", found, "![what is seen](pictures/…)")
        elif file not in self.tally.pictures:
            meant = nearest_words(file, self.tally.pictures)
            self.complain(
                block, file, f"there is no picture {shortened(file)} in the project", PICTURE_FILES, meant
            )
        else:
            self.pictures.append(file)
            self.put(f'<img src="{self.opens(file, file, block)}" alt="{escaped(alt)}">')

    def _leads(self, href: str, block: Token) -> str:
        if OWN_PAGE.match(href):
            return self.opens(href, href, block)
        if not OUTSIDE.match(href):
            self.complain(block, unquote(href), f"a link may not lead to {shortened(unquote(href))}", LINKS)
            return ""
        return escaped(href)

    def _place(self, inner: str, at: int, block: Token) -> Place:
        """Where a live size stands in the note: searched for in its line, past those found there before."""
        first = (block.map or (0, 1))[0]
        text = block.content
        line = first + text.count("\n", 0, at)
        words = "(=" + inner.split("\n")[0]
        own_start = max(text.rfind("\n", 0, at) + 1, block.meta.get("seen", 0))
        found = self._found_up_to.get(line, self.line_start(line))
        for _ in range(text.count(words, own_start, at) + 1):
            found = max(self.text.find(words, found, self.line_start(line + 1)), found - 2) + 2
        block.meta["seen"] = at + len(words)
        self._found_up_to[line] = found
        return Place(self.path, start=found, end=found + len(inner))


PICTURE_FILES = "a file in the project's folder pictures/: png, jpg, webp or gif"


def shortened(text: str, most: int = 60) -> str:
    return text if len(text) <= most else f"{text[:most]}…"


def _words(token: Token) -> list[str]:
    """The plain words inside a picture's brackets."""
    said: list[str] = []
    for child in token.children or ():
        said.extend(
            _words(child)
            if child.type == "image"
            else [" " if child.type.endswith("break") else child.content]
        )
    return said


_Block: TypeAlias = Callable[[_Note, "Token"], None]
_Inline: TypeAlias = Callable[[_Note, "Token", "Token"], None]


def _tag(note: _Note, token: Token) -> None:
    end = "\n" if token.nesting != 1 else ""
    note.put(f"<{'/' if token.nesting == -1 else ''}{token.tag}>{end}")


def _heading(note: _Note, token: Token) -> None:
    level = min(MOST_HEADING, int(token.tag[1]) + 2)
    note.put(f"<h{level}>" if token.nesting == 1 else f"</h{level}>\n")


def _ordered(note: _Note, token: Token) -> None:
    start = token.attrs.get("start")
    note.put(f'<ol start="{int(start)}">' if start is not None else "<ol>")


def _cell(note: _Note, token: Token) -> None:
    note.put(f"<{token.tag}{ALIGNED.get(str(token.attrs.get('style', '')), '')}>")


def _code(note: _Note, token: Token) -> None:
    note.put(f"<pre><code>{escaped(token.content)}</code></pre>\n")


def _html_block(note: _Note, token: Token) -> None:
    _no_html(note, token, token)


def _no_html(note: _Note, token: Token, block: Token) -> None:
    words = token.content.strip().split("\n")[0]
    if words.startswith("</"):
        return
    note.complain(
        block, words, "HTML is not read in notes", "Markdown; or `code` marks around it, to show it as it is"
    )


BLOCKS: dict[str, _Block] = {
    "heading_open": _heading,
    "heading_close": _heading,
    "ordered_list_open": _ordered,
    "th_open": _cell,
    "td_open": _cell,
    "fence": _code,
    "code_block": _code,
    "html_block": _html_block,
}
"""What isn't simply a tag that opens or closes."""


def _mark_up(html: str) -> _Inline:
    return lambda note, _token, _block: note.put(html)


INLINES: dict[str, _Inline] = {
    "text_special": lambda note, token, _block: note.put(escaped(token.content)),
    "hardbreak": _mark_up("<br>\n"),
    "strong_open": _mark_up("<strong>"),
    "strong_close": _mark_up("</strong>"),
    "em_open": _mark_up("<em>"),
    "em_close": _mark_up("</em>"),
    "code_inline": lambda note, token, _block: note.put(f"<code>{escaped(token.content)}</code>"),
    "link_open": _Note.link,
    "link_close": lambda note, _token, _block: note.link_end(),
    "image": _Note.picture,
    "html_inline": _no_html,
    "live": _Note.live,
}


def _live_rule(state: StateInline, silent: bool) -> bool:
    """An inline rule for `(=…)`. It acts at the `=`, where the library stops, and takes the bracket back."""
    pos, src = state.pos, state.src
    if src[pos] != "=" or not pos or src[pos - 1] != "(" or (not silent and not state.pending.endswith("(")):
        return False
    if state.env.get("told" if not silent else "open"):
        return False
    end = closing(src, pos + 1)
    is_open = end < 0 or end >= state.posMax
    if is_open:
        state.env["open"] = True
        state.env["told"] = not silent
    if not silent:
        state.pending = state.pending[:-1]
        token = state.push("live", "", 0)
        token.content = "" if is_open else src[pos + 1 : end]
        token.meta = {"at": pos - 1, "open": is_open}
    state.pos = pos + 1 if is_open else end + 1
    return True


def _any_link(url: str) -> bool:  # noqa: ARG001
    """Where a link may lead is looked at when it is put out, so that a bad one is told, not printed."""
    return True


@cache
def _parser() -> MarkdownIt:
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark").enable("table")
    parser.inline.ruler.after("text", "live", _live_rule)
    parser.validateLink = _any_link  # type: ignore[method-assign]
    return parser


@cache
def _cleaner() -> nh3.Cleaner:
    import nh3

    return nh3.Cleaner(
        tags=TAGS,
        attributes={"a": {"href", "title"}, "img": {"src", "alt"}, "ol": {"start"}},
        allowed_classes={"td": {"right", "centre"}, "th": {"right", "centre"}},
        url_schemes={"http", "https", "mailto"},
        link_rel=None,
    )
