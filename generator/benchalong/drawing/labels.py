"""Words on a view: its name, which sides lie where, and the way the grain runs.

They are put down before the sizes, inside the wood where it is empty, so that the room round the view is
left to numbers.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from benchalong.drawing.board import Board, Rect, Segment, Spot, grown, holds, word_room

NAME, SIDE = "label view-name", "label side-name"
GRAIN = "grain"
INSET = 9.0
"""From the middle of a word to the outline it stands along, in px."""
OUTSET = 14.0
"""From the middle of a word to the outline it stands outside of, clear of the ends of break lines, in px."""
GRID = (14, 7)
"""How far apart the spots lie that are tried inside a view, in px."""
GRAIN_SIZES = (70.0, 56.0, 44.0, 34.0)


class Trail:
    """Spots to try in turn, as often as asked, made only as far as they are needed."""

    def __init__(self, *stretches: Iterable[Spot]) -> None:
        self._stretches = stretches

    def __iter__(self) -> Iterator[Spot]:
        for stretch in self._stretches:
            yield from stretch


class Further:
    """Spots further and further over and under a view."""

    def __init__(self, board: Board) -> None:
        self._board = board

    def __iter__(self) -> Iterator[Spot]:
        for out in range(11, 200, 8):
            yield from _row(self._board, -float(out))
            yield from _row(self._board, self._board.height + out)


def put_face_words(board: Board, *, free_above: bool) -> None:
    """On the view of the face: edges, ends, the face's mark, the grain.

    `free_above` says on which side of it no sizes stand as a rule: what doesn't fit inside goes there.
    """
    wide, tall = board.width, board.height
    free = [spot for row in range(3) for spot in _row(board, _outside_row(board, row, above=free_above))]
    _put(board, "edge a", Trail(_row(board, INSET), _row(board, -OUTSET), _corners(board, 5.0)), kind=SIDE)
    under = Trail(_row(board, tall - INSET), _row(board, tall + OUTSET), _corners(board, tall - 5))
    _put(board, "edge b", under, kind=SIDE)
    _put_end(board, "end a", at_right=False)
    _put_end(board, "end b", at_right=True)
    middle = (wide / 2, tall / 2 - 8)
    _put(board, "Face", Trail(_grid(board, middle), free, Further(board)), kind=NAME)
    _put_grain(board, Trail(_grid(board, (wide / 2, tall / 2 + 16)), free, Further(board)))


def _outside_row(board: Board, row: int, *, above: bool) -> float:
    out = OUTSET + 17 * row
    return -out if above else board.height + out


def _corners(board: Board, y: float) -> list[Spot]:
    """Left and right of the view, level with one of its edges."""
    half = word_room("edge a", (0, 0))[2] + 4
    return [(x, y) for further in (0, 18, 36, 54) for x in (-half - further, board.width + half + further)]


def put_mark(board: Board, text: str, at: Spot) -> None:
    """A letter as near a point as there is room; at the end of a short line when that isn't near."""
    for far in (9.0, 12.0, 16.0, 22.0, 30.0, 42.0, 56.0, 72.0):
        for step in range(16):
            angle = 2 * math.pi * (step + 0.5) / 16
            spot = (at[0] + far * math.cos(angle), at[1] + far * math.sin(angle))
            leader = _mark_leader(at, spot, far)
            crosses = board.would_cross(leader) or board.would_cross_leader(leader)
            if _is_open(board, word_room(text, spot)) and not crosses:
                board.draw(leader)
                board.leaders += leader
                board.put_word(text, spot, kind="key mark")
                return


def _mark_leader(at: Spot, spot: Spot, far: float) -> list[Segment]:
    """None for a letter that stands beside its point."""
    if far <= 12.0:
        return []
    short = 1 - 8 / far
    return [(*at, at[0] + (spot[0] - at[0]) * short, at[1] + (spot[1] - at[1]) * short)]


def put_view_name(board: Board, name: str) -> None:
    """Over the view, or under it, as near as there is room."""
    near = (_row(board, -OUTSET), _row(board, board.height + OUTSET))
    _put(board, name, Trail(*near, Further(board)), kind=NAME)


def _put_end(board: Board, text: str, *, at_right: bool) -> None:
    """Level inside, else upright inside, else upright outside."""
    half = (word_room(text, (0, 0))[2]) + 4

    def column(inset: float) -> Sequence[Spot]:
        x = board.width - inset if at_right else inset
        heights = [
            board.height / 2 + step
            for step in range(-int(board.height / 2) + 9, int(board.height / 2) - 8, 5)
        ]
        return [(x, y) for y in sorted(heights, key=lambda y: (abs(y - board.height / 2), y))]

    for spots, upright in (
        ([spot for more in (0, 6, 12, 18) for spot in column(half + more)], False),
        ([spot for more in (0, 6) for spot in column(INSET + more)], True),
        (column(-OUTSET), True),
    ):
        if _put(board, text, spots, kind=SIDE, is_upright=upright, last=False):
            return
    _put(board, text, column(-half), kind=SIDE, last=True)


def _put(
    board: Board, text: str, spots: Iterable[Spot], *, kind: str, is_upright: bool = False, last: bool = True
) -> bool:
    """The word at the first spot clear of lines there and to come, else of lines there; or not at all."""
    for heed in (True, False) if last else (True,):
        for spot in spots:
            room = word_room(text, spot, is_upright=is_upright)
            if _is_open(board, room) and not (heed and board.coming(room)):
                board.put_word(text, spot, kind=kind, is_upright=is_upright)
                return True
    return False


def _is_open(board: Board, room: Rect) -> bool:
    """Clear, and either inside the view's outline or outside it."""
    inside = holds(board.view, room)
    outside = room[2] <= 0 or room[0] >= board.width or room[3] <= 0 or room[1] >= board.height
    return (inside or outside) and board.is_clear(room)


def _put_grain(board: Board, spots: Iterable[Spot]) -> None:
    """A double-headed arrow along the length with its word."""
    for heed in (True, False):
        for size in GRAIN_SIZES:
            for x, y in spots:
                room = (x - size / 2, y - 13.0, x + size / 2, y + 6.0)
                if _is_open(board, grown(room, 1.0)) and not (heed and board.coming(room)):
                    board.put_word(GRAIN, (x, y - 7.0), kind="label grain-word")
                    board.take(room)
                    board.grain += arrow(x, y + 2.0, size)
                    return


def arrow(x: float, y: float, size: float) -> list[tuple[float, float, float, float]]:
    """Double-headed and level."""
    left, right = x - size / 2, x + size / 2
    heads = [
        (end, y, end + way * 7, y + tilt) for end, way in ((left, 1), (right, -1)) for tilt in (-3.0, 3.0)
    ]
    return [(left, y, right, y), *heads]


def _grid(board: Board, first: Spot) -> Sequence[Spot]:
    """Spots inside the view, from the first one outwards."""
    spots = [
        (float(x), float(y))
        for x in range(12, int(board.width) - 6, GRID[0])
        for y in range(9, int(board.height) - 6, GRID[1])
    ]
    return [
        first,
        *sorted(spots, key=lambda spot: (abs(spot[0] - first[0]) + 2 * abs(spot[1] - first[1]), spot)),
    ]


def _row(board: Board, y: float) -> Sequence[Spot]:
    middle = board.width / 2
    steps = range(-int(middle / 8), int(middle / 8) + 1)
    return [(middle + 8 * step, y) for step in sorted(steps, key=lambda step: (abs(step), step))]
