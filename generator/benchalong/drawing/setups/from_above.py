"""Cutters that come from above: the hand-held router along its fence or a guide, the drill under its chuck;
and the same cut seen from the side, where stops set its ends."""

from __future__ import annotations

from benchalong.drawing.setups.at_fence import TABLE, TALL, WIDE, value
from benchalong.drawing.setups.scale import Scale, scale
from benchalong.drawing.setups.scene import Scene
from benchalong.ground.lengths import ZERO, Length
from benchalong.trade.ways.model import Way, Work

SHANK = 30.0
"""The cutter above the work, px."""
BASE = 10.0
"""A router's base plate, how thick, px."""
REACH = 34.0
"""The base plate to either side of the cutter, px."""
STOP = 18.0


def cutter_at(work: Work, way: Way) -> tuple[Length, Length]:
    """Its sides, from the side that `near` is measured from."""
    wide = way.cutter.width or work.width
    start = value(way, "fence") if way.tool == "router" else None
    if way.cutter.name == "bit":
        start = work.near + (work.width - wide) / 2
    start = work.near if start is None else start
    return start, start + wide


def routed(work: Work, way: Way) -> Scene:
    """The router stands on the work; what guides it is at the left."""
    near, far = cutter_at(work, way)
    right = scale(
        (ZERO, near, far, work.near, work.near + work.width, work.whole(work.across)), least_whole=WIDE
    )
    up = scale((ZERO, work.whole(work.inward) - work.depth, work.whole(work.inward)), least_whole=TALL)
    scene = _work(work, right, up)
    top = -up.size
    x0, x1 = right.at(near), right.at(far)
    scene.hatched((x0, top - SHANK, x1, top + _deep(work, up)))
    scene.box("visible", (x0 - REACH, top - BASE, x1 + REACH, top))
    if way.setting("fence"):
        # The router's own fence hangs beside the work.
        scene.box("visible", (-12.0, top - BASE, 0.0, top + 24))
        scene.word("fence", -34.0, top + 8)
    else:
        scene.box("visible", (x0 - REACH - 24, top - 16, x0 - REACH, top))
        scene.word("guide", x0 - REACH - 24, top - 25)
    _numbers(scene, work, way, right, up)
    shift = value(way, "shift")
    if shift:
        end = right.at(work.near + work.width)
        scene.across("shift", shift, (x1, end), (top - SHANK, top))
    return scene


def drilled(work: Work, way: Way) -> Scene:
    """Under the drill press, or by hand: the bit's middle counts."""
    near, far = cutter_at(work, way)
    middle = work.near + work.width / 2
    right = scale((ZERO, near, middle, far, work.whole(work.across)), least_whole=WIDE)
    up = scale((ZERO, work.whole(work.inward) - work.depth, work.whole(work.inward)), least_whole=TALL)
    scene = _work(work, right, up)
    top = -up.size
    scene.hatched((right.at(near), top - SHANK, right.at(far), top + _deep(work, up)))
    x = right.at(middle)
    scene.add("centre", (x, top - SHANK - 8, x, 8.0))
    if way.setting("fence") and way.tool == "drill press":
        scene.box("visible", (-26.0, top - 12, 0.0, 0.0))
        scene.word("fence", -13.0, top / 2, is_upright=True)
        scene.add("visible", (-26.0, 0.0, right.size + 20, 0.0))
        scene.add("thin", (-26.0, TABLE, right.size + 20, TABLE))
        scene.add("thin", (-26.0, 0.0, -26.0, TABLE), (right.size + 20, 0.0, right.size + 20, TABLE))
        scene.word("table", right.size - 8, TABLE / 2)
    for key in ("fence", "wall"):
        length = value(way, key)
        if length:
            scene.across(key, length, (0.0, x), (top, 0.0))
    _depth(scene, work, way, right, up)
    return scene


def along(work: Work, way: Way) -> tuple[Scene, ...]:
    """Seen square to the run, where stops or marks set where the cut begins and ends; none where nothing
    does."""
    if way.tool == "router table":
        return tuple(_stopped(work, way, key) for key in ("stop_first", "stop_last") if way.setting(key))
    if way.tool in ("drill press", "drill", "router") and any(
        way.setting(key) for key in ("stop", "begins", "ends")
    ):
        return (_marked(work, way),)
    return ()


