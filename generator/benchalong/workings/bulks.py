"""How much wood is in each part, and how much surface does it have?

Both come from its solid; since a solid takes long to make, they are kept in the store by what the part is
made of. A part without cuts is its box.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from hashlib import sha256
from pathlib import Path

from benchalong.ground.problems import Finding
from benchalong.ground.store import MemoryStore, Shelf, Store, code_digest
from benchalong.plan.model import Part, PartId, Plan
from benchalong.workings.solids import SOLIDS, Solids
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Bulk:
    volume: float
    """mm3."""
    surface: float
    """mm2, all sides."""


class Bulks(Mapping[PartId, Bulk]):
    """Each part's bulk by its id; worked out when the first is asked for."""

    def __init__(self, parts: Mapping[PartId, Part], solids: Solids, store: Store | None) -> None:
        self._parts, self._solids, self._store = parts, solids, store

    def __getitem__(self, part: PartId) -> Bulk:
        return self._all[part]

    def __iter__(self) -> Iterator[PartId]:
        return iter(self._parts)

    def __len__(self) -> int:
        return len(self._parts)

    @cached_property
    def _all(self) -> Mapping[PartId, Bulk]:
        shelf = Shelf(self._store or MemoryStore(), "bulks")
        found = {part.id: self._bulk(part, shelf) for part in self._parts.values()}
        shelf.put_back()
        return found

    def _bulk(self, part: Part, shelf: Shelf) -> Bulk:
        if not part.cuts:
            return _box(part)
        takes = [prism for cut in part.cuts for prism in cut.takes]
        key = sha256(f"{_code()} {part.box!r} {takes!r}".encode()).hexdigest()
        text = shelf.get(key)
        if text is None:
            solid = self._solids[part.id]
            text = json.dumps([solid.volume, solid.surface])
        shelf.put(key, text)
        return Bulk(*json.loads(text))


def _box(part: Part) -> Bulk:
    long, wide, thick = (float(side) for side in part.box)
    return Bulk(long * wide * thick, 2 * (long * wide + long * thick + wide * thick))


@cache
def _code() -> str:
    """A digest of the modules that make solids."""
    here = Path(__file__).parent
    return code_digest(here / name for name in ("bodies.py", "solids.py"))


def _work(plan: Plan, worked: Worked) -> tuple[Bulks, tuple[Finding, ...]]:
    return Bulks(plan.parts, worked[SOLIDS], worked.store), ()


BULKS: Working[Bulks] = Working("bulks", "How much wood is in each part?", _work, (SOLIDS,))
