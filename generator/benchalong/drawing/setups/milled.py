"""Seen from the side: a board over the jointer, under the planer."""

from __future__ import annotations

import math
from itertools import pairwise

from benchalong.drawing.board import Segment
from benchalong.drawing.setups.at_fence import value
from benchalong.drawing.setups.scene import Scene
from benchalong.trade.ways.model import Way, Work

LONG, THICK = 210.0, 40.0
"""The board, px."""
RADIUS = 20.0
"""Of a cutter head, px."""
GAP = 23.0
"""From a cutter head's middle to the tables, px."""
OFF = 9.0
"""What comes off, px."""
TABLE = 16.0


def jointed(_work: Work, way: Way) -> Scene:
    """Fed to the left: infeed table lower by what comes off; the cutter level with the outfeed table."""
    scene, middle = Scene(), LONG / 2
    right = LONG - 10
    scene.add(
        "visible",
        (20.0, -THICK, right, -THICK),
        (20.0, -THICK, 20.0, 0.0),
        (20.0, 0.0, middle, 0.0),
        (middle + GAP - 4, OFF, right, OFF),
        (right, -THICK, right, OFF),
    )
    scene.add("visible", *_round(middle, RADIUS, RADIUS))
    scene.box("visible", (-10.0, 0.0, middle - GAP, TABLE))
    scene.box("visible", (middle + GAP, OFF, LONG + 20, OFF + TABLE))
    scene.word("outfeed", (middle - GAP - 10) / 2, TABLE / 2)
    scene.word("infeed", (middle + GAP + LONG + 20) / 2, OFF + TABLE / 2)
    takes = value(way, "takes")
    if takes:
        scene.up("takes", takes, (0.0, OFF), (middle, LONG + 20))
    _fed(scene, LONG, -THICK - 12)
    return scene


def planed(_work: Work, way: Way) -> Scene:
    """The cutter over the board, the flat face on the table."""
    scene, middle = Scene(), LONG / 2
    top = -THICK
    right = LONG - 10
    scene.add(
        "visible",
        (10.0, top, middle, top),
        (10.0, top, 10.0, 0.0),
        (middle + 17, top - OFF, right, top - OFF),
        (right, top - OFF, right, 0.0),
    )
    scene.box("visible", (-10.0, 0.0, LONG + 20, TABLE))
    scene.word("table", 20.0, TABLE / 2)
    scene.add("visible", *_round(middle, top - RADIUS, RADIUS))
    thickness = value(way, "thickness")
    if thickness:
        scene.up("thickness", thickness, (top, 0.0), (10.0, middle))
    _fed(scene, LONG - 10, top - OFF - 12)
    return scene


def _fed(scene: Scene, x: float, y: float) -> None:
    """An arrow the way the wood goes."""
    scene.add("thin", (x - 34, y, x, y), (x - 34, y, x - 27, y - 3.5), (x - 34, y, x - 27, y + 3.5))
    scene.word("feed", x + 20, y)


def _round(x: float, y: float, radius: float) -> list[Segment]:
    count = 32
    points = [
        (x + radius * math.cos(2 * math.pi * n / count), y + radius * math.sin(2 * math.pi * n / count))
        for n in range(count + 1)
    ]
    return [(*a, *b) for a, b in pairwise(points)]
