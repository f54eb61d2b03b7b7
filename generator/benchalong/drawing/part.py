"""The drawing of a part: three named views in their places, with all sizes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any, Literal, TypeAlias

import numpy as np
import svgwrite.text

from benchalong.drawing.dimensions import RoundSize, Span, Wanted, many, wanted_sizes
from benchalong.drawing.picture import Picture
from benchalong.drawing.placing import (
    Board,
    Side,
    Stretch,
    best_place,
    put,
    put_leader,
    put_word,
)
from benchalong.drawing.sheet import (
    UNIT_WORDS,
    Plain,
    add_lines,
    add_number,
    add_size,
    add_text,
    add_word,
    svg_root,
    svg_text,
)
from benchalong.drawing.shorten import GAP, Axis1, fitted, least_size, on_sheet
from benchalong.drawing.text import NUMBER, WORD, in_lines, number_width, text_width
from benchalong.drawing.views import LOOKING, ViewLines, ViewName, view_lines
from benchalong.ground.lengths import Length
from benchalong.ground.shown import Precision, System
from benchalong.plan.model import AXES, Axis, Circle, Part
from benchalong.workings.bodies import Floats
from benchalong.workings.solids import Solid

Projection: TypeAlias = Literal["third angle", "first angle"]

SHEET = 358.0
"""The width of a sheet: what a phone has, in px."""
ROOM: dict[Axis, float] = {"along": 216.0, "across": 170.0, "down": 84.0}
"""How much each direction may take at first, in px."""
BETWEEN = 14.0
"""Between two views with all that is round them."""


@dataclass(frozen=True)
class Scene:
    """A part looked at from three sides, not yet on a sheet."""

    part: Part
    wanted: Wanted
    lines: dict[ViewName, ViewLines]
    precision: Precision
    projection: Projection


@dataclass(frozen=True)
class Layout:
    """The three views on the sheet: each board, its lines by kind, and where its corner lies."""

    axes: dict[Axis, Axis1]
    boards: dict[ViewName, Board]
    kinds: dict[ViewName, dict[str, Floats]]
    corners: dict[ViewName, tuple[float, float]]
    width: float
    height: float
    listed: tuple[tuple[str, str, Length], ...]
    """Sizes that found no room on the drawing: letter, what it is, the size."""


def part_drawing(
    part: Part, solid: Solid, *, precision: Precision, units: System, projection: Projection
) -> Picture:
    """Three views of a part with every size of its box and its cuts, for a phone's width and up."""
    wanted = wanted_sizes(part)
    lines = {view: view_lines(solid, view) for view in wanted.views}
    scene = Scene(part, wanted, lines, precision, projection)
    layout = _laid_out(scene)
    alt = alt_text(part, wanted)
    svg, width, height = _written(scene, layout, Plain(units, precision), alt)
    return Picture(svg, alt, width, height)


# scale --------------------------------------------------------------------------------------------


def _stops(scene: Scene) -> dict[Axis, list[float]]:
    """Where something happens, on each axis, in mm."""
    found: dict[Axis, set[float]] = {axis: {0.0, float(size)} for axis, size in zip(AXES, scene.part.box, strict=True)}
    for view, lines in scene.lines.items():
        both = np.vstack([lines.visible, lines.hidden])
        for axis, columns in ((LOOKING[view].right, [0, 2]), (LOOKING[view].downwards, [1, 3])):
            found[axis].update(np.unique(np.round(both[:, columns], 3)).tolist())
    for span in scene.wanted.spans:
        found[span.axis].update((float(span.start), float(span.end)))
    return {axis: _apart(sorted(values)) for axis, values in found.items()}


def _apart(values: list[float]) -> list[float]:
    kept = values[:1]
    for value in values[1:]:
        if value > kept[-1] + 0.01:
            kept.append(value)
    return kept


def chosen_scale(scene: Scene, stops: dict[Axis, list[float]], room: dict[Axis, float]) -> float:
    """px per mm: the whole part if that shows its smallest size, else as large as the shortened part allows."""
    whole = min(room[axis] / float(size) for axis, size in zip(AXES, scene.part.box, strict=True))
    needed = _needed_scale(scene)
    if whole >= needed:
        return min(whole, 6.0)
    scale = needed
    while scale > whole and any(least_size(stops[axis], scale) > room[axis] for axis in AXES):
        scale *= 0.95
    return max(scale, whole)


