"""A part's page, and the line other pages give a part."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.pages.cut_words import size_words
from benchalong.pages.makings import Makings, drawn, marks_in_short
from benchalong.pages.shell import Link, Shell
from benchalong.pages.wood import CarriesShown, MovesShown, carries_shown, moves_shown, part_weight
from benchalong.plan.model import Cut, Part, PartId, SizeName, Stock
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.touched import TOUCHED


@dataclass(frozen=True)
class NamedSize:
    """One number with its name: `Thickness`, `width`."""

    name: str
    size: Markup
    rounding: Markup
    """What rounding does to it; empty where nothing is lost."""
    follows: tuple[SizeName, ...]
    """The named sizes it follows from."""


@dataclass(frozen=True)
class PartLine:
    """A part where other pages name it: enough to pick it from the pile."""

    id: PartId
    name: str
    count: int
    marks: str
    small: Markup
    thickness: Markup
    width: Markup
    length: Markup
    shoulders: Markup
    """Length between shoulders; empty where there are none."""
    is_rounded: bool
    """Whether any of these is shown rounded, in either system."""


@dataclass(frozen=True)
class CutShown:
    name: str
    where: str
    sizes: tuple[NamedSize, ...]
    note: str


@dataclass(frozen=True)
class PartPage:
    shell: Shell
    id: PartId
    name: str
    count: int
    marks: tuple[str, ...]
    stock: str
    purpose: str
    shows: str
    glued_up: str
    note: str
    picture: Markup
    sizes: tuple[NamedSize, ...]
    cuts: tuple[CutShown, ...]
    is_rounded: bool
    """Whether any of its sizes is shown rounded."""
    steps: tuple[Link, ...]
    """The steps that touch it, in the order of work."""
    weight: str
    """Of one copy; empty when it isn't known."""
    moves: MovesShown | None
    carries: CarriesShown | None


def part_line(makings: Makings, part: PartId) -> PartLine:
    return makings.once("part line", part, lambda: _line(makings, makings.plan.parts[part]))


def _line(makings: Makings, part: Part) -> PartLine:
    size = makings.shows.size
    between = shoulders(makings, part.id)
    return PartLine(
        id=part.id,
        name=part.name,
        count=part.count,
        marks=marks_in_short(part.marks),
        small=drawn(makings.drawings.small(part.id)),
        thickness=size(part.thickness),
        width=size(part.width),
        length=size(part.length),
        shoulders=Markup("") if between is None else size(between),
        is_rounded=any(
            makings.shows.rounding(length) for length in (*part.box, between) if length is not None
        ),
    )


def shoulders(makings: Makings, part: PartId) -> Length | None:
    """The part's length between shoulders, in mm; None where nothing stands beyond a shoulder."""
    lengths = makings.once("shoulders", "", lambda: _shoulders(makings))
    return lengths.get(part)


def _shoulders(makings: Makings) -> dict[PartId, Length | None]:
    groups = makings.worked[CUT_LIST].groups
    return {row.part: row.shoulder_length for group in groups for row in group.rows}


def stock_words(stock: Stock) -> str:
    """What to take from the rack, in a few words: `Black cherry, flat sawn, 4/4`."""
    said = [stock.name, stock.species if stock.species.lower() != stock.name.lower() else ""]
    said += [f"{stock.sawn} sawn" if stock.sawn else "", f"bought as {stock.buy}" if stock.buy else ""]
    return ", ".join(word for word in said if word)


def part_page(makings: Makings, part: Part) -> PartPage:
    """Its own page's record, which the paper edition shows too."""
    return makings.once("part page", part.id, lambda: _page(makings, part))


def _page(makings: Makings, part: Part) -> PartPage:
    sizes = _sizes(makings, part)
    cuts = tuple(_cut(makings, cut) for cut in part.cuts)
    return PartPage(
        shell=Shell("part", f"parts/{part.id}.html", part.name),
        id=part.id,
        name=part.name,
        count=part.count,
        marks=part.marks,
        stock=stock_words(makings.plan.stock[part.stock]),
        purpose=part.purpose,
        shows=part.shows,
        glued_up=part.glued_up,
        note=part.note,
        picture=drawn(makings.drawings.part(part.id)),
        sizes=sizes,
        cuts=cuts,
        is_rounded=any(size.rounding for size in (*sizes, *(size for cut in cuts for size in cut.sizes))),
        steps=tuple(makings.step_link(step) for step in makings.worked[TOUCHED].steps.get(part.id, ())),
        weight=part_weight(makings, part.id),
        moves=moves_shown(makings, part.id),
        carries=carries_shown(makings, part.id),
    )


def _sizes(makings: Makings, part: Part) -> tuple[NamedSize, ...]:
    between = shoulders(makings, part.id)
    lengths = [
        ("Thickness", part.thickness, part.follows.get("thickness", ())),
        ("Width", part.width, part.follows.get("width", ())),
        ("Length", part.length, part.follows.get("length", ())),
    ]
    if between is not None:
        lengths.append(("Between shoulders", between, ()))
    return tuple(named_size(makings, name, length, follows) for name, length, follows in lengths)


def named_size(makings: Makings, name: str, length: Length, follows: tuple[SizeName, ...]) -> NamedSize:
    return NamedSize(name, makings.shows.size(length), makings.shows.rounding(length), follows)


def _cut(makings: Makings, cut: Cut) -> CutShown:
    sizes = tuple(
        named_size(makings, size_words(cut, size.name), size.length, size.sizes) for size in cut.sizes
    )
    return CutShown(cut.name, cut.where, sizes, cut.note)
