"""Setups: which tasks share one, what the shop's tools change, and what none of them does."""

from __future__ import annotations

import itertools
import random
from fractions import Fraction

import pytest

from benchalong.trade.ways.tools import at_hand
from workings.jobs.shop import Job, jobs_of, jobs_of_example

INCH = Fraction("25.4")
MADE = """\
title: Made
units: inch
stages: {all: {title: All}}
shop: {tools: [TOOLS], country: COUNTRY}
stock: {ash: {kind: board, species: white ash, thickness: 3/4 in}}
parts:
  side: {stock: ash, width: 8 in, length: 24 in, count: 2, cuts: [CUTS]}
  post: {stock: ash, width: 8 in, length: 24 in, count: 2, cuts: [OTHERS]}
"""


def made(cuts: str, others: str = "", *, tools: str = "", country: str = "US") -> Job:
    named = tools or "table saw with a stacked cutter, router table, drill press, jointer, planer, band saw"
    text = MADE.replace("TOOLS", named).replace("COUNTRY", country)
    return jobs_of(text.replace("CUTS", cuts).replace("OTHERS", others))


def setup(job: Job, task: str) -> object:
    found = job.by_id[task].setup
    assert found is not None, task
    return found


GROOVE = "{cut: groove, on: edge a, width: 1/4 in, depth: 3/8 in}"


def test_like_cuts_in_other_parts_share_a_setup() -> None:
    job = made(GROOVE, GROOVE.replace("edge a", "edge b"))
    assert setup(job, "cut/side/groove") == setup(job, "cut/post/groove")


@pytest.mark.parametrize(
    "other",
    [
        GROOVE.replace("1/4", "5/16"),
        GROOVE.replace("3/8", "7/16"),
        GROOVE.replace("}", ", across: 1/8 in}"),
    ],
)
def test_another_width_depth_or_place_is_another_setup(other: str) -> None:
    job = made(GROOVE, other)
    assert setup(job, "cut/side/groove") != setup(job, "cut/post/groove")


def test_a_dado_is_as_far_from_either_end() -> None:
    """The part is turned end for end: the same setup."""
    dado = "{cut: dado, on: face, at: %s, width: 3/4 in, depth: 1/4 in}"
    job = made(dado % "6 in", dado % "17 1/4 in")
    assert setup(job, "cut/side/dado") == setup(job, "cut/post/dado")


def test_what_a_hand_held_router_cuts_shares_a_setup_wherever_it_is() -> None:
    job = jobs_of_example("seed-cupboard")
    dadoes = [task for task in job.of("cut") if "/shelf_dado/" in task.id]
    assert len(dadoes) == 6
    assert len({task.setup for task in dadoes}) == 1
    walls = {next(n.length for n in task.laid_out if n.key == "wall") for task in dadoes}
    assert len(walls) == 3


def test_left_and_right_share_their_setups() -> None:
    by_id = jobs_of_example("seed-cupboard").by_id
    for cut in ("corner", "back_rabbet", "shelf_dado/1"):
        assert by_id[f"cut/side/{cut}"].setup == by_id[f"cut/side-2/{cut}"].setup


def test_all_of_one_thickness_is_milled_at_one_setting_and_nothing_else() -> None:
    job = jobs_of_example("seed-cupboard")
    by_setup: dict[object, set[Fraction]] = {}
    for task in job.of("mill"):
        by_setup.setdefault(task.setup, set()).add(dict(task.sizes)["thickness"])
    assert sorted(map(len, by_setup.values())) == [1, 1, 1]
    assert next(iter(job.of("mill"))).ways[0].tool == "planer"
    assert {way.tool for way in job.by_id["mill/side"].ways} == {"planer", "jointer"}


def test_one_stop_for_all_parts_of_one_length() -> None:
    by_id = jobs_of_example("seed-cupboard").by_id
    assert by_id["crosscut/shelf"].setup == by_id["crosscut/hanging_rail"].setup
    found = by_id["crosscut/shelf"].setup
    assert found is not None
    assert found.stop == dict(by_id["crosscut/shelf"].sizes)["length"]


def test_a_centred_groove_runs_both_faces_against_the_fence() -> None:
    found = jobs_of_example("seed-cupboard").by_id["cut/hinge_stile/frame"].setup
    assert found is not None
    assert found.guide == "face, then back"
    assert found.cutter_width is not None
    assert found.cutter_width < Fraction(5, 16) * INCH


