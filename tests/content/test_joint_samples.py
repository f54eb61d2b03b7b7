"""The sample board: every family of joints, in each of its ways, and the pages of them all."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from benchalong.plan.joints.families import FAMILIES
from benchalong.plan.model import Joint
from benchalong.road import Travelled, travel
from benchalong.workings.clashes import CLASHES
from benchalong.workings.solids import solid_of
from conftest import publish
from content.conftest import CONTENT

BOARD = CONTENT / "joint-samples"

WAYS: Mapping[str, tuple[str, ...]] = {
    "tongue and groove": ("floats",),
    "dado": ("through", "stopped"),
    "mortise and tenon": ("stub", "through", "haunched"),
    "mitre": ("plain", "splined"),
    "dovetail": ("through", "half-blind"),
    "butt": ("screws", "nails", "dowels", "glue alone"),
}
"""What each family must be shown as, where there is more than one way."""


@pytest.fixture(scope="module")
def board() -> Travelled:
    return travel(BOARD)


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return publish(BOARD, tmp_path_factory.mktemp("samples") / "site")


def way(joint: Joint) -> str:
    """Which of its family's ways a joint is made in."""
    sizes = {size.name: size.length for size in joint.sizes}
    words = joint.words
    if joint.kind == "tongue and groove":
        return "floats" if joint.floats else ""
    if joint.kind == "dado":
        return "stopped" if words.get("stopped") else "through"
    if joint.kind == "mitre":
        return "splined" if sizes.get("spline_thickness", 0) > 0 else "plain"
    if joint.kind == "butt":
        return _held_by(words, sizes)
    plain = {"mortise and tenon": "stub", "dovetail": "through"}.get(joint.kind, "")
    return words.get({"mortise and tenon": "tenon"}.get(joint.kind, joint.kind), plain)


def _held_by(words: Mapping[str, str], sizes: Mapping[str, object]) -> str:
    if "dowel" in sizes:
        return "dowels"
    return f"{words['hardware']}s" if words.get("hardware") else "glue alone"


def test_every_family_is_sampled_in_every_way(board: Travelled) -> None:
    shown = {(joint.kind, way(joint)) for joint in board.plan.joints.values()}
    assert shown == {(kind, one) for kind in FAMILIES for one in WAYS.get(kind, ("",))}


def test_nothing_is_found_against_it_but_that_the_spline_is_thin(board: Travelled) -> None:
    """It stands in its mitre, turned by 45 degrees; 4 mm is less than a planer leaves."""
    findings = [(finding.level, finding.code, finding.subject) for finding in board.worked.findings]
    assert findings == [("note", "thinner-than-planer", "spline")]
    assert board.worked[CLASHES].clashes == ()


def test_each_joint_cuts_both_its_sides_or_says_it_cuts_none(board: Travelled) -> None:
    """Glue alone and a stay cut nothing; a through dado, a rabbet, a slide and a nail only one side."""
    plan = board.plan
    cut: dict[str, set[str]] = {name: set() for name in plan.joints}
    for shape in plan.shapes.values():
        for one in shape.cuts:
            if one.joint:
                cut[one.joint].add(shape.part)
    sides = {name: len(parts) for name, parts in cut.items()}
    few = {name: count for name, count in sides.items() if count != 2}
    assert few == {"dado": 1, "rabbet": 1, "drawer_slide": 1, "glued": 0, "lid_stay": 0, "nailed": 1}


def test_every_part_keeps_wood_and_loses_some(board: Travelled) -> None:
    plan = board.plan
    whole = {
        "board",
        "rabbet_top",
        "dado_shelf",
        "glue_left",
        "glue_right",
        "runner",
        "nail_lath",
        "door_panel",
    }
    for shape in plan.shapes.values():
        part = replace(plan.parts[shape.part], cuts=shape.cuts)
        box = float(part.length * part.width * part.thickness)
        volume = solid_of(part).volume
        assert volume > box / 2, shape.id
        assert (volume == pytest.approx(box)) == (shape.part in whole), shape.id


def pages_of_joints(site: Path) -> list[Path]:
    return sorted((site / "joints").glob("*.html"))


def test_each_joint_has_its_page_with_sizes_and_a_section(site: Path, board: Travelled) -> None:
    pages = pages_of_joints(site)
    assert {page.stem for page in pages} == set(board.plan.joints)
    for page in pages:
        soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
        joint = board.plan.joints[page.stem]
        named = {name.get_text() for name in soup.select("main dt .code")}
        assert named <= {f"{joint.id}.{size.name}" for size in joint.sizes}, page.stem
        assert bool(named) != (joint.id in ("glued", "mitre")), page.stem
        assert len(soup.select("main dl data.size")) >= len(named), page.stem
        sections = soup.select("main svg.section")
        assert len(sections) == 1, page.stem
        assert isinstance(sections[0].title, Tag)
        assert re.match(r"\w+", sections[0].title.get_text()), page.stem


def test_each_part_and_step_leads_to_its_joints(site: Path, board: Travelled) -> None:
    for joint in board.plan.joints.values():
        for meeting in joint.meetings:
            page = (site / "parts" / f"{meeting.cut_in.part}.html").read_text(encoding="utf-8")
            assert f"joints/{joint.id}.html" in page, joint.id
    assert "joints/haunched.html" in (site / "steps" / "tenons.html").read_text(encoding="utf-8")
