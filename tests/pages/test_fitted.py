"""First size, final size, and the job that makes it final: on pages and in plan.json."""

from __future__ import annotations

import pytest

from benchalong.drawing.drawings import Drawings
from benchalong.ground.store import MemoryStore
from benchalong.pages.fitted import FittedShown, first_in_short, fitted_shown
from benchalong.pages.makings import Makings
from benchalong.publishing.plan_json import plan_data
from benchalong.road import Travelled, travel
from conftest import ROOT


@pytest.fixture(scope="module")
def travelled() -> Travelled:
    return travel(ROOT / "content" / "seed-cupboard")


@pytest.fixture(scope="module")
def makings(travelled: Travelled) -> Makings:
    return Makings(travelled, Drawings(travelled.plan, travelled.worked, MemoryStore()))


def shown(makings: Makings, part: str) -> FittedShown:
    found = fitted_shown(makings, part)
    assert found is not None
    return found


def test_a_part_measured_on_the_case_isnt_sawn_before(makings: Makings) -> None:
    back = shown(makings, "back")
    assert not back.width
    assert back.job == "Measure and fit the back to the case"
    assert back.after == ("Glue up the case",)
    assert first_in_short(makings, "back") == "not sawn yet"


def test_a_part_with_wood_left_on_is_made_final_with_its_assembly(makings: Makings) -> None:
    stile = shown(makings, "hinge_stile")
    assert "2 9/32 in" in stile.width
    assert "27 11/16 in" in stile.length
    assert stile.job == "Measure and fit the door to the case"


def test_a_part_that_is_simply_cut_says_nothing(makings: Makings) -> None:
    assert fitted_shown(makings, "side") is None
    assert first_in_short(makings, "side") == ""


def test_plan_json_says_first_and_final_size(travelled: Travelled) -> None:
    data = plan_data(travelled.plan, travelled.worked, travelled.marks, edition="")
    by_name = {each["name"]: each for each in data["fitted"]}
    assert by_name["hinge_stile"]["first_width"]["exact"] == "9271/160"
    assert by_name["back"]["first_width"] is None
    assert by_name["door"]["after"]["assemblies"] == ["case"]
    assert {job["id"] for job in data["jobs"]} >= {"measure-and-fit/back", "measure-and-fit/door"}
    named = {setup["id"]: setup["jobs"] for setup in data["setups"]}
    for job in data["jobs"]:
        assert job["setup"] is None or job["id"] in named[job["setup"]]
