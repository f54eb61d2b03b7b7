"""Bytes of a file -> text with plain line ends, or a problem that says what is odd about it.

Everything behind this door may rely on it: valid UTF-8, no control characters but tab and line
end, no characters that only computers use among themselves.
"""

from __future__ import annotations

import re

from benchalong.ground.marks import Mark
from benchalong.reading.tally import Source, Tally

MOST_BYTES = 1_000_000
"""In a plan; one of five thousand parts would be less."""
MOST_NOTE_BYTES = 200_000
"""In a note or a thread: a hundred pages."""
MARKS_OF_UTF16 = (b"\xff\xfe", b"\xfe\xff")
ODD = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ufdd0-\ufdef\ufeff\ufffe\uffff]")
"""Control characters, line ends of other kinds, a byte order mark inside, and noncharacters, which the
Unicode standard keeps for a program's own use: `holes.py` uses two of them."""
PLAIN_TEXT = "plain text in UTF-8, as editors save it by default"


def decode(data: bytes, file: str, tally: Tally, *, most: int = MOST_BYTES) -> str | None:
    """The text, its line ends `\\n`, a byte order mark taken off; None when it isn't plain (reported)."""
    if len(data) > most:
        tally.add_file(file, f"{file} is larger than {most:,} bytes", expected="a smaller file")
        return None
    if data[:2] in MARKS_OF_UTF16 or data[:64].count(0) > 1:
        tally.add_file(file, f"{file} is not saved as UTF-8; it looks like UTF-16", expected=PLAIN_TEXT)
        return None
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        _not_utf8(data, error.start, file, tally)
        return None
    return _without_odd(_plain_lines(text), file, tally)


def _plain_lines(text: str) -> str:
    text = text.removeprefix("\ufeff")
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text


def _without_odd(text: str, file: str, tally: Tally) -> str | None:
    odd = ODD.search(text)
    if odd is None:
        return text
    tally.sources.setdefault(file, Source(text))
    tally.unreadable.add((file,))
    tally.add_at(
        _mark(text, odd.start(), file),
        unseen(odd[0]),
        expected=PLAIN_TEXT,
    )
    return None


def unseen(character: str) -> str:
    """What is said of a character that no text may hold."""
    return f"a character that can't be seen stands here (U+{ord(character):04X})"


def _not_utf8(data: bytes, start: int, file: str, tally: Tally) -> None:
    before = _plain_lines(data[:start].decode("utf-8"))
    tally.sources.setdefault(file, Source(_plain_lines(data.decode("utf-8", errors="replace"))))
    tally.unreadable.add((file,))
    tally.add_at(
        _mark(before, len(before), file), f"the byte {data[start]:02X} is not UTF-8", expected=PLAIN_TEXT
    )


def _mark(text: str, at: int, file: str) -> Mark:
    return Mark(file, text.count("\n", 0, at) + 1, at - text.rfind("\n", 0, at))
