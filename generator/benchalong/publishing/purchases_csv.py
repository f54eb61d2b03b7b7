"""What to buy as a table for spreadsheets: RFC 4180, with the guards of the cut list's.

One file: lengths stand in the author's own units, in columns that say which.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.ground.money import two_places
from benchalong.ground.shown import decimal, shown
from benchalong.plan.model import Plan, Price
from benchalong.publishing.cut_list_csv import UNITS, guarded
from benchalong.trade.boards import CUBIC_METRE
from benchalong.workings.purchases.model import Line, Lumber, Purchases, Sheets, Thing, ToBuy


def purchases_csv(plan: Plan, bought: Purchases) -> str:
    """The whole list with a head line, and the total last."""
    unit = UNITS[plan.units]
    out = io.StringIO(newline="")
    table = csv.writer(out, lineterminator="\r\n")
    head = [
        "Kind",
        "What",
        "Trade size",
        "Needed",
        "There",
        "To buy",
        "In",
        "Boards to buy",
        "Board feet",
        "Cubic metres",
    ]
    cost = f"Cost ({plan.currency})" if plan.currency else "Cost"
    table.writerow([*head, f"Longest ({unit})", f"Widest ({unit})", "Price", "Per", cost])
    for line in bought.lines:
        table.writerow([guarded(cell) for cell in _row(plan, line)])
    if any(line.cost is not None and not line.is_there for line in bought.lines):
        table.writerow(["total", *[""] * 13, two_places(bought.total)])
    return out.getvalue()


def _row(plan: Plan, line: Line) -> Iterator[str]:
    if isinstance(line, Lumber):
        yield from _lumber(plan, line)
    elif isinstance(line, Sheets):
        yield from _sheets(plan, line)
    else:
        yield from _thing(line)
    yield from _price(line.price)
    yield "" if line.cost is None or line.is_there else two_places(line.cost)


def _lumber(plan: Plan, line: Lumber) -> Iterator[str]:
    yield from ("board", line.name, line.called)
    feet, cubic = str(line.buy_board_feet), decimal(line.buy_cubic_metres, 3)
    if plan.units == "inch":
        yield from (decimal(line.board_feet, 2), decimal(line.there_board_feet, 2), feet, "board feet")
    else:
        yield from (_cubic(line.volume), _cubic(line.there_volume), cubic, "cubic metres")
    yield from ("; ".join(_boards(plan, each) for each in line.to_buy), feet, cubic)
    yield from ("", "") if line.is_there else (_length(plan, line.longest), _length(plan, line.widest))


def _cubic(volume: Fraction) -> str:
    return decimal(volume / CUBIC_METRE, 4)


def _boards(plan: Plan, each: ToBuy) -> str:
    """`2 of 96 x 6`"""
    size = f"{each.count} of {_length(plan, each.length)} x {_length(plan, each.width)}"
    return size if each.cut_to is None else f"{size}, crosscut to {_length(plan, each.cut_to)}"


def _sheets(plan: Plan, line: Sheets) -> Iterator[str]:
    yield from ("sheet", line.name, "" if line.called is None else _length(plan, line.called))
    yield from (decimal(line.area / 1_000_000, 2), decimal(line.there_area / 1_000_000, 2))
    yield from ("" if line.count is None else str(line.count), "square metres; sheets to buy", *[""] * 5)


def _thing(line: Thing) -> Iterator[str]:
    yield from (line.kind, line.name, line.size)
    if line.amount is not None:
        amount = decimal(line.amount, 3)
        yield from (amount, "", amount, "grams" if line.kind == "glue" else "litres, at most")
    else:
        yield from (_or_empty(line.count), _or_empty(line.there or None), _or_empty(line.to_buy), "pieces")
    yield from [""] * 5


def _or_empty(number: int | None) -> str:
    return "" if number is None else str(number)


def _price(price: Price | None) -> tuple[str, str]:
    return ("", "") if price is None else (two_places(price.amount), price.per)


def _length(plan: Plan, length: Length) -> str:
    number = shown(length, plan.units, plan.precision).number
    return f"0 {number}" if "/" in number and " " not in number else number
