"""A question written at a step: what it carries, and each way of handing it over."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import pytest
import yaml
from playwright.sync_api import BrowserContext, Page, expect

from browser.conftest import Hosted

pytestmark = pytest.mark.browser

TITLE = 'Is 2" enough: for "stiles"? #8'
TEXT = "Mine came out narrow.\n\n- left one\n- right one\n\n---\nby: me"
ASKED = (
    "Asked at step mill-all, edition ab12cd34, shown in inches. "
    "Sizes shown: stile 2 3/8 in; Door rail length ≈ 11 13/16 in."
)


def write(page: Page) -> None:
    page.get_by_label("The question in one line").fill(TITLE)
    page.get_by_label("More about it").fill(TEXT)
    page.get_by_label("Your name here").fill("Frido Plane")


def downloaded(page: Page) -> tuple[str, str]:
    """The file's name and what is in it."""
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save as a file").click()
    return saved.value.suggested_filename, Path(saved.value.path()).read_text(encoding="utf-8")


def test_a_question_is_saved_as_a_file_of_the_projects(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    write(page)
    name, text = downloaded(page)
    assert re.fullmatch(r"question-mill-all-\d{4}-\d\d-\d\d\.md", name)
    expect(page.get_by_role("status")).to_have_text(f"Saved as {name}.")
    nothing, block, body = text.split("---\n", 2)
    assert nothing == ""
    assert yaml.safe_load(block) == {
        "step": "mill-all",
        "by": "Frido-Plane",
        "when": date.fromisoformat(name[-13:-3]),
        "status": "open",
        "title": TITLE,
    }
    assert body == f"{TEXT.replace('---', '***')}\n\n{ASKED}\n"


@pytest.mark.parametrize(
    ("title", "read"),
    [
        ("plain", "plain"),
        ("a\tb\u2028c\u0085d", "a b c d"),
        ("size (=stile) here", "size \\(=stile) here"),
        ("back\\slash \U0001fab5", "back\\slash \U0001fab5"),
        ("no", "no"),
    ],
)
def test_any_title_is_read_back_as_typed(page: Page, trial: Path, title: str, read: str) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_label("The question in one line").fill(title)
    _, text = downloaded(page)
    assert yaml.safe_load(text.split("---\n")[1])["title"] == read


def test_the_size_and_units_are_those_the_reader_sees(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_role("button", name="Show millimetres").click()
    write(page)
    whole = page.get_by_label("What is handed over")
    expect(whole).to_have_value(re.compile("shown in millimetres. Sizes shown: stile ≈ 60.3 mm; Door"))
    page.get_by_label("About the size").select_option("stile: ≈ 60.3 mm")
    expect(whole).to_have_value(re.compile("shown in millimetres. Sizes shown: stile ≈ 60.3 mm.\n"))


def test_a_question_is_copied(reader: BrowserContext, page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    reader.grant_permissions(["clipboard-read", "clipboard-write"])
    write(page)
    page.get_by_role("button", name="Copy the text").click()
    expect(page.get_by_role("status")).to_have_text("Copied.")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied.startswith(f"Trial box: Mill all\n{TITLE}\n\nMine came out narrow.")
    assert copied.endswith(f"\n\n{ASKED}\n\nFrom Frido Plane")


NO_CLIPBOARD = "Object.defineProperty(Navigator.prototype, 'clipboard', {value: undefined});"
NO_COPYING = "document.execCommand = () => false;"


def test_without_a_clipboard_the_text_is_selected(page: Page, trial: Path, hosted: Hosted) -> None:
    page.add_init_script(NO_CLIPBOARD + NO_COPYING)
    page.goto(f"{hosted(trial)}/step.html")
    write(page)
    page.get_by_role("button", name="Copy the text").click()
    expect(page.get_by_role("status")).to_contain_text("The text is selected.")
    selected = page.evaluate("getSelection().toString()")
    assert ASKED in selected
    assert TITLE in selected


def test_a_question_goes_by_mail(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    write(page)
    address = urlsplit(page.get_by_role("link", name="Send as mail").get_attribute("href") or "")
    assert (address.scheme, address.path) == ("mailto", "bench@example.org")
    fields = parse_qs(address.query, strict_parsing=True)
    assert fields["subject"] == [f"Trial box: {TITLE}"]
    assert ASKED in fields["body"][0]
    assert "\r\n- left one\r\n" in fields["body"][0]


def test_the_boards_address_is_the_projects(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    link = page.get_by_role("link", name="Go to the board")
    assert link.get_attribute("href") == "https://board.example.org/"


def test_without_a_title_nothing_is_handed_over(page: Page, trial: Path) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    page.get_by_role("button", name="Save as a file").click()
    expect(page.get_by_label("The question in one line")).to_be_focused()
    expect(page.get_by_role("status")).to_have_text("")


def test_a_draft_and_the_name_are_kept(page: Page, trial: Path, hosted: Hosted) -> None:
    page.goto(f"{hosted(trial)}/step.html")
    write(page)
    page.reload()
    expect(page.get_by_label("The question in one line")).to_have_value(TITLE)
    expect(page.get_by_label("More about it")).to_have_value(TEXT)
    expect(page.get_by_label("Your name here")).to_have_value("Frido Plane")
    page.get_by_label("The question in one line").fill("")
    page.get_by_label("More about it").fill("")
    page.reload()
    expect(page.get_by_label("More about it")).to_have_value("")
    expect(page.get_by_label("Your name here")).to_have_value("Frido Plane")


@pytest.mark.parametrize("kept", ["not json", "7", '{"title": 7, "step": "x", "__proto__": "y"}', "[]"])
def test_a_draft_that_is_none_is_passed_over(page: Page, trial: Path, kept: str) -> None:
    page.goto(f"{trial.as_uri()}/find.html")
    for key in ("draft/mill-all", "handle"):
        page.evaluate(
            "([key, kept]) => localStorage.setItem(key, kept)", [f"benchalong/trial-box/{key}", kept]
        )
    page.goto(f"{trial.as_uri()}/step.html")
    expect(page.get_by_label("The question in one line")).to_have_value("")
    expect(page.get_by_label("Your name here")).to_have_value("")


@pytest.mark.parametrize(
    ("typed", "handed_over"),
    [
        ("(=stile)", r"\(=stile)"),
        (r"\(=stile)", r"\(=stile)"),
        ("<b>bold</b> 3 < 4, <3", r"\<b>bold\</b> 3 < 4, <3"),
        (r"\\<b>", r"\\\<b>"),
        ("[x](javascript:y)", r"[x]\(javascript:y)"),
        ("[x]: y", r"[x]\: y"),
        ("a\r\n\r\nb\x07", "a\n\nb"),
        ("above\n---\n\nbelow", "above\n***\n\nbelow"),
    ],
)
def test_nothing_in_a_builders_words_has_a_second_meaning(
    page: Page, trial: Path, typed: str, handed_over: str
) -> None:
    page.goto(f"{trial.as_uri()}/step.html")
    file = page.evaluate(
        """text => benchalongAsking.asFile({step: 's', by: '', when: '2026-03-02', title: 't', text,
            edition: 'e', units: 'inches', sizes: ''})""",
        typed,
    )
    asked = "Asked at step s, edition e, shown in inches."
    block = 'step: s\nby: a-builder\nwhen: 2026-03-02\nstatus: open\ntitle: "t"'
    assert file == (f"---\n{block}\n---\n{handed_over}\n\n{asked}\n")
