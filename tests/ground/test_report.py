"""A problem as a person reads it: place, line, mark, what was expected, what may have been meant."""

from __future__ import annotations

from benchalong.ground.marks import Mark, Marks, Place, at
from benchalong.ground.problems import Problem
from benchalong.ground.report import in_order, problem_text

LINE = "width: stile + rale"
MARKS = Marks(
    values={
        ("plan",): Mark("plan", 1, 1),
        ("plan", "width"): Mark("plan", 2, 8, 12),
        ("plan", "note"): Mark("plan", 4, 3, 5),
    },
    keys={("plan", "width"): Mark("plan", 2, 1, 5)},
    insets={("plan", "width"): 0, ("plan", "note"): 0},
    lines={"plan": ("title: Box", LINE, "note: |", "  first", "", "  second line", "x" * 300)},
)


def test_a_stretch_of_a_value_is_marked() -> None:
    problem = Problem(Place(("plan", "width"), start=8, end=12), "no rale", "a size", ("rail", "rake"))
    assert problem_text(problem, MARKS) == (
        "plan:2:16: no rale\n"
        "    width: stile + rale\n"
        "                   ^^^^\n"
        "  expected a size\n"
        "  did you mean rail or rake?"
    )


def test_what_is_not_written_is_placed_at_what_is_around_it() -> None:
    assert MARKS.find(at("plan", "width", "deep", 3)) == Mark("plan", 2, 1, 5)
    assert MARKS.find(at("plan", "length")) == Mark("plan", 1, 1)
    assert MARKS.find(at("elsewhere", "x")) == Mark("elsewhere", 1, 1)


def test_a_text_of_several_lines_is_followed() -> None:
    """`first`, an empty line, `second line`: the offset counts line ends, and not the indent."""
    text = "first\n\nsecond line"
    for word in ("first", "second", "line"):
        start = text.index(word)
        mark = MARKS.find(Place(("plan", "note"), start=start, end=start + len(word)))
        assert MARKS.line(mark)[mark.column - 1 : mark.column - 1 + mark.length] == word
    assert MARKS.find(Place(("plan", "note"), start=10_000, end=10_001)).line == 7


def test_a_long_line_is_shown_around_the_fault() -> None:
    said = problem_text(Problem(Place((), mark=Mark("plan", 7, 250, 3)), "here"), MARKS).split("\n")
    assert said[1] == "    " + "x" * 100
    assert said[2] == "    " + " " * 50 + "^^^"


def test_problems_come_in_order_and_each_once() -> None:
    first, second = Problem(at("plan", "width"), "b"), Problem(at("plan", "note"), "a")
    assert in_order([second, first, first], MARKS) == (first, second)
    assert in_order([Problem(at("plan", "width"), "b", "once"), first], MARKS) == (first,)