def _needed_scale(scene: Scene) -> float:
    """At which the smallest size of a cut is some 12 px wide, or a plain part 8 px thick."""
    if not scene.part.cuts:
        return min(2.0, 8.0 / float(scene.part.thickness))
    small = min((float(span.length) for span in scene.wanted.spans if span.length >= 2), default=8.0)
    return float(np.clip(12.0 / small, 0.8, 2.1))


# layout -------------------------------------------------------------------------------------------


def _laid_out(scene: Scene) -> Layout:
    """Laid out once to see what the numbers need, then again so that all is as wide as the sheet."""
    stops = _stops(scene)
    room = dict(ROOM)
    layout = _try(scene, stops, room)
    for _ in range(3):
        spare = SHEET - layout.width
        if -0.5 < spare < 6 or (spare > 0 and layout.axes["along"].size < room["along"] - 1):
            break
        room["along"] = max(60.0, layout.axes["along"].size + spare)
        layout = _try(scene, stops, room)
    return layout


def _try(scene: Scene, stops: dict[Axis, list[float]], room: dict[Axis, float]) -> Layout:
    scale = chosen_scale(scene, stops, room)
    axes = {axis: fitted(stops[axis], scale=scale, room=room[axis]) for axis in AXES}
    kinds = {view: _kinds(scene, view, axes) for view in scene.wanted.views}
    boards = {
        view: Board(
            axes[LOOKING[view].right].size, axes[LOOKING[view].downwards].size, np.vstack(list(kinds[view].values()))
        )
        for view in scene.wanted.views
    }
    listed = _sizes_placed(scene, boards, axes)
    _named(scene, boards)
    corners, width, height = _composed(scene, boards)
    return Layout(axes, boards, kinds, corners, width, height, listed)


def _kinds(scene: Scene, view: ViewName, axes: dict[Axis, Axis1]) -> dict[str, Floats]:
    """The view's lines in px, by kind."""
    looking = LOOKING[view]
    right, downwards = axes[looking.right], axes[looking.downwards]
    seen = scene.lines[view]
    kinds = {"visible": on_sheet(seen.visible, right, downwards), "hidden-line": on_sheet(seen.hidden, right, downwards)}
    kinds["centre"] = _centre_lines(scene, view, axes)
    breaks = _break_lines(np.vstack([kinds["visible"], kinds["hidden-line"]]), right, downwards)
    mirrored = {kind: _mirrored(lines, view, axes) for kind, lines in kinds.items()}
    return {**mirrored, "break": _mirrored(breaks, view, axes)}


def _mirrored(lines: Floats, view: ViewName, axes: dict[Axis, Axis1]) -> Floats:
    looking, lines = LOOKING[view], lines.copy()
    if looking.right_reversed:
        lines[:, [0, 2]] = axes[looking.right].size - lines[:, [0, 2]]
    if looking.downwards_reversed:
        lines[:, [1, 3]] = axes[looking.downwards].size - lines[:, [1, 3]]
    return lines


def _break_lines(lines: Floats, right: Axis1, downwards: Axis1) -> Floats:
    """Two zigzags where a stretch was left out, as long as the wood is wide there."""
    rows: list[tuple[float, float, float, float]] = []
    for at in right.breaks:
        for x in (at - GAP / 2, at + GAP / 2):
            rows += _zigzag(x, *_wood_at(lines, 0, x))
    for at in downwards.breaks:
        for y in (at - GAP / 2, at + GAP / 2):
            rows += [(b, a, d, c) for a, b, c, d in _zigzag(y, *_wood_at(lines, 1, y))]
    return np.array(rows, dtype=float).reshape(-1, 4)


def _wood_at(lines: Floats, column: int, at: float) -> tuple[float, float]:
    first = lines[np.abs(lines[:, column] - at) < 0.01, 1 - column]
    last = lines[np.abs(lines[:, column + 2] - at) < 0.01, 3 - column]
    both = np.concatenate([first, last])
    return (float(both.min()), float(both.max())) if len(both) else (0.0, 0.0)


