"""Three views side by side on a phone's width: how large, where the sizes stand, where each view lies."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from benchalong.drawing.board import Board
from benchalong.drawing.labels import put_face_words, put_mark, put_view_name
from benchalong.drawing.leaders import put_leader
from benchalong.drawing.linework import Strips, linework, placed
from benchalong.drawing.own_triangle import OwnTriangle
from benchalong.drawing.placing import Side, Stretch, best_place, foreseen, put
from benchalong.drawing.shorten import Strip, fitted, least_size
from benchalong.drawing.text import NUMBER, as_finely, number_width, text_width
from benchalong.drawing.views import LOOKING, ViewLines, ViewName
from benchalong.drawing.wanted import SHOULDERS, WHOLE, RoundSize, Span, Wanted
from benchalong.ground.lengths import Length
from benchalong.ground.shown import Precision
from benchalong.plan.model import AXES, Axis, Outline, Part
from benchalong.workings.bodies import Floats

Projection: TypeAlias = Literal["third angle", "first angle"]

SHEET = 358.0
"""The width of a sheet: what a phone has, in px."""
ROOM: dict[Axis, float] = {"along": 190.0, "across": 170.0, "down": 84.0}
"""How much each direction may take at first, in px."""
ATTEMPTS = 4
SHORTEST = 110.0
"""A part isn't made shorter than this to make room for numbers, in px."""
BETWEEN = 12.0
"""Between two views with all that is round them, in px."""
BREAKS: dict[Axis, int] = {"along": 5, "across": 2, "down": 1}
"""A part with more interruptions than this is drawn whole."""
LARGEST = 6.0
"""px per mm for the smallest parts."""
KEYS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


@dataclass(frozen=True)
class Scene:
    """A part looked at from three sides, not yet on a sheet."""

    part: Part
    wanted: Wanted
    lines: dict[ViewName, ViewLines]
    precision: Precision
    projection: Projection
    triangle: OwnTriangle | None = None


@dataclass(frozen=True)
class Listed:
    """A size that stands in the list below the views."""

    key: str
    """The letter at its place in a view, or nothing."""
    what: str
    length: Length
    sign: str = ""


@dataclass(frozen=True)
class Layout:
    """The views on the sheet: each with what is round it, its lines by kind, and where its corner lies."""

    boards: dict[ViewName, Board]
    lines: dict[ViewName, dict[str, Floats]]
    corners: dict[ViewName, tuple[float, float]]
    width: float
    height: float
    listed: tuple[Listed, ...]
    along: float
    """How long the part is drawn, in px."""
    is_shortened: bool
    larger: tuple[str, ...]
    """Which of `across` and `down` are drawn larger than the length."""


@dataclass(frozen=True)
class Arrangement:
    """Where the edge's and the end's view lie beside the face's."""

    is_edge_above: bool
    is_end_right: bool

    def sides(self, view: ViewName, *, is_upright: bool) -> tuple[Side, ...]:
        """Where sizes of a view may stand, best first: outside, so that views stay close together."""
        rows: tuple[Side, ...] = ("above", "below") if self.is_edge_above else ("below", "above")
        columns: tuple[Side, ...] = ("right", "left") if self.is_end_right else ("left", "right")
        if is_upright:
            return columns if view.startswith("end") else columns[::-1]
        return rows[::-1] if view == "face" else rows if view.startswith("edge") else ("above", "below")


def arrangement(views: Sequence[ViewName], projection: Projection) -> Arrangement:
    """Third angle: what is seen from above lies above. First angle: the other way about (ISO 5456-2)."""
    is_third = projection == "third angle"
    return Arrangement((views[1] == "edge a") == is_third, (views[2] == "end b") == is_third)


