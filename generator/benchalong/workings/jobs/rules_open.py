"""Rules on wood that is sawn open before it is milled.

What can't be flattened any more once it has moved, and what isn't safe, is a must.
"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.plan.model import PartId
from benchalong.workings.blanks.model import Blank
from benchalong.workings.jobs.index import Found, Index
from benchalong.workings.jobs.model import Need, TaskId
from benchalong.workings.jobs.sawn_open import open_id, sawn_open

CUT_UP = "long boards are cut up before they are worked"


def sawn_open_first(index: Index) -> Found:
    """Split or resawn, then left to lie, then made flat and milled."""
    for blank in sawn_open(index.facts):
        yield from _resawn(blank) if blank.leaves > 1 else _split(blank)
        for part in blank.parts:
            yield from _of_part(index, blank, part)


def _resawn(blank: Blank) -> Found:
    flat = (
        "a board is resawn with a flat face to the fence and a straight edge down, or the blade snatches it"
    )
    yield open_id("resaw", blank), Need(open_id("flatten", blank), flat, "wood")
    yield (
        open_id("rest", blank),
        Need(open_id("resaw", blank), "leaves move when they are sawn apart", "wood"),
    )


def _split(blank: Blank) -> Found:
    yield open_id("rest", blank), Need(open_id("split rough", blank), "it moves when it is split", "wood")
    why = "restless wood that hasn't rested goes crooked again"
    yield open_id("flatten", blank), Need(open_id("rest", blank), why, "wood", "should")


def _of_part(index: Index, blank: Blank, part: PartId) -> Found:
    for opened in _first_on(index, blank):
        yield opened, Need(f"rough-cut/{part}", CUT_UP, "wood")
    moved = "wood that moves once it has its thickness can't be made flat again"
    yield f"mill/{part}", Need(open_id("rest", blank), moved, "wood")
    if blank.leaves == 1:
        why = "restless wood is flattened and left thick, and lies once more before it is milled"
        yield f"mill/{part}", Need(open_id("flatten", blank), why, "wood", "should")
    else:
        yield f"glue-up/{part}", Need(open_id("resaw", blank), "its leaves are sawn apart first", "wood")
    glued = "boards are glued when they have done their moving"
    yield f"glue-up/{part}", Need(open_id("rest", blank), glued, "wood", "should")


def _first_on(index: Index, blank: Blank) -> Iterator[TaskId]:
    """What its sawing open begins with."""
    return index.there(open_id("split rough" if blank.leaves == 1 else "flatten", blank))
