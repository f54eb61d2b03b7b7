"""All there is to do, in an order that can be carried out."""

from __future__ import annotations

from collections.abc import Sequence as Many

from benchalong.workings.sequence.again import made_again
from benchalong.workings.sequence.model import Run, Sequence, ToDo, runs_of
from benchalong.workings.sequence.needs import bits, needs_of
from benchalong.workings.sequence.settings import Benches, Settings, benches_of, fewest_settings, made_by
from benchalong.workings.sequence.walks import least_walking

STATES, LOOKS = 5_000, 4_000


def put_in_order(todos: Many[ToDo], *, states: int = STATES, looks: int = LOOKS, seed: int = 0) -> Sequence:
    """The fewest settings first, then the least walking, then the author's order. The same to-dos give the
    same order, in whatever order they come.

    `states`: settings of the whole shop to look at for the fewest; `looks`: places to look at for the least
    walking. Raises `Circle` when to-dos need each other in one, KeyError when one needs what is not there.
    """
    needs = needs_of(sorted(todos, key=lambda todo: (todo.rank, todo.id)))
    benches = benches_of(needs)
    settings = fewest_settings(benches, limit=states)
    order = least_walking(needs, _runs(benches, settings), looks=looks, seed=seed)
    runs = runs_of(order)
    return Sequence(tuple(todo.id for todo in order), runs, settings.least, made_again(needs, runs))


def _runs(benches: Benches, settings: Settings) -> tuple[Run, ...]:
    todos = benches.needs.todos
    return tuple(
        Run(*benches.setups[setup], tuple(todos[each].id for each in bits(done)))
        for setup, done in made_by(benches, settings.made)
    )
