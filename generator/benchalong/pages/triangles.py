"""The triangle on sets in words: which part carries which piece of it."""

from __future__ import annotations

from benchalong.drawing.alt import listed
from benchalong.pages.makings import Makings
from benchalong.plan.model import AssemblyId, Shape
from benchalong.workings.triangles import TRIANGLES, Triangle

MOST = 6
"""More copies of one shape than this aren't told one by one."""


def triangles_in(makings: Makings, assembly: AssemblyId) -> tuple[str, ...]:
    """A sentence for each set of an assembly, as it stands in the first of its places."""
    own = [triangle for triangle in makings.worked[TRIANGLES] if triangle.assembly == assembly]
    return tuple(_set_said(triangle) for triangle in own if triangle.within == own[0].within)


def triangles_on(makings: Makings, shape: Shape) -> tuple[str, ...]:
    """A sentence for each copy that is in a set."""
    said = [
        _piece_said(triangle, number)
        for triangle in makings.worked[TRIANGLES]
        for number, piece in enumerate(triangle.pieces)
        if piece.shape == shape.id
    ]
    more = len(said) - MOST
    return (*said[:MOST], f"{more} more likewise, each with its own piece.") if more > 0 else tuple(said)


def _set_said(triangle: Triangle) -> str:
    each = [
        f"{mark} carries its {piece.carries}"
        for mark, piece in zip(triangle.marks, triangle.pieces, strict=True)
    ]
    point = f"its point {triangle.points}"
    return f"One triangle across {listed(triangle.marks)}, on {triangle.sides}, {point}: {listed(each)}."


def _piece_said(triangle: Triangle, number: int) -> str:
    piece = triangle.pieces[number]
    others = [other.mark for other in triangle.pieces if other is not piece]
    return f"{piece.mark} carries the {piece.carries} of one triangle, with {listed(others)}."
