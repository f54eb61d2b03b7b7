"""Cuts that can't be made, or leave no wood, on a rail of 400 x 60 x 20 mm."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.reading import written
from workings.plans import cut, cut_findings

CASES = Path(__file__).parent / "cut_cases.txt"


def cases() -> list[tuple[list[str], list[str]]]:
    """Each case of the table: the cuts, and what is said of them."""
    text = "\n".join(
        line for line in CASES.read_text(encoding="utf-8").splitlines() if not line.startswith("#")
    )
    blocks = [block.splitlines() for block in text.strip().split("\n\n")]
    return [
        ([line for line in block if line[0] != " "], [line.strip() for line in block if line[0] == " "])
        for block in blocks
    ]


def read_cut(line: str) -> written.Cut:
    kind, on, *rest = (field.strip() for field in line.split(";"))
    told = dict(field.split(" ", 1) for field in rest)
    if kind != "outline":
        return written.Cut(kind, tuple(on.split(", ")), told)
    corners = (corner.split() for corner in on.split(", "))
    made = tuple(written.Corner(along, across, told.get("round")) for along, across in corners)
    return written.Cut(kind, corners=made, removes=told.get("removes", ""))


@pytest.mark.parametrize(("cuts", "said"), cases(), ids=lambda lines: " + ".join(lines)[:60])
def test_what_is_said_of_cuts(cuts: list[str], said: list[str]) -> None:
    findings = cut_findings(*map(read_cut, cuts))
    assert [
        text
        for finding in findings
        for text in (f"{finding.level}: {finding.code}", finding.message, finding.remedy)
    ] == said
    assert {finding.subject for finding in findings} <= {"rail"}


def test_a_finding_stands_at_its_key_and_names_the_sizes_it_follows_from() -> None:
    (finding,) = cut_findings(cut("groove", "edge a", width="6", depth="deep - 1"), deep="far + 1", far="62")
    assert finding.place.path == ("project.yaml", "parts", "rail", "cuts", 0)
    assert finding.sizes == ("deep", "far", "wide")
    assert finding.numbers == {"width": 6, "depth": 62, "part width": 60}
    (finding,) = cut_findings(cut("groove", "edge a", width="6", depth="far"), far="0")
    assert finding.place.path[-1] == "depth"


def test_an_outline_names_the_sizes_of_its_corners() -> None:
    made = written.Cut(
        "outline", corners=(written.Corner("0", "0"), written.Corner("far", "0"), written.Corner("0", "60"))
    )
    (finding,) = cut_findings(made, far="410")
    assert finding.sizes == ("far", "tall")


def test_a_broken_cut_is_not_held_against_its_neighbours() -> None:
    codes = [
        finding.code
        for finding in cut_findings(
            cut("groove", "edge a", width="6", depth="61"), cut("groove", "edge b", width="6", depth="30")
        )
    ]
    assert codes == ["cut-partly-outside"]


NUMBERS = st.integers(-5, 70).map(str)


@settings(max_examples=100, deadline=None)
@given(NUMBERS, NUMBERS, NUMBERS, st.sampled_from(["face", "back", "edge a", "edge b", "end a", "end b"]))
def test_a_groove_without_findings_lies_wholly_in_the_wood(
    width: str, depth: str, across: str, on: str
) -> None:
    if not cut_findings(cut("groove", on, width=width, depth=depth, across=across)):
        deep = {"f": 20, "b": 20, "e": 60}[on[0]] if not on.startswith("end") else 400
        wide = 60 if on in ("face", "back") else 20
        assert int(width) > 0
        assert 0 < int(depth) < deep
        assert 0 <= int(across) <= wide - int(width)
