"""The piece, or an assembly, as it stands: from front, right and above, every part that shows with its mark.

Parts that stand out (those a step makes or adds) get a heavier outline and pencil strokes, so that they
are told apart without colour. Copies that this view can't show are listed, never drawn as if they showed.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from svgwrite.container import Group
from svgwrite.path import Path
from svgwrite.text import Text

from benchalong.drawing.eye import PIECE_EYE, Eye
from benchalong.drawing.hidden import Standing, Surface, area, joined, seen
from benchalong.drawing.inside import Around, Inside, well_inside
from benchalong.drawing.pencil import pencil_strokes
from benchalong.drawing.picture import PiecePicture
from benchalong.drawing.pointers import PITCH, ROW, TEXT, Frame, Label, Pointed, Side, placed, slots, width_of
from benchalong.drawing.set_marks import set_marks
from benchalong.drawing.shading import Onto, bounds, path_data, shaded
from benchalong.drawing.sheet import svg_root, svg_text
from benchalong.drawing.text import in_lines
from benchalong.drawing.threads import visible_parts
from benchalong.drawing.woods import WOODS
from benchalong.plan.model import PartId
from benchalong.workings.bodies import Floats
from benchalong.workings.copies import Copy
from benchalong.workings.faces import FlatFaces, flat_faces
from benchalong.workings.pose import pose
from benchalong.workings.solids import ShapeId, Solid
from benchalong.workings.triangles import Triangle

WIDTH = 358.0
"""Of every picture of the piece, px."""
TALLEST = 360.0
"""The drawing itself is never taller, px."""
GAP = 12.0
"""Between the drawing and the frame that the leaders start from, px."""
EDGE = 4.0
"""Left free round the picture, px."""
MANY = 24
"""With more marks than this, equal parts share one label."""
ENOUGH = 0.9
"""A copy shows when there is this much room round some point of it, px."""


AMPLE = 14.0
"""More room than this round the point isn't looked for, px."""
LOOKED_AT = 3
"""A mark points at one of so many of a copy's surfaces."""


@dataclass(frozen=True, eq=False)
class Apart:
    """Where copies stand when they are pulled apart."""

    places: Mapping[str, Copy]
    """By mark, instead of the copy's own `at`."""
    units: Mapping[str, str]
    """By mark, what it goes by: its own mark, or that of the assembly it moves with."""
    threads: tuple[Floats, ...]
    """(2, 3), mm in the room: lines to where things go."""
    said: str
    """Who goes which way, in words."""


@dataclass(frozen=True)
class _Shown:
    """One copy that can be pointed at."""

    part: PartId
    mark: str
    inside: Inside


@dataclass(frozen=True)
class _Layout:
    onto: Onto
    height: float
    labels: tuple[Label, ...]


