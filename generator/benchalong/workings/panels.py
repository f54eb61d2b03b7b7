"""Does what lies loose in its grooves have room to move, and is it held all the same?"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Joint, Plan, Surface
from benchalong.plan.turns import opposite
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import LEAST_HELD
from benchalong.workings.fit import Fit
from benchalong.workings.overlap import TOUCHING
from benchalong.workings.placed import SIDES, Lying, Placed, ahead
from benchalong.workings.telling import Telling, called, likewise, place_sizes, start

STRAY = Length(100)
"""In mm: what lies further from a groove was not meant for it."""


def look_at_panels(plan: Plan, placed: Placed, joint: Joint, fits: list[Fit]) -> Iterator[Finding]:
    looking = _Panels(plan, placed, joint)
    yield from looking.tight(fits)
    yield from looking.held(fits)
    yield from looking.out()


class _Panels:
    def __init__(self, plan: Plan, placed: Placed, joint: Joint) -> None:
        self.plan, self.placed, self.joint = plan, placed, joint
        self.telling = Telling(plan)

    def tight(self, fits: list[Fit]) -> Iterator[Finding]:
        """Less room than the joint leaves for it: none at all is a fault where the wood swells."""
        found: dict[tuple[str, str, Length], list[Fit]] = {}
        for fit in fits:
            surface = self._surface(fit)
            meant = self._meant(surface)
            if fit.end is not None and meant - fit.end > Length(1, 50):
                key = "edges" if surface.startswith("edge") else "ends"
                found.setdefault((self._panel(fit).copy.part, key, fit.end), []).append(fit)
        for (_, key, end), same in found.items():
            yield self._tight(key, end, same)

    def _tight(self, key: str, end: Length, same: list[Fit]) -> Finding:
        panel, surface = self._panel(same[0]), self._surface(same[0])
        meant = self._meant(surface)
        is_board = self.plan.stock[panel.part.stock].kind == "board"
        level: Level = "fault" if end <= TOUCHING and key == "edges" and is_board else "doubt"
        sides = sum(self._panel(fit).copy.mark == panel.copy.mark for fit in same)
        less = (meant - end) * sides
        span = "width" if key == "edges" else "length"
        room = "no room at all" if end == 0 else f"only {self.telling.shown(end)} of room"
        why = ": a wide board swells in a damp season and bursts its frame" if level == "fault" else ""
        message = (
            f"{start(called(panel))} has {room} at {panel.named(surface)}, where "
            f"{self.telling.shown(meant)} was meant{why}"
        )
        others = dict.fromkeys(
            mark for fit in same if (mark := self._panel(fit).copy.mark) != panel.copy.mark
        )
        remedy = (
            f"take {self.telling.shown(less)} off the {span} of {in_sentence(panel.part.name)}, or "
            "make the groove deeper"
        )
        numbers = {"room": end, "meant": meant, "less": less}
        return self._finding("panel-tight", level, panel, message + likewise(others), remedy, numbers)

    def held(self, fits: list[Fit]) -> Iterator[Finding]:
        """In the groove, but hardly."""
        least = LEAST_HELD.inch if self.plan.units == "inch" else LEAST_HELD.millimetre
        depth = self.joint.length_of("depth")
        found: dict[tuple[str, Length], list[Fit]] = {}
        for fit in fits:
            if fit.end is not None and depth - fit.end < least:
                found.setdefault((self._panel(fit).copy.part, depth - fit.end), []).append(fit)
        for (_, reach), same in found.items():
            panel = self._panel(same[0])
            if reach <= 0:
                also = [
                    f"{self._panel(fit).named(self._surface(fit))} of {self._panel(fit).copy.mark}"
                    for fit in same[1:]
                ]
                yield self._out(panel, self._surface(same[0]), same[0].meeting.cut_in.copy, Length(0), also)
                continue
            sides = dict.fromkeys(
                panel.named(self._surface(fit)) for fit in same if self._panel(fit) is panel
            )
            others = dict.fromkeys(
                self._panel(fit).copy.mark for fit in same if self._panel(fit) is not panel
            )
            message = (
                f"{start(called(panel))} reaches only {self.telling.shown(reach)} into its groove "
                f"at {' and '.join(sides)};"
                f" common practice is {self.telling.shown(least)} when it has shrunk most"
            )
            remedy = f"make it {self.telling.shown((least - reach) * len(sides))} larger, or more"
            yield self._finding(
                "panel-barely-held",
                "doubt",
                panel,
                message + likewise(others),
                remedy,
                {"reach": reach, "least": least},
            )

    def out(self) -> Iterator[Finding]:
        """Grooves that a loose part lies straight ahead of and doesn't reach."""
        holding = {m.cut_in for m in self.joint.meetings if m.takes and m.takes.part in self.joint.floats}
        found: dict[tuple[str, Length], list[tuple[Lying, Surface, str]]] = {}
        for side in self.joint.receivers if self.joint.floats else ():
            groove = self.placed.by_mark[side.copy]
            way = groove.way(groove.surface(side.surfaces[0]))
            for panel in self._beside(groove) if side not in holding else ():
                gap = ahead(groove, panel, way)
                if gap is not None and 0 <= gap < STRAY:
                    surface = next(s for s in SIDES if panel.way(s) == opposite(way))
                    found.setdefault((panel.copy.part, gap), []).append((panel, surface, groove.copy.mark))
        for (_, gap), same in found.items():
            also = [f"{panel.named(surface)} of {panel.copy.mark}" for panel, surface, _ in same[1:]]
            yield self._out(*same[0], gap, also)

    def _out(self, panel: Lying, surface: Surface, groove: str, gap: Length, also: list[str]) -> Finding:
        other = self.placed.by_mark[groove]
        away = f"stands {self.telling.shown(gap)} away from" if gap else "only just reaches"
        message = (
            f"{start(called(panel))} {away} {called(other)} at {panel.named(surface)}, so it is "
            "out of its groove"
        )
        needed = gap + self.joint.length_of("depth") - self._meant(surface)
        span = "width" if surface.startswith("edge") else "length"
        remedy = f"add {self.telling.shown(needed)} to its {span} at each such side, or move it there"
        return self._finding(
            "panel-out-of-groove",
            "fault",
            panel,
            message + likewise(also),
            remedy,
            {"away": gap, "add": needed},
        )

    def _beside(self, groove: Lying) -> Iterator[Lying]:
        within = groove.copy.mark.rpartition("/")[0]
        for lying in self.placed.lying:
            if lying.copy.part in self.joint.floats and lying.copy.mark.rpartition("/")[0] == within:
                yield lying

    def _panel(self, fit: Fit) -> Lying:
        assert fit.meeting.takes is not None
        return self.placed.by_mark[fit.meeting.takes.copy]

    def _surface(self, fit: Fit) -> Surface:
        assert fit.meeting.takes is not None
        return self._panel(fit).surface(fit.meeting.takes.surfaces[0])

    def _meant(self, surface: Surface) -> Length:
        key = "panel_side_play" if surface.startswith("edge") else "panel_end_play"
        return self.joint.length_of(key)

    def _finding(
        self, code: str, level: Level, panel: Lying, message: str, remedy: str, numbers: dict[str, Length]
    ) -> Finding:
        own = {name for size in self.joint.sizes for name in size.sizes}
        place = Place((PROJECT_FILE, "parts", panel.copy.part)).key()
        sizes = tuple(sorted(own.union(place_sizes(self.plan, panel.copy))))
        return Finding(code, level, place, panel.copy.part, message, remedy, numbers, sizes)
