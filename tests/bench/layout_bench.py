"""Lay out published cutting instances and say how good the layouts are. Run by hand:

    python tests/bench/layout_bench.py INSTANCES.jsonl [--turn] [--every N] [--kerf] [--effort N] [--turns N]

The file holds one instance a line, in the fields its own README describes. Times are processor times.
"""

from __future__ import annotations

import argparse
import json
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeAlias

from benchalong.workings.layout.lay_out import lay_out
from benchalong.workings.layout.model import Board, Layout, Order, Piece, Rules
from workings.layout.checker import faults

Instance: TypeAlias = dict[str, Any]
SCALE, KERF = 10, 3
"""With a kerf: parts and boards are multiplied by SCALE and made smaller by KERF, and the problem is the
same."""


@dataclass(frozen=True)
class Run:
    instance: Instance
    layout: Layout
    seconds: float


def costing_areas(instance: Instance) -> Instance:
    """The same with every board costing its area, as some published values of several sizes are meant."""
    return {**instance, "bins": [[a, b, number, a * b] for a, b, number, _ in instance["bins"]]}


def order_of(instance: Instance, *, may_turn: bool, with_kerf: bool, rules: Rules) -> Order:
    scale, kerf = (SCALE, KERF) if with_kerf else (1, 0)
    if instance["kind"] == "1d":
        bins = [(length, 1, number, None) for length, number in instance["bins"]]
        items = [(length, 1, number) for length, number in instance["items"]]
    else:
        bins, items = instance["bins"], instance["items"]
    boards = tuple(
        Board(f"board {at}", scale * length - kerf, scale * width - kerf, number, 1 if cost is None else cost)
        for at, (length, width, number, cost) in enumerate(bins)
    )
    pieces = tuple(
        Piece(f"part {at}", scale * item[0] - kerf, scale * item[1] - kerf, item[2], may_turn)
        for at, item in enumerate(items)
    )
    return Order(boards, pieces, rules=Rules(kerf, rules.turns, None, rules.seed, rules.effort))


def best_known(instance: Instance, *, may_turn: bool, cut: str) -> int | None:
    values = [
        int(best["value"])
        for best in instance["best"]
        if best["rotation"] == may_turn
        and best["cut"].startswith(cut)
        and best["objective"].startswith("min")
    ]
    return min(values, default=None)


def runs(instances: list[Instance], *, may_turn: bool, with_kerf: bool, rules: Rules) -> Iterator[Run]:
    for instance in instances:
        order = order_of(instance, may_turn=may_turn, with_kerf=with_kerf, rules=rules)
        start = time.process_time()
        layout = lay_out(order)
        seconds = time.process_time() - start
        wrong = faults(order, layout)
        if wrong or layout.left_out:
            raise SystemExit(f"{instance['id']}: {wrong or layout.left_out}")
        yield Run(instance, layout, seconds)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("instances", type=Path)
    parser.add_argument("--turn", action="store_true", help="parts may turn")
    parser.add_argument("--kerf", action="store_true", help="the same problem with a kerf")
    parser.add_argument("--every", type=int, default=1, help="only every so many-th instance")
    parser.add_argument("--skip", type=int, default=0, help="begin with this one")
    parser.add_argument("--only", default="", help="only instances whose id begins so")
    parser.add_argument("--effort", type=int, default=Rules().effort)
    parser.add_argument("--turns", type=int, default=Rules().turns)
    parser.add_argument("--cut", default="", help="compare with best values of this cut")
    parser.add_argument("--area", action="store_true", help="every board costs its area")
    parser.add_argument("--quiet", action="store_true", help="totals only")
    chosen = parser.parse_args()
    lines = chosen.instances.read_text(encoding="utf-8").splitlines()
    instances = [json.loads(line) for line in lines][chosen.skip :: chosen.every]
    instances = [instance for instance in instances if instance["id"].startswith(chosen.only)]
    if chosen.area:
        instances = [costing_areas(instance) for instance in instances]
    rules = Rules(turns=chosen.turns, effort=chosen.effort)
    done = []
    for run in runs(instances, may_turn=chosen.turn, with_kerf=chosen.kerf, rules=rules):
        done.append(run)
        if not chosen.quiet:
            print(_line(run, may_turn=chosen.turn, cut=chosen.cut), flush=True)
    _totals(done, may_turn=chosen.turn, cut=chosen.cut)


def _line(run: Run, *, may_turn: bool, cut: str) -> str:
    layout, best = run.layout, best_known(run.instance, may_turn=may_turn, cut=cut)
    known = "" if best is None else f" best {best}{' WORSE' if layout.cost > best else ''}"
    proven = " proven" if layout.is_proven else ""
    return (
        f"{run.instance['id']}: {layout.cost} bound {layout.lower_bound}{known}{proven} "
        f"{layout.cuts} cuts {run.seconds:.2f} s"
    )


def _totals(done: list[Run], *, may_turn: bool, cut: str) -> None:
    cost, bound = sum(run.layout.cost for run in done), sum(run.layout.lower_bound for run in done)
    known = [best_known(run.instance, may_turn=may_turn, cut=cut) for run in done]
    seconds = [run.seconds for run in done]
    below = sum(run.layout.cost < run.instance.get("dff_bound", 0) for run in done if not may_turn)
    print(f"{len(done)} instances: cost {cost}, bound {bound}, ratio {cost / max(bound, 1):.5f}")
    if all(best is not None for best in known):
        print(f"best known {sum(best or 0 for best in known)}")
    print(f"proven {sum(run.layout.is_proven for run in done)}; below the published bound {below}")
    print(f"processor time: {sum(seconds):.0f} s in all, {max(seconds):.2f} s the longest")


if __name__ == "__main__":
    main()
