"""The boards' page: what is cut from each, in what order, what is left, and how good that is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from markupsafe import Markup

from benchalong.ground.shown import decimal
from benchalong.ground.words import counted, in_sentence
from benchalong.pages.how_good import how_good
from benchalong.pages.makings import Makings, drawn
from benchalong.pages.shell import Link, Shell
from benchalong.pages.stock import stock_words
from benchalong.plan.model import PartId
from benchalong.plan.rough import Match
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.blanks.model import Blank, Gives
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.boards.letters import letters_of
from benchalong.workings.boards.model import Group, SawCut, Sawn, Spot, Unused
from benchalong.workings.boards.short import so_many


@dataclass(frozen=True)
class PieceLine:
    """Blanks alike on one board."""

    letter: str
    links: tuple[Link, ...]
    """The parts that come out of it."""
    words: str
    """What comes out that is no part; empty otherwise."""
    count: int
    size: Markup
    """Rough, long by wide."""
    match: str
    """What it matches, in words."""


@dataclass(frozen=True)
class CutLine:
    key: str
    """What its tick is kept under."""
    number: int
    words: Markup


@dataclass(frozen=True)
class BoardShown:
    id: str
    title: Markup
    is_there: bool
    note: str
    picture: Markup
    pieces: tuple[PieceLine, ...]
    cuts: tuple[CutLine, ...]
    left_over: tuple[Markup, ...]
    used: str
    """`74 %`"""


@dataclass(frozen=True)
class GroupShown:
    id: str
    words: str
    """`Black cherry, 4/4`"""
    good: str
    """How good the layout is."""
    is_proven: bool
    boards: tuple[BoardShown, ...]
    left_out: tuple[str, ...]
    """What the boards don't suffice for."""
    too_large: tuple[str, ...]
    on_none: tuple[str, ...]
    """What no board that is sold is large enough for."""
    more: tuple[BoardShown, ...]
    unused: tuple[Markup, ...]
    """Boards that are there and that nothing is cut from."""
    are_all_tried: bool
    """False where boards could be shared among thicknesses in ways that were not tried."""


@dataclass(frozen=True)
class BoardsPage:
    shell: Shell
    kerf: Markup
    groups: tuple[GroupShown, ...]
    has_sheets: bool
    is_assumed: bool
    """Whether some boards are the size that is usually sold, since the project names none."""


def boards_page(makings: Makings) -> BoardsPage:
    groups = groups_shown(makings)
    boards = [board for group in groups for board in (*group.boards, *group.more)]
    return BoardsPage(
        Shell("boards", "boards.html", "Boards"),
        makings.shows.fine(makings.worked[BOARDS]().kerf),
        groups,
        any(makings.plan.stock[group.stock].kind == "sheet" for group in makings.worked[BOARDS]().groups),
        any(not board.is_there for board in boards),
    )


def groups_shown(makings: Makings) -> tuple[GroupShown, ...]:
    return makings.once("boards", "", lambda: tuple(_groups(makings)))


def _groups(makings: Makings) -> Iterator[GroupShown]:
    return (_Shown(makings, group).group() for group in makings.worked[BOARDS]().groups)


def boards_of(makings: Makings, part: PartId) -> tuple[Link, ...]:
    """The boards that a part's copies come from."""
    boards, found = makings.worked[BOARDS](), dict[str, Link]()
    for blank in makings.worked[BLANKS].rough_of.get(part, ()):
        for group, board in boards.by_blank.get(blank, ()):
            words = f"{board_word(makings, group)} {board.number} of {_group_words(makings, group)}"
            words += "" if board.is_there else ", to buy"
            found[board_id(group, board)] = Link(f"boards.html#{board_id(group, board)}", words)
    return tuple(found.values())


def board_id(group: Group, board: Sawn) -> str:
    return f"{group.id}-{board.number}"


def board_word(makings: Makings, group: Group) -> str:
    return "Sheet" if makings.plan.stock[group.stock].kind == "sheet" else "Board"


def _group_words(makings: Makings, group: Group) -> str:
    return ", ".join(filter(None, (makings.plan.stock[group.stock].name, group.called)))


