"""The picture of the piece: marks, what stands out, what can't be shown; well made as SVG."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import combinations
from math import hypot
from xml.etree import ElementTree

import pytest

from benchalong.drawing.board import cross
from benchalong.drawing.picture import PiecePicture
from benchalong.drawing.piece import piece_picture, shortened
from benchalong.drawing.text import text_width
from benchalong.workings.copies import Copy
from benchalong.workings.solids import solid_of
from drawing import cabinet
from drawing.shop import PlacedCopy, bore, part, put

SOLIDS = cabinet.solids()
NAMES = {name: one.name for name, one in cabinet.parts().items()}
SVG = "{http://www.w3.org/2000/svg}"


def copies_of(placed: Sequence[PlacedCopy]) -> list[Copy]:
    return [Copy(one.part, one.part, one.mark, one.assemblies, one.turn, one.at) for one in placed]


def picture(placed: Sequence[PlacedCopy], *standing_out: str) -> PiecePicture:
    return piece_picture(
        copies_of(placed), SOLIDS, names=NAMES, title="Cupboard", standing_out=frozenset(standing_out)
    )


def root(drawn: PiecePicture) -> ElementTree.Element:
    return ElementTree.fromstring(drawn.svg)


def labels(drawn: PiecePicture) -> list[tuple[str, float, float, str]]:
    """Every mark in the picture: text, x, y, anchor."""
    return [
        (text.text or "", float(text.attrib["x"]), float(text.attrib["y"]), group.attrib["text-anchor"])
        for group in root(drawn).iter(f"{SVG}g")
        if group.attrib.get("class") == "label"
        for text in group
    ]


def leaders(drawn: PiecePicture) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    (path,) = [p for p in root(drawn).iter(f"{SVG}path") if p.attrib["class"] == "thin leader"]
    number = r"(-?\d*\.?\d+) ?(-?\d*\.?\d+)"
    found = re.findall(rf"M{number}l{number}", path.attrib["d"])
    return [((float(x), float(y)), (float(x) + float(dx), float(y) + float(dy))) for x, y, dx, dy in found]


ALL = cabinet.cupboard()
SCENES = {
    "whole": ALL,
    "case": cabinet.case(),
    "door": cabinet.door("LD", 21),
}


@pytest.mark.parametrize("scene", SCENES)
def test_every_copy_has_its_mark_or_is_listed(scene: str) -> None:
    drawn = picture(SCENES[scene])
    marks = shortened([copy.mark for copy in SCENES[scene]])
    assert sorted([text for text, *_ in labels(drawn)] + list(drawn.not_shown)) == sorted(marks)


def test_behind_doors_nothing_is_said_to_show() -> None:
    drawn = picture(ALL)
    assert drawn.not_shown == ("C/S1", "C/S2", "C/K")
    assert "Out of sight here: C/S1, C/S2, C/K." in drawn.svg


def test_without_its_doors_the_case_shows_all() -> None:
    assert picture(cabinet.case()).not_shown == ()


@pytest.mark.parametrize("scene", SCENES)
def test_labels_stay_apart_and_on_the_sheet(scene: str) -> None:
    drawn = picture(SCENES[scene])
    boxes = [label_box(*label) for label in labels(drawn)]
    for left, top, right, bottom in boxes:
        assert left >= 0
        assert top >= 0
        assert right <= drawn.width
        assert bottom <= drawn.height
    for (a, b, c, d), (e, f, g, h) in combinations(boxes, 2):
        assert c <= e or g <= a or d <= f or h <= b


def label_box(text: str, x: float, y: float, anchor: str) -> tuple[float, float, float, float]:
    width = text_width(text, 13)
    left = {"start": x, "end": x - width}.get(anchor, x - width / 2)
    return left, y - 10, left + width, y + 2.5


@pytest.mark.parametrize("scene", SCENES)
def test_leaders_never_cross(scene: str) -> None:
    lines = leaders(picture(SCENES[scene]))
    assert len(lines) == len(labels(picture(SCENES[scene])))
    assert not [1 for (a, b), (c, d) in combinations(lines, 2) if cross(a, b, c, d)]


def test_a_leader_ends_in_the_part_it_names() -> None:
    """The door seen squarely enough: the panel's mark points between the stiles, the stiles' outside them."""
    drawn = picture(cabinet.door("LD", 21))
    ends = {nearest_label(drawn, start): end for start, end in leaders(drawn)}
    assert ends["H"][0] < ends["P"][0] < ends["M"][0]
    assert ends["T"][1] < ends["P"][1] < ends["B"][1]


def nearest_label(drawn: PiecePicture, start: tuple[float, float]) -> str:
    return min(labels(drawn), key=lambda one: hypot(one[1] - start[0], one[2] - 4.5 - start[1]))[0]


def test_what_stands_out_is_outlined_and_stroked_and_said() -> None:
    drawn = picture(cabinet.case(), "C/S1", "C/S2")
    (group,) = [g for g in root(drawn).iter(f"{SVG}g") if g.attrib.get("class") == "stand-out"]
    classes = [path.attrib["class"] for path in group]
    assert classes[-2:] == ["heavy", "pencil"]
    assert "Standing out: Shelf." in drawn.alt
    assert "stand-out" not in picture(cabinet.case()).svg


def test_marks_are_shortened_within_an_assembly() -> None:
    assert shortened(["LD/H", "LD/P"]) == ["H", "P"]
    assert shortened(["LD/H", "RD/H"]) == ["LD/H", "RD/H"]
    assert shortened(["C/D/H"]) == ["H"]
    assert shortened([]) == []


def fence(posts: int) -> tuple[list[PlacedCopy], PiecePicture]:
    post, board = part("post", 600, 60, 20), part("board", 200 * posts, 100, 20)
    placed = [put(post, f"P{i}", (100 * i, 0, 0), "up", "front") for i in range(posts)]
    placed.append(put(board, "B", (0, 20, 300), "right", "front"))
    solids = {one.id: solid_of(one) for one in (post, board)}
    return placed, piece_picture(copies_of(placed), solids, names={"post": "Post", "board": "Board"})


def test_with_many_copies_equal_parts_share_a_label() -> None:
    _, drawn = fence(30)
    texts = [text for text, *_ in labels(drawn)]
    assert len(texts) == 2
    assert "B" in texts
    assert re.fullmatch(r"P\d+ \+29", next(text for text in texts if text != "B"))
    assert [len(group) for group in drawn.shared] == [30]
    assert "+29" not in fence(12)[1].svg


def test_many_different_parts_make_the_picture_taller_not_crowded() -> None:
    made = [part(f"p{i}", 100, 40, 20) for i in range(60)]
    spots = [(120 * (i % 6), 60 * (i // 6), 0) for i in range(60)]
    placed = [put(one, f"X{one.id}", spot, "right", "up") for one, spot in zip(made, spots, strict=True)]
    drawn = piece_picture(copies_of(placed), {one.id: solid_of(one) for one in made}, names={})
    boxes = [label_box(*label) for label in labels(drawn)]
    assert len(boxes) == 60
    for (a, b, c, d), (e, f, g, h) in combinations(boxes, 2):
        assert c <= e or g <= a or d <= f or h <= b
    assert drawn.height < 700
    assert len(drawn.svg) < 60_000


def test_the_picture_is_one_labelled_svg_without_styles_or_sizes() -> None:
    drawn = picture(ALL)
    top = root(drawn)
    assert top.attrib["role"] == "img"
    assert "width" not in top.attrib
    assert top[0].tag == f"{SVG}title"
    assert top[0].text == drawn.alt
    assert top.attrib["viewBox"].split()[2] == "358"
    assert "style" not in drawn.svg
    assert not re.search(r"\d\.\d\d", drawn.svg.split("<path", 1)[1])


def test_a_copy_that_cuts_leave_nothing_of_is_out_of_the_picture() -> None:
    gone = part("gone", 50, 20, 20, bore("down", (25, 10), 90, 0, 20))
    kept = part("kept", 50, 20, 20)
    spots = {"G": (gone, 0), "K": (kept, 60)}
    placed = [put(one, mark, (x, 0, 0), "right", "up") for mark, (one, x) in spots.items()]
    drawn = piece_picture(copies_of(placed), {p.id: solid_of(p) for p in (gone, kept)}, names={})
    assert [text for text, *_ in labels(drawn)] == ["K"]
    with pytest.raises(ValueError, match="nothing to draw"):
        piece_picture(copies_of(placed[:1]), {"gone": solid_of(gone)}, names={})


def test_the_same_piece_gives_the_same_bytes() -> None:
    assert picture(ALL, "LD/H").svg == picture(cabinet.cupboard(), "LD/H").svg
