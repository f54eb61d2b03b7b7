"""The page of named sizes: each formula as typed, and what comes of it."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup, escape

from benchalong.ground.shown import decimal
from benchalong.pages.joint import JointSize, joint_sizes
from benchalong.pages.makings import Makings
from benchalong.pages.shell import Link, Shell
from benchalong.plan.model import Size, SizeName
from benchalong.plan.quantity import Quantity
from benchalong.plan.tree import names_in


@dataclass(frozen=True)
class SizeLine:
    name: SizeName
    typed: str
    """The formula, as the author typed it."""
    value: Markup
    rounding: Markup
    follows: tuple[SizeName, ...]
    """Other named sizes it follows from; each has its own line on this page."""
    from_joints: tuple[str, ...]
    """The joints' own sizes that its formula names: `frame.depth`."""
    note: str
    is_given: bool
    """Whether it stands by itself, and is not worked out from others."""


@dataclass(frozen=True)
class SizesOfJoint:
    joint: Link
    kind: str
    sizes: tuple[JointSize, ...]


@dataclass(frozen=True)
class SizesPage:
    shell: Shell
    sizes: tuple[SizeLine, ...]
    joints: tuple[SizesOfJoint, ...]
    is_rounded: bool


def sizes_page(makings: Makings) -> SizesPage:
    lines = sizes_shown(makings)
    joints = sizes_of_joints(makings)
    roundings = [line.rounding for line in lines]
    roundings += [size.rounding for joint in joints for size in joint.sizes]
    return SizesPage(Shell("sizes", "sizes.html", "Sizes"), lines, joints, any(roundings))


def sizes_of_joints(makings: Makings) -> tuple[SizesOfJoint, ...]:
    return tuple(
        SizesOfJoint(makings.joint_link(joint), joint.kind, sizes)
        for joint in makings.plan.joints.values()
        if (sizes := joint_sizes(makings, joint))
    )


def sizes_shown(makings: Makings) -> tuple[SizeLine, ...]:
    return makings.once(
        "sizes", "", lambda: tuple(_line(makings, size) for size in makings.plan.sizes.values())
    )


def _line(makings: Makings, size: Size) -> SizeLine:
    value, rounding = _value(makings, size.value)
    follows = tuple(name for name in size.follows if name in makings.plan.sizes)
    known = {shown.name for joint in makings.plan.joints.values() for shown in joint_sizes(makings, joint)}
    named = dict.fromkeys(name.name for name in names_in(size.formula))
    from_joints = tuple(name for name in named if name in known)
    is_given = not (size.follows or from_joints)
    return SizeLine(size.name, size.typed, value, rounding, follows, from_joints, size.note, is_given)


def _value(makings: Makings, value: Quantity) -> tuple[Markup, Markup]:
    if value.dimension == 1:
        return makings.shows.size(value.value), makings.shows.rounding(value.value)
    return Markup(escape(decimal(value.value, 4))), Markup("")
