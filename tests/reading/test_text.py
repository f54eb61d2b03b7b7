"""Files that aren't plain text are refused where they go wrong; line ends and the like don't matter."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchalong.reading.text import MOST_BYTES, MOST_NOTE_BYTES
from reading.shared import SMALLEST, STEP, messages, read, told

ODD = {
    "utf-16": (SMALLEST.encode("utf-16"), "project.yaml is not saved as UTF-8; it looks like UTF-16"),
    "utf-16 without a mark": (
        SMALLEST.encode("utf-16-le"),
        "project.yaml is not saved as UTF-8; it looks like UTF-16",
    ),
    "latin-1": ("title: Scie à ruban\nunits: inch\n".encode("latin-1"), "the byte E0 is not UTF-8"),
    "cut short": (SMALLEST.encode() + b"about: \xe2\x82", "the byte E2 is not UTF-8"),
    "nul": (SMALLEST.encode() + b"about: a\0b\n", "a character that can't be seen stands here (U+0000)"),
    "escape": (
        SMALLEST.encode() + b"about: \x1b[31m\n",
        "a character that can't be seen stands here (U+001B)",
    ),
    "line separator": (SMALLEST + "about: a\u2028b\n", "a character that can't be seen stands here (U+2028)"),
    "a second byte order mark": (
        SMALLEST + "about: \ufeff\n",
        "a character that can't be seen stands here (U+FEFF)",
    ),
    "a character of our own": (
        SMALLEST + "about: \ufdd00\ufdd1\n",
        "a character that can't be seen stands here (U+FDD0)",
    ),
    "too large": (SMALLEST + "#" * MOST_BYTES, "project.yaml is larger than 1,000,000 bytes"),
}


@pytest.mark.parametrize(("data", "message"), ODD.values(), ids=ODD)
def test_what_is_not_plain_text_is_refused(tmp_path: Path, data: str | bytes, message: str) -> None:
    reading = read(tmp_path, {"project.yaml": data})
    assert messages(reading) == [message]
    assert ("project.yaml",) in reading.unreadable


def test_a_note_has_a_smaller_bound(tmp_path: Path) -> None:
    reading = read(tmp_path, {"project.yaml": SMALLEST, "steps/01-mill.md": STEP + "x" * MOST_NOTE_BYTES})
    assert messages(reading) == ["steps/01-mill.md is larger than 200,000 bytes"]


def test_the_place_of_a_wrong_byte_is_shown(tmp_path: Path) -> None:
    reading = read(tmp_path, {"project.yaml": "units: inch\r\ntitle: Scie à ruban\r\n".encode("latin-1")})
    assert told(reading) == (
        "project.yaml:2:13: the byte E0 is not UTF-8\n"
        "    title: Scie \ufffd ruban\n"
        "                ^\n"
        "  expected plain text in UTF-8, as editors save it by default"
    )


@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("start", ["", "\ufeff"])
def test_line_ends_and_a_byte_order_mark_change_nothing(tmp_path: Path, ends: str, start: str) -> None:
    files = {"project.yaml": SMALLEST, "steps/01-mill.md": STEP + "One.\n\nTwo (=stile).\n"}
    plain = read(tmp_path / "plain", files)
    odd = read(tmp_path / "odd", {name: start + text.replace("\n", ends) for name, text in files.items()})
    assert plain.problems == odd.problems == ()
    assert plain.project == odd.project
