"""Orders of work made at random, and the fewest settings found by trying everything."""

from __future__ import annotations

import random
from functools import cache

from benchalong.workings.sequence.model import ToDo


def made_at_random(
    seed: int, *, setups: int, todos: int, machines: int = 3, ties: float = 0.12
) -> list[ToDo]:
    """Needs go from lower numbers to higher ones, so there is no circle; the to-dos come shuffled."""
    chance = random.Random(seed)
    made: list[ToDo] = []
    for number in range(todos):
        setup = chance.randrange(setups)
        needs = frozenset(f"t{other}" for other in range(number) if chance.random() < ties)
        where = (f"m{setup % machines}", f"s{setup}") if chance.random() < 0.85 else ("", "")
        made.append(ToDo(f"t{number}", needs, *where, rank=chance.randrange(4)))
    chance.shuffle(made)
    return made


def fewest_by_trying(todos: list[ToDo]) -> int:
    """Every to-do next that can come next, from every state of the shop: no rule saves any work here but that
    the same state needs looking at once (dynamic programming over sets, Held and Karp 1962)."""
    by_id = {todo.id: todo for todo in todos}

    @cache
    def least(done: frozenset[str], stands: frozenset[tuple[str, str]]) -> int:
        if len(done) == len(by_id):
            return 0
        best = len(by_id)
        for todo in by_id.values():
            if todo.id in done or not todo.needs <= done:
                continue
            if not todo.setup or (todo.machine, todo.setup) in stands:
                best = min(best, least(done | {todo.id}, stands))
            else:
                others = frozenset(each for each in stands if each[0] != todo.machine)
                then = others | {(todo.machine, todo.setup)}
                best = min(best, 1 + least(done | {todo.id}, then))
        return best

    return least(frozenset(), frozenset())
