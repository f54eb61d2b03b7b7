"""A joint's page: what it is, what it joins, its sizes by name, what each side loses; and the short form
in which other pages show a joint."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup, escape

from benchalong.drawing.alt import listed
from benchalong.ground.shown import decimal
from benchalong.pages.cuts import CutShown, NamedSize, cuts_shown
from benchalong.pages.findings import FindingLine, found_about_joint
from benchalong.pages.joints_of_step import steps_of_joint
from benchalong.pages.makings import Makings, joint_name, marks_in_short
from benchalong.pages.part import hand_words, named_size
from benchalong.pages.play import PlayLine, play_of
from benchalong.pages.shell import Link, Shell
from benchalong.pages.shown import either
from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.plan.model import CutSize, Joint, Meeting, PartId, Shape, SideOf, Surface
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.joints import FACTS, GLUE, GLUED, KINDS, MOVING, Practice, called, is_told

MOST_PAIRS = 12
"""Copies whose partners are listed; a long row of drawers need not be."""


@dataclass(frozen=True)
class JointSize:
    """One of a joint's own sizes."""

    name: str
    """As formulas name it: `frame.depth`."""
    words: str
    size: Markup
    rounding: Markup
    follows: tuple[str, ...]
    """The named sizes it follows from."""
    source: str
    """Whether the plan gives it, the trade does, or it follows: `the default`."""


@dataclass(frozen=True)
class JoinLine:
    """Two parts that meet in a joint, wherever they do."""

    cut_in: Link
    cut_in_side: str
    verb: str
    takes: Link | None
    takes_side: str
    marks: str
    """Which copies meet: `LD/H with LD/T`."""


@dataclass(frozen=True)
class LossLine:
    """What one side loses by a joint."""

    part: Link
    hand: str
    """For one of several kinds of the part: `Left hand`."""
    marks: str
    cuts: tuple[CutShown, ...]


@dataclass(frozen=True)
class JointLine:
    """A joint where other pages name it."""

    id: str
    link: Link
    kind: str
    parts: tuple[Link, ...]
    sizes: tuple[NamedSize, ...]
    """Those to know at the bench."""
    glue: str
    section: Markup


@dataclass(frozen=True)
class JointPage:
    shell: Shell
    id: str
    name: str
    kind: str
    about: str
    facts: tuple[tuple[str, str], ...]
    """What it says in words, each with its name; glue last, unless it moves."""
    joins: tuple[JoinLine, ...]
    floats: tuple[Link, ...]
    """Parts that lie loose in it."""
    sizes: tuple[JointSize, ...]
    play: tuple[PlayLine, ...]
    section: Markup
    losses: tuple[LossLine, ...]
    note: str
    practice: tuple[Markup, ...]
    findings: tuple[FindingLine, ...]
    steps: tuple[Link, ...]
    """The steps in which it is made, tried or closed, in the order of work."""
    is_rounded: bool


def joint_page(makings: Makings, joint: Joint) -> JointPage:
    sizes = joint_sizes(makings, joint)
    losses = tuple(_losses(makings, joint))
    kind = KINDS[joint.kind]
    return JointPage(
        shell=Shell("joint", f"joints/{joint.id}.html", joint_name(joint)),
        id=joint.id,
        name=joint_name(joint),
        kind=_called(joint),
        about=kind.about,
        facts=tuple(_facts(makings, joint)),
        joins=_joins(makings, joint),
        floats=tuple(makings.part_link(makings.plan.parts[part]) for part in joint.floats),
        sizes=sizes,
        play=play_of(makings, joint),
        section=makings.section(joint),
        losses=losses,
        note=joint.note,
        practice=tuple(_practice(line) for line in kind.practice),
        findings=found_about_joint(makings, joint.id),
        steps=tuple(makings.step_link(step) for step in steps_of_joint(makings, joint)),
        is_rounded=any(size.rounding for size in sizes)
        or any(cut.is_rounded for loss in losses for cut in loss.cuts),
    )


def joint_line(makings: Makings, joint: Joint) -> JointLine:
    return makings.once("joint line", joint.id, lambda: _line(makings, joint))


def _line(makings: Makings, joint: Joint) -> JointLine:
    kind, parts = KINDS[joint.kind], makings.plan.parts
    first = [size for key in kind.first for size in _told(joint) if size.name == key]
    return JointLine(
        id=joint.id,
        link=makings.joint_link(joint),
        kind=_called(joint),
        parts=tuple(makings.part_link(parts[part]) for part in makings.joined[joint.id]),
        sizes=tuple(
            named_size(makings, kind.sizes[size.name], size.length, size.sizes)
            for size in first
            if _is_length(joint, size.name)
        ),
        glue="" if joint.kind in MOVING else GLUED[joint.glue],
        section=makings.section(joint),
    )


def joint_sizes(makings: Makings, joint: Joint) -> tuple[JointSize, ...]:
    """Each with what it is called, in the order in which a person sets them."""
    return makings.once(
        "joint sizes", joint.id, lambda: tuple(_size(makings, joint, size) for size in _told(joint))
    )


