"""Rules on a part by itself: its wood, its size, and its cuts in turn."""

from __future__ import annotations

from benchalong.workings.jobs.cutting import RECEIVES
from benchalong.workings.jobs.index import Found, Index
from benchalong.workings.jobs.model import DUE, Need
from benchalong.workings.jobs.wood import is_milled_late

FITTED_TO: dict[tuple[str, str], tuple[str, DUE]] = {
    ("groove", "tongue"): ("a tongue can be shaved to fit its groove, never the other way round", "must"),
    ("mortise", "tenon"): ("the tenon is fitted to the mortise", "should"),
    ("dado", "notch"): ("the notch is marked from the end of the dado", "should"),
    ("taper", "slot"): ("the slot is cut into the sloping face", "must"),
    ("groove", "tenon"): ("the tenon is fitted to the groove", "should"),
}
"""By what receives and what enters of one joint: why the one comes first."""


def wood(index: Index) -> Found:
    """Rough cut, then milled, then sawn to size; boards glued to panels in between."""
    plan = index.facts.plan
    for name in index.facts.sawn:
        part, late = plan.parts[name], is_milled_late(index.facts, plan.parts[name])
        sizing = tuple(index.there(f"rip/{name}", f"crosscut/{name}"))
        rough, mill, boards, flush = (
            f"rough-cut/{name}", f"mill/{name}", f"glue-up/{name}", f"flush/{name}"
        )  # fmt: skip
        chosen = "which board a part comes from is chosen before boards are cut up"
        yield rough, Need(f"choose-and-mark/{name}", chosen, "marks", "should")
        for later in (mill, boards, *sizing):
            yield later, Need(rough, "long boards are cut up before they are worked", "wood")
        if part.glued_up:
            yield flush, Need(boards, "there is nothing to plane flush before", "wood")
            if late:
                yield mill, Need(boards, "its leaves are planed thin as one", "wood", "should")
                yield mill, Need(flush, "its joints are planed flush first", "wood", "should")
            else:
                yield (
                    boards,
                    Need(mill, "edges are glued when they are straight and square", "wood", "should"),
                )
        for later in sizing:
            yield later, Need(mill, "a fence needs a straight edge and a flat face", "wood")
            if part.glued_up:
                yield later, Need(boards, "a panel is sawn to size when it has been glued", "wood")
                yield later, Need(flush, "it lies flat on the saw only when it is flush", "wood", "should")
        yield (
            f"crosscut/{name}",
            Need(f"rip/{name}", "ends are sawn square to a finished edge", "wood", "should"),
        )


def size(index: Index) -> Found:
    """A part has its size before anything is cut in it, and its marks."""
    for part, cuts in index.cuts.items():
        for task in cuts:
            for first in index.sized(part):
                yield task.id, Need(first, "cuts are measured from its finished ends and edges", "size")
            why = "a cut on the wrong side can't be taken back; the marks say which is which"
            yield task.id, Need(f"choose-and-mark/{part}", why, "marks")


def fit(index: Index) -> Found:
    """Within a joint: what receives before what enters; a panel after the grooves it floats in."""
    for joint, tasks in index.cuts_by_joint.items():
        for first in tasks:
            for then in tasks:
                reason = FITTED_TO.get((first.cuts[0].kind, then.cuts[0].kind))
                if reason:
                    yield then.id, Need(first.id, reason[0], "fit", reason[1])
        grooves = [task for task in tasks if task.cuts[0].kind in RECEIVES]
        for part in index.facts.plan.joints[joint].floats:
            for groove in grooves:
                for sizing in index.there(f"mill/{part}", f"rip/{part}", f"crosscut/{part}"):
                    why = "a panel is fitted to its grooves, last"
                    yield sizing, Need(groove.id, why, "fit", "should")


def test(index: Index) -> Found:
    """Scrap first. What enters is tried in what was cut for it."""
    for task in tuple(index.by_id.values()):
        if task.kind != "test piece":
            continue
        kind = task.id.rpartition("/")[2]
        for cut in index.cuts_by_joint[task.joint]:
            if cut.cuts[0].kind == kind:
                yield (
                    cut.id,
                    Need(task.id, "the setting is tried in scrap before it is trusted", "test", "should"),
                )
                why = "a test piece is milled with the parts, or it isn't as thick as they are"
                yield task.id, Need(f"mill/{cut.parts[0]}", why, "test")
            reason = FITTED_TO.get((cut.cuts[0].kind, kind))
            if reason:
                yield task.id, Need(cut.id, reason[0], "fit", "should")


test.__test__ = False  # type: ignore[attr-defined]
