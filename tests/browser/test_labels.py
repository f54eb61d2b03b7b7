"""No label or number lies on another or leaves its sheet, and no leader crosses a number or another leader:
boxes as Chromium measures them, in both systems.

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
from benchalong.ground.shown import DRILLS, SYSTEMS, Precision, System
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
LEADER_SLACK = 1.5
"""A text's box has room above and below the letters: a leader may run so far in, in px."""
LIVE = re.compile(r'(<text class="size bare"[^>]* data-mm="([^"]+)"[^>]*>)[^<]*')
LIVE_HOLE = re.compile(r'(<text class="size bare drill"[^>]* data-mm="([^"]+)"[^>]*>)[^<]*')
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

LEADERS = """slack => [...document.querySelectorAll('figure')].flatMap(figure => {
    const wrong = [];
    const lines = [...figure.querySelectorAll('path.leader')].flatMap(path => segments(path));
    const groups = together(lines);
    const texts = [...figure.querySelectorAll('text')].map(text => {
        return {said: text.textContent, box: text.getBoundingClientRect()};
    });
    groups.forEach((one, n) => {
        for (const {said, box} of texts)
            if (one.some(line => through(line, box, slack)))
                wrong.push(`${figure.id}: a leader through ${said}`);
        for (const other of groups.slice(n + 1))
            if (one.some(a => other.some(b => meet(a, b)))) wrong.push(`${figure.id}: two leaders cross`);
    });
    return wrong;

    function segments(path) {
        const there = path.getScreenCTM(), found = [];
        let x = 0, y = 0;
        const go = (u, v) => {
            const a = new DOMPoint(x, y).matrixTransform(there);
            const b = new DOMPoint(u, v).matrixTransform(there);
            found.push([a.x, a.y, b.x, b.y]);
            [x, y] = [u, v];
        };
        for (const [, letter, rest] of path.getAttribute('d').matchAll(/([MlLHV])([^MlLHV]*)/g)) {
            const n = (rest.match(/-?(?:\\d+\\.?\\d*|\\.\\d+)/g) || []).map(Number);
            if (letter === 'M') [x, y] = n;
            if (letter === 'H') go(n[0], y);
            if (letter === 'V') go(x, n[0]);
            if (letter === 'L') for (let i = 0; i < n.length; i += 2) go(n[i], n[i + 1]);
            if (letter === 'l') for (let i = 0; i < n.length; i += 2) go(x + n[i], y + n[i + 1]);
        }
        return found;
    }
    function together(lines) {
        const groups = [];
        const near = (a, b, c, d) => Math.hypot(a - c, b - d) < 0.3;
        const joined = (s, t) => near(s[0], s[1], t[0], t[1]) || near(s[0], s[1], t[2], t[3])
            || near(s[2], s[3], t[0], t[1]) || near(s[2], s[3], t[2], t[3]);
        for (const line of lines) {
            const mine = groups.filter(group => group.some(other => joined(line, other)));
            const rest = groups.filter(group => !mine.includes(group));
            groups.splice(0, groups.length, ...rest, [line, ...mine.flat()]);
        }
        return groups;
    }
    function through([a, b, c, d], box, slack) {
        for (let i = 0; i <= 200; i++) {
            const x = a + (c - a) * i / 200, y = b + (d - b) * i / 200;
            const inside = x > box.left + slack && x < box.right - slack;
            if (inside && y > box.top + slack && y < box.bottom - slack) return true;
        }
        return false;
    }
    function meet([ax, ay, bx, by], [cx, cy, dx, dy]) {
        const turn = (px, py, qx, qy, rx, ry) => (qx - px) * (ry - py) - (qy - py) * (rx - px);
        return turn(ax, ay, bx, by, cx, cy) * turn(ax, ay, bx, by, dx, dy) < 0
            && turn(cx, cy, dx, dy, ax, ay) * turn(cx, cy, dx, dy, bx, by) < 0;
    }
})"""
"""Each leader is what hangs together of the leaders' lines: a slanting line, its shelf, its arrowhead."""


def in_system(svg: str, system: System, precision: Precision) -> str:
    """A drawing as the page shows it in a system."""
    drills = LIVE_HOLE.sub(lambda m: m[1] + number_text(Fraction(unescape(m[2])), system, DRILLS), svg)
    live = LIVE.sub(lambda m: m[1] + number_text(Fraction(unescape(m[2])), system, precision), drills)
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
            page = paper(figures, width)
            said: Any = page.evaluate(MEASURE, SLACK * width / WIDTHS[0])
            said += page.evaluate(LEADERS, LEADER_SLACK * width / WIDTHS[0])
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


def test_a_crossing_would_be_seen(paper: Callable[[str, int], Page]) -> None:
    """The measure itself: two leaders that cross, one through a number, and one that keeps clear of both."""
    lines = (
        '<path class="thin leader" d="M10 10L60 60M60 10l-50 50"/><path class="thin leader" d="M5 80H70V95"/>'
    )
    texts = '<text x="50" y="85">12</text><text x="75" y="30">34</text>'
    svg = f'<figure id="a"><svg class="drawing" viewBox="0 0 100 100">{lines}{texts}</svg></figure>'
    said: Any = paper(svg, 358).evaluate(LEADERS, LEADER_SLACK)
    assert said == ["a: two leaders cross", "a: a leader through 12"]


def test_there_are_leaders_to_look_at() -> None:
    pictures = all_pictures(travel(ROOT / "content" / "step-stool"))
    kinds = {name.split()[0] for name, picture in pictures.items() if "leader" in picture.svg}
    assert {"part", "assembly", "apart", "step"} <= kinds
