"""Assemblies, their places, and the triangles that mark them, as plain data, for `plan.json`."""

from __future__ import annotations

from benchalong.plan.model import Assembly, Placed, Tilt
from benchalong.publishing.plain import Json, Plain
from benchalong.workings.extent import Extent, Sides
from benchalong.workings.triangles import Triangle


def assembly_json(assembly: Assembly, extent: Extent | None, plain: Plain) -> Json:
    sides = extent.assemblies.get(assembly.id) if extent else None
    return {
        "id": assembly.id,
        "name": assembly.name,
        "note": assembly.note,
        "overall": overall_json(sides, plain),
        "place": [_placed(each, plain) for each in assembly.placed],
    }


def _placed(placed: Placed, plain: Plain) -> Json:
    return {
        placed.kind: placed.of,
        "mark": placed.mark,
        "turn": [list(row) for row in placed.turn],
        "at": plain.lengths(placed.at),
        "touches": list(placed.touches),
        "tilt": tilt_json(placed.tilt, plain),
    }


def tilt_json(tilt: Tilt | None, plain: Plain) -> Json | None:
    if tilt is None:
        return None
    rows = [[float(value) for value in row] for row in tilt.turn]
    return {"turn": rows, "at": plain.lengths(tilt.at)}


def overall_json(sides: Sides | None, plain: Plain) -> Json | None:
    if sides is None:
        return None
    return {name: plain.length(getattr(sides, name)) for name in ("width", "depth", "height")}


def triangle_json(triangle: Triangle) -> Json:
    return {
        "assembly": triangle.assembly,
        "within": triangle.within,
        "across": triangle.sides,
        "points": triangle.points,
        "pieces": [
            {
                "mark": piece.mark,
                "part": piece.part,
                "shape": piece.shape,
                "on": piece.named,
                "carries": piece.carries,
            }
            for piece in triangle.pieces
        ],
    }
