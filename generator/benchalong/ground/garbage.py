"""Python looks for dead circles of objects after every few hundred new ones. A publish makes a million that
stay, and next to no circles: looking that often takes a tenth of its time and finds nothing."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager

SELDOM = 100_000
"""New objects between two looks: enough of them that memory stays bounded whatever a library does."""


@contextmanager
def seldom_collected() -> Iterator[None]:
    """As a decorator too: while this lasts, circles are looked for seldom."""
    before = gc.get_threshold()
    gc.set_threshold(SELDOM, *before[1:])
    try:
        yield
    finally:
        gc.set_threshold(*before)
