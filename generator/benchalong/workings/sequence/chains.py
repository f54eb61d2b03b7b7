"""How often a setting must be made along one chain of needs: a bound for the fewest settings.

Of one setting, a chain that goes from its work over other work of the same machine back to its work makes it
twice. What is left to do always holds everything that comes after it, so the longest count from a to-do on is
the same whenever it is asked: it is worked out once, from the end backwards.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from benchalong.workings.sequence.needs import Needs


@dataclass(frozen=True)
class Chains:
    machine_of: tuple[int, ...]
    """Of each setting."""
    set_anew: tuple[tuple[int, ...], ...]
    """Of each setting, for each to-do: how often it is made on the chain from there, the machine standing at
    something else."""
    as_it_stands: tuple[tuple[int, ...], ...]
    """The same, the machine standing at that setting already."""

    def least(self, ready: Sequence[int], stands: Sequence[int]) -> int:
        """Settings still to be made when these to-dos come next."""
        total = 0
        for setup, machine in enumerate(self.machine_of):
            counts = self.as_it_stands[setup] if stands[machine] == setup else self.set_anew[setup]
            total += max((counts[todo] for todo in ready), default=0)
        return total


def chains_of(needs: Needs, setup_of: Sequence[int], machine_of: Sequence[int]) -> Chains:
    both = [_counts(needs, setup_of, machine_of, setup) for setup in range(len(machine_of))]
    return Chains(tuple(machine_of), tuple(anew for anew, _ in both), tuple(stood for _, stood in both))


def _counts(
    needs: Needs, setup_of: Sequence[int], machine_of: Sequence[int], setup: int
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    anew, stood = [0] * len(needs.todos), [0] * len(needs.todos)
    for todo in reversed(range(len(needs.todos))):
        on_anew = max((anew[then] for then in needs.after[todo]), default=0)
        on_stood = max((stood[then] for then in needs.after[todo]), default=0)
        own = setup_of[todo]
        if own == setup:
            anew[todo], stood[todo] = 1 + on_stood, on_stood
        elif own >= 0 and machine_of[own] == machine_of[setup]:
            anew[todo] = stood[todo] = on_anew
        else:
            anew[todo], stood[todo] = on_anew, on_stood
    return tuple(anew), tuple(stood)
