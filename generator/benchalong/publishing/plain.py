"""Lengths, prose, problems and findings as plain JSON data. One place, since both the command line and
`plan.json` promise these shapes."""

from __future__ import annotations

import json
from collections.abc import Iterable
from fractions import Fraction
from typing import Any, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Marks
from benchalong.ground.problems import Finding, Problem
from benchalong.ground.prose import LiveSize, Prose
from benchalong.ground.shown import SYSTEMS, Precision, System, decimal, shown
from benchalong.pages.prose import Fills
from benchalong.pages.shown import Shows
from benchalong.plan.quantity import Quantity
from benchalong.trade.ways.model import Words
from benchalong.trade.ways.said import said

Json: TypeAlias = dict[str, Any]


class Plain:
    """Says lengths and prose as plain data; keeps what it has said, since a plan repeats its lengths."""

    def __init__(self, units: System, precision: Precision) -> None:
        self._precision = precision
        self._fills = Fills(Shows(units, precision), "")
        self._lengths: dict[Length, Json] = {}

    def length(self, length: Length) -> Json:
        """`{"mm": 25.4, "exact": "127/5", "shown": {"inch": "1 in", "millimetre": "25.4 mm"}}`."""
        found = self._lengths.get(length)
        if found is None:
            texts = {system: shown(length, system, self._precision).text for system in SYSTEMS}
            found = {"mm": float(length), "exact": str(length), "shown": texts}
            self._lengths[length] = found
        return found

    def maybe(self, length: Length | None) -> Json | None:
        return None if length is None else self.length(length)

    def lengths(self, lengths: Iterable[Length]) -> list[Json]:
        return [self.length(length) for length in lengths]

    def quantity(self, quantity: Quantity) -> Json:
        """A length as a length; a pure number, area or volume with its dimension."""
        if quantity.dimension == 1:
            return self.length(quantity.value)
        return {
            "number": float(quantity.value),
            "exact": str(quantity.value),
            "dimension": quantity.dimension,
        }

    def words(self, words: Words) -> Json:
        """The trade's words with lengths in them, as text in both systems."""
        return {system: said(words, system, self._precision) for system in SYSTEMS}

    def prose(self, prose: Prose) -> Json:
        """Its text, sizes in the author's units; the same as safe HTML, links from the root; its sizes."""
        sizes = [
            {"formula": piece.formula, "length": self.length(piece.length)}
            for piece in prose
            if isinstance(piece, LiveSize)
        ]
        return {"text": self._fills.plain(prose), "html": str(self._fills.fill(prose)), "sizes": sizes}


def in_short(data: object) -> str:
    """As JSON text without a needless space."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def finding_json(finding: Finding, marks: Marks, plain: Plain) -> Json:
    """One finding, as `check --json` and `plan.json` say it."""
    mark = marks.find(finding.place)
    return {
        "code": finding.code,
        "level": finding.level,
        "file": mark.file,
        "line": mark.line,
        "column": mark.column,
        "subject": finding.subject,
        "message": finding.message,
        "remedy": finding.remedy,
        "numbers": {name: plain.length(length) for name, length in finding.numbers.items()},
        "sizes": list(finding.sizes),
    }


def problems_json(problems: Iterable[Problem], marks: Marks) -> Json:
    """`{"problems": [...]}`."""
    return {"problems": [_problem_json(problem, marks) for problem in problems]}


def maybe_number(value: Fraction | float | None) -> float | None:
    """What isn't a length, as JSON counts."""
    return None if value is None else float(value)


def number_text(value: Fraction) -> str:
    """A pure number or a price as a decimal."""
    return decimal(value)


def _problem_json(problem: Problem, marks: Marks) -> Json:
    mark = marks.find(problem.place)
    return {
        "file": mark.file,
        "line": mark.line,
        "column": mark.column,
        "length": mark.length,
        "message": problem.message,
        "expected": problem.expected,
        "meant": list(problem.meant),
    }
