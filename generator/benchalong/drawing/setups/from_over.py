"""Seen from over the work: stops for length, mitres, tapers on a sled, a track on its line."""

from __future__ import annotations

import math

from benchalong.drawing.board import Segment
from benchalong.drawing.setups.at_fence import value
from benchalong.drawing.setups.scale import scale
from benchalong.drawing.setups.scene import Scene
from benchalong.ground.lengths import ZERO
from benchalong.trade.ways.model import Way, Work

LONG = 190.0
"""The work, px."""
BLADE = 5.0
"""A blade or kerf, px."""
STOP, BEHIND = 18.0, 18.0
"""A stop block, and a fence or mitre gauge, how thick, px."""
WASTE = 44.0
"""What is cut off, px."""


def stopped(work: Work, way: Way) -> Scene:
    """Against a stop block: the stop at the left, the blade at the right, a fence or mitre gauge behind."""
    scene, tall = Scene(), 60.0
    scene.piece((0.0, 0.0, LONG + WASTE, tall), (LONG / 2,))
    scene.box("visible", (-STOP - 6, -BEHIND, LONG - 12, 0.0))
    scene.word("fence" if way.tool == "mitre saw" else "mitre gauge", LONG / 4, -BEHIND / 2)
    length = value(way, "stop")
    if length is not None:
        scene.hatched((-STOP, 0.0, 0.0, tall / 2), other=True)
        scene.word("stop", -STOP - 18, tall / 4)
    slope = _turned(work, way)
    lean = math.tan(math.radians(slope))
    top, low = LONG - lean * (tall + 8), LONG + lean * 8
    scene.add("visible", (top, -8.0, low, tall + 8), (top + BLADE, -8.0, low + BLADE, tall + 8))
    scene.add("cut-face", *_kerf(tall, lean))
    long_side = length if length is not None else value(way, "mark")
    if long_side:
        key = "stop" if length is not None else "mark"
        scene.across(key, long_side, (0.0, LONG), (0.0, tall))
    return scene


def _kerf(tall: float, lean: float) -> list[Segment]:
    """Short strokes across the blade."""
    found = []
    for y in range(-6, int(tall) + 8, 5):
        x = LONG - lean * (tall - y)
        found.append((x, y + 2.0, x + BLADE, y - 2.0))
    return found


def _turned(work: Work, way: Way) -> float:
    """How far the blade is turned from square, seen from over it; nothing where it is tilted."""
    angle = way.setting("angle")
    if work.family != "mitre" or work.run != "thickness" or angle is None or angle.degrees is None:
        return 0.0
    return min(45.0, float(angle.degrees))


def tilted(work: Work, way: Way) -> tuple[Scene, ...]:
    """A case's mitre seen along the feed: the blade leans; none for one that is turned."""
    angle = way.setting("angle")
    if work.family != "mitre" or work.run == "thickness" or angle is None or angle.degrees is None:
        return ()
    scene, tall = Scene(name="Seen along the feed"), 40.0
    lean = math.tan(math.radians(min(45.0, float(angle.degrees))))
    scene.piece((0.0, -tall, LONG, 0.0), (LONG / 2,))
    for x in (LONG - 44, LONG - 44 + BLADE):
        scene.add("visible", (x - lean * 10, 10.0, x + lean * (tall + 10), -tall - 10))
    scene.add("thin", (-20.0, 0.0, LONG + 20, 0.0))
    return (scene,)


def tracked(work: Work, way: Way) -> Scene:
    """A track, or a line, so far from the straight side."""
    scene, tall = Scene(), 104.0
    is_rip = work.family in ("rip", "joint an edge")
    reach = 120.0
    scene.piece((0.0, 0.0, reach + WASTE, tall), ())
    scene.box("visible", (reach - 26, -10.0, reach, tall + 10))
    scene.hatched((reach, -10.0, reach + BLADE, tall + 10))
    scene.word("track", reach - 13, tall / 2, is_upright=True)
    mark = value(way, "mark")
    if mark:
        scene.across("mark", mark, (0.0, reach), (0.0, tall))
    scene.word("straight edge" if is_rip else "square end", 12.0, tall / 2, is_upright=True)
    return scene


def tapered(work: Work, _way: Way) -> Scene:
    """The line on the edge of the sled."""
    scene = Scene()
    over, takes = scale((ZERO, work.length), least_whole=LONG), 26.0
    wide = 58.0
    end = over.size
    # What is kept lies on the sled; what is taken hangs over its edge.
    scene.add(
        "visible",
        (0.0, 0.0, 0.0, -wide),
        (0.0, -wide, end, -wide),
        (end, -wide, end, takes),
        (end, takes, 0.0, 0.0),
    )
    scene.add("hidden-line", (0.0, 0.0, end, 0.0))
    scene.box("visible", (-30.0, -wide - 22, end + 30, 0.0))
    scene.word("sled", 20.0, -wide - 11)
    scene.hatched((-36.0, 0.0, -8.0, BLADE))
    scene.word("blade", -22.0, 16.0)
    scene.across("over", work.length, (0.0, end), (0.0, takes))
    scene.up("sled", work.depth, (0.0, takes), (0.0, end))
    return scene
