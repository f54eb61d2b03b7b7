"""Rough sizes by example: what a maker would chalk on the board."""

from __future__ import annotations

from typing import Any

import pytest

from benchalong.reading import written
from benchalong.workings.blanks.model import Blank
from workings.blanks.shop import blanks_of, found_in, inches, oak, only, part


def size(blank: Blank) -> tuple[int, str, str, str]:
    """Count, then length, width in inches, and the trade's thickness."""
    return blank.count, str(blank.length / inches("1")), str(blank.width / inches("1")), blank.called


@pytest.mark.parametrize(
    ("width", "length", "given", "expected"),
    [
        ("4", "30", {}, (1, "31", "17/4", "4/4")),
        ("2", "30", {}, (1, "31", "17/8", "4/4")),  # under 3 in: half the allowance
        ("4", "30", {"thickness": "1 in"}, (1, "31", "17/4", "5/4")),
        ("4", "49", {}, (1, "50", "17/4", "5/4")),  # over 4 ft: a quarter more
        ("4", "30", {"thickness": "1 3/4 in"}, (1, "31", "17/4", "8/4")),
        ("1/2", "30", {}, (1, "31", "3/4", "4/4")),  # nothing narrower than the jointer takes
        ("4", "5", {}, (1, "12", "17/4", "4/4")),  # nothing shorter than the machines take
    ],
)
def test_one_part(
    width: str, length: str, given: dict[str, Any], expected: tuple[int, str, str, str]
) -> None:
    one = part(width, length, 1, **given)
    assert size(only(blanks_of(stock=oak(), parts={"part": one}))) == expected


def test_the_authors_allowances_go_before_the_trades() -> None:
    sawing = written.Sawing(allowances={"all": written.Allowance(length="2 in", width="1/2 in")})
    shop = written.Shop(sawing=sawing)
    assert size(only(blanks_of(shop=shop, parts={"part": part("4", "30")}))) == (1, "32", "9/2", "4/4")
    own = oak(buy="4/4", allowances=written.Allowance(length="3 in"))
    assert size(only(blanks_of(shop=shop, stock=own, parts={"part": part("4", "30")})))[1] == "33"


def test_what_is_restless_is_split_wider_and_thicker() -> None:
    assert size(only(blanks_of(stock=oak(restless="yes"), parts={"part": part("4", "30")}))) == (
        1, "31", "9/2", "5/4",
    )  # fmt: skip


def test_short_rails_stay_one_stick() -> None:
    blank = only(blanks_of(parts={"rail": part("2 1/4", "10", 3)}))
    assert (blank.lie, blank.pieces, blank.count) == ("end to end", 3, 1)
    assert blank.length == inches("31 1/4")  # three tens, two kerfs of 1/8, an inch


def test_short_ones_are_shared_out_evenly() -> None:
    blank = only(blanks_of(parts={"rail": part("2 1/4", "10", 8)}))
    assert (blank.pieces, blank.count) == (4, 2)


def test_a_wide_part_is_glued_up_from_what_boards_and_jointer_give() -> None:
    blank = only(blanks_of(parts={"top": part("20", "40")}))
    assert (blank.count, blank.gives[0].strips) == (4, 4)
    assert blank.width <= inches("6")
    blank = only(blanks_of(parts={"top": part("9", "40", glued_up="strips of at most 3 1/2 in")}))
    assert blank.count == 3
    assert only(blanks_of(parts={"top": part("5", "40", glued_up="two boards")})).count == 2


def test_leaves_come_from_one_board_where_that_saves() -> None:
    sawn = only(blanks_of(parts={"panel": part("4", "20", 2, thickness="1/4 in", resaw=2)}))
    assert (sawn.count, sawn.leaves, sawn.called) == (1, 2, "4/4")
    dear = only(blanks_of(stock=oak(), parts={"panel": part("4", "20", 2, thickness="3/4 in", resaw=2)}))
    assert (dear.count, dear.leaves, dear.called) == (2, 1, "4/4")
    assert any("not resawn" in reason.words for reason in dear.why)
    one = only(blanks_of(parts={"panel": part("4", "20", 1, thickness="1/4 in", resaw=2)}))
    assert one.leaves == 1


def test_leaves_opened_like_a_book_come_from_one_board_each() -> None:
    match = {"panels": written.Match(("panel",), "book match")}
    blank = only(
        blanks_of(
            matches=match,
            parts={"panel": part("9", "20", 2, thickness="1/4 in", resaw=2, glued_up="true", mark="P")},
        )
    )
    assert (blank.count, blank.leaves, blank.gives[0].strips) == (2, 2, 2)


