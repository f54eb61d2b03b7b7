"""Why a setting is made again: a chain of needs that goes from it over another and back to it."""

from __future__ import annotations

from collections import Counter

from benchalong.workings.sequence.model import Again, Run, ToDoId
from benchalong.workings.sequence.needs import Needs, bits


def made_again(needs: Needs, runs: tuple[Run, ...]) -> tuple[Again, ...]:
    times = Counter((run.machine, run.setup) for run in runs)
    return tuple(
        Again(setup, machine, count, _chain(needs, machine, setup))
        for (machine, setup), count in times.items()
        if count > 1
    )


def _chain(needs: Needs, machine: str, setup: str) -> tuple[ToDoId, ...]:
    """Of one run, one between and one after it: three to-dos, each needing the one before. Empty when there
    are none."""
    own = _done_with(needs, machine, setup, same=True)
    others = _done_with(needs, machine, setup, same=False)
    for last in bits(own):
        for between in bits(needs.all_before[last] & others):
            for first in bits(needs.all_before[between] & own):
                return tuple(needs.todos[each].id for each in (first, between, last))
    return ()


def _done_with(needs: Needs, machine: str, setup: str, *, same: bool) -> int:
    done = 0
    for index, todo in enumerate(needs.todos):
        if todo.machine == machine and todo.setup and (todo.setup == setup) == same:
            done |= 1 << index
    return done
