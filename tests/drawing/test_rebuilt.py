"""A part rebuilt from the numbers on its drawing, as a builder would: they give the plan's shape.

What is read is the finished SVG: each number or letter, the size line beside it, the two ticks on that
line. The numbers are chained from one end of the part until every edge in the three views has its place.
These places must be all those at which the plan's solid has a corner, on each axis; of a hole, its centre,
and its diameter is read at its leader. Neither the sizes asked for nor the layout are looked at, and nothing
is measured off the sheet but where one cut is like another, as the drawing then says. Shaped outlines are in
`test_rebuilt_outlines.py`.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction
from math import hypot

import pytest

from benchalong.drawing.part import part_drawing
from benchalong.drawing.picture import Picture
from benchalong.plan.model import Circle, Part
from benchalong.road import travel
from benchalong.workings.solids import shaped, solid_of
from conftest import EXAMPLES, ROOT

SVG = "{http://www.w3.org/2000/svg}"
SQUARE = {"groove", "dado", "rabbet", "tongue", "tenon", "mortise", "notch", "bevel", "hole"}
"""Kinds whose edges all run along, across or down, and holes, told by centre and diameter."""
NEAR = 0.16
"""Places nearer than this, in px, are one; lines are written to a tenth of a px."""
BESIDE = (5.0, 8.5)
"""From a number's base line to its size line, px: more where it stands over the ticks."""
OVERHANG = 4.0
"""How far a centre line runs over its circle, px."""
Stroke = tuple[float, float, float, float]


@dataclass
class View:
    thin: list[Stroke] = field(default_factory=list)
    edges: list[Stroke] = field(default_factory=list)
    texts: list[tuple[str, float, float, bool]] = field(default_factory=list)
    """What is said (an exact length, or the letter that stands for one), where, whether upright."""

    rounds: list[tuple[str, Fraction]] = field(default_factory=list)
    """What its leaders say: the sign and the length."""
    centres: list[Stroke] = field(default_factory=list)
    breaks: list[Stroke] = field(default_factory=list)

    def places(self, upright: bool) -> list[float]:
        """Where edges end and where circles have their centres, along one direction of the sheet; not the
        edges of the circles themselves, which their diameters tell."""
        round_ones = self.circles()
        straight = [one for one in self.edges if not any(_is_of(one, circle) for circle in round_ones)]
        ends = [end for one in straight for end in ((one[1], one[3]) if upright else (one[0], one[2]))]
        broken = {one[upright] for one in self.breaks if one[upright] == one[2 + upright]}
        whole = [end for end in ends if not any(abs(end - at) < NEAR for at in broken)]
        return _each_once([*whole, *(circle[upright] for circle in round_ones)])

    def circles(self) -> list[tuple[float, float, float]]:
        """Where two centre lines cross, and how far the circle round that reaches."""
        level = [one for one in self.centres if one[1] == one[3]]
        upright = [one for one in self.centres if one[0] == one[2]]
        return [
            (two[0], one[1], abs(one[2] - one[0]) / 2 - OVERHANG)
            for one in level
            for two in upright
            if abs((one[0] + one[2]) / 2 - two[0]) < NEAR and abs((two[1] + two[3]) / 2 - one[1]) < NEAR
        ]


@dataclass
class Sheet:
    views: tuple[View, View, View]
    """Face, edge, end."""
    listed: dict[str, Fraction]
    are_alike: bool
    loose: list[tuple[str, Fraction]]
    """Sizes in the list that found no room for a letter either: what they are of, and the length."""


