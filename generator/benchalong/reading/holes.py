"""Live sizes and names in a text: `(=stile)`, `(=door_width - 2*stile)`, `(=part door_rail)`.

They are found the same way in one-line texts and in Markdown; a backslash in front, `\\(=stile)`,
leaves them as typed.
"""

from __future__ import annotations

import re

from benchalong.ground.marks import Path, Place
from benchalong.ground.prose import Hole, HoleKind, WrittenProse
from benchalong.reading.tally import Tally

PART = re.compile(r"part\s+(?=[A-Za-z])")
BRACKET = re.compile(r"[()]")
STRESSED = re.compile(r"(?<![\w*\\])(\*\*?)(?![\s*])([^*]*[^\s*])\1(?![\w*])|(`)([^`]+)`")
OPENS, CLOSES = "\ufdd0", "\ufdd1"
"""Around a hole's number while Markdown is being rendered: two of the characters that the Unicode standard
keeps for a program's own use, and that `text.py` lets in from no file."""


def escaped(text: str) -> str:
    """The text as HTML between tags or inside a quoted attribute."""
    if "&" in text:
        text = text.replace("&", "&amp;")
    if "<" in text or ">" in text:
        text = text.replace("<", "&lt;").replace(">", "&gt;")
    return text.replace('"', "&quot;") if '"' in text else text


def closing(text: str, inside: int) -> int:
    """Where the bracket closes that was opened just before `inside`; -1 when it never does."""
    open_brackets = 1
    for bracket in BRACKET.finditer(text, inside):
        open_brackets += 1 if bracket[0] == "(" else -1
        if not open_brackets:
            return bracket.start()
    return -1


def hole(inner: str, place: Place, tally: Tally, *, part: HoleKind = "part") -> Hole | None:
    """What stands between `(=` and `)`; `place` covers that. None when nothing does (reported)."""
    text = inner.strip()
    if not text:
        tally.add(place, "nothing stands in (=)", expected="a size's name or a formula: (=stile)")
        return None
    begins = (place.start or 0) + len(inner) - len(inner.lstrip())
    leads = PART.match(text)
    if leads:
        text, begins = text[leads.end() :], begins + leads.end()
    return Hole(part if leads else "size", text, Place(place.path, start=begins, end=begins + len(text)))


def never_closes(place: Place, tally: Tally) -> None:
    tally.add(place, "a live size opens here and never closes", expected="a closing bracket: (=stile)")


def one_line(text: str, path: Path, tally: Tally) -> WrittenProse:
    """A text without block structure as safe HTML with holes. Of Markdown it knows `*words*`, `**words**` and
    words in backticks, each without a live size inside; what else looks like Markdown is as typed."""
    if "(=" not in text:
        return (_stressed(escaped(text)),) if text else ()
    pieces = _pieces(text, path, tally)
    return tuple(_stressed(piece) if isinstance(piece, str) else piece for piece in pieces)


def _stressed(safe: str) -> str:
    """Escaped text with its stressed words marked up."""
    return STRESSED.sub(_stress, safe) if "*" in safe or "`" in safe else safe


def _stress(found: re.Match[str]) -> str:
    tag = {"**": "strong", "*": "em", "`": "code"}[found[1] or found[3]]
    return f"<{tag}>{found[2] or found[4]}</{tag}>"


def _pieces(text: str, path: Path, tally: Tally) -> list[str | Hole]:
    pieces: list[str | Hole] = []
    done = seen = 0
    while (opens := text.find("(=", seen)) >= 0:
        seen = opens + 2
        if opens and text[opens - 1] == "\\":
            pieces.append(escaped(text[done : opens - 1]))
            done = opens
            continue
        ends = closing(text, seen)
        if ends < 0:
            never_closes(Place(path, start=opens, end=opens + 2), tally)
            break
        pieces.append(escaped(text[done:opens]))
        live = hole(text[seen:ends], Place(path, start=seen, end=ends), tally)
        pieces.extend([live] if live else [])
        done = seen = ends + 1
    pieces.append(escaped(text[done:]))
    return [piece for piece in pieces if piece]
