"""A part's page, and the line other pages give a part."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.pages.boards import boards_of
from benchalong.pages.cuts import CutShown, NamedSize, cuts_shown
from benchalong.pages.findings import FindingLine, found_about_part
from benchalong.pages.fitted import FittedShown, fitted_shown
from benchalong.pages.makings import Makings, drawn, marks_in_short
from benchalong.pages.rough import BlankShown, blanks_of_part
from benchalong.pages.setups import setups_of_part
from benchalong.pages.shell import Link, Shell
from benchalong.pages.stock import stock_words
from benchalong.pages.triangles import triangles_on
from benchalong.pages.turned import turned_words
from benchalong.pages.wood import CarriesShown, MovesShown, carries_shown, moves_shown, part_weight
from benchalong.plan.model import Part, PartId, Shape, SizeName
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.touched import TOUCHED


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
class HandLine:
    """One of several kinds that a part is made in."""

    hand: str
    """`Left hand`, `Kind 2 of 3`."""
    count: int
    marks: str


@dataclass(frozen=True)
class ShapeShown:
    """A part as it is made: with the cuts of these copies."""

    id: str
    hand: str
    """`Left hand`; empty where all copies are alike."""
    marks: tuple[str, ...]
    turned: tuple[str, ...]
    """What is to be said of copies that are turned to stand in their place."""
    picture: Markup
    triangle: tuple[str, ...]
    """Which piece of the triangle on its set each copy carries."""
    cuts: tuple[CutShown, ...]


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
    sizes: tuple[NamedSize, ...]
    shapes: tuple[ShapeShown, ...]
    """One, or several where copies differ in their cuts; a hand's mirror image is one of its own."""
    are_hands: bool
    """Whether they are a left and a right hand."""
    joints: tuple[Link, ...]
    """The joints it takes part in."""
    findings: tuple[FindingLine, ...]
    is_rounded: bool
    """Whether any of its sizes is shown rounded."""
    steps: tuple[Link, ...]
    """The steps that touch it, in the order of work."""
    boards: tuple[Link, ...]
    """What it is cut from."""
    setups: tuple[Link, ...]
    """The setups it goes over, in the order of work."""
    weight: Markup
    """Of one copy; empty when it isn't known."""
    moves: MovesShown | None
    carries: CarriesShown | None
    blanks: tuple[BlankShown, ...]
    """What is cut out for it first."""
    fitted: FittedShown | None
    """Where it gets its final size at the bench."""


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


def part_page(makings: Makings, part: Part) -> PartPage:
    """Its own page's record, which the paper edition shows too."""
    return makings.once("part page", part.id, lambda: _page(makings, part))


def _page(makings: Makings, part: Part) -> PartPage:
    sizes = _sizes(makings, part)
    shapes = _shapes(makings, part)
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
        sizes=sizes,
        shapes=shapes,
        are_hands=any(shape.hand for shape in makings.shapes[part.id]),
        joints=tuple(makings.joint_link(joint) for joint in makings.joints_of((part.id,))),
        findings=found_about_part(makings, part.id),
        is_rounded=any(size.rounding for size in sizes)
        or any(cut.is_rounded for shape in shapes for cut in shape.cuts),
        steps=tuple(makings.step_link(step) for step in makings.worked[TOUCHED].steps.get(part.id, ())),
        setups=setups_of_part(makings, part.id),
        boards=boards_of(makings, part.id),
        weight=part_weight(makings, part.id),
        moves=moves_shown(makings, part.id),
        carries=carries_shown(makings, part.id),
        blanks=blanks_of_part(makings, part.id),
        fitted=fitted_shown(makings, part.id),
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


def hands_of(makings: Makings, part: PartId) -> tuple[HandLine, ...]:
    """The kinds that a part is made in; none where all copies are alike."""
    shapes = makings.shapes[part]
    if len(shapes) == 1:
        return ()
    return tuple(
        HandLine(hand_words(shape, number, len(shapes)), len(shape.marks), marks_in_short(shape.marks))
        for number, shape in enumerate(shapes, start=1)
    )


def hand_words(shape: Shape, number: int, of: int) -> str:
    """`Left hand`, `Kind 2 of 3`; nothing where there is one."""
    if shape.hand:
        return f"{shape.hand.capitalize()} hand"
    return f"Kind {number} of {of}" if of > 1 else ""


def _shapes(makings: Makings, part: Part) -> tuple[ShapeShown, ...]:
    shapes = makings.shapes[part.id]
    return tuple(
        ShapeShown(
            id=shape.id,
            hand=hand_words(shape, number, len(shapes)),
            marks=shape.marks,
            turned=turned_words(makings, shape),
            picture=drawn(makings.drawings.part(shape.id)),
            triangle=triangles_on(makings, shape),
            cuts=cuts_shown(makings, shape.cuts),
        )
        for number, shape in enumerate(shapes, start=1)
    )
