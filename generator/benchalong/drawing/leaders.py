"""Round sizes: a slanting line from a circle or round corner to its number on a short shelf."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from benchalong.drawing.board import (
    AIR,
    Board,
    Number,
    Rect,
    Segment,
    Spot,
    grown,
    holds,
    meets,
    number_room,
    room_of,
)
from benchalong.drawing.text import NUMBER, text_width
from benchalong.ground.lengths import Length

REACHES = (14.0, 22.0, 32.0, 46.0, 64.0, 88.0, 120.0)
"""How long a leader may be, in px."""
ANGLES = tuple(math.radians(22.5 * i + 11.25) for i in range(16))
HEAD = 7.0


@dataclass(frozen=True)
class Leader:
    cost: float
    room: Rect
    lines: tuple[Segment, Segment]


def put_leader(
    board: Board, *, what: str, length: Length, sign: str, centre: Spot, radius: float, width: float
) -> bool:
    """The size at the cheapest free place; False when there is none. `width` is the number's own."""
    whole = width + text_width(f"{sign} ", NUMBER)
    best: Leader | None = None
    for leader in _leaders(board, centre, radius, whole):
        if (best is None or leader.cost < best.cost) and _is_free(board, leader):
            best = leader
    if best is None:
        return False
    lines = [*best.lines, *_head(best.lines[0])]
    board.draw(lines)
    board.leaders += lines
    board.take(best.room)
    spot = ((best.room[0] + best.room[2]) / 2, best.room[3] - 3)
    board.numbers.append(Number(what, length, sign, spot, False, best.room))
    return True


def _leaders(board: Board, centre: Spot, radius: float, whole: float) -> Iterator[Leader]:
    for reach in REACHES:
        for angle in ANGLES:
            x, y = math.cos(angle), math.sin(angle)
            if abs(y) < 0.3:
                continue
            foot = (centre[0] + x * radius, centre[1] + y * radius)
            knee = (centre[0] + x * (radius + reach), centre[1] + y * (radius + reach))
            way = 1 if x >= 0 else -1
            shelf = (*knee, knee[0] + way * (whole + 4), knee[1])
            room = number_room(knee[0] + 2 if way > 0 else knee[0] - whole - 2, knee[1] - 5, whole)
            wider, taller = board.growth([room, room_of(shelf)])
            cost = reach * 0.3 + wider * 0.9 + taller * 0.15 + board.coming(room) * 2
            yield Leader(cost, room, ((*foot, *knee), shelf))


def _is_free(board: Board, leader: Leader) -> bool:
    room = leader.room
    inside = holds(grown(board.view, -AIR), room)
    if not inside and meets(grown(room, AIR), board.view):
        return False
    is_clear = board.is_clear((room[0], room[1], room[2], room[3] + 2))
    return is_clear and not board.would_cross(leader.lines) and not board.would_cross_leader(leader.lines)


def _head(line: Segment) -> tuple[Segment, Segment]:
    """An open arrowhead at the start of a leader."""
    x, y, run, rise = line[0], line[1], line[2] - line[0], line[3] - line[1]
    far = math.hypot(run, rise) or 1.0
    ux, uy = run / far * HEAD, rise / far * HEAD
    side_x, side_y = -uy * 0.35, ux * 0.35
    return ((x, y, x + ux + side_x, y + uy + side_y), (x, y, x + ux - side_x, y + uy - side_y))
