"""Blanks on boards: sawn up again by exact arithmetic that shares nothing with what laid them out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.store import MemoryStore
from benchalong.plan.model import Plan
from benchalong.reading import written
from benchalong.road import travel
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.blanks.model import Blanks
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.boards.kept import laid_out
from benchalong.workings.boards.model import Boards, Group, Sawn, Spot
from benchalong.workings.layout import model as layout
from benchalong.workings.order import WORKINGS
from benchalong.workings.purchases.purchases import PURCHASES
from benchalong.workings.working import work_all
from workings.blanks.shop import part, plan

CONTENT = Path(__file__).parents[3] / "content"
EXAMPLES = ("seed-cupboard", "step-stool", "joint-samples")


def _apart(one: Spot, other: Spot) -> bool:
    return (
        one.x + one.length <= other.x
        or other.x + other.length <= one.x
        or one.y + one.width <= other.y
        or other.y + other.width <= one.y
    )


def _within(inner: Spot, outer: Spot) -> bool:
    return (
        outer.x <= inner.x
        and inner.x + inner.length <= outer.x + outer.length
        and outer.y <= inner.y
        and inner.y + inner.width <= outer.y + outer.width
    )


def _sawn_up(board: Sawn, kerf: object) -> Iterator[str]:
    """Every cut goes from edge to edge of a piece that is there; what remains are the blanks and waste."""
    pieces = [Spot(board.length * 0, board.length * 0, board.length, board.width)]
    for cut in board.cuts:
        if cut.of not in pieces:
            yield f"cut {cut.number} cuts what is not there"
            return
        pieces.remove(cut.of)
        of, width = cut.of, kerf
        assert isinstance(width, type(cut.at))
        if cut.way == "across":
            start = cut.at + width
            halves = (
                Spot(of.x, of.y, cut.at - of.x, of.width),
                Spot(start, of.y, of.x + of.length - start, of.width),
            )
        else:
            start = cut.at + width
            halves = (
                Spot(of.x, of.y, of.length, cut.at - of.y),
                Spot(of.x, start, of.length, of.y + of.width - start),
            )
        pieces += [half for half in halves if half.length > 0 and half.width > 0]
    for laid in board.laid:
        if laid.at not in pieces:
            yield f"{laid.blank} is not sawn free"


def faults(boards: Boards, blanks: Blanks) -> list[str]:
    found: list[str] = []
    for group in boards.groups:
        laid = Counter(each.blank for board in (*group.boards, *group.more) for each in board.laid)
        for board in (*group.boards, *group.more):
            found += _sawn_up(board, boards.kerf)
            found += _lying(board, blanks)
        missing = dict(group.left_out) if not group.more else {}
        for blank in blanks.of_stock(group.stock):
            if (
                blank.thickness == group.thickness
                and laid[blank.id] + missing.get(blank.id, 0) != blank.count
            ):
                found.append(f"{blank.id} is cut {laid[blank.id]} times of {blank.count}")
    return found


def _lying(board: Sawn, blanks: Blanks) -> Iterator[str]:
    whole = Spot(board.length * 0, board.length * 0, board.length, board.width)
    for laid in board.laid:
        blank = blanks.by_id[laid.blank]
        sides = (blank.width, blank.length) if laid.is_turned else (blank.length, blank.width)
        if (laid.at.length, laid.at.width) != sides or (laid.is_turned and blank.grain == "along"):
            yield f"{laid.blank} lies with other sides"
        if not _within(laid.at, whole) or not all(_apart(laid.at, spot) for spot in board.keep_clear):
            yield f"{laid.blank} lies over an edge or a defect"
    for one, other in combinations(board.laid, 2):
        if not _apart(one.at, other.at):
            yield f"{one.blank} and {other.blank} overlap"


def _worked(folder: Path) -> tuple[Plan, Boards, Blanks]:
    travelled = travel(folder)
    return travelled.plan, travelled.worked[BOARDS](), travelled.worked[BLANKS]


@pytest.mark.parametrize("example", EXAMPLES)
def test_the_examples_boards_can_be_sawn_so(example: str) -> None:
    _, boards, blanks = _worked(CONTENT / example)
    assert boards.groups
    assert faults(boards, blanks) == []


@pytest.mark.parametrize("example", EXAMPLES)
def test_no_layout_of_the_examples_can_do_better(example: str) -> None:
    _, boards, _ = _worked(CONTENT / example)
    assert [(group.id, group.is_proven) for group in boards.groups] == [
        (each.id, True) for each in boards.groups
    ]


PROJECT = """\
title: Two shelves
units: inch
stock:
  oak: {kind: board, species: white oak, buy: 4/4, thickness: 3/4 in}
parts:
  shelf: {stock: oak, width: 4 in, length: 30 in, count: 6}
