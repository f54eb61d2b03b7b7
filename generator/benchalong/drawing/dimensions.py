"""Which sizes a part's drawing must give: what, from where to where, and in which view it shows best.

Positions are measured from the places the plan's language counts from: along from end a, across from
edge a, down from the face. Whole sizes come from the part, the rest from the bodies its cuts take away,
so that the numbers are those of the wood that is left.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from benchalong.drawing.views import LOOKING, ViewName
from benchalong.ground.lengths import Length, Point2
from benchalong.plan.model import AXES, Axis, Circle, Cut, CutKind, Outline, Part, Prism

Range = tuple[Length, Length]


@dataclass(frozen=True)
class Box:
    """From and to on each of the part's directions."""

    along: Range
    across: Range
    down: Range

    def on(self, axis: Axis) -> Range:
        return (self.along, self.across, self.down)[AXES.index(axis)]


@dataclass(frozen=True)
class Span:
    """A straight size: between two planes square to an axis."""

    what: str
    """`groove: depth`, without numbers."""
    axis: Axis
    start: Length
    end: Length
    views: tuple[ViewName, ...]
    """Where it may stand, best first."""
    feature: Box
    """What it belongs to: its extension lines begin here."""

    @property
    def length(self) -> Length:
        return self.end - self.start


@dataclass(frozen=True)
class RoundSize:
    """The size of a circle or a round corner, told by a leader."""

    what: str
    sign: str
    """`ø` or `R`."""
    length: Length
    view: ViewName
    centre: Point2
    """In the view's own order: right, downwards."""
    radius: Length


@dataclass(frozen=True)
class Wanted:
    """Everything the drawing must say."""

    views: tuple[ViewName, ...]
    spans: tuple[Span, ...]
    rounds: tuple[RoundSize, ...]
    notes: tuple[str, ...]
    """Sentences without sizes."""


def wanted_sizes(part: Part) -> Wanted:
    """Each size once; equal cuts give their own sizes once and a note that they are alike."""
    views = chosen_views(part)
    told: set[tuple[object, ...]] = set()
    spans = list(_whole_sizes(part, views))
    rounds: list[RoundSize] = []
    for cut in part.cuts:
        inside = _Cut(part, cut, views)
        own, positions = SIZES[cut.kind](inside), POSITIONS[cut.kind](inside)
        fresh = likeness(cut) not in told
        told.add(likeness(cut))
        spans += [*own, *positions] if fresh else positions
        rounds += _rounds(inside) if fresh else []
    return Wanted(views, _once(spans), tuple(rounds), tuple(_notes(part)))


def chosen_views(part: Part) -> tuple[ViewName, ...]:
    """The face, one edge and one end: of each pair the one that shows more cuts; edge a and end b when equal."""
    seen = [surface for cut in part.cuts for surface in cut.surfaces]
    edge: ViewName = "edge b" if seen.count("edge b") > seen.count("edge a") else "edge a"
    end: ViewName = "end a" if seen.count("end a") > seen.count("end b") else "end b"
    return ("face", edge, end)


def likeness(cut: Cut) -> tuple[object, ...]:
    """Equal for cuts that are made with the same cutter at the same setting: kind, sizes, and the way they lie."""
    own = tuple((size.name, size.length) for size in cut.sizes if size.name not in ("at", "across", "from", "to"))
    kinds = tuple(sorted(surface.split()[0] for surface in cut.surfaces))
    shapes = tuple(sorted(_measures(prism) for prism in cut.takes))
    return (cut.kind, kinds, own, shapes)


def _measures(prism: Prism) -> tuple[object, ...]:
    low, high = _corners(prism.shape)
    return (prism.axis, high[0] - low[0], high[1] - low[1], prism.end - prism.start)


def _corners(shape: Outline | Circle) -> tuple[Point2, Point2]:
    if isinstance(shape, Circle):
        half = shape.diameter / 2
        (x, y) = shape.centre
        return (x - half, y - half), (x + half, y + half)
    xs = [corner.at[0] for corner in shape.corners]
    ys = [corner.at[1] for corner in shape.corners]
    return (min(xs), min(ys)), (max(xs), max(ys))


def prism_box(prism: Prism, part: Part) -> Box:
    """The room a prism takes within the part."""
    low, high = _corners(prism.shape)
    flat = [axis for axis in AXES if axis != prism.axis]
    ranges = {flat[0]: (low[0], high[0]), flat[1]: (low[1], high[1]), prism.axis: (prism.start, prism.end)}
    return Box(*(_within(ranges[axis], whole) for axis, whole in zip(AXES, part.box, strict=True)))


