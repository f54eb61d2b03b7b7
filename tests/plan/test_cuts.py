"""What each kind of cut takes away: how much wood, and from where."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import pi

import pytest

from benchalong.plan.model import AXES, Circle, Cut, CutSize, Prism
from benchalong.plan.resolve import resolve
from benchalong.reading import written
from plan.by_hand import plan_of, with_cuts

LENGTH, WIDTH, THICK = 400, 60, 20


def cut(kind: str, *on: str, **sizes: str) -> written.Cut:
    """`from_` stands for `from`, which is a word of Python's."""
    return written.Cut(kind, on, {key.rstrip("_"): size for key, size in sizes.items()})


def outline(*corners: tuple[str, str], removes: str = "", rounded: str | None = None) -> written.Cut:
    return written.Cut(
        "outline",
        corners=tuple(written.Corner(*corner, round=rounded) for corner in corners),
        removes=removes,
    )


def made(given: written.Cut) -> Cut:
    return plan_of(with_cuts(given)).parts["rail"].cuts[0]


def area(prism: Prism) -> float:
    """Of the shape, by the surveyor's formula; corners are taken as sharp."""
    if isinstance(prism.shape, Circle):
        return pi * float(prism.shape.diameter) ** 2 / 4
    points = [corner.at for corner in prism.shape.corners]
    doubled = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1], strict=True))
    return float(abs(doubled)) / 2


def volume(prism: Prism) -> float:
    inside = area(prism) * float(prism.end - prism.start)
    return LENGTH * WIDTH * THICK - inside if prism.outside else inside


VOLUMES = [
    (cut("groove", "edge a", width="8", depth="10"), 8 * 10 * 400),
    (cut("groove", "face", width="8", depth="10"), 8 * 10 * 400),
    (cut("groove", "end b", width="8", depth="10"), 8 * 10 * 60),
    (cut("groove", "back", width="8", depth="10", from_="50", to="350"), 8 * 10 * 300),
    (cut("dado", "face", at="100", width="18", depth="6"), 18 * 6 * 60),
    (cut("dado", "back", at="100", width="18", depth="6", from_="10"), 18 * 6 * 50),
    (cut("rabbet", "edge b", "back", width="10", depth="5"), 10 * 5 * 400),
    (cut("rabbet", "end a", "face", width="10", depth="5"), 10 * 5 * 60),
    (cut("rabbet", "edge a", "face", width="10", depth="5", from_="20", to="380"), 10 * 5 * 360),
    (cut("tongue", "edge a", thickness="8", length="10"), (20 - 8) * 10 * 400),
    (cut("tongue", "end b", thickness="8", length="10", across="3"), (20 - 8) * 10 * 60),
    (cut("tenon", "end a", thickness="8", width="40", length="30"), (60 * 20 - 8 * 40) * 30),
    (
        cut("tenon", "end b", thickness="8", width="40", length="30", across="0", at="0"),
        (60 * 20 - 8 * 40) * 30,
    ),
    (cut("tenon", "end b", thickness="20", width="60", length="30"), 0),
    (cut("mortise", "edge b", width="8", length="40", depth="30", at="50"), 8 * 40 * 30),
    (cut("mortise", "face", width="8", length="40", depth="through", at="centred"), 8 * 40 * 20),
    (cut("mortise", "edge a", width="8", length="40", depth="through", at="10"), 8 * 40 * 60),
    (cut("mortise", "end a", width="8", length="40", depth="25", at="10"), 8 * 40 * 25),
    (cut("hole", "face", diameter="10", depth="through", at="30", across="centred"), 25 * pi * 20),
    (cut("hole", "edge a", diameter="10", depth="12", at="30", across="7"), 25 * pi * 12),
    (cut("hole", "end b", diameter="10", depth="40", at="30", across="10"), 25 * pi * 40),
    (cut("notch", "end a", "edge a", length="30", width="20"), 30 * 20 * 20),
    (cut("notch", "edge b", at="100", length="30", width="20"), 30 * 20 * 20),
    (cut("notch", "end b", at="10", length="30", width="20"), 30 * 20 * 20),
    (cut("bevel", "edge a", "face", width="10", depth="5"), 10 * 5 / 2 * 400),
    (cut("bevel", "end b", "back", width="10", depth="5"), 10 * 5 / 2 * 60),
    (cut("taper", "edge a", from_="100", to="400", takes="15"), 300 * 15 / 2 * 20),
    (cut("taper", "edge b", from_="100", to="300", takes="15"), (200 * 15 / 2 + 100 * 15) * 20),
    (cut("taper", "edge a", from_="300", to="100", takes="15"), (200 * 15 / 2 + 100 * 15) * 20),
    (cut("taper", "face", from_="100", to="400", takes="5"), 300 * 5 / 2 * 60),
    (cut("taper", "back", from_="300", to="0", takes="5"), 300 * 5 / 2 * 60),
    (outline(("0", "0"), ("400", "0"), ("400", "60")), 400 * 60 * 20 / 2),
    (outline(("100", "10"), ("200", "10"), ("200", "50"), ("100", "50"), removes="inside"), 100 * 40 * 20),
]


