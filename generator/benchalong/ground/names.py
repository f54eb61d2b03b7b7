"""A set of names that reads the same in every process, for what a digest is made of."""

from __future__ import annotations

from typing import Final


class Names(frozenset[str]):
    """Python writes a set in an order that changes with the process; this one in the names' own."""

    def __repr__(self) -> str:
        return f"Names({sorted(self)!r})"


NO_NAMES: Final = Names()
