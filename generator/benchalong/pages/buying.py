"""How much is needed, what of it is there, what is to be bought: of boards, of sheets, of anything else."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from markupsafe import Markup

from benchalong.ground.lengths import FOOT, Length
from benchalong.ground.money import two_places
from benchalong.ground.shown import decimal, shown
from benchalong.ground.words import counted
from benchalong.pages.makings import Makings
from benchalong.plan.model import Price
from benchalong.trade.boards import PLANED
from benchalong.trade.waste import Waste
from benchalong.workings.purchases.model import Lumber, Sheets, Thing, ToBuy

STANDINGS = {"common practice": "common practice, no source", "memory": "from memory"}
BOARDS = Markup('<a href="boards.html">Boards</a>')


@dataclass(frozen=True)
class Says:
    """What a line of the list says."""

    amount: Markup
    tally: tuple[tuple[str, Markup], ...]
    details: tuple[Markup, ...]


def _tally(needed: Markup, there: Markup, to_buy: Markup) -> tuple[tuple[str, Markup], ...]:
    return ("Needed", needed), ("There", there), ("To buy", to_buy)


NOTHING = Markup("nothing")
WHICH = Markup("Which part comes from which: {}").format(BOARDS)


# boards


def says_of_lumber(makings: Makings, line: Lumber) -> Says:
    needed = wood(makings, line.board_feet, line.volume)
    boards = counted(line.there_boards, "board")
    there = Markup("{} from {}").format(wood(makings, line.there_board_feet, line.there_volume), boards)
    to_buy = NOTHING if line.is_there else _whole_wood(makings, line)
    return Says(
        Markup(boards) if line.is_there else lumber_amount(makings, line),
        _tally(needed, there, to_buy) if line.there_boards else (),
        tuple(_of_lumber_there(makings, line) if line.is_there else _of_lumber(makings, line)),
    )


def wood(makings: Makings, board_feet: Fraction, volume: Fraction) -> Markup:
    """In the measure that the author's yards sell by."""
    if makings.plan.units == "inch":
        return Markup("{} board feet").format(decimal(board_feet, 1))
    return Markup("{} m³").format(decimal(volume / 1_000_000_000, 4))


def _of_lumber_there(makings: Makings, line: Lumber) -> Iterator[Markup]:
    yield WHICH
    anew = _both(makings, line.anew_board_feet, line.anew_cubic_metres)
    price = price_words(makings, line.price)
    yield Markup("Who has none of it buys {}, {} % for waste in it ({}){}").format(
        anew, decimal(line.waste.added * 100, 1), _waste_why(line.waste), f"; {price}" if price else ""
    )


def _board_feet(number: int) -> Markup:
    return Markup("{} board {}").format(number, "foot" if number == 1 else "feet")


def _cubic_metres(number: Fraction) -> Markup:
    return Markup("{} m³").format(decimal(number, 3))


def _whole_wood(makings: Makings, line: Lumber) -> Markup:
    """As it is bought, in the measure of the author's yards."""
    if makings.plan.units == "inch":
        return _board_feet(line.buy_board_feet)
    return _cubic_metres(line.buy_cubic_metres)


def lumber_amount(makings: Makings, line: Lumber) -> Markup:
    return _both(makings, line.buy_board_feet, line.buy_cubic_metres)


def _both(makings: Makings, board_feet: int, cubic_metres: Fraction) -> Markup:
    """In both measures, the one of the author's yards first."""
    feet, cubic = _board_feet(board_feet), _cubic_metres(cubic_metres)
    first, second = (feet, cubic) if makings.plan.units == "inch" else (cubic, feet)
    return Markup('{} <span class="also">({})</span>').format(first, second)


def _of_lumber(makings: Makings, line: Lumber) -> Iterator[Markup]:
    size = makings.shows.size
    yield boards_to_buy(makings, line)
    yield Markup("The longest piece takes a board of {}, the widest {} of its width").format(
        size(line.longest), size(line.widest)
    )
    yield _measures(makings, line)
    yield _with_waste(makings, line)
    if line.must_match:
        yield Markup("What must match is chosen first")
    yield Markup("Where each part lies: {}").format(BOARDS)


def boards_to_buy(makings: Makings, line: Lumber) -> Markup:
    """`About 3 boards: 2 of 8 ft × 6 in, 1 of 6 ft × 6 in; 1 of them for waste`"""
    about = "" if line.nominal is not None else "About "
    sizes = [_of_size(makings, each) for each in line.to_buy]
    if len(sizes) == 1:
        said = Markup("{}{} of {}").format(about, counted(line.boards, "board"), sizes[0])
    else:
        pairs = zip(line.to_buy, sizes, strict=True)
        several = (Markup("{} of {}").format(each.count, words) for each, words in pairs)
        said = Markup("{}{}: {}").format(about, counted(line.boards, "board"), Markup(", ").join(several))
    return said + (Markup("; {} of them for waste").format(line.for_waste) if line.for_waste else Markup(""))


def _of_size(makings: Makings, each: ToBuy) -> Markup:
    size = makings.shows.size
    said = Markup("{} × {}").format(in_feet(makings, each.length), size(each.width))
    if each.cut_to is None:
        return said
    return Markup("{}, crosscut to {} at the yard").format(said, size(each.cut_to))


