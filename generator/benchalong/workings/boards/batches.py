"""What is laid out together: blanks of one stock and one rough thickness."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.plan.model import Stock
from benchalong.workings.blanks.model import Blank, Blanks, Matched


@dataclass(frozen=True)
class Batch:
    id: str
    """`cherry`, or with a second thickness `cherry-8-4`."""
    stock: Stock
    called: str
    blanks: tuple[Blank, ...]
    matched: tuple[Matched, ...]
    is_first: bool
    """Whether it is the stock's thickest."""

    @property
    def thickness(self) -> Length:
        return self.blanks[0].thickness


def batches_of(blanks: Blanks, stock: Stock) -> Iterator[Batch]:
    """Of one stock, the thickest first."""
    for index, same in enumerate(blanks.by_thickness(stock.id)):
        called, ids = same[0].called, {blank.id for blank in same}
        name = stock.id if index == 0 else f"{stock.id}-{_slug(called) or index + 1}"
        matched = tuple(each for each in blanks.matched if set(each.blanks) <= ids)
        yield Batch(name, stock, called, same, matched, index == 0)


def _slug(called: str) -> str:
    return "-".join("".join(letter if letter.isalnum() else " " for letter in called).split())
