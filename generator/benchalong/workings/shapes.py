"""What shape is each part?

A solid is made when it is first asked for, since a site whose drawings are already stored needs none;
and the libraries that make solids, which take longer to load than most plans to read, are loaded only then.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from benchalong.ground.problems import Finding
from benchalong.plan.model import Part, PartId, Plan
from benchalong.workings.working import Worked, Working

if TYPE_CHECKING:
    from benchalong.workings.solids import Solid


@dataclass(frozen=True, eq=False)
class Solids(Mapping[PartId, "Solid"]):
    """Each part's solid by its id."""

    parts: Mapping[PartId, Part]
    _made: dict[PartId, Solid] = field(default_factory=dict)

    def __getitem__(self, part: PartId) -> Solid:
        """Raises KeyError for a part the plan hasn't."""
        if part not in self._made:
            from benchalong.workings.solids import solid_of

            self._made[part] = solid_of(self.parts[part])
        return self._made[part]

    def __iter__(self) -> Iterator[PartId]:
        return iter(self.parts)

    def __len__(self) -> int:
        return len(self.parts)


def _work(plan: Plan, worked: Worked) -> tuple[Solids, tuple[Finding, ...]]:  # noqa: ARG001
    return Solids(plan.parts), ()


SOLIDS = Working("solids", "What shape is each part?", _work)
