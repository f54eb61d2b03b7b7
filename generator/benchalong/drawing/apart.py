"""The piece, or an assembly, pulled apart along the ways its parts really come out; a thin line runs back to
where each goes. Inner assemblies stay whole.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from benchalong.drawing.eye import PIECE_EYE, Eye
from benchalong.drawing.faces import Floats
from benchalong.drawing.picture import PiecePicture
from benchalong.drawing.piece import Apart, piece_picture
from benchalong.drawing.pulled import Pulled
from benchalong.ground.lengths import Point3
from benchalong.plan.model import PartId
from benchalong.workings.copies import Copy
from benchalong.workings.solids import ShapeId, Solid
from benchalong.workings.ways_out import TakenApart


def apart_picture(
    taken: TakenApart,
    copies: Sequence[Copy],
    solids: Mapping[ShapeId, Solid],
    *,
    names: Mapping[PartId, str],
    title: str,
    woods: Mapping[PartId, str] | None = None,
    eye: Eye = PIECE_EYE,
) -> PiecePicture:
    """`copies` are all of the piece, or those of this assembly's place, in the order of the piece.

    Raises ValueError when there is nothing to draw.
    """
    inside = {copy.mark: copy for copy in copies}
    members = {unit: [inside[mark] for mark in marks] for unit, marks in taken.members.items()}
    pulled = Pulled(taken, members, solids, eye)
    shown = [copy for own in members.values() for copy in own]
    places = {
        copy.mark: shifted(copy.at, pulled.shifts[unit]) for unit, own in members.items() for copy in own
    }
    units = {copy.mark: unit for unit, own in members.items() for copy in own}
    apart = Apart(places, units, tuple(pulled.threads()))
    return piece_picture(shown, solids, names=names, title=title, woods=woods, eye=eye, apart=apart)


def shifted(at: Point3, by: Floats) -> Point3:
    """To a thousandth of a mm: no number of it is ever shown."""
    x, y, z = (value + Fraction(round(float(step) * 1000), 1000) for value, step in zip(at, by, strict=True))
    return (x, y, z)
