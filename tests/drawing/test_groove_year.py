"""The picture of a panel in its grooves: to scale, with numbers the page can switch."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from benchalong.drawing.groove_year import BEHIND, EDGE, GROOVE, WIDTH, groove_year_picture
from benchalong.drawing.sheet import Plain
from benchalong.drawing.year import State
from benchalong.ground.shown import Precision

PLAIN = Plain("millimetre", Precision())


def picture(*widths: Fraction | int, sight: int = 300, depth: int = 14) -> str:
    names = ("Driest, 6 %", "As made, 8 %", "Dampest, 12 %")
    driest, made, dampest = (State(name, Fraction(width)) for name, width in zip(names, widths, strict=True))
    return groove_year_picture(
        "Panel", (driest, made, dampest), sight=Fraction(sight), depth=Fraction(depth), plain=PLAIN
    ).svg


def sizes(svg: str) -> list[Fraction]:
    return [Fraction(found) for found in re.findall(r'data-mm="([^"]+)"', svg)]


def test_each_state_says_width_held_and_room() -> None:
    half = Fraction(1, 2)
    assert sizes(picture(316, 318, 321)) == [316, 8, 6, 318, 9, 5, 321, 10 + half, 3 + half]


def test_too_wide_and_out_are_said_so() -> None:
    svg = picture(296, 318, 334)
    assert "out by" in svg
    assert "too wide by" in svg
    assert sizes(svg)[1] == 2
    assert sizes(svg)[-1] == 3
    assert min(sizes(svg)) >= 0


@pytest.mark.parametrize("reach", [4, 8, 14])
def test_the_panel_reaches_into_the_groove_to_scale(reach: int) -> None:
    svg = picture(*(3 * [300 + 2 * reach]))
    rim = EDGE + BEHIND + GROOVE
    tip = rim - reach * GROOVE / 14
    assert f"{tip:g}" in svg
    assert f"{WIDTH - tip:g}" in svg


def test_nothing_is_drawn_beside_the_sheet() -> None:
    for x in re.findall(r"[MLH](-?[\d.]+)", picture(316, 318, 321)):
        assert 0 <= float(x) <= WIDTH
