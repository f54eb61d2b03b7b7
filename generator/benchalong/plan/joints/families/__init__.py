"""Every kind of joint and its rules; a new kind is a module here and a line in the table."""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.plan.joints.families import dado, rabbet, tongue_and_groove
from benchalong.plan.joints.family import Family

FAMILIES: Mapping[str, Family] = {
    "tongue and groove": tongue_and_groove.FAMILY,
    "dado": dado.FAMILY,
    "rabbet": rabbet.FAMILY,
}
