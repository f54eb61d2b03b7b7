"""The choice among fillings: how often each, so that all pieces are had at the least cost.

The set-covering programme of Gilmore & Gomory (1961). Its relaxation prices the pieces for new fillings
(column generation); its whole-number form chooses. Both are solved by HiGHS on one thread and bounded by
counted work.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import highspy
import numpy as np

from benchalong.workings.layout.lies import Floats, Ints

_INFINITE = highspy.kHighsInf
ITERATION, ITERATION_OF_CHOICE, CHOICE = 300, 1_000, 500_000
"""What a step of the solver, the same within a whole choice, and a choice beside its steps cost in placings,
roughly."""
_NOISE = 1e-9
_CHOSEN_FROM = 1_000
"""From how many columns a whole choice is made at most."""


@dataclass(frozen=True)
class Column:
    """One filling of one board."""

    sheet: int
    cost: float
    counts: tuple[int, ...]


@dataclass(frozen=True)
class Prices:
    """What the relaxation says."""

    cost: float
    worth: Floats
    """What one more of each kind would cost."""
    rent: Floats
    """What one more board of each kind would save; below zero where more must be used than is worth while."""
    shares: Floats
    """How often each column is used."""
    iterations: int
    """What finding it took."""


class Master:
    """A programme that grows by columns. Kinds that no column holds yet can be had at a forbidding price."""

    def __init__(self, demand: Sequence[int], numbers: Sequence[int], forbidding: float) -> None:
        self._kinds, self._sheets = len(demand), len(numbers)
        self._model = quiet_highs()
        for wanted in demand:
            self._model.addRow(wanted, _INFINITE, 0, np.array([], dtype=np.int32), np.array([]))
        for number in numbers:
            self._model.addRow(-_INFINITE, number, 0, np.array([], dtype=np.int32), np.array([]))
        for kind in range(self._kinds):
            self._model.addCol(forbidding, 0, _INFINITE, 1, np.array([kind], dtype=np.int32), np.ones(1))
        self.columns: list[Column] = []

    def add(self, column: Column) -> None:
        counts = np.array(column.counts)
        held = np.flatnonzero(counts)
        rows = np.append(held, self._kinds + column.sheet).astype(np.int32)
        entries = np.append(counts[held], 1).astype(float)
        self._model.addCol(column.cost, 0, _INFINITE, rows.size, rows, entries)
        self.columns.append(column)

    def want(self, demand: Sequence[int], numbers: Sequence[int], least: Sequence[int] = ()) -> None:
        """Asks for so many pieces instead, and for so many boards of each kind, at least and at most."""
        for row, wanted in enumerate(demand):
            self._model.changeRowBounds(row, wanted, _INFINITE)
        for at, number in enumerate(numbers):
            self._model.changeRowBounds(self._kinds + at, least[at] if least else -_INFINITE, number)

    def prices(self) -> Prices:
        self._model.run()
        solution, info = self._model.getSolution(), self._model.getInfo()
        duals = np.array(solution.row_dual)
        return Prices(
            cost=float(info.objective_function_value),
            worth=np.maximum(duals[: self._kinds], 0.0),
            rent=np.where(np.abs(duals[self._kinds :]) < _NOISE, 0.0, -duals[self._kinds :]),
            shares=np.array(solution.col_value)[self._kinds :],
            iterations=max(0, info.simplex_iteration_count),
        )


@dataclass(frozen=True)
class Choice:
    """How often each column; None: none was found. The search took so many iterations and nodes.
    `is_none`: whether it was shown that there is none."""

    times: list[int] | None
    iterations: int
    nodes: int
    is_none: bool = False


def choose(
    columns: Sequence[Column], demand: Sequence[int], numbers: Sequence[int], *, at_most: float, nodes: int
) -> Choice:
    """The first choice found at a cost of at most `at_most`, within so many nodes of the search tree."""
    kinds, width = len(demand), len(columns)
    if width == 0:
        return Choice(None, 0, 0)
    costs = np.array([column.cost for column in columns], float)
    matrix = np.zeros((kinds + len(numbers) + 1, width))
    for at, column in enumerate(columns):
        matrix[:kinds, at] = column.counts
        matrix[kinds + column.sheet, at] = 1
    matrix[-1] = costs
    lower = np.concatenate([np.array(demand, float), np.full(len(numbers) + 1, -_INFINITE)])
    upper = np.concatenate([np.full(kinds, _INFINITE), np.array(numbers, float), [at_most]])
    model = quiet_highs()
    model.setOptionValue("mip_max_nodes", nodes)
    model.setOptionValue("mip_max_improving_sols", 1)
    model.passModel(_whole_number_model(matrix, lower, upper, costs))
    model.run()
    info = model.getInfo()
    found = info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
    times = [round(value) for value in model.getSolution().col_value] if found else None
    is_none = model.getModelStatus() == highspy.HighsModelStatus.kInfeasible
    return Choice(times, max(0, info.simplex_iteration_count), max(1, info.mip_node_count), is_none)


def worth_choosing(columns: Sequence[Column], prices: Prices, slack: float) -> list[int]:
    """Which columns could be part of a choice that costs at most so much beyond the relaxation: what a column
    costs beyond its pieces' prices says it. The cheapest, where there are too many."""
    counts = np.array([column.counts for column in columns], float)
    costs = np.array([column.cost for column in columns], float)
    beyond = costs + prices.rent[[column.sheet for column in columns]] - counts @ prices.worth
    order = np.argsort(beyond, kind="stable")[:_CHOSEN_FROM]
    return [at for at in order.tolist() if beyond[at] <= slack + 1e-6]


