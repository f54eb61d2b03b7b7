"""Words with lengths in them: made from a sentence with gaps, and said as text for whoever has no page."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.ground.shown import Precision, System, shown
from benchalong.trade.ways.model import Limit, Words


def worded(sentence: str, *sizes: Length | Limit) -> Words:
    """The sentence with a size in each of its gaps: `The wood is {} thick.`"""
    texts = zip(sentence.split("{}"), (*sizes, ""), strict=True)
    return tuple(one for pair in texts for one in pair if one != "")


def said(words: Words, units: System, precision: Precision) -> str:
    """Each length in the system asked for, each limit as that system says it."""
    return "".join(_piece(one, units, precision) for one in words)


def _piece(piece: str | Length | Limit, units: System, precision: Precision) -> str:
    if isinstance(piece, str):
        return piece
    if isinstance(piece, Limit):
        piece = piece.inch if units == "inch" else piece.millimetre
    return shown(piece, units, precision).text
