"""A joint's own sizes: which it has by kind, and what they come to when the author doesn't say.

A default is a formula in the plan's own arithmetic, so that it reads like one and is worked out like one.
In it `{joint}` stands for the joint's name, `{cut_in}` and `{takes}` for the first part on that side.
The numbers are common practice, no source, unless it is said otherwise.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class JointSize:
    inch: str
    """The default in a plan in inches; nothing where the author must say it or where it may be left out."""
    millimetre: str = ""
    """The same in a plan in millimetres; as in inches when left out."""
    is_length: bool = True
    is_required: bool = False
    is_derived: bool = False
    """Follows from the others and can't be written."""


_PLAY = JointSize("0")
_END_PLAY = JointSize("1/32 in", "0.8 mm")

JOINT_SIZES: Mapping[str, Mapping[str, JointSize]] = {
    "tongue and groove": {
        "play": _PLAY,
        "width": JointSize(
            "nearest({cut_in}.thickness / 3, 1/16 in)", "nearest({cut_in}.thickness / 3, 1 mm)"
        ),
        "depth": JointSize("3/8 in", "10 mm"),
        "end_play": _END_PLAY,
        "across": JointSize(""),
        "stop_by": JointSize(""),
        "panel_side_play": JointSize("1/8 in", "3 mm"),
        "panel_end_play": JointSize("1/16 in", "1.5 mm"),
        "tongue_length": JointSize("{joint}.depth - {joint}.end_play", is_derived=True),
        "tongue_width": JointSize("{joint}.width - 2*{joint}.play", is_derived=True),
    },
    "dado": {
        "play": _PLAY,
        "width": JointSize("{takes}.thickness + 2*{joint}.play"),
        "depth": JointSize(
            "nearest({cut_in}.thickness / 3, 1/16 in)", "nearest({cut_in}.thickness / 3, 1 mm)"
        ),
        "end_play": JointSize("1/64 in", "0.4 mm"),
        "stop_by": JointSize("3/8 in", "10 mm"),
        "notch": JointSize("{joint}.stop_by + {joint}.width / 2"),
        "reach": JointSize("{joint}.depth - {joint}.end_play", is_derived=True),
    },
    "rabbet": {
        "play": _PLAY,
        "width": JointSize("{takes}.thickness"),
        "depth": JointSize("{cut_in}.thickness / 2"),
    },
    "mortise and tenon": {
        "play": _PLAY,
        "thickness": JointSize(
            "nearest({takes}.thickness / 3, 1/16 in)", "nearest({takes}.thickness / 3, 1 mm)"
        ),
        "width": JointSize("{takes}.width - 2*nearest({takes}.thickness / 4, 1/16 in)"),
        "depth": JointSize(""),
        "end_play": _END_PLAY,
        "across": JointSize(""),
        "haunch_length": JointSize("{joint}.thickness"),
        "haunch_width": JointSize("{joint}.width / 3"),
        "tenon_length": JointSize("{joint}.depth - {joint}.end_play", is_derived=True),
    },
    "half lap": {"play": _PLAY, "depth": JointSize("{cut_in}.thickness / 2")},
    "mitre": {"play": _PLAY, "spline_thickness": JointSize(""), "spline_depth": JointSize("")},
    "box joint": {"play": _PLAY, "finger": JointSize("{cut_in}.thickness")},
    "dovetail": {
        "play": _PLAY,
        "slope": JointSize("1/8", is_length=False),
        "pin": JointSize("{cut_in}.thickness / 4"),
        "lap": JointSize("{cut_in}.thickness / 4"),
    },
    "butt": {
        "play": _PLAY,
        "every": JointSize("6 in", "150 mm"),
        "from_end": JointSize("1 in", "25 mm"),
        "clearance": JointSize("11/64 in", "4.5 mm"),
        "pilot": JointSize("1/8 in", "3 mm"),
        "pilot_depth": JointSize("1 in", "25 mm"),
        "dowel": JointSize(""),
        "dowel_depth": JointSize("1 in", "25 mm"),
    },
    "hinge": {
        "play": _PLAY,
        "length": JointSize("", is_required=True),
        "width": JointSize("", is_required=True),
        "closed": JointSize("", is_required=True),
        "gap": JointSize("1/16 in", "1.5 mm"),
        "set": JointSize("3 in", "75 mm"),
        "gain": JointSize("({joint}.closed - {joint}.gap) / 2", is_derived=True),
    },
    "slide": {"play": _PLAY, "travel": JointSize("", is_required=True)},
    "stay": {"play": _PLAY},
}
"""Every kind's sizes, as named after a dot: `frame.depth`."""