def piece_picture(
    copies: Sequence[Copy],
    solids: Mapping[ShapeId, Solid],
    *,
    names: Mapping[PartId, str],
    title: str = "The piece",
    standing_out: frozenset[str] = frozenset(),
    woods: Mapping[PartId, str] | None = None,
    eye: Eye = PIECE_EYE,
    apart: Apart | None = None,
    triangles: Sequence[Triangle] = (),
) -> PiecePicture:
    """These copies where they stand, `solids` by shape. `standing_out` has marks in full; `woods` one of
    WOODS for each part; `apart` says where they stand when they are pulled apart; of the `triangles` on sets
    those are drawn that show.

    Raises ValueError when there is nothing to draw.
    """
    if apart is not None:
        copies = [apart.places[copy.mark] for copy in copies]
    copies = [copy for copy in copies if not solids[copy.shape].is_empty]
    if not copies:
        raise ValueError("nothing to draw")
    bodies = _standing(copies, solids)
    surfaces = seen(bodies, eye)
    marks = shortened([copy.mark if apart is None else apart.units[copy.mark] for copy in copies])
    shown = _one_each(_shown(copies, marks, surfaces, _widest_scale(surfaces)))
    groups = _groups(shown)
    layout = _layout(surfaces, [(_label_text(group), group[0].inside.point) for group in groups])
    missing = _missing(marks, shown)
    standing = {copy.mark: body for copy, body in zip(copies, bodies, strict=True)}
    on_sets = set_marks(triangles, standing, surfaces, eye=eye, scale=layout.onto.scale)
    notes = _in_lines([*(mark.legend for mark in on_sets), *_notes(missing, groups)])
    height = layout.height + len(notes) * PITCH
    title += apart.said if apart is not None else ""
    alt = _alt(title, [copy for copy in copies if copy.mark in standing_out], names)
    alt = " ".join([alt, *(mark.said for mark in on_sets)])
    stand_out = {number for number, copy in enumerate(copies) if copy.mark in standing_out}
    wood = {number: (woods or {}).get(copy.part, WOODS[0]) for number, copy in enumerate(copies)}
    svg = svg_root(width=WIDTH, height=height, alt=alt, kind="piece")
    _add_surfaces(svg, surfaces, layout.onto, wood, stand_out)
    if apart is not None:
        _add_lines(svg, visible_parts(apart.threads, bodies, surfaces, eye), layout.onto, "thread")
    _add_lines(svg, [line for mark in on_sets for line in mark.lines], layout.onto, "triangle")
    _add_labels(svg, layout.labels)
    _add_notes(svg, notes, layout.height)
    return PiecePicture(
        svg_text(svg),
        alt,
        WIDTH,
        round(height, 1),
        missing,
        tuple(tuple(one.mark for one in group) for group in groups if len(group) > 1),
    )


def shortened(marks: Sequence[str]) -> list[str]:
    """Marks without the assemblies they all have in common: `LD/H`, `LD/P` -> `H`, `P`."""
    split = [mark.split("/") for mark in marks]
    same = 0
    while all(len(parts) > same + 1 for parts in split) and len({parts[same] for parts in split}) == 1:
        same += 1
    return ["/".join(parts[same:]) for parts in split]


def _standing(copies: Sequence[Copy], solids: Mapping[ShapeId, Solid]) -> list[Standing]:
    faces: dict[ShapeId, FlatFaces] = {}
    for copy in copies:
        if copy.shape not in faces:
            faces[copy.shape] = flat_faces(solids[copy.shape])
    return [Standing(faces[copy.shape], *pose(copy)) for copy in copies]


# Which copies show, and their labels


def _shown(
    copies: Sequence[Copy], marks: Sequence[str], surfaces: Sequence[Surface], scale: float
) -> list[_Shown]:
    of: dict[int, list[Surface]] = defaultdict(list)
    for surface in surfaces:
        of[surface.body].append(surface)
    around = Around(*bounds(surfaces))
    best = {body: _clearest(of[body], around, enough=AMPLE / scale) for body in _largest_of_each(marks, of)}
    return [
        _Shown(copy.part, marks[number], best[number])
        for number, copy in enumerate(copies)
        if number in best and best[number].room >= ENOUGH / scale
    ]


def _largest_of_each(marks: Sequence[str], of: Mapping[int, Sequence[Surface]]) -> Iterator[int]:
    """All bodies; of many that go by one mark those that show the most."""
    together: dict[str, list[int]] = defaultdict(list)
    for body in of:
        together[marks[body]].append(body)
    for bodies in together.values():
        yield from (
            bodies if len(bodies) == 1 else sorted(bodies, key=lambda body: -_shows(of[body]))[:LOOKED_AT]
        )


def _shows(surfaces: Sequence[Surface]) -> float:
    return sum(area(loop.tolist()) for surface in surfaces for loop in surface.outlines)


def _clearest(surfaces: Sequence[Surface], around: Around, *, enough: float) -> Inside:
    """A point with much room round it, on one of the largest surfaces."""
    outlines = [surface.outlines for surface in surfaces]
    largest = sorted(outlines, key=lambda loops: -sum(area(loop.tolist()) for loop in loops))[:LOOKED_AT]
    found = [well_inside(loops, around, enough=enough) for loops in largest]
    return max(found, key=lambda inside: inside.room)


