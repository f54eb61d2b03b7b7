"""How near the order of work comes to the best known of the sequential ordering problem.

    python tests/bench/order_bench.py FILE [LOOKS]

FILE holds one instance a line as JSON: `id`, `n`, `matrix` (what it costs when the column follows the row; -1
where the column must come first) and `best` with the best known `value`. LOOKS: places to look at, 60,000
unless said.
"""

from __future__ import annotations

import json
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from benchalong.workings.sequence.arcs import Must, Prices, cheapest_order, price_of
from benchalong.workings.sequence.walks import closed

LOOKS = 60_000


@dataclass(frozen=True)
class Result:
    id: str
    size: int
    price: int
    best: int
    seconds: float
    """Of processor time."""

    @property
    def gap(self) -> float:
        return 100 * (self.price - self.best) / self.best


def main() -> None:
    file, looks = Path(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else LOOKS
    results = [solved(json.loads(line), looks) for line in file.read_text(encoding="utf-8").splitlines()]
    for each in results:
        print(
            f"{each.id:12} {each.size:4} {each.price:8} {each.best:8} {each.gap:6.2f} % {each.seconds:5.1f} s"
        )
    print(f"mean gap {sum(each.gap for each in results) / len(results):.2f} %, {looks} looks each")


def solved(instance: dict[str, Any], looks: int) -> Result:
    matrix = np.array(instance["matrix"], dtype=np.int64)
    prices: Prices = np.where(matrix < 0, 10**7, matrix)
    must = closed((matrix == -1).T.copy())
    start = time.process_time()
    order = cheapest_order(prices, must, _any_order(must), looks=looks)
    seconds = time.process_time() - start
    _check(order, must)
    return Result(instance["id"], len(matrix), price_of(prices, order), instance["best"][0]["value"], seconds)


def _any_order(must: Must) -> tuple[int, ...]:
    """The first and last of an instance are those that all others follow or come before."""
    return tuple(sorted(range(len(must)), key=lambda each: (int(must[:, each].sum()), each)))


def _check(order: tuple[int, ...], must: Must) -> None:
    place = {each: index for index, each in enumerate(order)}
    assert sorted(order) == list(range(len(must)))
    assert all(place[a] < place[b] for a, b in zip(*np.nonzero(must), strict=True))


if __name__ == "__main__":
    main()
