"""What to buy, by example, and that totals add up."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.lengths import FOOT
from benchalong.plan.model import Plan
from benchalong.reading import written
from benchalong.trade.boards import board_feet
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.order import WORKINGS
from benchalong.workings.purchases.model import Lumber, Purchases
from benchalong.workings.purchases.purchases import PURCHASES
from benchalong.workings.working import work_all
from workings.blanks.shop import inches, oak, part, plan


def bought(**given: object) -> Purchases:
    return work_all(plan(**given), WORKINGS)[PURCHASES]()


def lumber(**given: object) -> Lumber:
    (line,) = bought(**given).lumber
    return line


def test_board_feet_are_rounded_up_once_when_the_waste_is_on() -> None:
    line = lumber(stock=oak(buy="4/4", waste=Fraction(100)), parts={"rail": part("4", "23", 6)})
    assert line.board_feet == 6 * board_feet(inches("1"), inches("4 1/4"), inches("24"))  # 4.25
    assert line.buy_board_feet == 9  # 4.25 and as much again are 8.5; two boards that hold them are 8
    assert (line.boards, line.for_waste) == (3, 1)
    assert line.waste.standing == "said"


def test_no_less_is_bought_than_the_boards_that_the_parts_are_sawn_from() -> None:
    line = lumber(stock=oak(buy="4/4", waste=Fraction(20)), parts={"rail": part("4", "23", 6)})
    assert line.buy_board_feet == 8  # 4.25 and a fifth are 5.1
    assert (line.boards, line.for_waste) == (2, 0)


def test_what_is_priced_by_the_board_foot_and_by_the_cubic_metre() -> None:
    parts = {"rail": part("4", "23", 6)}
    by_foot = lumber(stock=oak(buy="4/4", waste=Fraction(20), price="9.80 per board foot"), parts=parts)
    assert by_foot.cost == 8 * Fraction("9.80")
    by_metre = lumber(stock=oak(buy="4/4", waste=Fraction(20), price="2000 per cubic metre"), parts=parts)
    assert by_metre.cost == 2000 * by_metre.buy_cubic_metres
    assert by_metre.buy_cubic_metres == Fraction(19, 1000)  # two of 96 by 6 by 1 in


def test_softwood_is_bought_by_the_board() -> None:
    stock = oak(buy="1x6", waste=Fraction(0), sold_in=("6 ft", "8 ft"), price="2 per foot")
    line = lumber(stock=stock, parts={"shelf": part("5", "30", 5)})
    # three of 31 in and their kerfs go into 94 in, two into 70 in
    assert [(each.count, each.length) for each in line.to_buy] == [(1, 8 * FOOT), (1, 6 * FOOT)]
    assert line.buy_board_feet == 7
    assert line.cost == 2 * 14
    assert line.to_buy[0].width == inches("5 1/2")


def test_lengths_that_go_into_the_car() -> None:
    shop = written.Shop(sawing=written.Sawing(car="9 ft"))
    stock = oak(sold_in=("3 ft", "8 ft", "10 ft", "6 ft"))
    line = lumber(shop=shop, stock=stock, parts={"rail": part("4", "84", 2)})
    assert [(each.count, each.length) for each in line.to_buy] == [(2, 8 * FOOT)]


def test_what_is_sold_too_long_for_the_car_is_crosscut_at_the_yard() -> None:
    """Of 12 ft one board of 7 ft; two of them are bought for two, since the rest is too short."""
    shop = written.Shop(sawing=written.Sawing(car="7 ft"))
    line = lumber(
        shop=shop, stock=oak(sold_in=("12 ft",), waste=Fraction(0)), parts={"rail": part("4", "80", 2)}
    )
    (bought,) = line.to_buy
    assert (bought.count, bought.length, bought.cut_to) == (2, 12 * FOOT, 7 * FOOT)
    assert line.buy_board_feet == 15  # 6 in by 1 1/4 in by 24 ft


def test_a_part_longer_than_the_car_is_bought_in_one_piece_all_the_same() -> None:
    shop = written.Shop(sawing=written.Sawing(car="6 ft"))
    line = lumber(shop=shop, stock=oak(sold_in=("8 ft", "10 ft", "12 ft")), parts={"rail": part("4", "90")})
    assert [each.length for each in line.to_buy] == [8 * FOOT]


PLY = {"oak": written.Stock(kind="sheet", thickness="1/4 in", sheet=("48 in", "96 in"), price="42 per sheet")}


@pytest.mark.parametrize(
    ("width", "length", "sheets"),
    [
        ("22", "46", 1),  # two beside two, with the saw's cuts between
        ("24", "48", 4),  # a half of a sheet each way, but the saw takes its share: one on each
    ],
)
def test_sheets_are_counted_by_where_parts_lie_and_priced(width: str, length: str, sheets: int) -> None:
    (line,) = bought(stock=PLY, parts={"side": part(width, length, 4)}).sheets
    assert (line.count, line.by, line.rack) == (sheets, "layout", "empty")
    assert line.cost == 42 * sheets


def test_sheets_on_which_a_part_does_not_fit_are_counted_by_area() -> None:
    (line,) = bought(stock=PLY, parts={"side": part("50", "60", 1)}).sheets
    assert (line.count, line.by) == (1, "area")


@pytest.mark.parametrize(
    ("there", "rack", "feet", "bought", "cost"),
    [
        (0, "empty", "0", 2, 8 * 5),  # three of 41 in: two go into one of 94 in
        (1, "short", "1.210069", 1, 4 * 5),
        (2, "short", "2.420139", 1, 4 * 5),
        (3, "suffices", "3.630208", 0, 0),
        (4, "suffices", "3.630208", 0, 0),
    ],
)
def test_boards_that_are_there_are_taken_off(
    there: int, rack: str, feet: str, bought: int, cost: int
) -> None:
    boards = (written.Board(stock="oak", length="60 in", width="6 in", count=there),) if there else ()
    stock = oak(buy="4/4", price="5 per board foot", waste=Fraction(0))
    line = lumber(boards=boards, stock=stock, parts={"rail": part("4", "40", 3)})
    assert line.rack == rack
    assert round(float(line.board_feet), 6) == 3.630208
    assert round(float(line.there_board_feet), 6) == float(feet)
    assert line.there_boards == min(there, 3)
    assert line.boards == bought
    assert line.cost == cost
    assert line.buy_board_feet == cost / 5


@pytest.mark.parametrize(("pieces", "count", "cost"), [(0, 1, 42), (1, 1, 42), (2, 0, 0)])
def test_pieces_of_sheet_that_are_there_are_taken_off(pieces: int, count: int, cost: int) -> None:
    boards = (written.Board(stock="oak", length="30 in", width="30 in", count=pieces),) if pieces else ()
    (line,) = bought(stock=PLY, boards=boards, parts={"side": part("20", "25", 2)}).sheets
    assert (line.there_pieces, line.count) == (pieces, count)
    assert line.cost == cost
    assert line.there_area == pieces * 500 * inches("1") ** 2


def test_hardware_on_hand_is_taken_off() -> None:
    found = bought(
        parts={"rail": part("4", "20", 1)},
        hardware={
            "hinge": written.Hardware(name="Hinge", count=4, on_hand=1, price="6 each"),
            "knob": written.Hardware(name="Knob", count=2, on_hand=3, price="5 each"),
            "hook": written.Hardware(name="Hook", on_hand=3, price="5 each"),
        },
    )
    assert [thing.to_buy for thing in found.things if thing.kind == "hardware"] == [3, 0, None]
    assert found.total == 18
    assert found.unpriced == ("Oak", "Hook")


def test_what_the_layout_says_is_missing_is_what_is_bought() -> None:
    """The list and the boards' page say the same of one shortage."""
    boards = (written.Board(stock="oak", length="60 in", width="6 in"),)
    worked = work_all(
        plan(boards=boards, parts={"rail": part("4", "40", 3), "leg": part("3", "28", 4)}), WORKINGS
    )
    (line,) = worked[PURCHASES]().lumber
    (group,) = worked[BOARDS]().groups
    left = [(worked[BLANKS].by_id[blank], count) for blank, count in group.left_out]
    feet = sum(count * board_feet(inches("1"), blank.width, blank.length) for blank, count in left)
    assert line.board_feet - line.there_board_feet == feet
    assert [(each.length, each.width) for each in line.to_buy] == list(
        {(each.length, each.width) for each in group.more}
    )
    assert line.boards - line.for_waste == len(group.more)


