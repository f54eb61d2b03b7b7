"""What the layout says of a shopping list: sheets by where their parts lie, and whether the rack suffices."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from benchalong.plan.model import Plan
from benchalong.workings.boards.model import Boards, Group
from benchalong.workings.purchases.model import Lumber, Rack, Sheets
from benchalong.workings.purchases.others import cost_of_sheets


def laid_lumber(lumber: Iterator[Lumber], boards: Boards) -> Iterator[Lumber]:
    """With what the layout of the same thickness says."""
    groups = {(group.stock, group.thickness, group.called): group for group in boards.groups}
    for line in lumber:
        group = groups.get((line.stock, line.thickness, line.called))
        yield line if group is None else replace(line, rack=_rack(group), laid_on=_laid_on(group))


def laid_sheets(plan: Plan, sheets: Iterator[Sheets], boards: Boards) -> Iterator[Sheets]:
    """Counted by the layout, where it holds all parts on whole sheets."""
    groups = {group.stock: group for group in boards.groups}
    for line in sheets:
        group = groups.get(line.stock)
        if group is None:
            yield line
            continue
        line, count = replace(line, rack=_rack(group)), _laid_on(group)
        if count is not None:
            cost = cost_of_sheets(line.price, plan.stock[line.stock], count)
            line = replace(line, count=count, by="layout", cost=cost)
        yield line


def _rack(group: Group) -> Rack:
    if not any(board.is_there for board in group.boards):
        return "empty"
    return "short" if group.left_out else "suffices"


def _laid_on(group: Group) -> int | None:
    """How many boards or sheets as usually sold; None where the rack's are used, or where some part fits
    on none."""
    return len(group.boards) if _rack(group) == "empty" and not group.left_out else None
