"""Rough sizes: what is cut out first, and why it is as large as it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.pages.makings import Makings, marks_in_short
from benchalong.plan.model import PartId
from benchalong.plan.rough import Allowance
from benchalong.trade import rough as usual
from benchalong.trade.proportions import Least
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.blanks.model import Blank, Gives, Reason


@dataclass(frozen=True)
class BlankShown:
    id: str
    count: int
    name: str
    """What comes out of it: `Top rail, three end to end`."""
    marks: str
    thickness: Markup
    """`4/4`, or what it measures."""
    width: Markup
    length: Markup
    """Both without their unit."""
    size: Markup
    """Length and width with their units, and what board it comes from."""
    why: tuple[Markup, ...]


@dataclass(frozen=True)
class RoughStock:
    id: str
    name: str
    blanks: tuple[BlankShown, ...]


@dataclass(frozen=True)
class Reckoning:
    """One number that rough sizes are reckoned with."""

    name: str
    size: Markup
    is_assumed: bool


@dataclass(frozen=True)
class RoughShown:
    stocks: tuple[RoughStock, ...]
    reckoned: tuple[Reckoning, ...]
    cautions: tuple[Markup, ...]


RECKONED = (
    ("kerf", "Saw kerf"),
    ("trim", "Off each end of a board"),
    ("resaw.kerf", "Kerf of the bandsaw"),
    ("resaw.clean_up", "Off each face of a resawn leaf"),
    ("jointer.width", "Jointer, widest"),
    ("jointer.shortest", "Jointer, shortest"),
    ("jointer.narrowest", "Jointer, narrowest"),
    ("planer.width", "Planer, widest"),
    ("planer.shortest", "Planer, shortest"),
    ("planer.thinnest", "Planer, thinnest"),
)


def rough_shown(makings: Makings) -> RoughShown:
    return makings.once("rough", "", lambda: _rough(makings))


def _rough(makings: Makings) -> RoughShown:
    blanks, plan = makings.worked[BLANKS], makings.plan
    stocks = [
        RoughStock(stock.id, stock.name, tuple(_shown(makings, blank) for blank in found))
        for stock in plan.stock.values()
        if (found := blanks.of_stock(stock.id))
    ]
    are_boards = any(plan.stock[blank.stock].kind == "board" for blank in blanks.blanks)
    return RoughShown(tuple(stocks), _reckoned(makings) if are_boards else (), _cautions(makings, are_boards))


def blanks_of_part(makings: Makings, part: PartId) -> tuple[BlankShown, ...]:
    blanks = makings.worked[BLANKS]
    return tuple(_shown(makings, blanks.by_id[name]) for name in blanks.rough_of.get(part, ()))


def _shown(makings: Makings, blank: Blank) -> BlankShown:
    shows = makings.shows
    thick = Markup(blank.called) if blank.called else shows.size(blank.thickness)
    sizes = Markup("{} × {} from {}").format(shows.size(blank.length), shows.size(blank.width), thick)
    return BlankShown(
        id=blank.id,
        count=blank.count,
        name=_name(blank),
        marks=marks_in_short(tuple(mark for each in blank.gives for mark in each.marks)),
        thickness=Markup(blank.called) if blank.called else shows.bare(blank.thickness),
        width=shows.bare(blank.width),
        length=shows.bare(blank.length),
        size=sizes,
        why=tuple(reason_words(makings, reason) for reason in blank.why),
    )


def reason_words(makings: Makings, reason: Reason) -> Markup:
    return Markup(reason.words).format(*(makings.shows.size(length) for length in reason.lengths))


def _name(blank: Blank) -> str:
    """`Top rail, 3 end to end, 1 spare`."""
    names = " and ".join(dict.fromkeys(each.name for each in blank.gives[:3]))
    if len(blank.gives) > 3:
        names = f"{blank.gives[0].name} and {len(blank.gives) - 1} other parts"
    said = [names]
    if blank.pieces > 1:
        said.append(f"{blank.pieces} {blank.lie}")
    if spares := sum(_spares(each) for each in blank.gives):
        said.append(f"{spares} of them spare")
    return ", ".join(said)


def _spares(gives: Gives) -> int:
    return gives.spares // gives.strips


def _reckoned(makings: Makings) -> tuple[Reckoning, ...]:
    return (*_allowances(makings), *_machines(makings))


def _allowances(makings: Makings) -> Iterator[Reckoning]:
    """What is added to a part that is cut out of boards, where no stock of its own says otherwise."""
    units = makings.plan.units
    said = makings.plan.shop.sawing.allowances
    own = said.get("board", Allowance()).over(said.get("all", Allowance()))
    glued = said.get("glued_up", Allowance()).over(said.get("all", Allowance()))
    rows: tuple[tuple[str, Length | None, Least], ...] = (
        ("Longer than finished", own.length, usual.LONGER),
        ("Wider than finished", own.width, usual.WIDER),
        ("Wider, for parts under 3 in or 75 mm", own.width, usual.WIDER_NARROW),
        ("Rough over finished thickness", own.thickness, usual.THICKER),
        ("More than that, for parts over 4 ft or 1.2 m and restless wood", None, usual.ONE_QUARTER),
        ("Glued up, longer", glued.length, usual.GLUED_LONGER),
        ("Glued up, wider", glued.width, usual.GLUED_WIDER),
        ("Boards, how wide", None, usual.BOARD_WIDTH),
    )
    for name, length, otherwise in rows:
        size = otherwise.of(units) if length is None else length
        yield Reckoning(name, makings.shows.size(size), length is None)


def _machines(makings: Makings) -> Iterator[Reckoning]:
    sawing = makings.plan.shop.sawing
    values: dict[str, Length] = {
        "kerf": sawing.kerf,
        "trim": sawing.trim,
        "resaw.kerf": sawing.resaw_kerf,
        "resaw.clean_up": sawing.clean_up,
        "jointer.width": sawing.jointer.width,
        "jointer.shortest": sawing.jointer.shortest,
        "jointer.narrowest": sawing.jointer.narrowest,
        "planer.width": sawing.planer.width,
        "planer.shortest": sawing.planer.shortest,
        "planer.thinnest": sawing.planer.thinnest,
    }
    for key, name in RECKONED:
        yield Reckoning(name, makings.shows.size(values[key]), key in sawing.assumed)


def _cautions(makings: Makings, are_boards: bool) -> tuple[Markup, ...]:
    if not are_boards:
        return ()
    shortest = makings.shows.size(makings.plan.shop.sawing.shortest)
    return (
        Markup(
            "Crosscut rough boards to these lengths first. Nothing is ripped on a table saw before one face "
            "and one edge are true: a board that rocks binds and is thrown."
        ),
        Markup(
            "Nothing shorter than {} goes over the jointer or through the planer here. Where the machine's "
            "manual asks for more, the manual is right."
        ).format(shortest),
    )