def read_sheet(picture: Picture) -> Sheet:
    views = [View()]
    listed: dict[str, Fraction] = {}
    key, sign, is_list, has_words = "", "", False, False
    unsaid, loose = list[Fraction](), list[tuple[str, Fraction]]()
    for element in ElementTree.fromstring(picture.svg):
        kind = element.attrib.get("class", "")
        if element.tag == f"{SVG}circle" and len(views) == 3:
            is_list = is_list or kind == "thin"
        elif element.tag == f"{SVG}path" and not is_list:
            if has_words:
                views.append(View())
                has_words = False
            if kind == "thin":
                views[-1].thin += strokes(element.attrib["d"])
            elif kind in ("visible", "hidden-line"):
                views[-1].edges += strokes(element.attrib["d"])
            elif kind == "break":
                views[-1].breaks += strokes(element.attrib["d"])
            elif kind == "centre":
                views[-1].centres += strokes(element.attrib["d"])
        elif element.tag == f"{SVG}text":
            has_words = True
            says = element.attrib.get("data-mm") or (element.text or "" if kind == "key" else "")
            x, y = float(element.attrib["x"]), float(element.attrib["y"])
            if sign and says:
                views[-1].rounds.append((sign, Fraction(says)))
            elif not is_list and says:
                views[-1].texts.append((says, x, y, "transform" in element.attrib))
            elif is_list and kind == "key":
                key = says
            elif is_list and says and key:
                listed[key], key = Fraction(says), ""
            elif is_list and says:
                unsaid = [*unsaid, Fraction(says)]
            elif is_list and unsaid and kind == "label note":
                loose.append((element.text or "", unsaid.pop()))
            sign = (element.text or "") if "sign" in kind.split() else ""
    face, edge, end = views
    return Sheet((face, edge, end), listed, "alike" in picture.svg, loose)


def strokes(data: str) -> list[Stroke]:
    found: list[Stroke] = []
    x = y = 0.0
    for letter, numbers in re.findall(r"([MLHV])([-\d. ]+)", data):
        spot = [float(number) for number in numbers.split()]
        new = (spot[0], y) if letter == "H" else (x, spot[0]) if letter == "V" else (spot[0], spot[1])
        if letter != "M":
            found.append((x, y, *new))
        x, y = new
    return found


Told = tuple[float, float, Fraction]
"""From and to on the sheet, in px, and what that measures, in mm."""


def _is_of(edge: Stroke, circle: tuple[float, float, float]) -> bool:
    x, y, reach = circle
    return all(hypot(edge[n] - x, edge[n + 1] - y) < reach + 2 * NEAR for n in (0, 2))


def told(sheet: Sheet, view: View, upright: bool) -> list[Told]:
    """Every size line of a view in one direction, with its number."""
    found: list[Told] = []
    beside: list[tuple[str, float, float]] = []
    for says, x, y, is_upright in view.texts:
        ends = _ticks(view, x, y, is_upright)
        if len(ends) == 2 and is_upright == upright:
            found.append((min(ends), max(ends), _length(sheet, says)))
        elif len(ends) != 2 and upright and not is_upright:
            beside.append((says, x, y))
    return found + [_beside(sheet, view, one, found) for one in beside]


def _beside(sheet: Sheet, view: View, number: tuple[str, float, float], known: list[Told]) -> Told:
    """A level number beside a short upright line: the nearest one that has none."""
    says, x, y = number
    lines = [_flat(one, True) for one in view.thin if abs(one[0] - one[2]) < NEAR]
    free = []
    for at, low, _, high in lines:
        ends = _ticks_at(lines_of(view), at, (low + high) / 2)
        if len(ends) == 2 and not any(_is_same(ends, told) for told in known):
            off = max(min(ends) - (y - 5), (y - 5) - max(ends), 0.0)
            free.append((hypot(at - x, off), min(ends), max(ends)))
    _, start, end = min(free)
    return (start, end, _length(sheet, says))


def lines_of(view: View) -> list[Stroke]:
    return [_flat(one, True) for one in view.thin]


def _is_same(ends: list[float], told: Told) -> bool:
    return abs(min(ends) - told[0]) < NEAR and abs(max(ends) - told[1]) < NEAR


def _length(sheet: Sheet, says: str) -> Fraction:
    return sheet.listed[says] if says in sheet.listed else Fraction(says)


def _ticks(view: View, x: float, y: float, upright: bool) -> list[float]:
    """Where the ticks are on the size line beside a number."""
    off, along = (x, y) if upright else (y, x)
    lines = [_flat(one, upright) for one in view.thin]
    return next((ends for by in BESIDE if len(ends := _ticks_at(lines, off + by, along)) == 2), [])


def _ticks_at(lines: list[Stroke], at: float, along: float) -> list[float]:
    line = next(
        (
            (low, high)
            for a, low, b, high in lines
            if abs(a - at) < NEAR and abs(b - at) < NEAR and low - NEAR <= along <= high + NEAR and low < high
        ),
        None,
    )
    if line is None:
        return []
    return [
        (low + high) / 2
        for a, low, b, high in lines
        if abs(abs(b - a) - 8) < NEAR
        and abs((a + b) / 2 - at) < NEAR
        and line[0] - NEAR <= (low + high) / 2 <= line[1] + NEAR
    ]


