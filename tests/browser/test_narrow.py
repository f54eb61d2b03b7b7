"""On a phone nothing is wider than the page, no number leaves its cell or meets another, no head breaks.

Every kind of page, as it is published, in both systems: the longest page of each, which has most to show.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from browser.kinds import one_of_each_kind

pytestmark = pytest.mark.browser

PHONES = (390, 360)
"""Px: a usual phone's page, and the narrowest that is common."""

AMISS = r"""() => {
    const wrong = [];
    const said = element => element.textContent.trim().slice(0, 40);
    const seen = element => element.getClientRects().length > 0;
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > width) wrong.push('the page can be pushed sideways');
    for (const cell of document.querySelectorAll('td, th')) {
        const room = cell.getBoundingClientRect();
        for (const size of cell.querySelectorAll('data.size')) {
            const box = size.getBoundingClientRect();
            if (seen(size) && (box.left < room.left - 1 || box.right > room.right + 1))
                wrong.push(`${said(size)} leaves its cell in ${said(cell.parentElement)}`);
        }
    }
    for (const row of document.querySelectorAll('tr')) {
        const sizes = [...row.querySelectorAll('data.size')].filter(seen);
        sizes.forEach((one, n) => sizes.slice(n + 1).forEach(other => {
            const [a, b] = [one.getBoundingClientRect(), other.getBoundingClientRect()];
            if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
                && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1)
                wrong.push(`${said(one)} on ${said(other)} in ${said(row)}`);
        }));
    }
    for (const head of document.querySelectorAll('thead th')) {
        const walk = document.createTreeWalker(head, NodeFilter.SHOW_TEXT);
        for (let text = walk.nextNode(); text; text = walk.nextNode())
            for (const word of text.data.matchAll(/[A-Za-z]+/g)) {
                const range = document.createRange();
                range.setStart(text, word.index);
                range.setEnd(text, word.index + word[0].length);
                if (range.getClientRects().length > 1) wrong.push(`${word[0]} is broken in ${said(head)}`);
            }
    }
    return wrong.map(each => each.replace(/\s+/g, " "));
}"""


@pytest.mark.parametrize("width", PHONES)
def test_every_kind_of_page_on_a_phone(page: Page, site: Path, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    wrong: list[str] = []
    for kind, path in one_of_each_kind(site).items():
        page.goto((site / path).as_uri())
        for system in ("as written", "the other"):
            wrong += [f"{kind}, {system}: {found}" for found in page.evaluate(AMISS)]
            page.locator("[data-switch=units]").first.click()
    assert not wrong, "\n".join(wrong)
