"""Taking apart, against a simulation that pushes cubes one step at a time; puzzles and frames."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import chain, combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.plan.model import Copy, Corner, Cut, Outline, Part, Prism
from benchalong.plan.turns import UNTURNED
from benchalong.workings.placed import PLACED
from benchalong.workings.taking_apart import Apart, take_apart
from benchalong.workings.ways_out import WAYS_OUT, Taking
from drawing.shop import part
from workings.apart_shop import Cell, of_cells, put_together, worked

STEPS: tuple[Cell, ...] = ((1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1))
"""In the order of the workings' own ways: right, left, back, front, up, down."""
Bodies = tuple[frozenset[Cell], ...]


# Against a simulation


def leaves_by_steps(group: Sequence[int], rest: Sequence[int], bodies: Bodies, step: Cell, size: int) -> bool:
    """Whether the group gets out, cube by cube."""
    moving = {cell for one in group for cell in bodies[one]}
    still = {cell for one in rest for cell in bodies[one]}
    for _ in range(2 * size + 1):
        moving = {(x + step[0], y + step[1], z + step[2]) for x, y, z in moving}
        if moving & still:
            return False
    return True


def comes_apart_by_steps(
    rest: tuple[int, ...], bodies: Bodies, size: int, known: dict[tuple[int, ...], bool]
) -> bool:
    """Whether any split of it, and of what is left, can be moved apart: everything is tried."""
    if len(rest) < 2:
        return True
    if rest not in known:
        groups = chain.from_iterable(combinations(rest, n) for n in range(1, len(rest)))
        known[rest] = any(
            leaves_by_steps(group, others, bodies, step, size)
            and comes_apart_by_steps(group, bodies, size, known)
            and comes_apart_by_steps(others, bodies, size, known)
            for group in groups
            for others in (tuple(one for one in rest if one not in group),)
            for step in STEPS
        )
    return known[rest]


WIDE, DEEP, TALL = 4, 3, 3
CELLS = [(x, y, z) for x in range(WIDE) for y in range(DEEP) for z in range(TALL)]


@st.composite
def towers(draw: st.DrawFn) -> Bodies:
    """Up to five bodies of cubes, and air."""
    count = draw(st.integers(2, 5))
    owners = draw(st.lists(st.integers(0, count), min_size=len(CELLS), max_size=len(CELLS)))
    bodies = [
        frozenset(cell for cell, owner in zip(CELLS, owners, strict=True) if owner == one)
        for one in range(count)
    ]
    return tuple(body for body in bodies if body)


@st.composite
def grown_towers(draw: st.DrawFn) -> Bodies:
    """Bodies that hang together, each grown from a cube: closer to wood."""
    count = draw(st.integers(2, 5))
    bodies: list[set[Cell]] = [
        {cell} for cell in draw(st.lists(st.sampled_from(CELLS), min_size=count, max_size=count, unique=True))
    ]
    for one, step in draw(
        st.lists(st.tuples(st.integers(0, count - 1), st.sampled_from(STEPS)), max_size=40)
    ):
        for x, y, z in sorted(bodies[one]):
            cell = (x + step[0], y + step[1], z + step[2])
            if cell in CELLS and not any(cell in body for body in bodies):
                bodies[one].add(cell)
                break
    return tuple(frozenset(body) for body in bodies)


def apart_of(bodies: Bodies) -> Apart:
    return take_apart(put_together([of_cells(sorted(body), f"b{n}") for n, body in enumerate(bodies)]).table)


@given(st.one_of(towers(), grown_towers()))
@settings(max_examples=150, deadline=None)
def test_what_comes_apart_is_what_comes_apart_step_by_step(bodies: Bodies) -> None:
    apart = apart_of(bodies)
    assert (not apart.locked) == comes_apart_by_steps(tuple(range(len(bodies))), bodies, WIDE, {})


