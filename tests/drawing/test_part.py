"""Part drawings: every size once, nothing on anything else, for any part and in both systems."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from collections import Counter
from collections.abc import Mapping
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchalong.drawing.dimensions import wanted_sizes
from benchalong.drawing.layout import Layout, Projection, Scene, laid_out
from benchalong.drawing.part import part_drawing
from benchalong.drawing.picture import Picture
from benchalong.drawing.text import NUMBER, WORD, text_width
from benchalong.drawing.views import view_lines
from benchalong.ground.lengths import INCH
from benchalong.ground.shown import SYSTEMS, Precision, System
from benchalong.plan.model import Cut, Part
from benchalong.workings.solids import solid_of
from drawing.made_parts import Number, Size3, made_cut, made_part

SVG = "{http://www.w3.org/2000/svg}"
Rect = tuple[float, float, float, float]


def drawn(part: Part, units: System = "inch", projection: Projection = "third angle") -> Picture:
    return part_drawing(part, solid_of(part), precision=Precision(), units=units, projection=projection)


def layout_of(part: Part, projection: Projection = "third angle") -> Layout:
    wanted = wanted_sizes(part)
    solid = solid_of(part)
    lines = {view: view_lines(solid, view) for view in wanted.views}
    return laid_out(Scene(part, wanted, lines, Precision(), projection))


def texts(picture: Picture) -> list[ElementTree.Element]:
    return list(ElementTree.fromstring(picture.svg).iter(f"{SVG}text"))


def words_of(element: ElementTree.Element) -> str:
    return "".join(element.itertext())


def room_of(element: ElementTree.Element) -> Rect:
    """What a text covers on the sheet, by its letters' widths and a height from base line to capitals."""
    kinds = element.attrib["class"].split()
    size = NUMBER if {"size", "sign", "key"} & set(kinds) else WORD
    wide = text_width(words_of(element), size)
    x, y = float(element.attrib["x"]), float(element.attrib["y"])
    back = {"middle": wide / 2, "end": wide}.get(element.attrib.get("text-anchor", "start"), 0.0)
    if "transform" in element.attrib:
        return (x - size * 0.72, y - wide + back, x, y + back)
    return (x - back, y - size * 0.72, x - back + wide, y)


def meet(one: Rect, two: Rect) -> bool:
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


def segments(picture: Picture, kind: str) -> list[Rect]:
    """The boxes of the level and upright strokes of a kind of line."""
    boxes = []
    for path in ElementTree.fromstring(picture.svg).iter(f"{SVG}path"):
        if path.attrib["class"] == kind:
            x = y = 0.0
            for letter, numbers in re.findall(r"([MLHV])([-\d. ]+)", path.attrib["d"]):
                spot = [float(number) for number in numbers.split()]
                new = (spot[0], y) if letter == "H" else (x, spot[0]) if letter == "V" else (spot[0], spot[1])
                if letter in "HV":
                    boxes.append((min(x, new[0]), min(y, new[1]), max(x, new[0]), max(y, new[1])))
                x, y = new
    return boxes


def assert_legible(picture: Picture) -> None:
    rooms = [(words_of(element), room_of(element)) for element in texts(picture)]
    for i, (word, room) in enumerate(rooms):
        assert room[0] >= -0.5, (word, room)
        assert room[1] >= -0.5, (word, room)
        assert room[2] <= picture.width + 0.5, (word, room)
        assert room[3] <= picture.height + 0.5, (word, room)
        assert not [(word, other) for other, place in rooms[i + 1 :] if meet(room, place)]
    numbers = [(words_of(e), room_of(e)) for e in texts(picture) if "size" in e.attrib["class"]]
    lines = [line for kind in ("thin", "visible") for line in segments(picture, kind)]
    assert not [(word, room, line) for word, room in numbers for line in lines if meet(room, line)]


