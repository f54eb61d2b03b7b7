"""Which views a setup is shown in, and what is said under them."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeAlias

from benchalong.drawing.setups import at_fence, from_above, from_over, milled, sloped
from benchalong.drawing.setups.at_fence import Lying
from benchalong.drawing.setups.scene import Scene
from benchalong.ground.shown import decimal
from benchalong.trade.ways.model import Family, Tool, Way, Work

View: TypeAlias = Callable[[Work, Way], Scene]
TABLES: tuple[Tool, ...] = ("table saw with a stacked cutter", "table saw", "router table")

LYING: dict[Family, Callable[[Work, Way], Lying]] = {
    "groove": at_fence.channel,
    "spline slot": at_fence.channel,
    "dado": at_fence.channel,
    "stopped dado": at_fence.channel,
    "notch": at_fence.channel,
    "mortise": at_fence.channel,
    "rabbet": at_fence.rabbet,
    "tongue": at_fence.cheeks,
    "tenon": at_fence.cheeks,
    "rip": at_fence.parted,
    "resaw": at_fence.parted,
}
ROUTED: tuple[Family, ...] = ("groove", "spline slot", "dado", "stopped dado", "mortise", "rabbet")
HOLES: tuple[Family, ...] = ("pilot hole", "clearance hole", "dowel hole", "mortise")
LENGTHS: tuple[Family, ...] = ("crosscut to length", "rough crosscut", "mitre")


def scenes(work: Work, way: Way) -> tuple[Scene, ...]:
    """The first view shows fence or stop and cutter; a second, where stops set the ends of a cut."""
    view = _view(work, way)
    if view is None:
        return ()
    first = view(work, way)
    is_over = view is from_over.stopped
    others = from_over.tilted(work, way) if is_over else from_above.along(work, way)
    if others:
        first.name = "From over it" if is_over else "Across the cut"
    return (first, *others)


def _view(work: Work, way: Way) -> View | None:
    tool, family = way.tool, work.family
    if family == "bevel" and tool in (*TABLES, "router", "band saw"):
        return sloped.sloped
    if family == "taper" and tool == "table saw":
        return from_over.tapered
    if tool in ("mitre saw", "table saw") and family in LENGTHS:
        return from_over.stopped
    if tool in TABLES and family in LYING:
        return _fenced
    if tool == "band saw":
        return _at_band_saw(family)
    if tool == "router":
        return from_above.shouldered if family in ("tongue", "tenon") else _router(family)
    if tool in ("drill press", "drill") and family in HOLES:
        return from_above.drilled
    if tool == "track saw" and way.setting("mark") and family != "taper":
        return from_over.tracked
    if tool == "jointer" and family.startswith("joint"):
        return milled.jointed
    return milled.planed if tool == "planer" and family == "plane to thickness" else None


def _fenced(work: Work, way: Way) -> Scene:
    return at_fence.drawn(LYING[work.family](work, way), work, way)


def _at_band_saw(family: Family) -> View | None:
    if family in ("rip", "resaw"):
        return _fenced
    return _upright if family in ("tongue", "tenon") else None


def _upright(work: Work, way: Way) -> Scene:
    return at_fence.drawn(at_fence.upright_cheeks(work, way), work, way)


def _router(family: Family) -> View | None:
    return from_above.routed if family in ROUTED else None


def sides_note(way: Way) -> str:
    """Which side goes where, the angle, and that the sketch isn't to scale."""
    said = []
    if way.guide:
        is_side = way.guide.split()[0].strip(",;") in SIDE_WORDS
        said.append(f"{'Against the fence' if is_side else 'Guided'}: {way.guide}.")
    if way.table:
        said.append(f"{'Under the tool' if way.tool in OVER_WORK else 'On the table'}: {way.table}.")
    for setting in way.settings:
        if setting.degrees is not None:
            said.append(f"{setting.name}: {decimal(setting.degrees, 1)} degrees.")
    if way.is_turned:
        said.append("Then turn it end for end and run it again.")
    said.append("Not to scale.")
    return " ".join(said)


OVER_WORK: tuple[Tool, ...] = ("router", "drill", "track saw")
SIDE_WORDS = ("face", "back", "edge", "end")


def alt(work: Work, way: Way) -> str:
    """In a sentence without numbers."""
    held = f", {way.guide} to the fence" if way.guide and way.tool not in OVER_WORK else ""
    return f"{work.family.capitalize()} at the {way.tool}: the work{held}, with the cutter where it is set."