def _one_each(shown: Iterable[_Shown]) -> list[_Shown]:
    """Copies that go by one mark are pointed at once, where it is clearest."""
    best: dict[str, _Shown] = {}
    for one in shown:
        if one.mark not in best or one.inside.room > best[one.mark].inside.room:
            best[one.mark] = one
    return list(best.values())


def _groups(shown: Sequence[_Shown]) -> list[list[_Shown]]:
    """Copies by label: each its own, or equal parts together where there are too many; the clearest first."""
    if len(shown) <= MANY:
        return [[one] for one in shown]
    together: dict[PartId, list[_Shown]] = defaultdict(list)
    for one in shown:
        together[one.part].append(one)
    return [sorted(group, key=lambda one: -one.inside.room) for group in together.values()]


def _label_text(group: Sequence[_Shown]) -> str:
    return group[0].mark if len(group) == 1 else f"{group[0].mark} +{len(group) - 1}"


def _missing(marks: Sequence[str], shown: Iterable[_Shown]) -> tuple[str, ...]:
    there = {one.mark for one in shown}
    return tuple(mark for mark in dict.fromkeys(marks) if mark not in there)


def _notes(missing: Sequence[str], groups: Iterable[Sequence[_Shown]]) -> list[str]:
    """What the reader must know of marks that aren't there, in lines below the picture."""
    notes: list[str] = []
    more = sorted({len(group) - 1 for group in groups} - {0})
    if more:
        notes.append(f"+{more[0]} after a mark: {more[0]} more of the same part.")
    if missing:
        notes.append(f"Out of sight here: {', '.join(missing)}.")
    return notes


def _in_lines(notes: Iterable[str]) -> list[str]:
    return [line for note in notes for line in in_lines(note, size=TEXT, width=WIDTH - 2 * EDGE)]


def _alt(title: str, standing_out: Sequence[Copy], names: Mapping[PartId, str]) -> str:
    said = f"{title}, seen from the front, the right and above, with the mark of each part that shows."
    if not standing_out:
        return said
    parts = list(dict.fromkeys(names.get(copy.part, copy.part) for copy in standing_out))
    return f"{said} Standing out: {', '.join(parts)}."


# Where all goes on the sheet


def _widest_scale(surfaces: Sequence[Surface]) -> float:
    low, high = bounds(surfaces)
    wide, tall = (high - low).tolist()
    return float(min((WIDTH - 2 * (EDGE + GAP)) / wide, TALLEST / tall))


def _layout(surfaces: Sequence[Surface], wanted: Sequence[tuple[str, tuple[float, float]]]) -> _Layout:
    """The largest drawing whose labels have short leaders: columns of labels, rows, or both."""
    choices: tuple[tuple[Side, ...], ...] = (
        ("left", "right"),
        ("above", "below"),
        ("left", "right", "above", "below"),
    )
    layouts = [found for sides in choices if (found := _with_sides(surfaces, wanted, sides)) is not None]
    return min(layouts, key=_cost)


def _cost(layout: _Layout) -> float:
    """Leaders and height in px, against the size of the drawing."""
    leaders = sum(label.length for label in layout.labels) / max(1, len(layout.labels))
    return (100 + leaders + 0.1 * layout.height) / layout.onto.scale


