"""One piece of work of every kind, as a frame-and-panel cupboard would ask for it, in inches."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from benchalong.ground.lengths import INCH, Length
from benchalong.trade.ways.model import Family, Piece, Wood, Work


def inches(text: str) -> Length:
    return sum((Fraction(one) for one in text.split()), Fraction(0)) * INCH


def piece(length: str, width: str, thickness: str, wood: Wood = "hard") -> Piece:
    return Piece(length=inches(length), width=inches(width), thickness=inches(thickness), wood=wood)


STILE = piece("24", "2 3/8", "3/4")
RAIL = piece("14", "2 3/8", "3/4")
SIDE = piece("26", "9", "3/4")
ROUGH = piece("48", "6", "1")

GROOVE = Work(
    family="groove",
    piece=STILE,
    surface="edge",
    width=inches("5/16"),
    depth=inches("7/16"),
    length=STILE.length,
    near=inches("7/32"),
    count=4,
)
DADO = Work(
    family="dado",
    piece=SIDE,
    run="width",
    width=inches("3/4"),
    depth=inches("1/4"),
    length=SIDE.width,
    near=inches("8 3/4"),
    count=2,
)
RABBET = Work(
    family="rabbet",
    piece=SIDE,
    width=inches("1/4"),
    depth=inches("3/8"),
    length=SIDE.length,
    count=2,
)
TENON = Work(
    family="tenon",
    piece=RAIL,
    surface="end",
    run="width",
    width=inches("1/4"),
    depth=inches("1"),
    length=RAIL.width,
    near=inches("1/4"),
    shoulders=(inches("3/8"), inches("3/8")),
    count=8,
)
MORTISE = Work(
    family="mortise",
    piece=STILE,
    surface="edge",
    width=inches("1/4"),
    depth=inches("1 1/16"),
    length=inches("1 5/8"),
    near=inches("1/4"),
    before=inches("3/8"),
    count=8,
)
HOLE = Work(
    family="pilot hole",
    piece=SIDE,
    width=inches("1/8"),
    depth=inches("1/2"),
    length=inches("1/8"),
    near=inches("1"),
    before=inches("2"),
    each=3,
    count=4,
)
NOTCH = Work(
    family="notch",
    piece=SIDE,
    surface="edge",
    run="thickness",
    width=inches("3"),
    depth=inches("3/4"),
    length=SIDE.thickness,
    through=True,
    count=2,
)
MITRE = Work(
    family="mitre",
    piece=RAIL,
    surface="end",
    run="thickness",
    width=RAIL.width,
    angle=Fraction(45),
    through=True,
    count=8,
)
FINGERS = Work(
    family="fingers",
    piece=piece("12", "4", "1/2"),
    surface="end",
    run="thickness",
    width=inches("1/2"),
    depth=inches("1/2"),
    length=inches("1/2"),
    each=4,
    count=8,
)
OUTLINE = Work(
    family="curved outline", piece=SIDE, width=inches("4"), length=inches("6"), through=True, count=2
)

WORKS: dict[Family, Work] = {
    "rough crosscut": Work(family="rough crosscut", piece=ROUGH, length=inches("27"), count=4),
    "split rough": Work(family="split rough", piece=ROUGH, width=inches("3"), count=4),
    "joint a face": Work(family="joint a face", piece=ROUGH, depth=inches("1/8"), count=4),
    "joint an edge": Work(family="joint an edge", piece=ROUGH, surface="edge", depth=inches("1/8"), count=4),
    "plane to thickness": Work(family="plane to thickness", piece=ROUGH, depth=inches("1/4"), count=4),
    "rip": Work(family="rip", piece=ROUGH, width=inches("2 3/8"), count=8),
    "crosscut to length": Work(
        family="crosscut to length", piece=STILE, run="width", length=inches("24"), through=True, count=4
    ),
    "resaw": Work(
        family="resaw", piece=piece("30", "5", "2"), surface="edge", width=inches("15/16"), count=2
    ),
    "glue up a panel": Work(family="glue up a panel", piece=SIDE, count=3),
    "groove": GROOVE,
    "dado": DADO,
    "stopped dado": replace(DADO, family="stopped dado", length=inches("8")),
    "rabbet": RABBET,
    "tongue": replace(TENON, family="tongue", shoulders=(Fraction(0), Fraction(0)), depth=inches("3/8")),
    "tenon": TENON,
    "mortise": MORTISE,
    "pilot hole": HOLE,
    "clearance hole": replace(HOLE, family="clearance hole", through=True, depth=SIDE.thickness),
    "dowel hole": replace(HOLE, family="dowel hole", width=inches("3/8"), length=inches("3/8")),
    "notch": NOTCH,
    "bevel": Work(
        family="bevel",
        piece=SIDE,
        width=inches("1/8"),
        depth=inches("1/8"),
        length=SIDE.length,
        angle=Fraction(45),
        count=4,
    ),
    "taper": Work(
        family="taper",
        piece=STILE,
        surface="edge",
        width=STILE.thickness,
        depth=inches("1/2"),
        length=inches("18"),
        count=4,
    ),
    "straight outline": replace(OUTLINE, family="straight outline"),
    "curved outline": OUTLINE,
    "mitre": MITRE,
    "spline slot": Work(
        family="spline slot",
        piece=RAIL,
        surface="end",
        run="width",
        width=inches("1/8"),
        depth=inches("3/8"),
        length=RAIL.width,
        near=inches("5/16"),
        angle=Fraction(45),
        is_frame=True,
        count=8,
    ),
    "tails": replace(FINGERS, family="tails", angle=Fraction(71, 10)),
    "pins": replace(FINGERS, family="pins", angle=Fraction(71, 10)),
    "fingers": FINGERS,
    "hinge gain": Work(
        family="hinge gain",
        piece=STILE,
        surface="edge",
        run="thickness",
        width=inches("2"),
        depth=inches("5/64"),
        length=inches("5/8"),
        near=inches("2"),
        count=4,
    ),
    "flush": Work(
        family="flush", piece=RAIL, depth=inches("1/64"), width=inches("2"), length=inches("2"), count=4
    ),
    "sand": Work(family="sand", piece=SIDE, count=4),
}
"""By kind of work."""


def in_other_sizes(work: Work) -> tuple[Work, ...]:
    """As it is, small, large, thick, and with sizes that no scale shows exactly."""
    return (work, *(times(work, Fraction(factor)) for factor in ("1/2", "9/4", "10/7")))


def times(work: Work, factor: Fraction) -> Work:
    """Every length of it times a factor."""
    size = work.piece
    grown = replace(
        size, length=size.length * factor, width=size.width * factor, thickness=size.thickness * factor
    )
    one, two = work.shoulders
    return replace(
        work,
        piece=grown,
        width=work.width * factor,
        depth=work.depth * factor,
        length=work.length * factor,
        near=work.near * factor,
        before=work.before * factor,
        shoulders=(one * factor, two * factor),
    )
