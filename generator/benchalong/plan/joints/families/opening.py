"""How far something opens, in the author's words: `110 degrees`."""

from __future__ import annotations

import re
from fractions import Fraction

from benchalong.plan.joints.family import Given

ANGLE = re.compile(r"(\d+(?:\.\d+)?)(?: ?(?:degrees?|°))?\Z")
FULL_TURN = 360


def degrees(text: str) -> Fraction | None:
    """None when it is no angle that anything opens by."""
    found = ANGLE.match(text.strip())
    angle = Fraction(found[1]) if found else Fraction(0)
    return angle if 0 < angle < FULL_TURN else None


def opens_by(joint: Given) -> Fraction | None:
    return degrees(joint.words.get("opens", ""))
