"""Which pieces are too small for a machine by common practice: the refusal, and what to do instead."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from benchalong.ground.lengths import Length
from benchalong.trade.ways.model import Family, Limit, Refusal, Tool, Words, Work
from benchalong.trade.ways.practice import (
    HANDS,
    JOINTER_NARROWEST,
    JOINTER_SHORTEST,
    JOINTER_THINNEST,
    MITRE_SAW_SHORTEST,
    PLANER_SHORTEST,
    PLANER_THINNEST,
    RIP_SHORTEST,
    TABLE_SHORTEST,
)

LONGER: Words = ("Do it while it is still part of a longer piece, or by hand.",)
JOINED: Words = (
    "Leave parts joined as one longer piece, or fix runners longer than the piece along both its long "
    "edges; or "
    "plane it by hand.",
)
THICKER: Words = ("Do it while the piece is thicker, or plane it by hand.",)

RIPPED: tuple[Family, ...] = ("rip", "taper", "straight outline")
ACROSS: tuple[Family, ...] = ("rough crosscut", "crosscut to length")


def too_small(tool: Tool, work: Work) -> Refusal | None:
    """None where the piece is large enough, or where it is clamped and no size is too small."""
    check = CHECKS.get(tool)
    return check(tool, work) if check else None


def _small(tool: Tool, what: str, size: Length, limit: Limit, instead: Words = LONGER) -> Refusal | None:
    if size >= limit.least:
        return None
    said: Words = (
        "The piece is only ",
        size,
        f" {what}. By common practice nothing under ",
        limit,
        " goes there, since hands come too near the cutter or the piece is thrown.",
    )
    return Refusal(tool, said, instead, is_safety=True)


def _first(*found: Refusal | None) -> Refusal | None:
    return next((one for one in found if one), None)


def held(work: Work) -> Length:
    """How much of the piece there is to hold on to, beside a cut across it."""
    if work.family in ACROSS:
        return max(work.length, work.piece.length - work.length)
    if work.surface == "end":
        return work.piece.length - work.depth
    if work.across == "length":
        return max(work.near, work.far)
    return work.piece.length


def _table_saw(tool: Tool, work: Work) -> Refusal | None:
    if work.family in RIPPED or (work.is_along_grain and work.family not in ACROSS):
        return _first(
            _small(tool, "long", work.piece.length, RIP_SHORTEST),
            _short_for_its_width(tool, work) if work.family in RIPPED else None,
        )
    return _small(tool, "long beside the cut", held(work), HANDS)


def _short_for_its_width(tool: Tool, work: Work) -> Refusal | None:
    """Wood that is sawn along a fence is longer than wide, or it turns."""
    piece = work.piece
    if piece.length >= piece.width:
        return None
    said: Words = (
        "The piece is ",
        piece.length,
        " long and ",
        piece.width,
        " wide: shorter than wide, it turns away from the fence and is thrown.",
    )
    return Refusal(tool, said, ("Guide it with a mitre gauge or a sled, or saw it by hand.",), is_safety=True)


def _router_table(tool: Tool, work: Work) -> Refusal | None:
    if work.is_along_grain:
        return _small(tool, "long", work.piece.length, TABLE_SHORTEST)
    return _small(tool, "long beside the cut", held(work), HANDS)


def _clamped(tool: Tool, work: Work) -> Refusal | None:
    longest = max(work.piece.length, work.piece.width)
    instead: Words = ("Do it while it is still part of a larger piece, or by hand.",)
    return _small(tool, "at its longest", longest, HANDS, instead)


def _track_saw(tool: Tool, work: Work) -> Refusal | None:
    instead: Words = ("Do it while it is still part of a larger board, or by hand.",)
    return _first(
        _small(tool, "at its longest", max(work.piece.length, work.piece.width), RIP_SHORTEST, instead),
        _small(tool, "at its shortest", min(work.piece.length, work.piece.width), HANDS, instead),
    )


def _mitre_saw(tool: Tool, work: Work) -> Refusal | None:
    part = held(work) if work.family in ACROSS else work.piece.length
    return _small(tool, "long to hold", part, MITRE_SAW_SHORTEST)


def _jointer(tool: Tool, work: Work) -> Refusal | None:
    thin = _small(tool, "thick", work.piece.thickness, JOINTER_THINNEST, THICKER)
    return _first(
        _small(tool, "long", work.piece.length, JOINTER_SHORTEST, JOINED),
        _small(tool, "wide", work.piece.width, JOINTER_NARROWEST),
        thin if work.family == "joint a face" else None,
    )


def _planer(tool: Tool, work: Work) -> Refusal | None:
    left = work.piece.thickness - work.depth
    carried: Words = ("Run it on a flat carrier board where the manual allows it, or plane it by hand.",)
    return _first(
        _small(tool, "long", work.piece.length, PLANER_SHORTEST, JOINED),
        _small(tool, "thick when done", left, PLANER_THINNEST, carried),
    )


def _band_saw(tool: Tool, work: Work) -> Refusal | None:
    return _small(tool, "long", work.piece.length, HANDS)


CHECKS: Mapping[Tool, Callable[[Tool, Work], Refusal | None]] = {
    "table saw with a stacked cutter": _table_saw,
    "table saw": _table_saw,
    "router table": _router_table,
    "router": _clamped,
    "track saw": _track_saw,
    "mitre saw": _mitre_saw,
    "jointer": _jointer,
    "planer": _planer,
    "band saw": _band_saw,
    "jigsaw": _clamped,
}
"""Hand tools and drills work on what is clamped; the bench has clamps."""