def laid_out(scene: Scene) -> Layout:
    """Laid out once to see what the numbers need, then again until all is as wide as the sheet."""
    stops, room = _stops(scene), dict(ROOM)
    best = layout = _attempt(scene, stops, room)
    for _ in range(ATTEMPTS):
        spare = SHEET - layout.width
        is_whole = not layout.is_shortened and layout.along < room["along"] - 1
        if -0.5 < spare < 12 or (spare > 0 and is_whole) or (spare < 0 and layout.along <= SHORTEST):
            break
        room["along"] = max(SHORTEST, layout.along + spare)
        layout = _attempt(scene, stops, room)
        best = min(best, layout, key=_unfitness)
    return best


def _unfitness(layout: Layout) -> tuple[float, float]:
    """How much too wide, then how small."""
    return (max(0.0, layout.width - SHEET - 0.5), -layout.along)


def _attempt(scene: Scene, stops: dict[Axis, list[float]], room: dict[Axis, float]) -> Layout:
    scales = chosen_scales(scene, stops, room)
    strips = {axis: fitted(stops[axis], scale=scales[axis], room=room[axis]) for axis in AXES}
    lines = {view: linework(scene.part, scene.lines[view], view, strips) for view in scene.wanted.views}
    if scene.triangle is not None:
        for view, kinds in lines.items():
            kinds["triangle"] = scene.triangle.rows(view, strips, kinds["visible"], kinds["break"])
    boards = {view: _board(view, strips, lines[view]) for view in scene.wanted.views}
    listed = _filled(scene, boards, strips)
    corners, width, height = _composed(scene, boards)
    is_shortened = any(strip.breaks for strip in strips.values())
    larger = tuple(axis for axis in ("across", "down") if scales[axis] > 1.05 * scales["along"])
    return Layout(boards, lines, corners, width, height, listed, strips["along"].size, is_shortened, larger)


def _board(view: ViewName, strips: dict[Axis, Strip], lines: dict[str, Floats]) -> Board:
    looking = LOOKING[view]
    return Board(strips[looking.right].size, strips[looking.downwards].size, np.vstack(list(lines.values())))


def _stops(scene: Scene) -> dict[Axis, list[float]]:
    """Where something happens, on each axis, in mm."""
    found: dict[Axis, set[float]] = {
        axis: {0.0, float(size)} for axis, size in zip(AXES, scene.part.box, strict=True)
    }
    for view, lines in scene.lines.items():
        both = np.vstack([lines.visible, lines.hidden])
        found[LOOKING[view].right].update(both[:, [0, 2]].ravel().tolist())
        found[LOOKING[view].downwards].update(both[:, [1, 3]].ravel().tolist())
    for span in scene.wanted.spans:
        found[span.axis].update((float(span.start), float(span.end)))
    return {axis: _apart(sorted(values)) for axis, values in found.items()}


def _apart(values: list[float]) -> list[float]:
    """Without those that lie close to another; the first and the last always, or what lies on the part's own
    border would fall out of the drawing."""
    kept = values[:1]
    for value in values[1:-1]:
        if kept[-1] + 0.01 < value < values[-1] - 0.01:
            kept.append(value)
    return [*kept, *values[-1:]] if len(values) > 1 else kept


def chosen_scales(
    scene: Scene, stops: dict[Axis, list[float]], room: Mapping[Axis, float]
) -> dict[Axis, float]:
    """px per mm: one scale for all if it shows the smallest size; else the thickness is drawn larger.

    The whole part if it is large enough so, else shortened where nothing happens, else whole after all: a
    board with many dadoes would be broken to pieces.
    """
    whole = min(room[axis] / float(size) for axis, size in zip(AXES, scene.part.box, strict=True))
    needed = needed_scale(scene.part, scene.wanted.spans)
    if whole >= needed:
        return dict.fromkeys(AXES, min(whole, LARGEST))
    scale = needed
    while scale > whole and not _can_be_shortened(stops, scale, room):
        scale *= 0.95
    if scale > whole:
        return dict.fromkeys(AXES, scale)
    return _own_scales(scene, stops, room)


