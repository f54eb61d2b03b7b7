"""What hangs on a wall: the load from shelf to stud, told as a chain, and whether its fixings are enough."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import ceil

from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Hanging, Hardware, Plan
from benchalong.trade import fixings as trade
from benchalong.workings.holding.hung import Hung, Weighed, rails_of, shelves_carry
from benchalong.workings.holding.path import Network, network, shortest
from benchalong.workings.holding.words import far, finding, heavy, sizes_of_part, sizes_of_piece
from benchalong.workings.placed import Placed
from benchalong.workings.weights import Weights

SAME_STUD = 10.0
"""Mm that two screws in one stud may stand beside each other, or beside its middle."""
STUD_WIDE = 38.0


def hang(
    plan: Plan, hanging: Hanging, placed: Placed, weights: Weights
) -> tuple[Hung | None, tuple[Finding, ...]]:
    """None while the rail stands nowhere."""
    if not rails_of(hanging, placed):
        message = f"{plan.parts[hanging.rail].name} has no place yet, so nothing can be said of how it hangs"
        said = finding(
            "rail-not-placed", "note", ("hanging", "rail"), hanging.rail, message, "give it its place"
        )
        return None, (said,)
    net = network(plan)
    hung = Weighed(plan, hanging, placed, weights, net).hung()
    return hung, tuple(_findings(plan, hung, net))


def _findings(plan: Plan, hung: Hung, net: Network) -> Iterator[Finding]:
    fixing = plan.hardware[hung.hanging.fixings]
    yield from _joined(plan, hung, net)
    yield from _end_glue(plan, hung)
    yield from _load(plan, hung)
    yield from _unweighed(hung)
    yield from _deep(plan, hung, fixing)
    yield from _enough(plan, hung, fixing)
    yield from _studs(plan, hung, fixing)
    yield from _rail(plan, hung)


def _joined(plan: Plan, hung: Hung, net: Network) -> Iterator[Finding]:
    rail = plan.parts[hung.hanging.rail]
    apart = [
        copy for copy in plan.copies
        if (copy.part in plan.loads or not plan.loads) and copy.part != rail.id
        and shortest(net, copy.mark, rail.id) is None
    ]  # fmt: skip
    if not plan.loads and len(apart) < len(plan.copies) - 1:
        return
    if apart:
        first = apart[0]
        more = f" and {len(apart) - 1} more" if len(apart) > 1 else ""
        yield finding(
            "rail-not-joined",
            "fault",
            ("hanging", "rail"),
            rail.id,
            f"no joint leads from {in_sentence(plan.parts[first.part].name)} {first.mark}{more} to"
            f" {in_sentence(rail.name)}, which the fixings go through",
            f"join {in_sentence(rail.name)} to the case: a dado, a tenon, or screws",
        )


def _end_glue(plan: Plan, hung: Hung) -> Iterator[Finding]:
    """What carries must not hang by glue on end grain."""
    used = {joint for way in hung.ways for joint in way.joints}
    for name in sorted(used):
        joint = plan.joints[name]
        sides = [m.takes.surfaces[0] for m in joint.meetings if m.takes]
        has_dowel = any(size.name == "dowel" for size in joint.sizes)
        is_plain = joint.kind == "butt" and not joint.words.get("hardware") and not has_dowel
        if is_plain and any(side.startswith("end") for side in sides):
            yield finding(
                "held-by-end-glue",
                "fault",
                ("joints", name),
                name,
                f"the load goes through {in_sentence(joint.name)}, glue on end grain and nothing else",
                "screws, dowels, a dado or a tenon there",
            )


def _load(plan: Plan, hung: Hung) -> Iterator[Finding]:
    least = shelves_carry(plan)
    if hung.load < least:
        yield finding(
            "load-less-than-its-shelves",
            "doubt",
            ("hanging", "load"),
            hung.hanging.rail,
            f"it is hung for {heavy(plan, float(hung.load))}, and its parts are said to carry"
            f" {heavy(plan, float(least))}",
            f"load: {heavy(plan, float(least))} or more",
        )
    if hung.load == 0:
        yield finding(
            "load-not-said",
            "doubt",
            ("hanging",),
            hung.hanging.rail,
            "nothing says what is put in it, so only its own weight is reckoned with",
            "load: under hanging, or a load for each shelf",
        )


def _unweighed(hung: Hung) -> Iterator[Finding]:
    if hung.unweighed:
        yield finding(
            "weight-not-known",
            "doubt",
            ("hanging",),
            hung.hanging.rail,
            "what hangs is heavier than reckoned: nothing is known of the weight of"
            f" {', '.join(hung.unweighed)}",
            "a species for its stock, or its weight in with the load",
        )


def _deep(plan: Plan, hung: Hung, fixing: Hardware) -> Iterator[Finding]:
    if hung.thread is None:
        return
    short = trade.DEEP_ENOUGH - hung.thread
    if short > 0:
        reaches = f"reaches {far(plan, float(hung.thread))} into" if hung.thread > 0 else "doesn't reach"
        yield finding(
            "fixing-short",
            "fault",
            ("hardware", fixing.id),
            fixing.id,
            f"{fixing.name} {reaches} the stud; {far(plan, float(trade.DEEP_ENOUGH))} is the least"
            " (common practice)",
            f"a screw {far(plan, float(short))} longer",
            {"in the stud": float(hung.thread), "short by": float(short)},
            _sizes(plan, hung, fixing),
        )


def _enough(plan: Plan, hung: Hung, fixing: Hardware) -> Iterator[Finding]:
    place = ("hardware", fixing.id)
    if hung.count is None:
        yield finding(
            "fixings-not-counted",
            "doubt",
            place,
            fixing.id,
            f"{fixing.name}: nothing says how many hold it to the wall",
            "count: under the hardware",
        )
        return
    share = hung.share
    if share is None:
        what = (
            "each_holds: what its maker lets one carry"
            if hung.hanging.into != "studs"
            else "its diameter and length"
        )
        yield finding(
            "fixing-not-known",
            "doubt",
            place,
            fixing.id,
            f"{fixing.name}: what one holds in this wall can't be said",
            what,
        )
    needed = max(trade.FEWEST, ceil(hung.count * share - 1e-9) if share is not None else 0)
    if hung.thread is not None and hung.thread <= 0:
        return
    if hung.count < needed:
        yield finding(
            "fixings-few",
            "fault",
            place,
            fixing.id,
            f"{fixing.name}: {hung.count} for {heavy(plan, float(hung.total))} are too few;"
            f" {_each(plan, hung)}",
            f"{needed} of them, or stronger ones",
            None,
            (*_sizes(plan, hung, fixing), *sizes_of_piece(plan)),
        )


def _each(plan: Plan, hung: Hung) -> str:
    if hung.down is None or hung.may_down is None or hung.pull is None or hung.may_pull is None:
        return "one alone lets it turn"
    down, pull, may, out = (heavy(plan, kg) for kg in (hung.down, hung.pull, hung.may_down, hung.may_pull))
    return f"each carries {down} of {may} down and {pull} of {out} out of the wall"


def _sizes(plan: Plan, hung: Hung, fixing: Hardware) -> set[str]:
    own = {name for size in fixing.sizes for name in size.sizes}
    seats = {name for seated in fixing.seated for name in seated.follows}
    return own | seats | sizes_of_part(plan, hung.hanging.rail)


def _studs(plan: Plan, hung: Hung, fixing: Hardware) -> Iterator[Finding]:
    if hung.hanging.into != "studs":
        return
    apart, (_, best) = float(hung.hanging.studs), hung.studs
    if best < 2:
        yield finding(
            "rail-meets-one-stud",
            "doubt",
            ("hanging", "rail"),
            hung.hanging.rail,
            f"studs stand {far(plan, apart)} apart, and {in_sentence(plan.parts[hung.hanging.rail].name)} is"
            f" {far(plan, float(hung.rail[0]))} long: it meets one at best",
            f"a rail of {far(plan, apart + 2 * STUD_WIDE)}, or a board across two studs behind it",
            {"rail": float(hung.rail[0]), "studs": apart},
            _sizes(plan, hung, fixing),
        )
    columns = sorted({float(seated.middle[0]) for seated in fixing.seated})
    for left, right in pairwise(columns):
        off = abs((right - left) - round((right - left) / apart) * apart)
        if off > SAME_STUD:
            yield finding(
                "fixings-miss-studs",
                "doubt",
                ("hardware", fixing.id),
                fixing.id,
                f"{fixing.name}: two sit {far(plan, right - left)} apart, and studs"
                f" {far(plan, apart)}: one of them misses by {far(plan, off)}",
                f"{far(plan, apart)} apart, or find the studs first and drill then",
                {"apart": right - left, "studs": apart, "off": off},
                _sizes(plan, hung, fixing),
            )
            return


def _rail(plan: Plan, hung: Hung) -> Iterator[Finding]:
    part = plan.parts[hung.hanging.rail]
    if part.thickness < trade.RAIL_THICK or part.width < trade.RAIL_WIDE:
        yield finding(
            "rail-weak",
            "doubt",
            ("parts", part.id),
            part.id,
            f"{part.name} is {far(plan, float(part.width))} wide and {far(plan, float(part.thickness))}"
            " thick; what a piece hangs by is hardly ever less than"
            f" {far(plan, float(trade.RAIL_WIDE))} by {far(plan, float(trade.RAIL_THICK))} (common practice)",
            "a stouter rail, with straight grain and no knots",
            {"width": float(part.width), "thickness": float(part.thickness)},
            sizes_of_part(plan, part.id),
        )
