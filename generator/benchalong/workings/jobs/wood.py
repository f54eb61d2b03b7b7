"""Tasks on a part's wood before any joint is cut: chosen, rough cut, milled, glued up from boards, sized."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.lengths import Length
from benchalong.ground.words import the
from benchalong.plan.model import Part
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.jobs.milled_with import with_more, with_spares
from benchalong.workings.jobs.model import Task
from benchalong.workings.jobs.of_part import part_task
from benchalong.workings.jobs.sawn_open import open_tasks
from benchalong.workings.jobs.waits import UNTIL_PLANED


def wood_tasks(facts: Facts) -> Iterator[Task]:
    """Part by part of each kind of work, as it is done: all chosen, then all rough cut, and so on."""
    parts = [facts.plan.parts[name] for name in facts.sawn]
    boards = [part for part in parts if part.id in facts.of_boards]
    yield from (_choose(part) for part in parts)
    yield from (_rough(facts, part) for part in parts)
    yield from open_tasks(facts)
    yield from (_mill(facts, part) for part in boards if not is_milled_late(facts, part))
    for part in (part for part in parts if part.glued_up):
        yield _boards(part)
        yield _flush(part)
    yield from (_mill(facts, part) for part in boards if is_milled_late(facts, part))
    yield from (_rip(facts, part) for part in parts if facts.is_cut_before(part.id))
    yield from (_crosscut(facts, part) for part in parts if facts.is_cut_before(part.id))


def is_milled_late(facts: Facts, part: Part) -> bool:
    """Thin leaves are glued up first and planed thin as one: what floats in a groove."""
    return bool(part.glued_up) and part.id in facts.floats


def _choose(part: Part) -> Task:
    return part_task("choose and mark", part, f"Choose the wood for {the(part.name)} and mark it", usual=True)


def _rough(facts: Facts, part: Part) -> Task:
    sizes = (("length", part.length), ("width", part.width))
    task = part_task(
        "rough cut", part, f"Rough cut {the(part.name)}", "rip", "crosscut", usual=True, sizes=sizes
    )
    return with_more(facts, task, part)


def _mill(facts: Facts, part: Part) -> Task:
    task = part_task(
        "mill",
        part,
        f"Mill {the(part.name)} flat, straight and to thickness",
        sizes=(("thickness", part.thickness),),
        one_session=True,
        lies=True,
        takes_off_marks="Milling takes off every mark on the faces. Mark the faces again as they come off.",
    )
    return with_more(facts, task, part)


def _boards(part: Part) -> Task:
    title = f"Glue up the boards of {the(part.name)}"
    return part_task("glue up", part, title, boards=True, waits=UNTIL_PLANED)


def _flush(part: Part) -> Task:
    off = "Planing the joints flush takes off the marks on that face."
    return part_task(
        "flush", part, f"Flush {the(part.name)} where it is glued", "mill", usual=True, takes_off_marks=off
    )


def _rip(facts: Facts, part: Part) -> Task:
    _, width = first_size(facts, part)
    task = part_task("rip", part, f"Rip {the(part.name)} to width", "cut", "mill", sizes=(("width", width),))
    return with_spares(facts, task, part)


def _crosscut(facts: Facts, part: Part) -> Task:
    length, _ = first_size(facts, part)
    off = "A mark on an end goes with the offcut."
    task = part_task(
        "crosscut",
        part,
        f"Crosscut {the(part.name)} to length",
        "cut",
        sizes=(("length", length),),
        takes_off_marks=off,
    )
    return with_spares(facts, task, part)


def first_size(facts: Facts, part: Part) -> tuple[Length, Length]:
    """(length, width) it is sawn to first; its own where it isn't fitted."""
    fitted = facts.fitted(part.id)
    return (fitted.first_size(part) if fitted else None) or (part.length, part.width)