@pytest.mark.parametrize(("given", "taken"), VOLUMES, ids=lambda value: getattr(value, "kind", ""))
def test_how_much_a_cut_takes(given: written.Cut, taken: float) -> None:
    assert sum(volume(prism) for prism in made(given).takes) == pytest.approx(taken)


def rooms(given: written.Cut) -> list[dict[str, tuple[int, int]]]:
    """The room of each body, by axis, in whole millimetres."""
    found = []
    for prism in made(given).takes:
        flat = [axis for axis in AXES if axis != prism.axis]
        if isinstance(prism.shape, Circle):
            r = prism.shape.diameter / 2
            ranges = [(c - r, c + r) for c in prism.shape.centre]
        else:
            ranges = [(min(v), max(v)) for v in zip(*(c.at for c in prism.shape.corners), strict=True)]
        room = dict(zip(flat, ranges, strict=True)) | {prism.axis: (prism.start, prism.end)}
        found.append({str(axis): (int(low), int(high)) for axis, (low, high) in room.items()})
    return found


def room(
    along: tuple[int, int], across: tuple[int, int], down: tuple[int, int]
) -> dict[str, tuple[int, int]]:
    return {"along": along, "across": across, "down": down}


ROOMS = [
    (cut("groove", "edge a", width="8", depth="10"), [room((0, 400), (0, 10), (6, 14))]),
    (cut("groove", "edge b", width="8", depth="10", across="4"), [room((0, 400), (50, 60), (4, 12))]),
    (
        cut("groove", "face", width="8", depth="10", across="5", from_="50"),
        [room((50, 400), (5, 13), (0, 10))],
    ),
    (cut("groove", "back", width="8", depth="10", to="50"), [room((0, 50), (26, 34), (10, 20))]),
    (cut("groove", "end a", width="8", depth="10"), [room((0, 10), (0, 60), (6, 14))]),
    (cut("groove", "end b", width="8", depth="10", across="1"), [room((390, 400), (0, 60), (1, 9))]),
    (cut("dado", "face", at="100", width="18", depth="6"), [room((100, 118), (0, 60), (0, 6))]),
    (cut("dado", "back", at="centred", width="18", depth="6"), [room((191, 209), (0, 60), (14, 20))]),
    (cut("rabbet", "edge a", "face", width="10", depth="5"), [room((0, 400), (0, 10), (0, 5))]),
    (cut("rabbet", "edge b", "back", width="10", depth="5"), [room((0, 400), (50, 60), (15, 20))]),
    (cut("rabbet", "end b", "face", width="10", depth="5", from_="7"), [room((390, 400), (7, 60), (0, 5))]),
    (
        cut("tongue", "end b", thickness="8", length="10"),
        [room((390, 400), (0, 60), (0, 6)), room((390, 400), (0, 60), (14, 20))],
    ),
    (cut("tongue", "edge a", thickness="8", length="10", across="0"), [room((0, 400), (0, 10), (8, 20))]),
    (
        cut("tenon", "end a", thickness="8", width="40", length="30", at="5"),
        [
            room((0, 30), (0, 60), (0, 6)),
            room((0, 30), (0, 60), (14, 20)),
            room((0, 30), (0, 5), (6, 14)),
            room((0, 30), (45, 60), (6, 14)),
        ],
    ),
    (
        cut("mortise", "edge b", width="8", length="40", depth="30", at="50"),
        [room((50, 90), (30, 60), (6, 14))],
    ),
    (
        cut("mortise", "end a", width="8", length="40", depth="25", at="10"),
        [room((0, 25), (10, 50), (6, 14))],
    ),
    (
        cut("hole", "back", diameter="10", depth="12", at="30", across="20"),
        [room((25, 35), (15, 25), (8, 20))],
    ),
    (
        cut("hole", "end b", diameter="10", depth="40", at="30", across="10"),
        [room((360, 400), (25, 35), (5, 15))],
    ),
    (cut("notch", "end b", "edge a", length="30", width="20"), [room((370, 400), (0, 20), (0, 20))]),
    (cut("notch", "edge b", at="100", length="30", width="20"), [room((100, 130), (40, 60), (0, 20))]),
    (cut("notch", "end a", at="10", length="30", width="20"), [room((0, 30), (10, 30), (0, 20))]),
    (cut("bevel", "edge b", "back", width="10", depth="5"), [room((0, 400), (50, 60), (15, 20))]),
    (cut("taper", "edge b", from_="100", to="400", takes="15"), [room((100, 400), (45, 60), (0, 20))]),
    (cut("taper", "face", from_="300", to="100", takes="5"), [room((0, 300), (0, 60), (0, 5))]),
]


