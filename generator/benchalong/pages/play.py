"""How much play a joint has, as measured on the solids: on each side, and both sides together."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.pages.makings import Makings
from benchalong.plan.model import Joint
from benchalong.trade.joints import KINDS, MOVING
from benchalong.workings.fit import Fit
from benchalong.workings.meetings import MEETINGS, JointFit

ALONG_THE_RUN = dict.fromkeys(("tongue and groove", "dado", "rabbet"), ("width", "length"))
"""Directions of what goes in that run along its cut: room there is where the cut stops, which is no play."""
ACROSS = {"thickness": "across its thickness", "width": "across its width", "length": "along its length"}
NONE = Markup("")


@dataclass(frozen=True)
class PlayLine:
    """The play in one direction. Where it differs from place to place, from the least to the greatest."""

    where: str
    each: Markup
    """On one side."""
    in_all: Markup
    """On both sides together; empty where there is only one."""


def play_of(makings: Makings, joint: Joint) -> tuple[PlayLine, ...]:
    """Empty for a joint that brings nothing together yet."""
    return makings.once("play", joint.id, lambda: tuple(_lines(makings, joint)))


def _lines(makings: Makings, joint: Joint) -> Iterator[PlayLine]:
    measured = makings.worked[MEETINGS].get(joint.id)
    if measured is None:
        return
    loose = [fit for fit in measured.fits if fit.meeting.takes and fit.meeting.takes.part in joint.floats]
    firm = JointFit(tuple(fit for fit in measured.fits if fit not in loose))
    if joint.kind in MOVING:
        yield from _of(makings, firm, "What moves", end="from what it is fixed to")
    else:
        goes_in = KINDS[joint.kind].holds == "takes"
        who = "What goes in" if goes_in else "The other part"
        yield from _of(makings, firm, who, end="beyond its end", but=ALONG_THE_RUN.get(joint.kind, ()))
    for part in joint.floats:
        fits = tuple(fit for fit in loose if fit.meeting.takes and fit.meeting.takes.part == part)
        name = makings.plan.parts[part].name
        yield from _of(makings, JointFit(fits), name, end="beyond its edges and ends")


def _of(
    makings: Makings, measured: JointFit, who: str, *, end: str, but: Container[str] = ()
) -> Iterator[PlayLine]:
    for key, where in ACROSS.items():
        if key not in but and (each := _range(makings, _each(measured.fits, key))):
            yield PlayLine(f"{who}, {where}", each, _range(makings, measured.play.get(key, ())))
    if measured.end is not None:
        yield PlayLine(f"{who}, {end}", _range(makings, measured.end), NONE)
    if slopes := _range(makings, (fit.slope for fit in measured.fits)):
        yield PlayLine(f"{who}, between the slopes", slopes, NONE)


def _each(fits: Iterable[Fit], key: str) -> Iterator[Length | None]:
    return (side for fit in fits if key in fit.play for side in fit.play[key])


def _range(makings: Makings, lengths: Iterable[Length | None]) -> Markup:
    """`none`, `1/64 in`, `none to 1/32 in`; empty where nothing is known."""
    known = [length for length in lengths if length is not None]
    ends = sorted({min(known), max(known)}) if known else []
    return Markup(" to ").join(makings.shows.fine(length) if length else "none" for length in ends)
