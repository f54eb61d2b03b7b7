"""Do doors and drawers still move when the wood is dampest?

What hangs on a hinge grows away from it, what slides grows upwards from where it rests. Two doors that meet
share one gap, and what both grow across the grain goes into it: of framed doors the width of four stiles.
A panel that floats in its frame doesn't count.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from benchalong.ground.lengths import Length, to_nearest
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.plan.model import Moves, Plan
from benchalong.plan.turns import Room
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import DAMP_GAP
from benchalong.workings.grain import shares_along
from benchalong.workings.movement import MOVEMENT, SLIGHT, Movement
from benchalong.workings.placed import PLACED, Lying, Placed, ahead
from benchalong.workings.telling import Telling, called, led, place_sizes, start, way_in
from benchalong.workings.working import Worked, Working

NEAR = Length(25)
"""Mm: what is further away is no gap of this door or drawer."""
CENT = Length(1, 100)
NOTHING = Length(0)


@dataclass(frozen=True)
class Gap:
    """Between what moves and what stands, or moves, beside it; in mm."""

    joint: str
    goes: str
    """The mark of what moves."""
    beside: str
    """The mark of the piece of wood across the gap."""
    way: tuple[int, int, int]
    """Which way it lies in the room."""
    made: Length
    grows: Length
    """What goes into the gap from as made to the dampest, from both sides."""

    @property
    def at_dampest(self) -> Length:
        return self.made - self.grows


@dataclass(frozen=True)
class _Mover:
    joint: str
    moves: Moves
    members: tuple[Lying, ...]
    room: Room


def look_at_gaps(plan: Plan, worked: Worked) -> tuple[tuple[Gap, ...], tuple[Finding, ...]]:
    looking = _Looking(plan, worked[PLACED], worked[MOVEMENT])
    gaps = tuple(looking.gaps())
    return gaps, tuple(looking.findings(gaps))


class _Looking:
    def __init__(self, plan: Plan, placed: Placed, movement: Movement) -> None:
        self.plan, self.placed, self.movement = plan, placed, movement
        self.telling = Telling(plan)
        self.floating = frozenset(part for joint in plan.joints.values() for part in joint.floats)
        self.movers = tuple(self._movers())
        self._growth = cache(self._grows_by)

    def _movers(self) -> Iterator[_Mover]:
        seen = set[str]()
        for joint in self.plan.joints.values():
            for moves in joint.moves:
                members = tuple(one for one in self.placed.lying if _belongs(one, moves.goes))
                if moves.how != "is held" and moves.goes not in seen and members:
                    seen.add(moves.goes)
                    yield _Mover(joint.id, moves, members, _around(members))

    # the gaps

    def gaps(self) -> Iterator[Gap]:
        told = set[frozenset[object]]()
        for mover in self.movers:
            for n in range(3):
                for sign in (-1, 1):
                    gap = self._gap(mover, n, sign) if self._is_beside(mover, n) else None
                    if gap is not None and gap.grows > 0:
                        other = self._owner(gap.beside)
                        pair = frozenset({gap.goes, other.moves.goes if other else (gap.beside, n, sign)})
                        if pair not in told:
                            told.add(pair)
                            yield gap

    def _is_beside(self, mover: _Mover, n: int) -> bool:
        """Not the way it slides, nor through the thickness of what turns."""
        way = mover.moves.way or (0, 0, 0)
        if mover.moves.how == "slides":
            return not way[n]
        spans = [mover.room[1][axis] - mover.room[0][axis] for axis in range(3)]
        return bool(way[n]) or spans[n] > min(spans)

    def _gap(self, mover: _Mover, n: int, sign: int) -> Gap | None:
        way = (sign * (n == 0), sign * (n == 1), sign * (n == 2))
        near = [
            (gap, other)
            for member in mover.members
            for other in self.placed.lying
            if not _belongs(other, mover.moves.goes)
            and (gap := ahead(member, other, way)) is not None
            and 0 <= gap <= NEAR
        ]
        if not near:
            return None
        made, beside = min(near, key=lambda pair: pair[0])
        grows = self._towards(mover, n, sign) + self._neighbour(beside, n, -sign)
        return Gap(mover.joint, mover.moves.goes, beside.copy.mark, way, made, _cent(grows))

    def _neighbour(self, beside: Lying, n: int, sign: int) -> Length:
        """What the wood across the gap grows into it; of what stands still, half, as both its edges move."""
        owner = self._owner(beside.copy.mark)
        if owner is not None:
            return self._towards(owner, n, sign)
        return self._one_grows(beside, n) / 2

    def _owner(self, mark: str) -> _Mover | None:
        lying = self.placed.by_mark[mark]
        return next((mover for mover in self.movers if _belongs(lying, mover.moves.goes)), None)

    def _towards(self, mover: _Mover, n: int, sign: int) -> Length:
        """What of its growth goes this way."""
        return self._growth(mover, n) * self._share(mover, n, sign)

    def _share(self, mover: _Mover, n: int, sign: int) -> Length:
        """Away from its hinge all, along its axis half; upwards from what it rests on all."""
        at, way = mover.moves.at, mover.moves.way or (0, 0, 0)
        low, high = mover.room[0][n], mover.room[1][n]
        if mover.moves.how == "turns" and at is not None and not way[n]:
            is_low = abs(at[n] - low) < abs(at[n] - high)
            return Length(1 if (sign > 0) == is_low else 0)
        if mover.moves.how == "slides" and n == 2:
            return Length(1 if sign > 0 else 0)
        return Length(1, 2)

    def _one_grows(self, lying: Lying, n: int) -> Length:
        shares = shares_along(lying, n, self.movement)
        size = lying.room[1][n] - lying.room[0][n]
        return max(NOTHING, size * shares.to_dampest) if shares else NOTHING

    def _grows_by(self, mover: _Mover, n: int) -> Length:
        """Along an axis, of the pieces that lie side by side on it, the chain that grows most."""
        members = [one for one in mover.members if one.copy.part not in self.floating]
        ordered = sorted(members, key=lambda one: (one.room[0][n], one.room[1][n]))
        best: dict[int, Length] = {}
        for index, one in enumerate(ordered):
            before = [best[so_far.number] for so_far in ordered[:index] if _leads(so_far, one, n)]
            best[one.number] = self._one_grows(one, n) + max(before, default=NOTHING)
        return max(best.values(), default=NOTHING)

    # what is said

    def findings(self, gaps: Sequence[Gap]) -> Iterator[Finding]:
        """A gap small as made, and that stays so, is the author's own; none at all is told of elsewhere."""
        least = DAMP_GAP.of(self.plan.units)
        for gap in gaps:
            is_tight = gap.at_dampest < least and gap.grows >= SLIGHT
            if gap.made > 0 and (gap.at_dampest <= 0 or is_tight):
                yield self._finding(gap, least)

    def _finding(self, gap: Gap, least: Length) -> Finding:
        shown, beside = self.telling.fine, self.placed.by_mark[gap.beside]
        mover = next(mover for mover in self.movers if mover.moves.goes == gap.goes)
        first = mover.members[0]
        name, subject = self._named(mover)
        sticks = gap.at_dampest <= 0
        level: Level = "fault" if sticks else "doubt"
        both = "the two swell" if self._owner(gap.beside) else "the wood swells"
        outcome = (
            "so it sticks" if sticks else f"which leaves {shown(gap.at_dampest)}; {shown(least)} is usual"
        )
        side = led(way_in(self.placed, "", gap.way))
        message = (
            f"{start(name)} has a gap of {shown(gap.made)} {side}, to {called(beside)}; at the dampest "
            f"{both} by {shown(gap.grows)} into it, {outcome}"
        )
        more = least - gap.at_dampest
        own = {name for size in self.plan.joints[gap.joint].sizes for name in size.sizes}
        sizes = tuple(sorted(own.union(place_sizes(self.plan, first.copy, beside.copy))))
        return Finding(
            "sticks-when-damp" if sticks else "tight-when-damp",
            level,
            Place((PROJECT_FILE, "joints", gap.joint)).key(),
            subject,
            message,
            f"make the gap {shown(more)} wider{self._or_quarter(mover)}",
            {"gap": gap.made, "swells": gap.grows, "left": gap.at_dampest, "wider": more},
            sizes,
        )

    def _or_quarter(self, mover: _Mover) -> str:
        moves = [self.movement.parts.get(one.copy.part) for one in mover.members]
        could = any(each and each.sawn != "quarter" for each in moves)
        return ", or use quarter-sawn wood, which moves less" if could else ""

    def _named(self, mover: _Mover) -> tuple[str, str]:
        """What moves in words, and its name in the plan."""
        goes = mover.moves.goes
        first = mover.members[0]
        if goes == first.copy.mark:
            return called(first), first.copy.part
        depth = len(goes.split("/"))
        assembly = first.copy.assemblies[depth]
        return f"{self.plan.assemblies[assembly].name.lower()} {goes}", assembly


def _belongs(lying: Lying, goes: str) -> bool:
    return lying.copy.mark == goes or lying.copy.mark.startswith(f"{goes}/")


def _around(members: Sequence[Lying]) -> Room:
    low = tuple(min(one.room[0][n] for one in members) for n in range(3))
    high = tuple(max(one.room[1][n] for one in members) for n in range(3))
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _leads(one: Lying, other: Lying, n: int) -> bool:
    """Whether the other begins where the first ends, or in its joint, and lies beside it."""
    overlap = one.room[1][n] - other.room[0][n]
    shorter = min(lying.room[1][n] - lying.room[0][n] for lying in (one, other))
    beside = all(
        one.room[0][m] < other.room[1][m] and other.room[0][m] < one.room[1][m] for m in range(3) if m != n
    )
    return beside and one.room[0][n] < other.room[0][n] and 0 <= overlap < shorter / 2


def _cent(length: Length) -> Length:
    return to_nearest(length, CENT)


GAPS: Working[tuple[Gap, ...]] = Working(
    "gaps", "Do doors and drawers still move at the dampest?", look_at_gaps, (PLACED, MOVEMENT)
)
