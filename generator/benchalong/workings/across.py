"""What is held fast across the grain, and by how much would it move?

Two pieces that a joint holds to each other, glued or screwed, want to move apart where one of them grows and
the other doesn't, or grows less: along every direction of the plane they meet in. Common practice lets about
4 in pass, whatever the wood. A part whose two edges are held by parts that a third keeps apart is caught
too.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import Length, to_nearest
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.plan.model import Joint, Meeting, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import ACROSS_WIDEST, MIDDLE_GLUED, RIDGE
from benchalong.workings.grain import EDGES, ENDS, axis_of, shares_along
from benchalong.workings.movement import MOVEMENT, SLIGHT, Movement, Shares
from benchalong.workings.placed import PLACED, Lying, Placed
from benchalong.workings.telling import Telling, called, likewise, place_sizes, start
from benchalong.workings.working import Worked, Working

CORNERS = ("mitre", "box joint", "dovetail")
"""Kinds whose parts have their widths side by side by the way they are cut."""
CENT = Length(1, 100)


@dataclass(frozen=True)
class Across:
    """One piece held to another across its grain."""

    joint: str
    mover: str
    """The mark of the one that moves more."""
    other: str
    over: Length
    """Mm of the mover's grain that is held."""
    shares: Shares
    """By how much more than the other it changes."""
    is_held: bool
    """Fast over all of it, so that it can't move; not where only the middle is glued."""
    is_mixed: bool
    """Both move, but not alike."""

    @property
    def moves(self) -> Length:
        """Between driest and dampest, in mm, to a hundredth."""
        return _cent(self.over * abs(self.shares.swing))

    @property
    def each_way(self) -> Length:
        """How far its outer edge goes from where it was made, from a line fixed in the middle."""
        return _cent(self.over / 2 * max(abs(self.shares.to_driest), abs(self.shares.to_dampest)))


def look_across(plan: Plan, worked: Worked) -> tuple[tuple[Across, ...], tuple[Finding, ...]]:
    placed, movement = worked[PLACED], worked[MOVEMENT]
    widest = ACROSS_WIDEST.of(plan.units)
    found = [
        one
        for joint in plan.joints.values()
        for one in _of_joint(joint, placed, movement)
        if one.over > widest and one.moves >= SLIGHT
    ]
    looking = _Looking(plan, placed, widest)
    told = looking.fast([one for one in found if one.is_held and not _is_told(plan.joints[one.joint])])
    caught = looking.caught({one.mover for one in found}, movement)
    return tuple(found), (*told, *caught, *looking.ridges(movement))


def _is_told(joint: Joint) -> bool:
    """A tenon too wide is told of with the other proportions of its cuts."""
    return joint.kind == "mortise and tenon"


def holds(joint: Joint) -> bool:
    """Whether what it brings together can't move over its whole length."""
    return joint.glue == "yes" or is_fixed_by_hardware(joint)


def is_fixed_by_hardware(joint: Joint) -> bool:
    return joint.kind == "butt" and "hardware" in joint.words


def _of_joint(joint: Joint, placed: Placed, movement: Movement) -> Iterator[Across]:
    if joint.kind in CORNERS or joint.moves or not (holds(joint) or joint.glue == "middle"):
        return
    for meeting in joint.meetings:
        if meeting.takes is None or meeting.takes.part in joint.floats:
            continue
        one, other = placed.by_mark[meeting.cut_in.copy], placed.by_mark[meeting.takes.copy]
        normal = other.way(other.surface(meeting.takes.surfaces[0]))
        for n in range(3):
            if not normal[n]:
                found = _pair(joint, one, other, n, movement)
                if found is not None:
                    yield found


def _pair(joint: Joint, one: Lying, other: Lying, n: int, movement: Movement) -> Across | None:
    """Along one axis of the plane in which they meet."""
    over = min(one.room[1][n], other.room[1][n]) - max(one.room[0][n], other.room[0][n])
    first, second = (shares_along(lying, n, movement) for lying in (one, other))
    if over <= 0 or first is None or second is None:
        return None
    if joint.kind == "mortise and tenon" and axis_of(other, n) == "across":
        over = min(over, _size(joint, "width") or over)
    mover, still = (one, other) if abs(first.swing) > abs(second.swing) else (other, one)
    more, less = (first, second) if mover is one else (second, first)
    return Across(
        joint.id,
        mover.copy.mark,
        still.copy.mark,
        over,
        Shares(more.to_driest - less.to_driest, more.to_dampest - less.to_dampest),
        holds(joint),
        less.swing != 0,
    )


def _size(joint: Joint, key: str) -> Length | None:
    return next((size.length for size in joint.sizes if size.name == key), None)