"""


def _group(tmp_path: Path, more: str) -> Group:
    (tmp_path / "project.yaml").write_text(PROJECT + more, encoding="utf-8")
    _, boards, _ = _worked(tmp_path)
    (group,) = boards.groups
    return group


def test_without_boards_the_usual_size_is_taken(tmp_path: Path) -> None:
    group = _group(tmp_path, "")
    assert [board.is_there for board in group.boards] == [False] * len(group.boards)
    assert not group.left_out


def test_boards_that_are_there_come_first_and_what_is_missing_is_said(tmp_path: Path) -> None:
    group = _group(tmp_path, "boards:\n  - {stock: oak, length: 70 in, width: 6 in}\n")
    assert [board.is_there for board in group.boards] == [True]
    assert group.left_out == (("shelf", 4),)
    assert [board.number for board in group.more] == [2, 3][: len(group.more)]


def test_a_defect_is_kept_clear(tmp_path: Path) -> None:
    clear = _group(tmp_path, "boards:\n  - {stock: oak, length: 70 in, width: 6 in}\n")
    knot = "defects: [{at: [32 in, 2 in], length: 10 in, width: 2 in}]"
    spoilt = _group(tmp_path, f"boards:\n  - {{stock: oak, length: 70 in, width: 6 in, {knot}}}\n")
    assert len(clear.boards[0].laid) == 2
    assert len(spoilt.boards[0].laid) == 1


def test_a_layout_out_of_the_store_is_the_one_put_in() -> None:
    order = layout.Order(
        (layout.Board("b", 1000, 100, 2),), (layout.Piece("p", 300, 90, 4),), rules=layout.Rules(kerf=3)
    )
    store = MemoryStore()
    assert laid_out(order, store) == laid_out(order, store) == laid_out(order, None)


SHARED = """\
title: Bench
units: inch
stock:
  oak: {kind: board, species: white oak, thickness: 3/4 in}
parts:
  leg: {stock: oak, thickness: 1 3/4 in, width: 3 in, length: 28 in, count: 2}
  slat: {stock: oak, width: 3 in, length: 28 in, count: 2}
boards:
"""


def _groups(tmp_path: Path, project: str) -> tuple[Boards, Blanks]:
    (tmp_path / "project.yaml").write_text(project, encoding="utf-8")
    _, boards, blanks = _worked(tmp_path)
    assert faults(boards, blanks) == []
    return boards, blanks


def test_a_board_thick_enough_for_two_groups_is_sawn_once(tmp_path: Path) -> None:
    """It holds the legs or the slats. Counted twice, it hid that something is to be bought."""
    boards, _ = _groups(tmp_path, SHARED + "  - {stock: oak, length: 62 in, width: 4 in, thickness: 2 in}\n")
    legs, slats = boards.groups
    assert [len(legs.used), legs.left_out, legs.bought] == [1, (), ()]
    assert [len(slats.used), slats.left_out] == [0, (("slat", 2),)]
    assert len(slats.bought) == 1
    assert slats.unused == ()


def test_what_the_thick_group_leaves_goes_to_the_thin_one(tmp_path: Path) -> None:
    more = "  - {stock: oak, length: 62 in, width: 4 in, thickness: 2 in, count: 3}\n"
    boards, _ = _groups(tmp_path, SHARED + more)
    assert [(len(group.used), group.left_out) for group in boards.groups] == [(1, ()), (1, ())]
    assert [each.count for each in boards.groups[-1].unused] == [1]


def test_thin_parts_come_from_thin_boards_as_long_as_there_are_enough(tmp_path: Path) -> None:
    more = (
        "  - {stock: oak, length: 96 in, width: 9 in, thickness: 2 in, count: 2}\n"
        "  - {stock: oak, length: 32 in, width: 4 in, thickness: 1 in, count: 2}\n"
    )
    boards, _ = _groups(tmp_path, SHARED + more)
    slats = boards.groups[1]
    assert [board.length / 127 * 5 for board in slats.used] == [32, 32]


def test_the_thick_group_leaves_the_board_that_only_the_thin_one_needs(tmp_path: Path) -> None:
    """Either board gives the legs, and one alone the long slat; taken in turn, the legs have the first."""
    long = SHARED.replace(
        "width: 3 in, length: 28 in, count: 2}\nboards", "width: 3 in, length: 70 in, count: 1}\nboards"
    )
    assert long != SHARED
    for first, second in ((74, 62), (62, 74)):
        rows = [
            f"  - {{stock: oak, length: {each} in, width: 4 in, thickness: 2 in}}\n"
            for each in (first, second)
        ]
        boards, _ = _groups(tmp_path, long + "".join(rows))
        assert [group.left_out for group in boards.groups] == [(), ()]


SAME_BOARD = """\
title: Three fronts
units: inch
stock:
  oak: {kind: board, species: white oak, buy: 4/4, thickness: 3/4 in}
parts:
  front: {stock: oak, width: 4 in, length: 20 in, count: 3}
  rail: {stock: oak, width: 4 in, length: 28 in, count: 3}
boards:
  - {stock: oak, length: 74 in, width: 5 in}
  - {stock: oak, length: 96 in, width: 5 in}