def assert_told_once(part: Part, picture: Picture) -> None:
    """Every wanted size stands on the sheet exactly as often as it is wanted, by its exact length."""
    wanted = wanted_sizes(part)
    lengths = [span.length for span in wanted.spans] + [one.length for one in wanted.rounds]
    lengths += [length for point in wanted.points for length in (point.along, point.across)]
    lengths += [point.radius for point in wanted.points if point.radius]
    lengths += [length for _, length in wanted.loose]
    told = [Fraction(e.attrib["data-mm"]) for e in texts(picture) if "size" in e.attrib["class"].split()]
    assert Counter(told) == Counter(lengths)


BOX: Size3 = (400, 60, 20)
INCH_BOX: Size3 = (Fraction(97, 4) * INCH, Fraction(19, 8) * INCH, Fraction(3, 4) * INCH)


def board(*cuts: tuple[str, str, Mapping[str, Number]], box: Size3 = BOX) -> Part:
    return made_part(box, *(made_cut(box, kind, on, **sizes) for kind, on, sizes in cuts))  # type: ignore[arg-type]


TONGUE = {"thickness": Fraction(9, 32) * INCH, "length": Fraction(3, 8) * INCH}
GROOVE = {"width": Fraction(5, 16) * INCH, "depth": Fraction(7, 16) * INCH}
HOLES = [("hole", "face", {"at": 60 * i, "across": 30, "diameter": 10, "depth": 15}) for i in range(1, 7)]

MANY_CORNERS = (
    (0, 0), (310, 40), (430, 45), (440, 200), (260, 210), (255, 400),
    (0, 410), (8, 330), (30, 300), (35, 90), (3, 70),
)  # fmt: skip
HAND_HOLE = ((140, 40, 15), (260, 40, 15), (260, 70, 15), (140, 70, 15))
TENON = {"thickness": 8, "width": 40, "length": 25}
DADOES = [("dado", "face", {"at": at, "width": 20, "depth": 6, "from_": 12}) for at in (90, 210)]


def shaped(box: Size3, corners: tuple[tuple[int, int, int], ...], removes: str) -> Part:
    return made_part(box, made_cut(box, "outline", "face", corners=corners, removes=removes))


SAMPLES: dict[str, Part] = {
    "plain": board(),
    "rail": board(
        ("tongue", "end a", TONGUE), ("tongue", "end b", TONGUE), ("groove", "edge a", GROOVE), box=INCH_BOX
    ),
    "stopped groove": board(
        ("groove", "edge b", GROOVE | {"from_": 2 * INCH, "to": 20 * INCH}), box=INCH_BOX
    ),
    "dadoes": board(*DADOES, ("rabbet", "end a, face", {"width": 20, "depth": 9}), box=(650, 230, 20)),
    "tenons": board(("tenon", "end a", TENON), ("tenon", "end b", TENON)),
    "leg": board(
        ("mortise", "edge a", {"at": 320, "length": 50, "width": 8, "depth": 26}),
        ("taper", "edge b", {"from_": 250, "to": 0, "takes": 12}),
        box=(400, 45, 45),
    ),
    "bevels": board(
        ("bevel", "edge a, face", {"width": 10, "depth": 12}),
        ("bevel", "end b, face", {"width": 4, "depth": 4}),
    ),
    "holes": board(*HOLES),
    "notch": board(
        ("notch", "end a, edge a", {"length": 12, "width": 15}),
        ("notch", "edge b", {"at": 90, "length": 30, "width": 9}),
    ),
    "thin": board(box=(470, 216, 8)),
    "tiny": board(("hole", "face", {"at": 10, "across": 6, "diameter": 3, "depth": 6}), box=(20, 12, 6)),
    "hand hole": shaped((400, 220, 18), HAND_HOLE, "inside"),
    "many corners": shaped((440, 410, 18), tuple((x, y, 12) for x, y in MANY_CORNERS), "outside"),
}


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", SAMPLES)
def test_samples_are_legible_and_whole(name: str, units: System) -> None:
    picture = drawn(SAMPLES[name], units)
    assert_legible(picture)
    assert_told_once(SAMPLES[name], picture)


