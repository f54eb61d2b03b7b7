"""The page of the wood: what it does over the year in this piece, here and in other houses."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.lengths import Length, to_nearest
from benchalong.pages.amounts import glue_rate
from benchalong.pages.makings import Makings, drawn
from benchalong.pages.shell import Shell
from benchalong.pages.wood import WoodShown, as_much, capital, percent, wood_shown
from benchalong.pages.woods import WoodKnown, woods_known
from benchalong.workings.across import ACROSS, Across
from benchalong.workings.floating import FLOATING, Floating, floating_in
from benchalong.workings.gaps import GAPS, Gap
from benchalong.workings.glue import GLUE, GlueAmount
from benchalong.workings.houses import HOUSES, House
from benchalong.workings.movement import MOVEMENT, SLIGHT
from benchalong.workings.placed import PLACED
from benchalong.workings.telling import called, start

CENT = Length(1, 100)


@dataclass(frozen=True)
class InHouse:
    """One panel in one house."""

    house: str
    """`In a house on a damp coast`"""
    moisture: str
    """`8 to 12 %`"""
    is_here: bool
    room: Markup
    held: Markup
    verdict: str
    """`fits`, or what goes wrong."""
    is_fine: bool


@dataclass(frozen=True)
class PanelShown:
    id: str
    """Of its part."""
    name: str
    copies: str
    picture: Markup
    width: Markup
    least: Markup
    """To cut it to today; what just holds at the driest."""
    most: Markup
    """What just goes in at the dampest."""
    is_any: bool
    """Whether there is such a width."""
    room: Markup
    is_tight: bool
    too_much: Markup
    """By how much it is too wide at the dampest, where it is."""
    held: Markup
    """At the driest, if it has slid to one side; empty where it draws out."""
    held_middle: Markup
    to_hold: Markup
    is_pinned: bool
    swing: Markup
    quarter: Markup
    """What the swing would be of quarter-sawn wood; empty where it is."""
    quarter_words: str
    quarter_room: Markup
    houses: tuple[InHouse, ...]


@dataclass(frozen=True)
class HeldShown:
    what: str
    """`Top T on short apron SL`"""
    joint_id: str
    joint_name: str
    over: Markup
    moves: Markup
    each_way: Markup
    is_held: bool


@dataclass(frozen=True)
class GapShown:
    what: str
    made: Markup
    swells: Markup
    left: Markup
    is_shut: bool


@dataclass(frozen=True)
class GlueLine:
    joint_id: str
    joint_name: str
    glue: Markup
    """`5.9 g`"""
    clamps: str
    """`4`, or `4 for each of 2`; empty where screws or nails hold it."""


@dataclass(frozen=True)
class GlueShown:
    """None of it where nothing is glued."""

    whole: Markup
    """`12.7 g`; empty where nothing is glued."""
    lines: tuple[GlueLine, ...]
    rates: Markup
    not_counted: tuple[str, ...]


@dataclass(frozen=True)
class YearShown:
    """What joints make of it all; shared by the wood's page and the paper edition."""

    panels: tuple[PanelShown, ...]
    held: tuple[HeldShown, ...]
    gaps: tuple[GapShown, ...]
    """Those that something grows into enough to see."""
    glue: GlueShown
    woods: tuple[WoodKnown, ...]


@dataclass(frozen=True)
class WoodPage:
    shell: Shell
    wood: WoodShown
    year: YearShown


def wood_page(makings: Makings) -> WoodPage:
    return WoodPage(Shell("wood", "wood.html", "Wood"), wood_shown(makings), year_shown(makings))


def year_shown(makings: Makings) -> YearShown:
    return makings.once("year", "", lambda: _year(makings))


def _year(makings: Makings) -> YearShown:
    worked = makings.worked
    return YearShown(
        tuple(_panel(makings, one) for one in worked[FLOATING]),
        tuple(_held(makings, one) for one in worked[ACROSS]),
        tuple(_gap(makings, one) for one in worked[GAPS] if one.grows >= SLIGHT),
        _glue(makings),
        woods_known(makings),
    )


# panels


