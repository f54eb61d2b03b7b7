"""A small shop for the tests of joints: boards as a user writes them, put together, and looked at as solids.

Every corner stands twice in the piece, as it is and mirrored left to right, under any square turn; so
both hands and every direction are tried by the same few lines.
"""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations, permutations, product
from pathlib import Path
from typing import Any, TypeAlias

import manifold3d
import numpy as np
from hypothesis import strategies

from benchalong.ground.lengths import Length
from benchalong.plan.flips import is_mirrored
from benchalong.plan.model import Copy, Cut, Part, Plan, Turn
from benchalong.plan.resolve import resolve
from benchalong.plan.turns import UNTURNED, WAYS, room_of, turned
from benchalong.reading.project import read_project
from benchalong.workings.solids import Solid, solid_of

TOUCHING = 1e-3
"""Parts that share no more than this, in mm3, only touch: a sheet of 10 x 10 mm, 0.01 micrometres thick."""
A_HAIR = (1.1e-8, -1.7e-8, 2.3e-8)
"""In mm; less than anything told apart here, more than the tolerance of a mesh."""
Number: TypeAlias = int | Fraction
Spot: TypeAlias = tuple[Number, Number, Number]


@dataclass(frozen=True)
class Board:
    """Where it stands before the corner is turned: `at` its left, front, bottom corner; all in mm."""

    size: Spot
    """Length, width, thickness."""
    along: str
    face: str
    at: Spot = (0, 0, 0)


def as_typed(number: Number) -> str:
    return f"{Fraction(number).numerator}/{Fraction(number).denominator}"


def square_turns() -> tuple[Turn, ...]:
    """All twenty-four ways to lay a box down."""
    found: list[Turn] = []
    for order, signs in product(permutations(range(3)), product((1, -1), repeat=3)):
        rows: Any = tuple(tuple(signs[r] * (order[r] == c) for c in range(3)) for r in range(3))
        if not is_mirrored(rows):
            found.append(rows)
    return tuple(found)


TURNS = square_turns()
turns = strategies.sampled_from(TURNS)


def eighths(least: int, most: int) -> strategies.SearchStrategy[Fraction]:
    """Sizes in mm, to the eighth."""
    return strategies.integers(least * 8, most * 8).map(lambda n: Fraction(n, 8))


def project_text(boards: Mapping[str, Board], joint: str, turn: Turn = UNTURNED) -> str:
    """A project with one corner, twice: `L` as it is, `R` its mirror image."""
    lines = [
        "title: Corner",
        "units: millimetre",
        "piece: pair",
        "stock:",
        "  oak: {kind: board, thickness: 20}",
    ]
    lines.append("parts:")
    for name, board in boards.items():
        length, width, thickness = map(as_typed, board.size)
        lines.append(f"  {name}: {{stock: oak, length: {length}, width: {width}, thickness: {thickness}}}")
    lines += ["joints:", f"  corner: {{{joint}}}", "assemblies:", "  one:", "    place:"]
    lines += [f"      - {_place(name, board, turn)}" for name, board in boards.items()]
    lines += ["  pair:", "    place:", "      - {assembly: one, mark: L, at: [0, 0, 0]}"]
    lines.append("      - {assembly: one, mark: R, at: [5000, 0, 0], mirror: left to right}")
    return "\n".join((*lines, "stages: {all: {title: All}}", ""))


def _place(name: str, board: Board, turn: Turn) -> str:
    spans = _room_sizes(board)
    near = tuple(Fraction(value) for value in board.at)
    far = tuple(a + b for a, b in zip(near, spans, strict=True))
    least, _ = room_of((near, far), turn)  # type: ignore[arg-type]
    along, face = (_word(way, turn) for way in (board.along, board.face))
    at = ", ".join(map(as_typed, least))
    return f"{{part: {name}, mark: {name}, at: [{at}], along: {along}, face: {face}}}"


def _room_sizes(board: Board) -> tuple[Fraction, ...]:
    length, width, thickness = (Fraction(size) for size in board.size)
    along, face = WAYS[board.along], WAYS[board.face]
    return tuple(length if along[n] else thickness if face[n] else width for n in range(3))


