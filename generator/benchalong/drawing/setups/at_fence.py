"""Seen along the feed: the workpiece on a table against a fence, the cutter coming up through the table."""

from __future__ import annotations

from dataclasses import dataclass

from benchalong.drawing.setups.scale import Scale, scale
from benchalong.drawing.setups.scene import Scene
from benchalong.drawing.text import WORD, text_width
from benchalong.ground.lengths import ZERO, Length
from benchalong.trade.ways.model import Way, Work

FENCE, TABLE = 26.0, 20.0
"""How thick they are drawn, px."""
OVER = 22.0
"""The fence above the work, px."""
WIDE, TALL = 112.0, 62.0
"""The least room for the work, px."""
UNDER = 12.0
"""The cutter below the table's top, px."""


@dataclass(frozen=True)
class Lying:
    """The workpiece in the view: how wide from the fence, how tall from the table, and what is cut from
    it."""

    wide: Length
    tall: Length
    cutter: tuple[Length, Length]
    """From the fence to its near and far side; below zero inside the fence."""
    height: Length
    cut: tuple[Length, Length, Length, Length] | None = None
    """The finished cut, drawn broken: from the fence and up from the table, from and to each."""
    through: bool = False


def value(way: Way, key: str) -> Length | None:
    setting = way.setting(key)
    return setting.length if setting else None


def channel(work: Work, way: Way) -> Lying:
    """A groove or dado: the cut opens to the table."""
    start = value(way, "fence")
    if start is None:
        start = value(way, "stop") or work.near
    cutter = way.cutter.width or work.width
    cut = (work.near, work.near + work.width, ZERO, work.depth)
    return Lying(work.whole(work.across), work.whole(work.inward), (start, start + cutter), work.depth, cut)


def rabbet(work: Work, way: Way) -> Lying:
    """The cut reaches from the fence; a wider cutter stands partly inside it."""
    far = value(way, "fence_far") or work.width
    cutter = way.cutter.width or work.width
    return Lying(
        work.whole(work.across),
        work.whole(work.inward),
        (far - cutter, far),
        work.depth,
        (ZERO, work.width, ZERO, work.depth),
    )


def cheeks(work: Work, way: Way) -> Lying:
    """A tongue or tenon flat on the table, its end or edge to the fence; the other cheek is to come."""
    far = value(way, "fence_far") or work.depth
    cutter = way.cutter.width or work.depth
    tall = work.whole(work.across)
    return Lying(
        work.whole(work.inward),
        tall,
        (far - cutter, far),
        work.near,
        (ZERO, work.depth, tall - work.far, tall),
    )


def parted(work: Work, way: Way) -> Lying:
    """Ripping and resawing: the blade goes right through, or as high as it goes."""
    fence = value(way, "fence") or ZERO
    is_resaw = work.family == "resaw"
    wide, tall = (
        (work.piece.thickness, work.piece.width) if is_resaw else (work.piece.width, work.piece.thickness)
    )
    cutter = way.cutter.width or Length(1)
    height = value(way, "height") or value(way, "guard") or tall
    return Lying(max(wide, fence + cutter), tall, (fence, fence + cutter), height, through=height > tall)


def upright_cheeks(work: Work, way: Way) -> Lying:
    """At a band saw: the blade along a cheek, full height."""
    fence = value(way, "fence") or ZERO
    cutter = way.cutter.width or Length(1)
    tall = work.piece.width
    return Lying(work.whole(work.across), tall, (fence, fence + cutter), tall)


def block(way: Way) -> str:
    """What stands at the left: a stop on the mitre gauge where there is no fence."""
    return "stop" if way.setting("stop") and not way.setting("fence") else "fence"


def drawn(lying: Lying, work: Work, way: Way) -> Scene:
    """Fence at the left, table below."""
    places = [ZERO, lying.wide, *(max(ZERO, one) for one in lying.cutter)]
    heights = [ZERO, lying.tall, min(lying.height, lying.tall)]
    if lying.cut:
        places += lying.cut[:2]
        heights += lying.cut[2:]
    right = scale((one for one in places if one <= lying.wide), least_whole=WIDE)
    up = scale(heights, least_whole=TALL)
    scene = Scene()
    _table_and_fence(scene, right, up, lying, block(way))
    _piece(scene, right, up, lying)
    _cutter(scene, right, up, lying)
    _sizes(scene, right, up, lying, work, way)
    _words(scene, right, up, lying, way)
    return scene


def _table_and_fence(scene: Scene, right: Scale, up: Scale, lying: Lying, what: str) -> None:
    inside = min(0.0, right.at(lying.cutter[0]))
    thick = max(FENCE, FENCE - inside)
    top = -up.size - OVER
    end = right.size + 22
    scene.box("visible", (-thick, top, 0.0, 0.0))
    scene.add("visible", (-thick, 0.0, end, 0.0))
    scene.add("thin", (-thick, TABLE, end, TABLE), (-thick, 0.0, -thick, TABLE), (end, 0.0, end, TABLE))
    low = 0.0 if lying.through or inside == 0.0 else -up.at(lying.height)
    scene.word(what, -thick + 11, max((top + low) / 2, top + 24), is_upright=True)
    scene.word("table", end - 22, TABLE / 2)


def _piece(scene: Scene, right: Scale, up: Scale, lying: Lying) -> None:
    scene.piece((0.0, -up.size, right.size, 0.0), right.breaks())
    if lying.cut:
        left, end, low, high = lying.cut
        scene.box("hidden-line", (right.at(left), -up.at(high), right.at(end), -up.at(low)))


def _cutter(scene: Scene, right: Scale, up: Scale, lying: Lying) -> None:
    near, far = (right.at(one) for one in lying.cutter)
    top = -up.size - 9 if lying.through else -up.at(lying.height)
    scene.hatched((near, top, far, UNDER))


def _sizes(scene: Scene, right: Scale, up: Scale, lying: Lying, work: Work, way: Way) -> None:
    near, far = (right.at(one) for one in lying.cutter)
    top = -up.size - 9 if lying.through else -up.at(lying.height)
    for key, end in (("fence", near), ("stop", near), ("fence_far", far)):
        length = value(way, key)
        if length:
            scene.across(key, length, (0.0, end), (top, UNDER))
    buried = value(way, "buried")
    if buried:
        scene.across("buried", buried, (near, 0.0), (top, UNDER))
    height = value(way, "height")
    if height:
        scene.up("height", height, (top, 0.0), (near, far))
    if lying.cut and work.family not in ("tongue", "tenon", "rabbet"):
        left, end = (right.at(one) for one in lying.cut[:2])
        scene.across("width", work.width, (left, end), (-up.at(work.depth), 0.0))
    if work.family in ("tongue", "tenon"):
        low, high = -up.at(work.near), -up.at(work.near + work.width)
        scene.up("standing", work.width, (high, low), (0.0, right.size))


def _words(scene: Scene, right: Scale, up: Scale, lying: Lying, way: Way) -> None:
    """The side at the fence, where there is room for it."""
    side = way.guide.split(",")[0]
    half = text_width(side, WORD) / 2 + 5
    clear = 0.0 if right.at(lying.cutter[0]) > 24 else up.at(lying.height)
    cut_first = lying.cut is not None and right.at(lying.cut[0]) < 24 and lying.cut[3] == lying.tall
    if up.size - clear >= 2 * half and not cut_first:
        scene.word(side, 11.0, -up.size + half + 2, is_upright=True)