def in_feet(makings: Makings, length: Length) -> Markup:
    """A board's length as the yard says it: `10 ft` where it is whole feet, in inches."""
    feet = length / FOOT
    if feet.denominator > 1:
        return makings.shows.size(length)
    other = shown(length, "millimetre", makings.plan.precision).text
    return Markup('<span class="only-inch">{} ft</span><span class="only-millimetre">{}</span>').format(
        feet, other
    )


def _measures(makings: Makings, line: Lumber) -> Markup:
    size = makings.shows.size
    if line.nominal is not None:
        return Markup("Measures {} by {} dressed and dry").format(
            size(line.nominal.thickness), size(line.nominal.width)
        )
    planed = next((thick for quarters, thick in PLANED.items() if line.called == f"{quarters}/4"), None)
    if planed is None:
        return Markup("Rough, {} thick").format(size(line.thickness))
    return Markup(
        "Rough, {} thick. Bought planed on both faces it measures {}: little is left to make it flat"
    ).format(size(line.thickness), size(planed))


def _with_waste(makings: Makings, line: Lumber) -> Markup:
    """What is missing, with waste; and which of the two numbers is bought."""
    left, volume = line.board_feet - line.there_board_feet, line.volume - line.there_volume
    more = 1 + line.waste.added
    said = Markup("{} in rough sizes, with {} % for waste {} ({})").format(
        wood(makings, left, volume),
        decimal(line.waste.added * 100, 1),
        wood(makings, left * more, volume * more),
        _waste_why(line.waste),
    )
    if line.buy_board_feet > ceil(left * more):
        return said + Markup("; the boards they are sawn from are more, and these are bought")
    return said


def _waste_why(waste: Waste) -> str:
    return waste.why if waste.standing == "said" else f"{waste.why}; {STANDINGS[waste.standing]}"


# sheets


def says_of_sheets(makings: Makings, line: Sheets) -> Says:
    needed = makings.shows.area(line.area)
    pieces = counted(line.there_pieces, "piece")
    there = Markup("{} from {}").format(makings.shows.area(line.there_area), pieces)
    to_buy = sheets_amount(line)
    return Says(
        Markup(pieces) if line.is_there else to_buy,
        _tally(needed, there, to_buy) if line.there_pieces else (),
        tuple(_of_sheets(makings, line)),
    )


def sheets_amount(line: Sheets) -> Markup:
    if line.is_there:
        return NOTHING
    return Markup("size not said") if line.count is None else Markup(counted(line.count, "sheet"))


def _of_sheets(makings: Makings, line: Sheets) -> Iterator[Markup]:
    size = makings.shows.size
    if line.sheet is not None and not line.is_there:
        yield Markup("{} by {}").format(size(line.sheet[0]), size(line.sheet[1]))
    if line.called is not None and line.thickness is not None:
        fine = makings.shows.fine(line.thickness)
        yield Markup("Sold as {}; the plan works with {}").format(size(line.called), fine)
    elif line.thickness is not None:
        yield Markup("{} thick").format(makings.shows.fine(line.thickness))
    if line.is_there:
        yield Markup("Measure it with a calliper in four places before a dado or groove is set for it")
    if line.by == "area":
        yield Markup("Counted by area with {} % for waste ({}): some part is larger than a sheet").format(
            decimal(line.waste.added * 100, 1), _waste_why(line.waste)
        )
    else:
        yield Markup("Where each part lies: {}").format(BOARDS)


# anything else


def says_of_thing(makings: Makings, thing: Thing) -> Says:
    details = tuple(Markup.escape(text) for text in (thing.size, thing.note) if text)
    if not thing.there:
        return Says(thing_amount(makings, thing), (), details)
    needed = thing_amount(makings, thing)
    to_buy = Markup("how many isn't said") if thing.to_buy is None else Markup(thing.to_buy or NOTHING)
    tally = _tally(needed, Markup(thing.there), to_buy)
    return Says(needed if thing.is_there else to_buy, tally, details)


def thing_amount(makings: Makings, thing: Thing) -> Markup:
    """How much of it is needed."""
    if thing.amount is not None and thing.kind == "glue":
        return Markup("about {}").format(makings.shows.weight(Fraction(thing.amount) / 1000))
    if thing.amount is not None:
        return Markup("at most {}").format(makings.shows.volume(Fraction(thing.amount)))
    if thing.count is not None and thing.kind == "abrasive":
        return Markup("{} or {}").format(
            counted(thing.count, "disc"), "quarter sheet" if thing.count == 1 else "quarter sheets"
        )
    return Markup("how many isn't said") if thing.count is None else Markup(str(thing.count))


# money


def money(makings: Makings, amount: Fraction) -> str:
    """`USD 254.80`: always two places."""
    said = two_places(amount)
    return f"{makings.plan.currency} {said}" if makings.plan.currency else said


def price_words(makings: Makings, price: Price | None) -> str:
    if price is None:
        return ""
    return f"{money(makings, price.amount)} {'each' if price.per == 'each' else f'per {price.per}'}"
