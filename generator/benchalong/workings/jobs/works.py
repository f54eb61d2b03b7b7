"""A task put as the trade asks it: what kind of work, on what piece, with which numbers.

Numbers are read from the wood that is taken away, so that what is asked of a tool is exactly what the plan
cuts.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import AXES, Axis, Circle, Cut, Part, Plan, Stock, Surface
from benchalong.trade.ways.model import Direction, Family, Piece, SurfaceKind, Wood, Work
from benchalong.workings.jobs.alike import Alike

DIRECTIONS: Mapping[Axis, Direction] = {"along": "length", "across": "width", "down": "thickness"}
KINDS: Mapping[Surface, SurfaceKind] = {
    "face": "face", "back": "face", "edge a": "edge", "edge b": "edge", "end a": "end", "end b": "end",
}  # fmt: skip
NEAR_SIDES: Mapping[Axis, tuple[Surface, Surface]] = {
    "along": ("end a", "end b"), "across": ("edge a", "edge b"), "down": ("face", "back"),
}  # fmt: skip
DEGREE = Fraction(1, 10)
"""Angles are set by no finer scale."""
NOTHING = Length(0)


@dataclass(frozen=True)
class Ranges:
    """The room a cut takes up within its part, by direction."""

    box: Mapping[Axis, Length]
    room: Mapping[Axis, tuple[Length, Length]]

    def span(self, axis: Axis) -> Length:
        return self.room[axis][1] - self.room[axis][0]

    def near(self, axis: Axis) -> tuple[Surface, Length]:
        """The side of the part it lies nearer to, and how near; of two as near, the first."""
        before, after = self.room[axis][0], self.box[axis] - self.room[axis][1]
        first, second = NEAR_SIDES[axis]
        return (first, before) if before <= after else (second, after)


def work_of(plan: Plan, alike: Alike, piece: Piece) -> Work:
    """The first of alike cuts, `count` times over: in so many copies, and so often in each."""
    asked = MAKERS[alike.cut.kind](_Given(plan, alike, alike.cut, alike.part, piece))
    copies = len(alike.shape.marks) or alike.part.count
    return replace(asked, count=max(1, copies * len(alike.cuts) // asked.each))


def each_work(plan: Plan, alike: Alike, piece: Piece) -> tuple[Work, ...]:
    """Every one of alike cuts by itself, for what is set to each place."""
    return tuple(MAKERS[cut.kind](_Given(plan, alike, cut, alike.part, piece)) for cut in alike.cuts)


def wood_of(plan: Plan, stock: Stock) -> Wood:
    """Sheet, or solid wood soft or hard; what isn't known is taken as hard."""
    species = plan.woods.find(stock.species) if stock.species else None
    is_soft = species is not None and species.is_softwood
    return "sheet" if stock.kind == "sheet" else "soft" if is_soft else "hard"


@dataclass(frozen=True)
class _Given:
    plan: Plan
    alike: Alike
    cut: Cut
    part: Part
    piece: Piece

    @property
    def joint_kind(self) -> str:
        return self.plan.joints[self.cut.joint].kind if self.cut.joint else ""

    @property
    def ranges(self) -> Ranges:
        box = dict(zip(AXES, self.part.box, strict=True))
        rooms = [prism.room for prism in self.cut.takes if not prism.outside]
        room = {
            axis: (
                max(NOTHING, min((each[axis][0] for each in rooms), default=NOTHING)),
                min(box[axis], max((each[axis][1] for each in rooms), default=box[axis])),
            )
            for axis in AXES
        }
        return Ranges(box, room)

    def size(self, name: str, otherwise: Length = NOTHING) -> Length:
        return next((size.length for size in self.cut.sizes if size.name == name), otherwise)


