"""A part on the bench, and the words to speak of its cuts with."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path, Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.shown import shown
from benchalong.plan.model import SPAN, Axis, Cut, Part, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.telling import cut_at

"""What a part measures along each axis."""


@dataclass(frozen=True)
class Bench:
    plan: Plan
    part: Part

    def shown(self, length: Length) -> str:
        return shown(length, self.plan.units, self.plan.precision).text

    def called(self, cut: Cut) -> str:
        """A cut by its name, or by its kind and where it is."""
        return f"the {cut.kind} {cut.where.split(',')[0]}" if cut.name == cut.kind else f"the {cut.name}"

    def whole(self, axis: Axis) -> Length:
        return {"along": self.part.length, "across": self.part.width, "down": self.part.thickness}[axis]

    def finding(
        self,
        code: str,
        level: Level,
        cut: Cut,
        message: str,
        remedy: str,
        *,
        key: str = "",
        also: tuple[Axis, ...] = (),
    ) -> Finding:
        """A finding about a cut, at one of its keys; `also` are the axes whose size it hangs on."""
        path: Path = (PROJECT_FILE, "parts", self.part.id, "cuts", cut.index)
        return Finding(
            code,
            level,
            cut_at(self.part.id, cut) if cut.joint or cut.hardware else Place((*path, key) if key else path),
            self.part.id,
            f"{self.part.name}: {message}",
            remedy,
            self._numbers(cut, also),
            self._sizes(cut, also),
        )

    def _numbers(self, cut: Cut, also: tuple[Axis, ...]) -> dict[str, Length]:
        own = {size.name: size.length for size in cut.sizes}
        return own | {f"part {SPAN[axis]}": self.whole(axis) for axis in also}

    def _sizes(self, cut: Cut, also: tuple[Axis, ...]) -> tuple[str, ...]:
        part = (self.part.follows.get(SPAN[axis], ()) for axis in also)
        return tuple(sorted({*cut.follows}.union(*part)))


Check: TypeAlias = Callable[[Bench, Cut], Iterator[Finding]]
PairCheck: TypeAlias = Callable[[Bench, Cut, Cut], Iterator[Finding]]
