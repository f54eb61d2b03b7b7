"""What to buy: a list to take along, with boxes to tick, and the card for the yard. What is there already
stands apart, so that the list holds nothing but what is to be bought."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.pages.amounts import glue_rate
from benchalong.pages.buying import Says, money, price_words, says_of_lumber, says_of_sheets, says_of_thing
from benchalong.pages.makings import Makings
from benchalong.pages.shell import Shell
from benchalong.pages.shown import either
from benchalong.pages.yard import YardLine, yard_card
from benchalong.workings.purchases.model import Line, Lumber, Sheets, Thing
from benchalong.workings.purchases.purchases import PURCHASES

TITLES = {
    "turned": "Turned",
    "bought": "Bought as they are",
    "hardware": "Hardware",
    "glue": "Glue and finish",
    "finish": "Glue and finish",
    "abrasive": "Abrasives",
}

BOARD_FEET = (
    "A board foot is 144 cubic inches, by rough thickness, and under an inch counts as an inch (NHLA). Here "
    "it is counted exactly from rough sizes, the waste put on top, and rounded up once, to a whole board "
    "foot. A yard's tally takes each board's length down to the whole foot and its face to the nearest whole "
    "square foot, so its figure can differ by half a board foot or more for each board."
)
BOARDS = (
    "Boards to buy are those that the parts are sawn from, without defects and as wide as is said. Where the "
    "usual waste asks for more, more are bought."
)
SHEETS = "Sheets are counted by where each part lies, unless their own line says otherwise."
THERE = "What is there already is taken off as far as parts can be sawn from it, not by its mere amount."
ABRASIVES = Markup(
    "Abrasives: one disc or quarter sheet of each grit for every {} of surface, all sides counted; common "
    "practice, no source."
).format(either("5 sq ft", "half square metre"))


@dataclass(frozen=True)
class BuyLine:
    key: str
    """What its tick is kept under."""
    name: str
    amount: Markup
    """How much of it to buy, to be read at arm's length; of what is there, how much is needed."""
    tally: tuple[tuple[str, Markup], ...]
    """What is needed, what of it is there, what is to be bought; empty where nothing is there."""
    details: tuple[Markup, ...]
    cost: str
    """With its currency; empty where nothing is priced."""
    price: str
    """What one costs, in words; empty where that isn't said."""


@dataclass(frozen=True)
class BuyGroup:
    id: str
    title: str
    lines: tuple[BuyLine, ...]


@dataclass(frozen=True)
class BuyPage:
    shell: Shell
    groups: tuple[BuyGroup, ...]
    there: tuple[BuyLine, ...]
    """Of which nothing is to be bought."""
    yard: tuple[YardLine, ...]
    """What to see to at the yard, in order."""
    total: str
    """Empty where nothing is priced."""
    unpriced: tuple[str, ...]
    """What the total leaves out."""
    counted: tuple[Markup, ...]
    """How amounts are counted, and where they are rounded."""


def buy_page(makings: Makings) -> BuyPage:
    bought = makings.worked[PURCHASES]()
    is_priced = any(line.cost is not None and not line.is_there for line in bought.lines)
    return BuyPage(
        shell=Shell("buy", "buy.html", "What to buy"),
        groups=tuple(_groups(makings)),
        there=tuple(_line(makings, line) for line in bought.lines if line.is_there),
        yard=yard_card(makings),
        total=money(makings, bought.total) if is_priced else "",
        unpriced=bought.unpriced,
        counted=tuple(_counted(makings)),
    )


def _groups(makings: Makings) -> Iterator[BuyGroup]:
    by_title: dict[str, list[BuyLine]] = {}
    for line in makings.worked[PURCHASES]().lines:
        if not line.is_there:
            by_title.setdefault(_title(line), []).append(_line(makings, line))
    for title, lines in by_title.items():
        yield BuyGroup(title.lower().replace(" ", "-"), title, tuple(lines))


def _title(line: Line) -> str:
    if isinstance(line, Thing):
        return TITLES[line.kind]
    return "Boards" if isinstance(line, Lumber) else "Sheets"


def _line(makings: Makings, line: Line) -> BuyLine:
    """Of boards, sheets or anything else."""
    key, name, says = _called(makings, line)
    return BuyLine(
        key=key,
        name=name,
        amount=says.amount,
        tally=says.tally,
        details=says.details,
        cost="" if line.cost is None or line.is_there else money(makings, line.cost),
        price="" if line.is_there else price_words(makings, line.price),
    )


def _called(makings: Makings, line: Line) -> tuple[str, str, Says]:
    if isinstance(line, Lumber):
        key = f"{line.stock}-{line.called or line.thickness}".replace(" ", "-").replace("/", "-")
        return key, f"{line.name}, {line.called}" if line.called else line.name, says_of_lumber(makings, line)
    if isinstance(line, Sheets):
        return line.stock, line.name, says_of_sheets(makings, line)
    return f"{line.kind}-{line.id}", line.name[:1].upper() + line.name[1:], says_of_thing(makings, line)


def _counted(makings: Makings) -> Iterator[Markup]:
    bought = makings.worked[PURCHASES]()
    if bought.lumber:
        yield Markup(BOARD_FEET)
        yield Markup("Cubic metres are rounded up to a thousandth.")
    if bought.lumber:
        yield Markup(BOARDS)
    if bought.sheets:
        yield Markup(SHEETS)
    if any(line.there_boards for line in bought.lumber) or any(line.there_pieces for line in bought.sheets):
        yield Markup(THERE)
    if any(thing.kind == "abrasive" for thing in bought.things):
        yield ABRASIVES
    if any(thing.kind == "glue" for thing in bought.things):
        yield Markup("Glue: {}.").format(glue_rate(makings.plan.rates))