def _told(joint: Joint) -> list[CutSize]:
    """The sizes that mean something in this joint."""
    known = {size.name: size for size in joint.sizes}
    order = {**KINDS[joint.kind].sizes, **dict.fromkeys(known, "")}
    return [known[key] for key in order if key in known and is_told(joint.kind, key, joint.has)]


def _called(joint: Joint) -> str:
    return called(joint.kind, joint.words, joint.has)


def _size(makings: Makings, joint: Joint, size: CutSize) -> JointSize:
    if _is_length(joint, size.name):
        shown, rounding = makings.shows.size(size.length), makings.shows.rounding(size.length)
    else:
        shown, rounding = Markup(escape(_ratio(size))), Markup("")
    words = KINDS[joint.kind].sizes.get(size.name) or size.name.replace("_", " ").capitalize()
    return JointSize(
        f"{joint.id}.{size.name}", words, shown, rounding, size.sizes, _source(makings, joint, size.name)
    )


def _is_length(joint: Joint, key: str) -> bool:
    known = JOINT_SIZES[joint.kind].get(key)
    return known is None or known.is_length


def _ratio(size: CutSize) -> str:
    """A slope as it is said: `1 in 8`."""
    return f"1 in {decimal(1 / size.length, 2)}" if 0 < size.length <= 1 else decimal(size.length, 4)


def _source(makings: Makings, joint: Joint, key: str) -> str:
    if (known := JOINT_SIZES[joint.kind].get(key)) and known.is_derived:
        return "follows from the others"
    is_written = (PROJECT_FILE, "joints", joint.id, key) in makings.marks.values
    return "" if is_written else "the default"


def _facts(makings: Makings, joint: Joint) -> list[tuple[str, str]]:
    told = [(name, joint.words[key]) for key, name in FACTS.items() if key in joint.words]
    hardware = makings.plan.hardware
    named = [(name, hardware[word].name if word in hardware else word) for name, word in told]
    return named if joint.kind in MOVING else [*named, ("Glue", GLUE[joint.glue])]


def _practice(line: Practice) -> Markup:
    """In both systems where it names lengths; a style shows the one that belongs to the page."""
    if not line.millimetre:
        return Markup(escape(line.inch))
    return either(line.inch, line.millimetre)


# What meets what


def _joins(makings: Makings, joint: Joint) -> tuple[JoinLine, ...]:
    """One line for each two parts, however often they meet."""
    grouped: dict[tuple[PartId, PartId], list[Meeting]] = {}
    for meeting in joint.meetings:
        key = (meeting.cut_in.part, meeting.takes.part if meeting.takes else "")
        grouped.setdefault(key, []).append(meeting)
    return tuple(_join(makings, joint, meetings) for meetings in grouped.values())


def _join(makings: Makings, joint: Joint, meetings: list[Meeting]) -> JoinLine:
    parts = makings.plan.parts
    cut_in = [meeting.cut_in for meeting in meetings]
    takes = [meeting.takes for meeting in meetings if meeting.takes]
    return JoinLine(
        makings.part_link(parts[cut_in[0].part]),
        _sides(cut_in),
        KINDS[joint.kind].holds,
        makings.part_link(parts[takes[0].part]) if takes else None,
        _sides(takes),
        _pairs(meetings),
    )


def _pairs(meetings: list[Meeting]) -> str:
    """`LD/H with LD/T and LD/B; …`: which copies meet."""
    met: dict[str, dict[str, None]] = {}
    for meeting in meetings:
        met.setdefault(meeting.cut_in.copy, {}).update({meeting.takes.copy: None} if meeting.takes else {})
    said = [f"{mark} with {listed(list(others))}" if others else mark for mark, others in met.items()]
    return "; ".join(said[:MOST_PAIRS]) + (f"; and {len(said) - MOST_PAIRS} more" * (len(said) > MOST_PAIRS))


def _sides(sides: list[SideOf]) -> str:
    """`edge b`, `end a or end b`: which, on the wood itself, differs where copies are turned."""
    return " or ".join(sorted({_surfaces(side.surfaces) for side in sides}))


def _surfaces(surfaces: tuple[Surface, ...]) -> str:
    return " and ".join(surfaces) if len(surfaces) < 2 else f"the arris of {' and '.join(surfaces)}"


# What each side loses


def _losses(makings: Makings, joint: Joint) -> list[LossLine]:
    found = []
    for part in makings.joined[joint.id]:
        shapes = makings.shapes[part]
        for number, shape in enumerate(shapes, start=1):
            cuts = cuts_shown(makings, [cut for cut in shape.cuts if cut.joint == joint.id])
            if cuts:
                found.append(_loss(makings, shape, cuts, hand_words(shape, number, len(shapes))))
    return found


def _loss(makings: Makings, shape: Shape, cuts: tuple[CutShown, ...], hand: str) -> LossLine:
    link = makings.part_link(makings.plan.parts[shape.part])
    return LossLine(link, hand, marks_in_short(shape.marks), cuts)
