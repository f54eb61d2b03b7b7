"""One joint while it is looked at: its parts where they lie, its sizes, and how its gaps are told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from benchalong.ground.lengths import ZERO, Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.words import in_sentence
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import SPAN, Joint, Plan, SideOf, Surface
from benchalong.plan.turns import Way
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.fit import Fit
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.telling import Telling, called, likewise, place_sizes, start, the


@dataclass(frozen=True)
class Open:
    """A side of what enters that leaves something open."""

    side: SideOf
    surface: Surface
    """Of the wood."""
    into: Lying
    by: Length


@dataclass(frozen=True)
class JointLook:
    """A joint, and what is measured of those of its parts that don't lie in each other."""

    plan: Plan
    placed: Placed
    joint: Joint
    fits: list[Fit]
    """Of what doesn't float."""

    @cached_property
    def telling(self) -> Telling:
        return Telling(self.plan)

    @property
    def name(self) -> str:
        return f"the joint {self.joint.id}"

    def receivers(self, lying: Lying) -> Iterator[tuple[Lying, tuple[Way, ...]]]:
        for side in self.joint.receivers:
            other = self.placed.by_mark[side.copy]
            if other is not lying and other.copy.tilt == lying.copy.tilt:
                yield other, tuple(other.way(other.surface(named)) for named in side.surfaces)

    def opening(self, fit: Fit, by: Length | None) -> Open:
        assert fit.meeting.takes is not None
        assert by is not None
        lying = self.placed.by_mark[fit.meeting.takes.copy]
        return Open(
            fit.meeting.takes,
            lying.surface(fit.meeting.takes.surfaces[0]),
            self.placed.by_mark[fit.meeting.cut_in.copy],
            by,
        )

    def gaps(
        self, found: list[Open], code: str, said: str, *, level: Level = "fault", more: Length = ZERO
    ) -> Iterator[Finding]:
        """One finding for each copy, its ends together; alike copies together. `more` is needed beside
        what is open, at each end."""
        by_copy: dict[str, list[Open]] = {}
        for one in found:
            by_copy.setdefault(one.side.copy, []).append(one)
        alike: dict[tuple[object, ...], list[list[Open]]] = {}
        for ends in by_copy.values():
            key = (ends[0].side.part, tuple(one.by for one in ends))
            alike.setdefault(key, []).append(ends)
        for same in alike.values():
            yield self._gap(
                same[0],
                [self.placed.by_mark[ends[0].side.copy].copy.mark for ends in same[1:]],
                code,
                said,
                level,
                more,
            )

    def _gap(
        self, ends: list[Open], also: list[str], code: str, said: str, level: Level, more: Length
    ) -> Finding:
        first, lying = ends[0], self.placed.by_mark[ends[0].side.copy]
        total = sum((one.by + more for one in ends), start=ZERO)
        words = said.format(by=self.telling.shown(first.by), into=called(first.into))
        message = f"{start(the(lying.named(first.surface)))} of {called(lying)} {words}"
        if len(ends) > 1:
            others = " and ".join(
                f"{the(lying.named(one.surface))} {self.telling.shown(one.by)} at {called(one.into)}"
                for one in ends[1:]
            )
            message += f"; {others}"
        span = SPAN[SURFACES[first.surface].inward]
        remedy = (
            f"add {self.telling.shown(total)} to the {span} of {in_sentence(lying.part.name)}, or "
            "bring together what stands too far apart"
        )
        numbers = {"open": first.by, "add": total}
        return self.finding(
            code, level, message + likewise(also), remedy, numbers=numbers, copies=(lying, first.into)
        )

    def finding(
        self,
        code: str,
        level: Level,
        message: str,
        remedy: str,
        *,
        numbers: Mapping[str, Length] | None = None,
        copies: Iterable[Lying] = (),
    ) -> Finding:
        own = {name for size in self.joint.sizes for name in size.sizes}
        sizes = own.union(place_sizes(self.plan, *(lying.copy for lying in copies)))
        place = Place((PROJECT_FILE, "joints", self.joint.id)).key()
        return Finding(
            code, level, place, self.joint.id, start(message), remedy, numbers or {}, tuple(sorted(sizes))
        )
