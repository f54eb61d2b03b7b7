"""A piece of hardware's own sizes, and what a joint takes over from the hardware it is made with.

A screw's holes follow from its shank. The clearance hole is the shank to the next 1/64 in or 0.5 mm up, or
near it; the pilot hole three quarters of the shank in inch screws, which are named by the shank, and
seven tenths in metric ones, which are named by the thread: common practice for hardwood, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.reading.written import Hardware, Joint, Project

SCREWS = ("screw", "nail")
CLEARANCE = {
    "inch": "nearest({0}.diameter + 1/128 in, 1/64 in)",
    "millimetre": "nearest({0}.diameter, 0.5 mm)",
}
PILOT = {"inch": "nearest(3/4 * {0}.diameter, 1/64 in)", "millimetre": "nearest(7/10 * {0}.diameter, 0.5 mm)"}

TAKEN_OVER: Mapping[str, Mapping[str, str]] = {
    "butt": {"clearance": "clearance", "pilot": "pilot", "dowel": "diameter"},
    "hinge": {"length": "length", "width": "width", "closed": "closed"},
    "slide": {"travel": "travel", "clearance": "depth"},
}
"""By kind of joint, its sizes that the hardware gives and what they are called there."""


def sizes_of_hardware(name: str, thing: Hardware, project: Project) -> dict[str, str]:
    """By key; what is written, and what follows for a screw or nail whose shank is known."""
    found = dict(thing.sizes)
    if thing.kind in SCREWS and "diameter" in found:
        if thing.kind == "screw":
            found.setdefault("clearance", CLEARANCE[project.units].format(name))
        else:
            found.setdefault("clearance", "0")
        found.setdefault("pilot", PILOT[project.units].format(name))
    return found


def from_hardware(joint: Joint, key: str, project: Project) -> str:
    """The name that a joint's size is taken from: `butt_hinge.length`; empty when there is none."""
    name = joint.words.get("hardware", "")
    thing, own = project.hardware.get(name), TAKEN_OVER.get(joint.kind, {}).get(key, "")
    if thing is None or not own or own not in sizes_of_hardware(name, thing, project):
        return ""
    is_dowel = thing.kind == "dowel"
    return f"{name}.{own}" if joint.kind != "butt" or is_dowel == (key == "dowel") else ""
