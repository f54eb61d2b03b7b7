"""What the plan check says of blanks: boards too thin, too short, too narrow; machines too small."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.plan.model import Part, PartId
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade import rough as usual
from benchalong.workings.blanks.matching import look_at_matches
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.blanks.one_piece import not_one_piece
from benchalong.workings.blanks.reckoning import Reckoned
from benchalong.workings.blanks.stacks import Stack
from benchalong.workings.telling import Telling, likewise


def look_at_blanks(
    reckoned: Reckoned, blanks: Blanks, stacks: Mapping[PartId, list[Stack]]
) -> Iterator[Finding]:
    looking = _Looking(reckoned, blanks)
    yield from looking.trade_sizes()
    of_parts = [
        finding
        for part in reckoned.plan.parts.values()
        for stack in stacks.get(part.id, ())[:1]
        for finding in looking.part(part, stack)
    ]
    yield from _alike(reckoned, of_parts)
    yield from not_one_piece(reckoned.plan, blanks, stacks)
    for blank in blanks.blanks:
        yield from looking.blank(blank)
    yield from look_at_matches(reckoned, blanks)


class _Looking:
    def __init__(self, reckoned: Reckoned, blanks: Blanks) -> None:
        self.reckoned, self.blanks, self.plan = reckoned, blanks, reckoned.plan
        self.sawing = reckoned.sawing
        self.shown = Telling(reckoned.plan).shown

    # stock

    def trade_sizes(self) -> Iterator[Finding]:
        for stock in self.plan.stock.values():
            if stock.kind == "board" and stock.buy and self.reckoned.sizes[stock.id] is None:
                place = Place((PROJECT_FILE, "stock", stock.id, "buy"))
                message = f"{stock.name}: {stock.buy} is no trade size that is known here, so it was not used"
                remedy = "write quarters (4/4), a sawn thickness (27 mm) or a nominal size (1x6)"
                yield Finding("trade-size-unknown", "note", place, stock.id, message, remedy)

    # parts

    def part(self, part: Part, stack: Stack) -> Iterator[Finding]:
        if stack.is_board:
            yield from self._thickness(part, stack)
            yield from self._wider_than_boards(part, stack)
            yield from self._wider_than_jointer(part, stack)
            yield from self._thinner_than_planer(part)
        if stack.stock.kind == "sheet":
            yield from self._larger_than_sheet(part, stack)

    def _thickness(self, part: Part, stack: Stack) -> Iterator[Finding]:
        rough, bought = stack.rough, self.reckoned.sizes[stack.stock.id]
        if bought is None or rough.short <= 0 or self._is_there(stack):
            return
        numbers = {"thickness": part.thickness, "bought": bought.thickness, "needs": rough.needs}
        what = f"{part.name}, {self.shown(part.thickness)} finished"
        if bought.is_dressed:
            message = (
                f"{what}, can't come from {bought.called}, which measures {self.shown(bought.thickness)}"
            )
            yield _of_part("thicker-than-stock", "fault", part, message, "buy a thicker size", numbers)
            return
        leaves = f" as one of {rough.leaves} leaves" if rough.leaves > 1 else ""
        needs = f"{self.shown(rough.needs)} rough{leaves}"
        message = f"{what}, needs {needs}; {stack.stock.name} is bought {bought.called}"
        is_enough = part.thickness < bought.thickness
        better = rough.size.called if rough.size != bought and rough.size.called else "thicker boards"
        remedy = f"buy {better} for it: {self.shown(rough.short)} more"
        yield _of_part("rough-too-thin", "doubt" if is_enough else "fault", part, message, remedy, numbers)

    def _is_there(self, stack: Stack) -> bool:
        """Whether a board that is there is thick enough, whatever the stock is usually bought in."""
        least = stack.rough.size.thickness - usual.LESS_THAN_CALLED
        needs = max(least, stack.rough.needs - usual.LESS_THAN_CALLED)
        own = (board for board in self.plan.boards if board.stock == stack.stock.id)
        return any(board.thickness is not None and board.thickness >= needs for board in own)

    def _wider_than_boards(self, part: Part, stack: Stack) -> Iterator[Finding]:
        board, rough = self.reckoned.board_width(stack.stock), stack.width + stack.wider
        if part.strips is None or part.strips.is_glued or rough <= board:
            return
        wide, boards = self.shown(rough), self.shown(board)
        message = f"{part.name} is cut out {wide} wide in one piece, and boards are {boards} wide"
        remedy = f"find a board {self.shown(rough - board)} wider, or glue it up"
        yield _of_part("wider-than-boards", "doubt", part, message, remedy, {"rough": rough, "board": board})

    def _wider_than_jointer(self, part: Part, stack: Stack) -> Iterator[Finding]:
        """Where the author said how wide it is: the trade's usual is no reason to doubt a plan."""
        takes, rough = self.sawing.jointer.width, stack.width + stack.wider
        if rough <= takes or "jointer.width" in self.sawing.assumed:
            return
        message = (
            f"{part.name} is cut out {self.shown(rough)} wide, and the jointer takes {self.shown(takes)}"
        )
        remedy = f"glue it up from strips of at most {self.shown(takes)}, or flatten it by hand"
        numbers = {"rough": rough, "jointer": takes}
        yield _of_part("wider-than-jointer", "doubt", part, message, remedy, numbers)

    def _thinner_than_planer(self, part: Part) -> Iterator[Finding]:
        """Where there is a planer to be careful with."""
        least = self.sawing.planer.thinnest
        has_planer = any("planer" in tool for tool in self.plan.shop.tools)
        if part.thickness >= least or ("planer.thinnest" in self.sawing.assumed and not has_planer):
            return
        thin = self.shown(part.thickness)
        message = f"{part.name} ends up {thin} thick; under {self.shown(least)} wood shatters in a planer"
        remedy = "plane it on a carrier board as far as the machine's manual allows, or by hand"
        numbers = {"thickness": part.thickness, "thinnest": least}
        yield _of_part("thinner-than-planer", "note", part, message, remedy, numbers)

    def _larger_than_sheet(self, part: Part, stack: Stack) -> Iterator[Finding]:
        ways = _ways(stack)
        long, wide = stack.length + stack.longer, stack.width + stack.wider
        if not ways or any(long <= length and wide <= width for length, width in ways):
            return
        length, width = ways[0]
        message = (
            f"{part.name} is {self.shown(long)} long and {self.shown(wide)} wide; the sheet is "
            f"{self.shown(length)} along its grain and {self.shown(width)} across"
        )
        numbers = {"length": long, "width": wide, "sheet_length": length, "sheet_width": width}
        remedy = "join it from two, or find a larger sheet"
        yield _of_part("larger-than-sheet", "fault", part, message, remedy, numbers)

    # blanks

    def blank(self, blank: Blank) -> Iterator[Finding]:
        stock = self.plan.stock[blank.stock]
        if stock.kind == "board":
            yield from self._longer_than_sold(blank, max(stock.sold_in, default=None))
            yield from self._longer_than_car(blank)

    def _longer_than_sold(self, blank: Blank, sold: Length | None) -> Iterator[Finding]:
        takes = blank.length + 2 * self.sawing.trim
        if sold is None or takes <= sold:
            return
        board, most = self.shown(takes), self.shown(sold)
        message = f"it takes a board of {board}, its ends trimmed, and the longest sold is {most}"
        remedy = f"find a board {self.shown(takes - sold)} longer, or make it shorter"
        yield self._of_blank("longer-than-sold", blank, message, remedy, {"takes": takes, "sold": sold})

    def _longer_than_car(self, blank: Blank) -> Iterator[Finding]:
        car, takes = self.sawing.car, blank.length + 2 * self.sawing.trim
        if car is None or takes <= car:
            return
        board = f"it takes a board of {self.shown(takes)}, its ends trimmed"
        message = f"{board}, and {self.shown(car)} go into the car"
        numbers = {"takes": takes, "car": car}
        yield self._of_blank("longer-than-car", blank, message, "have it brought", numbers)

    def _of_blank(
        self, code: str, blank: Blank, message: str, remedy: str, numbers: dict[str, Length]
    ) -> Finding:
        said = f"{blank.gives[0].name}: {message}"
        if blank.parts:
            return _of_part(code, "doubt", self.plan.parts[blank.parts[0]], said, remedy, numbers)
        name = blank.gives[0].test_piece
        place = Place((PROJECT_FILE, "test_pieces", name)).key()
        return Finding(code, "doubt", place, name, said, remedy, numbers)


