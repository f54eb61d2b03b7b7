"""Every picture a site asks for: from the store where it is there, drawn where it isn't.

A picture's key says all it is made from: the code that draws, boxes, cuts, places, marks and names, and how
sizes are shown. It says nothing of lines in files, prices or notes, so those change no key. What
draws is imported only when something must be drawn, and solids are made only then.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, replace
from fractions import Fraction
from functools import cache, cached_property
from hashlib import sha256
from itertools import compress
from pathlib import Path
from typing import Any

from benchalong.drawing.picture import Picture, PiecePicture
from benchalong.drawing.within import Place, places, smallest_with
from benchalong.drawing.woods import woods_of
from benchalong.ground.lengths import Length
from benchalong.ground.store import Store, code_digest
from benchalong.plan.model import AssemblyId, Joint, Part, PartId, Plan, StepId
from benchalong.trade.joints import KINDS, is_told
from benchalong.trade.room import Frame
from benchalong.trade.ways.model import Way, Work
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.boards.letters import letters_of
from benchalong.workings.boards.model import Sawn
from benchalong.workings.climate import CLIMATE
from benchalong.workings.copies import COPIES
from benchalong.workings.floating import FLOATING
from benchalong.workings.movement import MOVEMENT, Across
from benchalong.workings.placed import PLACED
from benchalong.workings.solids import SOLIDS, ShapeId, Solids
from benchalong.workings.triangles import TRIANGLES, Piece, Triangle
from benchalong.workings.ways_out import WAYS_OUT, TakenApart
from benchalong.workings.working import Worked


class Drawings:
    """Pictures by what they show; None where there is nothing to see."""

    def __init__(self, plan: Plan, worked: Worked, store: Store) -> None:
        self._plan = plan
        self._worked = worked
        self._store = store

    def part(self, shape: ShapeId) -> Picture | None:
        """Three views with all sizes, of a part's only or first shape by the part's id, or of another."""
        plan = self._plan
        shown = f"{plan.precision!r} {plan.units} {plan.projection}"
        pieces = [p for one in self._worked[TRIANGLES] for p in one.pieces if p.shape == shape]
        made_from = (self._looks[shape], shown, repr(pieces))
        kept = self._kept("part", made_from, lambda: self._draw_part(shape, pieces))
        return Picture(**kept) if kept else None

    def small(self, shape: ShapeId) -> Picture | None:
        """To know the part by."""
        made_from = (self._looks[shape], self._woods[self._solids.parts[shape].id])
        kept = self._kept("small", made_from, lambda: self._draw_small(shape))
        return Picture(**kept) if kept else None

    def year(self, part: PartId) -> Picture | None:
        """Its width over the year; None for what doesn't move, or too little to see."""
        moves = self._worked[MOVEMENT].parts.get(part)
        if moves is None or moves.is_slight:
            return None
        states, name = self._states(moves.width), self._plan.parts[part].name
        made_from = (name, repr(states), f"{self._plan.precision!r} {self._plan.units}")
        kept = self._kept("year", made_from, lambda: self._draw_year(name, states))
        return Picture(**kept) if kept else None

    def sawn(self, group: str, number: int) -> Picture | None:
        """A board with what is cut from it, by its number in its group."""
        found = next(each for each in self._worked[BOARDS]().groups if each.id == group)
        board = next(each for each in (*found.boards, *found.more) if each.number == number)
        letters = letters_of(found)
        what = "sheet" if self._plan.stock[found.stock].kind == "sheet" else "board"
        names = ", ".join(dict.fromkeys(self._blank_names(laid.blank) for laid in board.laid))
        made_from = (repr(board), repr(letters), what, names, f"{self._plan.precision!r} {self._plan.units}")
        kept = self._kept("sawn", made_from, lambda: self._draw_sawn(board, letters, what, names))
        return Picture(**kept) if kept else None

    def in_grooves(self, joint: str, part: PartId) -> Picture | None:
        """A panel in its grooves over the year; None for what doesn't lie loose between two."""
        one = next((one for one in self._worked[FLOATING] if (one.joint, one.part) == (joint, part)), None)
        if one is None or one.frame.depths[0] != one.frame.depths[1]:
            return None
        width = self._worked[MOVEMENT].parts[part].width
        states, name = self._states(width), self._plan.parts[part].name
        made_from = (name, f"{states!r} {one.frame!r}", f"{self._plan.precision!r} {self._plan.units}")
        kept = self._kept("in grooves", made_from, lambda: self._draw_in_grooves(name, states, one.frame))
        return Picture(**kept) if kept else None

    def piece(self) -> PiecePicture | None:
        """Everything that is placed."""
        return self.assembly(self._plan.piece) if self._plan.piece else None

    def assembly(self, assembly: AssemblyId) -> PiecePicture | None:
        """An assembly in the first of its places in the piece."""
        place = next((place for place in self._places if place.of == assembly), None)
        return self._picture_of(place, frozenset()) if place else None

    def step(self, step: StepId) -> PiecePicture | None:
        """The copies a step touches, standing out in the smallest assembly that holds them all. Where that
        is all there is in it, nothing stands out."""
        touched = frozenset(self._plan.steps[step].parts) & self._placed
        place = smallest_with(touched, self._places) if touched else None
        if place is None:
            return None
        return self._picture_of(place, frozenset() if touched == place.parts else touched)

    def piece_apart(self) -> PiecePicture | None:
        """Everything that is placed, pulled apart; inner assemblies whole."""
        return self.apart(self._plan.piece) if self._plan.piece else None

    def apart(self, assembly: AssemblyId) -> PiecePicture | None:
        """An assembly pulled apart; None for one that has nothing to pull."""
        taken = self._worked[WAYS_OUT].get(assembly)
        if taken is None or not taken.moves:
            return None
        title = self._plan.assemblies[assembly].name
        within = [mark for marks in taken.members.values() for mark in marks]
        triangles = self._triangles_on(assembly, within)
        made_from = (title, repr(taken), repr(triangles), *(self._stands[mark] for mark in within))
        return _piece_picture(
            self._kept("apart", made_from, lambda: self._draw_apart(taken, title, triangles))
        )

    def section(self, joint: str) -> Picture | None:
        """A cut through what a joint hides; None where it brings nothing together."""
        plan, one = self._plan, self._plan.joints[joint]
        marks = {side.copy for m in one.meetings for side in (m.cut_in, m.takes) if side is not None}
        shown = f"{plan.precision!r} {plan.units}"
        made_from = (repr(one), shown, *(self._stands[mark] for mark in sorted(marks)))
        kept = self._kept("section", made_from, lambda: self._draw_section(one))
        return Picture(**kept) if kept else None

    def setup(self, work: Work, way: Way) -> Picture | None:
        """The work against fence, table and cutter; None for what is done to a line."""
        plan, none = self._plan, Fraction(0)
        work = replace(work, count=1)
        way = replace(way, does=(), test=None, why=(), cautions=(), to_set=none, for_all=none)
        made_from = (repr(work), repr(way), f"{plan.precision!r} {plan.units}")
        kept = self._kept("setup", made_from, lambda: self._draw_setup(work, way))
        return Picture(**kept) if kept else None

    def _picture_of(self, place: Place, touched: frozenset[PartId]) -> PiecePicture | None:
        standing_out = frozenset(copy.mark for copy in place.copies if copy.part in touched)
        title = self._plan.assemblies[place.of].name
        triangles = self._triangles_on(place.of, [copy.mark for copy in place.copies])
        if standing_out:
            is_at_work = [any(piece.mark in standing_out for piece in one.pieces) for one in triangles]
            triangles = tuple(compress(triangles, is_at_work))
        stand = (self._stands[copy.mark] for copy in place.copies)
        made_from = (title, repr(triangles), *stand, "", *sorted(standing_out))
        return _piece_picture(
            self._kept("piece", made_from, lambda: self._draw_piece(place, standing_out, title, triangles))
        )

    def _triangles_on(self, assembly: AssemblyId, marks: Sequence[str]) -> tuple[Triangle, ...]:
        """Those on sets of this assembly itself, in the place that these copies are of."""
        inside = set(marks)
        return tuple(
            triangle
            for triangle in self._worked[TRIANGLES]
            if triangle.assembly == assembly and all(piece.mark in inside for piece in triangle.pieces)
        )

    # The store

    def _kept(
        self, kind: str, made_from: tuple[str, ...], draw: Callable[[], Picture | None]
    ) -> dict[str, Any] | None:
        """A picture's fields."""
        said = json.dumps([drawing_code(), kind, *made_from], ensure_ascii=False)
        key = f"{kind}-{_digest(said)}"
        text = self._store.get(key)
        if text is None:
            picture = draw()
            text = json.dumps(picture and asdict(picture), ensure_ascii=False, sort_keys=True)
            self._store.put(key, text)
        found: dict[str, Any] | None = json.loads(text)
        return found

    @cached_property
    def _looks(self) -> Mapping[ShapeId, str]:
        """For each shape all that its pictures show of it."""
        return {name: _look(part) for name, part in self._solids.parts.items()}

    @cached_property
    def _stands(self) -> Mapping[str, str]:
        """For each copy, by its mark, its shape and its place in the piece."""
        return {
            copy.mark: _digest(f"{copy!r} {self._woods[copy.part]} {self._looks[copy.shape]}")
            for place in self._places
            for copy in place.copies
        }

    @cached_property
    def _woods(self) -> Mapping[PartId, str]:
        return woods_of(self._plan)

    # What there is to draw

    @cached_property
    def _places(self) -> tuple[Place, ...]:
        copies = self._worked[COPIES]
        return places(copies)

    @cached_property
    def _placed(self) -> frozenset[PartId]:
        return frozenset(part for place in self._places for part in place.parts)

    @property
    def _solids(self) -> Solids:
        return self._worked[SOLIDS]

    def _draw_part(self, shape: ShapeId, pieces: Sequence[Piece]) -> Picture | None:
        from benchalong.drawing.own_triangle import own_triangle
        from benchalong.drawing.part import part_drawing

        plan, part, solid = self._plan, self._solids.parts[shape], self._solids[shape]
        if solid.is_empty:
            return None
        return part_drawing(
            part,
            solid,
            precision=plan.precision,
            units=plan.units,
            projection=plan.projection,
            triangle=own_triangle(pieces),
        )

    def _draw_small(self, shape: ShapeId) -> Picture | None:
        from benchalong.drawing.small import small_picture

        part, solid = self._solids.parts[shape], self._solids[shape]
        return None if solid.is_empty else small_picture(part, solid, wood=self._woods[part.id])

    def _draw_year(self, name: str, states: Sequence[tuple[str, Length]]) -> Picture:
        from benchalong.drawing.sheet import Plain
        from benchalong.drawing.year import State, year_picture

        driest, made, dampest = (State(*state) for state in states)
        return year_picture(name, (driest, made, dampest), Plain(self._plan.units, self._plan.precision))

    def _blank_names(self, blank: str) -> str:
        return " and ".join(dict.fromkeys(each.name for each in self._worked[BLANKS].by_id[blank].gives))

    def _draw_sawn(self, board: Sawn, letters: Mapping[str, str], what: str, names: str) -> Picture:
        from benchalong.drawing.sawn import sawn_picture
        from benchalong.drawing.sheet import Plain

        plain = Plain(self._plan.units, self._plan.precision)
        return sawn_picture(board, letters, what=what, names=names, plain=plain)

    def _states(self, width: Across) -> tuple[tuple[str, Length], ...]:
        """Driest, as made and dampest."""
        climate = self._worked[CLIMATE]
        return (
            (f"Driest, {_percent(climate.driest)}", width.driest),
            (f"As made, {_percent(climate.made_at)}", width.made),
            (f"Dampest, {_percent(climate.dampest)}", width.dampest),
        )

    def _draw_in_grooves(self, name: str, states: Sequence[tuple[str, Length]], frame: Frame) -> Picture:
        from benchalong.drawing.groove_year import groove_year_picture
        from benchalong.drawing.sheet import Plain
        from benchalong.drawing.year import State

        driest, made, dampest = (State(*state) for state in states)
        plain = Plain(self._plan.units, self._plan.precision)
        return groove_year_picture(
            name, (driest, made, dampest), sight=frame.sight, depth=frame.depths[0], plain=plain
        )

    def _draw_piece(
        self, place: Place, standing_out: frozenset[str], title: str, triangles: Sequence[Triangle]
    ) -> PiecePicture | None:
        from benchalong.drawing.piece import piece_picture

        solids = {shape: self._solids[shape] for shape in sorted({copy.shape for copy in place.copies})}
        if all(solid.is_empty for solid in solids.values()):
            return None
        names = {part.id: part.name for part in self._plan.parts.values()}
        return piece_picture(
            place.copies,
            solids,
            names=names,
            title=title,
            standing_out=standing_out,
            woods=self._woods,
            triangles=triangles,
        )

    def _draw_apart(self, taken: TakenApart, title: str, triangles: Sequence[Triangle]) -> PiecePicture:
        from benchalong.drawing.apart import apart_picture

        names = {part.id: part.name for part in self._plan.parts.values()}
        copies = self._worked[COPIES]
        return apart_picture(
            taken, copies, self._solids, names=names, title=title, woods=self._woods, triangles=triangles
        )

    def _draw_section(self, joint: Joint) -> Picture | None:
        from benchalong.drawing.section import section_drawing

        plan, words = self._plan, KINDS[joint.kind].sizes
        placed = self._worked[PLACED]
        told = tuple(size for size in joint.sizes if is_told(joint.kind, size.name, joint.has))
        joint = replace(joint, sizes=told)
        return section_drawing(joint, placed, words=words, units=plan.units, precision=plan.precision)

    def _draw_setup(self, work: Work, way: Way) -> Picture | None:
        from benchalong.drawing.setup import setup_picture

        return setup_picture(work, way, units=self._plan.units, precision=self._plan.precision)


def _piece_picture(kept: dict[str, Any] | None) -> PiecePicture | None:
    if kept is None:
        return None
    not_shown, shared = tuple(kept.pop("not_shown")), tuple(map(tuple, kept.pop("shared")))
    return PiecePicture(**kept, not_shown=not_shown, shared=shared)


def _percent(moisture: Fraction) -> str:
    return f"{float(moisture):g} %"


@cache
def drawing_code() -> str:
    """A digest of the modules that draw and that make solids: no old picture stands in a new site."""
    here = Path(__file__).parent
    solids = [here.parent / "workings" / name for name in ("bodies.py", "faces.py", "solids.py")]
    return code_digest([*sorted(here.rglob("*.py")), *solids])


def _look(part: Part) -> str:
    """A part without what no picture shows: the same text in every run."""
    shown = replace(
        part,
        count=0,
        marks=(),
        glued_up="",
        strips=None,
        resaw=1,
        rough_with="",
        purpose="",
        note="",
        follows={},
    )
    return _digest(repr(shown))


def _digest(text: str) -> str:
    return sha256(text.encode()).hexdigest()
