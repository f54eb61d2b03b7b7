"""Problems and findings as text for a person: the place, the author's own line, a mark under the fault."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.ground.marks import Mark, Marks
from benchalong.ground.problems import Finding, Problem

WIDEST = 100
"""Longer lines of the author's are shown in part, around the fault."""


def problem_text(problem: Problem, marks: Marks) -> str:
    """`file:line:column: message`, then the line, the mark, what was expected, what may have been meant."""
    mark = marks.find(problem.place)
    said = [f"{mark.file}:{mark.line}:{mark.column}: {problem.message}", *_excerpt(mark, marks)]
    if problem.expected:
        said.append(f"  expected {problem.expected}")
    if problem.meant:
        said.append(f"  did you mean {either(problem.meant)}?")
    return "\n".join(said)


def finding_text(finding: Finding, marks: Marks) -> str:
    """`file:line:column: level: message`, then the line, the mark and what to change."""
    mark = marks.find(finding.place)
    said = [
        f"{mark.file}:{mark.line}:{mark.column}: {finding.level}: {finding.message}",
        *_excerpt(mark, marks),
    ]
    if finding.remedy:
        said.append(f"  {finding.remedy}")
    if finding.sizes:
        said.append(f"  follows from {', '.join(finding.sizes)}")
    return "\n".join(said)


def in_order(problems: Iterable[Problem], marks: Marks) -> tuple[Problem, ...]:
    """The same problems in the order of files and lines; what is said twice about one place (a table that is
    used again through an anchor) is said once."""
    said = {_order(problem, marks): problem for problem in problems}
    return tuple(said[key] for key in sorted(said))


def _order(problem: Problem, marks: Marks) -> tuple[str, int, int, str]:
    mark = marks.find(problem.place)
    return (mark.file, mark.line, mark.column, problem.message)


def _excerpt(mark: Mark, marks: Marks) -> list[str]:
    line = marks.line(mark).replace("\t", " ").rstrip()
    if not line:
        return []
    first = max(0, mark.column - 1 - WIDEST // 2) if len(line) > WIDEST else 0
    shown = line[first : first + WIDEST]
    column = mark.column - 1 - first
    width = max(1, min(mark.length, len(shown) - column))
    return [f"    {shown}", f"    {' ' * column}{'^' * width}"]


def either(words: tuple[str, ...]) -> str:
    """`stock`, `stock or note`, `stock, note or name`."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"
