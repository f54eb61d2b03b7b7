"""What to buy as a table for spreadsheets: RFC 4180, with the guards of the cut list's.

One file: lengths stand in the author's own units, in columns that say which.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator

from benchalong.ground.lengths import Length
from benchalong.ground.money import two_places
from benchalong.ground.shown import decimal, shown
from benchalong.plan.model import Plan, Price
from benchalong.publishing.cut_list_csv import UNITS, guarded
from benchalong.workings.purchases.model import Lumber, Purchases, Sheets, Thing


def purchases_csv(plan: Plan, bought: Purchases) -> str:
    """The whole list with a head line, and the total last."""
    unit = UNITS[plan.units]
    out = io.StringIO(newline="")
    table = csv.writer(out, lineterminator="\r\n")
    head = ["Kind", "What", "Trade size", "Amount", "In", "Board feet", "Cubic metres", f"Longest ({unit})"]
    table.writerow(
        [*head, f"Widest ({unit})", "Price", "Per", f"Cost ({plan.currency})" if plan.currency else "Cost"]
    )
    for line in bought.lines:
        table.writerow([guarded(cell) for cell in _row(plan, line)])
    if any(line.cost is not None for line in bought.lines):
        table.writerow(["total", *[""] * 10, two_places(bought.total)])
    return out.getvalue()


def _row(plan: Plan, line: Lumber | Sheets | Thing) -> Iterator[str]:
    if isinstance(line, Lumber):
        yield from ("board", line.name, line.called, str(line.boards), "boards, about")
        yield from (str(line.buy_board_feet), decimal(line.buy_cubic_metres, 3))
        yield from (_length(plan, line.longest), _length(plan, line.widest))
    elif isinstance(line, Sheets):
        yield from ("sheet", line.name, "" if line.called is None else _length(plan, line.called))
        yield from ("" if line.count is None else str(line.count), "sheets", "", "", "", "")
    else:
        unit = "grams" if line.kind == "glue" else "litres, at most"
        yield from (line.kind, line.name, line.size)
        if line.amount is not None:
            yield from (decimal(line.amount, 3), unit)
        else:
            yield from ("" if line.count is None else str(line.count), "pieces")
        yield from ("", "", "", "")
    yield from _price(line.price)
    yield "" if line.cost is None else two_places(line.cost)


def _price(price: Price | None) -> tuple[str, str]:
    return ("", "") if price is None else (two_places(price.amount), price.per)


def _length(plan: Plan, length: Length) -> str:
    number = shown(length, plan.units, plan.precision).number
    return f"0 {number}" if "/" in number and " " not in number else number
