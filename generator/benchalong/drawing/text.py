"""How much room words and numbers take, without a font at hand.

A page is read in whatever sans serif the device has, so the table is of a wide one: most others set the
same text narrower. Sizes switch between inch and millimetre on the page: room is kept for the wider.
"""

from __future__ import annotations

import functools
import math

from benchalong.ground.lengths import Length
from benchalong.ground.shown import DRILLS, SYSTEMS, Precision, System, shown

HOLE = "ø"
"""Stands before a diameter (ISO 129-1)."""
NUMBER = 14.0
"""Height of numbers, in px on a phone."""
WORD = 12.0
"""Height of words, in px."""

EM: dict[str, float] = {
    letter: width
    for width, letters in {
        0.275: "'",
        0.278: "ijl",
        0.295: "IJ",
        0.318: ",. ·’",
        0.337: "/:;\\|",
        0.352: "f",
        0.361: "-",
        0.39: "()[]",
        0.392: "t",
        0.401: "!",
        0.411: "r",
        0.46: '"',
        0.5: "*_`–",
        0.521: "s",
        0.525: "z",
        0.531: "?",
        0.55: "c",
        0.557: "L",
        0.575: "F",
        0.579: "k",
        0.592: "vxy",
        0.603: "P",
        0.611: "TY",
        0.612: "oø",
        0.613: "a",
        0.615: "e",
        0.632: "E",
        0.634: "hnu",
        0.635: "bdgpqS",
        0.636: "0123456789${}",
        0.656: "K",
        0.684: "AV",
        0.685: "XZ",
        0.686: "B",
        0.695: "R",
        0.698: "C",
        0.732: "U",
        0.748: "N",
        0.752: "H",
        0.77: "D",
        0.775: "G",
        0.78: "&",
        0.787: "OQ",
        0.818: "w",
        0.838: "#+<=>^~≈×",
        0.863: "M",
        0.95: "%",
        0.974: "m",
        0.989: "W",
        1.0: "@",
    }.items()
    for letter in letters
}
"""Advance widths in em, measured on DejaVu Sans."""


@functools.lru_cache(maxsize=4096)
def text_width(text: str, size: float) -> float:
    """In px, each letter rounded up as a screen may; one that isn't in the table counts as a wide one."""
    return float(sum(math.ceil(size * EM.get(letter, 0.9)) for letter in text))


def number_text(length: Length, system: System, precision: Precision) -> str:
    """The number alone, marked when it was rounded, as the page's script does: `2 3/8`, `≈60.3`."""
    one = shown(length, system, precision)
    return f"≈{one.number}" if one.is_rounded else one.number


def as_finely(sign: str, precision: Precision) -> Precision:
    """How finely a size with this sign is shown: a hole's as drills come."""
    return DRILLS if sign == HOLE else precision


@functools.lru_cache(maxsize=4096)
def number_width(length: Length, precision: Precision) -> float:
    """Room for the number in either system, in px."""
    return max(text_width(number_text(length, system, precision), NUMBER) for system in SYSTEMS)


def in_lines(text: str, *, size: float, width: float) -> list[str]:
    """The text broken at spaces so that no line is wider than `width` px (a single long word may be)."""
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and text_width(longer, size) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines
