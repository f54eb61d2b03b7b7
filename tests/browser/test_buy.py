"""The list to take along: its boxes can be ticked at the yard and stay so."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from conftest import ROOT, publish

pytestmark = pytest.mark.browser


def test_a_thing_bought_stays_ticked(page: Page, tmp_path: Path) -> None:
    site = publish(ROOT / "content" / "step-stool", tmp_path / "site")
    page.goto(f"{site.as_uri()}/buy.html")
    boxes = page.locator("[data-checks] input")
    boxes.first.check()
    page.get_by_label("Grip strip 4").check()
    page.reload()
    expect(boxes.first).to_be_checked()
    expect(page.get_by_label("Grip strip 4")).to_be_checked()
    assert boxes.count() > 5
    assert page.locator("[data-checks] input:checked").count() == 2


def test_the_list_fits_a_phone(page: Page, tmp_path: Path) -> None:
    site = publish(ROOT / "content" / "step-stool", tmp_path / "site")
    page.set_viewport_size({"width": 390, "height": 844})
    for name in ("buy", "cut-list"):
        page.goto(f"{site.as_uri()}/{name}.html")
        assert page.evaluate("document.documentElement.scrollWidth") <= 390
