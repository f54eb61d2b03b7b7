"""Are the cuts in the proportions the trade keeps to?

Every finding here is a doubt and says that it is common practice: a maker may have a reason. The values
stand in `trade/proportions.py`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import AXES, Cut, Joint, Part, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import (
    DADO_DEPTH,
    DOVETAIL_SLOPE,
    DOWEL,
    GLUED_PLAY,
    GROOVE_DEPTH,
    GROOVE_WIDTH,
    LAP,
    MORTISE_WALL,
    RABBET_DEPTH,
    SCREW_SPARE,
    TENON_LENGTH,
    TENON_REACH,
    TENON_THICKNESS,
    TENON_WIDEST,
    TENON_WIDTH,
    Share,
)
from benchalong.workings.cut_checks.bounds import length_of
from benchalong.workings.solids import SOLIDS
from benchalong.workings.telling import Telling, cut_at, once
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Odd:
    """What is out of proportion."""

    code: str
    said: str
    remedy: str
    numbers: dict[str, Length]


@dataclass(frozen=True)
class Bench:
    plan: Plan
    part: Part
    cut: Cut

    def __getitem__(self, key: str) -> Length:
        """A size of the cut; 0 where it isn't given."""
        return length_of(self.cut, key) or Length(0)

    def shown(self, length: Length) -> str:
        return Telling(self.plan).shown(length)

    @property
    def joint(self) -> Joint | None:
        return self.plan.joints.get(self.cut.joint)

    @property
    def wood(self) -> Length:
        """What the part measures into the wood under the cut's first surface."""
        return self.part.box[AXES.index(SURFACES[self.cut.surfaces[0]].inward)]

    def share(self, code: str, size: Length, whole: Length, share: Share, key: str, of: str) -> Iterator[Odd]:
        """A size that is too great or too small a share of another."""
        if size > share.greatest * whole:
            yield self._odd(code, size, whole, share.greatest * whole, key, of, f"at most {share.greatest}")
        elif size < share.least * whole:
            yield self._odd(code, size, whole, share.least * whole, key, of, f"at least {share.least}")

    def _odd(
        self, code: str, size: Length, whole: Length, limit: Length, key: str, of: str, said: str
    ) -> Odd:
        change = f"{'less' if size > limit else 'more'}"
        return Odd(
            code,
            f"has a {key} of {self.shown(size)}, in wood of {self.shown(whole)} {of}; common "
            f"practice is {said} of it",
            f"make the {key} {self.shown(abs(size - limit))} {change}",
            {key: size, "of": whole, "limit": limit},
        )


Rule: TypeAlias = Callable[[Bench], Iterator[Odd]]


def _groove(bench: Bench) -> Iterator[Odd]:
    """In a face how deep, in an edge or end how wide."""
    if bench.cut.surfaces[0] in ("face", "back"):
        yield from bench.share(
            "groove-deep", bench["depth"], bench.part.thickness, GROOVE_DEPTH, "depth", "thickness"
        )
    else:
        yield from bench.share(
            "groove-wide", bench["width"], bench.part.thickness, GROOVE_WIDTH, "width", "thickness"
        )


def _dado(bench: Bench) -> Iterator[Odd]:
    yield from bench.share(
        "dado-deep", bench["depth"], bench.part.thickness, DADO_DEPTH, "depth", "thickness"
    )


def _rabbet(bench: Bench) -> Iterator[Odd]:
    yield from bench.share(
        "rabbet-deep", bench["depth"], bench.part.thickness, RABBET_DEPTH, "depth", "thickness"
    )