def _flat(one: Stroke, upright: bool) -> Stroke:
    """Off the size line, along it; from the lower end along it to the upper."""
    x0, y0, x1, y1 = one
    a, b = ((x0, y0), (x1, y1)) if upright else ((y0, x0), (y1, x1))
    return (*a, *b) if a[1] <= b[1] else (*b, *a)


def chained(places: list[float], sizes: list[Told], are_alike: bool) -> dict[float, Fraction]:
    """From the first place on, everything that the numbers lead to."""
    known: dict[float, Fraction] = {min(places): Fraction(0)}
    while True:
        new = _led_to(known, places, sizes)
        if not new and are_alike:
            new = _like_another(known, places, sizes)
        if not new:
            return known
        known |= new


def _led_to(known: dict[float, Fraction], places: list[float], sizes: list[Told]) -> dict[float, Fraction]:
    new: dict[float, Fraction] = {}
    for start, end, length in sizes:
        for here, there, by in ((start, end, length), (end, start, -length)):
            place = _known(known, here)
            if place is not None and _known(known, there) is None:
                new[_nearest(places, there)] = known[place] + by
    return new


def _like_another(
    known: dict[float, Fraction], places: list[float], sizes: list[Told]
) -> dict[float, Fraction]:
    """One further place, as far from one known as another stretch with a number is long on the sheet: the
    one that fits best."""
    fits = [
        (end - start, off, place, at + (length if place > here else -length))
        for place in places
        if _known(known, place) is None
        for here, at in known.items()
        for start, end, length in sizes
        if (off := abs(abs(place - here) - (end - start))) < NEAR
    ]
    best = min(fits, default=None)
    return {best[2]: best[3]} if best else {}


def _known(known: dict[float, Fraction], at: float) -> float | None:
    return next((one for one in known if abs(one - at) < NEAR), None)


def _nearest(places: list[float], at: float) -> float:
    return min((*places, at), key=lambda one: (abs(one - at) >= NEAR, abs(one - at)))


def _each_once(values: list[float]) -> list[float]:
    kept: list[float] = []
    for value in sorted(values):
        if not kept or value > kept[-1] + NEAR:
            kept.append(value)
    return kept


def rebuilt(picture: Picture) -> tuple[set[Fraction], set[Fraction], set[Fraction]]:
    """Where the numbers put the edges and centres along, across and down."""
    sheet = read_sheet(picture)
    face, edge, end = sheet.views
    found = []
    for pair, upright in (((face, edge), False), ((face, end), True)):
        places = _together([(view, upright, lambda at: at) for view in pair])
        sizes = [size for view in pair for size in told(sheet, view, upright)]
        sizes += _in_order(sheet, pair, places, sizes) if not upright else []
        found.append(set(chained(places, sizes, sheet.are_alike).values()))
    _, down = min((_down(sheet, is_turned) for is_turned in (False, True)), key=lambda one: one[0])
    return found[0], found[1], down


def _in_order(sheet: Sheet, pair: tuple[View, View], places: list[float], sizes: list[Told]) -> list[Told]:
    """Centres whose distance from end a stands in the list without a letter: the nearest has the least."""
    lengths = sorted(length for words, length in sheet.loose if words.endswith("centre from end a"))
    centres = sorted(circle[0] for view in pair for circle in view.circles())
    ends = [end for start, stop, _ in sizes for end in (start, stop)]
    free = [at for at in _each_once(centres) if not any(abs(at - end) < NEAR for end in ends)]
    return [(min(places), at, length) for at, length in zip(free, lengths, strict=False)]


def _together(views: list[tuple[View, bool, Callable[[float], float]]]) -> list[float]:
    """The places of views that show one direction, each once; not the sides of holes, which one of the views
    shows as circles."""
    bored = [(moved(c[upright]), c[2]) for view, upright, moved in views for c in view.circles()]
    beside = [at + way * reach for at, reach in bored for way in (-1, 1)]
    every = [moved(place) for view, upright, moved in views for place in view.places(upright)]
    return _each_once([at for at in every if not any(abs(at - one) < NEAR for one in beside)])