def _own_scales(
    scene: Scene, stops: dict[Axis, list[float]], room: Mapping[Axis, float]
) -> dict[Axis, float]:
    """The whole length; thickness larger, width too where nothing on the face is round or slanting."""
    fits = {axis: room[axis] / stops[axis][-1] for axis in AXES}
    spans = scene.wanted.spans
    needs = {axis: needed_scale(scene.part, [span for span in spans if span.axis == axis]) for axis in AXES}
    along = fits["along"] if is_square_on_face(scene.part) else min(fits["along"], fits["across"])
    across = max(along, min(needs["across"], fits["across"])) if is_square_on_face(scene.part) else along
    return {"along": along, "across": across, "down": max(along, min(needs["down"], fits["down"]))}


def is_square_on_face(part: Part) -> bool:
    """Whether every line of the face's view runs along or across."""
    return all(
        isinstance(prism.shape, Outline) and not prism.outside and _is_square(prism.shape)
        for cut in part.cuts
        for prism in cut.takes
        if prism.axis == "down"
    ) and not any(cut.kind in ("taper", "bevel") for cut in part.cuts)


def _is_square(outline: Outline) -> bool:
    corners = outline.corners
    return all(
        corner.radius == 0 and (corner.at[0] == before.at[0] or corner.at[1] == before.at[1])
        for before, corner in zip(corners[-1:] + corners, corners, strict=False)
    )


def _can_be_shortened(stops: dict[Axis, list[float]], scale: float, room: Mapping[Axis, float]) -> bool:
    if any(least_size(stops[axis], scale) > room[axis] for axis in AXES):
        return False
    return all(
        len(fitted(stops[axis], scale=scale, room=room[axis]).breaks) <= most for axis, most in BREAKS.items()
    )


def needed_scale(part: Part, spans: Sequence[Span]) -> float:
    """px per mm at which the smallest size of a cut is some 13 px, or a plain part 5 px thick."""
    if not part.cuts:
        return min(2.0, 5.0 / float(part.thickness))
    sizes = [
        float(span.length) for span in spans if span.length >= 2 and span.asked_of not in (WHOLE, SHOULDERS)
    ]
    return float(np.clip(13.0 / min(sizes, default=26.0), 0.3, 2.1))


def _filled(scene: Scene, boards: dict[ViewName, Board], strips: Strips) -> tuple[Listed, ...]:
    """Words, leaders and sizes on their boards; what finds no room is listed, if it can by a letter."""
    around = arrangement(scene.wanted.views, scene.projection)
    face, edge, end = scene.wanted.views
    for span in scene.wanted.spans:
        board, stretch = boards[span.views[0]], _stretch(span, span.views[0], strips, scene.precision)
        sides = around.sides(span.views[0], is_upright=stretch.is_upright)
        board.foreseen[_key(stretch)] = foreseen(board, stretch, sides, is_whole=span.asked_of == WHOLE)
    listed = [Listed("", what, length) for what, length in scene.wanted.loose]
    for one in scene.wanted.rounds:
        if not _round_put(one, boards[one.view], strips, scene.precision):
            listed.append(Listed("", f"{one.what} {one.sign}", one.length, one.sign))
    marks = _points_put(scene, boards[face], strips)
    put_face_words(boards[face], free_above=around.is_edge_above)
    for span in sorted(scene.wanted.spans, key=lambda span: _drawn_size(span, strips)):
        key = _span_put(span, boards, strips, around, scene.precision, letter(len(marks) + len(listed)))
        if key is not None:
            listed.append(Listed(key, span.what, span.length))
    for view in (edge, end):
        put_view_name(boards[view], view.capitalize())
    return tuple(listed)


def _points_put(scene: Scene, board: Board, strips: Strips) -> list[str]:
    """A letter beside each point whose place stands in the list."""
    letters = [letter(count) for count in range(len(scene.wanted.points))]
    for key, point in zip(letters, scene.wanted.points, strict=True):
        spot = (
            placed("face", "along", float(point.along), strips),
            placed("face", "across", float(point.across), strips),
        )
        put_mark(board, key, spot)
    return letters


