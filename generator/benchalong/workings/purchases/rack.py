"""What the layout leaves to be bought: blanks that no board that is there gives."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace

from benchalong.workings.blanks.model import Blank
from benchalong.workings.boards.model import Group


def missing(blanks: Sequence[Blank], group: Group | None) -> tuple[Blank, ...]:
    """With their counts as far as they are missing."""
    if group is None or not group.is_own:
        return tuple(blanks)
    return _so_many(blanks, dict(group.left_out))


def not_laid(left: Sequence[Blank], group: Group) -> tuple[Blank, ...]:
    """Those of them that no board as it is sold is large enough for."""
    laid = Counter(each.blank for board in group.bought for each in board.laid)
    return _so_many(left, {blank.id: blank.count - laid[blank.id] for blank in left})


def _so_many(blanks: Sequence[Blank], counts: Mapping[str, int]) -> tuple[Blank, ...]:
    return tuple(replace(blank, count=counts[blank.id]) for blank in blanks if counts.get(blank.id))