class _Looking:
    def __init__(self, plan: Plan, placed: Placed, widest: Length) -> None:
        self.plan, self.placed, self.widest = plan, placed, widest
        self.shown = Telling(plan).fine

    # held to another

    def fast(self, found: list[Across]) -> Iterator[Finding]:
        alike: dict[tuple[object, ...], list[Across]] = {}
        for one in found:
            mover, other = (self.placed.by_mark[mark] for mark in (one.mover, one.other))
            alike.setdefault((one.joint, mover.copy.part, other.copy.part, one.over), []).append(one)
        for same in alike.values():
            yield self._fast(same)

    def _fast(self, same: list[Across]) -> Finding:
        one, joint = same[0], self.plan.joints[same[0].joint]
        mover, other = (self.placed.by_mark[mark] for mark in (one.mover, one.other))
        how = "screwed" if is_fixed_by_hardware(joint) else "glued"
        message = (
            f"{start(called(mover))} is {how} to {called(other)} over {self.shown(one.over)} across its "
            f"grain, where it moves by {self.shown(one.moves)}{self._beyond(one)} over the year; common "
            f"practice is at most {self.shown(self.widest)}"
        )
        others = likewise(f"{each.mover} on {each.other}" for each in same[1:])
        numbers = {"over": one.over, "moves": one.moves, "each way": one.each_way}
        remedy = self._remedy(one, joint, mover, other)
        code = "mixed-wood-glued" if one.is_mixed else "held-across-grain"
        return self._finding(code, mover, other, message + others, remedy, numbers, joint)

    def _beyond(self, one: Across) -> str:
        return " more than the other" if one.is_mixed else ""

    def _remedy(self, one: Across, joint: Joint, mover: Lying, other: Lying) -> str:
        each = self.shown(one.each_way)
        if is_fixed_by_hardware(joint):
            return f"slots or buttons that let it move {each} each way from a line fixed in its middle"
        if one.is_mixed:
            return "one kind of wood, sawn one way, or parts that can move on each other"
        if self._is_breadboard(joint, mover, other):
            middle = self.shown(MIDDLE_GLUED.of(self.plan.units))
            return (
                f"glue: middle: glue only the middle {middle} or less, and give the outer pegs slots "
                f"that let it move {each} each way"
            )
        return (
            f"turn its grain, or fix it along one line only and let it move {each} each way from its middle"
        )

    def _is_breadboard(self, joint: Joint, mover: Lying, other: Lying) -> bool:
        """The end of a wide part goes into, or against, the long edge of another."""
        return any(
            meeting.takes is not None
            and meeting.takes.copy == mover.copy.mark
            and meeting.cut_in.copy == other.copy.mark
            and meeting.takes.surfaces[0] in ENDS
            and meeting.cut_in.surfaces[0] in EDGES
            for meeting in joint.meetings
        )

    # caught between two

    def caught(self, told: set[str], movement: Movement) -> Iterator[Finding]:
        """Solid parts held by both edges, between two that a third keeps apart."""
        held = self._held()
        alike: dict[tuple[str, str], list[tuple[Lying, Meeting, Meeting]]] = {}
        for mark, edges in self._by_edges().items():
            lying = self.placed.by_mark[mark]
            moves = movement.parts.get(lying.copy.part)
            if mark in told or lying.part.width <= self.widest or moves is None or moves.is_slight:
                continue
            pair = next(self._kept_apart(lying, edges, held, movement), None)
            if pair is not None:
                alike.setdefault((lying.copy.part, pair[2]), []).append((lying, pair[0], pair[1]))
        for (_, joint), same in alike.items():
            yield self._caught(same, self.plan.joints[joint], movement)

    def _by_edges(self) -> dict[str, list[tuple[str, Meeting]]]:
        """Marks of copies, and what holds their edges fast."""
        found: dict[str, list[tuple[str, Meeting]]] = {}
        for joint in self.plan.joints.values():
            for meeting in joint.meetings if holds(joint) and not joint.moves else ():
                takes = meeting.takes
                if takes and takes.surfaces[0] in EDGES and takes.part not in joint.floats:
                    found.setdefault(takes.copy, []).append((joint.id, meeting))
        return found

    def _held(self) -> dict[str, set[str]]:
        """By mark, what each copy is held fast to."""
        found: dict[str, set[str]] = {}
        for joint in self.plan.joints.values():
            for meeting in joint.meetings if holds(joint) and not joint.moves else ():
                if meeting.takes and meeting.takes.part not in joint.floats:
                    one, other = meeting.cut_in.copy, meeting.takes.copy
                    found.setdefault(one, set()).add(other)
                    found.setdefault(other, set()).add(one)
        return found

    def _kept_apart(
        self, lying: Lying, edges: list[tuple[str, Meeting]], held: dict[str, set[str]], movement: Movement
    ) -> Iterator[tuple[Meeting, Meeting, str]]:
        n = next(n for n in range(3) if axis_of(lying, n) == "across")
        for joint, one in edges:
            for _, other in edges:
                surfaces = [meeting.takes.surfaces for meeting in (one, other) if meeting.takes]
                if surfaces[0] == ("edge a",) and surfaces[1] == ("edge b",):
                    both = held[one.cut_in.copy] & held[other.cut_in.copy] - {lying.copy.mark}
                    if any(self._is_rigid(mark, n, movement) for mark in both):
                        yield one, other, joint

    def _is_rigid(self, mark: str, n: int, movement: Movement) -> bool:
        shares = shares_along(self.placed.by_mark[mark], n, movement)
        return shares is not None and shares.swing == 0

    def _caught(
        self, same: list[tuple[Lying, Meeting, Meeting]], joint: Joint, movement: Movement
    ) -> Finding:
        lying, one, other = same[0]
        first, second = (self.placed.by_mark[meeting.cut_in.copy] for meeting in (one, other))
        width = movement.parts[lying.copy.part].width
        swells, moves = max(width.to_dampest, Length(0)), width.swing
        message = (
            f"{start(called(lying))} is held by both edges, between {called(first)} and {called(second)}, "
            f"and can't move by the {self.shown(moves)} that it does over the year"
        )
        remedy = (
            f"let it lie loose (floats: in its joint, or glue: no) with {self.shown(swells / 2)} or more of "
            "room at each edge"
        )
        numbers = {"over": lying.part.width, "moves": moves, "each edge": swells / 2}
        others = likewise(each.copy.mark for each, _, _ in same[1:])
        return self._finding("caught-across-grain", lying, first, message + others, remedy, numbers, joint)

    # mixed wood, edge to edge

    def ridges(self, movement: Movement) -> Iterator[Finding]:
        """Boards of different wood glued edge to edge: one grows thicker than the other."""
        told: dict[tuple[str, str, str], list[Finding]] = {}
        for joint in self.plan.joints.values():
            for meeting in joint.meetings if joint.glue == "yes" else ():
                finding = self._ridge(joint, meeting, movement)
                if finding is not None and meeting.takes:
                    key = (joint.id, meeting.cut_in.part, meeting.takes.part)
                    told.setdefault(key, []).append(finding)
        yield from (same[0] for same in told.values())

    def _ridge(self, joint: Joint, meeting: Meeting, movement: Movement) -> Finding | None:
        takes, cut_in = meeting.takes, meeting.cut_in
        if takes is None or takes.part in joint.floats or takes.part == cut_in.part:
            return None
        if cut_in.surfaces[0] not in EDGES or takes.surfaces[0] not in EDGES:
            return None
        one, other = (movement.parts.get(part) for part in (cut_in.part, takes.part))
        lying, second = (self.placed.by_mark[side.copy] for side in (cut_in, takes))
        if one is None or other is None or one.width.shares == other.width.shares:
            return None
        thick = min(lying.part.thickness, second.part.thickness)
        step = _cent(thick * _most(one.thickness.shares, other.thickness.shares))
        if step < RIDGE:
            return None
        message = (
            f"{start(called(lying))} and {called(second)} are glued edge to edge but move differently: "
            f"a ridge of {self.shown(step)} comes up between them over the year"
        )
        return self._finding(
            "mixed-wood-ridge",
            lying,
            second,
            message,
            "boards of one wood, sawn one way, or a bevel or groove along the joint that hides it",
            {"ridge": step},
            joint,
        )

    def _finding(
        self,
        code: str,
        mover: Lying,
        other: Lying,
        message: str,
        remedy: str,
        numbers: dict[str, Length],
        joint: Joint,
    ) -> Finding:
        own = {name for size in joint.sizes for name in size.sizes}
        sizes = tuple(sorted(own.union(place_sizes(self.plan, mover.copy, other.copy))))
        place = Place((PROJECT_FILE, "joints", joint.id)).key()
        level: Level = "note" if code == "mixed-wood-ridge" else "doubt"
        return Finding(code, level, place, mover.copy.part, message, remedy, numbers, sizes)


def _most(one: Shares, other: Shares) -> Fraction:
    """By how much the two shares part at most, from as made."""
    return max(abs(one.to_driest - other.to_driest), abs(one.to_dampest - other.to_dampest))


def _cent(length: Length) -> Length:
    return to_nearest(length, CENT)


ACROSS: Working[tuple[Across, ...]] = Working(
    "across", "What is held fast across the grain?", look_across, (PLACED, MOVEMENT)
)
