"""Wood that moves, thin wood out of thick, and what is milled beside the parts."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.ground.lengths import INCH
from benchalong.trade.ways.model import Limit, Tool
from benchalong.trade.ways.table import ways
from workings.jobs.shop import Job, jobs_of

PLAN = """\
title: Made
units: inch
stages: {all: {title: All}}
stock:
  ash: {kind: board, species: white ash, thickness: 4/4, restless: <restless>}
parts:
  rail: {stock: ash, thickness: 3/4 in, width: 2 in, length: 20 in, count: 4}
  panel: {stock: ash, thickness: 1/4 in, width: 5 in, length: 20 in, count: 4, resaw: <resaw>}
  slip: {stock: ash, thickness: 1/4 in, width: 5 in, length: 20 in, count: 2, resaw: <resaw>,
    rough_with: panel}
<more>
"""


def made(restless: str = "no", resaw: str = "1", more: str = "") -> Job:
    text = PLAN.replace("<restless>", restless).replace("<resaw>", resaw)
    return jobs_of(text.replace("<more>", more))


def needs(job: Job, task: str) -> dict[str, str]:
    return {need.first: need.due for need in job.by_id[task].needs}


def opened(job: Job) -> set[str]:
    kinds = ("split rough", "flatten", "resaw", "rest")
    return {task.id for task in job.tasks.tasks if task.kind in kinds}


def test_quiet_wood_is_neither_split_nor_resawn_nor_does_it_rest() -> None:
    assert not opened(made())


def test_restless_wood_is_split_and_rests_and_is_flattened_and_lies_again() -> None:
    job = made(restless="yes")
    assert {"split-rough/rail", "rest/rail", "flatten/rail"} <= opened(job)
    assert needs(job, "split-rough/rail") == {"rough-cut/rail": "must"}
    assert needs(job, "rest/rail") == {"split-rough/rail": "must"}
    assert needs(job, "flatten/rail") == {"rest/rail": "should"}
    assert needs(job, "mill/rail") | {"flatten/rail": "should", "rest/rail": "must"} == needs(
        job, "mill/rail"
    )
    rest, flatten = job.by_id["rest/rail"], job.by_id["flatten/rail"]
    assert rest.rests == ("1 to 3 days on stickers: wood that is sawn open moves.",)
    assert (rest.waits, flatten.waits) == (24 * 60, 24 * 60)
    left = [one.inch / INCH for one in flatten.rests if isinstance(one, Limit)]
    assert left == [Fraction(1, 8), Fraction(3, 16)]


@pytest.mark.parametrize("restless", ["yes", "no"])
def test_leaves_are_sawn_from_a_flat_face_and_rest_before_they_are_milled(restless: str) -> None:
    """Parts that stay in one piece are one task; what is resawn isn't split as well."""
    job = made(resaw="2", restless=restless)
    (resaw,) = (task for task in job.tasks.tasks if task.kind == "resaw")
    assert resaw.parts == ("panel", "slip")
    assert resaw.title.endswith("into 2 leaves")
    assert needs(job, resaw.id) == {"flatten/panel": "must"}
    assert needs(job, "flatten/panel") == {"rough-cut/panel": "must", "rough-cut/slip": "must"}
    for part in ("panel", "slip"):
        assert needs(job, f"mill/{part}")["rest/panel"] == "must"
    assert job.by_id["rest/panel"].waits == 24 * 60
    assert "split-rough/panel" not in job.by_id


def test_a_leaf_that_falls_from_a_flat_face_cleans_up_to_its_thickness_and_so_does_the_next() -> None:
    """By hand: 4/4, kerf 1/16, 1/32 off each face. (1 - 1/16)/2 - 1/32 = 7/16; 1/32 off the board's face,
    7/16, the kerf and the second leaf make 1 in, and both end up 13/32."""
    job = made(resaw="2", more="shop: {resaw: {kerf: 1/16 in, clean_up: 1/32 in}}")
    work = next(task for task in job.tasks.tasks if task.kind == "resaw").works[0]
    assert work.family == "resaw"
    assert work.width == Fraction(7, 16) * INCH
    assert work.piece.thickness == Fraction(31, 32) * INCH
    second = work.piece.thickness - work.width - INCH / 16
    assert work.width - INCH / 32 == Fraction(13, 32) * INCH == second - INCH / 16


def best(job: Job, task: str, tools: list[Tool]) -> str:
    answer = ways(job.by_id[task].works[0], tools)
    instead = (said for one in answer.refusals for said in one.instead if isinstance(said, str))
    return answer.best.tool if answer.best else "; ".join(instead)


@pytest.mark.parametrize(
    ("tools", "tool"),
    [
        (["band saw", "table saw", "hand tools"], "band saw"),
        (["table saw", "hand tools"], "hand tools"),  # leaves under 3/4 in: too near the blade
        (["hand tools"], "hand tools"),
    ],
)
def test_who_lacks_a_band_saw_resaws_by_hand(tools: list[Tool], tool: str) -> None:
    job = made(resaw="2")
    assert best(job, next(task.id for task in job.tasks.tasks if task.kind == "resaw"), tools) == tool


def test_a_shop_that_cannot_resaw_is_told_what_would() -> None:
    job = made(resaw="2", more="shop: {tools: [jointer, thickness planer, mitre saw]}")
    told = [one for one in job.findings if "resaw" in one.message]
    assert [one.code for one in told] == ["no-tool-for-it"]
    assert "it takes a band saw" in told[0].remedy


def test_rough_wood_is_split_at_no_table_saw() -> None:
    """Nothing is ripped on a table saw before one face and one edge are true: common practice."""
    job = made(restless="yes")
    assert best(job, "split-rough/rail", ["table saw", "band saw"]) == "band saw"
    assert best(job, "split-rough/rail", ["table saw", "hand tools"]) == "hand tools"
    assert "joint one face and one edge first" in best(job, "split-rough/rail", ["table saw"])


def test_spares_and_test_pieces_go_over_the_machines_with_their_part() -> None:
    more = (
        "spares: {rail: 1}\n"
        "test_pieces:\n  stick: {stock: ash, thickness: 3/4 in, width: 2 in, length: 18 in, count: 2}\n"
        "  thin: {stock: ash, thickness: 1/4 in, width: 2 in, length: 18 in, count: 1}"
    )
    job = made(more=more)
    mill = job.by_id["mill/rail"]
    assert (mill.count, mill.spares, mill.test_pieces) == (4, 1, ("stick",))
    assert {work.count for work in mill.works} == {7}
    assert job.by_id["crosscut/rail"].works[0].count == 5
    assert job.by_id["mill/panel"].test_pieces == ("thin",)
    assert not job.by_id["mill/slip"].test_pieces
    assert job.by_id["rough-cut/rail"].works[0].count == 7
