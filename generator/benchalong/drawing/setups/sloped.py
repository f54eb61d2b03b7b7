"""A bevel seen along the feed: the sloping cut at the arris, its two lines, and what it stands against."""

from __future__ import annotations

from benchalong.drawing.setups.at_fence import TABLE, TALL, WIDE
from benchalong.drawing.setups.scale import scale
from benchalong.drawing.setups.scene import Scene
from benchalong.ground.lengths import ZERO
from benchalong.trade.ways.model import Tool, Way, Work

FENCE, OVER = 26.0, 18.0
AT_THE_FENCE: tuple[Tool, ...] = ("router table", "router")
"""The bevelled side is the one that is guided."""
UNDER: tuple[Tool, ...] = ("router table", "table saw")
"""The bevelled side lies on the table."""


def sloped(work: Work, way: Way) -> Scene:
    """The bevel left where its side is guided, below where it lies on the table."""
    wide, tall = work.whole(work.across), work.whole(work.inward)
    is_left, is_low = way.tool in AT_THE_FENCE, way.tool in UNDER
    reach, deep = min(work.width, wide), min(work.depth, tall)
    right = scale((ZERO, reach if is_left else wide - reach, wide), least_whole=WIDE)
    up = scale((ZERO, deep if is_low else tall - deep, tall), least_whole=TALL)
    scene = Scene()
    x = right.at(reach if is_left else wide - reach)
    y = -up.at(deep if is_low else tall - deep)
    side, arris = 0.0 if is_left else right.size, 0.0 if is_low else -up.size
    scene.piece((0.0, -up.size, right.size, 0.0), right.breaks())
    run, rise = side - x, y - arris
    # The blade or cutter's side runs a little over at both ends.
    scene.add("visible", (x - run / 2, arris - rise / 2, side + run / 2, y + rise / 2))
    scene.across("mark", work.width, (x, side), (arris, y))
    scene.up("height", work.depth, (arris, y), (x, side))
    if is_low:
        _machine(scene, right.size, up.size, over_cut=abs(rise) if is_left else 0.0)
    return scene


def _machine(scene: Scene, wide: float, tall: float, *, over_cut: float) -> None:
    """Fence at the left, open where a cutter stands in it, and the table."""
    low = -over_cut * 1.6 if over_cut else 0.0
    scene.box("visible", (-FENCE, -tall - OVER, 0.0, low))
    scene.word("fence", -FENCE / 2, (-tall - OVER + low) / 2, is_upright=True)
    scene.add("visible", (-FENCE, 0.0, wide + 22, 0.0))
    scene.add("thin", (-FENCE, TABLE, wide + 22, TABLE), (wide + 22, 0.0, wide + 22, TABLE))
    scene.add("thin", (-FENCE, 0.0, -FENCE, TABLE))
    scene.word("table", wide - 8 if over_cut else 8.0, TABLE / 2)
