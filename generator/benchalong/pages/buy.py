"""What to buy: a list to take along, with boxes to tick, and the card for the yard."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup

from benchalong.ground.lengths import FOOT, Length
from benchalong.ground.money import two_places
from benchalong.ground.shown import decimal, shown
from benchalong.ground.words import counted
from benchalong.pages.amounts import glue_rate
from benchalong.pages.makings import Makings
from benchalong.pages.shell import Shell
from benchalong.pages.shown import either
from benchalong.pages.yard import YardLine, yard_card
from benchalong.plan.model import Price
from benchalong.trade.boards import PLANED
from benchalong.trade.waste import Waste
from benchalong.workings.purchases.model import Lumber, Rack, Sheets, Thing
from benchalong.workings.purchases.purchases import PURCHASES

STANDINGS = {"common practice": "common practice, no source", "memory": "from memory"}
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
    """How much of it, to be read at arm's length."""
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
    is_priced = any(line.cost is not None for line in bought.lines)
    return BuyPage(
        shell=Shell("buy", "buy.html", "What to buy"),
        groups=tuple(_groups(makings)),
        yard=yard_card(makings),
        total=money(makings, bought.total) if is_priced else "",
        unpriced=bought.unpriced,
        counted=tuple(_counted(makings)),
    )


def _groups(makings: Makings) -> Iterator[BuyGroup]:
    bought = makings.worked[PURCHASES]()
    if bought.lumber:
        yield BuyGroup("boards", "Boards", tuple(_lumber(makings, line) for line in bought.lumber))
    if bought.sheets:
        yield BuyGroup("sheets", "Sheets", tuple(_sheets(makings, line) for line in bought.sheets))
    by_title: dict[str, list[Thing]] = {}
    for thing in bought.things:
        by_title.setdefault(TITLES[thing.kind], []).append(thing)
    for title, things in by_title.items():
        yield BuyGroup(
            title.lower().replace(" ", "-"), title, tuple(_thing(makings, thing) for thing in things)
        )


def _lumber(makings: Makings, line: Lumber) -> BuyLine:
    return BuyLine(
        key=f"{line.stock}-{line.called or line.thickness}".replace(" ", "-").replace("/", "-"),
        name=f"{line.name}, {line.called}" if line.called else line.name,
        amount=lumber_amount(makings, line),
        details=tuple(_of_lumber(makings, line)),
        cost="" if line.cost is None else money(makings, line.cost),
        price=price_words(makings, line.price),
    )


def lumber_amount(makings: Makings, line: Lumber) -> Markup:
    feet = Markup("{} board {}").format(line.buy_board_feet, "foot" if line.buy_board_feet == 1 else "feet")
    cubic = Markup("{} m³").format(decimal(line.buy_cubic_metres, 3))
    first, second = (feet, cubic) if makings.plan.units == "inch" else (cubic, feet)
    return Markup('{} <span class="also">({})</span>').format(first, second)


def _of_lumber(makings: Makings, line: Lumber) -> Iterator[Markup]:
    size = makings.shows.size
    several = "about {} boards" if line.boards > 1 else "one board"
    yield Markup(several.format(line.boards).capitalize() + " {} long and {} wide, by area alone").format(
        in_feet(makings, line.lengths[-1]), size(line.board_width)
    )
    if len(line.lengths) > 1:
        yield Markup("Sold in {}; the longest give the least waste").format(
            Markup(", ").join(in_feet(makings, length) for length in line.lengths)
        )
    yield Markup("None shorter than {}, and wide enough for {}").format(size(line.longest), size(line.widest))
    yield _measures(makings, line)
    yield _waste(line.waste, Markup("{} board feet in rough sizes").format(decimal(line.board_feet, 1)))
    if line.must_match:
        yield Markup("What must match is chosen first")
    if line.laid_on is not None:
        yield Markup(
            'Laid out on clear boards of that size it takes {}: <a href="boards.html">Boards</a>'
        ).format(line.laid_on)
    if line.on_hand:
        yield _on_rack(line.rack, f"{decimal(line.on_hand, 1)} board feet")


ON_RACK: dict[Rack, str] = {
    "suffices": "all parts can be cut from them",
    "short": "not enough for all parts",
    "empty": "none that these parts can be cut from",
}


def _on_rack(rack: Rack, amount: str) -> Markup:
    said = 'On the rack already: {}; {}. Not taken off here: <a href="boards.html">Boards</a>'
    return Markup(said).format(amount, ON_RACK[rack])


