"""Small pictures: cuts show, long parts are shortened by one rule, no numbers."""

from __future__ import annotations

from xml.etree import ElementTree

import numpy as np
import pytest

from benchalong.drawing.small import shortened_vertices, small_picture
from benchalong.plan.model import Part, Prism
from benchalong.workings.solids import solid_of
from drawing import cabinet
from drawing.shop import bore, part, slot

PLAIN = part("rail", 700, 60, 20)


def drawn_size(one: Part) -> list[float]:
    vertices = shortened_vertices(solid_of(one).vertices, float(one.thickness))
    return [float(size) for size in np.ptp(vertices, axis=0)]


def test_short_stretches_keep_their_proportion() -> None:
    assert drawn_size(part("block", 29, 25, 20)) == pytest.approx([29, 25, 20])


def test_long_parts_are_shortened_but_stay_longer() -> None:
    lengths = [drawn_size(part("p", length, 60, 20))[0] for length in (300, 600, 1200, 2400)]
    assert lengths == sorted(lengths)
    assert lengths[-1] < 600
    assert lengths[0] > 100


def test_a_cut_keeps_its_shape_in_a_shortened_part() -> None:
    """A dado 19 wide and 6 deep stays that, wherever it lies."""
    solid = solid_of(part("side", 700, 200, 20, slot("across", (300, 319), (14, 20), 0, 200)))
    drawn = shortened_vertices(solid.vertices, 20.0)
    low = np.unique(np.round(drawn[np.isclose(solid.vertices[:, 0], 300), 0], 6))
    high = np.unique(np.round(drawn[np.isclose(solid.vertices[:, 0], 319), 0], 6))
    assert high - low == pytest.approx([19])
    assert np.ptp(drawn[:, 2]) == pytest.approx(20)


@pytest.mark.parametrize(
    "cut",
    [
        slot("across", (300, 319), (14, 20), 0, 60),
        slot("across", (300, 319), (0, 6), 0, 60),
        slot("along", (50, 60), (6, 14), 0, 700),
        slot("along", (0, 10), (6, 14), 0, 700),
        slot("across", (0, 10), (0, 6), 0, 60),
        bore("down", (350, 30), 20, 0, 20),
        bore("across", (350, 10), 8, 0, 30),
    ],
)
def test_a_cut_shows_whichever_side_it_is_on(cut: Prism) -> None:
    plain, carved = PLAIN, part("rail", 700, 60, 20, cut)
    assert small_picture(carved, solid_of(carved)).svg != small_picture(plain, solid_of(plain)).svg


@pytest.mark.parametrize("name", sorted(cabinet.parts()))
def test_it_is_small_and_within_its_frame(name: str) -> None:
    one = cabinet.parts()[name]
    picture = small_picture(one, solid_of(one))
    top = ElementTree.fromstring(picture.svg)
    assert top.attrib["viewBox"] == "0 0 120 72"
    assert (picture.width, picture.height) == (120, 72)
    assert picture.alt.startswith(one.name)
    assert not list(top.iter("{http://www.w3.org/2000/svg}text"))
    assert len(picture.svg) < 2000


def test_a_part_with_nothing_left_is_refused() -> None:
    gone = part("gone", 50, 20, 20, bore("down", (25, 10), 90, 0, 20))
    with pytest.raises(ValueError, match="empty"):
        small_picture(gone, solid_of(gone))
