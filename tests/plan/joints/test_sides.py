"""Words for a side: the part's own, or where it ends up, in every way a part can lie."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.joints.sides import NotASide, find_surfaces, outward, parse_side
from benchalong.plan.model import Surface, Turn
from benchalong.plan.turns import MIRRORS, WAYS, Room, after
from plan.joints.shop import TURNS

MIRRORED_TURNS = tuple(after(turn, MIRRORS["left to right"]) for turn in TURNS)
WORDS = {"left": "left", "right": "right", "front": "front", "back": "back", "top": "up", "bottom": "down"}
HERE: Room = ((Fraction(0),) * 3, (Fraction(10),) * 3)
ROUND_IT: Room = ((Fraction(-7), Fraction(-50), Fraction(-3)), (Fraction(60), Fraction(11), Fraction(90)))
"""The middle of it is to the right, to the front and above."""


def surfaces(words: str, turn: Turn, whole: Room = ROUND_IT) -> tuple[Surface, ...]:
    (term,) = parse_side(words)
    return find_surfaces(term, turn, HERE, whole)


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("face", ("face",)),
        ("back", ("back",)),
        ("edge a", ("edge a",)),
        ("end b", ("end b",)),
        ("both ends", ("end a", "end b")),
        ("both edges", ("edge a", "edge b")),
        ("both faces", ("face", "back")),
    ],
)
def test_the_parts_own_words_mean_the_same_however_it_lies(words: str, meant: tuple[str, ...]) -> None:
    assert {surfaces(words, turn) for turn in (*TURNS, *MIRRORED_TURNS)} == {meant}


@pytest.mark.parametrize("turn", [*TURNS, *MIRRORED_TURNS])
def test_a_surface_named_by_where_it_looks_looks_there(turn: Turn) -> None:
    for word, way in WORDS.items():
        found = [surface for noun in ("face", "edge", "end") for surface in _found(f"{word} {noun}", turn)]
        assert len(found) == 1, "one side of a box looks each way"
        assert outward(found[0], turn) == WAYS[way]


def _found(words: str, turn: Turn) -> tuple[Surface, ...]:
    try:
        return surfaces(words, turn)
    except NotASide:
        return ()


@pytest.mark.parametrize("turn", [*TURNS, *MIRRORED_TURNS])
def test_inner_looks_to_the_middle_and_outer_away(turn: Turn) -> None:
    to_the_middle = {WAYS["right"], WAYS["front"], WAYS["up"]}
    for noun in ("face", "edge", "end"):
        (inner,), (outer,) = surfaces(f"inner {noun}", turn), surfaces(f"outer {noun}", turn)
        assert outward(inner, turn) in to_the_middle
        assert outward(outer, turn) not in to_the_middle
        assert {inner, outer} == {s for s in SURFACES if SURFACES[s].inward == SURFACES[inner].inward}


def test_inner_of_what_stands_in_the_middle_cant_be_told() -> None:
    with pytest.raises(NotASide, match="sits in the middle"):
        surfaces("inner face", TURNS[0], HERE)


def test_an_arris_is_two_sides_that_meet() -> None:
    assert [term.words for term in parse_side("both ends  inner face")] == ["both ends", "inner face"]


@pytest.mark.parametrize(
    ("words", "message", "marked", "meant"),
    [
        ("iner edge", "“iner” is no word for a side", "iner", "inner"),
        ("inner egde", "“inner” needs edge, end or face after it", "egde", "edge"),
        ("inner", "“inner” needs edge, end or face after it", "inner", None),
        ("edge", "“edge” could be two sides", "edge", None),
        ("front edge bac", "“bac” is no word for a side", "bac", "back"),
    ],
)
def test_the_very_word_is_marked(words: str, message: str, marked: str, meant: str | None) -> None:
    with pytest.raises(NotASide) as told:
        parse_side(words)
    assert told.value.message == message
    assert told.value.span is not None
    assert words[slice(*told.value.span)] == marked
    assert told.value.meant[:1] == ((meant,) if meant else ())


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ("", "no side is named here"),
        ("edge a end a face", "names more than two sides"),
        ("edge a edge b", "make no arris"),
    ],
)
def test_what_names_no_side(words: str, message: str) -> None:
    with pytest.raises(NotASide, match=message):
        parse_side(words)