def letter(count: int) -> str:
    """A, B, C … and after Z A2, B2; without I and O, which read as figures."""
    again, place = divmod(count, len(KEYS))
    return f"{KEYS[place]}{again + 1 if again else ''}"


def _drawn_size(span: Span, strips: Strips) -> tuple[float, Length]:
    strip = strips[span.axis]
    return (round(strip.place(float(span.end)) - strip.place(float(span.start)), 3), span.length)


def _key(stretch: Stretch) -> tuple[str, Length]:
    return (stretch.what, stretch.length)


def _span_put(
    span: Span,
    boards: dict[ViewName, Board],
    strips: Strips,
    around: Arrangement,
    precision: Precision,
    key: str,
) -> str | None:
    """None when the number is on the sheet; else the letter that stands for it there, or nothing."""
    for letter in ("", key):
        for view in span.views:
            width = text_width(letter, NUMBER) if letter else None
            stretch = _stretch(span, view, strips, precision, width=width)
            place = best_place(boards[view], stretch, around.sides(view, is_upright=stretch.is_upright))
            if place is not None:
                put(boards[view], stretch, place, key=letter)
                boards[span.views[0]].foreseen.pop(_key(stretch), None)
                return letter or None
    return ""


def _stretch(
    span: Span, view: ViewName, strips: Strips, precision: Precision, *, width: float | None = None
) -> Stretch:
    looking = LOOKING[view]
    is_upright = span.axis == looking.downwards
    other = looking.right if is_upright else looking.downwards
    near, far = sorted(placed(view, other, float(value), strips) for value in span.feature.on(other))
    start, end = sorted(placed(view, span.axis, float(value), strips) for value in (span.start, span.end))
    room = number_width(span.length, precision) if width is None else width
    return Stretch(span.what, span.length, is_upright, start, end, near, far, room)


def _round_put(one: RoundSize, board: Board, strips: Strips, precision: Precision) -> bool:
    looking = LOOKING[one.view]
    centre = (
        placed(one.view, looking.right, one.centre[0], strips),
        placed(one.view, looking.downwards, one.centre[1], strips),
    )
    radius = one.radius * strips[looking.right].scale
    width = number_width(one.length, as_finely(one.sign, precision))
    return put_leader(
        board, what=one.what, length=one.length, sign=one.sign, centre=centre, radius=radius, width=width
    )


def _composed(
    scene: Scene, boards: dict[ViewName, Board]
) -> tuple[dict[ViewName, tuple[float, float]], float, float]:
    """Where each view's upper left corner lies, and how large all three are together."""
    face, edge, end = scene.wanted.views
    around = arrangement(scene.wanted.views, scene.projection)
    rooms = {view: board.extent for view, board in boards.items()}
    left, right = min(rooms[face][0], rooms[edge][0]), max(rooms[face][2], rooms[edge][2])
    top, bottom = min(rooms[face][1], rooms[end][1]), max(rooms[face][3], rooms[end][3])
    x_end = right + BETWEEN - rooms[end][0] if around.is_end_right else left - BETWEEN - rooms[end][2]
    y_edge = top - BETWEEN - rooms[edge][3] if around.is_edge_above else bottom + BETWEEN - rooms[edge][1]
    spots = {face: (0.0, 0.0), edge: (0.0, y_edge), end: (x_end, 0.0)}
    low_x = min(left, x_end + rooms[end][0]) - 2
    low_y = min(top, y_edge + rooms[edge][1]) - 2
    width = max(right, x_end + rooms[end][2]) + 2 - low_x
    height = max(bottom, y_edge + rooms[edge][3]) + 2 - low_y
    return {view: (x - low_x, y - low_y) for view, (x, y) in spots.items()}, width, height