def _word(way: str, turn: Turn) -> str:
    x, y, z = (Fraction(value) for value in WAYS[way])
    found = tuple(int(value) for value in turned((x, y, z), turn))
    return next(word for word, other in WAYS.items() if other == found)


def plan_of(text: str) -> Plan:
    """The plan of a project as written; the test fails when it isn't understood."""
    plan, said = understood(text)
    assert plan is not None, said
    return plan


def understood(text: str) -> tuple[Plan | None, list[str]]:
    """The plan if there is one, and what is said against it."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "project.yaml").write_text(text, encoding="utf-8")
        reading = read_project(Path(folder))
        resolved = resolve(reading.project, reading.unreadable)
    return resolved.plan, [problem.message for problem in (*reading.problems, *resolved.problems)]


def shape_cuts(plan: Plan, mark: str) -> tuple[Cut, ...]:
    """The cuts of one copy as it is made."""
    return plan.shapes[copy_called(plan, mark).shape].cuts


def copy_called(plan: Plan, mark: str) -> Copy:
    return next(copy for copy in plan.copies if copy.mark == mark)


def cut_sizes(plan: Plan, mark: str) -> list[dict[str, Length | int]]:
    """The sizes of each of its cuts, in mm."""
    return [{size.name: size.length for size in cut.sizes} for cut in shape_cuts(plan, mark)]


def joint_sizes(plan: Plan, name: str = "corner") -> dict[str, Length | int]:
    """The sizes of a joint, in mm."""
    return {size.name: size.length for size in plan.joints[name].sizes}


def made(plan: Plan, mark: str) -> Part:
    """The part as this copy of it is cut."""
    copy = copy_called(plan, mark)
    return replace(plan.parts[copy.part], cuts=plan.shapes[copy.shape].cuts)


def solid(plan: Plan, mark: str) -> Solid:
    return solid_of(made(plan, mark))


def standing(plan: Plan, mark: str) -> Any:
    """A copy in its place."""
    copy, wood = copy_called(plan, mark), solid(plan, mark)
    points = wood.vertices @ np.array(copy.turn, dtype=float).T + np.array(
        [float(value) for value in copy.at]
    )
    return manifold3d.Manifold(manifold3d.Mesh64(points, wood.triangles.astype(np.uint64)))


def shared(one: Any, other: Any) -> float:
    """How much wood two bodies would both need, in mm3; 0 when they touch.

    One is moved by a hair first: where many faces lie in one plane, manifold3d 3.5 now and then gives an
    intersection with a volume below zero.
    """
    return float((one ^ other.translate(A_HAIR)).volume())


def clashes(plan: Plan) -> list[tuple[str, str, float]]:
    """Every two copies that lie in each other by more than a touch."""
    bodies = {copy.mark: standing(plan, copy.mark) for copy in plan.copies}
    found = [(a, b, shared(bodies[a], bodies[b])) for a, b in combinations(bodies, 2)]
    return [clash for clash in found if clash[2] > TOUCHING]


def assert_fits(text: str) -> Plan:
    """Both hands of the corner go together without a clash; each has cuts on both its parts."""
    plan = plan_of(text)
    assert clashes(plan) == []
    assert all(solid(plan, copy.mark).volume > 0 and shape_cuts(plan, copy.mark) for copy in plan.copies)
    return plan


def assert_play(plan: Plan, still: str, moves: str, ways: str, play: Number, turn: Turn) -> None:
    """Moved by the play along each of the unturned corner's ways it just touches; 0.1 mm more, it clashes."""
    one, other = standing(plan, still), standing(plan, moves)
    for way in ways.split():
        for by, is_clash in ((Fraction(play), False), (play + Fraction(1, 10), True)):
            x, y, z = (Fraction(value) * by for value in WAYS[way])
            moved = other.translate([float(value) for value in turned((x, y, z), turn)])
            assert (shared(one, moved) > TOUCHING) == is_clash, (way, by)
