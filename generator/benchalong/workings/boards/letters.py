"""The letters that blanks go by on drawings of boards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import count
from string import ascii_uppercase

from benchalong.workings.boards.model import BlankId, Group


def letters_of(group: Group) -> Mapping[BlankId, str]:
    """A letter for each kind of blank, in the order of the boards: A to Z, then A2."""
    boards = (*group.boards, *group.more)
    blanks = dict.fromkeys(laid.blank for board in boards for laid in board.laid)
    return dict(zip(blanks, _letters(), strict=False))


def _letters() -> Iterator[str]:
    for turn in count(1):
        yield from (f"{letter}{turn if turn > 1 else ''}" for letter in ascii_uppercase)
