"""Do the parts of each joint meet, close where they should, and have the play they were meant to?

Parts that lie in each other are told of by the clashes; this looks at what is left open.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.words import in_sentence
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import SPAN, Joint, Plan, SideOf, Surface
from benchalong.plan.turns import Way, axis_of, is_nearer, opposite
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import RABBET_ROOM
from benchalong.workings.clashes import CLASHES, Clash
from benchalong.workings.facing import Faces
from benchalong.workings.fit import Fit, fit_of
from benchalong.workings.overlap import TOUCHING
from benchalong.workings.panels import look_at_panels
from benchalong.workings.placed import PLACED, Lying, Placed, ahead, reaches
from benchalong.workings.telling import Telling, called, likewise, place_sizes, start, the
from benchalong.workings.working import Worked, Working

CLOSES = (
    "tongue and groove",
    "mortise and tenon",
    "half lap",
    "mitre",
    "box joint",
    "dovetail",
    "butt",
    "rabbet",
)
"""Kinds that have a shoulder, or a face, that must touch."""
SHOULDERS = ("tongue and groove", "mortise and tenon", "dado")
"""Kinds whose end stays clear of the bottom."""
MOVES = ("hinge", "slide", "stay")
FLUSH = ("mitre", "box joint")
CUTS = ("half lap", "mitre", "box joint", "dovetail")
"""Kinds whose cuts are what the parts lie in each other by."""
CORNERS = ("mitre", "box joint", "dovetail")
NOTHING = Length(0)


@dataclass(frozen=True)
class JointFit:
    """Everything measured at one joint."""

    fits: tuple[Fit, ...]

    @property
    def end(self) -> tuple[Length, Length] | None:
        """The least and the greatest room beyond the end of what enters."""
        return _range(fit.end for fit in self.fits)

    @property
    def play(self) -> Mapping[str, tuple[Length, Length]]:
        """By direction of what enters: the least and the greatest play in all, both sides together."""
        found: dict[str, list[Length]] = {}
        for fit in self.fits:
            for key, size in fit.in_all.items():
                found.setdefault(key, []).append(size)
        return {key: (min(sizes), max(sizes)) for key, sizes in found.items()}


def check_meetings(plan: Plan, worked: Worked) -> tuple[Mapping[str, JointFit], tuple[Finding, ...]]:
    placed, clashes = worked[PLACED], worked[CLASHES].clashes
    faces = Faces(placed)
    clashing = {clash.marks for clash in clashes}
    found: dict[str, JointFit] = {}
    findings: list[Finding] = []
    for joint in plan.joints.values():
        fits = tuple(
            fit
            for meeting in joint.meetings
            if (fit := fit_of(meeting, placed, faces, has_shoulder=joint.kind in SHOULDERS)) is not None
        )
        found[joint.id] = JointFit(fits)
        free = [fit for fit in fits if fit.marks not in clashing]
        findings += _Looking(plan, placed, joint, free).findings()
    return found, tuple(findings)


@dataclass(frozen=True)
class _Open:
    """A side of what enters that leaves something open."""

    side: SideOf
    surface: Surface
    """Of the wood."""
    into: Lying
    by: Length


class _Looking:
    """One joint looked at."""

    def __init__(self, plan: Plan, placed: Placed, joint: Joint, fits: list[Fit]) -> None:
        self.plan, self.placed, self.joint = plan, placed, joint
        self.telling = Telling(plan)
        is_loose = [fit.meeting.takes is not None and fit.meeting.takes.part in joint.floats for fit in fits]
        self.loose = [fit for fit, loose in zip(fits, is_loose, strict=True) if loose]
        self.fits = [fit for fit, loose in zip(fits, is_loose, strict=True) if not loose]
        self.held = _held_otherwise(plan) if joint.kind == "butt" else frozenset()
        self.sizes = {size.name: size for size in joint.sizes}

    def findings(self) -> Iterator[Finding]:
        yield from self._never_meets()
        yield from self._unmet()
        if self.joint.kind in CLOSES:
            yield from self._left_open()
        if self.joint.kind == "dado":
            yield from self._reaches()
        if self.joint.kind == "rabbet":
            yield from self._fills_rabbet()
        yield from self._bottoms_out()
        yield from self._flush()
        yield from self._cuts_nothing()
        yield from look_at_panels(self.plan, self.placed, self.joint, self.loose)
        yield from self._unfilled()

    # sides that meet nothing

    def _never_meets(self) -> Iterator[Finding]:
        if self.plan.copies and not (self.joint.meetings or self.joint.unmet or self.joint.unfilled):
            message = (
                f"{self._name()}: nothing that it names stands in one assembly yet, so nothing was compared"
            )
            yield self._finding(
                "joint-not-placed", "note", message, "place the parts it joins, or leave the joint out"
            )

    def _unmet(self) -> Iterator[Finding]:
        open_sides = [found for side in self.joint.unmet if (found := self._short_of(side)) is not None]
        told = {(one.side.copy, one.side.surfaces) for one in open_sides}
        yield from self._gaps(
            open_sides,
            "joint-side-unmet",
            "stops {by} short of {into}, so the two don't meet",
            more=self._enters(),
        )
        alike: dict[tuple[str, ...], list[Finding]] = {}
        for side in self.joint.unmet:
            if (side.copy, side.surfaces) not in told:
                finding = self._meets_nothing(side)
                alike.setdefault((finding.code, side.part, finding.remedy), []).append(finding)
        for same in alike.values():
            others = likewise(_subject(finding) for finding in same[1:])
            yield replace(same[0], message=same[0].message + others)

    def _short_of(self, side: SideOf) -> _Open | None:
        """How far it ends from what it should go into, straight ahead."""
        lying = self.placed.by_mark[side.copy]
        surface = lying.surface(side.surfaces[0])
        way = lying.way(surface)
        found = [
            (gap, other)
            for other, looks in self._receivers(lying)
            if opposite(way) in looks and (gap := ahead(lying, other, way)) is not None and gap > 0
        ]
        if not found:
            return None
        gap, other = min(found, key=lambda pair: pair[0])
        return _Open(side, surface, other, gap)

    def _receivers(self, lying: Lying) -> Iterator[tuple[Lying, tuple[Way, ...]]]:
        for side in self.joint.receivers:
            other = self.placed.by_mark[side.copy]
            if other is not lying and other.copy.tilt == lying.copy.tilt:
                yield other, tuple(other.way(other.surface(named)) for named in side.surfaces)

    def _meets_nothing(self, side: SideOf) -> Finding:
        lying = self.placed.by_mark[side.copy]
        surface = lying.surface(side.surfaces[0])
        what = f"{the(lying.named(surface))} of {called(lying)}"
        if self._is_aslant(lying):
            message = (
                f"{start(what)} isn't square to anything that {self._name()} cuts: "
                "no cut was given, and nothing was compared"
            )
            remedy = "put what it joins into one assembly and turn that, or give each its own cut"
            return self._finding("joint-not-square", "doubt", message, remedy, copies=(lying,))
        for other, looks in self._receivers(lying):
            faced = next((s for s in SURFACES if other.way(s) == opposite(lying.way(surface))), None)
            if faced and self.joint.kind not in CORNERS and _ends_in(lying, surface, other):
                cut = next((s for s in SURFACES if other.way(s) in looks), faced)
                message = (
                    f"{start(what)} goes into {the(other.named(faced))} of {called(other)}, but "
                    f"{self._name()} cuts {the(other.named(cut))}"
                )
                noun = cut.split()[0].replace("back", "face")
                remedy = (
                    f"let the joint cut {in_sentence(other.part.name)} on its inner {noun}, which is "
                    f"found wherever that is, or turn {in_sentence(other.part.name)}"
                )
                return self._finding("joint-wrong-side", "fault", message, remedy, copies=(lying, other))
        message = f"{start(what)} meets nothing that {self._name()} cuts"
        remedy = "move it to what it should go into, or name in `only:` the copies the joint is for"
        return self._finding("joint-side-unmet", "fault", message, remedy, copies=(lying,))

    def _is_aslant(self, lying: Lying) -> bool:
        """Whether it is turned against everything that the joint cuts."""
        others = [self.placed.by_mark[side.copy] for side in self.joint.receivers]
        return bool(others) and all(other.copy.tilt != lying.copy.tilt for other in others)

    def _unfilled(self) -> Iterator[Finding]:
        """Grooves that take nothing; what is next to fitting has been told from the other side."""
        if self.joint.unmet or self.joint.floats or self.joint.kind in MOVES or not self.joint.meetings:
            return
        sides = [
            f"{side.surfaces[0]} of {called(self.placed.by_mark[side.copy])}" for side in self.joint.unfilled
        ]
        if sides:
            message = f"{self._name()} cuts {sides[0]}, and nothing goes in there{likewise(sides[1:])}"
            yield self._finding(
                "joint-side-unfilled",
                "doubt",
                message,
                "name only the sides that receive, or say in `floats:` what lies in them",
            )

    # what stays open

    def _left_open(self) -> Iterator[Finding]:
        found = [
            self._opening(fit, fit.shoulder)
            for fit in self.fits
            if fit.shoulder is not None and fit.shoulder > TOUCHING and fit.marks not in self.held
        ]
        yield from self._gaps(found, "joint-gap", "leaves {by} open against {into} where it should close")

    def _reaches(self) -> Iterator[Finding]:
        """A dado has no shoulder: what enters must reach to its bottom less the room meant to be there."""
        meant = self._size("end_play")
        kinds: tuple[tuple[Level, str, str, bool], ...] = (
            (
                "fault",
                "joint-gap",
                "stands {by} away from the bottom of its dado in {into}, so it is out of it",
                True,
            ),
            (
                "doubt",
                "joint-short",
                "leaves {by} at the bottom of its dado in {into}, more than was meant",
                False,
            ),
        )
        for level, code, said, judge in kinds:
            found = [
                self._opening(fit, fit.end)
                for fit in self.fits
                if fit.end is not None
                and fit.end > meant + Length(1, 50)
                and (fit.end >= self._size("depth")) is judge
            ]
            yield from self._gaps(found, code, said, level=level, more=-meant)

    def _fills_rabbet(self) -> Iterator[Finding]:
        """It touches one floor, which has been looked at; more room at the other than is left for a panel.

        What is glued and from a board is meant to fill its rabbet; a sheet may be a back with room round it.
        """
        most = 2 * self._size("play") + RABBET_ROOM.of(self.plan.units)
        open_here = [
            self._opening(fit, fit.end)
            for fit in self.fits
            if fit.end is not None and fit.end > most and (fit.shoulder or 0) <= TOUCHING
        ]
        boards = [one for one in open_here if self._is_glued_board(one)]
        others = [one for one in open_here if one not in boards]
        said = "leaves {by} open in its rabbet in {into}"
        yield from self._gaps(boards, "joint-gap", said)
        yield from self._gaps(others, "joint-short", said, level="doubt")

    def _is_glued_board(self, one: _Open) -> bool:
        part = self.plan.parts[one.side.part]
        return self.joint.glue == "yes" and self.plan.stock[part.stock].kind == "board"

    def _opening(self, fit: Fit, by: Length | None) -> _Open:
        assert fit.meeting.takes is not None
        assert by is not None
        lying = self.placed.by_mark[fit.meeting.takes.copy]
        return _Open(
            fit.meeting.takes,
            lying.surface(fit.meeting.takes.surfaces[0]),
            self.placed.by_mark[fit.meeting.cut_in.copy],
            by,
        )

    def _gaps(
        self, found: list[_Open], code: str, said: str, *, level: Level = "fault", more: Length = NOTHING
    ) -> Iterator[Finding]:
        """One finding for each copy, its ends together; alike copies together. `more` is needed beside
        what is open, at each end."""
        by_copy: dict[str, list[_Open]] = {}
        for one in found:
            by_copy.setdefault(one.side.copy, []).append(one)
        alike: dict[tuple[object, ...], list[list[_Open]]] = {}
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
        self, ends: list[_Open], also: list[str], code: str, said: str, level: Level, more: Length
    ) -> Finding:
        first, lying = ends[0], self.placed.by_mark[ends[0].side.copy]
        total = sum((one.by + more for one in ends), start=Length(0))
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
        return self._finding(
            code, level, message + likewise(also), remedy, numbers=numbers, copies=(lying, first.into)
        )

    def _bottoms_out(self) -> Iterator[Finding]:
        found = [
            fit
            for fit in self.fits
            if fit.end is not None and fit.end < Length(1, 50) and self.joint.words.get("tenon") != "through"
        ]
        if found and self.joint.kind in ("tongue and groove", "mortise and tenon", "dado"):
            fit = found[0]
            assert fit.meeting.takes is not None
            one, other = (
                self.placed.by_mark[fit.meeting.cut_in.copy],
                self.placed.by_mark[fit.meeting.takes.copy],
            )
            message = (
                f"{start(called(other))} touches the bottom of its cut in {called(one)}: no room "
                "for glue, and a shoulder may stay open"
            )
            marks = [fit.meeting.takes.copy for fit in found if fit.meeting.takes]
            also = likewise(mark for mark in marks if mark != marks[0])
            yield self._finding(
                "joint-bottoms-out",
                "doubt",
                message + also,
                f"leave {self.telling.shown(Length(4, 5))} there: {self.joint.id}.end_play",
                copies=(one, other),
            )

    def _flush(self) -> Iterator[Finding]:
        """At a corner of fingers or a mitre each part ends where the other's outside is."""
        found: dict[Length, list[tuple[Lying, Surface, Lying]]] = {}
        for meeting in self.joint.meetings if self.joint.kind in FLUSH else ():
            if meeting.takes is None:
                continue
            pair = (self.placed.by_mark[meeting.cut_in.copy], self.placed.by_mark[meeting.takes.copy])
            for (one, side), other in zip(
                zip(pair, (meeting.cut_in, meeting.takes), strict=True), pair[::-1], strict=True
            ):
                surface = one.surface(side.surfaces[0])
                past = _past(one, other, one.way(surface))
                if abs(past) > TOUCHING:
                    found.setdefault(past, []).append((one, surface, other))
        for past, same in found.items():
            one, surface, other = same[0]
            by = self.telling.shown(abs(past))
            stands = "stands past" if past > 0 else "ends short of"
            also = likewise(f"{ended.named(side)} of {ended.copy.mark}" for ended, side, _ in same[1:])
            message = (
                f"{start(the(one.named(surface)))} of {called(one)} {stands} the outside of "
                f"{called(other)} by {by}{also}"
            )
            remedy = f"make it {by} {'shorter' if past > 0 else 'longer'}, or move one of the two"
            yield self._finding(
                "corner-not-flush", "doubt", message, remedy, numbers={"by": abs(past)}, copies=(one, other)
            )

    def _cuts_nothing(self) -> Iterator[Finding]:
        shapes = self.plan.shapes.values()
        if (
            self.joint.kind in CUTS
            and self.joint.meetings
            and not any(c.joint == self.joint.id for s in shapes for c in s.cuts)
        ):
            message = f"{self._name()} takes no wood: its parts lie against each other, not in each other"
            yield self._finding(
                "joint-cuts-nothing",
                "doubt",
                message,
                "move them into each other, or say butt if they should only touch",
            )

    def _enters(self) -> Length:
        """How far what enters should stand in."""
        return max((self._size(key) for key in ("tongue_length", "tenon_length", "reach")), default=NOTHING)

    # words

    def _size(self, key: str) -> Length:
        return self.sizes[key].length if key in self.sizes else Length(0)

    def _name(self) -> str:
        return f"the joint {self.joint.id}"

    def _finding(
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


def _ends_in(lying: Lying, surface: Surface, other: Lying) -> bool:
    """Whether the two touch, and this side lies as near to the other as the side behind it."""
    return reaches(lying.room, other.room) and is_nearer(lying.room, lying.way(surface), other.room)


def _held_otherwise(plan: Plan) -> frozenset[frozenset[str]]:
    """Pairs that another joint than a butt brings together: their screws don't say where they close."""
    return frozenset(
        meeting.marks
        for joint in plan.joints.values()
        for meeting in joint.meetings
        if joint.kind != "butt" and meeting.takes is not None
    )


def _past(one: Lying, other: Lying, way: Way) -> Length:
    """How far the first ends beyond the other, that way."""
    n = axis_of(way)
    return one.room[1][n] - other.room[1][n] if way[n] > 0 else other.room[0][n] - one.room[0][n]


def _subject(finding: Finding) -> str:
    """What a message is about: `end a of shelf S1`."""
    said = finding.message.split(" goes into ")[0].split(" meets ")[0].split(" isn't square ")[0]
    return said[:1].lower() + said[1:]


def _range(values: Iterable[Length | None]) -> tuple[Length, Length] | None:
    known = [value for value in values if value is not None]
    return (min(known), max(known)) if known else None


def troubled_copies(plan: Plan, clashes: Iterable[Clash], fits: Mapping[str, JointFit]) -> frozenset[str]:
    """The marks of copies that clash, meet nothing or stay open: what is told of them hangs on that."""
    found = {mark for clash in clashes for mark in clash.marks}
    for joint in plan.joints.values():
        closes = joint.kind in CLOSES
        found |= {m for f in fits[joint.id].fits if closes and (f.shoulder or 0) > TOUCHING for m in f.marks}
        if joint.unmet:
            found |= {side.copy for side in (*joint.unmet, *joint.receivers)}
    return frozenset(found)


MEETINGS: Working[Mapping[str, JointFit]] = Working(
    "meetings",
    "Do the parts of each joint meet and close, and with how much play?",
    check_meetings,
    (PLACED, CLASHES),
)