def _zigzag(x: float, top: float, bottom: float) -> list[tuple[float, float, float, float]]:
    """Upright, with one zigzag in the middle."""
    if bottom - top < 1:
        return []
    middle, size = (top + bottom) / 2, min(5.0, (bottom - top) / 4)
    spots = [(x, top - 4), (x, middle - size), (x + 3, middle - size / 3), (x - 3, middle + size / 3), (x, middle + size)]
    spots.append((x, bottom + 4))
    return [(*one, *two) for one, two in zip(spots, spots[1:], strict=False)]


def _centre_lines(scene: Scene, view: ViewName, axes: dict[Axis, Axis1]) -> Floats:
    """A cross on each circle that is looked at, a line along each hole that is seen from the side."""
    looking = LOOKING[view]
    right, downwards = axes[looking.right], axes[looking.downwards]
    rows: set[tuple[float, float, float, float]] = set()
    for prism in (prism for cut in scene.part.cuts for prism in cut.takes):
        if not isinstance(prism.shape, Circle):
            continue
        flat = [axis for axis in AXES if axis != prism.axis]
        spot = dict(zip(flat, (float(value) for value in prism.shape.centre), strict=True))
        half = float(prism.shape.diameter) / 2 * right.scale + 4
        if looking.into == prism.axis:
            x, y = right.place(spot[looking.right]), downwards.place(spot[looking.downwards])
            rows |= {(x - half, y, x + half, y), (x, y - half, x, y + half)}
        elif looking.right == prism.axis:
            y = downwards.place(spot[looking.downwards])
            rows.add((right.place(float(prism.start)) - 4, y, right.place(float(prism.end)) + 4, y))
        else:
            x = right.place(spot[looking.right])
            rows.add((x, downwards.place(float(prism.start)) - 4, x, downwards.place(float(prism.end)) + 4))
    return np.array(sorted(rows), dtype=float).reshape(-1, 4)


# sizes --------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Arrangement:
    """Where the edge's and the end's view lie beside the face's."""

    edge_above: bool
    end_right: bool

    def sides(self, view: ViewName, *, is_upright: bool) -> tuple[Side, ...]:
        """Where sizes of a view may stand, best first: outer sides, so that views stay close together."""
        outer_row: tuple[Side, ...] = ("above", "below") if self.edge_above else ("below", "above")
        outer_column: tuple[Side, ...] = ("right", "left") if self.end_right else ("left", "right")
        if view == "face":
            return outer_column[::-1] if is_upright else outer_row[::-1]
        if view.startswith("edge"):
            return outer_column[::-1] if is_upright else outer_row
        return outer_column if is_upright else outer_row[::-1]


def arrangement(views: Sequence[ViewName], projection: Projection) -> Arrangement:
    """Third angle: what is seen from above lies above. First angle: the other way about."""
    third = projection == "third angle"
    return Arrangement((views[1] == "edge a") == third, (views[2] == "end b") == third)


def _sizes_placed(
    scene: Scene, boards: dict[ViewName, Board], axes: dict[Axis, Axis1]
) -> tuple[tuple[str, str, Length], ...]:
    """All sizes on their boards; what finds no room goes on the list, with a letter where that fits."""
    around = arrangement(scene.wanted.views, scene.projection)
    listed: list[tuple[str, str, Length]] = []
    for span in scene.wanted.spans:
        stretch = _stretch(span, span.views[0], axes, scene.precision)
        ends = (stretch.start, stretch.end)
        boards[span.views[0]].corridors += [(not stretch.is_upright, at) for at in ends]
    for one in scene.wanted.rounds:
        if not _round_placed(one, boards[one.view], axes, scene.precision):
            listed.append(("", one.what, one.length))
    for span in sorted(scene.wanted.spans, key=lambda span: _px(span, axes)):
        if not _span_placed(span, boards, axes, around, scene.precision):
            listed.append(_keyed(span, boards, axes, around, scene.precision, len(listed)))
    return tuple(listed)


def _px(span: Span, axes: dict[Axis, Axis1]) -> tuple[float, Length]:
    axis = axes[span.axis]
    return (round(axis.place(float(span.end)) - axis.place(float(span.start)), 3), span.length)


def _span_placed(
    span: Span, boards: dict[ViewName, Board], axes: dict[Axis, Axis1], around: Arrangement, precision: Precision
) -> bool:
    for view in span.views:
        stretch = _stretch(span, view, axes, precision)
        place = best_place(boards[view], stretch, around.sides(view, is_upright=stretch.is_upright))
        if place is not None:
            put(boards[view], stretch, place)
            return True
    return False