def _within(span: Range, whole: Length) -> Range:
    return (min(max(span[0], Length(0)), whole), max(Length(0), min(span[1], whole)))


def _around(boxes: Sequence[Box]) -> Box:
    return Box(*((min(box.on(axis)[0] for box in boxes), max(box.on(axis)[1] for box in boxes)) for axis in AXES))


@dataclass(frozen=True)
class _Cut:
    """A cut within its part, with what is asked of it again and again."""

    part: Part
    cut: Cut
    views: tuple[ViewName, ...]

    @property
    def boxes(self) -> list[Box]:
        return [prism_box(prism, self.part) for prism in self.cut.takes]

    @property
    def box(self) -> Box:
        return _around(self.boxes)

    def whole(self, axis: Axis) -> Length:
        return self.part.box[AXES.index(axis)]

    @property
    def edge(self) -> ViewName:
        return self.views[1]

    @property
    def end(self) -> ViewName:
        return self.views[2]

    def reaches(self, view: ViewName) -> bool:
        """Whether the cut runs out where this view looks at it."""
        axis = LOOKING[view].into
        low, high = self.box.on(axis)
        return low == 0 if view in ("face", "edge a", "end a") else high == self.whole(axis)

    def span(self, word: str, axis: Axis, span: Range, *, best: ViewName, box: Box | None = None) -> list[Span]:
        """The size, unless there is nothing to measure; in its best view, else in the other that shows its direction."""
        if span[0] >= span[1]:
            return []
        both = [view for view in self.views if axis in (LOOKING[view].right, LOOKING[view].downwards)]
        order = tuple(sorted(both, key=lambda view: view != best))
        name = self.cut.name if self.cut.name == self.cut.kind else f"{self.cut.name} ({self.cut.kind})"
        return [Span(f"{name}: {word}", axis, span[0], span[1], order, box or self.box)]

    def from_zero(self, word: str, axis: Axis, value: Length, *, best: ViewName, box: Box | None = None) -> list[Span]:
        """A position: from where its axis counts from."""
        return self.span(word, axis, (Length(0), value), best=best, box=box)

    def stops(self, axis: Axis, *, best: ViewName) -> list[Span]:
        """Where a run begins and ends, unless it runs out."""
        low, high = self.box.on(axis)
        word = {"along": "end a", "across": "edge a", "down": "face"}[axis]
        spans = self.from_zero(f"from {word} to where it begins", axis, low, best=best)
        if high < self.whole(axis):
            spans += self.from_zero(f"from {word} to where it ends", axis, high, best=best)
        return spans


def _whole_sizes(part: Part, views: tuple[ViewName, ...]) -> Iterator[Span]:
    face, edge, end = views
    box = Box((Length(0), part.length), (Length(0), part.width), (Length(0), part.thickness))
    yield Span("length", "along", Length(0), part.length, (face, edge), box)
    shoulders = shoulder_range(part)
    if shoulders is not None:
        yield Span("length between shoulders", "along", *shoulders, (face, edge), box)
    yield Span("width", "across", Length(0), part.width, (face, end), box)
    yield Span("thickness", "down", Length(0), part.thickness, (end, edge), box)


def shoulder_range(part: Part) -> Range | None:
    """From shoulder to shoulder of a part with tongues or tenons on its ends; None for others."""
    first, last = Length(0), part.length
    for cut in part.cuts:
        if cut.kind in ("tongue", "tenon") and cut.takes:
            box = _around([prism_box(prism, part) for prism in cut.takes])
            first = max(first, box.along[1]) if "end a" in cut.surfaces else first
            last = min(last, box.along[0]) if "end b" in cut.surfaces else last
    return (first, last) if (first > 0 or last < part.length) and first < last else None


def _is_on(inside: _Cut, kind: str) -> bool:
    return any(surface.startswith(kind) for surface in inside.cut.surfaces)


# own sizes ----------------------------------------------------------------------------------------


