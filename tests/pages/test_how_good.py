"""How good a layout is: a proof that rests on how boards are cut names the rule."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchalong.ground.lengths import INCH
from benchalong.pages.how_good import how_good
from benchalong.workings.boards.model import Group, Sawn

BOARD = Sawn(1, 96 * INCH, 6 * INCH, True, (), (), ())
GROUP = Group("oak", "oak", "4/4", INCH, (BOARD, BOARD), 2, 2, "boards", is_proven=True, turns=2)


@pytest.mark.parametrize(
    ("changes", "word", "said"),
    [
        ({"by_area": True}, "board", "2 boards. No layout can do with fewer, however they are cut"),
        ({}, "board", "2 boards. No layout can do with fewer, as long as boards are crosscut, then ripped"),
        (
            {"turns": 3},
            "board",
            "2 boards. No layout can do with fewer, as long as boards are crosscut, then ripped, then "
            "crosscut again",
        ),
        ({"turns": 1}, "board", "2 boards. No layout can do with fewer, as long as boards are only crosscut"),
        (
            {"turns": 3},
            "sheet",
            "2 sheets. No layout can do with fewer, as long as the direction of cutting changes at most "
            "twice on a sheet",
        ),
        (
            {"turns": 5, "counts": "area"},
            "board",
            "2 boards. No layout can do with less wood, as long as the direction of cutting changes at most "
            "4 times on a board",
        ),
        (
            {"is_proven": False, "least": 1},
            "board",
            "2 boards. At least 1 is needed, as long as boards are crosscut, then ripped",
        ),
        (
            {"is_proven": False, "least": 96, "reached": 100, "counts": "price", "by_area": True},
            "board",
            "2 boards. No layout can save more than 4 % on this one, however they are cut",
        ),
        (
            {"is_own": True, "boards": (), "left_out": (("leg", 1),)},
            "sheet",
            "No sheet that is there can be used for it",
        ),
        (
            {"is_proven": False, "is_own": True, "left_out": (("leg", 1),)},
            "board",
            "2 boards that are there, and they don't suffice",
        ),
    ],
)  # fmt: skip
def test_how_good(changes: dict[str, object], word: str, said: str) -> None:
    assert how_good(replace(GROUP, **changes), word=word, must_match=False) == said  # type: ignore[arg-type]


def test_what_must_match_is_part_of_the_rule() -> None:
    assert how_good(GROUP, word="board", must_match=True).endswith(
        "crosscut, then ripped and what must match is sawn out in one piece first"
    )
