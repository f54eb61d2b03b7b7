"""A joint's own sizes: which it has by kind, and what they come to when the author doesn't say.

A default is a formula in the plan's own arithmetic, so that it reads like one and is worked out like one.
In it `{joint}` stands for the joint's name, `{cut_in}` and `{takes}` for the first part on that side,
`{into}` for what that part measures into the wood under the side that is cut: its thickness under a face,
its width under an edge; `{slope}` for how steep dovetails are in the wood of these parts.
The numbers are common practice, no source, unless it is said otherwise.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal


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
    must_be: Literal["", "above zero", "not below zero"] = ""
    """What it must be to mean anything; sizes of cuts are looked at where the cuts are checked."""
    by_word: Mapping[str, JointSize] = field(default_factory=dict)
    """What it is instead when the joint is said to be so: `through`, `haunched`."""

    def said(self, words: Iterable[str]) -> JointSize:
        """As it is for a joint with these words."""
        return next((self.by_word[word] for word in words if word in self.by_word), self)


SLOPES = {False: "1/8", True: "1/6"}
"""Of dovetails, by whether either part is softwood; common practice, no source."""
_PLAY = JointSize("0", must_be="not below zero")
_END_PLAY = JointSize("1/32 in", "0.8 mm", must_be="not below zero")

JOINT_SIZES: Mapping[str, Mapping[str, JointSize]] = {
    "tongue and groove": {
        "play": _PLAY,
        "width": JointSize(
            "nearest({cut_in}.thickness / 3, 1/16 in)", "nearest({cut_in}.thickness / 3, 1 mm)"
        ),
        "depth": JointSize("3/8 in", "10 mm"),
        "end_play": _END_PLAY,
        "across": JointSize(""),
        "stop_by": JointSize("3/8 in", "10 mm", must_be="not below zero"),
        "panel_side_play": JointSize("1/8 in", "3 mm", must_be="not below zero"),
        "panel_end_play": JointSize("1/16 in", "1.5 mm", must_be="not below zero"),
        "tongue_length": JointSize("{joint}.depth - {joint}.end_play", is_derived=True),
        "tongue_width": JointSize("{joint}.width - 2*{joint}.play", is_derived=True),
    },
    "dado": {
        "play": _PLAY,
        "width": JointSize("{takes}.thickness + 2*{joint}.play"),
        "depth": JointSize(
            "nearest({cut_in}.thickness / 3, 1/16 in)", "nearest({cut_in}.thickness / 3, 1 mm)"
        ),
        "end_play": JointSize("1/64 in", "0.4 mm", must_be="not below zero"),
        "stop_by": JointSize("3/8 in", "10 mm", must_be="not below zero"),
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
        "shoulder": JointSize(
            "min(3/8 in, nearest({takes}.width / 8, 1/16 in))", "min(10 mm, nearest({takes}.width / 8, 1 mm))"
        ),
        "haunch_length": JointSize("", by_word={"haunched": JointSize("{joint}.thickness")}),
        "haunch_width": JointSize(
            "",
            by_word={
                "haunched": JointSize(
                    "nearest({takes}.width / 3, 1/16 in)", "nearest({takes}.width / 3, 1 mm)"
                )
            },
        ),
        "width": JointSize(
            "{takes}.width - 2*{joint}.shoulder",
            by_word={"haunched": JointSize("{takes}.width - {joint}.shoulder - {joint}.haunch_width")},
        ),
        "depth": JointSize(
            "nearest(min(3*{joint}.thickness, 2*{into}/3), 1/16 in)",
            "nearest(min(3*{joint}.thickness, 2*{into}/3), 1 mm)",
            by_word={"through": JointSize("{into}")},
        ),
        "end_play": JointSize("1/16 in", "1.5 mm", by_word={"through": JointSize("0")}),
        "across": JointSize(""),
        "tenon_length": JointSize("{joint}.depth - {joint}.end_play", is_derived=True),
        "mortise_width": JointSize("{joint}.thickness + 2*{joint}.play", is_derived=True),
        "mortise_length": JointSize("{joint}.width + 2*{joint}.play", is_derived=True),
    },
    "half lap": {"play": _PLAY, "depth": JointSize("{into} / 2")},
    "mitre": {
        "play": _PLAY,
        "spline_thickness": JointSize("0"),
        "spline_depth": JointSize("2*{joint}.spline_thickness"),
        "end_play": _END_PLAY,
        "spline_width": JointSize("max(0 in, 2*({joint}.spline_depth - {joint}.end_play))", is_derived=True),
    },
    "box joint": {"play": _PLAY, "finger": JointSize("{cut_in}.thickness")},
    "dovetail": {
        "play": _PLAY,
        "slope": JointSize("{slope}", is_length=False),
        "pin": JointSize("{cut_in}.thickness / 4"),
        "lap": JointSize(
            "",
            by_word={
                "half-blind": JointSize(
                    "nearest({cut_in}.thickness / 4, 1/16 in)", "nearest({cut_in}.thickness / 4, 1 mm)"
                )
            },
        ),
        "tail_length": JointSize(
            "{cut_in}.thickness",
            is_derived=True,
            by_word={"half-blind": JointSize("{cut_in}.thickness - {joint}.lap", is_derived=True)},
        ),
    },
    "butt": {
        "play": _PLAY,
        "every": JointSize("6 in", "150 mm", must_be="above zero"),
        "from_end": JointSize("1 in", "25 mm", must_be="not below zero"),
        "clearance": JointSize("11/64 in", "4.5 mm", must_be="not below zero"),
        "pilot": JointSize("1/8 in", "3 mm", must_be="not below zero"),
        "pilot_depth": JointSize("1 in", "25 mm"),
        "dowel": JointSize("", must_be="not below zero"),
        "dowel_depth": JointSize("1 in", "25 mm"),
    },
    "hinge": {
        "play": _PLAY,
        "length": JointSize("", is_required=True),
        "width": JointSize("", is_required=True),
        "closed": JointSize("", is_required=True),
        "gap": JointSize("1/16 in", "1.5 mm", must_be="not below zero"),
        "set": JointSize("3 in", "75 mm", must_be="not below zero"),
        "gain": JointSize("({joint}.closed - {joint}.gap) / 2", is_derived=True),
    },
    "slide": {
        "play": _PLAY,
        "travel": JointSize("", is_required=True, must_be="above zero"),
        "clearance": JointSize("{joint}.play", must_be="not below zero"),
        "width": JointSize(""),
        "depth": JointSize(""),
    },
    "stay": {
        "play": _PLAY,
        "apart": JointSize("0", must_be="not below zero"),
        "cut_in_at": JointSize(""),
        "cut_in_across": JointSize(""),
        "takes_at": JointSize(""),
        "takes_across": JointSize(""),
    },
}
"""Every kind's sizes, as named after a dot: `frame.depth`."""
