"""Tasks that cut a shape: its own cuts and its joints', each in one task; and the test pieces before them."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.words import the
from benchalong.plan.model import Cut, Part, Shape
from benchalong.workings.jobs.alike import Alike
from benchalong.workings.jobs.bonds import MOVING
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.jobs.model import CutOf, Task

RECEIVES = ("groove", "dado", "rabbet", "mortise", "slot")
"""Cuts that something goes into: these come first, and are tried with what goes in."""
TRIED = (*RECEIVES, "tongue", "tenon")
"""Cuts that are tried in scrap before they are made."""
PLACES = ("at", "from", "to", "across")
"""Sizes that say where a cut is; those of alike cuts differ."""


def cut_tasks(facts: Facts) -> Iterator[Task]:
    """What receives first, so that a list in this order could be worked down."""
    tasks = [_cut(facts, alike) for shape in facts.plan.shapes for alike in facts.alike[shape]]
    yield from sorted(tasks, key=lambda task: rank(task.cuts[0].kind))


def rank(kind: str) -> int:
    return 0 if kind in RECEIVES else 1 if kind in ("tongue", "tenon", "notch") else 2


def _cut(facts: Facts, alike: Alike) -> Task:
    cut, shape, part = alike.cut, alike.shape, alike.part
    is_hole = cut.kind == "hole"
    cuts = tuple(
        CutOf(shape.id, number, each.kind, each.name, each.surfaces)
        for number, each in zip(alike.numbers, alike.cuts, strict=True)
    )
    return Task(
        id=f"{'drill' if is_hole else 'cut'}/{shape.id}/{alike.what}",
        kind="drill" if is_hole else "cut",
        title=_title(facts, alike),
        called=_called(facts, cut.kind, cut.joint, cut.hardware),
        parts=(part.id,),
        marks=shape.marks,
        count=count_of(part, shape),
        shape=shape.id,
        joint=cut.joint,
        hardware=cut.hardware,
        cuts=cuts,
        sizes=tuple(
            (size.name, size.length) for size in cut.sizes if len(cuts) == 1 or size.name not in PLACES
        ),
    )


def _called(facts: Facts, kind: str, joint: str, hardware: str) -> tuple[str, ...]:
    """A gain or a hole for hardware may be meant by fitting the hardware, an outline's straight sides by
    sawing to size."""
    words = ["drill", "cut"] if kind == "hole" else ["cut"]
    if hardware or (joint and facts.plan.joints[joint].words.get("hardware")):
        words.append("fit hardware")
    return tuple(words)


def count_of(part: Part, shape: Shape) -> int:
    """How many copies have this shape; all of the part's where none is placed."""
    return len(shape.marks) or (part.count if shape.id == part.id else 0)


def called_shape(part: Part, shape: Shape) -> str:
    return f"{the(part.name)}, {shape.hand} hand" if shape.hand else the(part.name)


def _title(facts: Facts, alike: Alike) -> str:
    name = _cut_name(facts, alike)
    verb = "Drill" if alike.cut.kind == "hole" else "Cut"
    number = alike.what.rpartition("/")[2]
    which = f" ({number})" if number.isdigit() else ""
    return f"{verb} the {name}{which} in {called_shape(alike.part, alike.shape)}"


def _cut_name(facts: Facts, alike: Alike) -> str:
    """`gain for the hinge`, `tongue of the door frame`, `hole for the Knob`, `shelf dado`."""
    called = _kind_called(facts, alike)
    cut = alike.cut
    if cut.hardware:
        return f"{called} for {the(facts.plan.hardware[cut.hardware].name)}"
    if not cut.joint:
        return cut.name
    joint = facts.plan.joints[cut.joint].name
    link = "for" if _moves(facts, cut) else "of"
    if cut.name != joint:
        return f"{cut.name} {link} the {joint}"
    is_told = called in cut.name and " and " not in cut.name
    return cut.name if is_told else f"{called} {link} the {joint}"


def _kind_called(facts: Facts, alike: Alike) -> str:
    """What the trade calls it in its joint: gain, pins, tails, fingers; else its kind."""
    cut = alike.cut
    joint = facts.plan.joints.get(cut.joint)
    if joint is not None and joint.kind == "dovetail":
        return "pins" if any(m.cut_in.part == alike.part.id for m in joint.meetings) else "tails"
    if joint is not None and joint.kind == "box joint":
        return "fingers"
    return "gain" if cut.kind == "mortise" and (cut.hardware or _moves(facts, cut)) else cut.kind


def _moves(facts: Facts, cut: Cut) -> bool:
    return bool(cut.joint) and facts.plan.joints[cut.joint].kind in MOVING


def test_tasks(facts: Facts) -> Iterator[Task]:
    """One for each kind of cut that a joint gives, whatever shapes it is in."""
    found: dict[tuple[str, str], list[Alike]] = {}
    for shape in facts.plan.shapes:
        for alike in facts.alike[shape]:
            if alike.cut.joint and alike.cut.kind in TRIED and _is_tried(facts, alike):
                found.setdefault((alike.cut.joint, alike.cut.kind), []).append(alike)
    for (joint, kind), alikes in sorted(found.items(), key=lambda each: rank(each[0][1])):
        yield _test(facts, joint, kind, alikes)


def _is_tried(facts: Facts, alike: Alike) -> bool:
    """Gains are cut to the hardware in hand."""
    return facts.plan.joints[alike.cut.joint].kind not in ("hinge", "slide", "stay")


def _test(facts: Facts, joint: str, kind: str, alikes: list[Alike]) -> Task:
    name = facts.plan.joints[joint].name
    cut_in = {alike.part.id for alike in alikes}
    partners = {
        meeting.takes.part
        for meeting in facts.plan.joints[joint].meetings
        if meeting.takes and meeting.cut_in.part in cut_in
    }
    tried = cut_in | (partners if kind in RECEIVES else set())
    return Task(
        id=f"test-piece/{joint}/{kind}",
        kind="test piece",
        title=f"Try the {name} in scrap" if kind in name else f"Try the {kind} of the {name} in scrap",
        called=("test piece",),
        parts=tuple(part for part in facts.plan.parts if part in tried),
        joint=joint,
        usual=True,
        shape=alikes[0].shape.id,
    )


test_tasks.__test__ = False  # type: ignore[attr-defined]
