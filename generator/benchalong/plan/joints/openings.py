"""The opening that a part fits into: between the sides that a joint cuts, and how far it goes into them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, extent
from benchalong.plan.draft import Draft
from benchalong.plan.joints.member import Member, Side
from benchalong.plan.joints.scopes import is_called
from benchalong.plan.joints.sides import NotASide, find_surfaces, parse_side, split_side
from benchalong.plan.turns import WAYS, around
from benchalong.reading.written import Joint, Place

GOES_IN: Mapping[str, str] = {
    "tongue and groove": "tongue_length",
    "dado": "reach",
    "mortise and tenon": "tenon_length",
}
"""The size of a joint that says how far what enters goes in."""
FLOATS_BY: Mapping[str, str] = {"width": "panel_side_play", "length": "panel_end_play"}


class NoOpening(Exception):
    """Nothing, or too much, stands around the part."""

    def __init__(self, message: str, expected: str) -> None:
        super().__init__(message)
        self.message, self.expected = message, expected


@dataclass(frozen=True)
class Opening:
    """Along one axis of the assembly, side to side."""

    axis: int
    near: Length
    far: Length
    goes_in: Length
    """At each end."""

    @property
    def size(self) -> Length:
        return self.far - self.near + 2 * self.goes_in

    @property
    def start(self) -> Length:
        return self.near - self.goes_in


def axis_of_size(key: str, place: Place) -> int:
    """Which axis of the assembly a part's width or length lies along."""
    along, face = (next(n for n in range(3) if WAYS[way][n]) for way in (place.along, place.face))
    return along if key == "length" else 3 - along - face


def goes_in(name: str, joint: Joint, part: str, key: str, draft: Draft) -> Length | None:
    """How far a part goes in at each end; None while that isn't known."""
    if part in joint.floats:
        sizes = [_size(name, size, draft) for size in ("depth", FLOATS_BY[key])]
        return None if sizes[0] is None or sizes[1] is None else sizes[0] - sizes[1]
    return _size(name, GOES_IN[joint.kind], draft)


def grooved_sides(joint: Joint, part: str, scope: str, members: tuple[Member, ...]) -> Iterator[Side]:
    """The sides that a joint cuts, of all but the part that fits between them."""
    others = [member for member in members if member.part != part and member.part not in joint.floats]
    whole = around([member.room for member in others]) if others else None
    for who, side in map(split_side, joint.cut_in):
        for member in others:
            if whole is not None and is_called(member, who, scope):
                try:
                    (term,) = parse_side(side)
                    found = find_surfaces(term, member.turn, member.room, whole)
                except (NotASide, ValueError):
                    continue
                yield from (Side(member, (surface,)) for surface in found)


def opening(sides: list[Side], axis: int, *, goes_in: Length, at: Length | None) -> Opening:
    """Between the two that face each other on an axis. `at` is where the part begins, if that is said.

    Raises NoOpening.
    """
    nears = sorted({side.member.room[1][axis] for side in sides if side.looks[0][axis] > 0})
    fars = sorted({side.member.room[0][axis] for side in sides if side.looks[0][axis] < 0})
    pairs = [(near, next((far for far in fars if far > near), None)) for near in nears]
    found = [(near, far) for near, far in pairs if far is not None]
    if at is not None:
        found = [(near, far) for near, far in found if near >= at][:1]
    if not found:
        raise NoOpening("nothing of the joint stands on both sides of it", "two sides that face each other")
    if len(found) > 1:
        raise NoOpening(f"there are {len(found)} openings it may fit", "at: and the corner it begins at")
    near, far = found[0]
    return Opening(axis, near, far, goes_in)


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