def cheapest_cover(costs: Sequence[int], sizes: Sequence[int], numbers: Sequence[int], wanted: int) -> int:
    """The least cost of boards whose sizes add up to what is wanted; of all boards, when they can't."""
    if sum(size * number for size, number in zip(sizes, numbers, strict=True)) < wanted:
        return sum(cost * number for cost, number in zip(costs, numbers, strict=True))
    if len(costs) == 1:
        return -(-wanted // sizes[0]) * costs[0]
    model = quiet_highs()
    matrix = np.array(sizes, float)[None, :] / max(sizes)
    limits = np.array(numbers, float)
    whole = _whole_number_model(
        matrix, np.array([wanted / max(sizes) - 1e-9]), np.array([_INFINITE]), np.array(costs, float), limits
    )
    model.setOptionValue("mip_max_nodes", 1000)
    model.passModel(whole)
    model.run()
    return int(np.ceil(model.getInfo().mip_dual_bound - 1e-6))


def quiet_highs() -> highspy.Highs:
    model: highspy.Highs = highspy.Highs()  # type: ignore[no-untyped-call]
    model.setOptionValue("output_flag", False)
    model.setOptionValue("threads", 1)
    model.setOptionValue("random_seed", 0)
    return model


def _whole_number_model(
    matrix: Floats, lower: Floats, upper: Floats, costs: Floats, limits: Floats | None = None
) -> highspy.HighsLp:
    rows, width = matrix.shape
    at_column, at_row = np.nonzero(matrix.T)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = width, rows
    model.col_cost_ = costs
    model.col_lower_ = np.zeros(width)
    model.col_upper_ = np.full(width, _INFINITE) if limits is None else limits
    model.row_lower_, model.row_upper_ = lower, upper
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_ = starts(at_column, width)
    model.a_matrix_.index_ = at_row.astype(np.int32)
    model.a_matrix_.value_ = matrix.T[at_column, at_row]
    model.integrality_ = [highspy.HighsVarType.kInteger] * width
    return model


def starts(at_column: Ints, width: int) -> Ints:
    """Where each column's entries begin."""
    return np.concatenate([[0], np.cumsum(np.bincount(at_column, minlength=width))]).astype(np.int32)
