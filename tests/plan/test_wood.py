"""What can't be said of air, loads and rates is told where it stands."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchalong.ground.problems import Unreadable
from benchalong.road import travel

PROJECT = """\
title: Shelf
units: millimetre
stock: {{wood: {{kind: board, thickness: 20 mm}}}}
parts: {{board: {{stock: wood, width: 300, length: 900, count: 1{load}}}}}
{more}
"""

SLIPS = [
    ("", "house: {humidity: 30 % to 130 %}", "air can't be damper than 100 %"),
    ("", "shop: {made_at: 130 %}", "a moisture content over 100 % is wood fresh from the log"),
    ("", "shop: {made_at: dry}", "dry can't be used as made_at"),
    ("", "house: {humidity: 30 %}", "30 % can't be used as humidity"),
    ("", "house: {temperature: 20}", "20 can't be used as temperature"),
    ("", "house: {climate: damp cost}", "damp cost is not a word for climate"),
    ("", "rates: {finish: 0}", "a litre that covers nothing never gets there"),
    ("", "rates: {lift: 5 kg per m}", "what one person lifts is a weight, not one for each length"),
    ("", "species: {elm_of_ours: {radial: 4}}", "the species elm_of_ours has no source"),
    (", load: 0 kg", "", "a load of nothing bends nothing"),
    (", load: heavy", "", "heavy can't be used as is"),
    (", load: {is: 5 kg, limit: 1/3}", "", "a limit is a small share of the span"),
    (", load: {is: 5 kg, limit: 3 mm}", "", "a limit is a small share of the span"),
    (", load: {is: 5 kg, span: spam}", "", "there is no size called spam"),
    (", load: {at: middle}", "", "this load has no is"),
]


@pytest.mark.parametrize(("load", "more", "message"), SLIPS)
def test_each_slip_has_its_message(tmp_path: Path, load: str, more: str, message: str) -> None:
    (tmp_path / "project.yaml").write_text(PROJECT.format(load=load, more=more), encoding="utf-8")
    with pytest.raises(Unreadable) as raised:
        travel(tmp_path)
    assert [problem.message for problem in raised.value.problems] == [message]
