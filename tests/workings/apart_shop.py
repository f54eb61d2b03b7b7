"""Things to take apart: projects as a user writes them, and bodies built from cells."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping, Sequence
from fractions import Fraction
from pathlib import Path

from benchalong.plan.model import Copy, Part, Plan
from benchalong.plan.resolve import resolve
from benchalong.plan.turns import UNTURNED
from benchalong.reading.project import read_project
from benchalong.workings.assembled import Assembled
from benchalong.workings.clashes import CLASHES
from benchalong.workings.copies import COPIES
from benchalong.workings.placed import PLACED, Lying, Placed, room_at
from benchalong.workings.solids import SOLIDS, Solids
from benchalong.workings.ways_out import WAYS_OUT, Taking
from benchalong.workings.working import Worked, work_all
from drawing.shop import part, slot

FRAME_PARTS = """
title: Frame
units: millimetre
stock: {oak: {kind: board, thickness: 20}}
stages: {all: {title: All}}
parts:
  stile:
    stock: oak
    width: 60
    length: 500
    cuts: [{cut: groove, on: edge b, width: 8, depth: 10}]
  rail:
    stock: oak
    width: 60
    length: 220
    cuts:
      - {cut: groove, on: edge b, width: 8, depth: 10}
      - {cut: tongue, on: end a, thickness: 8, length: 10}
      - {cut: tongue, on: end b, thickness: 8, length: 10}
  panel: {stock: oak, thickness: 8, width: PANEL, length: 400}
"""
"""A door frame without any play; the panel 220 wide or less."""

STICKS = """
      - {part: stile, mark: H, at: [0, 0, 0], along: up, face: front}
      - {part: stile, mark: M, at: [260, 0, 0], along: down, face: front}
      - {part: rail, mark: T, at: [50, 0, 440], along: right, face: front}
      - {part: rail, mark: B, at: [50, 0, 0], along: left, face: front}
"""
PANEL = "      - {part: panel, mark: P, at: [PLACE, 6, 50], along: up, face: front}\n"


def frame(*, panel: int = 220, nested: bool = False, mirrored: bool = False) -> str:
    """A door with its panel; nested, the frame is an assembly of its own and so is closed before it."""
    sides = "mirror: left to right" if mirrored else ""
    middle = PANEL.replace("PLACE", str(50 + (220 - panel) // 2))
    if nested:
        inner = "      - {assembly: frame, mark: F, at: [0, 0, 0]}\n"
        door = f"  frame:\n    place:{STICKS}  door:\n    place:\n{inner}{middle}"
    else:
        door = f"  door:\n    place:{STICKS}{middle}"
    doors = ("mark: A, at: [0, 0, 0]", f"mark: D, at: [900, 0, 0], {sides}")
    whole = "".join(["  pair:\n    place:\n", *(f"      - {{assembly: door, {one}}}\n" for one in doors)])
    return FRAME_PARTS.replace("PANEL", str(panel)) + f"piece: pair\nassemblies:\n{door}{whole}"


def worked(text: str, steps: Mapping[str, str] | None = None) -> tuple[Plan, Worked]:
    """The project taken as far as its ways out."""
    plan = plan_of(text, steps)
    return plan, work_all(plan, (COPIES, SOLIDS, PLACED, CLASHES, WAYS_OUT))


def plan_of(text: str, steps: Mapping[str, str] | None = None) -> Plan:
    """The plan of a project as written; the test fails when it isn't understood."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "project.yaml").write_text(text, encoding="utf-8")
        (folder / "steps").mkdir()
        for file, front in (steps or {}).items():
            (folder / "steps" / file).write_text(f"---\n{front.strip()}\n---\n", encoding="utf-8")
        reading = read_project(folder)
        resolved = resolve(reading.project, reading.unreadable)
    said = [problem.message for problem in (*reading.problems, *resolved.problems)]
    assert resolved.plan is not None, said
    assert not said
    return resolved.plan


Cell = tuple[int, int, int]
SIDE = 10


def of_cells(cells: Sequence[Cell], name: str) -> tuple[Part, Copy]:
    """A body of cubes: the block round them less all that aren't its own."""
    low = [min(cell[n] for cell in cells) for n in range(3)]
    size = [max(cell[n] for cell in cells) + 1 - low[n] for n in range(3)]
    own = {tuple(cell[n] - low[n] for n in range(3)) for cell in cells}
    gone = [
        slot("down", (SIDE * x, SIDE * (x + 1)), (SIDE * y, SIDE * (y + 1)), SIDE * z, SIDE * (z + 1))
        for x in range(size[0])
        for y in range(size[1])
        for z in range(size[2])
        if (x, y, z) not in own
    ]
    at = (Fraction(SIDE * low[0]), Fraction(SIDE * low[1]), Fraction(SIDE * low[2]))
    made = part(name, SIDE * size[0], SIDE * size[1], SIDE * size[2], *gone)
    return made, Copy(name, name, name, ("piece",), UNTURNED, at)


def put_together(pairs: Sequence[tuple[Part, Copy]]) -> Assembled:
    """Each copy a member by itself."""
    solids = Solids({made.id: made for made, _ in pairs})
    lying = tuple(
        Lying(n, copy, made, copy.turn, room_at(made.box, copy.turn, copy.at))
        for n, (made, copy) in enumerate(pairs)
    )
    taking = Taking.of(Placed(lying, solids, {"": UNTURNED}), frozenset())
    return taking.assembled({copy.mark: (n,) for n, (_, copy) in enumerate(pairs)})
