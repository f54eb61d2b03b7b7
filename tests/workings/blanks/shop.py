"""Plans of one or a few parts, and the blanks they come to."""

from __future__ import annotations

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading import written
from benchalong.workings.blanks.blanks import cut_out
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.working import Worked
from plan.by_hand import plan_of, project


def inches(number: str) -> Length:
    """`1 1/2` inches."""
    return sum((Length(part) for part in number.split()), Length(0)) * INCH


def oak(**given: object) -> dict[str, written.Stock]:
    return {"oak": written.Stock(kind="board", thickness="3/4 in", **given)}  # type: ignore[arg-type]


def plan(**given: object) -> Plan:
    """In inches, of 4/4 oak unless told otherwise."""
    standing: dict[str, object] = {"units": "inch", "stock": oak(buy="4/4")}
    return plan_of(project(**(standing | given)))


def blanks_of(**given: object) -> Blanks:
    return cut_out(plan(**given), Worked())[0]


def found_in(**given: object) -> list[Finding]:
    return list(cut_out(plan(**given), Worked())[1])


def only(blanks: Blanks) -> Blank:
    (blank,) = blanks.blanks
    return blank


def part(width: str, length: str, count: int = 1, **given: object) -> written.Part:
    """In inches."""
    return written.Part(stock="oak", width=f"{width} in", length=f"{length} in", count=count, **given)  # type: ignore[arg-type]
