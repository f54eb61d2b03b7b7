"""Every kind of page passes axe-core, light and dark, on a phone and on a desk.

From a host, since axe-core reads the style sheets once more, which a page opened from a folder may not.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, Literal

import pytest
from playwright.sync_api import Page, expect

from browser.conftest import Hosted
from browser.kinds import KINDS, one_of_each_kind

pytestmark = [pytest.mark.browser, pytest.mark.tools]

SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
WIDTHS = (390, 1280)


@pytest.fixture(scope="session")
def axe(axe_script: Path) -> str:
    return axe_script.read_text(encoding="utf-8")


def violations(page: Page, axe: str) -> list[str]:
    """What axe-core finds, light and dark, narrow and wide; each once, with where it is."""
    page.evaluate(axe)
    found: set[str] = set()
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        for scheme in SCHEMES:
            page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
            told = page.evaluate("axe.run({resultTypes: ['violations']}).then(told => told.violations)")
            found.update(f"{scheme}, {width} px: {said}" for said in map(_in_words, told))
    return sorted(found)


def _in_words(violation: dict[str, Any]) -> str:
    where = [node["html"][:160] for node in violation["nodes"][:3]]
    return f"{violation['id']} ({violation['help']}) at {len(violation['nodes'])}: {where}"


def test_every_kind_of_page_is_looked_at(site: Path) -> None:
    assert set(one_of_each_kind(site)) == set(KINDS)


@pytest.mark.parametrize("kind", KINDS)
def test_no_violation(page: Page, site: Path, on_host: Hosted, axe: str, kind: str) -> None:
    page.goto(f"{on_host(site)}/{one_of_each_kind(site)[kind]}")
    assert violations(page, axe) == []


def test_no_violation_among_results(page: Page, site: Path, on_host: Hosted, axe: str) -> None:
    page.goto(f"{on_host(site)}/find.html?q=the")
    page.locator("[data-results] li").first.wait_for()
    assert violations(page, axe) == []


WHAT_IS_TICKED = """() => ({
    under: `benchalong/${document.documentElement.dataset.project}/step/`
        + document.querySelector('[data-checks]').dataset.step,
    keys: Array.from(document.querySelectorAll('[data-tick]'), box => box.dataset.tick),
    sizes: JSON.parse(document.getElementById('page-data').textContent).sizes,
})"""


def test_no_violation_beside_ticks_of_an_older_edition(
    page: Page, site: Path, on_host: Hosted, axe: str
) -> None:
    """Every tick was made with other sizes, and the first to other words."""
    page.goto(f"{on_host(site)}/{one_of_each_kind(site)['step']}")
    there = page.evaluate(WHAT_IS_TICKED)
    older = dict.fromkeys(there["sizes"], "1")
    keys = ["gone", *there["keys"][1:]]
    ticks = {
        key: {"when": "2026-01-01", "words": "Other words", "at": at, "sizes": older}
        for at, key in enumerate(keys)
    }
    page.evaluate("([key, ticks]) => localStorage.setItem(key, ticks)", [there["under"], json.dumps(ticks)])
    page.reload()
    expect(page.locator("[data-made-before]")).to_have_count(len(keys) + 1)
    assert violations(page, axe) == []


def test_no_violation_on_a_device_that_keeps_nothing(
    page: Page, site: Path, on_host: Hosted, axe: str
) -> None:
    page.add_init_script("Storage.prototype.setItem = () => { throw new Error('full'); };")
    page.goto(f"{on_host(site)}/{one_of_each_kind(site)['step']}")
    expect(page.locator("[data-not-kept]")).to_be_visible()
    assert violations(page, axe) == []
