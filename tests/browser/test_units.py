"""Inches or millimetres: the switch, what it changes, that it is remembered; and Python's own arithmetic."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser, BrowserContext, Page, expect

from benchalong.ground.shown import SYSTEMS, Precision, System, shown
from browser.conftest import SCRIPTS, Hosted, rewrite
from ground.test_shown import cases

pytestmark = pytest.mark.browser


def test_the_switch_shows_everything_in_the_other_system(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_role("button", name="Show millimetres").click()
    expect(page.locator("main p").first).to_have_text(
        "In millimetres: a stile is ≈ 60.3 mm, a third ≈ 8.5 mm, in mm."
    )
    assert page.locator("svg text").all_text_contents() == ["≈60.3", "≈8.5", "≈2"]
    assert page.evaluate("document.documentElement.dataset.units") == "millimetre"


def test_there_and_back_leaves_the_page_as_it_was_written(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    before = page.locator("main").inner_html()
    page.get_by_role("button", name="Show millimetres").click()
    page.get_by_role("button", name="Show inches").click()
    assert page.locator("main").inner_html() == before


def test_the_choice_holds_on_other_pages_and_after_a_reload(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_role("button", name="Show millimetres").click()
    page.goto(f"{hosted(trial)}/table.html")
    assert page.locator("data").all_text_contents() == ["≈ 60.3 mm", "≈ 8.5 mm", "200 mm", "61 mm", "60 mm"]
    page.goto(f"{hosted(trial)}/step.html")
    page.reload()
    expect(page.locator("data").first).to_have_text("≈ 60.3 mm")
    expect(page.get_by_role("button", name="Show inches")).to_be_visible()


def test_the_remembered_system_stands_before_the_page_is_complete(page: Page, trial: Path) -> None:
    """A script at the end of the body sees switched sizes: they were switched while the page came in."""
    rewrite(trial / "step.html", ("</main>", '</main>\n<script src="scripts/seen.js"></script>'))
    (trial / "scripts" / "seen.js").write_text("var seen = document.querySelector('data').textContent;\n")
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_role("button", name="Show millimetres").click()
    page.reload()
    assert page.evaluate("seen") == "≈ 60.3 mm"


@pytest.mark.parametrize("kept", ['"furlong"', "7", "{}", "inch", "null"])
def test_a_system_that_is_none_is_passed_over(page: Page, trial: Path, kept: str) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    page.evaluate("kept => localStorage.setItem('benchalong/trial-box/units', kept)", kept)
    page.goto(f"{trial.as_uri()}/step.html")
    expect(page.locator("data").first).to_have_text("2 3/8 in")


def test_a_switch_in_one_window_switches_the_other(reader: BrowserContext, trial: Path) -> None:
    one, other = reader.new_page(), reader.new_page()
    for window in (one, other):
        window.goto(f"{trial.as_uri()}/step.html")
    one.get_by_role("button", name="Show millimetres").click()
    expect(other.locator("data").first).to_have_text("≈ 60.3 mm")


def show_in_page(page: Page, asked: Sequence[tuple[str, str, str]]) -> list[str | None]:
    """Each (exact, system, step) as the page's own arithmetic shows it."""
    script = """cases => cases.map(([exact, system, step]) => {
        const [length, nearest] = [benchalongLengths.read(exact), benchalongLengths.read(step)];
        return length && nearest && benchalongLengths.shown(length, system, nearest).text;
    })"""
    shown_there: list[str | None] = page.evaluate(script, asked)
    return shown_there


@pytest.fixture(scope="module")
def arithmetic(browser: Browser) -> Iterator[Page]:
    """A blank page that knows lengths."""
    context = browser.new_context()
    blank = context.new_page()
    blank.add_script_tag(path=SCRIPTS / "lengths.js")
    yield blank
    context.close()


lengths = st.fractions(min_value=-5000, max_value=5000, max_denominator=10**6) | st.integers(-20, 400).map(
    lambda count: count * Fraction(127, 5 * 64)
)


def test_the_table_of_cases_holds_in_the_page_too(arithmetic: Page) -> None:
    asked = [(exact, system, step) for exact, system, step, _ in cases()]
    assert show_in_page(arithmetic, asked) == [text for *_, text in cases()]


@settings(max_examples=10, deadline=None, phases=(Phase.generate,))
@given(st.lists(st.tuples(lengths, st.sampled_from(SYSTEMS)), min_size=30, max_size=60))
def test_any_length_is_shown_as_python_shows_it(
    arithmetic: Page, drawn: list[tuple[Fraction, System]]
) -> None:
    precision = Precision(inch=Fraction(127, 5 * 32), millimetre=Fraction(1, 2))
    asked = [(str(length), system, str(precision.step(system))) for length, system in drawn]
    expected = [shown(length, system, precision).text for length, system in drawn]
    assert show_in_page(arithmetic, asked) == expected


@pytest.mark.parametrize(
    "text", ["", "1/0", "1/-2", "1.5", "--1", "1/2/3", "0x10", " 1", "1e3", "9" * 401, None, 7, {}, "1n"]
)
def test_what_is_no_length_is_none(arithmetic: Page, text: object) -> None:
    assert arithmetic.evaluate("text => benchalongLengths.read(text)", text) is None
