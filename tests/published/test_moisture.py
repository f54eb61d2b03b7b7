"""Equilibrium moisture content against the Wood Handbook's Table 4-2, cell by cell.

FPL-GTR-190 (2010), public domain; the cells and where they were seen are in
`data/equilibrium_moisture.csv`. The range of 210 degrees Fahrenheit was seen only in part.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from benchalong.trade.moisture import equilibrium

TABLE = Path(__file__).parent / "data" / "equilibrium_moisture.csv"


def cells() -> list[tuple[float, float, float]]:
    lines = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return [
        (float(row["temperature_f"]), float(row["humidity_pct"]), float(row["moisture_pct"]))
        for row in csv.DictReader(lines)
    ]


def test_every_cell_within_a_tenth_of_a_point() -> None:
    off = [
        abs(equilibrium((fahrenheit - 32) / 1.8, humidity / 100) - moisture)
        for fahrenheit, humidity, moisture in cells()
    ]
    assert len(off) == 344
    assert max(off) < 0.1
    # What was measured when the table was taken in; a worse figure would be a slip in the equation.
    assert max(off) == pytest.approx(0.056, abs=0.0005)


@pytest.mark.parametrize(("humidity", "moisture"), [(30, 6), (50, 9), (65, 12), (80, 16)])
def test_a_trade_magazines_rule(humidity: float, moisture: float) -> None:
    """Seen at https://www.woodworkingnetwork.com/magazine/fdmc-magazine/rh-equivalent: whole percents."""
    assert equilibrium(21, humidity / 100) == pytest.approx(moisture, abs=0.5)


def test_an_older_table_disagrees() -> None:
    """An encyclopedia says the tables print 8.0 at 140 degrees Fahrenheit, 55 percent; GTR-190 prints 8.4."""
    ours = equilibrium(60, 0.55)
    assert ours == pytest.approx(8.4, abs=0.05)
    assert abs(ours - 8.0) > 0.3
