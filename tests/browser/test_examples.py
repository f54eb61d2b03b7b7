"""The example as a builder uses it: on the pages as published, from a folder and from a host."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias

import pytest
from playwright.sync_api import Locator, Page, expect

from benchalong.reading.project import read_project
from benchalong.road import travel
from browser.conftest import Hosted, rewrite
from conftest import ROOT, publish

pytestmark = pytest.mark.browser

CUPBOARD = ROOT / "content" / "seed-cupboard"
STEP, STAGE = "door-parts", "doors"
MADE_BEFORE = "[data-made-before]"

Editions: TypeAlias = Callable[[], Path]


@pytest.fixture
def cupboard(sites: dict[str, Path]) -> Path:
    return sites["seed-cupboard"]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """The cupboard's project, to be changed."""
    return shutil.copytree(CUPBOARD, tmp_path / "project")


@pytest.fixture
def new_edition(project: Path, tmp_path: Path) -> Editions:
    """Publishes the project as it is now, always into the same folder."""
    return lambda: publish(project, tmp_path / "site")


def boxes(page: Page) -> Locator:
    return page.locator(f"[data-checks][data-step={STEP}] input")


def go(page: Page, address: str, path: str) -> None:
    page.goto(f"{address}/{path}")


def test_a_tick_lasts_and_counts_for_stage_and_piece(page: Page, cupboard: Path, hosted: Hosted) -> None:
    address = hosted(cupboard)
    go(page, address, f"steps/{STEP}.html")
    boxes(page).first.check()
    page.reload()
    expect(boxes(page).first).to_be_checked()
    go(page, address, f"stages/{STAGE}.html")
    expect(boxes(page).first).to_be_checked()
    stage = page.locator(f"p:has([data-progress='stage:{STAGE}'])")
    expect(stage).to_have_text(re.compile(r"^\s*1 of \d+ checks ticked\s*$"))
    boxes(page).nth(1).check()
    expect(stage).to_have_text(re.compile(r"^\s*2 of \d+ checks ticked\s*$"))
    go(page, address, "index.html")
    for of in ("piece", f"stage:{STAGE}"):
        expect(page.locator(f"p:has([data-progress='{of}'])")).to_have_text(re.compile(r"^\s*2 of "))
    expect(page.locator("p:has([data-progress='stage:wood'])")).to_have_text(re.compile(r"^\s*0 of "))


def number(page: Page) -> str:
    return page.locator(".where-step").inner_text()


def test_a_tick_survives_renumbered_steps(
    page: Page, project: Path, new_edition: Editions, hosted: Hosted
) -> None:
    address = hosted(new_edition())
    go(page, address, f"steps/{STEP}.html")
    boxes(page).first.check()
    before = number(page)
    for file in sorted((project / "steps").iterdir(), reverse=True):
        count, name = file.name.split("-", 1)
        file.rename(file.with_name(f"{int(count) + 1:02}-{name}"))
    (project / "steps" / "01-sweep.md").write_text(
        "---\nstage: wood\ntitle: Sweep the shop\n---\nSweep it.\n"
    )
    new_edition()
    go(page, address, f"steps/{STEP}.html")
    assert number(page) != before
    expect(boxes(page).first).to_be_checked()
    expect(page.locator(MADE_BEFORE)).to_have_count(0)


def test_a_changed_size_is_said_beside_the_tick(page: Page, project: Path, new_edition: Editions) -> None:
    site = new_edition()
    page.goto((site / "steps" / f"{STEP}.html").as_uri())
    boxes(page).first.check()
    rewrite(project / "project.yaml", ("stile: {is: 2 1/4 in,", "stile: {is: 2 3/8 in,"))
    new_edition()
    for path in (f"steps/{STEP}.html", f"stages/{STAGE}.html"):
        page.goto((site / path).as_uri())
        expect(boxes(page).first).to_be_checked()
        expect(page.locator(MADE_BEFORE)).to_have_count(1)
        expect(page.locator(MADE_BEFORE)).to_contain_text(
            "Ticked before a change: stile was 2 1/4 in, now 2 3/8 in"
        )


