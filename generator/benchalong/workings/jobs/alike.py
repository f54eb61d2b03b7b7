"""Which cuts of a shape are one task: alike in everything but where they are.

Two cuts that a half turn of the part brings onto each other are made at one setting whatever the tool:
tongues at both ends, rabbets along both edges. Holes, gains, fingers and tails are laid out by pencil or
jig, so where they are is no setting either, and those of one joint go together.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.flips import HALF_TURNS
from benchalong.plan.model import Cut, Part, Plan, Shape
from benchalong.plan.shapes import key_of

LAID_OUT = ("hinge", "slide", "stay", "box joint", "dovetail")
"""Kinds of joint whose cuts are laid out, each set in one go."""
NOT_IN_SLUG = re.compile(r"[^a-z0-9_]+")


@dataclass(frozen=True)
class Alike:
    """Cuts of one shape that are one task."""

    shape: Shape
    part: Part
    numbers: tuple[int, ...]
    """Their places among the shape's cuts."""
    cuts: tuple[Cut, ...]
    what: str
    """For the id: the joint, or the cut's own name; numbered where several are called so."""

    @property
    def cut(self) -> Cut:
        return self.cuts[0]


def alike_cuts(plan: Plan, shape: Shape) -> tuple[Alike, ...]:
    """Every cut of the shape in exactly one of them, in the order of its cuts."""
    part = plan.parts[shape.part]
    groups: list[list[int]] = []
    for number, cut in enumerate(shape.cuts):
        same = (group for group in groups if is_alike(plan, part, shape.cuts[group[0]], cut))
        group = next(same, None)
        if group is None:
            groups.append([number])
        else:
            group.append(number)
    names = list(_names([shape.cuts[group[0]] for group in groups]))
    return tuple(
        Alike(shape, part, tuple(group), tuple(shape.cuts[n] for n in group), name)
        for group, name in zip(groups, names, strict=True)
    )


def is_alike(plan: Plan, part: Part, one: Cut, other: Cut) -> bool:
    if (one.kind, one.joint, one.hardware, one.name) != (other.kind, other.joint, other.hardware, other.name):
        return False
    if one.joint and plan.joints[one.joint].kind in LAID_OUT:
        return True
    if one.kind == "hole":
        return _bore(one) == _bore(other)
    return any(key_of((one,), part.box, turn) == key_of((other,)) for turn in HALF_TURNS)


def _bore(cut: Cut) -> tuple[object, ...]:
    sizes = {size.name: size.length for size in cut.sizes}
    return (sizes.get("diameter"), sizes.get("depth"), SURFACES[cut.surfaces[0]].inward)


def _names(cuts: list[Cut]) -> Iterator[str]:
    """Joint, hardware or own name; the kind too where one gives several; a number where that isn't enough."""
    kinds: dict[str, set[str]] = {}
    for cut in cuts:
        kinds.setdefault(given_by(cut), set()).add(cut.kind)
    called = []
    for cut in cuts:
        name = given_by(cut)
        called.append(slug(name) + (f"/{cut.kind}" if len(kinds[name]) > 1 else ""))
    many, seen = Counter(called), Counter[str]()
    for name in called:
        seen[name] += 1
        yield f"{name}/{seen[name]}" if many[name] > 1 else name


def given_by(cut: Cut) -> str:
    return cut.joint or cut.hardware or cut.name


def slug(name: str) -> str:
    """A name as it stands in an id: small letters, digits, hyphens, underscores."""
    return NOT_IN_SLUG.sub("-", name.lower()).strip("-") or "cut"
