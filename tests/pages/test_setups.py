"""The order of work and the setups on pages: numbers, marks to tick off, cautions, ways round."""

from __future__ import annotations

import pytest

from benchalong.drawing.drawings import Drawings
from benchalong.ground.store import MemoryStore
from benchalong.pages.makings import Makings
from benchalong.pages.setup import SetupPage, safe_id, setup_page, setups_of
from benchalong.pages.setups import cautions_of_work, setups_in_step, setups_of_part, setups_page
from benchalong.road import travel
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.work_order.work_order import ORDER
from conftest import ROOT


@pytest.fixture(scope="module")
def makings() -> Makings:
    travelled = travel(ROOT / "content" / "seed-cupboard")
    return Makings(travelled, Drawings(travelled.plan, travelled.worked, MemoryStore()))


@pytest.fixture(scope="module")
def pages(makings: Makings) -> tuple[SetupPage, ...]:
    return tuple(setup_page(makings, setup) for setup in setups_of(makings))


def doing(pages: tuple[SetupPage, ...], title: str) -> SetupPage:
    return next(page for page in pages for run in page.runs for task in run.tasks if task.title == title)


def test_every_run_is_told_once_and_every_task_is_in_the_order(makings: Makings) -> None:
    page, order = setups_page(makings), makings.worked[ORDER]()
    told = [one.number for one in page.stretches if one.run and not one.still]
    assert told == list(range(1, order.settings + 1))
    assert (page.setups, page.least) == (order.settings, order.least)
    alone = {line for one in page.stretches for line in one.lines}
    cut = [task.title for task in makings.worked[JOBS].tasks if task.kind in ("cut", "glue up")]
    assert alone.issuperset(cut)


def test_ids_are_safe_for_file_names_and_each_is_one_page(makings: Makings) -> None:
    ids = [safe_id(setup) for setup in setups_of(makings)]
    assert len(set(ids)) == len(ids)
    assert all(id.replace("-", "").isalnum() for id in ids)


def test_a_centred_groove_says_its_numbers_passes_and_turn(pages: tuple[SetupPage, ...]) -> None:
    page = doing(pages, "Cut the groove of the door frame in the hinge stile")
    assert page.settings[0].name == "Fence to the cutter"
    assert "9/32 in" in page.settings[0].size
    assert page.guide == "face, then back"
    assert page.is_turned
    assert len(page.passes) == 4
    assert "fence" in page.picture
    assert page.tests[0].fit
    ticked = [tick.mark for run in page.runs for task in run.tasks for tick in task.ticks if tick.mark]
    assert sorted(ticked) == sorted(f"{door}/{part}" for door in ("LD", "RD") for part in "BHMT")
    assert any(other.tool == "Hand tools" for other in page.others)


def test_places_of_a_guide_are_marked_on_the_wood_not_set(pages: tuple[SetupPage, ...]) -> None:
    page = doing(pages, "Cut the shelf dado (1) in the side, left hand")
    assert [one.name for one in page.settings] == ["Plunge below the surface"]
    task = page.runs[0].tasks
    marked = {one.name: one.size for one in next(t for t in task if t.title.endswith("left hand")).marked}
    assert "From the side to the near wall" in marked


def test_what_was_done_before_at_another_machine_is_told(pages: tuple[SetupPage, ...]) -> None:
    page = doing(pages, "Mill the shelf flat, straight and to thickness")
    assert [each.tool for each in page.before] == ["Jointer", "Jointer"]


def test_cautions_of_one_piece_name_it_and_deferring_comes_last(pages: tuple[SetupPage, ...]) -> None:
    for page in pages:
        assert page.cautions[-1].startswith("These are common practice")
        assert not any(said.startswith("This piece is <data") for said in page.cautions)
        assert not any(
            'in</span><span class="only-millimetre">150 mm</span><span' in s for s in page.cautions
        )


def test_steps_and_parts_lead_to_their_setups(makings: Makings) -> None:
    groove = next(step for step in makings.order if "Groove the frames" in makings.step_titles[step.id])
    assert any("Router table" in link.words for link in setups_in_step(makings, groove))
    assert any(said.startswith("Router table:") for said in cautions_of_work(makings, groove))
    paths = {link.path for link in setups_of_part(makings, "hinge_stile")}
    assert paths <= {f"setups/{safe_id(setup)}.html" for setup in setups_of(makings)}
    assert len(paths) >= 3
