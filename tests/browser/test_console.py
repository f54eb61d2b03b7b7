"""No page says anything on the console, and none asks for anything outside the site's own folder."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, expect

from browser.conftest import Hosted, asked_for
from browser.kinds import one_of_each_kind

pytestmark = pytest.mark.browser


@pytest.fixture
def requests(reader: BrowserContext) -> Iterator[list[str]]:
    """Every address that the reader's pages ask for."""
    asked: list[str] = []
    reader.on("request", lambda request: asked.append(request.url))
    asked_for.clear()
    yield asked
    asked_for.clear()


def test_pages_keep_quiet_and_to_themselves(
    reader: BrowserContext, requests: list[str], site: Path, hosted: Hosted
) -> None:
    """The device's page says nothing (the fixture `reader` looks), and nothing leaves the folder."""
    page = reader.new_page()
    for path in one_of_each_kind(site).values():
        page.goto(f"{hosted(site)}/{path}")
        page.locator("[data-switch=units]").click()
        expect(page.locator("main")).to_be_visible()
    assert len(requests) > len(one_of_each_kind(site))
    assert [url for url in requests if not url.startswith(f"{hosted(site)}/")] == []
    # What the browser asks for by itself, such as an icon, is seen only by the host.
    assert [path for path in asked_for if f"/{site.name}/" not in path] == []
