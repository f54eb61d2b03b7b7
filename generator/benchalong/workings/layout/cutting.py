"""From a tree of regions to what happens at the saw: numbered cuts, pieces where they lie, what is left
over."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass

from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.model import Board, Cut, CutBoard, Placed, Rectangle, Way
from benchalong.workings.layout.tree import Node, Parted, Waste, Whole


class Names:
    """Hands out the names of interchangeable pieces, in order, as they are placed."""

    def __init__(self, inner: Inner) -> None:
        self._inner = inner
        self._left = [
            deque(name for name, number in kind.names for _ in range(number)) for kind in inner.kinds
        ]

    def next(self, whole: Whole) -> str:
        kind = self._inner.kinds[whole.kind]
        if kind.match_set is not None:
            return kind.names[whole.member][0]
        return self._left[whole.kind].popleft()

    def match_set(self, whole: Whole) -> int | None:
        return self._inner.kinds[whole.kind].match_set


@dataclass(frozen=True)
class _Region:
    at: Rectangle
    way: Way | None
    """Which way the last cut ran that parted it off, and how often the direction had changed by then."""
    stage: int
    after: int | None


def cut_board(node: Node, board: Board, inner: Inner, names: Names, kerf: int) -> CutBoard:
    """The board with its cuts: trimmed first, then parted region by region."""
    saw = _Saw(inner, names, kerf)
    room = saw.trim(board)
    if not isinstance(node, Parted):
        node = Parted(inner.first or Way.ACROSS, (node,), node.length, node.width)
    saw.work(node, room)
    left_over = sorted(saw.left_over, key=lambda at: (-at.area, at.x, at.y))
    return CutBoard(
        board.name, board.length, board.width, tuple(saw.placed), tuple(saw.cuts), tuple(left_over)
    )


class _Saw:
    """What has been cut of one board so far."""

    def __init__(self, inner: Inner, names: Names, kerf: int) -> None:
        self._unit, self._first, self._names, self._kerf = inner.unit, inner.first, names, kerf
        self.cuts: list[Cut] = []
        self.placed: list[Placed] = []
        self.left_over: list[Rectangle] = []

    def trim(self, board: Board) -> _Region:
        region = _Region(Rectangle(0, 0, board.length, board.width), None, 0, None)
        trim = board.trim
        for way, amount in ((Way.ACROSS, trim.start), (Way.ALONG, trim.near)):
            if amount:
                start = region.at.x if way is Way.ACROSS else region.at.y
                off, region = self._cut(region, way, start + amount - self._kerf, is_trim=True, stage=0)
                self._leave(off)
        for way, end, amount in (
            (Way.ACROSS, board.length, trim.end),
            (Way.ALONG, board.width, trim.far),
        ):
            if amount:
                region, off = self._cut(region, way, end - amount, is_trim=True, stage=0)
                self._leave(off)
        return _Region(region.at, self._first, int(self._first is not None), region.after)

    def work(self, node: Node, region: _Region) -> None:
        """Part the region as the node says."""
        if isinstance(node, Waste):
            self._leave(region)
        elif isinstance(node, Whole):
            self._whole(node, region)
        else:
            self._parted(node, region)

    def _parted(self, node: Parted, region: _Region) -> None:
        stage = region.stage + (region.way is not node.way)
        todo: list[tuple[Node, _Region]] = []
        for index, part in enumerate(node.parts):
            if all(isinstance(rest, Waste) for rest in node.parts[index:]):
                break
            off, region = self._cut(region, node.way, self._end(part, region, node.way), stage=stage)
            todo.append((part, off))
        self._leave(region)
        for part, off in todo:
            self.work(part, off)

    def _end(self, node: Node, region: _Region, way: Way) -> int:
        """Where the node's real size ends, from the region's start."""
        if way is Way.ACROSS:
            return region.at.x + node.length * self._unit - self._kerf
        return region.at.y + node.width * self._unit - self._kerf

    def _whole(self, node: Whole, region: _Region) -> None:
        way = (region.way or Way.ALONG).other
        for trimmed in (way, way.other):
            stage = region.stage + (region.way is not trimmed)
            end = self._end(node, region, trimmed)
            region, off = self._cut(region, trimmed, end, is_trim=True, stage=stage)
            self._leave(off)
        self.placed.append(
            Placed(self._names.next(node), region.at, node.is_turned, self._names.match_set(node))
        )

    def _cut(
        self, region: _Region, way: Way, at: int, *, stage: int, is_trim: bool = False
    ) -> tuple[_Region, _Region]:
        """What lies before and after the cut. Where the region ends at the cut, none is made."""
        near, far = split(region.at, way, at, self._kerf)
        if near == region.at:
            return region, _Region(far, way, stage, region.after)
        number = len(self.cuts) + 1
        self.cuts.append(Cut(number, stage, way, at, region.at, region.after, is_trim))
        return _Region(near, way, stage, number), _Region(far, way, stage, number)

    def _leave(self, region: _Region) -> None:
        if region.at.length > 0 and region.at.width > 0:
            self.left_over.append(region.at)


def split(region: Rectangle, way: Way, at: int, kerf: int) -> tuple[Rectangle, Rectangle]:
    """The region before `at` and beyond the kerf; of no length or width where nothing is left."""
    if way is Way.ACROSS:
        near = min(max(at - region.x, 0), region.length)
        start = min(at + kerf, region.end)
        return (
            Rectangle(region.x, region.y, near, region.width),
            Rectangle(start, region.y, region.end - start, region.width),
        )
    near = min(max(at - region.y, 0), region.width)
    start = min(at + kerf, region.far)
    return (
        Rectangle(region.x, region.y, region.length, near),
        Rectangle(region.x, start, region.length, region.far - start),
    )
