"""With scripts off everything is there to read, and every way leads on."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Browser, Page, expect

from browser.conftest import Hosted
from browser.kinds import KINDS, one_of_each_kind

pytestmark = pytest.mark.browser

SCRIPT_ONLY = "[data-switch], form[data-question], .progress"
"""What only works with scripts, and is hidden until they run."""


@pytest.fixture
def plain(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844})
    context.set_default_timeout(5000)
    yield context.new_page()
    context.close()


def words(text: str) -> str:
    return re.sub(r"\W+", " ", text).strip().casefold()


@pytest.mark.parametrize("kind", KINDS)
def test_every_word_is_shown(plain: Page, site: Path, kind: str) -> None:
    """The words of the file are the words on the screen, but for what is for scripts or the other system."""
    path = site / one_of_each_kind(site)[kind]
    soup = BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")
    body = soup.body
    assert body is not None
    for hidden in body.select(f"{SCRIPT_ONLY}, svg, script, .only-inch, .only-millimetre"):
        hidden.decompose()
    plain.goto(path.as_uri())
    closed = plain.locator("details:not([open]) > summary")
    while closed.count():
        closed.first.click()
    shown = words(plain.locator("body").inner_text())
    if kind == "paper":  # what heads each printed sheet is not repeated on the screen
        plain.emulate_media(media="print")
        shown += words(plain.locator("body").inner_text())
    missing = [text for text in body.stripped_strings if words(text) and words(text) not in shown]
    assert missing == []


def test_only_what_scripts_do_is_hidden(site: Path) -> None:
    for page in site.rglob("*.html"):
        soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
        hidden = [
            element.name for element in soup.select("[hidden]") if element not in soup.select(SCRIPT_ONLY)
        ]
        assert hidden == [], page.name


def test_a_reader_gets_from_the_piece_to_the_last_step(plain: Page, site: Path, hosted: Hosted) -> None:
    plain.goto(f"{hosted(site)}/index.html")
    plain.locator("main a[href^='stages/']").first.click()
    plain.locator("main a[href^='../steps/']").first.click()
    steps = len(list((site / "steps").glob("*.html")))
    for _ in range(steps - 1):
        plain.locator("a[rel=next]").click()
    expect(plain.locator("a[rel=next]")).to_have_count(0)
    assert plain.locator("html").get_attribute("data-page") == "step"
    plain.get_by_role("searchbox").fill("anything")
    plain.get_by_role("searchbox").press("Enter")
    expect(plain.locator("html")).to_have_attribute("data-page", "find")
    assert plain.locator("[data-index] a").count() > steps
