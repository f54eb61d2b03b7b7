"""Boards that don't suffice: what is left, and what to buy."""

from __future__ import annotations

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.boards.model import Boards, Group


def too_little(plan: Plan, blanks: Blanks, boards: Boards) -> tuple[Finding, ...]:
    return tuple(_finding(plan, blanks, group) for group in boards.groups if group.left_out)


def _finding(plan: Plan, blanks: Blanks, group: Group) -> Finding:
    what = ", ".join(_said(blanks.by_id[blank], count) for blank, count in group.left_out)
    return Finding(
        "boards-too-few",
        "doubt",
        Place((PROJECT_FILE, "stock", group.stock)),
        group.stock,
        f"the boards under boards: don't suffice; no room is left for {what}",
        _remedy(group),
        sizes=_sizes(plan, blanks, group),
    )


def _sizes(plan: Plan, blanks: Blanks, group: Group) -> tuple[str, ...]:
    """The named sizes of all that is cut from this stock: any of them may be what is too large."""
    parts = {part for blank in blanks.of_stock(group.stock) for part in blank.parts}
    return tuple(
        sorted({name for part in parts for names in plan.parts[part].follows.values() for name in names})
    )


def _said(blank: Blank, count: int) -> str:
    names = " and ".join(dict.fromkeys(each.name for each in blank.gives)) or blank.id
    return f"{count} of {names}"


def _remedy(group: Group) -> str:
    if not group.more:
        return "name more boards, or larger ones"
    boards = "one more board" if len(group.more) == 1 else f"{len(group.more)} more boards"
    return f"buy {boards} of the usual size, or name larger ones"