def _groove_sizes(inside: _Cut) -> list[Span]:
    """Width and depth in the view along the groove where it runs out there, else where it is looked into."""
    box, edge, end = inside.box, inside.edge, inside.end
    if _is_on(inside, "end"):
        return inside.span("width", "down", box.down, best=edge) + inside.span("depth", "along", box.along, best=edge)
    if _is_on(inside, "edge"):
        runs_out = inside.reaches(end)
        wide = inside.span("width", "down", box.down, best=end if runs_out else edge)
        return wide + inside.span("depth", "across", box.across, best=end if runs_out else "face")
    wide_axis: Axis = "across" if box.along[1] - box.along[0] >= box.across[1] - box.across[0] else "along"
    if wide_axis == "along":
        return _dado_sizes(inside)
    wide = inside.span("width", "across", box.across, best=end if inside.reaches(end) else "face")
    return wide + inside.span("depth", "down", box.down, best=end)


def _dado_sizes(inside: _Cut) -> list[Span]:
    box, edge = inside.box, inside.edge
    wide = inside.span("width", "along", box.along, best=edge if inside.reaches(edge) else "face")
    return wide + inside.span("depth", "down", box.down, best=edge)


def _arris_sizes(inside: _Cut) -> list[Span]:
    """Of a rabbet or bevel: its profile, seen from where it runs out."""
    box = inside.box
    if _is_on(inside, "end"):
        profile = inside.edge
        return inside.span("width", "along", box.along, best=profile) + inside.span(
            "depth", "down", box.down, best=profile
        )
    profile = inside.end
    return inside.span("width", "across", box.across, best=profile) + inside.span("depth", "down", box.down, best=profile)


def _tongue_sizes(inside: _Cut) -> list[Span]:
    box, rest = inside.box, _left_standing(inside)
    if _is_on(inside, "end"):
        long = inside.span("length", "along", box.along, best=inside.edge)
        return long + inside.span("thickness", "down", rest.down, best=inside.edge, box=box)
    long = inside.span("length", "across", box.across, best=inside.end)
    return long + inside.span("thickness", "down", rest.down, best=inside.end, box=box)


def _tenon_sizes(inside: _Cut) -> list[Span]:
    box, rest = inside.box, _left_standing(inside)
    wide = inside.span("width", "across", rest.across, best="face", box=box)
    return _tongue_sizes(inside) + (wide if rest.across != (0, inside.part.width) else [])


def _left_standing(inside: _Cut) -> Box:
    """What a tongue or tenon keeps of its part's section."""
    (left, right), (top, bottom) = (Length(0), inside.part.width), (Length(0), inside.part.thickness)
    for box in inside.boxes:
        at_face, at_back = box.down[0] == 0, box.down[1] == inside.part.thickness
        at_a, at_b = box.across[0] == 0, box.across[1] == inside.part.width
        if at_face != at_back:
            top, bottom = (max(top, box.down[1]), bottom) if at_face else (top, min(bottom, box.down[0]))
        elif at_a != at_b:
            left, right = (max(left, box.across[1]), right) if at_a else (left, min(right, box.across[0]))
    return Box(inside.box.along, (left, right), (top, bottom))


def _mortise_sizes(inside: _Cut) -> list[Span]:
    box = inside.box
    words: dict[Axis, str] = {"along": "length", "across": "width", "down": "width"}
    if _is_on(inside, "edge"):
        words["across"], best = "depth", inside.edge
    elif _is_on(inside, "end"):
        words.update({"across": "length", "along": "depth"})
        best = inside.end
    else:
        words["down"], best = "depth", "face"
    spans = []
    for axis, word in words.items():
        shown = best if axis != LOOKING[best].into else inside.edge if axis == "down" else "face"
        if word != "depth" or box.on(axis) != (0, inside.whole(axis)):
            spans += inside.span(word, axis, box.on(axis), best=shown)
    return spans


def _hole_sizes(inside: _Cut) -> list[Span]:
    """The depth; the diameter stands at a leader."""
    axis = inside.cut.takes[0].axis if inside.cut.takes else "down"
    if inside.box.on(axis) == (0, inside.whole(axis)):
        return []
    best: dict[Axis, ViewName] = {"down": inside.edge, "across": "face", "along": "face"}
    return inside.span("depth", axis, inside.box.on(axis), best=best[axis])


def _notch_sizes(inside: _Cut) -> list[Span]:
    box = inside.box
    return inside.span("length", "along", box.along, best="face") + inside.span("width", "across", box.across, best="face")


def _taper_sizes(inside: _Cut) -> list[Span]:
    """How much is taken where most is taken."""
    if _is_on(inside, "edge"):
        return inside.span("takes", "across", inside.box.across, best="face")
    return inside.span("takes", "down", inside.box.down, best=inside.edge)


