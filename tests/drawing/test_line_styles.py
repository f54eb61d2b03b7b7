"""The theme's line widths and dashes against ISO 128: two widths, narrow to wide as 1 to 2."""

from __future__ import annotations

import re

import pytest

from benchalong.ground.folders import shipped

CSS = (shipped("themes") / "bench" / "styles" / "drawing.css").read_text(encoding="utf-8")


def rule(selector: str) -> dict[str, str]:
    """The declarations of the first rule with this selector alone."""
    found = re.search(rf"^{re.escape(selector)} \{{([^}}]*)\}}", CSS, re.MULTILINE)
    assert found, selector
    pairs = (line.split(":", 1) for line in found.group(1).split(";") if ":" in line)
    return {name.strip(): value.strip() for name, value in pairs}


def test_visible_edges_are_twice_as_wide_as_all_other_lines() -> None:
    narrow = float(rule(".drawing path,\n.drawing circle")["stroke-width"])
    assert float(rule(".drawing .visible")["stroke-width"]) == 2 * narrow
    assert not {"stroke-width"} & (rule(".drawing .hidden-line").keys() | rule(".drawing .centre").keys())


@pytest.mark.parametrize(("kind", "strokes"), [("hidden-line", 2), ("centre", 4)])
def test_hidden_edges_are_dashed_and_centre_lines_chain_dashed(kind: str, strokes: int) -> None:
    lengths = [float(part) for part in rule(f".drawing .{kind}")["stroke-dasharray"].split()]
    assert len(lengths) == strokes
    assert lengths[0] == max(lengths)


def test_lines_have_no_colour_of_their_own() -> None:
    assert rule(".drawing path,\n.drawing circle")["stroke"] == "currentColor"