def _panel(makings: Makings, one: Floating) -> PanelShown:
    size, moves = makings.shows.size, makings.worked[MOVEMENT].parts[one.part]
    room = _cent(one.room.at_dampest)
    quarter, (least, most) = _as_quarter(makings, one), _to_cut(makings, one)
    return PanelShown(
        id=one.part,
        name=makings.plan.parts[one.part].name,
        copies=", ".join(one.marks),
        picture=drawn(makings.drawings.in_grooves(one.joint, one.part)),
        width=size(one.width),
        least=size(least),
        most=size(most),
        is_any=one.widths.least <= one.widths.most,
        room=size(max(room, Length(0))),
        is_tight=room < 0,
        too_much=size(max(-room, Length(0))),
        held=size(_cent(one.held)) if one.held > 0 else Markup(""),
        held_middle=size(_cent(one.pinned.held_at_driest)),
        to_hold=size(one.hold),
        is_pinned=one.is_pinned,
        swing=size(moves.width.swing),
        quarter=Markup("") if moves.sawn == "quarter" else size(moves.as_quarter.swing),
        quarter_words=as_much(moves.as_quarter.swing, moves.width.swing),
        quarter_room=size(max(_cent(quarter.room.at_dampest), Length(0))),
        houses=tuple(_in_house(makings, house, there) for house, there in _elsewhere(makings, one)),
    )


def _to_cut(makings: Makings, one: Floating) -> tuple[Length, Length]:
    """The widths it may be cut to, inwards to what a rule shows; as they are where none lies between."""
    step = makings.plan.precision.step(makings.plan.units)
    least, most = -(-one.widths.least // step) * step, one.widths.most // step * step
    return (least, most) if least <= most else (_cent(one.widths.least), _cent(one.widths.most))


def _as_quarter(makings: Makings, one: Floating) -> Floating:
    moves = makings.worked[MOVEMENT].parts[one.part]
    return floating_in(one, moves.as_quarter.shares)


def _elsewhere(makings: Makings, one: Floating) -> Iterator[tuple[House, Floating]]:
    for house in makings.worked[HOUSES]:
        for there in house.panels:
            if (there.joint, there.part, there.marks) == (one.joint, one.part, one.marks):
                yield house, there


def _in_house(makings: Makings, house: House, there: Floating) -> InHouse:
    year = house.moistures
    said = f"At {house.name}'s: {house.said}" if house.builder else capital(house.said)
    moisture = (
        percent(year.driest)
        if year.driest == year.dampest
        else f"{percent(year.driest).removesuffix(' %')} to {percent(year.dampest)}"
    )
    room, held = _cent(there.room.at_dampest), _cent(there.held)
    return InHouse(
        said,
        moisture,
        house.is_here,
        makings.shows.bare(room),
        makings.shows.bare(held),
        _verdict(there),
        room >= 0 and there.pinned.held_at_driest >= there.hold,
    )


def _verdict(there: Floating) -> str:
    if there.room.at_dampest < 0:
        return "pushes its frame apart"
    if there.pinned.held_at_driest < 0:
        return "draws out of its grooves"
    if there.pinned.held_at_driest < there.hold:
        return "is hardly held"
    if there.held < there.hold:
        return "fits, fixed in the middle"
    return "fits"


# joints and gaps


def _held(makings: Makings, one: Across) -> HeldShown:
    size, by_mark = makings.shows.size, makings.worked[PLACED].by_mark
    mover, other = by_mark[one.mover], by_mark[one.other]
    return HeldShown(
        f"{start(called(mover))} at {called(other)}",
        one.joint,
        capital(makings.plan.joints[one.joint].name),
        size(one.over),
        size(one.moves),
        size(one.each_way),
        one.is_held,
    )


def _gap(makings: Makings, one: Gap) -> GapShown:
    size, bare = makings.shows.size, makings.shows.bare
    beside = makings.worked[PLACED].by_mark[one.beside]
    left = one.at_dampest
    return GapShown(
        f"{one.goes} and {called(beside)}",
        bare(one.made),
        size(one.grows),
        bare(max(left, Length(0))),
        left <= 0,
    )


def _glue(makings: Makings) -> GlueShown:
    plan, glue = makings.plan, makings.worked[GLUE]()
    rates = plan.rates
    return GlueShown(
        makings.shows.weight(glue.grams / 1000) if glue.grams else Markup(""),
        tuple(_glue_line(makings, each) for each in glue.joints.values()),
        Markup("{}; a clamp every {}").format(glue_rate(rates), makings.shows.size(rates.clamp_spacing)),
        tuple(plan.parts[part].name for part in glue.not_counted),
    )


def _glue_line(makings: Makings, each: GlueAmount) -> GlueLine:
    several = f"{each.clamps} for each of {each.assemblies}" if each.assemblies > 1 else str(each.clamps)
    return GlueLine(
        each.joint,
        capital(makings.plan.joints[each.joint].name),
        makings.shows.weight(each.grams / 1000),
        several if each.clamps else "",
    )


def _cent(length: Length) -> Length:
    return to_nearest(length, CENT)