def _no_spans(inside: _Cut) -> list[Span]:  # noqa: ARG001
    return []


# positions ----------------------------------------------------------------------------------------


def _groove_positions(inside: _Cut) -> list[Span]:
    box, edge, end = inside.box, inside.edge, inside.end
    if _is_on(inside, "end"):
        near = inside.from_zero("from the face", "down", box.down[0], best=edge)
        return near + inside.stops("across", best=end)
    if _is_on(inside, "edge"):
        near = inside.from_zero("from the face", "down", box.down[0], best=end if inside.reaches(end) else edge)
        return near + inside.stops("along", best=edge)
    if box.along[1] - box.along[0] < box.across[1] - box.across[0]:
        return _dado_positions(inside)
    near = inside.from_zero("from edge a", "across", box.across[0], best=end if inside.reaches(end) else "face")
    return near + inside.stops("along", best="face")


def _dado_positions(inside: _Cut) -> list[Span]:
    best = inside.edge if inside.reaches(inside.edge) else "face"
    near = inside.from_zero("from end a", "along", inside.box.along[0], best=best)
    return near + inside.stops("across", best="face")


def _arris_positions(inside: _Cut) -> list[Span]:
    return inside.stops("across" if _is_on(inside, "end") else "along", best="face")


def _tongue_positions(inside: _Cut) -> list[Span]:
    best = inside.edge if _is_on(inside, "end") else inside.end
    return inside.from_zero("from the face", "down", _left_standing(inside).down[0], best=best)


def _tenon_positions(inside: _Cut) -> list[Span]:
    rest = _left_standing(inside)
    return _tongue_positions(inside) + inside.from_zero("from edge a", "across", rest.across[0], best="face")


def _mortise_positions(inside: _Cut) -> list[Span]:
    box = inside.box
    if _is_on(inside, "edge"):
        return inside.from_zero("from end a", "along", box.along[0], best=inside.edge) + inside.from_zero(
            "from the face", "down", box.down[0], best=inside.edge
        )
    if _is_on(inside, "end"):
        return inside.from_zero("from edge a", "across", box.across[0], best=inside.end) + inside.from_zero(
            "from the face", "down", box.down[0], best=inside.end
        )
    return inside.from_zero("from end a", "along", box.along[0], best="face") + inside.from_zero(
        "from edge a", "across", box.across[0], best="face"
    )


def _hole_positions(inside: _Cut) -> list[Span]:
    """Of each circle, its centre."""
    words: dict[Axis, str] = {"along": "from end a", "across": "from edge a", "down": "from the face"}
    best: dict[Axis, ViewName] = {"down": "face", "across": inside.edge, "along": inside.end}
    spans: list[Span] = []
    for prism in inside.cut.takes:
        if isinstance(prism.shape, Circle):
            flat = [axis for axis in AXES if axis != prism.axis]
            box = prism_box(prism, inside.part)
            for axis, value in zip(flat, prism.shape.centre, strict=True):
                word = f"centre {words[axis]}"
                spans += inside.from_zero(word, axis, value, best=best[prism.axis], box=box)
    return spans


def _notch_positions(inside: _Cut) -> list[Span]:
    """None for a notch in a corner."""
    box, spans = inside.box, []
    if box.along[0] > 0 and box.along[1] < inside.part.length:
        spans += inside.from_zero("from end a", "along", box.along[0], best="face")
    if box.across[0] > 0 and box.across[1] < inside.part.width:
        spans += inside.from_zero("from edge a", "across", box.across[0], best="face")
    return spans


def _taper_positions(inside: _Cut) -> list[Span]:
    best = "face" if _is_on(inside, "edge") else inside.edge
    return _stops_of_corners(inside, "along", best=best)


def _outline_positions(inside: _Cut) -> list[Span]:
    """Every corner that isn't on the part's own outline, by what it is away from end a and edge a."""
    return _stops_of_corners(inside, "along", best="face") + _stops_of_corners(inside, "across", best="face")


def _stops_of_corners(inside: _Cut, axis: Axis, *, best: ViewName) -> list[Span]:
    word = {"along": "corner from end a", "across": "corner from edge a", "down": "corner from the face"}[axis]
    spans: list[Span] = []
    for prism in inside.cut.takes:
        if isinstance(prism.shape, Outline) and axis != prism.axis:
            column = [one for one in AXES if one != prism.axis].index(axis)
            values = sorted({corner.at[column] for corner in prism.shape.corners})
            for value in values:
                box = _corner_box(prism, column, value, inside.part)
                if 0 < value < inside.whole(axis):
                    spans += inside.from_zero(word, axis, value, best=best, box=box)
    return spans