@given(st.one_of(towers(), grown_towers()))
@settings(max_examples=100, deadline=None)
def test_every_move_can_be_made_step_by_step(bodies: Bodies) -> None:
    """In the order given; and each with only those gone before that it says must be."""
    apart = apart_of(bodies)
    lumps = [frozenset(range(len(bodies)))]
    for number, taken in enumerate(apart.taken):
        lump = next(lump for lump in lumps if taken.group <= lump)
        lumps = [*(other for other in lumps if other != lump), lump - taken.group, taken.group]
        gone = set().union(*(apart.taken[before].group for before in taken.after if before < number))
        holders = [
            apart.taken[before].group for before in taken.after if taken.group < apart.taken[before].group
        ]
        within = min(holders, key=len, default=frozenset(range(len(bodies))))
        rest = sorted(within - taken.group - gone)
        assert leaves_by_steps(sorted(taken.group), rest, bodies, STEPS[taken.way], WIDE)
    assert {lump for lump in lumps if len(lump) > 1} == set(apart.locked)


# Puzzles


def test_links_of_a_chain_are_refused() -> None:
    ring = {(x, 1, z) for x in range(3) for z in range(3)} - {(1, 1, 1)}
    link = {(x, y, 1) for x in range(1, 4) for y in range(3)} - {(2, 1, 1)}
    apart = apart_of((frozenset(ring), frozenset(link)))
    assert apart.taken == ()
    assert apart.locked == (frozenset((0, 1)),)


def sliding_lid(*, is_locked: bool) -> Bodies:
    """A lid with a foot that slides out of the box to the right, and a key upright in its way. Locked, the
    key has a foot of its own under the box, and a wall stands before it."""
    block = {(x, y, z) for x in range(7) for y in range(5) for z in range(4)}
    channel = {(x, y, 2) for x in range(1, 7) for y in (1, 2, 3)} | {(x, 2, 3) for x in range(1, 7)}
    lid = {cell for cell in channel if cell[0] <= 4}
    key = {(5, 2, 2), (5, 2, 3)} | ({(5, 1, 2)} if is_locked else set())
    wall = {cell for cell in channel if cell[0] == 6} if is_locked else set()
    return frozenset(block - channel | wall), frozenset(lid), frozenset(key)


def test_a_key_is_drawn_before_the_lid_slides() -> None:
    apart = apart_of(sliding_lid(is_locked=False))
    assert [(set(taken.group), STEPS[taken.way], taken.after) for taken in apart.taken] == [
        ({2}, (1, 0, 0), ()),
        ({1}, (1, 0, 0), (0,)),
    ]
    assert apart.locked == ()


def test_a_key_locked_in_is_refused() -> None:
    apart = apart_of(sliding_lid(is_locked=True))
    assert apart.taken == ()
    assert apart.locked == (frozenset((0, 1, 2)),)


# Frames and boxes

WIDTH, HEIGHT, STICK, THICK = 300, 200, 50, 20
Spot = tuple[int, int]


def less(shape: Sequence[Spot], start: int, end: int, *, outside: bool = False) -> Prism:
    corners = tuple(Corner((Fraction(x), Fraction(y))) for x, y in shape)
    return Prism("down", Outline(corners), Fraction(start), Fraction(end), outside)


def splined_frame(*, mirrored: bool) -> list[tuple[Part, Copy]]:
    """Four sides mitred into each other, each corner with a spline shut in; lying flat, without play."""
    made: list[tuple[Part, Copy]] = []
    across = {"left": 0, "right": WIDTH - STICK}
    upright = {"bottom": 0, "top": HEIGHT - STICK}
    corners = {
        (side, end): ((0 if side == "left" else WIDTH), (0 if end == "bottom" else HEIGHT))
        for side in across
        for end in upright
    }
    splines = {
        place: [
            _inward(place, spot, along, square) for along, square in ((15, 6), (35, 6), (35, -6), (15, -6))
        ]
        for place, spot in corners.items()
    }
    for name, x in across.items():
        halves = [_half(corners[name, end], (name, end), sign=-1) for end in upright]
        slots = [splines[name, end] for end in upright]
        made.append(_flat(name, (x, 0), (STICK, HEIGHT), halves, slots, mirrored=mirrored))
    for name, y in upright.items():
        halves = [_half(corners[side, name], (side, name), sign=1) for side in across]
        slots = [splines[side, name] for side in across]
        made.append(_flat(name, (0, y), (WIDTH, STICK), halves, slots, mirrored=mirrored))
    for (side, end), shape in splines.items():
        low = (min(x for x, _ in shape), min(y for _, y in shape))
        size = (max(x for x, _ in shape) - low[0], max(y for _, y in shape) - low[1])
        made.append(_flat(f"{side} {end}", low, size, [], [], mirrored=mirrored, outline=shape))
    return made


