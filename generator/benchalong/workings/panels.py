"""Does what lies loose in its grooves have room to move, and is it held all the same?"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.plan.model import Joint, Plan, Surface
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import LEAST_HELD
from benchalong.workings.fit import Fit
from benchalong.workings.overlap import TOUCHING
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.telling import Telling, called, likewise, place_sizes, start


def look_at_panels(plan: Plan, placed: Placed, joint: Joint, fits: list[Fit]) -> Iterator[Finding]:
    looking = _Panels(plan, placed, joint)
    yield from looking.tight(fits)
    yield from looking.held(fits)
    yield from looking.out()


class _Panels:
    def __init__(self, plan: Plan, placed: Placed, joint: Joint) -> None:
        self.plan, self.placed, self.joint = plan, placed, joint
        self.telling = Telling(plan)
        self.sizes = {size.name: size.length for size in joint.sizes}

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
        why = ": a wide board swells in a damp season and bursts its frame" if key == "edges" and is_board else ""
        message = f"{start(called(panel))} has {room} at {surface}, where {self.telling.shown(meant)} was meant{why}"
        others = dict.fromkeys(mark for fit in same if (mark := self._panel(fit).copy.mark) != panel.copy.mark)
        remedy = f"take {self.telling.shown(less)} off the {span} of {panel.part.name.lower()}, or make the groove deeper"
        numbers = {"room": end, "meant": meant, "less": less}
        return self._finding("panel-tight", level, panel, message + likewise(others), remedy, numbers)

    def held(self, fits: list[Fit]) -> Iterator[Finding]:
        """In the groove, but hardly."""
        least = LEAST_HELD.inch if self.plan.units == "inch" else LEAST_HELD.millimetre
        depth = self.sizes.get("depth", Length(0))
        shallow = [fit for fit in fits if fit.end is not None and depth - fit.end < least]
        for fit in _each_panel(shallow):
            assert fit.end is not None
            panel, reach = self._panel(fit), max(Length(0), depth - fit.end)
            if reach == 0:
                yield self._out(panel, self._surface(fit), fit.meeting.cut_in.copy, Length(0), least)
                continue
            message = (
                f"{start(called(panel))} reaches only {self.telling.shown(reach)} into the groove at {self._surface(fit)};"
                f" common practice is {self.telling.shown(least)} when it has shrunk most"
            )
            remedy = f"make it wider there by {self.telling.shown(least - reach)} or more"
            yield self._finding("panel-barely-held", "doubt", panel, message, remedy, {"reach": reach})

    def out(self) -> Iterator[Finding]:
        """Grooves that a loose part should lie in and doesn't reach."""
        for side in self.joint.unfilled if self.joint.floats else ():
            groove = self.placed.by_mark[side.copy]
            way = groove.way(groove.surface(side.surfaces[0]))
            n = next(n for n in range(3) if way[n])
            for panel in self._beside(groove):
                gap = (
                    panel.room[0][n] - groove.room[1][n]
                    if way[n] > 0
                    else groove.room[0][n] - panel.room[1][n]
                )
                if gap > 0:
                    surface = next(s for s in _SIDES if panel.way(s) == (-way[0], -way[1], -way[2]))
                    yield self._out(panel, surface, groove.copy.mark, gap, Length(0))

    def _out(self, panel: Lying, surface: Surface, groove: str, gap: Length, least: Length) -> Finding:
        other = self.placed.by_mark[groove]
        away = f"stands {self.telling.shown(gap)} away from" if gap else "only just reaches"
        message = f"{start(called(panel))} {away} {called(other)} at {surface}, so it is out of its groove"
        needed = gap + max(least, self.sizes.get("depth", Length(0)) - self._meant(surface))
        span = "width" if surface.startswith("edge") else "length"
        remedy = f"add {self.telling.shown(needed)} to its {span} on that side, or move it there"
        return self._finding("panel-out-of-groove", "fault", panel, message, remedy, {"away": gap, "add": needed})

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
        return self.sizes.get(key, Length(0))

    def _finding(self, code: str, level: Level, panel: Lying, message: str, remedy: str, numbers: dict[str, Length]) -> Finding:
        own = {name for size in self.joint.sizes for name in size.sizes}
        place = Place((PROJECT_FILE, "parts", panel.copy.part)).key()
        sizes = tuple(sorted(own.union(place_sizes(self.plan, panel.copy))))
        return Finding(code, level, place, panel.copy.part, message, remedy, numbers, sizes)


_SIDES: tuple[Surface, ...] = ("face", "back", "edge a", "edge b", "end a", "end b")


def _each_panel(fits: list[Fit]) -> list[Fit]:
    """One for each copy and side of it."""
    return list({(fit.meeting.takes.copy, fit.meeting.takes.surfaces): fit for fit in fits if fit.meeting.takes}.values())
