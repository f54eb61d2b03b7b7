"""Search: words, their beginnings and slips of the hand; titles before texts; the number found is said."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from browser.conftest import Hosted

pytestmark = pytest.mark.browser

MILL, DADOS, STILE, SAWN, MORTISE = (
    "Mill all the boards",
    "Cut the dados",
    "Door stile",
    "Why not quarter-sawn?",
    "Mortise",
)


def found(page: Page) -> list[str]:
    return page.locator("[data-results] a").all_text_contents()


@pytest.mark.parametrize(
    ("typed", "titles"),
    [
        ("stile", [STILE, MILL, SAWN]),
        ("STILE", [STILE, MILL, SAWN]),
        ("sti", [STILE, MILL, SAWN]),
        ("stlie", [STILE, MILL, SAWN]),
        ("mortice", [MORTISE]),
        ("mrotise", [MORTISE]),
        ("dado", [DADOS]),
        ("dadoe", [DADOS]),
        ("groove stile", [STILE]),
        ("quarter-sawn", [SAWN]),
        ("tenon", [MORTISE]),
        ("3/4", [MILL]),
        ("stile dovetails", [STILE, MILL, SAWN]),
    ],
)
def test_what_words_lead_to(page: Page, trial: Path, typed: str, titles: list[str]) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    page.get_by_label("Words").fill(typed)
    expect(page.locator("[data-results] li")).to_have_count(len(titles))
    assert found(page) == titles


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("stile", "3 found."),
        ("dados", "1 found."),
        ("stile dovetails", "Nothing has all of these words. 3 found with some of them."),
        ("xyzzy", "Nothing found. Try fewer words, or only the beginning of one."),
        ("ab", "Nothing found. Try fewer words, or only the beginning of one."),
        ("<!>", "Nothing found. Try fewer words, or only the beginning of one."),
        ("  ", ""),
    ],
)
def test_the_number_found_is_said_aloud(page: Page, trial: Path, typed: str, told: str) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    page.get_by_label("Words").fill("boards")
    expect(page.get_by_role("status")).to_have_text("2 found.")
    page.get_by_label("Words").fill(typed)
    expect(page.get_by_role("status")).to_have_text(told)


def test_another_pages_form_leads_to_results(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_label("Find").fill("stile & groove")
    page.get_by_label("Find").press("Enter")
    page.wait_for_url("**/find.html?q=*")
    expect(page.get_by_label("Words")).to_have_value("stile & groove")
    assert found(page) == [STILE]


def test_a_result_shows_its_kind_and_leads_to_its_page(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/find.html?q=hollow")
    expect(page.locator("[data-results] .kind")).to_have_text("Step")
    expect(page.locator("[data-results] mark")).to_have_text("hollow.")
    page.get_by_role("link", name=MILL).first.click()
    expect(page.get_by_role("heading", name="Mill all")).to_be_visible()


def test_the_index_makes_room_for_results_and_comes_back(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    expect(page.locator("[data-index]")).to_be_visible()
    page.get_by_label("Words").fill("stile")
    expect(page.locator("[data-index]")).to_be_hidden()
    page.get_by_label("Words").fill("")
    expect(page.locator("[data-index]")).to_be_visible()


def test_texts_never_become_markup(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/find.html?q=flat-sawn")
    expect(page.locator("[data-results]")).to_contain_text("<b>Will the stile</b>")
    expect(page.locator("[data-results] b")).to_have_count(0)
