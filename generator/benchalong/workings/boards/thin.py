"""Boards named under boards: that are too thin for anything cut from their stock."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.rough import LESS_THAN_CALLED
from benchalong.workings.blanks.model import Blanks
from benchalong.workings.telling import Telling


def too_thin(plan: Plan, blanks: Blanks) -> Iterator[Finding]:
    shown = Telling(plan).shown
    for index, board in enumerate(plan.boards):
        found = blanks.of_stock(board.stock)
        if board.thickness is None or not found:
            continue
        least = min(blank.thickness for blank in found)
        if board.thickness >= least - LESS_THAN_CALLED:
            continue
        called = plan.stock[board.stock].name
        message = (
            f"{called}: the board of {shown(board.length)} × {shown(board.width)} measures "
            f"{shown(board.thickness)}, and the thinnest that is cut from {called} is {shown(least)} rough"
        )
        remedy = f"measure it again, or find one {shown(least - board.thickness)} thicker"
        numbers = {"measures": board.thickness, "needs": least}
        place = Place((PROJECT_FILE, "boards", index)).key()
        yield Finding("board-too-thin", "doubt", place, board.stock, message, remedy, numbers)
