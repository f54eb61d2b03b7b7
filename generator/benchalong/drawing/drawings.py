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
from pathlib import Path
from typing import TYPE_CHECKING, Any

from benchalong.drawing.picture import Picture, PiecePicture
from benchalong.drawing.within import Place, places, smallest_with
from benchalong.drawing.woods import woods_of
from benchalong.ground.lengths import Length
from benchalong.ground.store import Store
from benchalong.plan.model import AssemblyId, Part, PartId, Plan, StepId
from benchalong.workings.climate import CLIMATE
from benchalong.workings.copies import COPIES
from benchalong.workings.movement import MOVEMENT
from benchalong.workings.shapes import SOLIDS, Solids
from benchalong.workings.working import Worked

if TYPE_CHECKING:
    from benchalong.workings.solids import Solid


class Drawings:
    """Pictures by what they show; None where there is nothing to see."""

    def __init__(self, plan: Plan, worked: Worked, store: Store) -> None:
        self._plan = plan
        self._worked = worked
        self._store = store

    def part(self, part: PartId) -> Picture | None:
        """Three views with all sizes."""
        plan = self._plan
        shown = f"{plan.precision!r} {plan.units} {plan.projection}"
        kept = self._kept("part", (self._shapes[part], shown), lambda: self._draw_part(plan.parts[part]))
        return Picture(**kept) if kept else None

    def small(self, part: PartId) -> Picture | None:
        """To know the part by."""
        made_from = (self._shapes[part], self._woods[part])
        kept = self._kept("small", made_from, lambda: self._draw_small(self._plan.parts[part]))
        return Picture(**kept) if kept else None

    def year(self, part: PartId) -> Picture | None:
        """Its width over the year; None for what doesn't move, or too little to see."""
        moves = self._worked[MOVEMENT].parts.get(part)
        if moves is None or moves.is_slight:
            return None
        climate, width, name = self._worked[CLIMATE], moves.width, self._plan.parts[part].name
        states = (
            (f"Driest, {_percent(climate.driest)}", width.driest),
            (f"As made, {_percent(climate.made_at)}", width.made),
            (f"Dampest, {_percent(climate.dampest)}", width.dampest),
        )
        made_from = (name, repr(states), f"{self._plan.precision!r} {self._plan.units}")
        kept = self._kept("year", made_from, lambda: self._draw_year(name, states))
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

    def _picture_of(self, place: Place, touched: frozenset[PartId]) -> PiecePicture | None:
        standing_out = frozenset(copy.mark for copy in place.copies if copy.part in touched)
        title = self._plan.assemblies[place.of].name
        made_from = (title, *(self._stands[copy.mark] for copy in place.copies), "", *sorted(standing_out))
        kept = self._kept("piece", made_from, lambda: self._draw_piece(place, standing_out, title))
        if kept is None:
            return None
        not_shown, shared = tuple(kept.pop("not_shown")), tuple(map(tuple, kept.pop("shared")))
        return PiecePicture(**kept, not_shown=not_shown, shared=shared)

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
    def _shapes(self) -> Mapping[PartId, str]:
        """For each part all that its pictures show of it."""
        return {part.id: _shape(part) for part in self._plan.parts.values()}

    @cached_property
    def _stands(self) -> Mapping[str, str]:
        """For each copy, by its mark, its shape and its place in the piece."""
        return {
            copy.mark: _digest(f"{copy!r} {self._woods[copy.part]} {self._shapes[copy.part]}")
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

    def _draw_part(self, part: Part) -> Picture | None:
        from benchalong.drawing.part import part_drawing

        plan, solid = self._plan, self._solids[part.id]
        if solid.is_empty:
            return None
        return part_drawing(
            part, solid, precision=plan.precision, units=plan.units, projection=plan.projection
        )

    def _draw_small(self, part: Part) -> Picture | None:
        from benchalong.drawing.small import small_picture

        solid = self._solids[part.id]
        return None if solid.is_empty else small_picture(part, solid, wood=self._woods[part.id])

    def _draw_year(self, name: str, states: Sequence[tuple[str, Length]]) -> Picture:
        from benchalong.drawing.sheet import Plain
        from benchalong.drawing.year import State, year_picture

        driest, made, dampest = (State(*state) for state in states)
        return year_picture(name, (driest, made, dampest), Plain(self._plan.units, self._plan.precision))

    def _draw_piece(self, place: Place, standing_out: frozenset[str], title: str) -> PiecePicture | None:
        from benchalong.drawing.piece import piece_picture

        solids: dict[PartId, Solid] = {part: self._solids[part] for part in sorted(place.parts)}
        if all(solid.is_empty for solid in solids.values()):
            return None
        names = {part.id: part.name for part in self._plan.parts.values()}
        return piece_picture(
            place.copies, solids, names=names, title=title, standing_out=standing_out, woods=self._woods
        )


def _percent(moisture: Fraction) -> str:
    return f"{float(moisture):g} %"


@cache
def drawing_code() -> str:
    """A digest of the modules that draw and that make solids, so that a changed rule changes every key: a
    number to be raised by hand would be forgotten once, and then an old picture stands in a new site."""
    here = Path(__file__).parent
    solids = [here.parent / "workings" / name for name in ("bodies.py", "solids.py")]
    modules = [*sorted(here.glob("*.py")), *solids]
    return sha256(b"".join(module.read_bytes() for module in modules)).hexdigest()


def _shape(part: Part) -> str:
    """A part without what no picture shows: the same text in every run."""
    shown = replace(part, count=0, marks=(), glued_up="", purpose="", note="", follows={})
    return _digest(repr(shown))


def _digest(text: str) -> str:
    return sha256(text.encode()).hexdigest()
