"""Which pieces are too small for a machine by common practice: the refusal, and what to do instead."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Asked
from benchalong.trade.ways.model import Family, Limit, Refusal, Tool, Work
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

LONGER = "Do it while it is still part of a longer piece, or by hand."
LARGER = "Do it while it is still part of a larger piece, or by hand."
BOARD = "Do it while it is still part of a larger board, or by hand."
JOINED = (
    "Leave parts joined as one longer piece, or fix runners longer than the piece along both its long edges; "
    "or plane it by hand."
)
THICKER = "Do it while the piece is thicker, or plane it by hand."
CARRIED = "Run it on a flat carrier board where the manual allows it, or plane it by hand."

RIPPED: tuple[Family, ...] = ("rip", "taper", "straight outline")
ACROSS: tuple[Family, ...] = ("rough crosscut", "crosscut to length")


def too_small(asked: Asked) -> Refusal | None:
    """None where the piece is large enough, or where it is clamped and no size is too small."""
    check = CHECKS.get(asked.tool)
    return check(asked) if check else None


def _small(asked: Asked, what: str, size: Length, limit: Limit, instead: str = LONGER) -> Refusal | None:
    if size >= limit.least:
        return None
    return asked.refuse(
        f"The piece is only {{}} {what}. By common practice nothing under {{}} goes there, since hands come "
        "too near the cutter or the piece is thrown.",
        instead,
        size,
        limit,
        is_safety=True,
    )


def held(work: Work) -> Length:
    """How much of the piece there is to hold on to, beside a cut across it."""
    if work.family in ACROSS:
        return max(work.length, work.piece.length - work.length)
    if work.surface == "end":
        return work.piece.length - work.depth
    if work.across == "length":
        return max(work.near, work.far)
    return work.piece.length


def _table_saw(asked: Asked) -> Refusal | None:
    work = asked.work
    if work.family in RIPPED:
        return _small(asked, "long", work.piece.length, RIP_SHORTEST) or _short_for_its_width(asked)
    if work.is_along_grain and work.family not in ACROSS:
        return _small(asked, "long", work.piece.length, RIP_SHORTEST)
    return _small(asked, "long beside the cut", held(work), HANDS)


def _short_for_its_width(asked: Asked) -> Refusal | None:
    """Wood that is sawn along a fence is longer than wide, or it turns."""
    piece = asked.work.piece
    if piece.length >= piece.width:
        return None
    return asked.refuse(
        "The piece is {} long and {} wide: shorter than wide, it turns away from the fence and is thrown.",
        "Guide it with a mitre gauge or a sled, or saw it by hand.",
        piece.length,
        piece.width,
        is_safety=True,
    )


def _router_table(asked: Asked) -> Refusal | None:
    if asked.work.is_along_grain:
        return _small(asked, "long", asked.work.piece.length, TABLE_SHORTEST)
    return _small(asked, "long beside the cut", held(asked.work), HANDS)


def _clamped(asked: Asked) -> Refusal | None:
    piece = asked.work.piece
    return _small(asked, "at its longest", max(piece.length, piece.width), HANDS, LARGER)


def _track_saw(asked: Asked) -> Refusal | None:
    piece = asked.work.piece
    longest, shortest = max(piece.length, piece.width), min(piece.length, piece.width)
    return _small(asked, "at its longest", longest, RIP_SHORTEST, BOARD) or _small(
        asked, "at its shortest", shortest, HANDS, BOARD
    )


def _mitre_saw(asked: Asked) -> Refusal | None:
    work = asked.work
    part = held(work) if work.family in ACROSS else work.piece.length
    return _small(asked, "long to hold", part, MITRE_SAW_SHORTEST)


def _jointer(asked: Asked) -> Refusal | None:
    piece = asked.work.piece
    small = _small(asked, "long", piece.length, JOINTER_SHORTEST, JOINED) or _small(
        asked, "wide", piece.width, JOINTER_NARROWEST
    )
    if small or asked.work.family != "joint a face":
        return small
    return _small(asked, "thick", piece.thickness, JOINTER_THINNEST, THICKER)


def _planer(asked: Asked) -> Refusal | None:
    piece = asked.work.piece
    return _small(asked, "long", piece.length, PLANER_SHORTEST, JOINED) or _small(
        asked, "thick when done", piece.thickness - asked.work.depth, PLANER_THINNEST, CARRIED
    )


def _band_saw(asked: Asked) -> Refusal | None:
    return _small(asked, "long", asked.work.piece.length, HANDS)


CHECKS: Mapping[Tool, Callable[[Asked], Refusal | None]] = {
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
