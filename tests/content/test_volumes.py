"""Joints leave exactly the wood that the author's own cuts left before: no more and no less."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from benchalong.road import Travelled
from benchalong.workings.solids import solid_of

LINES = (Path(__file__).parent / "volumes.txt").read_text(encoding="utf-8").splitlines()[1:]
BEFORE = {(example, shape): float(volume) for example, shape, volume in map(str.split, LINES)}


@pytest.mark.parametrize("example", ["seed-cupboard", "step-stool"])
def test_every_shape_has_the_wood_it_had(example: str, cupboard: Travelled, stool: Travelled) -> None:
    plan = (cupboard if example == "seed-cupboard" else stool).plan
    now = {
        shape.id: solid_of(replace(plan.parts[shape.part], cuts=shape.cuts)).volume
        for shape in plan.shapes.values()
    }
    before = {shape: volume for (of, shape), volume in BEFORE.items() if of == example}
    assert now == pytest.approx(before, rel=1e-8)
