"""The fewest settings: which machine is set to what, one after the other.

A search over settings, not over to-dos: once a machine is set, everything that can be done without setting
any is done at once, since doing it later never saves a setting. The shortest way is found best first (A*,
Hart, Nilsson and Raphael 1968) with a bound that never says too much: how often each setting must still be
made along any one chain of needs. Where a machine has nothing left to do as it stands, and some setting of it
could be used up in one go, that one is made next: whatever is best after it costs no more.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from heapq import heappop, heappush
from typing import TypeAlias

from benchalong.workings.sequence.chains import Chains, chains_of
from benchalong.workings.sequence.needs import Needs, bits

Setup: TypeAlias = int
Stands: TypeAlias = tuple[Setup, ...]
"""What each machine is set to; -1 while it is set to nothing."""


@dataclass(frozen=True)
class Settings:
    made: tuple[Setup, ...]
    """One after the other."""
    least: int
    """No way makes fewer."""


@dataclass(frozen=True)
class Benches:
    """The to-dos by machine and setting, with everything counted from 0."""

    needs: Needs
    setups: tuple[tuple[str, str], ...]
    """(machine, setting) of each."""
    machine_of: tuple[int, ...]
    """Of each setting."""
    setup_of: tuple[Setup, ...]
    """Of each to-do; -1 where nothing is set."""
    uses: tuple[int, ...]
    """Of each setting, the to-dos it serves."""
    machines: int
    chains: Chains


def benches_of(needs: Needs) -> Benches:
    setups = tuple(sorted({(todo.machine, todo.setup) for todo in needs.todos if todo.setup}))
    number = {setup: index for index, setup in enumerate(setups)}
    machines = sorted({machine for machine, _ in setups})
    machine_of = tuple(machines.index(machine) for machine, _ in setups)
    setup_of = tuple(number[todo.machine, todo.setup] if todo.setup else -1 for todo in needs.todos)
    uses = [0] * len(setups)
    for todo, setup in enumerate(setup_of):
        if setup >= 0:
            uses[setup] |= 1 << todo
    chains = chains_of(needs, setup_of, machine_of)
    return Benches(needs, setups, machine_of, setup_of, tuple(uses), len(machines), chains)


def fewest_settings(benches: Benches, *, limit: int) -> Settings:
    """Looks at no more than `limit` states; then it goes on with the best one it has, greedily, and the bound
    says how far off that may be."""
    start = _State(0, (-1,) * benches.machines).filled(benches)
    heap: list[tuple[int, int, int, _State, tuple[Setup, ...]]] = []
    heappush(heap, (start.bound(benches), 0, 0, start, ()))
    best: dict[_State, int] = {start: 0}
    pushed = looked = 0
    while heap:
        bound, _, _, state, made = heappop(heap)
        if state.done == benches.needs.everything:
            return Settings(made, bound)
        if best[state] < len(made):
            continue
        looked += 1
        if looked > limit:
            return Settings(made + _greedily(benches, state), bound)
        for setup in _worth_making(benches, state):
            then = state.set_to(benches, setup)
            cost = len(made) + 1
            if best.get(then, cost + 1) > cost:
                best[then] = cost
                pushed += 1
                heappush(heap, (cost + then.bound(benches), -cost, pushed, then, (*made, setup)))
    raise AssertionError("an order without circles can always be finished")


def made_by(benches: Benches, made: tuple[Setup, ...]) -> tuple[tuple[Setup, int], ...]:
    """Each setting with the to-dos it serves while it stands."""
    state = _State(0, (-1,) * benches.machines).filled(benches)
    served: list[tuple[Setup, int]] = []
    stands: dict[int, int] = {}
    for setup in made:
        stands[benches.machine_of[setup]] = len(served)
        served.append((setup, 0))
        then = state.set_to(benches, setup)
        for todo in bits(then.done & ~state.done):
            own = benches.setup_of[todo]
            if own >= 0:
                run = stands[benches.machine_of[own]]
                served[run] = (own, served[run][1] | 1 << todo)
        state = then
    return tuple(served)


@dataclass(frozen=True)
class _State:
    done: int
    stands: Stands

    def ready(self, needs: Needs) -> Iterator[int]:
        left = needs.everything & ~self.done
        return (todo for todo in bits(left) if not needs.before[todo] & ~self.done)

    def filled(self, benches: Benches) -> _State:
        """With everything done that needs no setting."""
        done = self.done
        waiting = list(self.ready(benches.needs))
        while waiting:
            todo = waiting.pop()
            setup = benches.setup_of[todo]
            if done >> todo & 1 or not (setup < 0 or self.stands[benches.machine_of[setup]] == setup):
                continue
            done |= 1 << todo
            waiting += [then for then in benches.needs.after[todo] if not benches.needs.before[then] & ~done]
        return _State(done, self.stands)

    def set_to(self, benches: Benches, setup: Setup) -> _State:
        machine = benches.machine_of[setup]
        stands = (*self.stands[:machine], setup, *self.stands[machine + 1 :])
        return _State(self.done, stands).filled(benches)

    def bound(self, benches: Benches) -> int:
        """At least so many settings must still be made."""
        return benches.chains.least(tuple(self.ready(benches.needs)), self.stands)


def _worth_making(benches: Benches, state: _State) -> tuple[Setup, ...]:
    can_be = sorted({benches.setup_of[todo] for todo in state.ready(benches.needs)} - {-1})
    for setup in can_be:
        if not _holds_something(benches, state, benches.machine_of[setup]):
            then = state.set_to(benches, setup)
            if not benches.uses[setup] & ~then.done:
                return (setup,)
    return tuple(can_be)


def _holds_something(benches: Benches, state: _State, machine: int) -> bool:
    """Whether something is left that the machine could do as it stands, once others have done their part."""
    stands = state.stands[machine]
    if stands < 0:
        return False
    left = benches.needs.everything & ~state.done
    others = 0
    for setup, uses in enumerate(benches.uses):
        if setup != stands and benches.machine_of[setup] == machine:
            others |= uses
    return any(
        not benches.needs.all_before[todo] & others & left for todo in bits(benches.uses[stands] & left)
    )


def _greedily(benches: Benches, state: _State) -> tuple[Setup, ...]:
    made: list[Setup] = []
    while state.done != benches.needs.everything:
        after = {setup: state.set_to(benches, setup) for setup in _worth_making(benches, state)}
        setup = min(after, key=lambda each: (after[each].bound(benches), -after[each].done.bit_count(), each))
        state = after[setup]
        made.append(setup)
    return tuple(made)
