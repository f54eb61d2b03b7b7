"""The card for the yard: which boards first, how they show at the end, how damp, and what to measure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.shown import decimal
from benchalong.pages.makings import Makings, marks_in_short
from benchalong.plan.model import Stock
from benchalong.plan.rough import Match
from benchalong.workings.climate import CLIMATE
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
    plan, size = makings.plan, makings.shows.size
    for match in plan.matches.values():
        yield YardLine(f"match-{match.id}", _match(makings, match))
    for stock in plan.stock.values():
        if stock.kind == "board":
            yield from _board(makings, stock)
    for line in makings.worked[PURCHASES]().sheets:
        called = Markup(", sold as {},").format(size(line.called)) if line.called is not None else Markup("")
        thick = Markup("; the plan works with {}").format(size(line.thickness)) if line.thickness else ""
        said = Markup(
            "{}{} is measured with a calliper in four places before a dado or groove is set for it{}."
        ).format(line.name, called, thick)
        yield YardLine(f"sheet-{line.stock}", said)
    if plan.shop.sawing.car is not None:
        said = Markup("Nothing longer than {} goes into the car; have the yard crosscut it.").format(
            size(plan.shop.sawing.car)
        )
        yield YardLine("car", said)


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
