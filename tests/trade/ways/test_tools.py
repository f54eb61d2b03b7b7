"""Tool lists as authors write them."""

from __future__ import annotations

import pytest

from benchalong.trade.ways.model import TOOLS, Tool
from benchalong.trade.ways.tools import NAMES, at_hand, named_tools


@pytest.mark.parametrize(
    ("text", "tools"),
    [
        ("table saw", ["table saw"]),
        ("Table saw with a dado stack", ["table saw with a stacked cutter", "table saw"]),
        ("router table", ["router table"]),
        ("router with a straight bit that has a bearing above the cutter", ["router"]),
        ("trim router and router-table", ["router table", "router"]),
        ("circular saw or jigsaw with a fine blade, two clamps", ["track saw", "jigsaw"]),
        ("jointer/planer", ["jointer", "planer"]),
        ("hand saw, 18 mm chisels", ["hand tools"]),
        ("miter saw", ["mitre saw"]),
        ("drill press; cordless drill", ["drill press", "drill"]),
    ],
)
def test_what_a_line_names(text: str, tools: list[str]) -> None:
    read = at_hand([text])
    assert [*read.tools] == [*tools, "bench"]
    assert read.unknown == ()


def test_what_is_not_known_is_told_with_the_nearest_word() -> None:
    unknown = at_hand(["bandsw, lathe", "drill"]).unknown
    assert [(one.text, one.nearest) for one in unknown] == [("bandsw", ("bandsaw",)), ("lathe", ())]


@pytest.mark.parametrize("tool", TOOLS)
def test_every_tool_is_known_by_each_of_its_names(tool: Tool) -> None:
    for name in NAMES[tool]:
        assert tool in set(named_tools(name)), name
    assert tool in at_hand([tool]).tools
