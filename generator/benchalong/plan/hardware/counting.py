"""How many of each piece of hardware the plan's places and joints come to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from benchalong.plan.model import Hardware, Joint

ON_BOTH_SIDES = ("hinge", "slide", "stay")
"""Kinds that are screwed to two sides."""


def counted(hardware: Mapping[str, Hardware], joints: Mapping[str, Joint]) -> dict[str, Hardware]:
    """Each with what is needed; screws follow from what they hold."""
    own = {
        name: len(thing.seated)
        + sum(joint.pieces for joint in joints.values() if joint.words.get("hardware") == name)
        for name, thing in hardware.items()
    }
    needed = {name: own[name] + _as_screws(name, own, hardware) for name in hardware}
    return {
        name: replace(thing, needed=needed[name] or None, count=thing.said or needed[name] or None)
        for name, thing in hardware.items()
    }


def _as_screws(name: str, own: Mapping[str, int], hardware: Mapping[str, Hardware]) -> int:
    """How many go into other hardware: as many pieces as are needed there, or else as are said."""
    return sum(
        (own[other] or thing.said or 0) * _in_each(name, thing)
        for other, thing in hardware.items()
        if other != name
    )


def _in_each(screw: str, thing: Hardware) -> int:
    bores = sum(bore.screw == screw for bore in thing.bores)
    each = bores or (thing.screws if thing.held_by == screw else 0)
    return each * (2 if thing.kind in ON_BOTH_SIDES else 1)
