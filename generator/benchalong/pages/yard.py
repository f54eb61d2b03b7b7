"""The card for the yard: which boards first, how they show at the end, how damp, and what to measure. Only of
what is to be bought."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.ground.shown import decimal
from benchalong.pages.buying import boards_to_buy, lumber_amount, sheets_amount, wood
from benchalong.pages.makings import Makings, marks_in_short
from benchalong.plan.model import Stock
from benchalong.plan.rough import Match
from benchalong.workings.climate import CLIMATE
from benchalong.workings.purchases.model import Lumber, Sheets
from benchalong.workings.purchases.purchases import PURCHASES

END_GRAIN = {
    "flat": "flat sawn: at the end of the board the rings lie along its face, in arcs",
    "quarter": "quarter sawn: at the end of the board the rings stand upright, 60 to 90 degrees to its face",
    "rift": "rift sawn: at the end of the board the rings slant, 30 to 60 degrees to its face",
}
MATCHES = {
    "book match": "resawn and opened like a book, so take a board whose face you want to see twice",
    "end to end": "one long board, so that the grain runs on from one to the next",
    "side by side": "one wide board, cut side by side",
    "same board": "all from one board",
    "show side": "the boards that look best",
}


@dataclass(frozen=True)
class YardLine:
    key: str
    """What its tick is kept under: what it is about."""
    text: Markup


def yard_card(makings: Makings) -> tuple[YardLine, ...]:
    """In the order in which it is done."""
    return tuple(_card(makings))


def _card(makings: Makings) -> Iterator[YardLine]:
    plan, bought = makings.plan, makings.worked[PURCHASES]()
    lumber = [line for line in bought.lumber if not line.is_there]
    first = {match for line in lumber for match in line.must_match}
    for match in plan.matches.values():
        if match.id in first:
            yield YardLine(f"match-{match.id}", _match(makings, match))
    for stock in plan.stock.values():
        lines = [line for line in lumber if line.stock == stock.id]
        yield from (_take(makings, line) for line in lines)
        if lines:
            yield from _board(makings, stock)
    yield from (_sheet(makings, line) for line in bought.sheets if not line.is_there)
    if plan.shop.sawing.car is not None and lumber:
        yield _car(makings, lumber, plan.shop.sawing.car)


def _take(makings: Makings, line: Lumber) -> YardLine:
    """How much, and in which boards."""
    called = f"{line.name}, {line.called}" if line.called else line.name
    there = Markup("")
    if line.there_boards:
        amount = wood(makings, line.there_board_feet, line.there_volume)
        there = Markup("; {} more are there already").format(amount)
    said = Markup("{}: {}{}. {}.").format(
        called, lumber_amount(makings, line), there, boards_to_buy(makings, line)
    )
    return YardLine(f"take-{line.stock}-{line.called}".replace("/", "-"), said)


def _sheet(makings: Makings, line: Sheets) -> YardLine:
    size, fine = makings.shows.size, makings.shows.fine
    called = Markup(", sold as {},").format(size(line.called)) if line.called is not None else Markup("")
    thick = Markup("; the plan works with {}").format(fine(line.thickness)) if line.thickness else ""
    said = Markup(
        "{}{} is measured with a calliper in four places before a dado or groove is set for it{}. {}."
    ).format(line.name, called, thick, Markup("{} to buy").format(sheets_amount(line)))
    return YardLine(f"sheet-{line.stock}", said)


def _car(makings: Makings, lumber: Sequence[Lumber], car: Length) -> YardLine:
    size = makings.shows.size
    if any(line.longest > car for line in lumber):
        said = Markup(
            "Nothing longer than {} goes into the car, and some boards have to be longer: have them brought."
        )
    else:
        said = Markup("Nothing longer than {} goes into the car; have the yard crosscut it.")
    return YardLine("car", said.format(size(car)))


def _match(makings: Makings, match: Match) -> Markup:
    plan = makings.plan
    names = ", ".join(dict.fromkeys(plan.parts[part].name.lower() for part in match.parts))
    marks = marks_in_short(match.marks)
    said = Markup("First {}{}: {}").format(names, f" ({marks})" if marks else "", MATCHES[match.how])
    show = Markup(", the {} out").format(match.show_side) if match.show_side else Markup("")
    note = Markup(" ({})").format(match.note) if match.note else Markup("")
    return said + show + note + Markup(".")


def _board(makings: Makings, stock: Stock) -> Iterator[YardLine]:
    if stock.sawn in END_GRAIN:
        yield YardLine(f"sawn-{stock.id}", Markup("{}, {}.").format(stock.name, END_GRAIN[stock.sawn]))
    damp = stock.moisture if stock.moisture is not None else makings.worked[CLIMATE].made_at
    said = Markup("{}: at most {} % by the meter, or it rests in the shop until it shows that.")
    yield YardLine(f"damp-{stock.id}", said.format(stock.name, decimal(damp, 1)))
    if stock.is_restless:
        said = Markup("{} moves when it is cut: split it rough, let the strips rest, and flatten them later.")
        yield YardLine(f"restless-{stock.id}", said.format(stock.name))
