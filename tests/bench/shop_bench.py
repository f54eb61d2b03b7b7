"""Lay out the hundred orders a small shop might have, and say how many are proven. Run by hand:

    python tests/bench/shop_bench.py [--from N] [--to N] [--effort N] [--seed N] [--quiet]

Times are processor times; `work` is counted and the same on every machine.
"""

from __future__ import annotations

import argparse
import time
from dataclasses import dataclass, replace

from benchalong.workings.layout.bounds import area_bound
from benchalong.workings.layout.inner import inner_order
from benchalong.workings.layout.lay_out import lay_out
from benchalong.workings.layout.model import Layout, Rules
from workings.layout.checker import faults
from workings.layout.shop_orders import ShopOrder, shop_orders


@dataclass(frozen=True)
class Run:
    shop: ShopOrder
    layout: Layout
    by_area: int
    seconds: float


def run_one(shop: ShopOrder, effort: int) -> Run:
    order = replace(shop.order, rules=replace(shop.order.rules, effort=effort))
    start = time.process_time()
    layout = lay_out(order)
    seconds = time.process_time() - start
    wrong = faults(order, layout)
    if wrong:
        raise SystemExit(f"{shop.name}: {wrong}")
    return Run(shop, layout, area_bound(inner_order(order)), seconds)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--from", dest="start", type=int, default=1)
    parser.add_argument("--to", type=int, default=100)
    parser.add_argument("--effort", type=int, default=Rules().effort)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--quiet", action="store_true", help="totals only")
    chosen = parser.parse_args()
    done = []
    for shop in shop_orders(chosen.seed)[chosen.start - 1 : chosen.to]:
        done.append(run_one(shop, chosen.effort))
        if not chosen.quiet:
            print(_line(done[-1]), flush=True)
    _totals(done)


def _line(run: Run) -> str:
    layout, order = run.layout, run.shop.order
    pieces = sum(piece.number for piece in order.pieces)
    words = [word for word, holds in _words(run) if holds]
    return (
        f"{run.shop.name:>10}: {pieces:2} pieces of {len(order.pieces):2}, {len(order.boards)} boards; "
        f"{len(layout.boards):2} used, cost {layout.cost:3} bound {layout.lower_bound:3} "
        f"by area {run.by_area:3} {layout.cuts:3} cuts {run.seconds:5.2f} s {' '.join(words)}"
    )


def _words(run: Run) -> list[tuple[str, bool]]:
    layout, order = run.layout, run.shop.order
    return [
        ("PROVEN", layout.is_proven),
        ("LEFT OUT", bool(layout.left_out)),
        ("all", run.shop.combines_all),
        ("sets", bool(order.match_sets)),
        ("defects", any(board.defects for board in order.boards)),
        ("turns", any(piece.may_turn for piece in order.pieces)),
    ]


def _totals(done: list[Run]) -> None:
    proven = [run for run in done if run.layout.is_proven]
    seconds = sorted(run.seconds for run in done)
    below = sum(run.by_area < run.layout.cost for run in proven)
    print(f"{len(done)} orders: {len(proven)} proven optimal, {len(done) - len(proven)} not")
    print(f"area bound below the optimum: {below} of those proven; at least {below} of {len(done)}")
    print(f"match sets, defects and several boards together: {sum(run.shop.combines_all for run in done)}")
    print(f"something left out: {sum(bool(run.layout.left_out) for run in done)}")
    print(
        f"processor time: {sum(seconds):.0f} s in all, {seconds[len(seconds) // 2]:.2f} s the middle one, "
        f"{seconds[-1]:.2f} s the longest"
    )


if __name__ == "__main__":
    main()
