"""How wide, deep and high is the piece, and each of its assemblies?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from benchalong.ground.lengths import ORIGIN, Length
from benchalong.ground.problems import Finding
from benchalong.plan.circles import in_order
from benchalong.plan.model import Assembly, AssemblyId, Placed, Plan
from benchalong.plan.tilts import tilted_room
from benchalong.plan.turns import Room, around, moved, room_of
from benchalong.plan.walk import walk
from benchalong.workings.placed import room_at
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Sides:
    """Of the smallest room something fits in."""

    width: Length
    depth: Length
    height: Length


@dataclass(frozen=True)
class Extent:
    """Parts counted as whole boxes, cuts left aside; hardware is not in it."""

    piece: Sides
    assemblies: Mapping[AssemblyId, Sides]
    """Each as it is laid out by itself, before it is mirrored into another."""


def measure_extent(plan: Plan, _: Worked) -> tuple[Extent | None, tuple[Finding, ...]]:
    """None while nothing is placed."""
    if plan.piece is None:
        return None, ()
    rooms = _rooms(plan) if not _has_turned(plan) else _rooms_by_corners(plan)
    sides = {name: _sides(rooms[name]) for name in plan.assemblies}
    return Extent(sides[plan.piece], sides), ()


def _has_turned(plan: Plan) -> bool:
    return any(placed.tilt for assembly in plan.assemblies.values() for placed in assembly.placed)


def _rooms_by_corners(plan: Plan) -> dict[AssemblyId, Room]:
    """Where something doesn't stand square, every box counts by its own corners."""
    return {
        name: around(
            [
                tilted_room(room_at(plan.parts[one.of].box, one.turn, one.at), one.tilt)
                for one in walk(plan.assemblies, name)
                if one.is_part
            ]
        )
        for name in plan.assemblies
    }


def _rooms(plan: Plan) -> dict[AssemblyId, Room]:
    """The innermost assemblies first."""
    inner = {name: _inner(assembly) for name, assembly in plan.assemblies.items()}
    rooms: dict[AssemblyId, Room] = {}
    for name in in_order(inner).order:
        rooms[name] = around([_room(placed, plan, rooms) for placed in plan.assemblies[name].placed])
    return rooms


def _inner(assembly: Assembly) -> list[AssemblyId]:
    return [placed.of for placed in assembly.placed if placed.kind == "assembly"]


def _room(placed: Placed, plan: Plan, rooms: Mapping[AssemblyId, Room]) -> Room:
    own = rooms[placed.of] if placed.kind == "assembly" else (ORIGIN, plan.parts[placed.of].box)
    least, greatest = room_of(own, placed.turn)
    return moved(least, placed.at), moved(greatest, placed.at)


def _sides(room: Room) -> Sides:
    width, depth, height = (high - low for low, high in zip(*room, strict=True))
    return Sides(width, depth, height)


EXTENT: Working[Extent | None] = Working("extent", "How wide, deep and high is it?", measure_extent)
