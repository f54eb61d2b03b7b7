"""What a working is, and where earlier results are looked up.

A working is one function from the plan and earlier results to a result and its findings. It names
what it needs; it does not print, open files or remember. A new one is a new module and a line in
the tuple `WORKINGS` in `order.py`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Generic, TypeVar, cast

from benchalong.ground.problems import Finding
from benchalong.ground.store import Store
from benchalong.plan.model import Plan

T = TypeVar("T")


@dataclass(frozen=True)
class Working(Generic[T]):
    name: str
    question: str
    """The question it answers, as a woodworker would ask it."""
    work: Callable[[Plan, Worked], tuple[T, tuple[Finding, ...]]]
    needs: tuple[Working[Any], ...] = ()


@dataclass(frozen=True)
class Worked:
    """The results so far, looked up by the working that made them: `worked[cut_list.CUT_LIST]`."""

    results: Mapping[str, object] = field(default_factory=dict)
    findings: tuple[Finding, ...] = ()
    store: Store | None = None
    """Of finished work, for what takes long and is the same again."""

    def __getitem__(self, working: Working[T]) -> T:
        return cast(T, self.results[working.name])


class Results(Mapping[str, object]):
    """Results by their working's name, each worked out when it is first asked for, and shown only what it
    needs: who finds the findings and the pages in the store asks for none."""

    def __init__(
        self, plan: Plan, workings: Callable[[], tuple[Working[Any], ...]], store: Store | None
    ) -> None:
        """`workings` is asked when the first result is: what works out takes long to load."""
        self._plan = plan
        self._asked = workings
        self._store = store
        self._done: dict[str, tuple[object, tuple[Finding, ...]]] = {}

    def __getitem__(self, name: str) -> object:
        return self._worked_out(self._workings[name])[0]

    def __iter__(self) -> Iterator[str]:
        return iter(self._workings)

    def __len__(self) -> int:
        return len(self._workings)

    def findings(self) -> tuple[Finding, ...]:
        """Those of every working, in the order of workings."""
        return tuple(
            finding for working in self._workings.values() for finding in self._worked_out(working)[1]
        )

    def questions(self) -> tuple[str, ...]:
        """What the workings ask, in their order."""
        return tuple(working.question for working in self._workings.values())

    @cached_property
    def _workings(self) -> Mapping[str, Working[Any]]:
        return {working.name: working for working in self._asked()}

    def _worked_out(self, working: Working[Any]) -> tuple[object, tuple[Finding, ...]]:
        found = self._done.get(working.name)
        if found is None:
            needs = {need.name: self[need.name] for need in working.needs}
            found = self._done[working.name] = working.work(self._plan, Worked(needs, store=self._store))
        return found


def work_all(plan: Plan, workings: tuple[Working[Any], ...], store: Store | None = None) -> Worked:
    """Every working in turn, each shown only what it asked for."""
    results = Results(plan, lambda: workings, store)
    return Worked(results, results.findings())