def _inward(place: tuple[str, str], spot: Spot, along: int, square: int) -> Spot:
    """A point so far along the mitre from its outer corner and so far square to it, in diagonal steps."""
    right, up = (1 if place[0] == "left" else -1), (1 if place[1] == "bottom" else -1)
    return (spot[0] + right * (along + square), spot[1] + up * (along - square))


def _half(spot: Spot, place: tuple[str, str], *, sign: int) -> list[Spot]:
    """What a side gives up at a corner: the triangle on the other's side of the mitre."""
    right, up = (1 if place[0] == "left" else -1), (1 if place[1] == "bottom" else -1)
    inner = (spot[0] + right * STICK, spot[1] + up * STICK)
    outer = (spot[0] + right * STICK, spot[1]) if sign < 0 else (spot[0], spot[1] + up * STICK)
    return [spot, outer, inner]


def _flat(
    name: str,
    low: Spot,
    size: Spot,
    halves: Sequence[Sequence[Spot]],
    slots: Sequence[Sequence[Spot]],
    *,
    mirrored: bool,
    outline: Sequence[Spot] = (),
) -> tuple[Part, Copy]:
    """A part lying flat; mirrored left to right within its box and in its place."""
    thick, rise = (4, 8) if outline else (THICK, 0)

    def own(shape: Sequence[Spot]) -> list[Spot]:
        points = [(x - low[0], y - low[1]) for x, y in shape]
        return [(size[0] - x, y) for x, y in points] if mirrored else points

    takes = [less(own(shape), 0, thick) for shape in halves]
    takes += [less(own(shape), 8, 12) for shape in slots]
    takes += [less(own(outline), 0, thick, outside=True)] if outline else []
    made = part(name, size[0], size[1], thick)
    made = replace(made, cuts=tuple(Cut("groove", "groove", ("face",), "", (), (take,)) for take in takes))
    left = WIDTH - low[0] - size[0] if mirrored else low[0]
    return made, Copy(
        name, name, name, ("piece",), UNTURNED, (Fraction(left), Fraction(low[1]), Fraction(rise))
    )


@pytest.mark.parametrize("mirrored", [False, True])
def test_a_splined_mitred_frame_closes_as_two_halves(mirrored: bool) -> None:
    made = splined_frame(mirrored=mirrored)
    assembled = put_together(made)
    apart = take_apart(assembled.table)
    names = [copy.mark for _, copy in made]
    first = apart.taken[0]
    half = {names[one] for one in first.group}
    (spline,) = half & set(names[4:])
    assert half == {*spline.split(), spline}
    x, y, z = assembled.ways[first.way]
    assert [abs(x), abs(y), z] == pytest.approx([0.5**0.5, 0.5**0.5, 0])
    assert apart.locked == ()
    assert all(
        number == 0 or taken.after
        for number, taken in enumerate(apart.taken)
        if not taken.group <= first.group
    )


DOVETAILED = """
title: Box
units: millimetre
piece: box
stock: {oak: {kind: board, thickness: 20}}
stages: {all: {title: All}}
parts:
  side: {stock: oak, width: 100, length: 300}
  front: {stock: oak, width: 100, length: 400}
joints:
  tails: {kind: dovetail, cut_in: [front both ends], takes: [side both ends], tails: 3}
assemblies:
  box:
    place:
      - {part: side, mark: L, at: [0, 0, 0], along: back, face: left}
      - {part: side, mark: R, at: [380, 0, 0], along: back, face: right}
      - {part: front, mark: F, at: [0, 0, 0], along: right, face: front}
      - {part: front, mark: K, at: [0, 280, 0], along: right, face: back}
"""


def test_a_dovetailed_box_comes_apart_only_one_way() -> None:
    _, done = worked(DOVETAILED)
    assert done.findings == ()
    box = done[WAYS_OUT]["box"]
    assert [(move.goes, move.way) for move in box.moves[:2]] == [(("L",), (-1, 0, 0)), (("R",), (1, 0, 0))]
    placed = done[PLACED]
    table = (
        Taking.of(placed, frozenset()).assembled({one.copy.mark: (one.number,) for one in placed.lying}).table
    )
    free = [[way for way in range(len(table.hinders)) if not table.hinders[way][one]] for one in range(4)]
    assert free == [[1], [0], [], []]
