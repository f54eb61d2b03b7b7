"""Lids of boxes: what holds them open, room for fingers, and a way out for a child.

What turns is a lid when its axis lies level and it lies flat over a space that wood shuts in on four sides
and below. It is the lid of a box that a child can climb into when that space is large enough.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import pi

from benchalong.ground.lengths import Length
from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Circle, Cut, Outline, Plan, Prism
from benchalong.plan.turns import Room, around
from benchalong.trade import fixings as trade
from benchalong.workings.holding.words import far, finding, heavy, sizes_of_piece
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.weights import Weights
from benchalong.workings.what_moves import Moving

FLAT = 3
"""A lid is so many times wider and deeper than it is high, at least."""


@dataclass(frozen=True)
class Lid:
    goes: str
    """Its mark."""
    joint: str
    inside: tuple[float, float, float]
    """Clear width, depth and height of what it shuts in, mm."""
    is_hiding_place: bool
    """Whether a child can climb in."""
    is_held: bool
    """Whether a stay holds it open."""
    openings: int
    """Large enough for air."""
    kilograms: float
    finger_room: float
    """How far it stands over the wood in front, mm; a notch, or a pull to lift it by, counts as enough."""

    @property
    def volume(self) -> float:
        return self.inside[0] * self.inside[1] * self.inside[2]


def lids(plan: Plan, placed: Placed, moving: Sequence[Moving]) -> Iterator[tuple[Lid, Moving]]:
    """Without their weight, which is only asked for where there is one."""
    loose = {number for one in moving for number in one.copies}
    still = [one for one in placed.lying if one.number not in loose and not one.hardware]
    held = {m.goes for joint in plan.joints.values() for m in joint.moves if m.how == "is held"}
    for one in moving:
        if one.moves.how != "turns" or one.moves.way is None or one.moves.way[2] or one.moves.at is None:
            continue
        wood = [placed.lying[n] for n in one.copies if not placed.lying[n].hardware]
        room = around([each.room for each in wood])
        square = [each for each in still if each.copy.tilt == wood[0].copy.tilt]
        inside = _inside(room, square) if _lies_flat(room) else None
        if inside is None:
            continue
        clear = tuple(float(far - near) for near, far in zip(*inside, strict=True))
        size = (clear[0], clear[1], clear[2])
        volume = size[0] * size[1] * size[2]
        yield (
            Lid(
                one.goes,
                one.joint,
                size,
                volume > trade.MAY_HIDE and min(size) >= trade.CLEAR,
                one.goes in held,
                sum(_openings(each) for each in (*_walls(inside, still), *wood)),
                0.0,
                _finger_room(plan, one, wood, room, inside),
            ),
            one,
        )


def _lies_flat(room: Room) -> bool:
    wide, deep, high = (far - near for near, far in zip(*room, strict=True))
    return FLAT * high <= min(wide, deep)


def _inside(lid: Room, still: Sequence[Lying]) -> Room | None:
    """The space under a lid, from the nearest wood on each side of its middle; None where a side is open."""
    x, y = ((lid[0][n] + lid[1][n]) / 2 for n in (0, 1))
    top = lid[0][2]
    floors = [one.room[1][2] for one in still if _holds(one.room, {0: x, 1: y}) and one.room[1][2] < top]
    if not floors:
        return None
    floor = max(floors)
    middle = (x, y, (floor + top) / 2)
    near, far = [Length(0), Length(0), floor], [Length(0), Length(0), top]
    for axis in (0, 1):
        other = {n: middle[n] for n in (0, 1, 2) if n != axis}
        beside = [one.room for one in still if _holds(one.room, other)]
        before = [room[1][axis] for room in beside if room[1][axis] <= middle[axis]]
        behind = [room[0][axis] for room in beside if room[0][axis] >= middle[axis]]
        if not before or not behind:
            return None
        near[axis], far[axis] = max(before), min(behind)
    return (near[0], near[1], near[2]), (far[0], far[1], far[2])


def _holds(room: Room, at: dict[int, Length]) -> bool:
    return all(room[0][n] < value < room[1][n] for n, value in at.items())


def _walls(inside: Room, still: Sequence[Lying]) -> list[Lying]:
    """What bounds the space: it touches it with a side."""
    return [
        one for one in still
        if all(one.room[0][n] <= inside[1][n] and inside[0][n] <= one.room[1][n] for n in range(3))
    ]  # fmt: skip


def _openings(one: Lying) -> int:
    return sum(_is_opening(cut, one) for cut in one.part.cuts)


def _is_opening(cut: Cut, one: Lying) -> bool:
    """Whether a hole or a shape goes right through and lets enough air in."""
    box = dict(zip(("along", "across", "down"), one.part.box, strict=True))
    return any(
        prism.start <= 0 and prism.end >= box[prism.axis] and not prism.outside and _area(prism) >= trade.AIR
        for prism in cut.takes
        if cut.kind in ("hole", "outline", "notch", "mortise")
    )


def _area(prism: Prism) -> float:
    if isinstance(prism.shape, Circle):
        return pi * float(prism.shape.diameter) ** 2 / 4
    return _outline_area(prism.shape)


def _outline_area(shape: Outline) -> float:
    """Rounded corners left square: a little too much."""
    points = [(float(corner.at[0]), float(corner.at[1])) for corner in shape.corners]
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2


def _finger_room(plan: Plan, one: Moving, wood: Sequence[Lying], lid: Room, inside: Room) -> float:
    """At the side opposite the axis: what stands over, a notch or hole there, or a pull that sits on it."""
    marks = {each.copy.mark for each in wood}
    if any(seated.mark in marks for thing in plan.hardware.values() for seated in thing.seated
           if thing.kind in ("pull", "knob")):  # fmt: skip
        return float(trade.FINGERS)
    if any(cut.kind in ("notch", "hole", "outline") and not cut.hardware and not cut.joint
           for each in wood for cut in each.part.cuts):  # fmt: skip
        return float(trade.FINGERS)
    assert one.moves.at is not None
    assert one.moves.way is not None
    axis = 1 if one.moves.way[0] else 0
    is_at_far = one.moves.at[axis] > (lid[0][axis] + lid[1][axis]) / 2
    edge = lid[0][axis] if is_at_far else lid[1][axis]
    walls = list(_fronts(plan, inside, axis, is_at_far=is_at_far))
    if not walls:
        return 0.0
    outer = min(room[0][axis] for room in walls) if is_at_far else max(room[1][axis] for room in walls)
    return float(max(outer - edge if is_at_far else edge - outer, Length(0)))


def _fronts(plan: Plan, inside: Room, axis: int, *, is_at_far: bool) -> Iterator[Room]:
    """The rooms of what shuts the space in at the side where the lid is lifted."""
    plane = inside[0][axis] if is_at_far else inside[1][axis]
    for copy in plan.copies:
        box = plan.parts[copy.part].box
        corners = [sum((copy.turn[n][m] * box[m] for m in range(3)), copy.at[n]) for n in range(3)]
        near = tuple(min(a, b) for a, b in zip(copy.at, corners, strict=True))
        far_ = tuple(max(a, b) for a, b in zip(copy.at, corners, strict=True))
        if (far_ if is_at_far else near)[axis] == plane:
            yield (near[0], near[1], near[2]), (far_[0], far_[1], far_[2])


def look_at_lids(
    plan: Plan, placed: Placed, moving: Sequence[Moving], weigh: Callable[[], Weights]
) -> tuple[tuple[Lid, ...], tuple[Finding, ...]]:
    found: list[Lid] = []
    findings: list[Finding] = []
    for lid, one in lids(plan, placed, moving):
        weights = weigh()
        each = [placed.lying[n] for n in one.copies if not placed.lying[n].hardware]
        kilograms = float(sum(weights.parts.get(lying.copy.part, 0) for lying in each))
        weighed = replace(lid, kilograms=kilograms)
        found.append(weighed)
        findings += _findings(plan, weighed, each[0])
    return tuple(found), tuple(findings)


def _findings(plan: Plan, lid: Lid, wood: Lying) -> Iterator[Finding]:
    called, joint = f"{in_sentence(wood.part.name)} {lid.goes}", ("joints", lid.joint)
    if not lid.is_held and (lid.kilograms >= trade.LIGHT_LID or lid.is_hiding_place):
        heavy_ = heavy(plan, lid.kilograms)
        yield finding(
            "lid-falls",
            "fault" if lid.is_hiding_place else "doubt",
            joint,
            wood.copy.part,
            f"nothing holds {called} open, and its {heavy_} fall on fingers and necks",
            "a stay that holds it at every height, or brakes it: a joint of kind stay",
        )
    if lid.finger_room < trade.FINGERS:
        yield finding(
            "lid-without-finger-room",
            "doubt",
            joint,
            wood.copy.part,
            f"{called} stands {far(plan, lid.finger_room)} over the front: no finger gets under it",
            f"let it stand {far(plan, trade.FINGERS)} over, cut a notch, or put a pull on it",
            {"over": lid.finger_room, "needed": trade.FINGERS},
            sizes_of_piece(plan),
        )
    if lid.is_hiding_place:
        yield from _hiding_place(plan, lid, called, wood)


def _hiding_place(plan: Plan, lid: Lid, called: str, wood: Lying) -> Iterator[Finding]:
    clear = " x ".join(far(plan, side) for side in lid.inside)
    numbers = dict(zip(("width", "depth", "height"), lid.inside, strict=True))
    if lid.openings < 2:
        have = "no opening lets" if not lid.openings else "one opening alone lets"
        yield finding(
            "no-air-holes",
            "fault",
            ("joints", lid.joint),
            wood.copy.part,
            f"a child can climb in under {called}, {clear} inside, and {have} air in",
            "two holes of 30 mm (1 1/4 in) or more, in two sides, that no wall can cover",
            numbers,
            sizes_of_piece(plan),
        )
    for thing in plan.hardware.values():
        if thing.latches == "by itself":
            yield finding(
                "latch-shuts-a-child-in",
                "fault",
                ("hardware", thing.id),
                thing.id,
                f"{thing.name} catches by itself, and a child can climb in under {called}",
                "none, or one that gives when it is pushed from inside",
            )
