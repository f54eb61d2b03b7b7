"""What a trade size means: `4/4`, `27 mm`, `1x6`. Read as written, since it is no arithmetic."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import INCH, Length
from benchalong.trade.boards import quarters_called
from benchalong.trade.lumber import Nominal, nominal

_QUARTERS = re.compile(r"(?P<quarters>[1-9]\d?)/4")
_SAWN = re.compile(r"(?P<millimetres>\d{1,3}(?:\.\d)?) ?mm")
_INCHES = re.compile(r"(?P<inches>(?:\d{1,2} )?\d{1,2}/[1-9]\d?|[1-9]\d?) in")
_NUMBER = r"\d{1,2}(?:[ -]\d/[1-9])?|\d/[1-9]"
_NOMINAL = re.compile(rf"(?P<thick>{_NUMBER})\s?[x×]\s?(?P<wide>{_NUMBER})")


@dataclass(frozen=True)
class TradeSize:
    called: str
    thickness: Length
    """Rough, or for softwood as it measures dressed."""
    quarters: Fraction | None = None
    nominal: Nominal | None = None

    @property
    def is_dressed(self) -> bool:
        return self.nominal is not None


def trade_size(text: str) -> TradeSize | None:
    """The size meant; None for what is none."""
    words = " ".join(text.split())
    if found := _QUARTERS.fullmatch(words):
        return in_quarters(Fraction(found["quarters"]))
    if found := _SAWN.fullmatch(words):
        return TradeSize(words, Fraction(found["millimetres"]))
    if found := _INCHES.fullmatch(words):
        return TradeSize(words, _mixed(found["inches"]) * INCH)
    if found := _NOMINAL.fullmatch(words):
        size = nominal(_mixed(found["thick"]), _mixed(found["wide"]))
        return None if size is None else TradeSize(words, size.thickness, nominal=size)
    return None


def in_quarters(quarters: Fraction) -> TradeSize:
    return TradeSize(quarters_called(quarters), quarters / 4 * INCH, quarters)


def in_millimetres(thickness: Length) -> TradeSize:
    return TradeSize(f"{thickness} mm", thickness)


def _mixed(text: str) -> Fraction:
    """`1 1/4` or `1-1/4`."""
    return sum((Fraction(part) for part in text.replace("-", " ").split()), Fraction(0))