def _corner_box(prism: Prism, column: int, value: Length, part: Part) -> Box:
    """The room taken by the corners with one coordinate."""
    assert isinstance(prism.shape, Outline)
    here = tuple(corner for corner in prism.shape.corners if corner.at[column] == value)
    return prism_box(replace(prism, shape=Outline(here)), part)


SIZES: Mapping[CutKind, Callable[[_Cut], list[Span]]] = {
    "groove": _groove_sizes,
    "dado": _dado_sizes,
    "rabbet": _arris_sizes,
    "tongue": _tongue_sizes,
    "tenon": _tenon_sizes,
    "mortise": _mortise_sizes,
    "hole": _hole_sizes,
    "notch": _notch_sizes,
    "bevel": _arris_sizes,
    "taper": _taper_sizes,
    "outline": _no_spans,
}
POSITIONS: Mapping[CutKind, Callable[[_Cut], list[Span]]] = {
    "groove": _groove_positions,
    "dado": _dado_positions,
    "rabbet": _arris_positions,
    "tongue": _tongue_positions,
    "tenon": _tenon_positions,
    "mortise": _mortise_positions,
    "hole": _hole_positions,
    "notch": _notch_positions,
    "bevel": _arris_positions,
    "taper": _taper_positions,
    "outline": _outline_positions,
}


def _rounds(inside: _Cut) -> list[RoundSize]:
    """The first circle of a cut, and each radius of its outlines once."""
    found: list[RoundSize] = []
    told: set[Length] = set()
    looked_at: dict[Axis, ViewName] = {"down": "face", "across": inside.edge, "along": inside.end}
    for prism in inside.cut.takes:
        view = looked_at[prism.axis]
        flipped = [axis for axis in AXES if axis != prism.axis][0] != LOOKING[view].right
        if isinstance(prism.shape, Circle):
            x, y = prism.shape.centre
            spot = (y, x) if flipped else (x, y)
            found.append(
                RoundSize(
                    f"{inside.cut.name}: diameter", "ø", prism.shape.diameter, view, spot, prism.shape.diameter / 2
                )
            )
            break
        for corner in prism.shape.corners:
            if corner.radius > 0 and corner.radius not in told:
                told.add(corner.radius)
                spot = (corner.at[1], corner.at[0]) if flipped else corner.at
                found.append(RoundSize(f"{inside.cut.name}: radius", "R", corner.radius, view, spot, Length(0)))
    return found


def _once(spans: Sequence[Span]) -> tuple[Span, ...]:
    """Each stretch once a view; the first that asked names it."""
    kept: dict[tuple[object, ...], Span] = {}
    for span in spans:
        kept.setdefault((span.axis, span.start, span.end, span.views[0]), span)
    return tuple(kept.values())


def _notes(part: Part) -> Iterator[str]:
    """What a number can't say: which cuts are alike, which go through."""
    groups: dict[tuple[object, ...], list[Cut]] = {}
    for cut in part.cuts:
        groups.setdefault(likeness(cut), []).append(cut)
    for cuts in groups.values():
        if len(cuts) > 1 and cuts[0].kind != "outline":
            word = many(cuts[0].kind)
            yield f"Both {word} are alike." if len(cuts) == 2 else f"All {len(cuts)} {word} are alike."
        if cuts[0].kind in ("hole", "mortise") and _goes_through(cuts[0], part):
            one = len(cuts) == 1
            yield f"The {cuts[0].kind if one else many(cuts[0].kind)} {'goes' if one else 'go'} right through."


def many(word: str) -> str:
    """The word for more than one."""
    return f"{word}es" if word.endswith(("ch", "sh", "s", "x")) else f"{word}s"


def _goes_through(cut: Cut, part: Part) -> bool:
    boxes = [(prism.axis, prism_box(prism, part)) for prism in cut.takes]
    surface = cut.surfaces[0] if cut.surfaces else "face"
    into: Axis = "along" if surface.startswith("end") else "across" if surface.startswith("edge") else "down"
    return all(box.on(into) == (0, part.box[AXES.index(into)]) for _, box in boxes)