def _tenon(bench: Bench) -> Iterator[Odd]:
    thickness, width = bench["thickness"], bench["width"]
    yield from bench.share(
        "tenon-thickness", thickness, bench.part.thickness, TENON_THICKNESS, "thickness", "thickness"
    )
    widest = min(TENON_WIDTH * thickness, TENON_WIDEST.of(bench.plan.units))
    if width > widest:
        said = (
            f"is {bench.shown(width)} wide; common practice is at most {TENON_WIDTH} x its "
            f"thickness and {bench.shown(TENON_WIDEST.of(bench.plan.units))}"
        )
        yield Odd("tenon-wide", said, "make two narrower tenons of it", {"width": width, "widest": widest})
    yield from _tenon_length(bench, thickness)


def _tenon_length(bench: Bench, thickness: Length) -> Iterator[Odd]:
    """Short for its thickness, unless it reaches two thirds through what it goes into."""
    length = bench["length"]
    if length >= TENON_LENGTH * thickness:
        return
    into = _narrowest_mortised(bench)
    if into and length < TENON_REACH * into:
        least = min(TENON_LENGTH * thickness, TENON_REACH * into)
        said = (
            f"is {bench.shown(length)} long; common practice is {TENON_LENGTH} to 3 x its "
            "thickness, or two thirds of what it goes into"
        )
        yield Odd(
            "tenon-short",
            said,
            f"make it {bench.shown(least - length)} longer",
            {"length": length, "least": least},
        )


def _narrowest_mortised(bench: Bench) -> Length | None:
    meetings = bench.joint.meetings if bench.joint else ()
    return min(
        (
            bench.plan.parts[m.cut_in.part].box[AXES.index(SURFACES[m.cut_in.surfaces[0]].inward)]
            for m in meetings
        ),
        default=None,
    )


def _mortise(bench: Bench) -> Iterator[Odd]:
    """The walls of a joint's mortise; a hinge's gain has one wall only and is no mortise to judge."""
    if not bench.joint or bench.joint.kind != "mortise and tenon":
        return
    across = SURFACES[bench.cut.surfaces[0]].across
    whole = bench.part.box[AXES.index(across)]
    start = length_of(bench.cut, "across")
    near = (whole - bench["width"]) / 2 if start is None else start
    wall = min(near, whole - near - bench["width"])
    least = max(whole / 4 if across == "down" else Length(0), MORTISE_WALL.of(bench.plan.units))
    if 0 < wall < least:
        said = (
            f"leaves a wall of {bench.shown(wall)} in {bench.shown(whole)}; common practice is a "
            f"quarter of that, and {bench.shown(MORTISE_WALL.of(bench.plan.units))} at least"
        )
        yield Odd(
            "mortise-wall",
            said,
            f"move it {bench.shown(least - wall)} towards the middle, or make it narrower",
            {"wall": wall, "least": least},
        )


RULES: dict[str, Rule] = {
    "groove": _groove,
    "dado": _dado,
    "rabbet": _rabbet,
    "tenon": _tenon,
    "mortise": _mortise,
}


