"""Sorting a table: by exact value, within its groups, and back to the order it was written in."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

WRITTEN = ["3/4 in thick", "Stile", "Rail", "Apron", "1/2 in thick", "Top", "Back"]


def order(page: Page) -> list[str]:
    return page.locator("tbody tr th").all_text_contents()


@pytest.mark.parametrize(
    ("column", "up", "down"),
    [
        ("Part", ["Apron", "Rail", "Stile", "Back", "Top"], ["Stile", "Rail", "Apron", "Top", "Back"]),
        ("Count", ["Rail", "Stile", "Apron", "Top", "Back"], ["Stile", "Rail", "Apron", "Back", "Top"]),
        ("Length", ["Rail", "Stile", "Apron", "Back", "Top"], ["Apron", "Stile", "Rail", "Top", "Back"]),
    ],
)
def test_each_click_sorts_within_the_groups(
    page: Page, trial: Path, column: str, up: list[str], down: list[str]
) -> None:
    page.goto(f"{trial.as_uri()}/table.html")
    head = page.get_by_role("columnheader", name=column)
    for expected, said in ((up, "ascending"), (down, "descending"), (None, None)):
        page.get_by_role("button", name=column).press("Enter")
        rows = [WRITTEN[0], *expected[:3], WRITTEN[4], *expected[3:]] if expected else WRITTEN
        assert order(page) == rows
        assert head.get_attribute("aria-sort") == said


def test_only_one_column_says_that_it_is_sorted_by(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/table.html")
    page.get_by_role("button", name="Part").click()
    page.get_by_role("button", name="Length").click()
    expect(page.locator("[aria-sort]")).to_have_count(1)
    expect(page.locator("[aria-sort]")).to_have_text("Length")


def test_a_column_that_is_not_to_be_sorted_has_no_button(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/table.html")
    expect(page.locator("thead button")).to_have_count(3)