def pocket(given: _Given, family: Family, *, run: Axis, surface: Surface | None = None) -> Work:
    """Wood taken out of one surface, along a run: what most cuts are."""
    into = surface or given.cut.surfaces[0]
    inward = SURFACES[into].inward
    across = next(axis for axis in AXES if axis not in (run, inward))
    ranges = given.ranges
    side, near = ranges.near(across)
    start, end = ranges.room[run]
    return Work(
        family=family,
        piece=given.piece,
        surface=KINDS[into],
        run=DIRECTIONS[run],
        width=ranges.span(across),
        depth=ranges.span(inward),
        length=end - start,
        near=near,
        before=start,
        through=ranges.span(inward) == ranges.box[inward],
        cut_in=into,
        near_side=side,
    )


def groove(given: _Given) -> Work:
    return pocket(given, "groove", run=SURFACES[given.cut.surfaces[0]].run)


def dado(given: _Given) -> Work:
    asked = pocket(given, "dado", run="across")
    return replace(asked, family="stopped dado") if asked.is_stopped else asked


def rabbet(given: _Given) -> Work:
    """Cut in the face; its width is measured from the edge or end."""
    side, face = given.cut.surfaces
    return pocket(given, "rabbet", run=SURFACES[side].run, surface=face)


def tongue(given: _Given) -> Work:
    """What is left standing between two cheeks."""
    side = given.cut.surfaces[0]
    lies = SURFACES[side]
    whole = dict(zip(AXES, given.part.box, strict=True))
    thick = given.size("thickness")
    near = given.size("across", (whole["down"] - thick) / 2)
    return Work(
        family="tongue",
        piece=given.piece,
        surface=KINDS[side],
        run=DIRECTIONS[lies.run],
        width=thick,
        depth=given.size("length"),
        length=whole[lies.run],
        near=min(near, whole["down"] - near - thick),
        cut_in=side,
        near_side="face" if near <= whole["down"] - near - thick else "back",
    )


def tenon(given: _Given) -> Work:
    width = given.size("width", given.part.width)
    first = given.size("at", (given.part.width - width) / 2)
    shoulders = (first, given.part.width - width - first)
    return replace(tongue(given), family="tenon", shoulders=shoulders)


def mortise(given: _Given) -> Work:
    side = given.cut.surfaces[0]
    if given.joint_kind in ("hinge", "slide", "stay") or given.cut.hardware:
        return gain(given)
    if given.joint_kind == "dovetail":
        return fingers(given)
    return pocket(given, "mortise", run=SURFACES[side].run)


def gain(given: _Given) -> Work:
    """Let in for a leaf: it runs across the edge, so that its width lies along it."""
    side = given.cut.surfaces[0]
    lies = SURFACES[side]
    return pocket(given, "hinge gain", run=lies.across if lies.run == "along" else lies.run)


def hole(given: _Given) -> Work:
    side = given.cut.surfaces[0]
    lies = SURFACES[side]
    asked = pocket(given, "pilot hole", run=lies.run)
    joint = given.plan.joints.get(given.cut.joint)
    is_dowel = joint is not None and any(size.name == "dowel" and size.length > 0 for size in joint.sizes)
    if is_dowel:
        return replace(asked, family="dowel hole")
    return replace(asked, family="clearance hole") if asked.through else asked


def notch(given: _Given) -> Work:
    """Right through the thickness, out of an edge, an end or a corner."""
    if given.joint_kind in ("box joint", "dovetail"):
        return fingers(given)
    return pocket(given, "notch", run="down")


