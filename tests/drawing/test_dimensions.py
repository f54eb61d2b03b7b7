"""Which sizes a drawing asks for: all that were typed, each once, where it shows its true shape."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.drawing.dimensions import chosen_views, shoulder_range, wanted_sizes
from benchalong.drawing.remarks import notes
from benchalong.drawing.wanted import Span
from benchalong.plan.model import Part
from drawing.made_parts import Number, made_cut, made_part

BOX = (400, 60, 20)

CASES: list[tuple[str, str, dict[str, Number], set[tuple[str, str, int, int]]]] = [
    # kind, on, typed, wanted besides the part's own: (view, axis, from, to)
    ("groove", "edge a", {"width": 8, "depth": 10},
     {("end b", "down", 6, 14), ("end b", "across", 0, 10), ("end b", "down", 0, 6)}),
    ("groove", "edge b", {"width": 8, "depth": 10, "across": 3, "from": 50, "to": 300},
     {("edge b", "down", 3, 11), ("face", "across", 50, 60), ("edge b", "down", 0, 3),
      ("edge b", "along", 0, 50), ("edge b", "along", 0, 300)}),
    ("groove", "face", {"width": 8, "depth": 5, "across": 20},
     {("end b", "across", 20, 28), ("end b", "down", 0, 5), ("end b", "across", 0, 20)}),
    ("dado", "face", {"at": 100, "width": 18, "depth": 6},
     {("edge a", "along", 100, 118), ("edge a", "down", 0, 6), ("edge a", "along", 0, 100)}),
    ("dado", "back", {"at": 100, "width": 18, "depth": 6, "from": 12},
     {("face", "along", 100, 118), ("edge a", "down", 14, 20), ("face", "along", 0, 100),
      ("face", "across", 0, 12)}),
    ("rabbet", "edge b, back", {"width": 9, "depth": 7},
     {("end b", "across", 51, 60), ("end b", "down", 13, 20)}),
    ("rabbet", "end a, face", {"width": 9, "depth": 7},
     {("edge a", "along", 0, 9), ("edge a", "down", 0, 7)}),
    ("tongue", "end b", {"thickness": 8, "length": 12},
     {("edge a", "along", 388, 400), ("edge a", "down", 6, 14), ("edge a", "down", 0, 6),
      ("face", "along", 0, 388)}),
    ("tongue", "edge a", {"thickness": 8, "length": 12, "across": 2},
     {("end b", "across", 0, 12), ("end b", "down", 2, 10), ("end b", "down", 0, 2)}),
    ("tenon", "end a", {"thickness": 8, "width": 40, "length": 25, "at": 5},
     {("edge a", "along", 0, 25), ("edge a", "down", 6, 14), ("face", "across", 5, 45),
      ("edge a", "down", 0, 6),
      ("face", "across", 0, 5), ("face", "along", 25, 400)}),
    ("mortise", "edge a", {"at": 90, "length": 40, "width": 8, "depth": 30},
     {("edge a", "along", 90, 130), ("edge a", "down", 6, 14), ("face", "across", 0, 30),
      ("edge a", "along", 0, 90),
      ("edge a", "down", 0, 6)}),
    ("notch", "end b, edge a", {"length": 12, "width": 15}, {("face", "along", 388, 400),
     ("face", "across", 0, 15)}),
    ("notch", "edge b", {"at": 100, "length": 30, "width": 9},
     {("face", "along", 100, 130), ("face", "across", 51, 60), ("face", "along", 0, 100)}),
    ("bevel", "edge a, face", {"width": 10, "depth": 12}, {("end b", "across", 0, 10),
     ("end b", "down", 0, 12)}),
    ("taper", "edge b", {"from": 150, "to": 300, "takes": 12},
     {("face", "across", 48, 60), ("face", "along", 0, 150), ("face", "along", 0, 300)}),
    ("hole", "face", {"at": 70, "across": 25, "diameter": 10, "depth": 15},
     {("edge a", "down", 0, 15), ("face", "along", 0, 70), ("face", "across", 0, 25)}),
]  # fmt: skip


def asked(span: Span) -> tuple[str, str, Fraction, Fraction]:
    return (span.views[0], span.axis, span.start, span.end)


def cut_part(kind: str, on: str, typed: dict[str, Number]) -> Part:
    keys = {"from_" if key == "from" else key: value for key, value in typed.items()}
    return made_part(BOX, made_cut(BOX, kind, on, **keys))  # type: ignore[arg-type]


@pytest.mark.parametrize(("kind", "on", "typed", "wanted"), CASES, ids=[f"{c[0]} {c[1]}" for c in CASES])
def test_wanted(kind: str, on: str, typed: dict[str, Number], wanted: set[tuple[str, str, int, int]]) -> None:
    found = [asked(span) for span in wanted_sizes(cut_part(kind, on, typed)).spans]
    views = chosen_views(cut_part(kind, on, typed))
    own = {("face", "along", 0, 400), ("face", "across", 0, 60), (views[2], "down", 0, 20)}
    # what is shown from another end or edge than the usual one stands in that view
    other = {"edge a": views[1], "end b": views[2]}
    expected = {(other.get(view, view), axis, low, high) for view, axis, low, high in wanted}
    assert {*found} == {*own, *expected}  # type: ignore[comparison-overlap]
    assert len(found) == len(set(found))


@pytest.mark.parametrize(
    ("kind", "on", "typed"), [c[:3] for c in CASES], ids=[f"{c[0]} {c[1]}" for c in CASES]
)
def test_every_typed_size_is_told(kind: str, on: str, typed: dict[str, Number]) -> None:
    """The wood could be cut again from the sheet: each number the author typed stands on it."""
    wanted = wanted_sizes(cut_part(kind, on, typed))
    told = {span.length for span in wanted.spans} | {one.length for one in wanted.rounds}
    assert {Fraction(value) for value in typed.values()} <= told


def test_equal_cuts_are_told_once_with_a_note() -> None:
    tongues = [made_cut(BOX, "tongue", end, thickness=8, length=12) for end in ("end a", "end b")]
    wanted = wanted_sizes(made_part(BOX, *tongues))
    assert [span.what for span in wanted.spans].count("tongue: length") == 1
    assert wanted.notes == ("Both tongues are alike.",)


def test_cuts_that_differ_are_both_told() -> None:
    tongues = [
        made_cut(BOX, "tongue", f"end {end}", thickness=8, length=length)
        for end, length in (("a", 12), ("b", 9))
    ]
    wanted = wanted_sizes(made_part(BOX, *tongues))
    assert sorted(span.length for span in wanted.spans if span.what == "tongue: length") == [9, 12]
    assert wanted.notes == ()


def test_one_position_of_many_holes_is_told_once() -> None:
    holes = [
        made_cut(BOX, "hole", "face", at=at, across=30, diameter=6, through=True) for at in (50, 100, 150)
    ]
    wanted = wanted_sizes(made_part(BOX, *holes))
    assert [span.end for span in wanted.spans if span.axis == "across" and span.what != "width"] == [30]
    assert len(wanted.rounds) == 1
    assert wanted.notes == ("All holes are alike.", "All holes go right through.")


NOTES = [
    ("two of three rabbets", [("rabbet", "end a, face", 9), ("rabbet", "end b, face", 9),
     ("rabbet", "edge b, face", 5)],
     ["The rabbets along end a and end b are alike."]),
    ("dadoes", [("dado", "face", 18), ("dado", "face", 18), ("dado", "face", 18)], ["All dadoes are alike."]),
    ("one of each", [("dado", "face", 18), ("groove", "edge a", 8)], []),
]  # fmt: skip


@pytest.mark.parametrize(("cuts", "said"), [c[1:] for c in NOTES], ids=[c[0] for c in NOTES])
def test_notes(cuts: list[tuple[str, str, int]], said: list[str]) -> None:
    made = [
        made_cut(BOX, kind, on, width=width, depth=4, at=40 * i)
        for i, (kind, on, width) in enumerate(cuts, 1)
    ]
    assert list(notes(made_part(BOX, *made))) == said


def test_length_between_shoulders() -> None:
    both = [made_cut(BOX, "tenon", end, thickness=8, width=40, length=25) for end in ("end a", "end b")]
    assert shoulder_range(made_part(BOX, *both)) == (Fraction(25), Fraction(375))
    assert shoulder_range(made_part(BOX, both[1])) == (Fraction(0), Fraction(375))
    assert shoulder_range(made_part(BOX)) is None
