"""Ticks: kept on the device, through a reload and a new edition; and what is said when something changed."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from browser.conftest import Hosted, rewrite

pytestmark = pytest.mark.browser

FLAT, WIDE, SQUARE = "Every board lies flat.", "Stiles are", "The edges are square."
KEPT_UNDER = "benchalong/trial-box/step/mill-all"
STILE_CHANGED = "Ticked before a change: stile was 2 3/4 in, now 2 3/8 in."


def test_a_tick_survives_a_reload(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_label(FLAT).check()
    page.reload()
    expect(page.get_by_label(FLAT)).to_be_checked()
    expect(page.get_by_label(SQUARE)).not_to_be_checked()


def test_a_tick_taken_back_is_gone(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_label(FLAT).check()
    page.get_by_label(FLAT).uncheck()
    page.reload()
    expect(page.get_by_label(FLAT)).not_to_be_checked()
    assert page.evaluate(f"localStorage.getItem('{KEPT_UNDER}')") is None


def test_a_tick_remembers_when_words_place_and_sizes(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_label(WIDE).check()
    kept = json.loads(page.evaluate(f"localStorage.getItem('{KEPT_UNDER}')"))
    assert list(kept) == ["k-wide"]
    tick = kept["k-wide"]
    assert tick.pop("when")[:2] == "20"
    assert tick == {
        "words": "Stiles are 2 3/8 in wide.",
        "at": 1,
        "beside": ["k-flat", "k-wide", "k-square"],
        "sizes": {"stile": "2413/40", "door_rail.length": "300"},
    }


def test_a_changed_size_is_said(page: Page, trial: Path, hosted: Hosted) -> None:
    step = trial / "step.html"
    rewrite(step, ("2413/40", "1397/20"))  # 2 3/4 in
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_label(FLAT).check()
    expect(page.locator("[data-made-before]")).to_have_count(0)
    rewrite(step, ("1397/20", "2413/40"))
    page.reload()
    note = page.locator("li", has_text=FLAT).locator("[data-made-before]")
    expect(note).to_contain_text(STILE_CHANGED)
    expect(page.get_by_label(FLAT)).to_have_accessible_description(note.inner_text())
    page.get_by_role("button", name="Show millimetres").click()
    expect(note).to_contain_text("stile was ≈ 69.9 mm, now ≈ 60.3 mm.")
    page.get_by_label(FLAT).uncheck()
    page.get_by_label(FLAT).check()
    page.reload()
    expect(page.locator("[data-made-before]")).to_have_count(0)


def test_several_changed_sizes_stand_in_one_sentence(page: Page, trial: Path) -> None:
    step = trial / "step.html"
    rewrite(step, ('"stile": "2413/40"', '"stile": "1397/20"'), ('"300"', '"304"'))
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_label(FLAT).check()
    rewrite(step, ('"stile": "1397/20"', '"stile": "2413/40"'), ('"304"', '"1521/5"'))
    page.reload()
    expect(page.locator("[data-made-before]")).to_contain_text(
        "stile was 2 3/4 in, now 2 3/8 in; "
        "Door rail length was ≈ 11 31/32 in, now ≈ 11 31/32 in (a change too small to show)."
    )


def test_what_changes_with_a_size_is_counted_and_not_repeated(page: Page, trial: Path) -> None:
    step = trial / "step.html"
    follows = '"rail.width": "2413/40", "a.width": "1", "b.width": "2", "c.width": "3", "stile"'
    rewrite(step, ('"stile"', follows))
    rewrite(
        step, *((f'"{name}": "{n}"', f'"{name}": "{n}0"') for name, n in (("a.width", 1), ("b.width", 2)))
    )
    rewrite(step, ('"2413/40"', '"1397/20"'), ('"c.width": "3"', '"c.width": "30"'))
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_label(FLAT).check()
    rewrite(
        step, ('"1397/20"', '"2413/40"'), ('": "10"', '": "1"'), ('": "20"', '": "2"'), ('": "30"', '": "3"')
    )
    page.reload()
    expect(page.locator("[data-made-before]")).to_have_text(
        f"{STILE_CHANGED[:-1]}; a width was ≈ 13/32 in, now ≈ 1/32 in; "
        "b width was ≈ 25/32 in, now ≈ 3/32 in; and 2 more sizes. Check the wood, then untick and tick again."
    )


REWORDED = (("k-flat", "k-new"), (FLAT, "Every board lies flat, tried on the saw table."))


def test_a_reworded_check_keeps_its_tick_and_says_so(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_label(FLAT).check()
    rewrite(trial / "step.html", *REWORDED)
    rewrite(trial / "data/checks.js", REWORDED[0])
    page.reload()
    item = page.locator("li", has_text="tried on the saw table")
    expect(item.get_by_role("checkbox")).to_be_checked()
    expect(item.locator("[data-made-before]")).to_have_text(
        "The words have changed since this was ticked. They were: Every board lies flat."
    )
    expect(page.locator("p", has=page.get_by_label("This step"))).to_contain_text("1 of 3")
    item.get_by_role("checkbox").uncheck()
    page.reload()
    expect(item.get_by_role("checkbox")).not_to_be_checked()


def test_a_check_that_was_there_before_takes_over_no_tick(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_label(FLAT).check()
    flat = f'<li><label><input type="checkbox" data-tick="k-flat" autocomplete="off"> {FLAT}</label></li>'
    rewrite(trial / "step.html", (flat, ""))
    page.reload()
    expect(page.get_by_label(WIDE)).not_to_be_checked()


def test_checks_in_another_order_keep_their_own_ticks(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_label(FLAT).check()
    rewrite(trial / "step.html", ("k-flat", "k-x"), ("k-square", "k-flat"), ("k-x", "k-square"))
    page.reload()
    expect(page.locator("[data-tick=k-flat]")).to_be_checked()
    expect(page.locator("[data-tick=k-square]")).not_to_be_checked()


def test_progress_of_step_stage_and_piece(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    page.get_by_label(FLAT).check()
    page.get_by_label(SQUARE).check()
    page.reload()
    told = {"This step": ("2 of 3", 2), "Doors": ("0 of 2", 0), "The piece": ("2 of 5", 2)}
    for name, (words, value) in told.items():
        bar = page.get_by_label(name)
        assert bar.evaluate("bar => bar.value") == value
        expect(bar.locator("xpath=..")).to_contain_text(f"{words} checks ticked")


def test_a_tick_in_one_window_shows_in_the_other(reader: BrowserContext, trial: Path, hosted: Hosted) -> None:
    one, other = reader.new_page(), reader.new_page()
    for window in (one, other):
        window.goto(f"{hosted(trial)}/step.html")
    one.get_by_label(FLAT).check()
    expect(other.get_by_label(FLAT)).to_be_checked()


NO_STORAGE = """
Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError'); }});
"""
FULL = """
Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };
"""


@pytest.mark.parametrize("trouble", [NO_STORAGE, FULL], ids=["none", "full"])
def test_a_device_that_keeps_nothing_is_named_and_the_page_works(
    page: Page, trial: Path, trouble: str
) -> None:
    page.add_init_script(trouble)
    page.goto(f"{trial.as_uri()}/step.html")
    expect(page.get_by_text("Ticks can't be kept on this device.")).to_have_count(1)
    page.get_by_label(FLAT).check()
    expect(page.get_by_label(FLAT)).to_be_checked()
    expect(page.get_by_text("Ticks can't be kept on this device.")).to_have_count(1)
    page.get_by_role("button", name="Show millimetres").click()
    expect(page.locator("data").first).to_have_text("≈ 60.3 mm")


def test_a_device_that_fills_up_later_says_so_at_the_tick(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    expect(page.get_by_text("Ticks can't be kept")).to_have_count(0)
    page.evaluate(f"() => {{ {FULL} }}")
    page.get_by_label(FLAT).check()
    expect(page.get_by_text("Ticks can't be kept on this device.")).to_be_visible()


TICK = '{"when": "2026-01-01", "words": "w", "at": 0, "sizes": %s}'


@pytest.mark.parametrize(
    "kept",
    [
        "not json",
        "[]",
        "7",
        '"text"',
        "null",
        '{"k-flat": null}',
        '{"k-flat": true}',
        '{"k-flat": {"when": 3}}',
        '{"k-flat": {"when": "2026-01-01", "words": "w", "at": "0"}}',
    ],
)
def test_what_is_no_tick_ticks_nothing(page: Page, trial: Path, kept: str) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    page.evaluate("([key, kept]) => localStorage.setItem(key, kept)", [KEPT_UNDER, kept])
    page.goto(f"{trial.as_uri()}/step.html")
    expect(page.locator("input:checked")).to_have_count(0)
    expect(page.locator("p", has=page.get_by_label("This step"))).to_contain_text("0 of 3")


@pytest.mark.parametrize(
    "sizes",
    ["null", "7", "[]", '{"stile": 7}', '{"stile": "1/0"}', '{"stile": "<b>1</b>"}', '{"__proto__": "1"}'],
)
def test_sizes_that_are_none_are_passed_over(page: Page, trial: Path, sizes: str) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    kept = '{"k-flat": %s, "__proto__": %s}' % (TICK % sizes, TICK % "{}")  # noqa: UP031
    page.evaluate("([key, kept]) => localStorage.setItem(key, kept)", [KEPT_UNDER, kept])
    page.goto(f"{trial.as_uri()}/step.html")
    expect(page.get_by_label(FLAT)).to_be_checked()
    expect(page.locator("[data-made-before]")).to_have_count(0)


def test_kept_words_never_become_markup(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    words = "<img src=x onerror=alert(1)><b>bold</b>"
    kept = json.dumps({"k-gone": {"when": "2026-01-01", "words": words, "at": 0, "sizes": {}}})
    page.evaluate("([key, kept]) => localStorage.setItem(key, kept)", [KEPT_UNDER, kept])
    page.goto(f"{trial.as_uri()}/step.html")
    expect(page.locator("[data-made-before]")).to_contain_text(words)
    expect(page.locator("[data-made-before] *")).to_have_count(0)


def test_another_project_on_the_same_device_is_another_matter(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_label(FLAT).check()
    rewrite(trial / "step.html", ("trial-box", "other-box"))
    page.reload()
    expect(page.get_by_label(FLAT)).not_to_be_checked()
