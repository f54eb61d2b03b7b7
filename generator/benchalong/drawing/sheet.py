"""Writes a drawing as SVG: a few long paths, one for each kind of line, and live text.

Looks only at px. Line widths, dashes and colours are the theme's (`styles/drawing.css`).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

import svgwrite.base
import svgwrite.container
import svgwrite.path
import svgwrite.shapes
import svgwrite.text

from benchalong.drawing.board import Number, Word
from benchalong.drawing.text import HOLE, NUMBER, as_finely, number_text, text_width
from benchalong.ground.lengths import Length
from benchalong.ground.shown import Precision, System

UNIT_WORDS: dict[System, str] = {"inch": "inches", "millimetre": "millimetres"}


@dataclass(frozen=True)
class Plain:
    """How a drawing's numbers are first shown."""

    units: System
    precision: Precision


def svg_root(*, width: float, height: float, alt: str, kind: str) -> Any:
    """An empty `<svg>` with its title, read as one picture."""
    root = svgwrite.container.SVG(debug=False)
    root.attribs.clear()
    root.attribs.update(
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "class": f"drawing {kind}",
            "viewBox": f"0 0 {tidy(width)} {tidy(height)}",
            "role": "img",
        }
    )
    root.set_desc(title=alt)
    return root


def svg_text(root: Any) -> str:
    """The finished element as text, the same bytes for the same drawing."""
    return str(root.tostring())


def add_lines(root: Any, lines: Sequence[Sequence[float]], kind: str, *, at: tuple[float, float]) -> None:
    """All lines of one kind as one path; pieces that meet end to end are drawn through."""
    data = path_data(lines, at=at)
    if data:
        root.add(svgwrite.path.Path(d=data, class_=kind, debug=False))


def path_data(lines: Sequence[Sequence[float]], *, at: tuple[float, float]) -> str:
    """`M x y L x y` in tenths of a px, in the order given."""
    ends = [
        (_tenth(r[0] + at[0]), _tenth(r[1] + at[1]), _tenth(r[2] + at[0]), _tenth(r[3] + at[1]))
        for r in lines
    ]
    said: list[str] = []
    for chain in _chains([((x0, y0), (x1, y1)) for x0, y0, x1, y1 in ends if (x0, y0) != (x1, y1)]):
        (x, y), *rest = chain
        said.append(
            f"M{_tenths(x)} {_tenths(y)}" + "".join(_step(a, b) for a, b in zip(chain, rest, strict=False))
        )
    return "".join(said)


Spot = tuple[int, int]


def _chains(pieces: list[tuple[Spot, Spot]]) -> Iterable[list[Spot]]:
    """Pieces joined end to end, each once."""
    meeting: dict[Spot, list[int]] = {}
    pieces = list(dict.fromkeys((min(piece), max(piece)) for piece in pieces))
    for i, (one, two) in enumerate(pieces):
        meeting.setdefault(one, []).append(i)
        meeting.setdefault(two, []).append(i)
    used = [False] * len(pieces)
    for i, (one, two) in enumerate(pieces):
        if not used[i]:
            used[i] = True
            ahead = _walk(two, pieces, meeting, used)
            behind = _walk(one, pieces, meeting, used)
            yield [*reversed(behind), one, two, *ahead]


def _walk(
    spot: Spot, pieces: list[tuple[Spot, Spot]], meeting: dict[Spot, list[int]], used: list[bool]
) -> list[Spot]:
    steps: list[Spot] = []
    while True:
        onward = next((i for i in meeting[spot] if not used[i]), None)
        if onward is None:
            return steps
        used[onward] = True
        one, two = pieces[onward]
        spot = two if one == spot else one
        steps.append(spot)


def _step(start: Spot, end: Spot) -> str:
    if start[1] == end[1]:
        return f"H{_tenths(end[0])}"
    if start[0] == end[0]:
        return f"V{_tenths(end[1])}"
    return f"L{_tenths(end[0])} {_tenths(end[1])}"