def test_holes_of_one_joint_share_what_is_set_but_not_where_they_are() -> None:
    hole = "{cut: hole, on: face, at: %s, across: 1 in, diameter: 1/4 in, depth: 1/2 in, name: pin}"
    (task,) = [t for t in made(", ".join((hole % "3 in", hole % "5 in"))).of("drill") if t.cuts]
    assert len(task.cuts) == 2
    assert task.setup is not None
    assert task.setup.stop is None


# tools

CUT_LIST = ", ".join(
    (
        GROOVE,
        "{cut: dado, on: face, at: 6 in, width: 3/4 in, depth: 1/4 in}",
        "{cut: rabbet, on: [end a, back], width: 3/4 in, depth: 3/8 in}",
        "{cut: tenon, on: end b, thickness: 1/4 in, width: 6 in, length: 1 in}",
        "{cut: mortise, on: face, width: 1/4 in, length: 1 in, depth: 1/2 in, at: 10 in}",
        "{cut: hole, on: face, diameter: 1/4 in, depth: through, at: 12 in, across: 2 in}",
        "{cut: bevel, on: [edge b, face], width: 1/8 in, depth: 1/8 in}",
        "{cut: notch, on: edge b, length: 1 in, width: 1 in, at: 15 in}",
    )
)


def test_with_every_tool_all_can_be_done() -> None:
    job = made(
        CUT_LIST, tools="table saw, router table, router, hand tools, band saw, jointer, planer, drill"
    )
    assert not job.tasks.undone
    assert job.findings == ()


def test_what_no_tool_does_is_named() -> None:
    job = made("{cut: hole, on: face, diameter: 1/4 in, depth: 1/2 in, at: 12 in}", tools="table saw")
    undone = {task.id for task in job.tasks.tasks if task.id in job.tasks.undone}
    assert "drill/side/hole" in undone
    finding = next(finding for finding in job.findings if "drill the hole in the side" in finding.message)
    assert (finding.code, finding.level) == ("no-tool-for-it", "doubt")
    assert "drill" in finding.remedy
    assert len(job.findings) == len(undone)


def test_a_stack_is_chosen_only_where_the_country_takes_it() -> None:
    wide = "{cut: dado, on: face, at: 6 in, width: 3/4 in, depth: 1/4 in}"
    tools = "table saw with a stacked cutter, router table, jointer, planer"
    here = made(wide, tools=tools, country="US").by_id["cut/side/dado"].ways[0].tool
    there = made(wide, tools=tools, country="DE").by_id["cut/side/dado"].ways[0].tool
    assert here == "table saw with a stacked cutter"
    assert there != here


def test_a_piece_too_small_for_a_machine_says_so() -> None:
    by_id = jobs_of_example("seed-cupboard").by_id
    refused = by_id["cut/top_rail/frame/groove"].too_small
    assert "table saw" in {refusal.tool for refusal in refused}
    assert by_id["cut/top_rail/frame/groove"].ways[0].tool == "router table"


NAMES = (
    "table saw with a stacked cutter", "table saw", "router table", "router", "hand tools", "track saw",
    "band saw", "mitre saw", "jointer", "planer", "drill press", "drill",
)  # fmt: skip


def test_sixty_sets_of_tools_give_a_way_or_a_name() -> None:
    """Of the 4,096 sets of a dozen tools: each job has a way with those tools, or is named as undone."""
    every = [
        tuple(name for name, on in zip(NAMES, chosen, strict=True) if on)
        for chosen in itertools.product((False, True), repeat=len(NAMES))
    ]
    assert len(every) == 4096
    for tools in random.Random(5).sample(every[1:], 60):
        job = made(CUT_LIST, tools=", ".join(tools))
        have = set(at_hand([", ".join(tools)]).tools)
        for task in job.tasks.tasks:
            if task.works and task.id not in job.tasks.undone:
                assert {way.tool for way in task.ways} <= have
                assert len(task.ways) == len(task.works)
        assert len(job.findings) == len(job.tasks.undone)
        assert len(job.graph.ids) == len(job.tasks.tasks)


def test_cautions_and_minutes_come_with_the_way() -> None:
    task = jobs_of_example("seed-cupboard").by_id["rip/side"]
    assert task.cautions
    assert task.minutes > 0
    assert task.minutes_to_set > 0
