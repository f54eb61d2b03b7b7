"""How far does what carries something bend, and how long may it be?

Looked at as a straight beam of its full section: cuts in it are left aside, and so is a strip glued along its
edge. A copy that stands on edge bends over its width, one that lies flat over its thickness.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import Length, to_nearest
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.shown import shown
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Load, Part, PartId, Plan, StockId
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.strength import (
    COMFORTABLE,
    LASTING,
    Spread,
    lasting,
    longest_span,
    newtons,
    sag,
    second_moment,
    stiffness_of,
)
from benchalong.workings.copies import COPIES, Copy
from benchalong.workings.cut_list import shoulder_length
from benchalong.workings.woods import WOODS
from benchalong.workings.working import Worked, Working

STEP = Length(1, 100)


@dataclass(frozen=True)
class Sag:
    """Lengths in mm, to a hundredth."""

    load: Load
    span: Length
    is_on_edge: bool
    at_once: Length
    after_years: Length
    """An estimate."""
    most: Length
    """What the limit lets pass at this span."""
    longest: Length
    """The span at which it would just pass."""


@dataclass(frozen=True)
class _Beam:
    stiffness: float
    """MPa."""
    lasting: Fraction


def work_out_sag(plan: Plan, worked: Worked) -> tuple[Mapping[PartId, Sag], tuple[Finding, ...]]:
    beams = _beams(worked)
    sags: dict[PartId, Sag] = {}
    findings: list[Finding] = []
    for name, load in plan.loads.items():
        part, copies = plan.parts[name], [copy for copy in worked[COPIES] if copy.part == name]
        beam = beams.get(part.stock)
        if beam is None:
            findings.append(_unknown(part))
        elif copies and all(copy.turn[2][0] for copy in copies):
            findings.append(_upright(part))
        else:
            sags[name] = _sag(part, load, copies, beam)
            findings.extend(_too_far(plan, part, sags[name]))
    return sags, tuple(findings)


def _beams(worked: Worked) -> dict[StockId, _Beam]:
    woods = worked[WOODS]
    solid = {stock: stiffness_of(species) for stock, species in woods.solid.items()}
    known = {stock: _Beam(each, LASTING) for stock, each in solid.items() if each is not None}
    sheets = {
        stock: _Beam(float(sheet.stiffness) * 1000, sheet.lasting) for stock, sheet in woods.sheets.items()
    }
    return known | sheets


def _sag(part: Part, load: Load, copies: list[Copy], beam: _Beam) -> Sag:
    span = load.span or shoulder_length(part) or part.length
    is_on_edge = bool(copies) and all(copy.turn[2][1] for copy in copies)
    wide, tall = (part.thickness, part.width) if is_on_edge else (part.width, part.thickness)
    moment = second_moment(float(wide), float(tall))
    limit, spread = load.limit or COMFORTABLE, _spread(load)
    whole = load.kilograms * (span / load.per if load.per else 1)
    at_once = sag(
        newtons(float(whole)),
        float(span),
        stiffness=beam.stiffness,
        moment=moment,
        spread=spread,
        ends=load.ends,
    )
    longest = longest_span(
        newtons(float(whole / span if spread == "even" else whole)),
        limit=float(limit),
        stiffness=beam.stiffness,
        moment=moment,
        spread=spread,
        ends=load.ends,
    )
    return Sag(
        load,
        span,
        is_on_edge,
        _hundredth(at_once),
        _hundredth(lasting(at_once, beam.lasting)),
        limit * span,
        _hundredth(longest),
    )


def _spread(load: Load) -> Spread:
    return "middle" if load.at == "middle" else "even"


def _hundredth(length: float) -> Length:
    return to_nearest(Fraction(length), STEP)


def _too_far(plan: Plan, part: Part, bends: Sag) -> Iterator[Finding]:
    """Beyond the limit, a doubt: nobody is hurt by a shelf that looks tired, and the load is a guess."""
    if bends.span <= bends.longest:
        return
    span, most, at_once, longest = (
        shown(length, plan.units, plan.precision).text
        for length in (bends.span, bends.most, bends.at_once, bends.longest)
    )
    yield Finding(
        "sags",
        "doubt",
        _place(part),
        part.id,
        f"{part.name} sags by {at_once} over a span of {span}; its limit is {most}",
        f"a span of {longest} at most, a thicker piece, a support in the middle, or a strip along the edge",
        {"sag": bends.at_once, "limit": bends.most, "span": bends.span, "longest span": bends.longest},
        bends.load.follows or part.follows.get("length", ()),
    )


def _unknown(part: Part) -> Finding:
    return _not_known(
        part,
        f"how far {in_sentence(part.name)} sags can't be said, since the stiffness of its wood isn't known",
        "name a wood of the table under stock:, or give its stiffness and source under species:",
    )


def _upright(part: Part) -> Finding:
    return _not_known(
        part,
        f"{part.name} stands upright, so that nothing makes it sag",
        "take the load from it, or put it on the part that carries it",
    )


def _not_known(part: Part, message: str, remedy: str) -> Finding:
    return Finding("sag-not-known", "note", _place(part), part.id, message, remedy)


def _place(part: Part) -> Place:
    return Place((PROJECT_FILE, "parts", part.id, "load"))


SAG: Working[Mapping[PartId, Sag]] = Working(
    "sag", "How far does what carries something bend?", work_out_sag, (COPIES, WOODS)
)
