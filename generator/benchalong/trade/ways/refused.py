"""What several tools refuse alike, and the kinds of work that one reason covers."""

from __future__ import annotations

from fractions import Fraction

from benchalong.trade.ways.asked import Asked, Refusals, Ways
from benchalong.trade.ways.model import FAMILIES, Family, Refusal
from benchalong.trade.ways.practice import FENCE_REACH, ROUTER_DEEPEST, STAND_TALLEST

HOLES: tuple[Family, ...] = ("pilot hole", "clearance hole", "dowel hole")
CORNERS: tuple[Family, ...] = ("tails", "pins", "fingers")
CHANNELS: tuple[Family, ...] = ("groove", "dado", "stopped dado", "spline slot")
SAWN: tuple[Family, ...] = (
    "rough crosscut", "split rough", "rip", "crosscut to length", "resaw", "taper", "mitre",
)  # fmt: skip
"""What is sawn right through."""

GLUE = ("Gluing takes clamps, no machine.", "Glue it at the bench.")
FLUSH = "Plane or sand it flush."
SAND = "Sand it at the bench."
JOINT = "Use a jointer or a hand plane."
PLANE = "Use a planer or a hand plane."
SAW_CURVE = "Use a band saw, a jigsaw or a coping saw."
SAW_LEAVES: Refusals = {
    "glue up a panel": GLUE,
    "flush": ("What is glued up stands no saw.", FLUSH),
    "sand": ("A saw doesn't smooth.", SAND),
}
CURVED = ("Its plate cuts straight lines only.", SAW_CURVE)
INSIDE_CORNER = ("Its round blade cuts past the inside corner.", "Use a jigsaw, or saw it by hand.")


def by_table_saw(what: str) -> Refusals:
    """What a table saw never does, `what` is in it: a blade or a cutter."""
    square_end = (
        f"A saw's {what} is round: it can't end a cut before the edge with a square end, and dropping wood "
        "onto it is not safe.",
        "Rout it along a guide, or chop it by hand.",
    )
    return {
        **SAW_LEAVES,
        **dict.fromkeys(HOLES, ("A saw makes no round holes.", "Drill it.")),
        "stopped dado": square_end,
        "hinge gain": square_end,
        "mortise": (
            f"A mortise is closed on all sides; a saw's {what} can't go in and out.",
            "Drill and chop it, or rout it.",
        ),
        "curved outline": ("A saw's plate cuts straight lines only.", SAW_CURVE),
        "joint a face": ("A saw leaves no flat face.", "Joint it by machine or by hand plane."),
        "plane to thickness": ("A saw leaves no even thickness over a face.", "Plane it."),
    }


def by_saw(what: str) -> Refusals:
    """What a saw that comes to the work, or chops, never does."""
    no_floor = (
        f"{what} cuts right through, or leaves a kerf and no flat floor.",
        "Rout it, or saw and chop it by hand.",
    )
    no_guide = (f"{what} can't be guided to so fine a line.", "Saw them by hand.")
    return {
        **SAW_LEAVES,
        **dict.fromkeys((*CHANNELS, "rabbet", "tongue", "tenon", "mortise", "hinge gain"), no_floor),
        **dict.fromkeys(HOLES, (f"{what} makes no round holes.", "Drill it.")),
        **dict.fromkeys(CORNERS, no_guide),
        "joint a face": ("A saw leaves no flat face.", JOINT),
        "plane to thickness": ("A saw leaves no even thickness over a face.", PLANE),
        "resaw": (f"{what} doesn't reach through the width of a board.", "Use a band saw."),
    }


def all_but(ways: Ways, reason: str, instead: str) -> Refusals:
    """One reason for all that a tool has no way for."""
    return dict.fromkeys((family for family in FAMILIES if family not in ways), (reason, instead))


def stopped(asked: Asked) -> Refusal | None:
    """A saw can't end a channel within the wood."""
    if not asked.work.is_stopped:
        return None
    return asked.refuse(
        "This cut stops short of the end. A saw's cutter is round and leaves a ramp, and dropping wood onto "
        "it is not safe.",
        "Rout it between stops or along a guide, or chop the end by hand.",
    )


def beyond_fence(asked: Asked) -> Refusal | None:
    """A channel along the piece, further from its edge than a fence goes."""
    return asked.over(
        asked.work.near,
        FENCE_REACH,
        "The cut lies {} from the edge; a fence goes out to about {}.",
        "Take a hand-held router along a clamped guide.",
    )


def beyond_cutter(asked: Asked) -> Refusal | None:
    """Deeper than a router's cutters reach."""
    return asked.over(
        asked.work.depth,
        ROUTER_DEEPEST,
        "The cut is {} deep; usual cutters reach {}.",
        "Bore or saw it, and finish with a chisel.",
    )


def standing_end(asked: Asked) -> Refusal | None:
    """A long piece can't be stood on its end at a table."""
    if asked.work.surface != "end":
        return None
    return asked.over(
        asked.work.piece.length,
        STAND_TALLEST,
        "The piece would stand on its end, {} tall; over {} it tips.",
        "Take the tool to the work: a hand-held router, or hand tools.",
    )


def too_flat(asked: Asked, tilt: Fraction, what: str) -> Refusal | None:
    """`tilt`: degrees from upright; saws and fences tilt to half a right angle."""
    if 0 <= tilt <= 45:
        return None
    return asked.refuse(f"The slope is flatter than the {what} tilts.", "Plane it to the lines.")