@pytest.mark.parametrize(("given", "expected"), ROOMS, ids=lambda value: getattr(value, "kind", ""))
def test_where_a_cut_is(given: written.Cut, expected: list[dict[str, tuple[int, int]]]) -> None:
    assert rooms(given) == expected


WORDS = [
    (cut("groove", "edge a", width="8", depth="10"), "in edge a, centred, from end to end"),
    (
        cut("groove", "face", width="8", depth="10", across="5", from_="50"),
        "in the face, to one side, stopped short of end a",
    ),
    (cut("groove", "end a", width="8", depth="10"), "in end a, centred, from edge to edge"),
    (cut("groove", "end a", width="8", depth="10", across="6"), "in end a, centred, from edge to edge"),
    (cut("tongue", "edge b", thickness="8", length="10", across="6"), "on edge b, centred"),
    (cut("tongue", "edge b", thickness="8", length="10", across="7"), "on edge b, to one side"),
    (cut("hole", "face", diameter="8", depth="10", at="10", across="30"), "in the face, centred"),
    (
        cut("groove", "back", width="8", depth="10", from_="9", to="99"),
        "in the back, centred, stopped at both ends",
    ),
    (
        cut("dado", "face", at="100", width="18", depth="6"),
        "in the face, across the grain, from edge to edge",
    ),
    (
        cut("dado", "face", at="9", width="18", depth="6", to="50"),
        "in the face, across the grain, stopped short of edge b",
    ),
    (
        cut("rabbet", "edge b", "back", width="10", depth="5"),
        "along the arris of edge b and the back, from end to end",
    ),
    (cut("tongue", "end b", thickness="8", length="10"), "on end b, centred"),
    (
        cut("mortise", "face", width="8", length="40", depth="through", at="centred"),
        "in the face, centred, right through",
    ),
    (
        cut("notch", "end a", "edge a", length="30", width="20"),
        "at the corner of end a and edge a, right through",
    ),
    (cut("taper", "edge a", from_="100", to="400", takes="15"), "on edge a, towards end b"),
    (outline(("0", "0"), ("400", "0"), ("400", "60")), "round the face, right through"),
]


@pytest.mark.parametrize(("given", "words"), WORDS, ids=lambda value: getattr(value, "kind", ""))
def test_where_in_plain_words(given: written.Cut, words: str) -> None:
    assert made(given).where == words


def test_a_cut_says_its_sizes_and_what_they_follow_from() -> None:
    project = with_cuts(cut("groove", "edge a", width="slot", depth="10"))
    plan = plan_of(replace(project, sizes={"slot": written.Size("third*3"), "third": written.Size("2")}))
    width, depth = plan.parts["rail"].cuts[0].sizes
    assert width == CutSize("width", Fraction(6), ("slot", "third"))
    assert depth == CutSize("depth", Fraction(10))


def test_rounded_corners_stay_what_they_are() -> None:
    prism = made(outline(("0", "0"), ("400", "0"), ("400", "60"), ("0", "60"), rounded="12.5")).takes[0]
    assert not isinstance(prism.shape, Circle)
    assert {corner.radius for corner in prism.shape.corners} == {Fraction(25, 2)}
    assert prism.outside


def test_a_cut_with_a_size_not_above_zero_takes_nothing_and_is_left_to_the_plan_check() -> None:
    assert made(cut("groove", "edge a", width="8", depth="10 - 12")).takes == ()


def test_what_is_wrong_in_cuts_is_said_even_where_the_part_is_broken() -> None:
    broken = with_cuts(cut("groove", "edge a", width="nobody", depth="10"), width="somebody")
    assert sorted(problem.message for problem in resolve(broken).problems) == [
        "there is no size called nobody",
        "there is no size called somebody",
    ]
