"""Joints as plain data, for `plan.json`."""

from __future__ import annotations

from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.plan.model import CutSize, Joint, Meeting, Moves, SideOf
from benchalong.plan.quantity import Quantity
from benchalong.publishing.assemblies_json import tilt_json
from benchalong.publishing.plain import Json, Plain, maybe_number
from benchalong.workings.meetings import JointFit

PLAY = ("thickness", "width", "length")
"""Directions of what goes into a joint."""


def joint_json(joint: Joint, fit: JointFit | None, plain: Plain) -> Json:
    return {
        "id": joint.id,
        "kind": joint.kind,
        "name": joint.name,
        "sizes": [_size(joint, size, plain) for size in joint.sizes],
        "words": dict(joint.words),
        "glue": joint.glue,
        "meetings": [_meeting(meeting) for meeting in joint.meetings],
        "floats": list(joint.floats),
        "note": joint.note,
        "moves": [_moves(moves, plain) for moves in joint.moves],
        "unfilled": [_side(side) for side in joint.unfilled],
        "unmet": [_side(side) for side in joint.unmet],
        "pieces": joint.pieces,
        "play": _play(fit, plain),
    }


def _size(joint: Joint, size: CutSize, plain: Plain) -> Json:
    known = JOINT_SIZES[joint.kind].get(size.name)
    dimension = 1 if known is None or known.is_length else 0
    return {
        "name": f"{joint.id}.{size.name}",
        "value": plain.quantity(Quantity(size.length, dimension)),
        "follows": list(size.sizes),
    }


def _meeting(meeting: Meeting) -> Json:
    return {
        "assembly": meeting.assembly,
        "cut_in": _side(meeting.cut_in),
        "takes": _side(meeting.takes) if meeting.takes else None,
    }


def _side(side: SideOf) -> Json:
    return {"copy": side.copy, "part": side.part, "on": list(side.surfaces)}


def _moves(moves: Moves, plain: Plain) -> Json:
    return {
        "how": moves.how,
        "stays": moves.stays,
        "goes": moves.goes,
        "at": plain.lengths(moves.at) if moves.at else None,
        "way": list(moves.way) if moves.way else None,
        "angle": maybe_number(moves.angle),
        "travel": plain.maybe(moves.travel),
        "tilt": tilt_json(moves.tilt, plain),
    }


def _play(fit: JointFit | None, plain: Plain) -> Json:
    """As measured, the least and the greatest: by direction of what goes in, and beyond its end."""
    found = fit.play if fit else {}
    in_all = {key: plain.lengths(found[key]) if key in found else None for key in PLAY}
    end = fit.end if fit else None
    return {**in_all, "end": plain.lengths(end) if end else None}
