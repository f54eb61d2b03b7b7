"""How the piece is held, as its page and the step that hangs it show it: the load's way with its numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup

from benchalong.ground.words import in_sentence
from benchalong.pages.makings import Makings
from benchalong.plan.model import Step
from benchalong.trade import fixings, holding
from benchalong.workings.holding.held import HELD
from benchalong.workings.holding.hung import Hung
from benchalong.workings.holding.lids import Lid
from benchalong.workings.holding.path import Way
from benchalong.workings.holding.standing import Stands, Tips
from benchalong.workings.holding.words import measured

FITS = {"hang", "fit hardware"}
"""Jobs before which it is said."""


@dataclass(frozen=True)
class HeldShown:
    title: str
    rows: tuple[tuple[str, Markup], ...]
    """What is said, each with its name, the load's way link by link."""
    cautions: tuple[str, ...]
    standing: str
    """Where the figures come from; empty where there are none."""


def held_shown(makings: Makings) -> tuple[HeldShown, ...]:
    """One for each way it is held; none while the plan says nothing of it."""
    return makings.once("held", "", lambda: tuple(_all(makings)))


def held_in_step(makings: Makings, step: Step) -> tuple[HeldShown, ...]:
    """Before the step that hangs the piece, or fits what moves."""
    jobs = {job.kind for job in step.does}
    return (
        held_shown(makings)
        if _hangs_piece(makings, step) or (jobs & FITS and makings.worked[HELD].lids)
        else ()
    )


def cautions_in_step(makings: Makings, step: Step) -> tuple[Markup, ...]:
    """What is always said where the piece is hung and the plan doesn't say how."""
    if held_in_step(makings, step) or not _hangs_piece(makings, step):
        return ()
    return tuple(Markup.escape(text) for text in (*holding.WALL, holding.NO_CERTIFICATE))


def _hangs_piece(makings: Makings, step: Step) -> bool:
    return any(job.kind == "hang" and makings.plan.piece in job.assemblies for job in step.does)


def _all(makings: Makings) -> Iterator[HeldShown]:
    held = makings.worked[HELD]
    if held.hung:
        yield _hung(makings, held.hung)
    if held.stands:
        yield _stands(makings, held.stands)
    for lid in held.lids:
        yield _lid(makings, lid)


# on a wall


def _hung(makings: Makings, hung: Hung) -> HeldShown:
    rows = (*_loads(makings, hung), *_chain(makings, hung), *_into_wall(makings, hung))
    cautions = (*holding.WALL, holding.WALL_OF[hung.hanging.into], holding.RAIL, holding.NO_CERTIFICATE)
    return HeldShown("How it hangs", rows, cautions, holding.FIGURES if hung.may_down is not None else "")


def _loads(makings: Makings, hung: Hung) -> Iterator[tuple[str, Markup]]:
    weight = makings.shows.weight
    source = "" if hung.is_load_said else " (what its parts are said to carry)"
    yield "Put in it", Markup("{}{}").format(weight(hung.load), source)
    missing = f", {', '.join(hung.unweighed)} not counted" if hung.unweighed else ""
    yield "Its own weight", Markup("{}{}").format(weight(hung.own), missing)
    yield "In all", weight(hung.total)


def _chain(makings: Makings, hung: Hung) -> Iterator[tuple[str, Markup]]:
    for way in hung.ways:
        yield f"From {in_sentence(makings.plan.parts[way.part].name)}", _way(makings, way)


def _way(makings: Makings, way: Way) -> Markup:
    """`30 lb on each of S1, S2 → by shelf dado (2 places) to side → by housing to hanging rail`."""
    plan, weight = makings.plan, makings.shows.weight
    marks = ", ".join(way.marks)
    on = f"on each of {marks}" if len(way.marks) > 1 else f"on {marks}"
    said = Markup("{} {}").format(weight(way.kilograms), on)
    for number, (joint, part) in enumerate(zip(way.joints, way.through, strict=True)):
        shares = Markup("")
        if number == 0 and way.sides > 1:
            each = weight(way.kilograms / way.sides)
            shares = Markup(" ({} places, {} each)").format(way.sides, each)
        names = in_sentence(plan.joints[joint].name), in_sentence(plan.parts[part].name)
        said += Markup(" → by {}{} to {}").format(names[0], shares, names[1])
    return said


