"""Cuts in words: a part's on its own page, a joint's on its page.

Cuts that differ in one size only, such as the dadoes of several shelves, are told as one, as a woodworker
would: what is set once stands once, then where each goes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.pages.cut_words import size_words
from benchalong.pages.makings import Makings
from benchalong.pages.shell import Link
from benchalong.plan.model import Cut, CutSize, Joint, SizeName
from benchalong.trade.joints import CUTS


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
class SizeOfCuts:
    """One size of cuts that are told together."""

    name: str
    values: tuple[NamedSize, ...]
    """One, or one for each cut in their order where they differ."""


@dataclass(frozen=True)
class CutShown:
    name: str
    count: int
    """How many cuts are told here."""
    where: str
    sizes: tuple[SizeOfCuts, ...]
    note: str
    joint: Link | None
    """The joint that gives it; None for a cut of the part's own."""

    @property
    def is_rounded(self) -> bool:
        """Whether any of its sizes is shown rounded."""
        return any(each.rounding for size in self.sizes for each in size.values)


def cuts_shown(makings: Makings, cuts: Sequence[Cut]) -> tuple[CutShown, ...]:
    return tuple(_shown(makings, alike) for alike in told_together(cuts))


def told_together(cuts: Sequence[Cut]) -> Iterator[tuple[Cut, ...]]:
    """Cuts that follow one another and differ in one size at most, the same one throughout."""
    group: tuple[Cut, ...] = ()
    for cut in cuts:
        if group and not _is_one_more(group, cut):
            yield group
            group = ()
        group = (*group, cut)
    if group:
        yield group


def _is_one_more(group: tuple[Cut, ...], cut: Cut) -> bool:
    return _kind(group[0]) == _kind(cut) and len(_differing((*group, cut))) <= 1


def _kind(cut: Cut) -> tuple[object, ...]:
    return (cut.kind, cut.name, cut.where, cut.note, cut.joint, tuple(size.name for size in cut.sizes))


def _differing(cuts: Sequence[Cut]) -> list[str]:
    """The sizes by which cuts of one kind differ."""
    each = zip(*(cut.sizes for cut in cuts), strict=True)
    return [sizes[0].name for sizes in each if len({size.length for size in sizes}) > 1]


def _shown(makings: Makings, alike: Sequence[Cut]) -> CutShown:
    """A joint's cut goes by its kind, unless the joint has a name for it: the joint itself is told beside."""
    first, differing = alike[0], _differing(alike)
    sizes = tuple(
        SizeOfCuts(
            size_words(first, of_each[0].name),
            tuple(
                cut_size(makings, first, one)
                for one in (of_each if of_each[0].name in differing else of_each[:1])
            ),
        )
        for of_each in zip(*(cut.sizes for cut in alike), strict=True)
    )
    joint = makings.plan.joints.get(first.joint)
    name = _cut_name(joint, first) if joint else first.name
    link = makings.joint_link(joint) if joint else None
    return CutShown(name, len(alike), first.where, sizes, first.note, link)


def cut_size(makings: Makings, cut: Cut, size: CutSize) -> NamedSize:
    """A hole's diameter is what a drill is chosen by, so it is shown as finely as drills come."""
    shows, words = makings.shows, size_words(cut, size.name)
    if size.name == "diameter":
        return NamedSize(words, shows.hole(size.length), shows.hole_rounding(size.length), size.sizes)
    return NamedSize(words, shows.size(size.length), shows.rounding(size.length), size.sizes)


def _cut_name(joint: Joint, cut: Cut) -> str:
    """What it is called; a joint that has no word of its own for it hands on its name."""
    if cut.name not in (joint.name, joint.id.replace("_", " ")):
        return cut.name.capitalize()
    return CUTS.get((joint.kind, cut.kind)) or cut.kind.capitalize()
