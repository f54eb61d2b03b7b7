"""Rabbet: a step that another part lies in."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings

from benchalong.ground.lengths import INCH
from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    clashes,
    eighths,
    plan_of,
    project_text,
    shape_cuts,
    solid,
    turns,
)

SIDES = "kind: rabbet, cut_in: [side end b back], takes: [top end a]"


def corner(joint: str, depth: Number, *, thick: Number = 18, turn: Turn = UNTURNED) -> str:
    side = Board((400, 200, 20), along="up", face="left")
    top = Board((300, 200, thick), along="right", face="up", at=(20 - depth, 0, 400 - thick))
    return project_text({"side": side, "top": top}, f"{SIDES}, {joint}", turn)


@given(eighths(4, 15), eighths(8, 25), turns)
@settings(max_examples=25, deadline=None)
def test_what_lies_in_it_fills_it(depth: Fraction, thick: Fraction, turn: Turn) -> None:
    plan = plan_of(corner(f"depth: {as_typed(depth)}", depth, thick=thick, turn=turn))
    left = float(400 * 200 * 20 - 200 * thick * depth)
    assert solid(plan, "L/side").volume == pytest.approx(left, rel=1e-9)
    assert clashes(plan) == []
    assert {cut.kind for cut in shape_cuts(plan, "R/side")} == {"rabbet"}


def test_a_back_in_four_rabbets() -> None:
    """Its play is left all round."""
    boards = {
        "left": Board((400, 200, 20), along="up", face="left"),
        "right": Board((400, 200, 20), along="up", face="right", at=(300, 0, 0)),
        "top": Board((280, 200, 20), along="right", face="up", at=(20, 0, 380)),
        "bottom": Board((280, 200, 20), along="right", face="down", at=(20, 0, 0)),
        "panel": Board(
            (400 - 2 * 11, 320 - 2 * 11, 6),
            along="up",
            face="front",
            at=(11, 194, 11),
        ),
    }
    cut_in = ", ".join(f"{name} back edge inner face" for name in ("left", "right", "top", "bottom"))
    joint = (
        f"kind: rabbet, cut_in: [{cut_in}], takes: [panel both edges, panel both ends], width: 6, depth: 10"
    )
    plan = plan_of(project_text(boards, joint))
    assert clashes(plan) == []
    assert len(plan.joints["corner"].meetings) == 8, "four sides, in both hands"


def test_common_practice_the_ends_of_a_case() -> None:
    """Common practice, no source: a 30 in case of 3/4 in stock, rabbets 3/8 in deep: ends of 29 1/4 in."""
    inch = INCH
    boards = {
        "left": Board((20 * inch, 8 * inch, Fraction(3, 4) * inch), along="up", face="left"),
        "right": Board(
            (20 * inch, 8 * inch, Fraction(3, 4) * inch),
            along="up",
            face="right",
            at=(Fraction(117, 4) * inch, 0, 0),
        ),
        "top": Board(
            (Fraction(117, 4) * inch, 8 * inch, Fraction(3, 4) * inch),
            along="right",
            face="up",
            at=(Fraction(3, 8) * inch, 0, Fraction(77, 4) * inch),
        ),
    }
    joint = "kind: rabbet, cut_in: [left end b inner face, right end b inner face], takes: [top both ends]"
    plan = plan_of(project_text(boards, f"{joint}, depth: 3/8 in"))
    assert clashes(plan) == []
    far = max(copy.at[0] for copy in plan.copies if copy.part == "right" and copy.mark.startswith("L/"))
    assert far in (Fraction(117, 4) * inch, 30 * inch), "the right side ends at 30 in"
    assert len(plan.joints["corner"].meetings) == 4