def fingers(given: _Given) -> Work:
    """All cuts at one end together; the narrowest gap between what is left decides the cutter."""
    kind: Family = "fingers"
    if given.joint_kind == "dovetail":
        meeting = given.plan.joints[given.cut.joint].meetings[0]
        kind = "pins" if meeting.cut_in.part == given.part.id else "tails"
    end = next(surface for surface in given.cut.surfaces if surface.startswith("end"))
    ends = {surface for cut in given.alike.cuts for surface in cut.surfaces if surface.startswith("end")}
    own = pocket(given, kind, run="down", surface=end)
    narrow = [
        size.length for cut in given.alike.cuts for size in cut.sizes if size.name == "narrow width"
    ] or [size.length for cut in given.alike.cuts for size in cut.sizes if size.name == "width"]
    slope = _slope(given) if kind != "fingers" else Fraction(0)
    return replace(
        own,
        width=min(narrow, default=own.width),
        angle=slope,
        each=max(1, len(given.alike.cuts) // len(ends)),
    )


def _slope(given: _Given) -> Fraction:
    joint = given.plan.joints[given.cut.joint]
    slope = next((size.length for size in joint.sizes if size.name == "slope"), Fraction(1, 8))
    return degrees(float(slope), 1.0)


def bevel(given: _Given) -> Work:
    side, face = given.cut.surfaces
    if given.joint_kind == "mitre":
        return _mitre(given, across=given.part.thickness, along=given.size("width"), run="width")
    width, depth = given.size("width"), given.size("depth")
    return Work(
        family="bevel",
        piece=given.piece,
        surface=KINDS[face],
        run=DIRECTIONS[SURFACES[side].run],
        width=width,
        depth=depth,
        length=dict(zip(AXES, given.part.box, strict=True))[SURFACES[side].run],
        angle=degrees(float(depth), float(width)),
        cut_in=face,
        near_side=side,
    )


def taper(given: _Given) -> Work:
    start, stop, takes = given.size("from"), given.size("to"), given.size("takes")
    if given.joint_kind == "mitre":
        return _mitre(given, across=takes, along=abs(stop - start), run="thickness")
    side = given.cut.surfaces[0]
    lies = SURFACES[side]
    across = next(axis for axis in AXES if axis not in (lies.inward, "along"))
    return Work(
        family="taper",
        piece=given.piece,
        surface=KINDS[side],
        width=dict(zip(AXES, given.part.box, strict=True))[across],
        depth=takes,
        length=abs(stop - start),
        cut_in=side,
        near_side=NEAR_SIDES[across][0],
    )


def _mitre(given: _Given, *, across: Length, along: Length, run: Direction) -> Work:
    """Over the end, sloping across the face (a frame's) or through the thickness (a case's)."""
    ranges = given.ranges
    end, _ = ranges.near("along")
    return Work(
        family="mitre",
        piece=given.piece,
        surface="end",
        run=run,
        width=across,
        length=given.part.width if run == "width" else given.part.thickness,
        angle=degrees(float(along), float(across)),
        through=True,
        cut_in=end,
    )


def slot(given: _Given) -> Work:
    """In the sloping face of a mitre, in its middle."""
    is_frame = any(cut.kind == "taper" and cut.joint == given.cut.joint for cut in given.alike.shape.cuts)
    other = given.part.thickness
    width = given.size("width")
    return Work(
        family="spline slot",
        piece=given.piece,
        surface="end",
        run="width",
        width=width,
        depth=given.size("depth"),
        length=given.part.width,
        near=max(NOTHING, (other - width) / 2),
        angle=Fraction(45),
        is_frame=is_frame,
        cut_in=given.cut.surfaces[0],
    )


def outline(given: _Given) -> Work:
    shapes = [prism.shape for prism in given.cut.takes]
    is_round = any(
        isinstance(shape, Circle) or any(corner.radius > 0 for corner in shape.corners) for shape in shapes
    )
    rooms = [prism.room for prism in given.cut.takes]
    along = max((room["along"][1] - room["along"][0] for room in rooms), default=given.part.length)
    across = max((room["across"][1] - room["across"][0] for room in rooms), default=given.part.width)
    return Work(
        family="curved outline" if is_round else "straight outline",
        piece=given.piece,
        width=min(across, given.part.width),
        depth=given.part.thickness,
        length=min(along, given.part.length),
        through=True,
    )


def degrees(rise: float, run: float) -> Fraction:
    """The angle whose tangent is rise over run, to a tenth of a degree."""
    return round(Fraction(math.degrees(math.atan2(rise, run))) / DEGREE) * DEGREE


MAKERS: Mapping[str, Callable[[_Given], Work]] = {
    "groove": groove,
    "dado": dado,
    "rabbet": rabbet,
    "tongue": tongue,
    "tenon": tenon,
    "mortise": mortise,
    "hole": hole,
    "notch": notch,
    "bevel": bevel,
    "taper": taper,
    "outline": outline,
    "slot": slot,
}
"""By kind of cut."""
