"""The opening that a part fits into: between the sides that a joint cuts, and how far it goes into them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import product

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, extent
from benchalong.plan.draft import Draft
from benchalong.plan.joints.member import TOUCHING, Member, Side
from benchalong.plan.joints.scopes import is_called
from benchalong.plan.joints.sides import NotASide, find_surfaces, parse_side, split_side
from benchalong.plan.model import Surface
from benchalong.plan.turns import WAYS, around, axis_of
from benchalong.reading.written import Joint, Place

GOES_IN: Mapping[str, str] = {
    "tongue and groove": "tongue_length",
    "dado": "reach",
    "mortise and tenon": "tenon_length",
}
"""The size of a joint that says how far what enters goes in."""
RABBET = "rabbet"
FLAT: tuple[Surface, ...] = ("face", "back")
"""Under these a rabbet has its depth; under an edge or end its width."""
FLOATS_BY: Mapping[str, str] = {"width": "panel_side_play", "length": "panel_end_play"}


@dataclass(frozen=True)
class Reach:
    """How far something goes into a joint."""

    size: Length | None
    """None while it isn't known."""
    follows: frozenset[str]


@dataclass(frozen=True)
class Bound:
    """A side that an opening ends at, on one axis."""

    plane: Length
    looks: int
    """1 towards greater numbers, -1 towards smaller ones."""
    goes_in: Length = TOUCHING
    """How far what fits goes into it."""


class NoOpening(Exception):
    """Nothing, or too much, stands around the part."""

    def __init__(self, message: str, expected: str) -> None:
        super().__init__(message)
        self.message, self.expected = message, expected


@dataclass(frozen=True)
class Opening:
    """Along one axis of the assembly, what goes in counted with it."""

    axis: int
    near: Length
    far: Length

    @property
    def size(self) -> Length:
        return self.far - self.near

    @property
    def start(self) -> Length:
        return self.near


def axis_of_size(key: str, place: Place) -> int:
    """Which axis of the assembly a part's width or length lies along."""
    along, face = (axis_of(WAYS[way]) for way in (place.along, place.face))
    return along if key == "length" else 3 - along - face


def goes_in(name: str, joint: Joint, part: str, key: str, draft: Draft, surface: Surface) -> Length | None:
    """How far a part goes in at a surface that the joint cuts; None while that isn't known."""
    if part in joint.floats:
        sizes = [_size(name, size, draft) for size in ("depth", FLOATS_BY[key])]
    elif joint.kind == RABBET:
        sizes = [_size(name, size, draft) for size in ("depth" if surface in FLAT else "width", "play")]
    else:
        return _size(name, GOES_IN[joint.kind], draft)
    return None if sizes[0] is None or sizes[1] is None else sizes[0] - sizes[1]


def is_known(name: str, joint: Joint, part: str, key: str, draft: Draft) -> bool:
    """Whether the joint's own sizes are known by now, as far as they say how far a part goes in."""
    surfaces: tuple[Surface, ...] = ("face", "edge a") if joint.kind == RABBET else ("face",)
    return all(goes_in(name, joint, part, key, draft, surface) is not None for surface in surfaces)


def reach_of(name: str, draft: Draft) -> Reach | None:
    """How far what enters a joint goes in; None for a kind that has no such size. In a rabbet it is
    the depth less the play, as for a board that ends in it."""
    joint = draft.written.joints[name]
    keys = ("depth", "play") if joint.kind == RABBET else tuple(filter(None, (GOES_IN.get(joint.kind),)))
    if not keys:
        return None
    known = [draft.names.get(f"{name}.{key}") for key in keys]
    follows = frozenset[str]().union(*(one.follows for one in known if one is not None))
    values = [one.value.value for one in known if one is not None and one.value is not None]
    if len(values) < len(keys):
        return Reach(None, follows)
    return Reach(values[0] - sum(values[1:], start=Length(0)), follows)


def grooved_sides(joint: Joint, part: str, scope: str, members: tuple[Member, ...]) -> Iterator[Side]:
    """The sides that a joint cuts, of all but the part that fits between them."""
    others = [member for member in members if member.part != part and member.part not in joint.floats]
    whole = around([member.room for member in others]) if others else None
    for who, side in map(split_side, joint.cut_in):
        for member in others:
            if whole is not None and is_called(member, who, scope):
                try:
                    terms = parse_side(side)
                    found = [find_surfaces(term, member.turn, member.room, whole) for term in terms]
                except NotASide:
                    continue
                yield from (Side(member, surfaces) for surfaces in product(*found))


def bounds_of(members: Iterable[Member], axis: int) -> Iterator[Bound]:
    """Both sides of everything, for an opening between whole parts."""
    for member in members:
        yield Bound(member.room[0][axis], -1)
        yield Bound(member.room[1][axis], 1)


def opening(bounds: Iterable[Bound], axis: int, *, at: Length | None) -> Opening:
    """Between the two that face each other on an axis. `at` is where the part begins, if that is said.

    Raises NoOpening.
    """
    all_bounds = sorted(bounds, key=lambda bound: (bound.plane, bound.goes_in))
    fars = [bound for bound in all_bounds if bound.looks < 0]
    pairs = {
        near.plane: (near, next((far for far in fars if far.plane > near.plane), None))
        for near in all_bounds
        if near.looks > 0
    }
    found = [(near, far) for near, far in pairs.values() if far is not None]
    if at is not None:
        found = [(near, far) for near, far in found if near.plane >= at][:1]
    if not found:
        raise NoOpening("nothing of it stands on both sides", "two sides that face each other")
    if len(found) > 1:
        raise NoOpening(f"there are {len(found)} openings it may fit", "at: and the corner it begins at")
    near, far = found[0]
    return Opening(axis, near.plane - near.goes_in, far.plane + far.goes_in)


def thick_start(side: Side, name: str, draft: Draft, axis: int, thickness: Length) -> Length:
    """Where a part that lies in a joint begins on the axis of its thickness: in the middle of a groove,
    against the floor of a rabbet."""
    if not side.is_arris:
        return middle_of_groove(side, name, draft, axis) - thickness / 2
    surface, way = next(
        (surface, way) for surface, way in zip(side.surfaces, side.looks, strict=True) if way[axis]
    )
    deep = _size(name, "depth" if surface in FLAT else "width", draft) or Length(0)
    near, far = side.member.room
    return far[axis] - deep if way[axis] > 0 else near[axis] + deep - thickness


def middle_of_groove(side: Side, name: str, draft: Draft, axis: int) -> Length:
    """Where the middle of a groove lies on the axis of the panel's thickness."""
    lies = SURFACES[side.surfaces[0]]
    whole = extent(side.box, lies.across)
    width, across = (_size(name, key, draft) for key in ("width", "across"))
    middle = whole / 2 if across is None or width is None else across + width / 2
    room = side.member.placed(
        {lies.run: (Length(0), Length(0)), lies.inward: (Length(0), Length(0)), lies.across: (middle, middle)}
    )
    return room[0][axis]


def _size(name: str, key: str, draft: Draft) -> Length | None:
    known = draft.names.get(f"{name}.{key}")
    return None if known is None or known.value is None else known.value.value