class _Shown:
    """One group for the page."""

    def __init__(self, makings: Makings, group: Group) -> None:
        self._makings, self._group = makings, group
        self._letters = letters_of(group)
        self._word = board_word(makings, group)

    def group(self) -> GroupShown:
        group, stock = self._group, self._makings.plan.stock[self._group.stock]
        return GroupShown(
            group.id,
            stock_words(replace(stock, buy=group.called or stock.buy)),
            self._good(),
            group.is_proven,
            tuple(map(self._board, group.boards)),
            tuple(so_many(self._blank(blank), number) for blank, number in group.left_out),
            tuple(self._names(self._blank(blank)) for blank in group.too_large),
            tuple(so_many(self._blank(blank), number) for blank, number in group.on_none)
            if group.is_own
            else (),
            tuple(map(self._board, group.more)),
            tuple(map(self._unused, group.unused)),
            group.are_all_tried,
        )

    def _good(self) -> str:
        group = self._group
        must_match = any(laid.match for board in group.boards for laid in board.laid)
        return how_good(group, word=self._word.lower(), must_match=must_match)

    def _board(self, board: Sawn) -> BoardShown:
        size = self._makings.shows.size
        title = Markup("{} {}: {} × {}").format(
            self._word, board.number, size(board.length), size(board.width)
        )
        if board.cut_from is not None:
            title += Markup(", crosscut from {} at the yard").format(size(board.cut_from))
        return BoardShown(
            board_id(self._group, board),
            title,
            board.is_there,
            board.note,
            drawn(self._makings.drawings.sawn(self._group.id, board.number)),
            tuple(self._pieces(board)),
            tuple(self._cut(board, cut) for cut in board.cuts),
            tuple(self._left(board, spot) for spot in board.left_over),
            f"{decimal(100 * board.used, 0)} %",
        )

    def _left(self, board: Sawn, spot: Spot) -> Markup:
        is_spoilt = any(_meet(spot, other) for other in board.keep_clear)
        return self._size(spot) + Markup(" with a defect in it" if is_spoilt else "")

    def _unused(self, unused: Unused) -> Markup:
        size = self._makings.shows.size
        said = Markup("{}, {} × {}").format(
            counted(unused.count, self._word.lower()), size(unused.length), size(unused.width)
        )
        if unused.thickness is not None:
            said += Markup(", {} thick").format(size(unused.thickness))
        return said + (Markup(" ({})").format(unused.note) if unused.note else Markup(""))

    def _size(self, spot: Spot) -> Markup:
        size = self._makings.shows.size
        return Markup("{} × {}").format(size(spot.length), size(spot.width))

    def _pieces(self, board: Sawn) -> Iterator[PieceLine]:
        laid = dict.fromkeys(each.blank for each in board.laid)
        for id in laid:
            blank, size = self._blank(id), self._makings.shows.size
            yield PieceLine(
                self._letters[id],
                tuple(
                    Link(f"parts/{each.part}.html", self._says(blank, each))
                    for each in blank.gives
                    if each.part
                ),
                ", ".join(each.name for each in blank.gives if not each.part),
                sum(each.blank == id for each in board.laid),
                Markup("{} × {}").format(size(blank.length), size(blank.width)),
                self._match(blank),
            )

    def _says(self, blank: Blank, gives: Gives) -> str:
        """`Door rail, 2 from each`."""
        each = gives.count * gives.strips // blank.count if blank.count else gives.count
        if gives.strips > 1:
            return f"{gives.name}, a strip of it"
        return f"{gives.name}, {each} from each" if each > 1 else gives.name

    def _match(self, blank: Blank) -> str:
        matches = self._makings.plan.matches.values()
        found = (match for match in matches if match.id == blank.match or _is_chosen(match, blank))
        return ", ".join(dict.fromkeys(MATCHES[match.how] for match in found))

    def _cut(self, board: Sawn, cut: SawCut) -> CutLine:
        size, kind = self._makings.shows.size(cut.off), "Crosscut" if cut.way == "across" else "Rip"
        what = "" if (cut.of.length, cut.of.width) == (board.length, board.width) else self._of(board, cut)
        side = "its left end" if cut.way == "across" else "its upper edge"
        words = Markup("{}{}, {} from {}").format(kind, what, size, side)
        frees = ", ".join(self._letters[blank] for blank in cut.frees)
        if frees:
            words += Markup(". Frees <b>{}</b>").format(frees)
        return CutLine(f"{board_id(self._group, board)}-{cut.number}", cut.number, words)

    def _of(self, board: Sawn, cut: SawCut) -> str:
        """What is cut, by the letters that lie in it."""
        inside = dict.fromkeys(self._letters[laid.blank] for laid in board.laid if _lies_in(laid.at, cut.of))
        return f" the piece with {', '.join(inside)}" if inside else " what is left"

    def _blank(self, id: str) -> Blank:
        return self._makings.worked[BLANKS].by_id[id]

    def _names(self, blank: Blank) -> str:
        return " and ".join(in_sentence(name) for name in dict.fromkeys(each.name for each in blank.gives))


def _is_chosen(match: Match, blank: Blank) -> bool:
    """Whether it matches by eye, whichever board it comes from."""
    return match.how in ("book match", "show side") and not set(match.parts).isdisjoint(blank.parts)


MATCHES = {
    "book match": "sawn in two and opened like a book",
    "end to end": "its grain runs on from one to the next",
    "side by side": "side by side, so that they match",
    "same board": "from one board, so that they match",
    "show side": "show side from the best board",
}


def _meet(one: Spot, other: Spot) -> bool:
    along = one.x < other.x + other.length and other.x < one.x + one.length
    return along and one.y < other.y + other.width and other.y < one.y + one.width


def _lies_in(at: Spot, of: Spot) -> bool:
    along = of.x <= at.x and at.x + at.length <= of.x + of.length
    return along and of.y <= at.y and at.y + at.width <= of.y + of.width