def _keyed(
    span: Span,
    boards: dict[ViewName, Board],
    axes: dict[Axis, Axis1],
    around: Arrangement,
    precision: Precision,
    count: int,
) -> tuple[str, str, Length]:
    """With a letter in place of its number, if that fits; the number stands in the list."""
    key = "ABCDEFGHJKLMNPQRSTUVWXYZ"[count % 24]
    view = span.views[0]
    stretch = _stretch(span, view, axes, precision, width=text_width(key, NUMBER))
    place = best_place(boards[view], stretch, around.sides(view, is_upright=stretch.is_upright))
    if place is None:
        return ("", span.what, span.length)
    put(boards[view], stretch, place, key=key)
    return (key, span.what, span.length)


def _stretch(
    span: Span, view: ViewName, axes: dict[Axis, Axis1], precision: Precision, *, width: float | None = None
) -> Stretch:
    looking = LOOKING[view]
    is_upright = span.axis == looking.downwards
    other = looking.right if is_upright else looking.downwards
    low, high = span.feature.on(other)
    ends = sorted((_at(view, other, float(low), axes), _at(view, other, float(high), axes)))
    start, end = sorted((_at(view, span.axis, float(span.start), axes), _at(view, span.axis, float(span.end), axes)))
    room = number_width(span.length, precision) if width is None else width
    return Stretch(span.what, span.length, is_upright, start, end, ends[0], ends[1], room)


def _at(view: ViewName, axis: Axis, value: float, axes: dict[Axis, Axis1]) -> float:
    looking = LOOKING[view]
    backwards = looking.right_reversed if axis == looking.right else looking.downwards_reversed
    place = axes[axis].place(value)
    return axes[axis].size - place if backwards else place


def _round_placed(one: RoundSize, board: Board, axes: dict[Axis, Axis1], precision: Precision) -> bool:
    looking = LOOKING[one.view]
    x = _at(one.view, looking.right, float(one.centre[0]), axes)
    y = _at(one.view, looking.downwards, float(one.centre[1]), axes)
    radius = float(one.radius) * axes[looking.right].scale
    return put_leader(
        board, one.length, one.sign, centre=(x, y), radius=radius, width=number_width(one.length, precision)
    )


# words --------------------------------------------------------------------------------------------

GRAIN = "grain"


def _named(scene: Scene, boards: dict[ViewName, Board]) -> None:
    """The names of the views, and on the face its surroundings and the grain."""
    face, edge, end = scene.wanted.views
    board = boards[face]
    _grain_put(board)
    wide, tall = board.width, board.height
    inside = 9.0
    put_word(board, "Face", [*_grid(board, first=(wide / 2, tall / 2)), *_outside(board)], kind="label view-name")
    put_word(board, "edge a", [*_row(board, inside), *_outside(board)], kind="label")
    put_word(board, "edge b", [*_row(board, tall - inside), *_outside(board)], kind="label")
    put_word(board, "end a", [*_column(board, 22.0), *_outside(board)], kind="label")
    put_word(board, "end b", [*_column(board, wide - 22.0), *_outside(board)], kind="label")
    for view in (edge, end):
        put_word(boards[view], view.capitalize(), list(_outside(boards[view])), kind="label view-name")


def _grain_put(board: Board) -> None:
    from benchalong.drawing.placing import grown, is_clear

    for size in (70.0, 52.0, 40.0):
        for x, y in [*_grid(board, first=(board.width / 2, board.height * 0.72)), *_outside(board)]:
            room = (x - size / 2, y - 12.0, x + size / 2, y + 6.0)
            if is_clear(board, grown(room, 1.0)):
                board.taken.append(room)
                from benchalong.drawing.placing import Word

                board.words.append(Word(GRAIN, x, y - 2.0, "middle", room, "label grain-word"))
                board.words.append(Word("", x, y + 3.0, "middle", room, f"grain {size}"))
                return


def _grid(board: Board, *, first: tuple[float, float]) -> Iterable[tuple[float, float]]:
    """Spots inside the view, from the first one outwards."""
    spots = [
        (x, y)
        for x in np.arange(12.0, board.width - 6, 9.0).tolist()
        for y in np.arange(9.0, board.height - 6, 6.0).tolist()
    ]
    return [first, *sorted(spots, key=lambda spot: (abs(spot[0] - first[0]) + 2 * abs(spot[1] - first[1]), spot))]


