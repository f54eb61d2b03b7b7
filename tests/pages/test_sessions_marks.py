"""Sessions, rehearsed glue-ups and labels, as the pages show them."""

from __future__ import annotations

import pytest

from benchalong.drawing.drawings import Drawings
from benchalong.ground.store import MemoryStore
from benchalong.pages.glue_ups import glue_ups_in
from benchalong.pages.makings import Makings
from benchalong.pages.marks import marks_page
from benchalong.pages.sessions import sessions_page
from benchalong.road import travel
from benchalong.workings.sessions.sessions import SESSIONS
from conftest import ROOT


@pytest.fixture(scope="module")
def makings() -> Makings:
    travelled = travel(ROOT / "content" / "seed-cupboard")
    return Makings(travelled, Drawings(travelled.plan, travelled.worked, MemoryStore()))


def test_the_page_tells_every_session(makings: Makings) -> None:
    page = sessions_page(makings)
    assert page.length == "3 h"
    assert len(page.sessions) == len(makings.worked[SESSIONS]().sessions)
    assert all(session.done for session in page.sessions)
    assert any(line.meanwhile for session in page.sessions for line in session.done)


def test_the_step_that_glues_the_case_rehearses_it(makings: Makings) -> None:
    (case,) = glue_ups_in(makings, makings.plan.steps["glue-case"])
    assert case.title == "Glue up the case"
    assert case.first == "C/S1, C/S2, C/S3, C/HR and C/SL"
    assert case.halves == ("7 min", "10 min")
    assert "in</data>" in case.diagonal


def test_every_copy_has_a_label_that_says_which_way_it_stands(makings: Makings) -> None:
    labels = {label.mark: label for group in marks_page(makings).groups for label in group.labels}
    assert set(labels) == {copy.mark for copy in makings.plan.copies}
    assert labels["C/SL"].face == "Face to the left"
    assert labels["C/SR"].face == "Face to the right"
    assert labels["LD/T"].face == labels["RD/M"].face == "Face to the front"
    assert "half of the triangle" in labels["LD/H"].triangle
    back = labels["C/BK"].fitted
    assert back is not None
    assert not back.width