def test_fronts_end_to_end_stand_in_their_order() -> None:
    found = blanks_of(
        matches={"fronts": written.Match(("F2", "F1", "F3"), "end to end")},
        parts={"front": part("5", "16", 4, mark="F")},
    )
    (matched,) = found.matched
    assert (matched.parted, matched.blanks) == ("across", ("front", "front", "front"))
    assert [blank.gives[0].marks for blank in found.blanks] == [("F2", "F1", "F3"), ("F4",)]


def test_short_fronts_end_to_end_are_one_blank() -> None:
    found = blanks_of(
        matches={"fronts": written.Match(("front",), "end to end")},
        parts={"front": part("5", "8", 3, mark="F")},
    )
    assert (only(found).lie, only(found).pieces, found.matched) == ("end to end", 3, ())


def test_parts_the_author_keeps_together_lie_side_by_side_or_end_to_end() -> None:
    lips = {"lip": part("1", "30", 3), "low": part("1/2", "30", rough_with="lip")}
    assert (only(blanks_of(parts=lips)).lie, only(blanks_of(parts=lips)).pieces) == ("side by side", 4)
    rails = {"rail": part("4", "14", 2), "low": part("5", "14", rough_with="rail")}
    assert only(blanks_of(parts=rails)).lie == "end to end"


def test_spares_and_test_pieces_are_cut_with_the_rest() -> None:
    found = blanks_of(
        parts={"rail": part("4", "20", 2)},
        spares={"rail": 1},
        test_pieces={"stick": written.TestPiece(stock="oak", width="2 in", length="18 in", count=2)},
    )
    rail, stick = found.by_id["rail"], found.by_id["stick"]
    assert (rail.count, rail.gives[0].spares) == (3, 1)
    assert (stick.count, stick.gives[0].test_piece) == (2, "stick")
    assert found.rough_of == {"rail": ("rail",)}


def test_sheets_are_cut_as_they_are() -> None:
    ply = {"oak": written.Stock(kind="sheet", thickness="1/4 in", sheet=("48 in", "96 in"), grain="none")}
    blank = only(blanks_of(stock=ply, parts={"back": part("20 1/64", "5")}))
    assert (blank.length, blank.width, blank.grain) == (inches("5"), inches("20 1/64"), "free")


def test_softwood_is_as_thick_as_it_is_dressed() -> None:
    blank = only(blanks_of(stock=oak(buy="1x6"), parts={"shelf": part("5", "30")}))
    assert (blank.thickness, blank.called, blank.quarters) == (inches("3/4"), "1x6", None)
    wide = only(blanks_of(stock=oak(buy="1x6"), parts={"shelf": part("9", "30")}))
    assert wide.gives[0].strips == 2


@pytest.mark.parametrize(
    ("given", "code", "level", "numbers"),
    [
        ({"parts": {"p": part("4", "49")}}, "rough-too-thin", "doubt", {"needs": "1 1/4", "bought": "1"}),
        ({"parts": {"p": part("4", "20", thickness="1 in")}}, "rough-too-thin", "fault", {"needs": "1 1/4"}),
        (
            {"stock": oak(buy="1x6"), "parts": {"p": part("4", "20", thickness="7/8 in")}},
            "thicker-than-stock", "fault", {"bought": "3/4"},
        ),
        ({"parts": {"p": part("8", "20", glued_up="no")}}, "wider-than-boards", "doubt", {"rough": "8 1/4"}),
        (
            {"stock": oak(sold_in=("6 ft", "8 ft")), "parts": {"p": part("4", "95")}},
            "longer-than-sold", "doubt", {"takes": "98", "sold": "96"},
        ),
        (
            {"shop": written.Shop(sawing=written.Sawing(car="5 ft")), "parts": {"p": part("4", "60")}},
            "longer-than-car", "doubt", {"takes": "63", "car": "60"},
        ),
        (
            {
                "shop": written.Shop(sawing=written.Sawing(jointer=written.Jointer(width="4 in"))),
                "parts": {"p": part("5", "20")},
            },
            "wider-than-jointer", "doubt", {"rough": "5 1/4", "jointer": "4"},
        ),
        (
            {"shop": written.Shop(tools=("planer",)), "parts": {"p": part("4", "20", thickness="3/16 in")}},
            "thinner-than-planer", "note", {"thickness": "3/16", "thinnest": "1/4"},
        ),
        (
            {
                "stock": {"oak": written.Stock(kind="sheet", thickness="1/4 in", sheet=("48 in", "96 in"))},
                "parts": {"p": part("50", "40")},
            },
            "larger-than-sheet", "fault", {"width": "50", "sheet_width": "48"},
        ),
        ({"stock": oak(buy="an armful"), "parts": {"p": part("4", "20")}}, "trade-size-unknown", "note", {}),
        (
            {"matches": {"m": written.Match(("p",), "book match")}, "parts": {"p": part("4", "20", 2)}},
            "match-not-resawn", "doubt", {},
        ),
        (
            {
                "stock": oak(sold_in=("8 ft",)),
                "matches": {"m": written.Match(("p",), "end to end")},
                "parts": {"p": part("4", "30", 4)},
            },
            "match-too-long", "doubt", {"takes": "126 3/8", "sold": "96"},
        ),
    ],
    ids=lambda value: value if isinstance(value, str) and "-" in value else "",
)  # fmt: skip
def test_what_boards_and_machines_do_not_give_is_found(
    given: dict[str, object], code: str, level: str, numbers: dict[str, str]
) -> None:
    found = {finding.code: finding for finding in found_in(**given)}
    assert found[code].level == level
    assert {name: found[code].numbers[name] for name in numbers} == {
        name: inches(number) for name, number in numbers.items()
    }


