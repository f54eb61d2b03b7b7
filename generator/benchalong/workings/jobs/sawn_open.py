"""Tasks on wood that is sawn open before it is milled, and lies: restless stock split rough, thin parts
resawn out of thick boards.

One task for each kind of blank, since that is what lies on the saw: parts that stay in one piece are sawn
open together. Resawing opens restless wood as splitting does, so what is resawn isn't split as well.
*Common practice, no source*: what is sawn open moves for days.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.ground.words import the
from benchalong.plan.model import PartId
from benchalong.trade.waits import HALF_MILLED_RESTS, RESAWN_RESTS, SPLIT_RESTS, Range
from benchalong.trade.ways.model import Piece, Words, Work
from benchalong.trade.ways.practice import LEFT_THICK
from benchalong.workings.blanks.model import Blank
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.jobs.model import Task
from benchalong.workings.jobs.waits import DAY

OPENS = ("split rough", "resaw")
ON_ROUGH_WOOD = ("split rough", "flatten", "resaw", "rest")
"""Work that only wood which is sawn open asks for, in its order; of one blank not all of it."""


def open_tasks(facts: Facts) -> Iterator[Task]:
    """All split, then all flattened to be resawn, and so on, as it is done."""
    blanks = sawn_open(facts)
    split = [blank for blank in blanks if blank.leaves == 1]
    thick = [blank for blank in blanks if blank.leaves > 1]
    yield from (_split(facts, blank) for blank in split)
    yield from (_flatten(facts, blank) for blank in thick)
    yield from (_resaw(facts, blank) for blank in thick)
    yield from (_rest(facts, blank) for blank in (*split, *thick))
    yield from (_flatten(facts, blank) for blank in split)


def sawn_open(facts: Facts) -> tuple[Blank, ...]:
    """The blanks that parts are sawn out of and that are resawn, or of restless stock."""
    stock = facts.plan.stock
    return tuple(
        blank
        for blank in facts.blanks.blanks
        if blank.parts and (blank.leaves > 1 or stock[blank.stock].is_restless)
        if stock[blank.stock].kind == "board"
    )


def blank_of(facts: Facts, task: Task) -> Blank:
    """The kind of board that such a task is done to."""
    return facts.blanks.by_id[task.id.partition("/")[2]]


def open_id(kind: str, blank: Blank) -> str:
    return f"{kind.replace(' ', '-')}/{blank.id}"


def _task(facts: Facts, kind: str, blank: Blank, title: str) -> Task:
    """Its copies have no marks yet: it counts boards."""
    parts = tuple(part for part in facts.plan.parts if part in blank.parts)
    return Task(
        id=open_id(kind, blank),
        kind=kind,
        title=title.format(_named(facts, parts)),
        called=(kind,),
        parts=parts,
        count=blank.count,
    )


def _named(facts: Facts, parts: tuple[PartId, ...]) -> str:
    names = [the(facts.plan.parts[part].name) for part in parts]
    return " and ".join((", ".join(names[:-1]), names[-1])) if names[1:] else names[0]


def _split(facts: Facts, blank: Blank) -> Task:
    return _task(facts, "split rough", blank, "Split {} rough")


def _flatten(facts: Facts, blank: Blank) -> Task:
    task = _task(facts, "flatten", blank, "Flatten one face and one edge of {}")
    if blank.leaves > 1:
        return task
    return replace(task, usual=True, waits=_least(HALF_MILLED_RESTS), rests=_left_thick())


def _left_thick() -> Words:
    least, most = LEFT_THICK
    begins = f"{_days(HALF_MILLED_RESTS)} on stickers, left "
    return (begins, least, " to ", most, " too thick; then it is flattened again and milled.")


def _resaw(facts: Facts, blank: Blank) -> Task:
    return _task(facts, "resaw", blank, f"Resaw {{}} into {blank.leaves} leaves")


def _rest(facts: Facts, blank: Blank) -> Task:
    is_resawn = blank.leaves > 1
    rest = RESAWN_RESTS if is_resawn else SPLIT_RESTS
    weight = ", a weight on top" if is_resawn else ""
    task = _task(facts, "rest", blank, "Let {} rest")
    return replace(
        task,
        count=blank.count * blank.leaves,
        waits=_least(rest),
        rests=(f"{_days(rest)} on stickers{weight}: wood that is sawn open moves.",),
    )


def _least(rest: Range) -> int:
    return int(rest[0] * DAY)


def _days(rest: Range) -> str:
    return f"{rest[0]} to {rest[1]} days"


def open_works(facts: Facts, task: Task, board: Piece, *, face: Length, edge: Length) -> Iterator[Work]:
    """What it asks of tools. `face` and `edge`: what flattening takes off restless wood, mm."""
    blank = blank_of(facts, task)
    rough = replace(board, length=blank.length, width=blank.width, thickness=blank.thickness)
    clean_up = facts.plan.shop.sawing.clean_up
    off = clean_up if blank.leaves > 1 else face
    if task.kind == "split rough":
        yield Work(family="split rough", piece=rough, width=blank.width, count=blank.count)
    elif task.kind == "flatten":
        yield Work(family="joint a face", piece=rough, depth=off, count=blank.count)
        yield Work(family="joint an edge", piece=rough, surface="edge", depth=edge, count=blank.count)
    elif task.kind == "resaw":
        flat = replace(rough, thickness=blank.thickness - off)
        cuts = blank.count * (blank.leaves - 1)
        yield Work(family="resaw", piece=flat, surface="edge", width=leaf(facts, blank), count=cuts)


def leaf(facts: Facts, blank: Blank) -> Length:
    """How thick a leaf is that falls from the flattened face: what is left flattens its other face too, and
    the face of the next."""
    sawing = facts.plan.shop.sawing
    kerfs = (blank.leaves - 1) * sawing.resaw_kerf
    return Fraction(blank.thickness - kerfs, blank.leaves) - sawing.clean_up
