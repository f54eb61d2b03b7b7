"""What goes over the machines beside the parts' own copies, and how long wood lies after a work."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from markupsafe import Markup

from benchalong.ground.words import counted, in_sentence
from benchalong.pages.makings import Makings
from benchalong.pages.trade_words import each_once
from benchalong.workings.jobs.model import Task


def beside(makings: Makings, tasks: Iterable[Task]) -> str:
    """`1 spare of hinge stile, 2 test pieces (test stick)`; empty where nothing goes with them."""
    return ", ".join(dict.fromkeys(said for task in tasks for said in _each(makings, task)))


def _each(makings: Makings, task: Task) -> Iterator[str]:
    plan = makings.plan
    if task.spares:
        yield f"{counted(task.spares, 'spare')} of {in_sentence(plan.parts[task.parts[0]].name)}"
    for one in task.test_pieces:
        piece = plan.test_pieces[one]
        yield f"{counted(piece.count, 'test piece')} ({in_sentence(piece.name)})"


def rests_of(makings: Makings, tasks: Iterable[Task]) -> tuple[Markup, ...]:
    """How long the wood lies after this work, each once."""
    return each_once(makings.shows, (task.rests for task in tasks if task.rests))