def in_feet(makings: Makings, length: Length) -> Markup:
    """A board's length as the yard says it: `10 ft` where it is whole feet, in inches."""
    feet = length / FOOT
    if feet.denominator > 1:
        return makings.shows.size(length)
    other = shown(length, "millimetre", makings.plan.precision).text
    return Markup('<span class="only-inch">{} ft</span><span class="only-millimetre">{}</span>').format(
        feet, other
    )


def _measures(makings: Makings, line: Lumber) -> Markup:
    size = makings.shows.size
    if line.nominal is not None:
        return Markup("Measures {} by {} dressed and dry").format(
            size(line.nominal.thickness), size(line.nominal.width)
        )
    planed = next((thick for quarters, thick in PLANED.items() if line.called == f"{quarters}/4"), None)
    if planed is None:
        return Markup("Rough, {} thick").format(size(line.thickness))
    return Markup(
        "Rough, {} thick. Bought planed on both faces it measures {}: little is left to make it flat"
    ).format(size(line.thickness), size(planed))


def _waste(waste: Waste, of: Markup) -> Markup:
    said = waste.why if waste.standing == "said" else f"{waste.why}; {STANDINGS[waste.standing]}"
    return Markup("{}, and {} % on top ({})").format(of, decimal(waste.added * 100, 1), said)


def _sheets(makings: Makings, line: Sheets) -> BuyLine:
    count = line.count
    amount = "size not said" if count is None else f"{count} sheet" if count == 1 else f"{count} sheets"
    return BuyLine(
        key=line.stock,
        name=line.name,
        amount=Markup(amount),
        details=tuple(_of_sheets(makings, line)),
        cost="" if line.cost is None else money(makings, line.cost),
        price=price_words(makings, line.price),
    )


def _of_sheets(makings: Makings, line: Sheets) -> Iterator[Markup]:
    size = makings.shows.size
    if line.sheet is not None:
        yield Markup("{} by {}").format(size(line.sheet[0]), size(line.sheet[1]))
    if line.called is not None and line.thickness is not None:
        yield Markup("Sold as {}; the plan works with {}").format(size(line.called), size(line.thickness))
    elif line.thickness is not None:
        yield Markup("{} thick").format(size(line.thickness))
    yield _waste(line.waste, Markup("{} in parts").format(makings.shows.area(line.area)))
    if line.by == "layout":
        yield Markup('Counted by where each part lies: <a href="boards.html">Boards</a>')
    if line.on_hand:
        yield _on_rack(line.rack, "one piece" if line.on_hand == 1 else f"{line.on_hand} pieces")


def _thing(makings: Makings, thing: Thing) -> BuyLine:
    details = [Markup.escape(text) for text in (thing.size, thing.note) if text]
    return BuyLine(
        key=f"{thing.kind}-{thing.id}",
        name=thing.name[:1].upper() + thing.name[1:],
        amount=thing_amount(makings, thing),
        details=tuple(details),
        cost="" if thing.cost is None else money(makings, thing.cost),
        price=price_words(makings, thing.price),
    )


def thing_amount(makings: Makings, thing: Thing) -> Markup:
    if thing.amount is not None and thing.kind == "glue":
        return Markup("about {}").format(makings.shows.weight(Fraction(thing.amount) / 1000))
    if thing.amount is not None:
        return Markup("at most {}").format(makings.shows.volume(Fraction(thing.amount)))
    if thing.count is not None and thing.kind == "abrasive":
        return Markup("{} or {}").format(
            counted(thing.count, "disc"), "quarter sheet" if thing.count == 1 else "quarter sheets"
        )
    return Markup("how many isn't said") if thing.count is None else Markup(str(thing.count))


def _counted(makings: Makings) -> Iterator[Markup]:
    bought = makings.worked[PURCHASES]()
    if bought.lumber:
        yield Markup(BOARD_FEET)
        yield Markup("Cubic metres are rounded up to a thousandth.")
    if bought.lumber or any(line.by == "area" for line in bought.sheets):
        yield Markup(
            "Boards are counted by area, with waste for their grade. Where parts lie awkwardly it may take "
            "one more. Sheets are counted by where each part lies, unless their own line says otherwise."
        )
    if any(thing.kind == "abrasive" for thing in bought.things):
        yield ABRASIVES
    if any(thing.kind == "glue" for thing in bought.things):
        yield Markup("Glue: {}.").format(glue_rate(makings.plan.rates))


def money(makings: Makings, amount: Fraction) -> str:
    """`USD 254.80`: always two places."""
    said = two_places(amount)
    return f"{makings.plan.currency} {said}" if makings.plan.currency else said


def price_words(makings: Makings, price: Price | None) -> str:
    if price is None:
        return ""
    return f"{money(makings, price.amount)} {'each' if price.per == 'each' else f'per {price.per}'}"
