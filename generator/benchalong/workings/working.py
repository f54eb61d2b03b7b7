"""What a working is, and where earlier results are looked up.

A working is one function from the plan and earlier results to a result and its findings. It names
what it needs; it does not print, open files or remember. A new one is a new module and a line in
the tuple `WORKINGS` in `order.py`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
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


def work_all(plan: Plan, workings: tuple[Working[Any], ...], store: Store | None = None) -> Worked:
    """Every working in turn, each shown only what it asked for."""
    results: dict[str, object] = {}
    findings: list[Finding] = []
    for working in workings:
        visible = Worked({need.name: results[need.name] for need in working.needs}, store=store)
        results[working.name], found = working.work(plan, visible)
        findings.extend(found)
    return Worked(results, tuple(findings))