def _row(board: Board, y: float) -> Iterable[tuple[float, float]]:
    middle = board.width / 2
    return sorted(((x, y) for x in np.arange(24.0, board.width - 20, 8.0).tolist()), key=lambda s: abs(s[0] - middle))


def _column(board: Board, x: float) -> Iterable[tuple[float, float]]:
    middle = board.height / 2
    return sorted(((x, y) for y in np.arange(9.0, board.height - 6, 6.0).tolist()), key=lambda s: abs(s[1] - middle))


def _outside(board: Board) -> Iterable[tuple[float, float]]:
    """Spots above and below the view, nearest first."""
    left, top, right, bottom = board.extent()
    middle = board.width / 2
    xs = sorted({middle, *np.arange(20.0, max(21.0, board.width - 18), 10.0).tolist()}, key=lambda x: abs(x - middle))
    outs = np.arange(11.0, 11.0 + max(-top, bottom - board.height) + 20.0, 6.0).tolist()
    for out in outs:
        yield from ((x, -out) for x in xs)
        yield from ((x, board.height + out) for x in xs)


# composition --------------------------------------------------------------------------------------


def _composed(
    scene: Scene, boards: dict[ViewName, Board]
) -> tuple[dict[ViewName, tuple[float, float]], float, float]:
    """Where each view's upper left corner lies, and how large all three are together."""
    face, edge, end = scene.wanted.views
    around = arrangement(scene.wanted.views, scene.projection)
    boxes = {view: board.extent() for view, board in boards.items()}
    left = min(boxes[face][0], boxes[edge][0])
    right = max(boxes[face][2], boxes[edge][2])
    x_face, x_end = (0.0, right + BETWEEN - boxes[end][0]) if around.end_right else (0.0, left - BETWEEN - boxes[end][2])
    top, bottom = min(boxes[face][1], boxes[end][1]), max(boxes[face][3], boxes[end][3])
    y_edge = top - BETWEEN - boxes[edge][3] if around.edge_above else bottom + BETWEEN - boxes[edge][1]
    if around.edge_above and boxes[edge][3] < y_edge:
        pass
    spots = {face: (x_face, 0.0), edge: (0.0, y_edge), end: (x_end, 0.0)}
    placed = [
        (box[0] + spots[view][0], box[1] + spots[view][1], box[2] + spots[view][0], box[3] + spots[view][1])
        for view, box in boxes.items()
    ]
    low_x, low_y = min(box[0] for box in placed) - 2, min(box[1] for box in placed) - 2
    width, height = max(box[2] for box in placed) + 2 - low_x, max(box[3] for box in placed) + 2 - low_y
    return {view: (x - low_x, y - low_y) for view, (x, y) in spots.items()}, width, height


# writing ------------------------------------------------------------------------------------------


def _written(scene: Scene, layout: Layout, plain: Plain, alt: str) -> tuple[str, float, float]:
    width = max(SHEET, layout.width)
    notes, height = _note_lines(scene, layout, width)
    root = svg_root(width=width, height=height, alt=alt, kind="part-drawing")
    shift = (width - layout.width) / 2
    for view, board in layout.boards.items():
        x, y = layout.corners[view]
        _view_written(root, board, layout.kinds[view], plain, (x + shift, y))
    y = layout.height + 18
    for text, key in notes:
        if key is None:
            _note(root, text, plain, y)
        else:
            _key_line(root, text, key, plain, y)
        y += 17
    _symbol(root, scene.projection, width - 34, layout.height + 13)
    return svg_text(root), width, height


def _note_lines(
    scene: Scene, layout: Layout, width: float
) -> tuple[list[tuple[str, tuple[str, str, Length] | None]], float]:
    lines: list[tuple[str, tuple[str, str, Length] | None]] = [("Sizes in ", None)]
    broken = any(axis.breaks for axis in layout.axes.values())
    said = ["Drawn shortened between the zigzag lines; the sizes are true."] if broken else []
    said += scene.wanted.notes
    for sentence in said:
        lines += [(line, None) for line in in_lines(sentence, size=WORD, width=width - (50 if len(lines) < 2 else 4))]
    lines += [("", key) for key in layout.listed]
    return lines, layout.height + 17 * len(lines) + 8


