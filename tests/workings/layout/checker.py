"""What is wrong with a layout, found by sawing it up again. Shares nothing with the layout's own code but its
nouns."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise

from benchalong.workings.layout.model import (
    Board,
    Cut,
    CutBoard,
    Layout,
    MatchSet,
    Order,
    Placed,
    Rectangle,
    Way,
)


def faults(order: Order, layout: Layout) -> list[str]:
    boards = {board.name: board for board in order.boards}
    found = [fault for cut in layout.boards for fault in _board_faults(order, boards[cut.board], cut)]
    return (
        found
        + list(_number_faults(order, layout))
        + list(_set_faults(order, layout))
        + list(_sums(order, layout))
    )


def _board_faults(order: Order, board: Board, cut: CutBoard) -> Iterator[str]:
    if (cut.length, cut.width) != (board.length, board.width):
        yield f"{board.name} has other sizes"
    pieces = {piece.name: piece for piece in order.pieces}
    trim = board.trim
    for placed in cut.placed:
        piece, at = pieces[placed.piece], placed.at
        size = (piece.width, piece.length) if placed.is_turned else (piece.length, piece.width)
        if (at.length, at.width) != size:
            yield f"{piece.name} is {at.length} x {at.width}"
        if placed.is_turned and not piece.may_turn:
            yield f"{piece.name} must not turn"
        if at.x < trim.start or at.x + at.length > board.length - trim.end:
            yield f"{piece.name} is not within the trimmed length"
        if at.y < trim.near or at.y + at.width > board.width - trim.far:
            yield f"{piece.name} is not within the trimmed width"
        if any(_meet(at, defect) for defect in board.defects):
            yield f"{piece.name} lies on a defect"
    for one, other in combinations(cut.placed, 2):
        if _meet(one.at, other.at):
            yield f"{one.piece} and {other.piece} overlap"
    yield from _saw_faults(order, board, cut)


def _meet(one: Rectangle, other: Rectangle) -> bool:
    along = max(one.x, other.x) < min(one.x + one.length, other.x + other.length)
    return along and max(one.y, other.y) < min(one.y + one.width, other.y + other.width)


@dataclass
class _Lump:
    at: Rectangle
    by: int | None
    way: Way | None
    stage: int


def _saw_faults(order: Order, board: Board, cut: CutBoard) -> Iterator[str]:
    lumps = [_Lump(Rectangle(0, 0, board.length, board.width), None, None, 0)]
    for number, one in enumerate(cut.cuts, 1):
        if one.number != number:
            yield f"cut {one.number} is the {number}th"
        mine = [lump for lump in lumps if lump.at == one.of]
        if len(mine) != 1:
            yield f"cut {number}: there is no such region to cut"
            return
        lumps.remove(mine[0])
        if mine[0].by != one.after:
            yield f"cut {number} names the wrong cut before it"
        yield from _cut_faults(order, board, cut, one, mine[0])
        lumps += list(_sawn(order, one, mine[0]))
    rests = Counter(lump.at for lump in lumps)
    rests.subtract(placed.at for placed in cut.placed)
    if any(count < 0 for count in rests.values()):
        yield "a piece is not cut free exactly"
    if +rests != Counter(cut.left_over):
        yield "what is left over is not what is told"


def _cut_faults(order: Order, board: Board, cut: CutBoard, one: Cut, lump: _Lump) -> Iterator[str]:
    start, end = (
        (lump.at.x, lump.at.x + lump.at.length)
        if one.way is Way.ACROSS
        else (lump.at.y, lump.at.y + lump.at.width)
    )
    if not start - order.rules.kerf < one.at < end:
        yield f"cut {one.number} cuts nothing"
    stage = _stage(order, lump, one)
    if one.stage == 0:
        if not one.is_trim or _kept_after_edge(board, one, order.rules.kerf) is None:
            yield f"cut {one.number} is no trimming of an edge"
        return
    if one.stage != stage:
        yield f"cut {one.number} is at stage {stage}, not {one.stage}"
    inside = [placed for placed in cut.placed if _meet(placed.at, lump.at)]
    if one.is_trim and len(inside) != 1:
        yield f"cut {one.number} trims {len(inside)} pieces"
    if stage > order.rules.turns + one.is_trim:
        yield f"cut {one.number} is one turn too many"


def _kept_after_edge(board: Board, cut: Cut, kerf: int) -> str | None:
    trim = board.trim
    edges = {
        (Way.ACROSS, trim.start - kerf): "start",
        (Way.ALONG, trim.near - kerf): "near",
        (Way.ACROSS, board.length - trim.end): "end",
        (Way.ALONG, board.width - trim.far): "far",
    }
    return edges.get((cut.way, cut.at))


def _stage(order: Order, lump: _Lump, cut: Cut) -> int:
    """How often the direction has changed; a first way that is asked for counts, cut or not."""
    if cut.stage == 0:
        return 0
    if lump.way is None and order.rules.first is not None:
        return 1 + (cut.way is not order.rules.first)
    return lump.stage + (cut.way is not lump.way)


def _sawn(order: Order, cut: Cut, lump: _Lump) -> Iterator[_Lump]:
    at, kerf, stage = lump.at, order.rules.kerf, _stage(order, lump, cut)
    way = None if cut.stage == 0 else cut.way
    if cut.way is Way.ACROSS:
        parts = [
            Rectangle(at.x, at.y, cut.at - at.x, at.width),
            Rectangle(cut.at + kerf, at.y, at.x + at.length - cut.at - kerf, at.width),
        ]
    else:
        parts = [
            Rectangle(at.x, at.y, at.length, cut.at - at.y),
            Rectangle(at.x, cut.at + kerf, at.length, at.y + at.width - cut.at - kerf),
        ]
    for part in parts:
        if part.length > 0 and part.width > 0:
            yield _Lump(part, cut.number, way, stage)


def _number_faults(order: Order, layout: Layout) -> Iterator[str]:
    placed = Counter(placed.piece for board in layout.boards for placed in board.placed)
    placed.update(dict(layout.left_out))
    wanted = Counter({piece.name: piece.number for piece in order.pieces if piece.number})
    if placed != wanted:
        yield f"placed and left out: {placed - wanted} too many, {wanted - placed} too few"
    used = Counter(board.board for board in layout.boards)
    for board in order.boards:
        if board.number is not None and used[board.name] > board.number:
            yield f"{used[board.name]} of {board.name} are used"


def _set_faults(order: Order, layout: Layout) -> Iterator[str]:
    for index, match in enumerate(order.match_sets):
        on = [[p for p in board.placed if p.match_set == index] for board in layout.boards]
        on = [placed for placed in on if placed]
        if not on:
            continue
        if len(on) > 1:
            yield f"match set {index} is on {len(on)} boards"
        elif Counter(placed.piece for placed in on[0]) != Counter(match.pieces):
            yield f"match set {index} is not complete"
        elif match.parted is not None:
            yield from _row_faults(index, match, on[0], order.rules.kerf)


def _row_faults(index: int, match: MatchSet, placed: list[Placed], kerf: int) -> Iterator[str]:
    turned = {one.is_turned for one in placed}
    if len(turned) > 1:
        yield f"match set {index}: some are turned, some not"
    along = (match.parted is Way.ACROSS) != (True in turned)
    placed = sorted(placed, key=lambda one: (one.at.x, one.at.y))
    if tuple(one.piece for one in placed) != match.pieces:
        yield f"match set {index} is not in sequence"
    for one, after in pairwise(placed):
        ends = one.at.x + one.at.length if along else one.at.y + one.at.width
        starts = after.at.x if along else after.at.y
        level = one.at.y == after.at.y if along else one.at.x == after.at.x
        if starts != ends + kerf or not level:
            yield f"match set {index} is not in a row"


def _sums(order: Order, layout: Layout) -> Iterator[str]:
    costs = {board.name: board.cost for board in order.boards}
    cost = sum(costs[board.board] for board in layout.boards)
    if cost != layout.cost:
        yield f"the boards cost {cost}, not {layout.cost}"
    if not layout.left_out and cost < layout.lower_bound:
        yield f"the cost {cost} is below its bound {layout.lower_bound}"
    if layout.is_proven != (not layout.left_out and cost == layout.lower_bound):
        yield "proven or not is told wrongly"
