"""What wood is each stock?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.report import either
from benchalong.plan.model import Plan, Stock, StockId
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.sheets import Sheet, sheet_called
from benchalong.trade.species import Species
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Woods:
    solid: Mapping[StockId, Species]
    """Boards and turned stock whose wood is known."""
    sheets: Mapping[StockId, Sheet]
    """Sheets whose kind is told by their name."""


def tell_woods(plan: Plan, _: Worked) -> tuple[Woods, tuple[Finding, ...]]:
    solid, sheets = {}, {}
    for stock in plan.stock.values():
        species, sheet = plan.woods.find(stock.species), sheet_called(f"{stock.name} {stock.species}")
        if is_solid(stock) and species:
            solid[stock.id] = species
        elif stock.kind == "sheet" and sheet:
            sheets[stock.id] = sheet
    return Woods(solid, sheets), tuple(_unknown(plan))


def is_solid(stock: Stock) -> bool:
    """Whether it is wood as it grew; what is bought ready-made may be anything."""
    return stock.kind in ("board", "turned")


def _unknown(plan: Plan) -> Iterator[Finding]:
    for stock in plan.stock.values():
        if is_solid(stock) and stock.species and plan.woods.find(stock.species) is None:
            yield _finding(plan, stock)


def _finding(plan: Plan, stock: Stock) -> Finding:
    shared = plan.woods.called(stock.species)
    offered = plan.woods.nearest(stock.species)
    message = (
        f"several woods go by the name {stock.species}"
        if shared
        else f"no wood called {stock.species} is in the table"
    )
    remedy = (
        f"say which: {either(offered)}"
        if offered
        else "write its numbers and their source under species:, or nothing can be said of how it moves"
    )
    place = Place((PROJECT_FILE, "stock", stock.id, "species"))
    return Finding("species-unknown", "note" if shared else "doubt", place, stock.id, message, remedy)


WOODS: Working[Woods] = Working("woods", "What wood is each stock?", tell_woods)
