"""How far a long piece of work has come, told to whoever watches."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeAlias

Progress: TypeAlias = Callable[[str, int, int], None]
"""What is being done, how many are done, how many there are."""


def no_progress(_what: str, _done: int, _of: int) -> None:
    """For when nobody watches."""
