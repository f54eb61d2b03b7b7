"""The first pass: every name of the plan's arithmetic, worked out after those it hangs on.

A name that can't be worked out is reported once, where it stands, and silently takes along whatever
follows from it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from benchalong.ground.marks import Path, Place
from benchalong.plan.circles import in_order, shortened
from benchalong.plan.draft import SECTIONS, Draft, Known
from benchalong.plan.formula import FUNCTIONS, parse
from benchalong.plan.hardware.sizes import from_hardware, sizes_of_hardware
from benchalong.plan.joints.named import part_called
from benchalong.plan.joints.sides import split_side
from benchalong.plan.joints.sizes import JOINT_SIZES, SLOPES
from benchalong.plan.play import BY_MOVEMENT, FITS, SIDE_PLAY, is_by_movement
from benchalong.plan.quantity import Quantity
from benchalong.plan.reckoning import Reckoning, followed, sections_of
from benchalong.plan.refused import Refused, Unnamed
from benchalong.plan.tree import Name, Tree, names_in
from benchalong.plan.unknown import ONE_OF, Directory
from benchalong.reading.written import PROJECT_FILE, Joint, Part, Project, Stock
from benchalong.trade.species import woods

BETWEEN = re.compile(r"between +([A-Za-z]\S*)(?: +and +([A-Za-z]\S*))?\s*\Z")
"""`between side`: the clear opening where it stands; two marks may be said as well."""
THICK_IN = {"tongue and groove": "{0}.tongue_width", "dado": "{0}.width - 2*{0}.play"}
"""What fits into a joint is so thick."""
NO_SIZE = (None, "centred")
"""What stands for a joint's size and is none."""
_MISSING = "?"
"""In place of a part that isn't there; that is said where it is named."""

MOST_SIZES = 3000
"""Named sizes; each knows all it follows from, which grows with their square."""


@dataclass(frozen=True)
class Defined:
    """A name and the formula that stands for it."""

    name: str
    text: str | None
    """None when there is no formula to be read."""
    path: Path
    is_length: bool
    """Whether it must be one; a named size may be a pure number."""


def work_out_names(draft: Draft) -> Draft:
    """Adds `names`."""
    if len(draft.written.sizes) > MOST_SIZES:
        return _refuse_too_many(draft)
    defined = {entry.name: entry for entry in _definitions(draft)}
    sums = Reckoning(draft, Directory(defined.keys(), sections_of(draft)))
    _report_clashes(sums)
    trees = {name: _tree(entry, sums) for name, entry in defined.items()}
    uses = {name: tuple(used.name for used in names_in(tree)) if tree else () for name, tree in trees.items()}
    ordered = in_order(uses)
    circling = {name for circle in ordered.circles for name in circle}
    for circle in ordered.circles:
        _report_circle(circle, defined[circle[0]], trees[circle[0]], sums)
    names: dict[str, Known] = {}
    sums.draft = replace(draft, names=names)
    for name in ordered.order:
        names[name] = _known(defined[name], trees[name], sums, circles=name in circling)
    return sums.done(names={name: names[name] for name in defined})


def _refuse_too_many(draft: Draft) -> Draft:
    sums = Reckoning(draft)
    message = f"there are {len(draft.written.sizes)} sizes"
    sums.say(Place((PROJECT_FILE, "sizes")).key(), message, f"at most {MOST_SIZES}")
    return sums.done(names={entry.name: Known(None) for entry in _definitions(draft)})


def _definitions(draft: Draft) -> Iterator[Defined]:
    project = draft.written
    for name, size in project.sizes.items():
        yield Defined(name, size.formula, (PROJECT_FILE, "sizes", name), is_length=False)
    for name, stock in project.stock.items():
        yield Defined(f"{name}.thickness", *_stock_thickness(name, stock), is_length=True)
    for name, part in project.parts.items():
        path: Path = (PROJECT_FILE, "parts", name)
        yield Defined(f"{name}.width", part.width, (*path, "width"), is_length=True)
        yield Defined(f"{name}.length", part.length, (*path, "length"), is_length=True)
        yield Defined(
            f"{name}.thickness", _part_thickness(part, project), (*path, "thickness"), is_length=True
        )
    for name, thing in project.hardware.items():
        for key, text in sizes_of_hardware(name, thing, project).items():
            yield Defined(f"{name}.{key}", text, (PROJECT_FILE, "hardware", name, key), is_length=True)
    for name, joint in project.joints.items():
        yield from _sizes_of_joint(name, joint, project)