def look_at_proportions(plan: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    found: list[Finding] = []
    for part in worked[SOLIDS].parts.values():
        for cut in part.cuts:
            bench = Bench(plan, part, cut)
            if cut.kind in RULES and _has_room(bench):
                found += [_of_cut(bench, odd) for odd in RULES[cut.kind](bench)]
    for joint in plan.joints.values():
        found += [_of_joint(joint, odd) for odd in _joint_rules(plan, joint)]
    return None, once(found)


def _has_room(bench: Bench) -> bool:
    """A cut as deep as the wood or deeper is a fault that the cut check tells of."""
    return bool(bench.cut.takes) and bench["depth"] < bench.wood


def _joint_rules(plan: Plan, joint: Joint) -> Iterator[Odd]:
    sizes = {size.name: size.length for size in joint.sizes}
    telling = Telling(plan)
    if joint.kind == "dovetail":
        slope = sizes.get("slope", Fraction(1, 8))
        if not DOVETAIL_SLOPE.least <= slope <= DOVETAIL_SLOPE.greatest:
            said = f"has a slope of {slope}; common practice is 1/6 for softwood and 1/8 for hardwood"
            yield Odd("dovetail-slope", said, "write slope: 1/8 or 1/6", {})
        lap = sizes.get("lap")
        if lap is not None and joint.words.get("dovetail") == "half-blind" and lap < LAP.of(plan.units):
            said = (
                f"leaves {telling.shown(lap)} in front; common practice is "
                f"{telling.shown(LAP.of(plan.units))} or more"
            )
            yield Odd(
                "dovetail-lap", said, f"leave {telling.shown(LAP.of(plan.units) - lap)} more", {"lap": lap}
            )
    play, most = sizes.get("play", Length(0)), GLUED_PLAY.of(plan.units)
    if play > most and joint.glue == "yes":
        said = (
            f"has {telling.shown(play)} of play on each side and is glued; common practice is a sliding fit"
        )
        yield Odd("joint-loose", said, f"leave {telling.shown(most)} or less on each side", {"play": play})
    if joint.kind == "butt":
        yield from _butt(plan, joint, sizes, telling)


def _butt(plan: Plan, joint: Joint, sizes: dict[str, Length], telling: Telling) -> Iterator[Odd]:
    if not joint.meetings:
        return
    meeting = joint.meetings[0]
    into = plan.parts[meeting.takes.part] if meeting.takes else None
    through = plan.parts[meeting.cut_in.part]
    thinner = min(through.thickness, into.thickness) if into else through.thickness
    dowel = sizes.get("dowel")
    if dowel:
        yield from _dowel(dowel, thinner, telling)
    depth = sizes.get("pilot_depth")
    if depth and into and meeting.takes and not dowel and "hardware" in joint.words:
        room = into.box[AXES.index(SURFACES[meeting.takes.surfaces[0]].inward)]
        spare = SCREW_SPARE.of(plan.units)
        if depth > room - spare:
            said = (
                f"holds {telling.shown(depth)} deep in {telling.shown(room)}; common practice is "
                f"to stay {telling.shown(spare)} short of the far side"
            )
            yield Odd(
                "screw-long",
                said,
                f"make pilot_depth {telling.shown(depth - room + spare)} less, with a shorter screw",
                {"depth": depth, "room": room},
            )


def _dowel(dowel: Length, thinner: Length, telling: Telling) -> Iterator[Odd]:
    if not DOWEL.least * thinner <= dowel <= DOWEL.greatest * thinner:
        said = (
            f"has dowels of {telling.shown(dowel)} in wood of {telling.shown(thinner)}; common "
            "practice is a third to a half of it"
        )
        low, high = DOWEL.least * thinner, DOWEL.greatest * thinner
        yield Odd(
            "dowel-size",
            said,
            f"take dowels of {telling.shown(low)} to {telling.shown(high)}",
            {"dowel": dowel, "of": thinner},
        )


def _of_cut(bench: Bench, odd: Odd) -> Finding:
    cut, part = bench.cut, bench.part
    place = cut_at(part.id, cut)
    called = (
        f"the {cut.kind} {cut.where.split(',')[0]}"
        if cut.name == cut.kind
        else f"the {cut.kind} “{cut.name}”"
    )
    sizes = {name for size in cut.sizes for name in size.sizes} | set(part.follows.get("thickness", ()))
    message = f"{part.name}: {called} {odd.said}"
    return Finding(odd.code, "doubt", place, part.id, message, odd.remedy, odd.numbers, tuple(sorted(sizes)))


def _of_joint(joint: Joint, odd: Odd) -> Finding:
    place = Place((PROJECT_FILE, "joints", joint.id)).key()
    sizes = tuple(sorted({name for size in joint.sizes for name in size.sizes}))
    return Finding(
        odd.code, "doubt", place, joint.id, f"The joint {joint.id} {odd.said}", odd.remedy, odd.numbers, sizes
    )


PROPORTIONS: Working[None] = Working(
    "proportions",
    "Are cuts and joints in the proportions the trade keeps to?",
    look_at_proportions,
    (SOLIDS,),
)
