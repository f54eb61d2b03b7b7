"""Whether a style sheet stays at home.

No page of a site asks anything of another machine, so a style sheet names no remote address. Escapes
are undone before looking (`u\\72l(` is `url(` to a browser), comments are skipped. Any quoted text or
`url()` that begins like an address is refused, wherever it stands: there is no honest use for one here.
"""

from __future__ import annotations

import re

from benchalong.publishing.pointing import Pointed, in_text

_ESCAPE = re.compile(r"\\(?:([0-9a-fA-F]{1,6})(?:\r\n|[ \t\r\n\f])?|(\r\n|[\n\r\f])|(.))", re.DOTALL)
_TOKEN = re.compile(
    r"""(?P<comment>/\*.*?(?:\*/|\Z))|(?P<url>\b(?:url|src|image)\(\s*(?P<bare>[^"')\s][^)]*))"""
    r"""|(?P<text>"[^"\n]*"?|'[^'\n]*'?)""",
    re.DOTALL | re.IGNORECASE,
)
_ADDRESS = re.compile(r"[\x00-\x20]*(?:[a-zA-Z][a-zA-Z0-9+.\-]*[\x00-\x20]*:|[/\\]{2})")


def style_problems(file: str, text: str) -> list[Pointed]:
    """Every remote address in a style sheet."""
    plain, places = _unescaped(text)
    found = []
    for token in _TOKEN.finditer(plain):
        address = token["bare"] if token["bare"] is not None else (token["text"] or "").strip("\"'")
        if _ADDRESS.match(address):
            found.append(_remote(file, text, places[token.start()], places[token.end() - 1] + 1, address))
    return found


def _unescaped(text: str) -> tuple[str, list[int]]:
    """The text as a browser reads it, and where each of its characters stood."""
    if "\\" not in text:
        return text, list(range(len(text)))
    pieces: list[str] = []
    places: list[int] = []
    last = 0
    for escape in _ESCAPE.finditer(text):
        pieces.append(text[last : escape.start()])
        places.extend(range(last, escape.start()))
        character = _character(escape)
        pieces.append(character)
        places.extend([escape.start()] * len(character))
        last = escape.end()
    return "".join(pieces) + text[last:], [*places, *range(last, len(text))]


def _character(escape: re.Match[str]) -> str:
    if escape[1]:
        code = int(escape[1], 16)
        return chr(code) if 0 < code < 0x110000 and not 0xD800 <= code < 0xE000 else "\ufffd"
    # An escaped quote must not end the text it stands in; an escaped line break is nothing.
    return "" if escape[2] else ("_" if escape[3] in "\"'" else escape[3])


def _remote(file: str, text: str, start: int, end: int, address: str) -> Pointed:
    mark, line = in_text(file, text, start, end)
    what = (
        "data in the style sheet"
        if address.strip().lower().startswith("data:")
        else "an address outside the site"
    )
    return Pointed(
        mark, line, f"a style names {what}", "a file of the site: pages ask nothing of other machines"
    )