def _sizes_of_joint(name: str, joint: Joint, project: Project) -> Iterator[Defined]:
    """What is written, else what it comes to by default; nothing where it may be left out."""
    parts = {key: _first_part(getattr(joint, key), project) for key in ("cut_in", "takes")}
    is_soft = any(_is_softwood(part, project) for part in (parts["cut_in"], parts["takes"]))
    parts["into"], parts["slope"] = f"{parts['cut_in']}.{_into(joint)}", SLOPES[is_soft]
    for key, any_size in JOINT_SIZES.get(joint.kind, {}).items():
        size = any_size.said(joint.words.values())
        typed = joint.sizes.get(key)
        default = size.inch if project.units == "inch" or not size.millimetre else size.millimetre
        default = from_hardware(joint, key, project) or default
        if typed in NO_SIZE and not default and not size.is_required:
            continue
        text = default.format(joint=name, **parts) if typed in NO_SIZE else typed
        if key == SIDE_PLAY and is_by_movement(name, joint, project):
            typed = text = BY_MOVEMENT
        is_known = bool(text) and (text == typed or _MISSING not in text)
        yield Defined(
            f"{name}.{key}",
            text if is_known else None,
            (PROJECT_FILE, "joints", name, key),
            is_length=size.is_length,
        )


def _first_part(sides: tuple[str, ...], project: Project) -> str:
    found = (part_called(split_side(side)[0], project) for side in sides)
    return next((part for part in found if part), _MISSING)


def _is_softwood(part: str, project: Project) -> bool:
    """Whether it is of a wood known to be a conifer's."""
    stock = project.stock.get(project.parts[part].stock) if part in project.parts else None
    species = woods().find(stock.species) if stock and stock.species else None
    return species is not None and species.is_softwood


def _into(joint: Joint) -> str:
    """What a part measures into the wood under the side that a joint cuts."""
    side = next((side for _, side in map(split_side, joint.cut_in)), "")
    nouns = {"edge": "width", "edges": "width", "end": "length", "ends": "length"}
    return next((nouns[word] for word in side.split() if word in nouns), "thickness")


def _stock_thickness(name: str, stock: Stock) -> tuple[str | None, Path]:
    """What was measured wins over what it is called."""
    key = "thickness" if stock.measured is None else "measured"
    return stock.thickness if stock.measured is None else stock.measured, (PROJECT_FILE, "stock", name, key)


def _part_thickness(part: Part, project: Project) -> str | None:
    """Its own, that of the joint it fits, or else its stock's."""
    if part.thickness is None:
        return f"{part.stock}.thickness" if part.stock in project.stock else None
    fits = FITS.match(part.thickness)
    joint = project.joints.get(fits[1]) if fits else None
    if fits is None or joint is None or joint.kind not in THICK_IN:
        return part.thickness
    return THICK_IN[joint.kind].format(fits[1])


def is_measured(text: str) -> bool:
    """Whether it is no formula: a size that is measured where the part stands."""
    return text == BY_MOVEMENT or bool(FITS.match(text) or BETWEEN.match(text))


def _tree(entry: Defined, sums: Reckoning) -> Tree | None:
    if entry.text is None or is_measured(entry.text) or sums.draft.is_lost(*entry.path):
        return None
    try:
        return parse(entry.text)
    except Refused as refused:
        told = sums.directory.explain(refused) if isinstance(refused, Unnamed) else refused
        sums.found.append(told.problem(entry.path))
        return None


def _known(entry: Defined, tree: Tree | None, sums: Reckoning, *, circles: bool) -> Known:
    if tree is None or entry.text is None:
        return sums.draft.fitted.get(entry.name, Known(None))
    if circles:
        sums.knows_names_in(tree, entry.text, entry.path)
        return Known(None)
    follows = followed(tree, sums.draft)
    if entry.is_length:
        length = sums.length(entry.text, entry.path)
        return Known(None if length is None else Quantity(length, 1), follows)
    value = sums.quantity(entry.text, entry.path)
    if value is not None and value.dimension not in (0, 1):
        sums.found.append(
            Refused(f"this comes to {value.called}", tree.span, "a length or a pure number").problem(
                entry.path
            )
        )
        value = None
    return Known(value, follows)


def _report_circle(circle: tuple[str, ...], first: Defined, tree: Tree | None, sums: Reckoning) -> None:
    following = circle[1] if len(circle) > 1 else circle[0]
    used = next((name for name in names_in(tree) if name.name == following), Name("")) if tree else Name("")
    around = " -> ".join(shortened((*circle, circle[0])))
    sums.say(
        Place(first.path, start=used.span[0], end=used.span[1]),
        f"{circle[0]} follows from itself: {around}",
        "a way to work it out that doesn't come back",
    )


def _report_clashes(sums: Reckoning) -> None:
    """One name space: what is defined in two sections, and names that mean something else in arithmetic."""
    first: dict[str, str] = {}
    for section in SECTIONS:
        for name in getattr(sums.draft.written, section):
            place = Place((PROJECT_FILE, section, name)).key()
            if name in first:
                sums.say(place, f"{name} is already {ONE_OF[first[name]]}", "a name that nothing else has")
            elif section == "sizes" and name in FUNCTIONS:
                sums.say(place, f"{name} is a word of the arithmetic", "another name")
            first.setdefault(name, section)
