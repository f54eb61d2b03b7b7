"""Each kind of job on small plans."""

from __future__ import annotations

from fractions import Fraction

import pytest

from workings.jobs.shop import Job, jobs_of

HEAD = """\
title: Made
units: inch
stages: {all: {title: All}}
stock:
  ash: {kind: board, species: white ash, thickness: 3/4 in}
  ply: {kind: sheet, thickness: 1/4 in, sheet: 48 in x 96 in}
  knob: {kind: bought, thickness: 1 in}
parts:
"""
FRAME = """\
  stile: {stock: ash, width: 2 in, length: 20 in<stile>}
  rail: {stock: ash, width: 2 in, length: 20 in + 2*frame.tongue_length}
  panel: {stock: ash, thickness: frame.width - 1/128 in, width: fits frame, length: fits frame<panel>}
joints:
  frame: {kind: tongue and groove, cut_in: [stile inner edge, rail inner edge], takes: [rail both ends],
    floats: [panel], depth: 3/8 in<joint>}
assemblies:
  door:
    place:
      - {part: stile, mark: L, at: [0, 0, 0], along: up, face: front}
      - {part: stile, mark: R, at: [22 in, 0, 0], along: up, face: front}
      - {part: rail, mark: T, at: [2 in - frame.tongue_length, 0, 18 in], along: right, face: front}
      - {part: rail, mark: B, at: [2 in - frame.tongue_length, 0, 0], along: right, face: front}
      - {part: panel, mark: P, along: up, face: front}
<more>
"""


def filled(text: str, **given: str) -> str:
    for name in ("stile", "panel", "joint", "back", "more"):
        text = text.replace(f"<{name}>", given.get(name, ""))
    return HEAD + text


def frame(**given: str) -> Job:
    return jobs_of(filled(FRAME, **given))


def listed(*parts: str) -> Job:
    return jobs_of(HEAD + "\n".join(f"  {part}" for part in parts) + "\n")


def needs(job: Job, then: str) -> dict[str, str]:
    return {need.first: need.due for need in job.by_id[then].needs}


def test_solid_wood_is_milled_and_sheets_are_not() -> None:
    job = listed(
        "rail: {stock: ash, width: 2 in, length: 20 in, count: 3}",
        "back: {stock: ply, width: 20 in, length: 20 in, count: 1}",
        "pull: {stock: knob, width: 1 in, length: 1 in, count: 2}",
    )
    kinds = {
        part: [t.kind for t in job.tasks.tasks if t.parts == (part,)] for part in ("rail", "back", "pull")
    }
    assert sorted(kinds["rail"]) == ["choose and mark", "crosscut", "mill", "rip", "rough cut", "sand"]
    assert sorted(kinds["back"]) == ["choose and mark", "crosscut", "rip", "rough cut", "sand"]
    assert kinds["pull"] == []
    assert job.by_id["mill/rail"].count == 3
    assert job.by_id["mill/rail"].one_session
    assert job.by_id["crosscut/rail"].sizes == (("length", 20 * Fraction("25.4")),)


def test_boards_of_a_panel_are_glued_before_it_is_sawn_to_size() -> None:
    job = listed("top: {stock: ash, width: 18 in, length: 30 in, count: 1, glued_up: three boards}")
    assert needs(job, "glue-up/top") == {"rough-cut/top": "must", "mill/top": "should"}
    assert job.by_id["glue-up/top"].boards
    assert job.by_id["glue-up/top"].waits == 24 * 60
    assert needs(job, "crosscut/top") == {
        "rough-cut/top": "must", "mill/top": "must", "glue-up/top": "must", "flush/top": "should",
        "rip/top": "should",
    }  # fmt: skip


def test_leaves_that_will_float_are_planed_thin_when_they_are_glued() -> None:
    job = frame(panel=", glued_up: two leaves")
    assert needs(job, "mill/panel")["glue-up/panel"] == "should"
    assert "mill/panel" not in needs(job, "glue-up/panel")


def test_own_cuts_holes_and_joints() -> None:
    groove = "{cut: groove, on: edge a, width: 1/4 in, depth: 3/8 in}"
    peg = "{cut: hole, on: face, at: %s, diameter: %s, depth: %s, name: peg}"
    holes = (("2 in", "1/4 in", "through"), ("6 in", "1/4 in", "through"), ("9 in", "3/8 in", "1/2 in"))
    cuts = ", ".join((groove, *(peg % hole for hole in holes)))
    job = listed(f"rail: {{stock: ash, width: 2 in, length: 20 in, count: 2, cuts: [{cuts}]}}")
    made = {task.id: len(task.cuts) for task in job.tasks.tasks if task.cuts}
    assert made == {"cut/rail/groove": 1, "drill/rail/peg/1": 2, "drill/rail/peg/2": 1}
    assert job.by_id["drill/rail/peg/1"].called == ("drill", "cut")
    assert needs(job, "cut/rail/groove") == {
        "rip/rail": "must", "crosscut/rail": "must", "choose-and-mark/rail": "must"
    }  # fmt: skip