def _stopped(work: Work, way: Way, key: str) -> Scene:
    """At a router table: the cutter where the cut begins or ends, and the stop that the work's end meets
    there."""
    start, end = work.before, work.before + work.length
    wide = min(way.cutter.width or work.width, work.length)
    is_first = key == "stop_first"
    cutter = (start, start + wide) if is_first else (end - wide, end)
    right = scale((ZERO, start, *cutter, end, work.whole(work.run)), most=56.0, least_whole=WIDE)
    up = scale((ZERO, work.depth, work.whole(work.inward)), most=30.0)
    scene = Scene(name="Where the cut begins" if is_first else "Where the cut ends")
    deep = -up.at(work.depth)
    scene.piece((0.0, -up.size, right.size, 0.0), right.breaks())
    scene.box("hidden-line", (right.at(start), deep, right.at(end), 0.0))
    x0, x1 = (right.at(one) for one in cutter)
    scene.hatched((x0, deep, x1, 12.0))
    scene.add("visible", (-STOP - 8, 0.0, right.size + STOP + 8, 0.0))
    length = value(way, key)
    assert length is not None
    if is_first:
        scene.across(key, length, (x0, right.size), (deep, 0.0))
    else:
        scene.across(key, length, (0.0, x1), (deep, 0.0))
    _block(scene, right.size if is_first else -STOP, up)
    return scene


def _marked(work: Work, way: Way) -> Scene:
    is_hole = work.family.endswith("hole")
    middle = work.before + work.length / 2
    start, end = work.before, work.before + work.length
    places = (ZERO, start, middle, end) if is_hole else (ZERO, start, end)
    right = scale((*places, work.whole(work.run)), most=56.0, least_whole=WIDE)
    up = scale((ZERO, work.whole(work.inward) - work.depth, work.whole(work.inward)), most=30.0)
    scene, top = Scene(name="Along the cut"), -up.size
    scene.piece((0.0, top, right.size, 0.0), right.breaks())
    room = (top, top + _deep(work, up))
    x0, x1, whole = right.at(start), right.at(end), right.size
    scene.box("hidden-line", (x0, room[0], x1, room[1]))
    if way.setting("stop") and way.tool == "drill press":
        _block(scene, -STOP, up)
    spans = {"stop": (0.0, right.at(middle)), "begins": (0.0, x0), "ends": (x1, whole)}
    for key, span in spans.items():
        length = value(way, key)
        if length:
            scene.across(key, length, span, room)
    if is_hole:
        x = right.at(middle)
        scene.add("centre", (x, top - 8, x, 8.0))
    else:
        scene.across("length", work.length, (x0, x1), room)
    return scene


def _block(scene: Scene, x: float, up: Scale) -> None:
    """A stop block from x on, its word beside it, away from the work."""
    high = -up.size / 2 - 4
    scene.hatched((x, high, x + STOP, 0.0), other=True)
    scene.word("stop", x + STOP / 2 + (-25 if x < 0 else 25), high - 10)


def _work(work: Work, right: Scale, up: Scale) -> Scene:
    scene = Scene()
    scene.piece((0.0, -up.size, right.size, 0.0), right.breaks())
    ends = (right.at(work.near), right.at(work.near + work.width))
    scene.box("hidden-line", (ends[0], -up.size, ends[1], -up.size + _deep(work, up)))
    return scene


def _deep(work: Work, up: Scale) -> float:
    return up.size - up.at(work.whole(work.inward) - work.depth)


def _numbers(scene: Scene, work: Work, way: Way, right: Scale, up: Scale) -> None:
    near, far = (right.at(one) for one in cutter_at(work, way))
    ends = (right.at(work.near), right.at(work.near + work.width))
    room = (-up.size, -up.size + _deep(work, up))
    for key, span in (("fence", (0.0, near)), ("wall", (0.0, ends[0])), ("fence_far", (0.0, far))):
        length = value(way, key)
        if length:
            scene.across(key, length, span, room)
    scene.across("width", work.width, ends, room)
    _depth(scene, work, way, right, up)


def _depth(scene: Scene, work: Work, way: Way, right: Scale, up: Scale) -> None:
    height = value(way, "height")
    if height:
        ends = (right.at(work.near), right.at(work.near + work.width))
        scene.up("height", height, (-up.size, -up.size + _deep(work, up)), ends)


def shouldered(work: Work, way: Way) -> Scene:
    """Rails side by side under a guide at the shoulder: their ends at the left."""
    wide, tall = work.whole(work.inward), work.whole(work.across)
    right = scale((ZERO, work.depth, wide), least_whole=WIDE)
    up = scale((ZERO, work.far, work.far + work.width, tall), least_whole=TALL)
    scene = Scene()
    scene.piece((0.0, -up.size, right.size, 0.0), right.breaks())
    x, top = right.at(work.depth), -up.size
    low = -up.at(work.far + work.width)
    cutter = min(x, right.at(way.cutter.width or work.depth))
    scene.hatched((x - cutter, top - SHANK, x, low))
    scene.box("visible", (x - cutter - 24, top - BASE, x + REACH, top))
    scene.box("hidden-line", (0.0, -up.at(work.far), x, 0.0))
    scene.box("visible", (x + REACH, top - 16, x + REACH + 24, top))
    scene.word("guide", x + REACH + 22, top - 25)
    scene.across("shoulder", work.depth, (0.0, x), (top, low))
    height = value(way, "height")
    if height:
        scene.up("height", height, (top, low), (0.0, x))
    scene.up("standing", work.width, (low, -up.at(work.far)), (0.0, x))
    return scene
