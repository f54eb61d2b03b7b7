"""A groove along an edge, and a tongue on what enters it. A panel may float in the same groove."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.plan.joints.families.stops import stopped_run
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side


def groove(joint: Given, side: Side, _: tuple[Side, ...]) -> Iterable[Loss]:
    """The whole run, or stopped short of a side."""
    lengths = {key: joint.sizes[key] for key in ("width", "depth", "across") if key in joint.sizes}
    yield Loss("groove", side.surfaces, {**lengths, **stopped_run(joint, side)})


def tongue(joint: Given, side: Side, _: tuple[Side, ...]) -> Iterable[Loss]:
    """As thick as the groove is wide less its play, and short enough never to bottom out."""
    lengths = {"thickness": joint["tongue_width"], "length": joint["tongue_length"]}
    across = {"across": joint["across"] + joint["play"]} if "across" in joint.sizes else {}
    yield Loss("tongue", side.surfaces, {**lengths, **across})


FAMILY = Family(cut_in=groove, takes=tongue)