def test_hardware_is_counted_and_what_has_no_price_is_said() -> None:
    found = bought(
        parts={"rail": part("4", "20", 1)},
        hardware={
            "hinge": written.Hardware(name="Hinge", count=4, price="6 each"),
            "knob": written.Hardware(name="Knob", count=2),
        },
    )
    assert found.total == 24
    assert found.unpriced == ("Oak", "Knob")


def test_spares_are_bought_too() -> None:
    one = lumber(parts={"rail": part("4", "20", 1)})
    two = lumber(parts={"rail": part("4", "20", 1)}, spares={"rail": 1})
    assert two.board_feet == 2 * one.board_feet


def test_glue_for_edges_and_finish_for_every_face() -> None:
    found = bought(parts={"top": part("10", "40")}, finish={"oil": written.Finish(what="oil", coats=2)})
    kinds = {thing.kind: thing for thing in found.things}
    assert kinds["glue"].amount is not None
    assert kinds["glue"].amount > 0
    assert kinds["finish"].amount is not None
    assert {thing.count for thing in found.things if thing.kind == "abrasive"} == {
        ceil(Fraction("25.4") ** 2 * (2 * 400 + 2 * Fraction(30) + 2 * Fraction("7.5")) / 1_000_000 * 2)
    }


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 20), st.integers(2, 70), st.integers(1, 4)), min_size=1, max_size=5))
def test_totals_add_up(sizes: list[tuple[int, int, int]]) -> None:
    parts = {f"p{n}": part(str(wide), str(long), count) for n, (wide, long, count) in enumerate(sizes)}
    made = plan(parts=parts, stock=oak(price="3.50 per board foot"))
    worked = work_all(made, WORKINGS)
    found = worked[PURCHASES]()
    blanks = worked[BLANKS].blanks
    assert sum(line.board_feet for line in found.lumber) == sum(
        blank.count * board_feet(blank.thickness, blank.width, blank.length) for blank in blanks
    )
    assert found.total == sum(line.buy_board_feet for line in found.lumber) * Fraction("3.50")
    assert all(line.buy_board_feet >= line.board_feet * (1 + line.waste.added) for line in found.lumber)
    _enough(made, found)


def _enough(made: Plan, found: Purchases) -> None:
    """What is bought holds at least what ends up in the piece."""
    finished = sum(p.count * p.thickness * p.width * p.length for p in made.parts.values())
    assert sum(line.buy_cubic_metres for line in found.lumber) * 1_000_000_000 > finished


@pytest.mark.parametrize("units", ["inch", "millimetre"])
def test_nothing_to_buy_is_nothing(units: str) -> None:
    found = bought(units=units)
    assert not found.lines
    assert found.total == 0


def test_what_it_takes_without_what_is_there_is_said_too() -> None:
    boards = (written.Board(stock="oak", length="60 in", width="6 in", count=3),)
    line = lumber(boards=boards, stock=oak(buy="4/4", waste=Fraction(50)), parts={"rail": part("4", "40", 3)})
    assert line.buy_board_feet == 0
    assert line.anew_board_feet == 6  # 3.63 and half as much again are 5.45
