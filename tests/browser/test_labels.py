"""No label or number lies on another or leaves its sheet: boxes as Chromium measures them, in both systems.

Every picture of the examples, of the sample board and of 50 pieces made by rule, each at a phone's width
and as large as a page shows it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from html import unescape
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from benchalong.drawing.setup import setup_picture
from benchalong.drawing.sheet import UNIT_WORDS
from benchalong.drawing.text import number_text
from benchalong.ground.lengths import INCH
from benchalong.ground.marks import Marks
from benchalong.ground.shown import SYSTEMS, Precision, System
from benchalong.publishing.theme import chosen_in, load_theme
from benchalong.road import Travelled, travel
from benchalong.trade.ways.model import FAMILIES, Family
from benchalong.trade.ways.table import ways
from conftest import ROOT
from drawing.made_pieces import made_piece
from drawing.pictures import all_pictures, travel_text
from trade.ways.works import WORKS, in_other_sizes

pytestmark = pytest.mark.browser

PROJECTS = ("seed-cupboard", "step-stool", "joint-samples")
MADE = 50
WIDTHS = (358, 720)
"""A phone's page, and the widest that a drawing is shown, in px."""
SLACK = 0.5
"""Boxes that share less than this, in px, are beside each other."""
LIVE = re.compile(r'(<text[^>]* data-mm="([^"]+)"[^>]*>)[^<]*')
UNIT = re.compile(r"(<tspan[^>]*data-unit-word[^>]*>)[^<]*")

MEASURE = """slack => [...document.querySelectorAll('figure')].flatMap(figure => {
    const sheet = figure.querySelector('svg').getBoundingClientRect();
    const texts = [...figure.querySelectorAll('text')].map(text => {
        return {said: text.textContent, box: text.getBoundingClientRect()};
    });
    const wrong = [];
    const beyond = box => box.left < sheet.left - slack || box.right > sheet.right + slack
        || box.top < sheet.top - slack || box.bottom > sheet.bottom + slack;
    texts.forEach((one, n) => {
        if (!one.box.width) wrong.push(`${figure.id}: ${one.said} has no width`);
        if (beyond(one.box)) wrong.push(`${figure.id}: ${one.said} leaves the sheet`);
        for (const other of texts.slice(n + 1)) {
            const wide = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
            const tall = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
            if (wide > slack && tall > slack) {
                const by = `${wide.toFixed(1)} x ${tall.toFixed(1)}`;
                wrong.push(`${figure.id}: ${one.said} on ${other.said}, ${by}`);
            }
        }
    });
    return wrong;
})"""


def in_system(svg: str, system: System, precision: Precision) -> str:
    """A drawing as the page shows it in a system."""
    live = LIVE.sub(lambda m: m[1] + number_text(Fraction(unescape(m[2])), system, precision), svg)
    return UNIT.sub(lambda m: m[1] + UNIT_WORDS[system], live)


@pytest.fixture(scope="module")
def paper(browser: Browser) -> Iterator[Callable[[str, int], Page]]:
    """A page with the theme's styles and these drawings, so wide."""
    theme = load_theme(chosen_in("", Marks()), ROOT)
    styles = "".join(theme.styles[name].text for name in ("sheet.css", "drawing.css"))
    context = browser.new_context(viewport={"width": 800, "height": 800})
    page = context.new_page()

    def laid(drawings: str, width: int) -> Page:
        page.set_content(
            f"<!doctype html><html><style>{styles} figure {{width: {width}px; margin: 0}}</style>{drawings}"
        )
        return page

    yield laid
    context.close()


def wrong_labels(travelled: Travelled, paper: Callable[[str, int], Page]) -> list[str]:
    found: list[str] = []
    pictures = all_pictures(travelled)
    assert pictures
    for system in SYSTEMS:
        figures = "".join(
            f'<figure id="{name}">{in_system(picture.svg, system, travelled.plan.precision)}</figure>'
            for name, picture in pictures.items()
        )
        for width in WIDTHS:
            said: Any = paper(figures, width).evaluate(MEASURE, SLACK * width / WIDTHS[0])
            found += [f"{system} {width}: {one}" for one in said]
    return found


@pytest.mark.parametrize("project", PROJECTS)
def test_labels_of_a_project_keep_apart(project: str, paper: Callable[[str, int], Page]) -> None:
    assert wrong_labels(travel(ROOT / "content" / project), paper) == []


@pytest.mark.parametrize("seed", range(MADE))
def test_labels_of_made_pieces_keep_apart(seed: int, paper: Callable[[str, int], Page]) -> None:
    assert wrong_labels(travel_text(made_piece(seed)), paper) == []


@pytest.mark.parametrize("family", FAMILIES)
def test_labels_of_setups_keep_apart(family: Family, paper: Callable[[str, int], Page]) -> None:
    precision = Precision(inch=INCH / 64)
    pictures = {
        f"{family} {size} {way.tool}": picture
        for size, work in enumerate(in_other_sizes(WORKS[family]))
        for units in SYSTEMS
        for way in ways(work, units=units).ways
        if (picture := setup_picture(work, way, units=units, precision=precision)) is not None
    }
    found: list[str] = []
    for system in SYSTEMS:
        figures = "".join(
            f'<figure id="{name}">{in_system(picture.svg, system, precision)}</figure>'
            for name, picture in pictures.items()
        )
        for width in WIDTHS[:1]:
            said: Any = paper(figures, width).evaluate(MEASURE, SLACK)
            found += [f"{system} {width}: {one}" for one in said]
    assert found == []


def test_an_overlap_would_be_seen(paper: Callable[[str, int], Page]) -> None:
    """The measure itself: two numbers on each other, one beyond the sheet."""
    texts = '<text x="50" y="50">12</text><text x="55" y="52">34</text><text x="98" y="20">56</text>'
    svg = f'<figure id="a"><svg class="drawing" viewBox="0 0 100 100">{texts}</svg></figure>'
    said: Any = paper(svg, 358).evaluate(MEASURE, SLACK)
    assert [one.split(",")[0] for one in said] == ["a: 12 on 34", "a: 56 leaves the sheet"]