def _into_wall(makings: Makings, hung: Hung) -> Iterator[tuple[str, Markup]]:
    plan, size = makings.plan, makings.shows.size
    fixing, rail = plan.hardware[hung.hanging.fixings], plan.parts[hung.hanging.rail]
    name = f"{hung.count or '?'} × {fixing.name}" + (f", {fixing.size}" if fixing.size else "")
    through = "through" if hung.hanging.way == "rail" else "through the fellow of"
    yield "Into the wall", Markup("{}, {} {}").format(name, through, in_sentence(rail.name))
    if hung.down is not None and hung.pull is not None:
        may = (
            Markup(" of {} and {} that are let count").format(
                _kg(makings, hung.may_down), _kg(makings, hung.may_pull)
            )
            if hung.may_down is not None
            else Markup("")
        )
        yield (
            "On each",
            Markup("{} down and {} out of the wall{}").format(
                _kg(makings, hung.down), _kg(makings, hung.pull), may
            ),
        )
    if hung.thread is not None:
        assumed = " of wallboard (assumed)" if hung.hanging.is_behind_assumed else ""
        yield (
            "In the stud",
            Markup("{} of each screw, behind {}{}; {} is the least").format(
                size(hung.thread), size(hung.hanging.behind), assumed, makings.shows.hole(fixings.DEEP_ENOUGH)
            ),
        )
    if hung.hanging.into == "studs":
        usual = fixings.studs_apart(plan.shop.country)[1]
        source = f" (usual there: {usual})" if hung.hanging.is_studs_assumed else ""
        least, best = hung.studs
        yield (
            "Studs",
            Markup("{} apart{}; the rail meets {} at least and {} where it is placed for them").format(
                size(hung.hanging.studs), source, least or "none", best
            ),
        )


def _kg(makings: Makings, kilograms: float | None) -> Markup:
    return makings.shows.weight(Fraction(round((kilograms or 0) * 1000), 1000))


# on the floor


def _stands(makings: Makings, stands: Stands) -> HeldShown:
    plan, standing = makings.plan, stands.standing
    rows = [("It weighs", _kg(makings, stands.weight))]
    rows += [(f"To the {tips.way}", _tips(makings, stands, tips)) for tips in stands.tips if tips.opened]
    if standing.carries is not None:
        rows.append(("Built for", makings.shows.weight(standing.carries)))
    for tread in stands.carries:
        share = f"{100 * tread.stress / tread.may:.0f} % of what its wood is let bear"
        share += " (a quarter of what breaks it: an estimate)"
        rows.append((plan.parts[tread.part].name, Markup.escape(share)))
    if any(tips.opened for tips in stands.tips):
        rows.append(
            ("Fixed to the wall", Markup("yes" if standing.restrained else "the plan doesn't ask for it"))
        )
    opens = any(tips.opened for tips in stands.tips)
    cautions = (
        *(holding.STANDS if opens else ()),
        *((holding.STOOD_ON,) if standing.carries else ()),
        *((holding.TESTS["stands"],) if opens else ()),
        holding.NO_CERTIFICATE,
    )
    return HeldShown("How it stands", tuple(rows), cautions, "")


def _tips(makings: Makings, stands: Stands, tips: Tips) -> Markup:
    size = makings.shows.size
    opened = ", ".join(tips.opened)
    if tips.behind <= 0:
        return Markup("with {} open it falls by itself").format(opened)
    child = makings.shows.weight(stands.standing.pull)
    said = Markup("with {} open its weight acts {} inside its feet; {} on {}, {} outside them, {}").format(
        opened,
        size(measured(tips.behind)),
        child,
        tips.pulled,
        size(measured(tips.before)),
        "tip it" if tips.needs else "don't tip it",
    )
    if not tips.needs:
        return said
    return said + Markup(": its feet would have to stand {} further out").format(size(measured(tips.needs)))


# under a lid


def _lid(makings: Makings, lid: Lid) -> HeldShown:
    size = makings.shows.size
    inside = Markup(" × ").join(size(measured(side)) for side in lid.inside)
    rows = (
        ("Inside", inside),
        ("A child can climb in", Markup("yes" if lid.is_hiding_place else "no")),
        ("Openings for air", Markup(str(lid.openings) if lid.openings else "none")),
        ("Held open", Markup("by a stay" if lid.is_held else "by nothing")),
        ("Room for fingers", size(measured(lid.finger_room))),
        ("The lid weighs", _kg(makings, lid.kilograms)),
    )
    cautions = (
        *holding.LIDDED,
        *((*holding.CLIMBED_INTO, holding.TESTS["lid"]) if lid.is_hiding_place else ()),
        holding.NO_CERTIFICATE,
    )
    return HeldShown(f"The lid {lid.goes}", rows, cautions, "")