def test_a_frame_goes_groove_tongue_panel_dry_glue() -> None:
    job = frame()
    assert needs(job, "cut/rail/frame/tongue")["cut/stile/frame"] == "must"
    assert needs(job, "crosscut/panel")["cut/rail/frame/groove"] == "should"
    assert needs(job, "dry-assemble/door")["cut/rail/frame/tongue"] == "must"
    assert needs(job, "glue-up/door")["dry-assemble/door"] == "should"
    assert needs(job, "glue-up/door")["crosscut/panel"] == "must"
    assert job.by_id["glue-up/door"].rows[0] == ("P",)


def test_glue_says_what_it_shuts_in() -> None:
    closes = {closes.why: closes.shut for closes in frame().by_id["glue-up/door"].closes}
    assert closes["once the stile is glued in, it can't go to the tool any more"] == ("cut/stile/frame",)
    assert closes["once the rail is glued in, it can't go to the tool any more"] == (
        "cut/rail/frame/groove",
        "cut/rail/frame/tongue",
    )


def test_a_panel_is_finished_before_the_frame_closes() -> None:
    job = frame(more="finish: {oil: {what: oil, coats: 2}}")
    need = next(n for n in job.by_id["glue-up/door"].needs if n.first == "finish/oil/panel")
    assert (need.rule, need.due) == ("moves", "must")
    assert needs(job, "finish/oil/door")["glue-up/door"] == "must"
    assert job.by_id["finish/oil/panel"].waits == 2 * 24 * 60


def test_a_finish_on_parts_comes_before_the_glue_and_one_on_assemblies_after() -> None:
    job = frame(more="finish: {oil: {what: oil, wait: 2 hours, coats: 3, on: [rail, door]}}")
    assert needs(job, "glue-up/door")["finish/oil/rail"] == "must"
    assert needs(job, "finish/oil/door")["sand/door"] == "should"
    assert job.by_id["finish/oil/rail"].waits == 6 * 60
    assert "finish/oil/panel" not in job.by_id


def test_what_isnt_glued_is_put_together_dry_and_never_glued() -> None:
    job = frame(joint=", glue: no")
    assert "dry-assemble/door" in job.by_id
    assert not job.of("glue up")


def test_test_pieces_are_milled_with_the_parts_and_come_before_the_cut() -> None:
    job = frame()
    assert needs(job, "test-piece/frame/groove")["mill/stile"] == "must"
    assert needs(job, "test-piece/frame/tongue")["cut/stile/frame"] == "should"
    assert needs(job, "cut/rail/frame/tongue")["test-piece/frame/tongue"] == "should"


# fitted, not just cut

BOX = """\
  side: {stock: ash, width: 6 in, length: 20 in}
  top: {stock: ash, width: 6 in, length: 19 1/4 in}
  back: {stock: ply, width: 19 1/8 in, length: 19 1/8 in<back>}
joints:
  corner: {kind: rabbet, cut_in: [side both ends inner face], takes: [top both ends], depth: 3/8 in}
  lip: {kind: rabbet, cut_in: [side back edge inner face, top back edge inner face], takes: [back both edges,
    back both ends], width: 1/4 in, depth: 3/8 in, glue: no}
assemblies:
  box:
    place:
      - {part: side, mark: L, at: [0, 0, 0], along: up, face: left}
      - {part: side, mark: R, at: [19 1/4 in, 0, 0], along: up, face: right, mirror: left to right}
      - {part: top, mark: T, at: [3/8 in, 0, 19 1/4 in], along: right, face: up}
      - {part: top, mark: B, at: [3/8 in, 0, 0], along: left, face: down}
      - {part: back, mark: K, at: [7/16 in, 5 3/4 in, 7/16 in], along: up, face: front}
"""


def box(back: str) -> Job:
    return jobs_of(filled(BOX, back=f", {back}"))


def test_a_back_is_cut_to_the_glued_case() -> None:
    job = box("cut_when: {measured: box, after: glue up box}")
    assert needs(job, "measure-and-fit/back") == {"glue-up/box": "must"}
    assert "crosscut/back" not in job.by_id
    assert "back" not in job.by_id["glue-up/box"].parts
    assert job.findings == ()


