"""Cut a board free of its defects: which clear rectangles it can be parted into, each worth a try."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from benchalong.workings.layout.model import Rectangle, Way

AT_MOST = 12
"""How many ways to clear a region are tried."""


@dataclass(frozen=True)
class Clear:
    """A rectangle without defects. `stage`: how often the direction has changed before it, last to `way`."""

    length: int
    width: int
    stage: int
    way: Way | None


@dataclass(frozen=True)
class Spoilt:
    length: int
    width: int


@dataclass(frozen=True)
class Pair:
    way: Way
    near: Clearing
    far: Clearing


Clearing: TypeAlias = Clear | Spoilt | Pair


def clearings(
    length: int, width: int, defects: tuple[Rectangle, ...], *, kerf: int, turns: int, first: Way | None
) -> list[Clearing]:
    """The most promising first: few large clear rectangles rather than many small ones."""
    found = _clearings(_Region(length, width, defects, 0, None), kerf, turns)
    if first is not None:
        found = [one for one in found if not isinstance(one, Pair) or one.way is first]
    return found


def clears(clearing: Clearing) -> Iterator[Clear]:
    if isinstance(clearing, Clear):
        yield clearing
    elif isinstance(clearing, Pair):
        yield from clears(clearing.near)
        yield from clears(clearing.far)


@dataclass(frozen=True)
class _Region:
    length: int
    width: int
    defects: tuple[Rectangle, ...]
    stage: int
    way: Way | None

    def split(self, way: Way, at: int) -> tuple[_Region, _Region]:
        stage = self.stage + (way is not self.way)
        if way is Way.ACROSS:
            near = _Region(at, self.width, self.defects, stage, way)
            far = _Region(self.length - at, self.width, _moved(self.defects, at, 0), stage, way)
        else:
            near = _Region(self.length, at, self.defects, stage, way)
            far = _Region(self.length, self.width - at, _moved(self.defects, 0, at), stage, way)
        return near, far

    def seen(self, kerf: int) -> tuple[Rectangle, ...]:
        """The defects that reach into it; where the kerf goes, wood may be bad."""
        room = Rectangle(0, 0, self.length - kerf, self.width - kerf)
        return tuple(defect for defect in self.defects if defect.overlaps(room))


def _moved(defects: tuple[Rectangle, ...], x: int, y: int) -> tuple[Rectangle, ...]:
    return tuple(Rectangle(d.x - x, d.y - y, d.length, d.width) for d in defects)


def _clearings(region: _Region, kerf: int, turns: int) -> list[Clearing]:
    if region.length <= kerf or region.width <= kerf:
        return [Spoilt(region.length, region.width)]
    defects = region.seen(kerf)
    if not defects:
        return [Clear(region.length, region.width, region.stage, region.way)]
    found: dict[Clearing, None] = {}
    for way, at in _edges(region, defects, kerf):
        if region.stage + (way is not region.way) > turns:
            continue
        near, far = (_clearings(part, kerf, turns) for part in region.split(way, at))
        for one in near:
            for other in far:
                found[Pair(way, one, other)] = None
    return sorted(found, key=_promise)[:AT_MOST] or [Spoilt(region.length, region.width)]


def _edges(region: _Region, defects: tuple[Rectangle, ...], kerf: int) -> Iterator[tuple[Way, int]]:
    """Cuts along the edges of the largest defect. Beyond it, the kerf may lie in the defect."""
    defect = max(defects, key=lambda d: (d.area, -d.x, -d.y))
    for way, at, size in (
        (Way.ACROSS, defect.x + kerf, region.length),
        (Way.ACROSS, defect.end, region.length),
        (Way.ALONG, defect.y + kerf, region.width),
        (Way.ALONG, defect.far, region.width),
    ):
        if kerf < at < size:
            yield way, at


def _promise(clearing: Clearing) -> int:
    return -sum((clear.length * clear.width) ** 2 for clear in clears(clearing))
