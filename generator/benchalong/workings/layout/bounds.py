"""What no layout can do better than: lower bounds on the cost.

Every bound here holds for pieces laid down freely, so for edge-to-edge cuts too. Each gives a piece a
*volume*, so that whatever fits on one board has a volume of at most the board's; then the boards must cost
what the volume costs at the cheapest. Volumes are areas, and areas after a dual feasible function on each
side (Fekete & Schepers 2001; Carlier, Clautiaux & Moukrim 2007). A piece that may turn has the smaller of its
two volumes, which is what it has at least whichever way it lies. With several kinds of board a piece counts
what it costs where it is cheapest: weights whose sum on every board is at most the board's cost (weak duality
of the Gilmore & Gomory 1961 programme).
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, gcd

import numpy as np

from benchalong.workings.layout.inner import Inner, Sheet
from benchalong.workings.layout.lies import Floats, Ints
from benchalong.workings.layout.master import cheapest_cover

PARAMETERS = 100
"""How many parameters of each function are tried on a side."""
_NEVER = np.inf


def lower_bound(inner: Inner) -> int:
    """The least cost at which all pieces might be had; where the boards can't suffice, the cost of all."""
    if not inner.kinds or not inner.sheets:
        return 0
    bound = max(area_bound(inner), _volume_bound(inner))
    step = gcd(*(sheet.cost for sheet in inner.sheets)) or 1
    return min(-(-bound // step) * step, sum(sheet.cost * sheet.number for sheet in inner.sheets))


def area_bound(inner: Inner) -> int:
    """The cheapest boards that are together large enough, in their limited numbers."""
    clear = [sheet.area - _spoilt(sheet, inner.kerf) for sheet in inner.sheets]
    wanted = sum(kind.area * kind.demand for kind in inner.kinds)
    costs, numbers = [sheet.cost for sheet in inner.sheets], [sheet.number for sheet in inner.sheets]
    return cheapest_cover(costs, clear, numbers, wanted)


def _spoilt(sheet: Sheet, kerf: int) -> int:
    """Of the largest defect, what no piece's enlarged rectangle covers. Several may overlap, so one is
    counted."""
    sides = ((max(0, d.length - kerf), max(0, d.width - kerf)) for d in sheet.defects)
    return max((length * width for length, width in sides), default=0)


def _volume_bound(inner: Inner) -> int:
    """Weights a piece at what it costs on the kind of board where its volume is cheapest."""
    lengths, widths, demand, may_turn = _columns(inner)
    steps_along = _parameters(np.concatenate([lengths, widths[may_turn > 0]]))
    steps_across = _parameters(np.concatenate([widths, lengths[may_turn > 0]]))
    best = 0.0
    tables = [
        (
            sheet,
            _Side(sheet.length, steps_along, lengths, widths),
            _Side(sheet.width, steps_across, widths, lengths),
        )
        for sheet in inner.sheets
    ]
    for row in range(len(steps_along) * 2 + _ROUNDINGS + 1):
        cheapest: Floats | None = None
        for sheet, along, across in tables:
            volumes = _volumes(along, across, row, may_turn) * sheet.cost
            cheapest = volumes if cheapest is None else np.minimum(cheapest, volumes)
        assert cheapest is not None
        cheapest[~np.isfinite(cheapest)] = 0.0
        best = max(best, float((cheapest @ demand).max()))
    return ceil(best - 1e-6)


def _columns(inner: Inner) -> tuple[Ints, Ints, Ints, Ints]:
    """Length, width, number and whether it may turn, of every piece; members of match sets on their own."""
    rows = [
        (length, width, kind.demand, kind.may_turn) for kind in inner.kinds for length, width in kind.sizes
    ]
    columns = np.array(rows, dtype=np.int64).T
    return columns[0], columns[1], columns[2], columns[3]


def _parameters(sizes: Ints) -> Ints:
    """The sizes themselves, thinned evenly where there are too many."""
    distinct = np.unique(sizes)
    if distinct.size <= PARAMETERS:
        return distinct
    return distinct[np.linspace(0, distinct.size - 1, PARAMETERS).astype(np.int64)]


class _Side:
    """Every function's share of one side of a board, for the pieces as they are and as they lie when
    turned."""

    def __init__(self, board: int, steps: Ints, straight: Ints, turned: Ints) -> None:
        self.straight = np.array(list(_shares(board, steps, straight)))
        self.turned = np.array(list(_shares(board, steps, turned)))
        self.straight[:, straight > board] = _NEVER
        self.turned[:, turned > board] = _NEVER


_ROUNDINGS = 8


def _shares(board: int, steps: Ints, sizes: Ints) -> Iterator[Floats]:
    """Always as many rows for the same steps, whatever the board: what fits is a share of one or less."""
    yield sizes / board
    for k in range(1, _ROUNDINGS + 1):
        yield _rounded(board, k, sizes)
    for step in steps.tolist():
        yield _without_small(board, step, sizes)
        yield _counted(board, step, sizes)


def _rounded(board: int, k: int, sizes: Ints) -> Floats:
    """u(k) of Fekete & Schepers 2001: rounded to a multiple of 1/k, except where it is a multiple of 1/(k +
    1)."""
    scaled = sizes * (k + 1)
    exact = scaled % board == 0
    return np.where(exact, sizes / board, (scaled // board) / k)


def _without_small(board: int, step: int, sizes: Ints) -> Floats:
    """U(e) of Fekete & Schepers 2001: what is below the step counts nothing, what leaves less counts all."""
    if 2 * step > board:
        return sizes / board
    return np.where(sizes > board - step, 1.0, np.where(sizes < step, 0.0, sizes / board))


def _counted(board: int, step: int, sizes: Ints) -> Floats:
    """f2 of Carlier, Clautiaux & Moukrim 2007: how many steps go into it, or don't go into what it leaves."""
    if 2 * step > board:
        return sizes / board
    steps = board // step
    small = 2 * (sizes // step)
    large = 2 * (steps - (board - np.minimum(sizes, board)) // step)
    counted = np.where(2 * sizes > board, large, np.where(2 * sizes == board, steps, small))
    return counted / (2 * steps)


def _volumes(along: _Side, across: _Side, row: int, may_turn: Ints) -> Floats:
    """One function along and every function across, a row each; the pieces' volumes as shares of the
    board."""
    with np.errstate(invalid="ignore"):
        straight = along.straight[row] * across.straight
        turned = along.turned[row] * across.turned
    straight[np.isnan(straight)] = _NEVER
    turned[np.isnan(turned) | (may_turn == 0)[None, :]] = _NEVER
    smaller: Floats = np.minimum(straight, turned)
    return smaller
