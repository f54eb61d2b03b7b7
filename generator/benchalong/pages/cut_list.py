"""The cut list's page: by stock, then by thickness, since all of one thickness is milled together."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.pages.fitted import first_in_short
from benchalong.pages.makings import Makings
from benchalong.pages.part import HandLine, PartLine, hands_of, part_line
from benchalong.pages.rough import RoughShown, rough_shown
from benchalong.pages.shell import Shell
from benchalong.pages.stock import stock_words
from benchalong.plan.rough import TestPiece
from benchalong.workings.cut_list import CUT_LIST, Row


@dataclass(frozen=True)
class CutLine:
    part: PartLine
    count: int
    spares: int
    """How many more are cut than the piece needs."""
    width: Markup
    length: Markup
    shoulders: Markup
    """Length between shoulders; empty where there are none. All three without their unit."""
    fitted: Markup
    """`first 2 1/2 in by 20 in`, or that it isn't sawn yet, where it gets its final size at the bench."""
    hands: tuple[HandLine, ...]
    """The kinds it is made in, left and right hand above all; none where all are alike."""


@dataclass(frozen=True)
class Thickness:
    """All that is milled to one thickness."""

    thickness: Markup
    rounding: Markup
    lines: tuple[CutLine, ...]
    has_shoulders: bool
    count: int
    """How many pieces of wood."""


@dataclass(frozen=True)
class StockShown:
    id: str
    name: str
    words: str
    note: str
    thicknesses: tuple[Thickness, ...]


@dataclass(frozen=True)
class TestPieceLine:
    __test__ = False  # its name makes pytest think it were a test

    name: str
    stock: str
    purpose: str
    count: int
    thickness: Markup
    width: Markup
    length: Markup


@dataclass(frozen=True)
class CutListPage:
    shell: Shell
    stocks: tuple[StockShown, ...]
    test_pieces: tuple[TestPieceLine, ...]
    rough: RoughShown


def cut_list_page(makings: Makings) -> CutListPage:
    return CutListPage(
        Shell("cut-list", "cut-list.html", "Cut list"),
        stocks_shown(makings),
        tuple(_test_piece(makings, piece) for piece in makings.plan.test_pieces.values()),
        rough_shown(makings),
    )


def _test_piece(makings: Makings, piece: TestPiece) -> TestPieceLine:
    return TestPieceLine(
        piece.name,
        makings.plan.stock[piece.stock].name,
        piece.purpose,
        piece.count,
        makings.shows.size(piece.thickness),
        makings.shows.bare(piece.width),
        makings.shows.bare(piece.length),
    )


def stocks_shown(makings: Makings) -> tuple[StockShown, ...]:
    return makings.once("stocks", "", lambda: _stocks(makings))


def _stocks(makings: Makings) -> tuple[StockShown, ...]:
    found = []
    for stock_id, groups in groupby(makings.worked[CUT_LIST].groups, key=lambda group: group.stock):
        stock = makings.plan.stock[stock_id]
        thicknesses = tuple(_thickness(makings, group.thickness, group.rows) for group in groups)
        found.append(StockShown(stock.id, stock.name, stock_words(stock), stock.note, thicknesses))
    return tuple(found)


def _thickness(makings: Makings, thickness: Length, rows: tuple[Row, ...]) -> Thickness:
    lines = tuple(_line(makings, row) for row in rows)
    return Thickness(
        thickness=makings.shows.size(thickness),
        rounding=makings.shows.rounding(thickness),
        lines=lines,
        has_shoulders=any(line.shoulders for line in lines),
        count=sum(row.count for row in rows),
    )


def _line(makings: Makings, row: Row) -> CutLine:
    bare = makings.shows.bare
    return CutLine(
        part=part_line(makings, row.part),
        count=row.count,
        spares=row.spares,
        width=bare(row.width),
        length=bare(row.length),
        shoulders=Markup("") if row.shoulder_length is None else bare(row.shoulder_length),
        fitted=first_in_short(makings, row.part),
        hands=hands_of(makings, row.part),
    )