def test_what_is_measured_is_fitted_once_that_is_glued_where_no_job_is_said() -> None:
    assert needs(box("cut_when: box"), "measure-and-fit/back") == {"glue-up/box": "must"}


def test_what_is_left_on_is_sawn_first_and_comes_off_when_it_is_fitted() -> None:
    job = box("cut_when: {measured: box, after: dry-assemble box}, leave: 1/8 in until fitted")
    inch = Fraction("25.4")
    final = inch * (19 + Fraction(1, 8))
    assert job.by_id["crosscut/back"].sizes == (("length", inch * (19 + Fraction(1, 4))),)
    assert job.by_id["measure-and-fit/back"].sizes == (("length", final), ("width", final))
    assert needs(job, "measure-and-fit/back")["dry-assemble/box"] == "must"
    assert needs(job, "measure-and-fit/back")["crosscut/back"] == "must"


def test_wood_left_on_until_it_is_glued_comes_off_after_the_glue() -> None:
    left = "length: 19 1/4 in, leave: {width: 1/16 in, until: glued}}"
    job = jobs_of(filled(BOX).replace("length: 19 1/4 in}", left))
    assert needs(job, "measure-and-fit/top")["glue-up/box"] == "must"
    assert "measure-and-fit/top" not in needs(job, "glue-up/box")
    assert "measure-and-fit/top" not in needs(job, "cut/top/lip")


def test_two_parts_that_wait_for_each_other_are_told() -> None:
    text = filled(BOX, back=", cut_when: {measured: top, after: measure and fit top}").replace(
        "length: 19 1/4 in}", "length: 19 1/4 in, cut_when: {measured: back, after: measure and fit back}}"
    )
    job = jobs_of(text)
    (finding,) = job.findings
    assert (finding.code, finding.level) == ("fitted-goes-round", "fault")
    assert "measure-and-fit/back" in finding.message
    assert "measure-and-fit/top" in finding.message
    assert job.graph.ids


def test_what_waits_for_work_on_the_assembly_it_is_glued_into_is_told() -> None:
    job = frame(stile=", cut_when: {measured: panel, after: flush door}")
    (finding,) = job.findings
    assert (finding.code, finding.subject) == ("fitted-goes-round", "stile")
    assert "glue-up/door" in finding.message
    assert "measure-and-fit/stile" in job.graph.before["glue-up/door"]


def test_a_panel_measured_when_its_frame_is_glued_has_no_way_in() -> None:
    job = frame(panel=", cut_when: {measured: door, after: glue up door}")
    (finding,) = job.findings
    assert (finding.code, finding.subject) == ("fitted-too-late", "panel")
    assert "dry-assemble door" in finding.remedy


def test_the_same_panel_measured_on_the_dry_frame_has_one() -> None:
    job = frame(panel=", cut_when: {measured: door, after: dry-assemble door}")
    assert job.findings == ()
    assert needs(job, "glue-up/door")["measure-and-fit/panel"] == "must"


# hardware, jigs, hanging


def test_jigs_and_loose_hardware_are_jobs() -> None:
    job = frame(more="jigs: {rod: {name: Rod}}\nhardware: {foot: {name: Foot, count: 4}}")
    assert job.by_id["make-jig/rod"].title == "Make the rod"
    assert needs(job, "fit-hardware/foot") == {"glue-up/door": "should"}


def test_hanging_comes_last() -> None:
    step = "---\nstage: all\ntitle: Hang it\ndoes:\n  - hang: door\n---\nUp.\n"
    text = filled(FRAME, more="finish: {oil: {what: oil}}")
    job = jobs_of(text, hang=step)
    assert needs(job, "hang/door")["finish/oil/door"] == "must"
    assert job.graph.before["hang/door"] >= {"glue-up/door", "flush/door", "finish/oil/panel"}
    assert job.tasks.tasks[-1].id == "hang/door"


SHELF = """\
  shelf:
    place:
      - {part: stile, mark: A, at: [0, 0, 0], along: right, face: up}
      - {part: rail, mark: B, at: [0, 2 in, 0], along: right, face: up}
  all:
    place:
      - {assembly: door, mark: D, at: [0, 0, 0]}
      - {assembly: shelf, mark: S, at: [0, 5 in, 0]}
"""


def test_parts_that_no_joint_mentions_are_glued_to_what_they_lie_against() -> None:
    job = jobs_of(filled(FRAME, more=SHELF))
    assert job.by_id["glue-up/shelf"].parts == ("stile", "rail")
    assert "glue-up/all" not in job.by_id


@pytest.mark.parametrize("kind", ["mill", "rip", "crosscut", "sand"])
def test_every_task_carries_minutes(kind: str) -> None:
    assert all(task.minutes > 0 for task in frame().of(kind))