@pytest.mark.parametrize("name", SAMPLES)
def test_a_sheet_fits_a_phone(name: str) -> None:
    picture = drawn(SAMPLES[name])
    assert picture.width <= 358.5
    assert picture.height <= 620


@pytest.mark.parametrize("name", SAMPLES)
def test_first_angle_is_as_legible(name: str) -> None:
    assert_legible(drawn(SAMPLES[name], projection="first angle"))


@st.composite
def any_cut(draw: st.DrawFn, box: Size3) -> Cut:
    """A cut of any kind with sizes that leave some wood."""
    length, width, thickness = (int(size) for size in box)

    def some(most: int) -> Fraction:
        return Fraction(draw(st.integers(8, max(9, most * 8))), 8)

    kind, on = draw(
        st.sampled_from(
            [
                ("groove", "face"), ("groove", "edge a"), ("groove", "edge b"), ("groove", "end a"),
                ("groove", "back"), ("dado", "face"), ("dado", "back"),
                ("rabbet", "edge a, face"), ("rabbet", "edge b, back"),
                ("rabbet", "end a, face"), ("rabbet", "end b, back"),
                ("tongue", "edge b"), ("tongue", "end a"), ("tongue", "end b"),
                ("tenon", "end a"), ("tenon", "end b"),
                ("mortise", "face"), ("mortise", "edge a"), ("mortise", "end b"),
                ("hole", "face"), ("hole", "edge b"), ("hole", "end a"),
                ("notch", "end a, edge a"), ("notch", "edge b"), ("notch", "end b"),
                ("bevel", "edge a, face"), ("bevel", "end b, back"),
                ("taper", "edge a"), ("taper", "face"), ("outline", "face"),
            ]
        )
    )  # fmt: skip
    half = thickness // 2
    sizes: dict[str, Number] = {
        "width": some(min(width, thickness) // 2),
        "depth": some(half),
        "length": some(min(length, width) // 3),
        "thickness": some(half),
        "diameter": some(half),
        "takes": some(half),
    }
    if kind in ("dado", "mortise", "hole", "notch") and draw(st.booleans()):
        sizes["at"] = some((length if not on.startswith("end") else width) // 2)
    if kind in ("groove", "dado", "rabbet") and draw(st.booleans()):
        sizes |= {"from_": some(width // 3), "to": some(width // 3) + width // 2}
    if kind == "taper":
        sizes |= {"from_": some(length // 2), "to": length - some(length // 3)}
    if kind == "outline":
        x, y = some(length // 2), some(width // 2)
        corners = ((x, y, 0), (x + length // 4, y, 0), (x + length // 5, y + width // 3, 1))
        return made_cut(box, kind, on, corners=corners, removes="inside")
    return made_cut(box, kind, on, **sizes)  # type: ignore[arg-type]


@st.composite
def any_part(draw: st.DrawFn) -> Part:
    box = (draw(st.integers(30, 2000)), draw(st.integers(15, 600)), draw(st.integers(5, 60)))
    return made_part(box, *(draw(any_cut(box)) for _ in range(draw(st.integers(0, 5)))))


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(any_part(), st.sampled_from(SYSTEMS), st.sampled_from(("third angle", "first angle")))
def test_any_part_is_legible_and_whole(part: Part, units: System, projection: Projection) -> None:
    picture = drawn(part, units, projection)
    assert_legible(picture)
    assert_told_once(part, picture)


def test_the_same_part_gives_the_same_bytes() -> None:
    assert drawn(SAMPLES["rail"]).svg == drawn(SAMPLES["rail"]).svg


def test_the_room_kept_suits_both_systems() -> None:
    """Switching the numbers moves nothing: all but the numbers is the same."""
    inch, millimetre = (re.sub(r">[^<]*</t", "></t", drawn(SAMPLES["rail"], units).svg) for units in SYSTEMS)
    assert inch == millimetre


def test_numbers_are_live() -> None:
    picture = drawn(SAMPLES["rail"])
    sizes = {e.attrib["data-mm"]: words_of(e) for e in texts(picture) if e.attrib["class"] == "size bare"}
    assert sizes["127/16"] == "5/16"
    assert sizes["381/64"] == "≈1/4", "15/64 in, shown to 1/32"
    assert sizes["12319/20"] == "24 1/4"
    assert "data-unit-word" in picture.svg


LINE_KINDS = [
    ("plain", {"visible", "thin", "grain", "centre"}),
    ("stopped groove", {"visible", "hidden-line", "break", "thin", "grain", "centre"}),
    ("holes", {"visible", "hidden-line", "centre", "thin", "thin leader", "grain"}),
]


@pytest.mark.parametrize(("name", "kinds"), LINE_KINDS)
def test_line_kinds(name: str, kinds: set[str]) -> None:
    root = ElementTree.fromstring(drawn(SAMPLES[name]).svg)
    assert {path.attrib["class"] for path in root.iter(f"{SVG}path")} == kinds


def test_each_kind_of_line_is_one_path_a_view() -> None:
    root = ElementTree.fromstring(drawn(SAMPLES["rail"]).svg)
    kinds = Counter(path.attrib["class"] for path in root.iter(f"{SVG}path"))
    assert kinds["visible"] == 3
    assert len(drawn(SAMPLES["rail"]).svg) < 7000


ALTS = [
    ("plain", "Rail in three views: face, edge a and end b, without cuts."),
    (
        "rail",
        "Rail in three views: face, edge a and end b, with a tongue on both ends and a groove in edge a.",
    ),
    (
        "dadoes",
        "Rail in three views: face, edge a and end a, with dadoes in the face and a rabbet along end a.",
    ),
    ("holes", "Rail in three views: face, edge a and end b, with holes in the face."),
    ("hand hole", "Rail in three views: face, edge a and end b, with a shaped outline."),
]


@pytest.mark.parametrize(("name", "alt"), ALTS)
def test_alt(name: str, alt: str) -> None:
    picture = drawn(SAMPLES[name])
    assert picture.alt == alt
    title = ElementTree.fromstring(picture.svg).find(f"{SVG}title")
    assert title is not None
    assert title.text == alt


PLACES = [
    ("third angle", "edge a above, end b right"),
    ("first angle", "edge a below, end b left"),
]


@pytest.mark.parametrize(("projection", "said"), PLACES)
def test_views_lie_where_the_projection_puts_them(projection: Projection, said: str) -> None:
    corners = layout_of(SAMPLES["rail"], projection).corners
    above = "above" if corners["edge a"][1] < corners["face"][1] else "below"
    side = "right" if corners["end b"][0] > corners["face"][0] else "left"
    assert f"edge a {above}, end b {side}" == said
    assert corners["edge a"][0] == corners["face"][0]
    assert corners["end b"][1] == corners["face"][1]


def test_a_cut_that_could_not_be_made_still_has_its_sizes_on_the_sheet() -> None:
    cut = made_cut(BOX, "groove", "edge a", width=8, depth=10)
    lost = Cut(cut.kind, "odd groove", cut.surfaces, cut.where, cut.sizes, ())
    part = made_part(BOX, lost)
    picture = drawn(part)
    assert_told_once(part, picture)
    assert "odd groove: width" in picture.svg


def test_words_of_the_sides_are_on_the_face() -> None:
    said = {words_of(element) for element in texts(drawn(SAMPLES["rail"]))}
    assert {"Face", "edge a", "edge b", "end a", "end b", "grain", "Edge a", "End b"} <= said
