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
import svgwrite.text

from benchalong.drawing.placing import Number, Word
from benchalong.drawing.text import number_text, text_width
from benchalong.ground.lengths import Length
from benchalong.ground.shown import Precision, System
from benchalong.workings.bodies import Floats

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


def add_lines(root: Any, lines: Floats | Sequence[Sequence[float]], kind: str, *, at: tuple[float, float]) -> None:
    """All lines of one kind as one path; pieces that meet end to end are drawn through."""
    data = path_data(lines, at=at)
    if data:
        root.add(svgwrite.path.Path(d=data, class_=kind, debug=False))


def path_data(lines: Floats | Sequence[Sequence[float]], *, at: tuple[float, float]) -> str:
    """`M x y L x y` in tenths of a px, in the order given."""
    rows = lines.tolist() if hasattr(lines, "tolist") else lines
    ends = [(_tenth(r[0] + at[0]), _tenth(r[1] + at[1]), _tenth(r[2] + at[0]), _tenth(r[3] + at[1])) for r in rows]
    said: list[str] = []
    for chain in _chains([((x0, y0), (x1, y1)) for x0, y0, x1, y1 in ends if (x0, y0) != (x1, y1)]):
        (x, y), *rest = chain
        said.append(f"M{_tenths(x)} {_tenths(y)}" + "".join(_step(a, b) for a, b in zip(chain, rest, strict=False)))
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


def _walk(spot: Spot, pieces: list[tuple[Spot, Spot]], meeting: dict[Spot, list[int]], used: list[bool]) -> list[Spot]:
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
    x, y = number.x + at[0], number.y + at[1]
    turn = {"transform": f"rotate(-90 {tidy(x)} {tidy(y)})"} if number.upright else {}
    if number.key:
        add_text(root, number.key, x, y, "key", anchor="middle", **turn)
        return
    if number.sign:
        left = number.room[0] + at[0]
        add_text(root, number.sign, left, y, "label sign")
        add_size(root, number.length, plain, left + text_width(number.sign + " ", 14), y, anchor="start")
        return
    add_size(root, number.length, plain, x, y, anchor="middle", **turn)


def add_size(root: Any, length: Length, plain: Plain, x: float, y: float, *, anchor: str, **more: str) -> None:
    """A number that the page can show in the other system."""
    add_text(
        root,
        number_text(length, plain.units, plain.precision),
        x,
        y,
        "size bare",
        anchor=anchor,
        **{"data-mm": str(length), **more},
    )


def add_word(root: Any, word: Word, *, at: tuple[float, float]) -> None:
    add_text(root, word.text, word.x + at[0], word.y + at[1], word.kind, anchor=word.anchor)


def add_text(root: Any, text: str, x: float, y: float, kind: str, *, anchor: str = "start", **more: str) -> Any:
    element = svgwrite.text.Text(text, x=[tidy(x)], y=[tidy(y)], class_=kind, debug=False)
    if anchor != "start":
        element.attribs["text-anchor"] = anchor
    element.attribs.update(more)
    root.add(element)
    return element
