"""Boards that don't suffice: what is left, and what to buy."""

from __future__ import annotations

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.boards.model import Boards, Group


def too_little(blanks: Blanks, boards: Boards) -> tuple[Finding, ...]:
    return tuple(_finding(blanks, group) for group in boards.groups if group.left_out)


def _finding(blanks: Blanks, group: Group) -> Finding:
    what = ", ".join(_said(blanks.by_id[blank], count) for blank, count in group.left_out)
    return Finding(
        "boards-too-few",
        "doubt",
        Place((PROJECT_FILE, "stock", group.stock)),
        group.stock,
        f"the boards under boards: don't suffice; no room is left for {what}",
        _remedy(group),
    )


def _said(blank: Blank, count: int) -> str:
    names = " and ".join(dict.fromkeys(each.name for each in blank.gives)) or blank.id
    return f"{count} of {names}"


def _remedy(group: Group) -> str:
    if not group.more:
        return "name more boards, or larger ones"
    boards = "one more board" if len(group.more) == 1 else f"{len(group.more)} more boards"
    return f"buy {boards} of the usual size, or name larger ones"
