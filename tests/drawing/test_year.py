"""The picture over the year: three widths that stand as they should, and numbers the page can switch."""

from __future__ import annotations

import re
from fractions import Fraction

from benchalong.drawing.sheet import Plain
from benchalong.drawing.year import WIDTH, State, year_picture
from benchalong.ground.shown import Precision

PLAIN = Plain("millimetre", Precision())


def picture(driest: str, made: str, dampest: str) -> str:
    names = ("Driest, 6 %", "As made, 8 %", "Dampest, 12 %")
    states = [
        State(name, Fraction(width)) for name, width in zip(names, (driest, made, dampest), strict=True)
    ]
    return year_picture("Panel", (states[0], states[1], states[2]), PLAIN).svg


def bars(svg: str) -> list[float]:
    """Each bar's width, px, from the top down."""
    paths = re.findall(r'class="visible" d="M([\d.]+) ([\d.]+)H([\d.]+)', svg) or re.findall(
        r'd="M([\d.]+) ([\d.]+)H([\d.]+)[^"]*"[^>]*class="visible"', svg
    )
    return [abs(float(right) - float(left)) for left, _, right in paths]


def test_damper_is_wider() -> None:
    driest, made, dampest = bars(picture("297", "300", "301"))
    assert driest < made < dampest <= WIDTH
    assert (made - driest) / (dampest - made) == 3


def test_every_number_is_there_exactly() -> None:
    svg = picture("297", "300", "301")
    for length in ("297", "300", "301", "3", "1"):
        assert f'data-mm="{length}"' in svg
    assert "narrower by" in svg
    assert "wider by" in svg
    assert re.search(r"drawn \d+ times too large", svg)


def test_where_nothing_changes_nothing_is_said_to() -> None:
    svg = picture("300", "300", "300")
    assert "narrower" not in svg
    assert len(set(bars(svg))) == 1