def _note(root: Any, text: str, plain: Plain, y: float) -> None:
    element = add_text(root, text, 2, y, "label note")
    if text == "Sizes in ":
        span = svgwrite.text.TSpan(UNIT_WORDS[plain.units], debug=False)
        span.attribs["data-unit-word"] = ""
        element.add(span)


def _key_line(root: Any, text: str, key: tuple[str, str, Length], plain: Plain, y: float) -> None:  # noqa: ARG001
    letter, what, length = key
    x = 2.0
    if letter:
        add_text(root, letter, x, y, "key")
        x += 18
    add_text(root, what, x, y, "label note")
    add_size(root, length, plain, x + text_width(what + "  ", WORD), y, anchor="start")


def _view_written(root: Any, board: Board, kinds: dict[str, Floats], plain: Plain, at: tuple[float, float]) -> None:
    for kind in ("hidden-line", "centre", "break"):
        add_lines(root, kinds[kind], kind, at=at)
    add_lines(root, board.thin, "thin", at=at)
    add_lines(root, kinds["visible"], "visible", at=at)
    for number in board.numbers:
        add_number(root, number, plain, at=at)
    for word in board.words:
        if word.kind.startswith("grain "):
            _grain_arrow(root, word.x + at[0], word.y + at[1], float(word.kind.split()[1]))
        else:
            add_word(root, word, at=at)


def _grain_arrow(root: Any, x: float, y: float, size: float) -> None:
    half = size / 2
    lines = [(-half, 0.0, half, 0.0)]
    for way in (-1, 1):
        lines += [(way * half, 0.0, way * (half - 7), 3.0), (way * half, 0.0, way * (half - 7), -3.0)]
    add_lines(root, lines, "grain", at=(x, y))


def _symbol(root: Any, projection: Projection, x: float, y: float) -> None:
    """The sign of the projection: a cut cone from the side and from its small end (ISO 5456-2)."""
    import svgwrite.shapes

    third = projection == "third angle"
    circles, cone = (x - 12, x + 4) if third else (x + 14, x - 16)
    for radius in (6.5, 3.5):
        root.add(svgwrite.shapes.Circle((circles, y), radius, class_="thin symbol", debug=False))
    small, large = 3.5, 6.5
    left, right = (small, large) if third else (small, large)
    outline = [
        (cone, y - left, cone + 14, y - right),
        (cone + 14, y - right, cone + 14, y + right),
        (cone + 14, y + right, cone, y + left),
        (cone, y + left, cone, y - left),
    ]
    add_lines(root, outline, "thin symbol", at=(0, 0))
    add_lines(root, [(circles - 9, y, circles + 9, y), (circles, y - 9, circles, y + 9), (cone - 3, y, cone + 17, y)], "centre", at=(0, 0))


# words of the whole -------------------------------------------------------------------------------


def alt_text(part: Part, wanted: Wanted) -> str:
    """One sentence, no numbers."""
    face, edge, end = wanted.views
    told: dict[str, list[str]] = {}
    for cut in part.cuts:
        where = " and ".join(cut.surfaces)
        told.setdefault(cut.kind, [])
        if where not in told[cut.kind]:
            told[cut.kind].append(where)
    said = [_cuts_in_words(kind, places, sum(cut.kind == kind for cut in part.cuts)) for kind, places in told.items()]
    tail = f", with {_listed(said)}" if said else ", without cuts"
    return f"{part.name} in three views: {face}, {edge} and {end}{tail}."


def _cuts_in_words(kind: str, places: list[str], count: int) -> str:
    if kind == "outline":
        return "a shaped outline"
    article = "an" if kind[0] in "aeiou" else "a"
    prep = "on" if kind in ("tongue", "tenon", "bevel", "taper") else "at" if kind in ("rabbet", "notch") else "in"
    if set(places) == {"end a", "end b"} and count == 2:
        return f"{article} {kind} {prep} both ends"
    if set(places) == {"edge a", "edge b"} and count == 2:
        return f"{article} {kind} {prep} both edges"
    noun = f"{article} {kind}" if count == 1 else many(kind)
    return f"{noun} {prep} {_listed(places)}"


def _listed(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