def test_a_changed_size_within_a_check_keeps_its_tick(
    page: Page, project: Path, new_edition: Editions
) -> None:
    """The check says the size itself; the tick is kept under its words, sizes apart."""
    site = new_edition()
    page.goto((site / "steps" / f"{STEP}.html").as_uri())
    rail = page.locator("li", has_text="All four rails")
    rail.get_by_role("checkbox").check()
    said = rail.inner_text()
    rewrite(project / "project.yaml", ("stile: {is: 2 1/4 in,", "stile: {is: 2 3/8 in,"))
    new_edition()
    page.reload()
    assert rail.locator("label").inner_text() != said
    expect(rail.get_by_role("checkbox")).to_be_checked()
    expect(rail.locator(MADE_BEFORE)).to_contain_text("Ticked before a change: ")


def test_a_reworded_check_keeps_its_tick_and_says_so(
    page: Page, project: Path, new_edition: Editions
) -> None:
    site = new_edition()
    page.goto((site / "steps" / f"{STEP}.html").as_uri())
    words = "There is a spare stile and a spare rail."
    page.get_by_label(words).check()
    rewrite(next((project / "steps").glob(f"*-{STEP}.md")), (words, "Two spares lie ready."))
    new_edition()
    page.reload()
    item = page.locator("li", has_text="Two spares lie ready.")
    expect(item.get_by_role("checkbox")).to_be_checked()
    expect(item.locator(MADE_BEFORE)).to_contain_text(words)


def test_the_system_chosen_holds_everywhere(page: Page, site: Path, hosted: Hosted) -> None:
    address = hosted(site)
    go(page, address, "index.html")
    switch = page.locator("[data-switch=units]")
    other = "millimetre" if switch.inner_text() == "Show millimetres" else "inch"
    unit, wrong = ("mm", "in") if other == "millimetre" else ("in", "mm")
    switch.click()
    part = f"parts/{min(file.name for file in (site / 'parts').iterdir())}"
    for path in ("cut-list.html", part, "paper.html"):
        go(page, address, path)
        page.reload()
        expect(page.locator("html")).to_have_attribute("data-units", other)
        sizes = page.locator("data.size:not(.bare)").all_text_contents()
        assert sizes
        assert {size.split()[-1] for size in sizes} == {unit}
        assert not page.get_by_text(re.compile(rf"^Exactly .* {wrong}\.")).first.is_visible()


def test_the_system_chosen_holds_in_drawings(page: Page, site: Path) -> None:
    part = min((site / "parts").iterdir())
    page.goto(part.as_uri())
    numbers = page.locator("main svg text.size")
    before = numbers.all_text_contents()
    assert before
    page.locator("[data-switch=units]").click()
    after = numbers.all_text_contents()
    assert all(a != b for a, b in zip(before, after, strict=True))
    page.locator("[data-switch=units]").click()
    assert numbers.all_text_contents() == before


def test_every_size_is_written_as_the_script_shows_it(page: Page, site: Path) -> None:
    """There and back through the other system, every page's text is what was published."""
    for path in ("paper.html", "sizes.html", "cut-list.html"):
        page.goto((site / path).as_uri())
        text = page.locator("main").inner_text()
        page.locator("[data-switch=units]").click()
        assert page.locator("main").inner_text() != text
        page.locator("[data-switch=units]").click()
        assert page.locator("main").inner_text() == text


def entries(site: Path) -> dict[str, list[tuple[str, str]]]:
    """Kind -> title and address of each thing that can be found."""
    script = (site / "data" / "search.js").read_text(encoding="utf-8")
    found: dict[str, list[tuple[str, str]]] = {}
    for kind, title, url, _ in json.loads(script.partition("=")[2].rstrip().removesuffix(";")):
        found.setdefault(kind, []).append((title, url))
    return found