"""


def test_parts_from_the_same_board_are_not_parted(tmp_path: Path) -> None:
    """Two boards hold all six either way: three and three, or with a front and two rails on the shorter."""
    match = "matches: {fronts: {parts: [front], how: same board}}\n"
    boards, blanks = _groups(tmp_path, SAME_BOARD + match)
    (matched,) = blanks.matched
    assert (matched.parted, matched.blanks) == ("", ("front", "front", "front"))
    (group,) = boards.groups
    assert group.left_out == ()
    assert [
        sum(laid.match == "fronts" for laid in board.laid)
        for board in group.boards
        if any(laid.match for laid in board.laid)
    ] == [3]


def test_parts_from_one_board_are_left_out_together_where_none_holds_them(tmp_path: Path) -> None:
    match = "matches: {fronts: {parts: [front], how: same board}}\n"
    short = SAME_BOARD.replace("length: 74 in", "length: 44 in").replace("length: 96 in", "length: 60 in")
    boards, _ = _groups(tmp_path, short + match)
    (group,) = boards.groups
    assert dict(group.left_out)["front"] == 3
    assert [sum(bool(laid.match) for laid in board.laid) for board in group.more if board.laid[0].match] == [
        3
    ]


IN_A_ROW = """\
title: Drawer fronts in a row
units: inch
stock:
  oak: {kind: board, species: white oak, buy: 4/4, thickness: 3/4 in}
parts:
  front: {stock: oak, width: 5 in, length: 14 in, count: 2, mark: F}
  stick: {stock: oak, width: 2 in, length: 18 in, count: 1}
"""


def _matched(tmp_path: Path, project: str) -> Group:
    boards, _ = _groups(tmp_path, project)
    (group,) = boards.groups
    return group


def test_what_lies_end_to_end_is_crosscut_once_more_after_ripping(tmp_path: Path) -> None:
    group = _matched(tmp_path, IN_A_ROW + "matches: {fronts: {parts: [F1, F2], how: end to end}}\n")
    assert (group.left_out, group.turns, len(group.boards)) == ((), 3, 1)
    first, second = sorted((laid.at for laid in group.boards[0].laid if laid.match), key=lambda at: at.x)
    assert first.y == second.y
    assert second.x - first.x - first.length == Fraction(127, 40)  # the kerf, and nothing between


@pytest.mark.parametrize("how", ["side by side", "same board"])
def test_what_matches_otherwise_lies_on_one_board_too(tmp_path: Path, how: str) -> None:
    wide = IN_A_ROW.replace("thickness: 3/4 in}", "thickness: 3/4 in, board_width: 12 in}")
    group = _matched(tmp_path, f"{wide}matches: {{fronts: {{parts: [F1, F2], how: {how}}}}}\n")
    assert group.left_out == ()
    assert [sum(bool(laid.match) for laid in board.laid) for board in group.boards] == [2]


def test_it_is_found_when_the_author_allows_too_few_turns(tmp_path: Path) -> None:
    match = "matches: {fronts: {parts: [F1, F2], how: end to end}}\nshop: {turns: 2}\n"
    (tmp_path / "project.yaml").write_text(IN_A_ROW + match, encoding="utf-8")
    found = [each for each in travel(tmp_path).worked.findings if each.code == "match-needs-turns"]
    assert [each.message for each in found] == [
        "fronts: from one board end to end they are crosscut, ripped and crosscut again, and turns: says 2"
    ]


_PARTS = st.lists(
    st.tuples(st.integers(2, 7), st.integers(10, 60), st.integers(1, 4), st.sampled_from(["3/4", "1 3/4"])),
    min_size=1,
    max_size=4,
)
_BOARDS = st.lists(
    st.tuples(st.integers(4, 9), st.integers(20, 100), st.integers(1, 3), st.sampled_from(["1", "2", ""])),
    max_size=4,
)


@settings(max_examples=5, deadline=None)
@given(_PARTS, _BOARDS)
def test_whatever_is_there_is_used_once_and_the_rest_is_bought(
    parts: list[tuple[int, int, int, str]], there: list[tuple[int, int, int, str]]
) -> None:
    made = plan(
        parts={
            f"p{at}": part(str(width), str(length), count, thickness=f"{thick} in")
            for at, (width, length, count, thick) in enumerate(parts)
        },
        boards=tuple(
            written.Board("oak", f"{length} in", f"{width} in", f"{thick} in" if thick else None, count)
            for width, length, count, thick in there
        ),
    )
    worked = work_all(made, WORKINGS)
    boards, blanks = worked[BOARDS](), worked[BLANKS]
    assert faults(boards, blanks) == []
    used = Counter((board.length, board.width) for group in boards.groups for board in group.used)
    unused = Counter[object]()
    for each in (each for group in boards.groups for each in group.unused):
        unused[each.length, each.width] += each.count
    have = Counter[object]()
    for board in made.boards:
        have[board.length, board.width] += board.count
    assert used + unused == have
    for group, line in zip(boards.groups, worked[PURCHASES]().lumber, strict=True):
        assert line.is_there == (group.is_own and not group.left_out)
        assert line.boards >= len(group.bought)
        assert line.there_board_feet <= line.board_feet