def test_the_trades_usual_is_no_reason_to_doubt_a_plan() -> None:
    assert found_in(stock=oak(), parts={"p": part("20", "30", thickness="3/16 in")}) == []


def not_one_piece(**given: object) -> list[tuple[str, str]]:
    """Of a rail that is to stay with a stile: what was found, and what to do about it."""
    parts = {"stile": part("2", "20", 2), "rail": part("2", "20", 2, rough_with="stile", **given)}
    return [(each.message, each.remedy) for each in found_in(parts=parts) if each.code == "not-one-piece"]


MATCHED = {"rails": written.Match(("rail",), "side by side")}


def test_parts_that_cannot_stay_in_one_piece_are_told() -> None:
    begins = "Rail can't stay in one piece with stile until both are milled: "
    assert not_one_piece() == []
    assert not_one_piece(thickness="1 1/4 in") == [
        (f"{begins}it comes from 6/4, the other from 4/4", "make both 3/4 in thick, or take `rough_with` out")
    ]
    long = {"stile": part("4", "60", 1), "rail": part("4", "60", 1, rough_with="stile")}
    (found,) = [each for each in found_in(parts=long) if each.code == "not-one-piece"]
    assert found.message == (
        "Rail can't stay in one piece with stile until both are milled: no board is large enough for both"
    )
    assert found.level == "doubt"


def test_a_part_that_matches_others_does_not_stay_with_another() -> None:
    parts = {"stile": part("2", "20", 2), "rail": part("2", "20", 2, rough_with="stile")}
    (found,) = [each for each in found_in(parts=parts, matches=MATCHED) if each.code == "not-one-piece"]
    assert "one of them has its place under matches:" in found.message


def test_leaves_that_differ_keep_parts_from_one_piece() -> None:
    parts = {
        "stile": part("2", "20", 2, thickness="1/4 in", resaw=2),
        "rail": part("2", "20", 2, thickness="1/4 in", rough_with="stile"),
    }
    (found,) = [each for each in found_in(parts=parts) if each.code == "not-one-piece"]
    assert "it is sawn into 1 leaves, the other into 2" in found.message


def test_glued_up_copies_match_strip_by_strip() -> None:
    """Three fronts of two strips: the upper strips run on along one board, the lower along another."""
    fronts = part("8", "20", 3)
    found = blanks_of(parts={"front": fronts}, matches={"row": written.Match(("front",), "end to end")})
    assert only(found).count == 6
    assert [(each.id, each.blanks, each.parted) for each in found.matched] == [
        ("row", ("front", "front", "front"), "across")
    ] * 2


@pytest.mark.parametrize(("measures", "codes"), [("1 1/2 in", ["rough-too-thin"]), ("2 in", [])])
def test_a_thick_board_that_is_there_makes_up_for_thin_stock(measures: str, codes: list[str]) -> None:
    """A leg of 1 3/4 in takes 8/4; the stock is bought 4/4, and one board of 2 in lies there."""
    boards = (written.Board(stock="oak", length="40 in", width="4 in", thickness=measures),)
    leg = part("3", "30", thickness="1 3/4 in")
    assert [each.code for each in found_in(parts={"leg": leg}, boards=boards)] == codes


@pytest.mark.parametrize(
    ("width", "count", "how", "codes"),
    [
        ("4", 1, "side by side", ["match-of-one"]),
        ("4", 2, "side by side", []),
        ("4", 1, "show side", []),
        ("14", 1, "same board", []),  # its strips match each other
    ],
)
def test_one_piece_has_nothing_to_match(width: str, count: int, how: str, codes: list[str]) -> None:
    found = found_in(parts={"p": part(width, "20", count)}, matches={"m": written.Match(("p",), how)})
    assert [each.code for each in found if each.code == "match-of-one"] == codes
