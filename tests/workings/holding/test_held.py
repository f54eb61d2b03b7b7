"""How pieces are held, against closed forms worked out by hand."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from benchalong.ground.problems import Finding
from benchalong.road import travel
from benchalong.workings.holding.balance import centre_of
from benchalong.workings.holding.held import HELD, Held
from benchalong.workings.solids import SOLIDS
from benchalong.workings.weights import WEIGHTS
from benchalong.workings.working import Worked
from faults.catalogue import BASES

PLY = 680e-9
"""Birch plywood, kg for each cubic mm."""


def worked(folder: Path, base: str, **changes: str) -> Worked:
    text = (BASES / f"{base}.yaml").read_text(encoding="utf-8")
    for old, new in changes.items():
        old = old.replace("__", ": ")
        assert text.count(old) == 1
        text = text.replace(old, new)
    (folder / "project.yaml").write_text(text, encoding="utf-8")
    return travel(folder).worked


def held(folder: Path, base: str) -> Held:
    return worked(folder, base)[HELD]


def test_a_dresser_of_boxes_tips_as_its_moments_say(tmp_path: Path) -> None:
    """Sides, floors and drawers are plain boards but for their screw holes, which weigh a gram."""
    side, end, tray = 400 * 600 * 18 * PLY, 400 * 464 * 18 * PLY, 380 * 438 * 18 * PLY
    total = 2 * side + 2 * end + 2 * tray
    centre = ((2 * side + 2 * end) * 200 + 2 * tray * (190 - 200)) / total
    stands = held(tmp_path, "dresser").stands
    assert stands is not None
    front = stands.tips[0]
    assert front.way == "front"
    assert front.weight == pytest.approx(total, rel=0.001)
    assert front.behind == pytest.approx(centre, abs=0.3)
    assert front.before == 200
    child = 50 * 0.45359237
    assert front.needs == pytest.approx((child * 200 - total * centre) / (total + child), abs=0.3)


def test_what_hangs_shares_its_weight_and_pulls_by_its_lever(tmp_path: Path) -> None:
    made = worked(tmp_path, "hung")
    hung = made[HELD].hung
    assert hung is not None
    assert hung.load == 12, "two floors of 6 kg"
    assert float(hung.own) == pytest.approx(float(made[WEIGHTS]().piece or 0), abs=0.002)
    assert hung.down == pytest.approx(float(hung.total) / 2, abs=0.001)
    assert hung.above_foot == 300 + 30, "the middle of the rail, above the foot of the sides"
    assert hung.pull == pytest.approx(float(hung.total) * hung.from_wall / 330 / 2, abs=0.001)
    assert hung.thread == 80 - 18 - 12.5
    assert hung.may_down == pytest.approx(17 * 5**2 / 2 / 9.80665)


def test_the_load_is_followed_from_floor_to_rail(tmp_path: Path) -> None:
    hung = held(tmp_path, "hung").hung
    assert hung is not None
    (way,) = hung.ways
    assert (way.part, way.marks) == ("floor", ("S", "T"))
    assert way.kilograms == 6
    assert way.joints == ("seat", "housing")
    assert way.through == ("side", "rail")
    assert way.sides == 2


def test_a_chest_is_known_by_the_space_it_shuts_in(tmp_path: Path) -> None:
    (lid,) = held(tmp_path, "chest").lids
    assert lid.inside == (800 - 36, 400 - 36, 400 + 2 - 18)
    assert lid.is_hiding_place
    assert lid.openings == 2
    assert lid.finger_room == 20


def test_a_tread_bears_what_the_textbook_says(tmp_path: Path) -> None:
    stands = held(tmp_path, "step").stands
    assert stands is not None
    (tread,) = stands.carries
    assert tread.stress == pytest.approx(3 * 120 * 9.80665 * 350 / (2 * 250 * 25**2))


def test_the_centre_of_a_solid_is_that_of_its_volume(tmp_path: Path) -> None:
    """Of a door with a hole: the board's less the hole's."""
    solids = worked(tmp_path, "hung")[SOLIDS]
    part, solid = solids.parts["floor"], solids["floor"]
    assert not part.cuts
    assert np.allclose(centre_of(solid), np.array(solid.box) / 2)


def test_a_piece_of_unknown_wood_says_nothing_false(tmp_path: Path) -> None:
    made = worked(tmp_path, "dresser", **{"name: Birch plywood, ": "name: Mystery board, "})
    assert made[HELD].stands is None
    assert codes(made.findings) == ["weight-not-known"]


def codes(findings: tuple[Finding, ...]) -> list[str]:
    return [finding.code for finding in findings]