def _alike(reckoned: Reckoned, findings: list[Finding]) -> Iterator[Finding]:
    """What holds of several parts of one stock alike is said of the first, and the others named."""
    parts = reckoned.plan.parts
    found: dict[object, list[Finding]] = {}
    for finding in findings:
        key = (finding.code, parts[finding.subject].stock, tuple(finding.numbers.items()))
        found.setdefault(key, []).append(finding)
    for first, *others in found.values():
        also = likewise(parts[finding.subject].name.lower() for finding in others)
        yield replace(first, message=first.message + also)


def _ways(stack: Stack) -> list[tuple[Length, Length]]:
    """(along the grain, across) of the sheet, or both ways where it has none; nothing where it isn't said."""
    if stack.stock.sheet is None:
        return []
    one, other = stack.stock.sheet
    along = stack.stock.grain_along
    if along is None:
        return [(one, other), (other, one)]
    return [(along, other if along == one else one)]


def _of_part(
    code: str, level: Level, part: Part, message: str, remedy: str, numbers: dict[str, Length]
) -> Finding:
    place = Place((PROJECT_FILE, "parts", part.id)).key()
    sizes = tuple(sorted({name for follows in part.follows.values() for name in follows}))
    return Finding(code, level, place, part.id, message, remedy, numbers, sizes)
