"""The piece, or an assembly, pulled apart along the ways its parts really come out; a thin line runs back to
where each goes. Inner assemblies stay whole.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from benchalong.drawing.alt import listed
from benchalong.drawing.eye import PIECE_EYE, Eye
from benchalong.drawing.picture import PiecePicture
from benchalong.drawing.piece import Apart, piece_picture, shortened
from benchalong.drawing.pulled import Pulled
from benchalong.ground.words import in_sentence
from benchalong.plan.model import PartId
from benchalong.plan.turns import moved
from benchalong.workings.bodies import Floats
from benchalong.workings.copies import Copy
from benchalong.workings.solids import ShapeId, Solid
from benchalong.workings.triangles import Triangle
from benchalong.workings.ways_out import TakenApart

MOST_THREADS = 60
TOLD = 14
"""Of more things than this it isn't told in words which way each goes."""
LEAST_WAY, MOST_WAY = ("to the left", "to the front", "down"), ("to the right", "to the back", "up")


def apart_picture(
    taken: TakenApart,
    copies: Sequence[Copy],
    solids: Mapping[ShapeId, Solid],
    *,
    names: Mapping[PartId, str],
    title: str,
    woods: Mapping[PartId, str] | None = None,
    eye: Eye = PIECE_EYE,
    triangles: Sequence[Triangle] = (),
) -> PiecePicture:
    """`copies` are all of the piece, or those of this assembly's place, in the order of the piece.

    Raises ValueError when there is nothing to draw.
    """
    inside = {copy.mark: copy for copy in copies}
    members = {unit: [inside[mark] for mark in marks] for unit, marks in taken.members.items()}
    pulled = Pulled(taken, members, solids, eye)
    shown = [copy for own in members.values() for copy in own]
    places = {copy.mark: shifted(copy, pulled.shifts[unit]) for unit, own in members.items() for copy in own}
    units = {copy.mark: unit for unit, own in members.items() for copy in own}
    apart = Apart(places, units, _some(list(pulled.threads())), _said(pulled, names))
    return piece_picture(
        shown, solids, names=names, title=title, woods=woods, eye=eye, apart=apart, triangles=triangles
    )


def _some(threads: Sequence[Floats]) -> tuple[Floats, ...]:
    """All, or so many that they can be told apart, evenly picked."""
    every = max(1, -(-len(threads) // MOST_THREADS))
    return tuple(threads[::every])


def _said(pulled: Pulled, names: Mapping[PartId, str]) -> str:
    """`, pulled apart: hinge stile H to the left, top rail T up`; of many only that it is."""
    short = dict(zip(pulled.members, shortened(list(pulled.members)), strict=True))
    goes = [
        f"{_called(unit, own, names)}{short[unit]} {_way_words(pulled.shifts[unit])}"
        for unit, own in pulled.members.items()
        if pulled.shifts[unit].any()
    ]
    return f", pulled apart: {listed(goes)}" if len(goes) <= TOLD else ", pulled apart"


def _called(unit: str, own: Sequence[Copy], names: Mapping[PartId, str]) -> str:
    """The part's name; an inner assembly goes by its mark alone."""
    is_part = len(own) == 1 and own[0].mark == unit
    return f"{in_sentence(names.get(own[0].part, own[0].part))} " if is_part else ""


def _way_words(shift: Floats) -> str:
    ways = [
        (LEAST_WAY[n], MOST_WAY[n])[value > 0] for n, value in enumerate(shift.tolist()) if abs(value) > 0.5
    ]
    return " and ".join(ways)


def shifted(copy: Copy, by: Floats) -> Copy:
    """To a thousandth of a mm: no number of it is ever shown."""
    x, y, z = (Fraction(round(float(step) * 1000), 1000) for step in by)
    if copy.tilt is None:
        return replace(copy, at=moved(copy.at, (x, y, z)))
    return replace(copy, tilt=replace(copy.tilt, at=moved(copy.tilt.at, (x, y, z))))