def _tenth(value: float) -> int:
    return round(value * 10)


def _tenths(count: int) -> str:
    whole, rest = divmod(abs(count), 10)
    return f"{'-' if count < 0 else ''}{whole}{f'.{rest}' if rest else ''}"


def tidy(value: float) -> str:
    """A coordinate to a tenth of a px."""
    return _tenths(_tenth(value))


def add_number(root: Any, number: Number, plain: Plain, *, at: tuple[float, float]) -> None:
    """A live size; its sign (ø, R) stands before it as text of its own."""
    x, y = number.spot[0] + at[0], number.spot[1] + at[1]
    turn = _turned(x, y) if number.is_upright else {}
    if number.key:
        add_text(root, number.key, x, y, "key", anchor="middle", **turn)
    elif number.sign:
        left = number.room[0] + at[0]
        add_text(root, number.sign, left, y, "label sign")
        shelf = left + text_width(f"{number.sign} ", NUMBER)
        add_size(root, number.length, plain, shelf, y, anchor="start", sign=number.sign)
    else:
        add_size(root, number.length, plain, x, y, anchor="middle", **turn)


def _turned(x: float, y: float) -> dict[str, str]:
    """So that it is read from the right."""
    return {"transform": f"rotate(-90 {tidy(x)} {tidy(y)})"}


def add_size(
    root: Any,
    length: Length,
    plain: Plain,
    x: float,
    y: float,
    *,
    anchor: str,
    sign: str = "",
    **more: str,
) -> None:
    """A number that the page can show in the other system; a hole's as finely as drills come."""
    add_text(
        root,
        number_text(length, plain.units, as_finely(sign, plain.precision)),
        x,
        y,
        "size bare drill" if sign == HOLE else "size bare",
        anchor=anchor,
        **{"data-mm": str(length), **more},
    )


def add_word(root: Any, word: Word, *, at: tuple[float, float]) -> None:
    x, y = word.spot[0] + at[0], word.spot[1] + at[1]
    add_text(root, word.text, x, y, word.kind, anchor="middle", **(_turned(x, y) if word.is_upright else {}))


def add_text(
    root: Any, text: str, x: float, y: float, kind: str, *, anchor: str = "start", **more: str
) -> Any:
    element = svgwrite.text.Text(text, x=[tidy(x)], y=[tidy(y)], class_=kind, debug=False)
    if anchor != "start":
        element.attribs["text-anchor"] = anchor
    element.attribs.update(more)
    root.add(element)
    return element


def add_unit_note(root: Any, units: System, *, x: float, y: float) -> None:
    """`Sizes in inches`, whose last word the page switches with the numbers."""
    element = add_text(root, "Sizes in ", x, y, "label note")
    span = svgwrite.text.TSpan(UNIT_WORDS[units], debug=False)
    span.attribs["data-unit-word"] = "many"  # svgwrite leaves out attributes without a value
    element.add(span)


def add_symbol(root: Any, *, at: tuple[float, float], is_third: bool) -> None:
    """The sign of the projection: a cut cone from the side, and from its small end (ISO 5456-2)."""
    (x, y), small, large, tall = at, 3.5, 6.5, 14.0
    circles, cone = (x - 12, x + 4) if is_third else (x + 12, x - 18)
    for radius in (small, large):
        root.add(svgwrite.shapes.Circle((tidy(circles), tidy(y)), radius, class_="thin", debug=False))
    corners = [(cone, y - small), (cone + tall, y - large), (cone + tall, y + large), (cone, y + small)]
    add_lines(
        root, [(*a, *b) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)], "thin", at=(0, 0)
    )
    axes = [
        (circles - 9, y, circles + 9, y),
        (circles, y - 9, circles, y + 9),
        (cone - 3, y, cone + tall + 3, y),
    ]
    add_lines(root, axes, "centre", at=(0, 0))