def _down(sheet: Sheet, is_turned: bool) -> tuple[tuple[int, int], set[Fraction]]:
    """The thickness shows upright in the edge's view and level in the end's, perhaps the other way round:
    as it is meant, more edges of the two coincide."""
    _, edge, end = sheet.views
    first, last = min(edge.places(True)), max(edge.places(True))
    start = min(end.places(False))

    def moved(place: float) -> float:
        return last - (place - start) if is_turned else first + (place - start)

    ends = [(moved(low), moved(high), length) for low, high, length in told(sheet, end, False)]
    sizes = [*told(sheet, edge, True), *((min(a, b), max(a, b), length) for a, b, length in ends)]
    places = _together([(edge, True, lambda at: at), (end, False, moved)])
    known = set(chained(places, sizes, sheet.are_alike).values())
    return (len(places), -len(known)), known


def corners(part: Part) -> tuple[set[float], set[float], set[float]]:
    """Where the plan's solid has corners on each axis, in mm to a millionth: where three faces meet, since a
    mesh has more vertices than the wood has corners."""
    solid = solid_of(part)
    faces: dict[int, set[int]] = {}
    for triangle, face in zip(solid.triangles.tolist(), solid.faces.tolist(), strict=True):
        for vertex in triangle:
            faces.setdefault(vertex, set()).add(face)
    real = solid.vertices[[vertex for vertex, at in faces.items() if len(at) >= 3]].tolist()
    bored = circles_of(part)
    found: list[set[float]] = [set(), set(), set()]
    for spot in real:
        near = [
            flat for flat, x, y, reach in bored if hypot(spot[flat[0]] - x, spot[flat[1]] - y) < reach + 0.03
        ]
        round_in = {n for flat in near for n in flat}
        for n in {0, 1, 2} - round_in:
            found[n].add(round(float(spot[n]), 6))
    for flat, *centre in bored:
        for n, at in zip(flat, centre, strict=False):
            found[n].add(round(at, 6))
    return found[0], found[1], found[2]


def circles_of(part: Part) -> list[tuple[tuple[int, int], float, float, float]]:
    """Of every hole: the two directions it is round in, its centre and its radius in mm."""
    prisms = [prism for cut in part.cuts for prism in cut.takes]
    flats = {"along": (1, 2), "across": (0, 2), "down": (0, 1)}
    return [
        (
            flats[one.axis],
            float(one.shape.centre[0]),
            float(one.shape.centre[1]),
            float(one.shape.diameter) / 2,
        )
        for one in prisms
        if isinstance(one.shape, Circle)
    ]


def square_parts(project: str) -> list[tuple[Part, Picture]]:
    plan = travel(ROOT / "content" / project).plan
    parts = [shaped(plan, shape) for shape in plan.shapes.values()]
    return [
        (
            part,
            part_drawing(
                part, solid_of(part), precision=plan.precision, units=plan.units, projection=plan.projection
            ),
        )
        for part in parts
        if {cut.kind for cut in part.cuts} <= SQUARE
    ]


def missing(part: Part, picture: Picture) -> dict[str, set[float]]:
    """Corners of the plan's solid that the numbers don't lead to, and places they lead to without one."""
    wrong: dict[str, set[float]] = {}
    rows = zip(("along", "across", "down"), rebuilt(picture), corners(part), part.box, strict=True)
    for axis, places, expected, whole in rows:
        found = {round(float(place), 6) for place in places}
        turned = {round(float(whole - place), 6) for place in places}
        if expected not in (found, turned):
            wrong[axis] = min(expected ^ found, expected ^ turned, key=len)
    bored = {round(2 * radius, 6) for *_, radius in circles_of(part)}
    views = read_sheet(picture).views
    if (said := {round(float(size), 6) for view in views for _, size in view.rounds}) != bored:
        wrong["diameters"] = said ^ bored
    return wrong


@pytest.mark.parametrize("project", EXAMPLES)
def test_the_numbers_on_a_drawing_give_the_plans_shape(project: str) -> None:
    parts = square_parts(project)
    assert len(parts) == {"seed-cupboard": 13, "step-stool": 5}[project], "all but what has a shaped outline"
    wrong = {part.name: found for part, picture in parts if (found := missing(part, picture))}
    assert wrong == {}


def test_a_wrong_number_would_be_seen() -> None:
    part, picture = next(one for one in square_parts("seed-cupboard") if one[0].id == "top_rail")
    wrong = Picture(picture.svg.replace("1905/8", "1906/8"), picture.alt, picture.width, picture.height)
    assert wrong.svg != picture.svg
    assert missing(part, wrong)
