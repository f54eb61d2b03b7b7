"""The trade's words on a page: each length in the reader's system, each limit as that system says it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.ground.shown import decimal
from benchalong.pages.shown import Shows, either
from benchalong.trade.ways.model import Limit, Setting, Words
from benchalong.workings.jobs.model import Number


@dataclass(frozen=True)
class SetTo:
    """A number to set, with its name."""

    name: str
    size: Markup


def set_to(shows: Shows, number: Number | Setting) -> SetTo:
    return SetTo(number.name, _number(shows, number))


def words_in(shows: Shows, words: Words) -> Markup:
    return Markup("").join(_piece(shows, one) for one in words)


def each_once(shows: Shows, many: Iterable[Words]) -> tuple[Markup, ...]:
    """Every text once, in the order in which they first come."""
    return tuple(words_in(shows, words) for words in dict.fromkeys(many))


def is_of_one_size(words: Words) -> bool:
    """Whether it says a size that belongs to one piece, not a limit that holds for all."""
    return any(isinstance(one, Fraction) for one in words)


def _number(shows: Shows, number: Number | Setting) -> Markup:
    """What a machine is set to: a length, an angle, or how many."""
    if number.length is not None:
        return shows.size(number.length)
    if number.degrees is not None:
        return Markup("{}°").format(decimal(number.degrees, 1))
    return Markup(number.count)


def _piece(shows: Shows, piece: str | Length | Limit) -> Markup:
    if isinstance(piece, str):
        return Markup.escape(piece)
    if isinstance(piece, Limit):
        other = Shows("millimetre", shows.precision)
        return either(Shows("inch", shows.precision).text(piece.inch), other.text(piece.millimetre))
    return shows.size(piece)
