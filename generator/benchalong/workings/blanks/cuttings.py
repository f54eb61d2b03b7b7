"""Which stacks stay in one piece until they are milled?

Those that the author keeps together, and those that would be shorter than jointer and planer take. What
belongs together lies side by side where that makes a board no wider than there are, else end to end.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.trade import rough as usual
from benchalong.workings.blanks.model import Lie, Reason
from benchalong.workings.blanks.reckoning import NOTHING, Reckoned
from benchalong.workings.blanks.stacks import Stack


@dataclass(frozen=True)
class Cutting:
    """Stacks that are cut out as one."""

    stacks: tuple[Stack, ...]
    lie: Lie = "alone"
    match: str = ""
    why: tuple[Reason, ...] = ()


def together(reckoned: Reckoned, stacks: Sequence[Stack], why: Reason, match: str = "") -> list[Cutting]:
    """Stacks that stay in one piece as far as boards allow, in their order. Only what comes from boards of
    one thickness, sawn into as many leaves, can."""
    alike: defaultdict[object, list[Stack]] = defaultdict(list)
    for stack in stacks:
        alike[stack.rough.size, stack.rough.leaves].append(stack)
    return [cutting for some in alike.values() for cutting in _as_one(reckoned, some, why, match)]


def _as_one(reckoned: Reckoned, stacks: Sequence[Stack], why: Reason, match: str) -> list[Cutting]:
    if len(stacks) < 2:
        return short_ones(reckoned, stacks) if not match else alone(stacks, match)
    is_short = any(is_too_short(reckoned, stack) for stack in stacks)
    lie: Lie = "end to end" if is_short or match or not _fit_beside(reckoned, stacks[:2]) else "side by side"
    return [
        Cutting(tuple(some), lie if len(some) > 1 else "alone", match, (why,) if len(some) > 1 else ())
        for some in _filled(reckoned, stacks, lie)
    ]


def alone(stacks: Iterable[Stack], match: str = "") -> list[Cutting]:
    return [Cutting((stack,), match=match) for stack in stacks]


def short_ones(reckoned: Reckoned, stacks: Sequence[Stack]) -> list[Cutting]:
    """What is too short for the machines lies end to end with what is sawn alike; the rest alone."""
    alike: defaultdict[object, list[Stack]] = defaultdict(list)
    found: list[Cutting] = []
    for stack in stacks:
        if is_too_short(reckoned, stack):
            alike[stack.stock.id, stack.rough.size, stack.rough.leaves, stack.width, stack.wider].append(
                stack
            )
        else:
            found += alone([stack])
    for some in alike.values():
        found += _runs(reckoned, some)
    return found


def is_too_short(reckoned: Reckoned, stack: Stack) -> bool:
    return stack.is_board and stack.length + stack.longer < reckoned.sawing.shortest


def _runs(reckoned: Reckoned, stacks: list[Stack]) -> list[Cutting]:
    """Runs about equally long, none longer than what is easily kept straight."""
    ordered = sorted(stacks, key=lambda stack: -stack.length)
    runs = _spread(ordered, len(_filled(reckoned, ordered, "end to end", reckoned.easy_length)))
    why = Reason("end to end until milled: under {} they are too short for jointer and planer",
                 (reckoned.sawing.shortest,))  # fmt: skip
    return [
        Cutting(tuple(run), "end to end" if len(run) > 1 else "alone", why=(why,) if len(run) > 1 else ())
        for run in runs
    ]


def _spread(stacks: list[Stack], number: int) -> list[list[Stack]]:
    """Each into the run that is shortest so far."""
    runs: list[list[Stack]] = [[] for _ in range(number)]
    for stack in stacks:
        min(runs, key=lambda run: sum(each.length for each in run)).append(stack)
    return runs


def _filled(
    reckoned: Reckoned, stacks: Sequence[Stack], lie: Lie, most: Length | None = None
) -> list[list[Stack]]:
    """In their order, a new one begun when the next no longer fits."""
    found: list[list[Stack]] = []
    for stack in stacks:
        if found and _fits(reckoned, [*found[-1], stack], lie, most):
            found[-1].append(stack)
        else:
            found.append([stack])
    return found


def _fits(reckoned: Reckoned, stacks: list[Stack], lie: Lie, most: Length | None) -> bool:
    if lie == "side by side":
        return _fit_beside(reckoned, stacks)
    return run_length(reckoned, stacks) <= min(most or reckoned.usable_length(stacks[0].stock),
                                               reckoned.usable_length(stacks[0].stock))  # fmt: skip


def _fit_beside(reckoned: Reckoned, stacks: Sequence[Stack]) -> bool:
    most = min(reckoned.board_width(stacks[0].stock), reckoned.sawing.jointer.width)
    return width_beside(reckoned, stacks) <= most


def run_length(reckoned: Reckoned, stacks: Sequence[Stack]) -> Length:
    """Of stacks end to end: a kerf between two, the allowance once."""
    lengths = sum((stack.length for stack in stacks), NOTHING)
    return lengths + (len(stacks) - 1) * reckoned.sawing.kerf + max(stack.longer for stack in stacks)


def width_beside(reckoned: Reckoned, stacks: Sequence[Stack]) -> Length:
    """Of stacks side by side: between two a kerf and an edge to true, the allowance once."""
    between = reckoned.sawing.kerf + usual.WIDER_NARROW.of(reckoned.units)
    widths = sum((stack.width for stack in stacks), NOTHING)
    return widths + (len(stacks) - 1) * between + max(stack.wider for stack in stacks)


def rough_sizes(reckoned: Reckoned, cutting: Cutting) -> tuple[Length, Length, tuple[Reason, ...]]:
    """Length and width to cut out, rounded up, and never less than the machines take; and why, if larger."""
    stacks, sawing = cutting.stacks, reckoned.sawing
    length = max(stack.length + stack.longer for stack in stacks)
    width = max(stack.width + stack.wider for stack in stacks)
    if cutting.lie == "end to end":
        length = run_length(reckoned, stacks)
    if cutting.lie == "side by side":
        width = width_beside(reckoned, stacks)
    if not stacks[0].is_board:
        return length, width, ()
    why = []
    if length < sawing.shortest:
        length = sawing.shortest
        why.append(
            Reason("longer than it needs to be: nothing under {} goes over jointer and planer", (length,))
        )
    if width < sawing.jointer.narrowest:
        width = sawing.jointer.narrowest
        why.append(Reason("wider than it needs to be: nothing under {} goes over the jointer", (width,)))
    return reckoned.up(length), reckoned.up(width), tuple(why)
