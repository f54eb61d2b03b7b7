"""Sheets by their count, and all that is no wood: hardware, glue, finish, abrasives."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil

from benchalong.ground.lengths import FOOT, METRE, Length
from benchalong.plan.model import Plan, Price, Stock
from benchalong.trade.abrasives import GRITS, discs
from benchalong.trade.amounts import glue
from benchalong.trade.waste import Waste, waste
from benchalong.workings.amounts import Amounts
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.boards.model import Boards, Group
from benchalong.workings.glue import Glue
from benchalong.workings.purchases.model import Sheets, Thing, ThingKind
from benchalong.workings.purchases.rack import missing, not_laid


def sheets_of(plan: Plan, blanks: Blanks, boards: Boards) -> Iterator[Sheets]:
    """In the order of the plan, without those that nothing is cut from."""
    groups = {group.stock: group for group in boards.groups}
    for stock in plan.stock.values():
        if stock.kind == "sheet" and blanks.of_stock(stock.id):
            yield _sheets(stock, blanks.of_stock(stock.id), groups.get(stock.id))


def _sheets(stock: Stock, blanks: Sequence[Blank], group: Group | None) -> Sheets:
    left, wasted = missing(blanks, group), waste(kind="sheet", said=stock.waste)
    rest = left if group is None else not_laid(left, group)
    count = _count(stock, 0 if group is None else len(group.bought), rest, wasted)
    return Sheets(
        stock.id,
        stock.name,
        stock.thickness,
        stock.nominal,
        stock.sheet,
        _area(blanks),
        _area(blanks) - _area(left),
        0 if group is None else len(group.used),
        wasted,
        count,
        "area" if rest else "layout",
        stock.price,
        cost_of_sheets(stock.price, stock, count),
    )


def _area(blanks: Sequence[Blank]) -> Fraction:
    return sum((each.count * each.length * each.width for each in blanks), Fraction(0))


def _count(stock: Stock, laid: int, rest: Sequence[Blank], wasted: Waste) -> int | None:
    """Sheets by where parts lie; by area what fits on none."""
    if not rest:
        return laid
    if stock.sheet is None:
        return None
    return laid + ceil(_area(rest) * (1 + wasted.added) / (stock.sheet[0] * stock.sheet[1]))


def cost_of_sheets(price: Price | None, stock: Stock, count: int | None) -> Fraction | None:
    """None where no price is said, or one that sheets aren't counted by."""
    if count == 0:
        return Fraction(0)
    if price is None or count is None or stock.sheet is None:
        return None
    area = count * stock.sheet[0] * stock.sheet[1]
    counted = {
        "sheet": Fraction(count),
        "each": Fraction(count),
        "square metre": area / METRE**2,
        "square foot": area / FOOT**2,
    }
    number = counted.get(price.per)
    return None if number is None else price.amount * number


def things_of(plan: Plan, blanks: Blanks, amounts: Amounts, joints: Glue) -> Iterator[Thing]:
    yield from _ready_made(plan, blanks)
    for thing in plan.hardware.values():
        yield _counted(
            "hardware", thing.id, thing.name, thing.size, thing.count, thing.price, thing.note, thing.on_hand
        )
    yield from _glue(plan, blanks, joints)
    yield from _finishes(plan, amounts)
    if plan.finish:
        for grit in GRITS:
            yield _counted(
                "abrasive", f"grit-{grit}", f"Abrasive, grit {grit}", "", discs(amounts.surface), None
            )


def _finishes(plan: Plan, amounts: Amounts) -> Iterator[Thing]:
    """One line a kind: each amount is what would go on every face, so the largest is enough for all."""
    kinds: dict[str, list[str]] = {}
    for finish in plan.finish.values():
        kinds.setdefault(finish.what, []).append(finish.id)
    for what, ids in kinds.items():
        litres = max(amounts.finish[each].litres for each in ids)
        note = plan.finish[ids[0]].note if len(ids) == 1 else ""
        yield Thing("finish", ids[0], what, "", None, litres, None, None, note)


def _ready_made(plan: Plan, blanks: Blanks) -> Iterator[Thing]:
    """What is turned, cut from lengths; and parts that are bought as they are."""
    for blank in blanks.blanks:
        stock = plan.stock[blank.stock]
        if stock.kind == "turned":
            cost = _cost_of_turned(stock.price, blank.count, blank.length)
            name = f"{stock.name}: {blank.gives[0].name.lower()}"
            yield Thing("turned", blank.id, name, "", blank.count, None, stock.price, cost, stock.note)
    for part in plan.parts.values():
        stock = plan.stock[part.stock]
        if stock.kind == "bought":
            count = part.count + plan.spares.get(part.id, 0)
            yield _counted("bought", part.id, part.name, stock.name, count, stock.price, part.note)


def _cost_of_turned(price: Price | None, count: int, length: Length) -> Fraction | None:
    if price is None:
        return None
    counted = {"each": Fraction(count), "foot": count * length / FOOT, "metre": count * length / METRE}
    number = counted.get(price.per)
    return None if number is None else price.amount * number


def _counted(
    kind: ThingKind,
    name: str,
    called: str,
    size: str,
    count: int | None,
    price: Price | None,
    note: str = "",
    there: int = 0,
) -> Thing:
    thing = Thing(kind, name, called, size, count, None, price, None, note, there)
    return replace(thing, cost=_cost_of(price, thing.to_buy))


def _cost_of(price: Price | None, count: int | None) -> Fraction | None:
    if count == 0:
        return Fraction(0)
    return None if price is None or count is None or price.per != "each" else price.amount * count


def _glue(plan: Plan, blanks: Blanks, joints: Glue) -> Iterator[Thing]:
    """For the joints, and for the edges of what is glued up from strips."""
    area = sum((area for blank in blanks.blanks for area in _edges(plan, blank)), Fraction(0))
    if grams := glue(area, plan.rates) + joints.grams:
        yield Thing("glue", "glue", "Glue", "", None, grams, None, None)


def _edges(plan: Plan, blank: Blank) -> Iterator[Fraction]:
    for gives in blank.gives:
        if gives.strips > 1:
            part = plan.parts[gives.part]
            lines = gives.count * Fraction(gives.strips - 1, gives.strips)
            yield lines * part.length * part.thickness
