"""Every kind of joint and its rules; a new kind is a module here and a line in the table."""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.plan.joints.families import (
    box_joint,
    butt,
    dado,
    dovetail,
    half_lap,
    hinge,
    mitre,
    mortise_and_tenon,
    rabbet,
    slide,
    stay,
    tongue_and_groove,
)
from benchalong.plan.joints.family import Family

FAMILIES: Mapping[str, Family] = {
    "tongue and groove": tongue_and_groove.FAMILY,
    "dado": dado.FAMILY,
    "rabbet": rabbet.FAMILY,
    "mortise and tenon": mortise_and_tenon.FAMILY,
    "half lap": half_lap.FAMILY,
    "mitre": mitre.FAMILY,
    "box joint": box_joint.FAMILY,
    "dovetail": dovetail.FAMILY,
    "butt": butt.FAMILY,
    "hinge": hinge.FAMILY,
    "slide": slide.FAMILY,
    "stay": stay.FAMILY,
}
