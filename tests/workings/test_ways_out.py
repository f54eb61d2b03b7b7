"""What comes apart, in which order, and what is said when it doesn't."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from benchalong.road import travel
from benchalong.workings.ways_out import WAYS_OUT
from workings.apart_shop import frame, worked

LEFT, RIGHT, UP, DOWN = (-1.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)
CONTENT = Path(__file__).parents[2] / "content"


def test_a_frame_without_play_comes_apart_once_a_stile_is_off() -> None:
    _, done = worked(frame())
    assert done.findings == ()
    door = done[WAYS_OUT]["door"]
    assert [(move.goes, move.way, move.travel) for move in door.moves] == [
        (("A/H",), LEFT, 10.0),
        (("A/M",), RIGHT, 10.0),
        (("A/T",), UP, 10.0),
        (("A/B",), DOWN, 10.0),
    ]
    assert not door.locked


@pytest.mark.parametrize("mirrored", [False, True])
@pytest.mark.parametrize(("panel", "gets"), [(220, 0), (214, 3)])
def test_a_panel_that_comes_after_its_frame_has_no_way_in(panel: int, gets: int, mirrored: bool) -> None:
    _, done = worked(frame(panel=panel, nested=True, mirrored=mirrored))
    (finding,) = done.findings
    assert (finding.code, finding.level, finding.subject) == ("no-way-in", "fault", "panel")
    assert finding.place.path == ("project.yaml", "assemblies", "door", "place", 1)
    assert finding.numbers == {"gets": gets}
    after = "at once" if gets == 0 else "after 3 mm"
    assert finding.message == (
        "Door: panel A/P has no straight way into its place, or out of it."
        f" The nearest: going to the right, stile A/F/M is in its way {after}"
    )
    assert "before stile A/F/M is fixed" in finding.remedy
    assert done[WAYS_OUT]["door"].locked == (("A/F", "A/P"),)
    assert done[WAYS_OUT]["frame"].locked == ()


GLUE_FRAME = "stage: all\ntitle: Glue the frame\ndoes:\n  - sand: panel\n  - glue up: [stile, rail]"
FIT_PANEL = "stage: all\ntitle: Fit the panel\ndoes:\n  - measure and fit: panel"
GLUE_DOOR = "stage: all\ntitle: Glue the door\ndoes:\n  - glue up: door"


def test_a_frame_glued_before_its_panel_is_in_is_found_at_the_step() -> None:
    _, done = worked(frame(panel=214), {"01-frame.md": GLUE_FRAME, "02-panel.md": FIT_PANEL})
    (finding,) = done.findings
    assert (finding.code, finding.level, finding.subject) == ("closed-too-soon", "fault", "frame")
    assert finding.place.path == ("steps/01-frame.md", "does", 1)
    assert finding.numbers == {"gets": 3}
    assert finding.message == (
        "Door: once this is glued, panel A/P has no straight way into its place."
        " The nearest: going to the right, stile A/M is in its way after 3 mm"
    )
    assert finding.remedy == "put panel A/P in at this step, before stile A/M is glued"


@pytest.mark.parametrize(
    "steps",
    [
        {},
        {"01-door.md": GLUE_DOOR},
        {"01-panel.md": FIT_PANEL, "02-door.md": GLUE_DOOR},
        {"01-frame.md": GLUE_FRAME.replace("glue up", "dry-assemble"), "02-door.md": GLUE_DOOR},
        {"01-frame.md": GLUE_FRAME + "\nparts: [panel]"},
    ],
    ids=["no steps", "all at once", "panel first", "dry", "panel with it"],
)
def test_an_order_that_can_be_carried_out_is_not_spoken_of(steps: dict[str, str]) -> None:
    assert worked(frame(), steps)[1].findings == ()


@pytest.mark.parametrize("name", ["seed-cupboard", "step-stool"])
def test_the_examples_can_be_put_together(name: str) -> None:
    done = travel(CONTENT / name).worked
    assert [f for f in done.findings if f.code in ("no-way-in", "closed-too-soon")] == []
    for taken in done[WAYS_OUT].values():
        assert not taken.locked
        gone = {mark for move in taken.moves for mark in move.goes}
        assert len(gone) == len(taken.members) - 1


def test_lengths_are_kept_exact_enough_to_be_told() -> None:
    _, done = worked(frame(panel=215, nested=True))
    assert done.findings[0].numbers == {"gets": Fraction(3)}
