"""Has a panel room in its grooves at the dampest, and is it still held at the driest?

Looked at are solid parts that lie loose between two sides that face each other: what floats in a joint, and
what goes into grooves, dadoes or rabbets that aren't glued. How it lies as placed is the meetings' question;
this one is about the year.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from benchalong.ground.lengths import Length, to_nearest
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.plan.model import Joint, Meeting, PartId, Plan
from benchalong.plan.turns import Way, opposite
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import LEAST_HELD
from benchalong.trade.room import Frame, Room, Widths, deeper_by, room, widths_today
from benchalong.workings.grain import EDGES, axis_in_room
from benchalong.workings.movement import MOVEMENT, Shares
from benchalong.workings.placed import PLACED, Lying, Placed
from benchalong.workings.telling import Telling, called, likewise, place_sizes, start
from benchalong.workings.working import Worked, Working

LOOSE_KINDS = ("tongue and groove", "dado", "rabbet")
"""Where an edge goes in and may be left unglued."""
PINNED = ("middle", "dab")
"""How it is glued where its middle stays put and both edges move alike."""
CENT = Length(1, 100)


@dataclass(frozen=True)
class Floating:
    """One loose part between its two sides; lengths in mm across its grain."""

    joint: str
    part: PartId
    marks: tuple[str, ...]
    """Of all copies that lie so."""
    frame: Frame
    width: Length
    """As the plan has it."""
    shares: Shares
    room: Room
    pinned: Room
    """If it were held in its middle, so that both edges move alike."""
    is_pinned: bool
    widths: Widths
    """To cut it to today: from what is just held at the driest to what just goes in at the dampest."""
    hold: Length
    """What a groove must still hold at the driest."""

    @property
    def held(self) -> Length:
        """How far the groove still reaches over it at the driest, as it is fixed."""
        return (self.pinned if self.is_pinned else self.room).held_at_driest

    @property
    def reach(self) -> Length:
        """How far it goes into each groove as made, if it lies in the middle."""
        return (self.width - self.frame.sight) / 2


def look_at_floating(plan: Plan, worked: Worked) -> tuple[tuple[Floating, ...], tuple[Finding, ...]]:
    found = tuple(_alike(_floating(plan, worked)))
    looking = _Looking(plan, worked[PLACED])
    return found, tuple(finding for one in found for finding in looking.findings(one))


def floating_in(one: Floating, shares: Shares) -> Floating:
    """The same panel where it moves by other shares: in another house, or sawn another way."""
    return _measured(one, shares)


# what lies loose


def _floating(plan: Plan, worked: Worked) -> Iterator[Floating]:
    placed, movement = worked[PLACED], worked[MOVEMENT]
    for joint in plan.joints.values():
        for lying, meetings in _loose(joint, placed):
            moves = movement.parts.get(lying.copy.part)
            frame = moves and _frame(joint, lying, meetings, placed)
            if moves and frame:
                nothing = Room(Length(0), Length(0))
                bare = Floating(
                    joint.id,
                    lying.copy.part,
                    (lying.copy.mark,),
                    frame,
                    lying.part.width,
                    moves.width.shares,
                    nothing,
                    nothing,
                    lying.copy.part not in joint.floats and joint.glue in PINNED,
                    Widths(Length(0), Length(0)),
                    LEAST_HELD.of(plan.units),
                )
                yield _measured(bare, moves.width.shares)


def _measured(one: Floating, shares: Shares) -> Floating:
    dry, damp = shares.to_driest, shares.to_dampest
    loose, pinned = (
        room(one.frame, one.width, to_driest=dry, to_dampest=damp, is_pinned=is_pinned)
        for is_pinned in (False, True)
    )
    widths = widths_today(one.frame, to_driest=dry, to_dampest=damp, hold=one.hold, is_pinned=one.is_pinned)
    return replace(one, shares=shares, room=loose, pinned=pinned, widths=widths)


def _loose(joint: Joint, placed: Placed) -> Iterator[tuple[Lying, list[Meeting]]]:
    """Each part that lies loose in a joint, with the meetings at its edges."""
    is_unglued = joint.kind in LOOSE_KINDS and joint.glue != "yes"
    found: dict[str, list[Meeting]] = {}
    for meeting in joint.meetings:
        takes = meeting.takes
        if takes and takes.surfaces[0] in EDGES and (takes.part in joint.floats or is_unglued):
            found.setdefault(takes.copy, []).append(meeting)
    for mark, meetings in found.items():
        yield placed.by_mark[mark], meetings


def _frame(joint: Joint, panel: Lying, meetings: list[Meeting], placed: Placed) -> Frame | None:
    """Between the two grooves that its edges go into; None where only one of them is there."""
    n = axis_in_room(panel, "across")
    lows, highs = list[tuple[Length, Length]](), list[tuple[Length, Length]]()
    for meeting in meetings:
        assert meeting.takes is not None
        way = panel.way(panel.surface(meeting.takes.surfaces[0]))
        side = placed.by_mark[meeting.cut_in.copy]
        depth = _depth(joint, side, meeting, opposite(way))
        (highs if way[n] > 0 else lows).append((side.room[way[n] < 0][n], depth))
    if not lows or not highs:
        return None
    low, high = max(lows), min(highs)
    return Frame(high[0] - low[0], (low[1], high[1])) if low[0] < high[0] else None


def _depth(joint: Joint, side: Lying, meeting: Meeting, way: Way) -> Length:
    """How deep a panel may go into it: into a rabbet from an edge by its width, else by the depth."""
    sizes = {size.name: size.length for size in joint.sizes}
    named = (side.surface(surface) for surface in meeting.cut_in.surfaces)
    looks = next((surface for surface in named if side.way(surface) == way), None)
    key = "width" if joint.kind == "rabbet" and looks not in ("face", "back") else "depth"
    return sizes.get(key, Length(0))


def _alike(found: Iterator[Floating]) -> Iterator[Floating]:
    """Copies of one part in frames of one size are one."""
    alike: dict[tuple[object, ...], Floating] = {}
    for one in found:
        key = (one.joint, one.part, one.frame)
        known = alike.get(key)
        alike[key] = replace(known, marks=(*known.marks, *one.marks)) if known else one
    yield from alike.values()


# what is said of it


class _Looking:
    def __init__(self, plan: Plan, placed: Placed) -> None:
        self.plan, self.placed, self.shown = plan, placed, Telling(plan).fine

    def findings(self, one: Floating) -> Iterator[Finding]:
        """What is wrong as placed has been told: no room at all today, or hardly in its groove."""
        if one.frame.opening > one.width and one.room.at_dampest < 0:
            yield self._tight(one)
        elif one.reach >= one.hold and one.held < one.hold:
            yield self._barely(one)

    def _tight(self, one: Floating) -> Finding:
        swollen, less = (
            hundredth_up(one.width * (1 + one.shares.to_dampest)),
            hundredth_up(one.width - one.widths.most),
        )
        message = (
            f"{self._called(one)} swells to {self.shown(swollen)} at the dampest, and its grooves leave "
            f"{self.shown(one.frame.opening)}: it would push the frame apart"
        )
        numbers = {"swollen": swollen, "opening": one.frame.opening, "room": _cent(one.room.at_dampest)}
        deeper = self._deeper(one)
        if deeper:
            remedy, numbers = self._too_shallow(deeper), numbers | {"deeper": deeper}
        else:
            remedy, numbers = f"cut it {self.shown(less)} narrower", numbers | {"less": less}
        return self._finding("panel-tight-when-damp", "fault", one, message, remedy, numbers)

    def _barely(self, one: Floating) -> Finding:
        is_out, pinned = one.held < 0, one.pinned.held_at_driest
        drawn = "draws out of its groove" if is_out else f"is held by only {self.shown(one.held)}"
        loose = "" if one.is_pinned else ", if it has slid to one side"
        message = (
            f"{self._called(one)} {drawn} at the driest{loose}; common practice is {self.shown(one.hold)}"
        )
        numbers = {"held": _cent(one.held), "held in the middle": _cent(pinned)}
        will_do = not one.is_pinned and pinned >= one.hold
        if will_do:
            remedy = (
                "a dab of glue in the middle of each end lets both edges shrink alike: then "
                f"{self.shown(pinned)} stays held"
            )
        else:
            remedy, numbers = self._wider(one, numbers)
        level: Level = "note" if will_do else "fault" if pinned < 0 else "doubt"
        code = "panel-out-when-dry" if is_out else "panel-barely-held-when-dry"
        return self._finding(code, level, one, message, remedy, numbers)

    def _wider(self, one: Floating, numbers: dict[str, Length]) -> tuple[str, dict[str, Length]]:
        deeper = self._deeper(one)
        if deeper:
            return self._too_shallow(deeper), numbers | {"deeper": deeper}
        more = hundredth_up((one.frame.sight + 2 * one.hold) / (1 + one.shares.to_driest) - one.width)
        remedy = f"cut it {self.shown(more)} wider, and fix it by a dab of glue in the middle of each end"
        return remedy, numbers | {"more": more}

    def _deeper(self, one: Floating) -> Length:
        dry, damp = one.shares.to_driest, one.shares.to_dampest
        return hundredth_up(deeper_by(one.frame, to_driest=dry, to_dampest=damp, hold=one.hold))

    def _too_shallow(self, deeper: Length) -> str:
        return (
            f"grooves {self.shown(deeper)} deeper, or wood that moves less: in these no width does all year"
        )

    def _called(self, one: Floating) -> str:
        return start(called(self.placed.by_mark[one.marks[0]]))

    def _finding(
        self,
        code: str,
        level: Level,
        one: Floating,
        message: str,
        remedy: str,
        numbers: dict[str, Length],
    ) -> Finding:
        copy = self.placed.by_mark[one.marks[0]].copy
        own = {name for size in self.plan.joints[one.joint].sizes for name in size.sizes}
        sizes = tuple(sorted(own.union(place_sizes(self.plan, copy))))
        said = message + likewise(one.marks[1:])
        place = Place((PROJECT_FILE, "parts", one.part)).key()
        return Finding(code, level, place, one.part, said, remedy, numbers, sizes)


def _cent(length: Length) -> Length:
    return to_nearest(length, CENT)


def hundredth_up(length: Length) -> Length:
    """To a hundredth, away from what is too little."""
    near = _cent(length)
    return near if near >= length else near + CENT


FLOATING: Working[tuple[Floating, ...]] = Working(
    "floating",
    "Has each panel room at the dampest, and is it held at the driest?",
    look_at_floating,
    (PLACED, MOVEMENT),
)