@pytest.mark.parametrize("kind", ["step", "part", "question", "word", "size"])
def test_a_title_finds_its_page_first(page: Page, site: Path, kind: str) -> None:
    for title, url in entries(site)[kind][:4]:
        page.goto(f"{site.as_uri()}/find.html")
        page.locator("[data-find] input").fill(title)
        first = page.locator("[data-results] a").first
        expect(first).to_have_text(title)
        assert first.get_attribute("href") == url


def test_the_head_of_every_page_searches(page: Page, cupboard: Path, hosted: Hosted) -> None:
    go(page, hosted(cupboard), f"steps/{STEP}.html")
    page.get_by_role("searchbox").fill("dadoe")
    page.get_by_role("searchbox").press("Enter")
    expect(page.locator("[data-found]")).to_have_text(re.compile(r"^\d+ found\.$"))
    page.locator("[data-results] a[href^='steps/']").first.click()
    expect(page.locator("html")).to_have_attribute("data-page", "step")


HARD_WORDS = """I cut it short (=stile - 1/8 in). <b>Now</b> what? See [this](javascript:x) or ![that](y.png).

---
by: somebody-else
---
- [a]: b
- `x` & "y" # not a comment: 100 %

<!-- hidden --> &lt;i> \\(=x) \\\\<br>"""


def test_a_question_goes_back_into_the_project(
    page: Page, tmp_path: Path, site: Path, hosted: Hosted
) -> None:
    """Written on the page, saved as a file, put among the project's questions: read without a problem."""
    project = shutil.copytree(ROOT / "content" / site.name, tmp_path / "project")
    step = max((site / "steps").iterdir(), key=lambda file: file.stat().st_size)
    go(page, hosted(site), f"steps/{step.name}")
    form = page.locator("form[data-question]")
    form.locator("[name=title]").fill('Is 2" (=x) enough: <i>really</i>? #8')
    form.locator("[name=text]").fill(HARD_WORDS)
    form.locator("[name=by]").fill("Ünal from the mill")
    form.locator("[name=size]").select_option(index=1)
    with page.expect_download() as saved:
        form.locator("[data-hand-over=file]").click()
    file = project / "questions" / saved.value.suggested_filename
    file.parent.mkdir(exist_ok=True)
    saved.value.save_as(file)
    reading = read_project(project)
    assert [problem.message for problem in reading.problems] == []
    question = next(asked for asked in reading.project.questions if asked.id == file.stem)
    assert question.by == "Ünal-from-the-mill"
    assert "".join(map(str, question.title)) == "Is 2&quot; (=x) enough: &lt;i&gt;really&lt;/i&gt;? #8"
    assert (question.step, question.status, question.replies) == (step.stem, "open", ())
    assert file.stem in travel(project).plan.questions
    text = file.read_text(encoding="utf-8")
    edition = page.locator("html").get_attribute("data-edition")
    assert f"Asked at step {step.stem}, edition {edition}, shown in " in text
    assert re.search(r"Sizes shown: .+ (in|mm)\.\n$", text)


def test_the_cut_list_is_sorted_by_length(page: Page, cupboard: Path) -> None:
    go(page, cupboard.as_uri(), "cut-list.html")
    table = max(
        page.locator("table[data-sortable]").all(), key=lambda found: found.locator("tbody tr").count()
    )
    exact = "rows => rows.map(row => eval(row.querySelector('td:last-child data').getAttribute('value')))"
    written = table.locator("tbody tr").evaluate_all(exact)
    assert len(written) > 2
    table.get_by_role("button", name="Length").click()
    assert table.locator("tbody tr").evaluate_all(exact) == sorted(written)
    table.get_by_role("button", name="Length").click()
    assert table.locator("tbody tr").evaluate_all(exact) == sorted(written, reverse=True)
    table.get_by_role("button", name="Length").click()
    assert table.locator("tbody tr").evaluate_all(exact) == written