def _with_sides(
    surfaces: Sequence[Surface], wanted: Sequence[tuple[str, tuple[float, float]]], sides: tuple[Side, ...]
) -> _Layout | None:
    low, high = bounds(surfaces)
    wide, tall = (high - low).tolist()
    widest = max((width_of(text) for text, _ in wanted), default=0.0)
    column = widest + 6 if "left" in sides else 0.0
    row = ROW if "above" in sides else TEXT / 2
    scale = min((WIDTH - 2 * (EDGE + GAP + column)) / wide, TALLEST / tall)
    if scale <= 0:
        return None
    side = (WIDTH - scale * wide) / 2 - GAP
    snug = Frame(side, EDGE + row, WIDTH - side, EDGE + row + scale * tall + 2 * GAP)
    frame = _with_room(snug, sides, widest, len(wanted))
    if frame is None:
        return None
    top = (frame.top + frame.bottom - scale * tall) / 2
    onto = Onto(scale, WIDTH / 2 - scale * float(low[0] + high[0]) / 2, top + scale * float(high[1]))
    labels = placed([Pointed(text, onto.point(point)) for text, point in wanted], frame, sides)
    under = ROW if any(label.side == "below" for label in labels) else TEXT / 2
    return _Layout(onto, frame.bottom + under + EDGE, labels)


def _with_room(frame: Frame, sides: tuple[Side, ...], widest: float, count: int) -> Frame | None:
    """The frame, made taller until it has room for all labels; None where that doesn't help."""
    while len(slots(frame, sides, widest)) < count:
        if "left" not in sides:
            return None
        frame = Frame(frame.left, frame.top, frame.right, frame.bottom + TEXT)
    return frame


# The SVG


def _add_surfaces(
    svg: Any, surfaces: Sequence[Surface], onto: Onto, wood: Mapping[int, str], stand_out: set[int]
) -> None:
    for path in shaded([s for s in surfaces if s.body not in stand_out], onto, wood.__getitem__):
        svg.add(path)
    heavy = [s for s in surfaces if s.body in stand_out]
    if heavy:
        svg.add(_standing_out(heavy, onto, wood))


def _standing_out(surfaces: Sequence[Surface], onto: Onto, wood: Mapping[int, str]) -> Group:
    """In their own tones, with strokes over them and a heavy line round what shows of each copy."""
    group = Group(class_="stand-out", debug=False)
    for path in shaded(surfaces, onto, wood.__getitem__):
        group.add(path)
    each = [[s.outlines for s in surfaces if s.body == body] for body in sorted({s.body for s in surfaces})]
    heavy = [onto.points(loop) for outlines in each for loop in joined(list(outlines))]
    group.add(Path(d=path_data(heavy), class_="heavy", debug=False))
    strokes = [line for s in surfaces for line in pencil_strokes([onto.points(loop) for loop in s.outlines])]
    group.add(Path(d=path_data(strokes, closed=False), class_="pencil", debug=False))
    return group


def _add_lines(svg: Any, pieces: Sequence[Floats], onto: Onto, kind: str) -> None:
    data = path_data([onto.points(piece) for piece in pieces], closed=False)
    if data:
        svg.add(Path(d=data, class_=kind, debug=False))


def _add_labels(svg: Any, labels: Sequence[Label]) -> None:
    if not labels:
        return
    leaders = path_data([np.array([label.start, label.point]) for label in labels], closed=False)
    svg.add(Path(d=leaders, class_="halo", debug=False))
    svg.add(Path(d=leaders, class_="thin leader", debug=False))
    dots = "".join(f"M{label.point[0]:.1f} {label.point[1]:.1f}h0" for label in labels)
    svg.add(Path(d=dots, class_="leader-end", debug=False))
    anchors = {"left": "end", "right": "start"}
    for side in ("left", "right", "above", "below"):
        group = Group(text_anchor=anchors.get(side, "middle"), class_="label", debug=False)
        for label in (label for label in labels if label.side == side):
            x, y = label.baseline
            group.add(Text(label.text, insert=(f"{x:.1f}", f"{y:.1f}"), debug=False))
        if group.elements:
            svg.add(group)


def _add_notes(svg: Any, notes: Sequence[str], below: float) -> None:
    for number, line in enumerate(notes):
        y = below + number * PITCH + TEXT
        svg.add(Text(line, insert=(f"{EDGE:g}", f"{y:.1f}"), class_="label", debug=False))
