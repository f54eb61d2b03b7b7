"""Every page of a small plan, filled by both themes and looked at as a reader's browser would."""

from __future__ import annotations

import json
import re
from functools import cache
from itertools import pairwise
from pathlib import Path
from posixpath import dirname, join, normpath
from typing import Any

import pytest
from bs4 import BeautifulSoup, NavigableString, Tag

from benchalong.ground.marks import Mark, at
from benchalong.ground.problems import Finding
from benchalong.pages import makings
from benchalong.pages.data import Data
from benchalong.pages.site import all_pages, site_of
from benchalong.publishing.templates import Templates
from benchalong.publishing.theme import Chosen, load_theme
from benchalong.workings.working import Worked
from pages.by_hand import Drawn, Travelled

THEMES = ("bench", "wall")


@cache
def site(theme: str) -> dict[str, str]:
    return filled(theme, Travelled())


def filled(theme: str, travelled: makings.Travelled) -> dict[str, str]:
    """Path to text, of every page."""
    dressed = load_theme(Chosen(theme, Mark("project.yaml", 1, 1), ""), Path("nowhere"))
    templates = Templates(dressed.templates, {"site": site_of(travelled)})
    found = {}
    for page in all_pages(travelled, Drawn()):
        record = page.record
        found[page.path] = (
            str(record.text) if isinstance(record, Data) else templates.fill(page.template, record)
        )
    return found


@cache
def soup(theme: str, path: str) -> BeautifulSoup:
    return BeautifulSoup(site(theme)[path], "html.parser")


def pages() -> list[tuple[str, str]]:
    return [(theme, path) for theme in THEMES for path in site(theme) if path.endswith(".html")]


def words(element: Tag | NavigableString | None) -> str:
    assert element is not None
    return " ".join(element.get_text().split())


def test_every_kind_of_page_is_there() -> None:
    assert {path for path in site("bench") if not path.startswith("setups/")} == {
        "index.html", "cut-list.html", "buy.html", "boards.html", "sizes.html", "wood.html", "check.html",
        "setups.html", "sessions.html", "marks.html",
        "questions.html", "words.html", "find.html", "paper.html",
        "stages/wood.html", "stages/fit.html",
        "steps/mill-all.html", "steps/cut-dado.html", "steps/fit-shelf.html",
        "parts/side.html", "parts/shelf.html", "parts/wedge.html",
        "data/edition.js", "data/checks.js", "data/search.js",
    }  # fmt: skip


@pytest.mark.parametrize(("theme", "path"), pages())
def test_a_page_is_sound(theme: str, path: str) -> None:
    page = soup(theme, path)
    policy = page.find("meta", attrs={"http-equiv": "Content-Security-Policy"})
    assert isinstance(policy, Tag)
    assert policy["content"] == "default-src 'self'"
    assert len(page.find_all("h1")) == 1
    assert not page.find_all(style=True)
    assert not [name for tag in page.find_all(True) for name in tag.attrs if name.startswith("on")]
    assert not page.find_all("style")
    ids = [tag["id"] for tag in page.find_all(id=True)]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize(("theme", "path"), pages())
def test_headings_go_down_one_at_a_time(theme: str, path: str) -> None:
    levels = [int(tag.name[1]) for tag in soup(theme, path).find_all(re.compile("^h[1-6]$"))]
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


@pytest.mark.parametrize(("theme", "path"), pages())
def test_every_link_leads_somewhere(theme: str, path: str) -> None:
    for link in soup(theme, path).find_all("a", href=True):
        target, _, anchor = str(link["href"]).partition("#")
        if re.match("[a-z]+:", target) or target.endswith(".csv"):
            continue
        found = normpath(join(dirname(path), target)) if target else path
        assert found in site(theme), link
        assert not anchor or soup(theme, found).find(id=anchor), link


@pytest.mark.parametrize("theme", THEMES)
def test_labels_name_what_they_are_for(theme: str) -> None:
    for path in site(theme):
        if path.endswith(".html"):
            page = soup(theme, path)
            for tag in page.find_all(attrs={"aria-labelledby": True}):
                assert page.find(id=tag["aria-labelledby"]), (path, tag["aria-labelledby"])


def test_a_step_is_told_in_the_order_a_builder_needs_it() -> None:
    heads = [words(head) for head in soup("bench", "steps/mill-all.html").find_all("h2")]
    assert heads == [
        "Take care",
        "Lay ready",
        "Parts in this step",
        "What to do",
        "Check, then tick",
        "What goes amiss",
        "Tell us",
        "Questions at this step",
        "Ask about this step",
    ]


def test_a_step_says_where_it_is_and_what_it_needs() -> None:
    page = soup("bench", "steps/mill-all.html")
    said = words(page.find("main"))
    for wanted in (
        "Stage 1 of 2: The wood",
        "Step 1 of 3",
        "1 h 35 min",
        "overnight",
        "Two people",
        "block plane",
        "Keep hands off the cutter.",
        "It rocks",
        "What did your boards measure?",
        "wren, 2024-03-05",
        "ash replied",
    ):
        assert wanted in said
    threads = [words(head) for head in page.select(".thread h3")]
    assert threads == ["How flat?", "Can it be fir?"], "open ones first"
    assert page.find("a", rel="prev") is None
    following = page.find("a", rel="next")
    assert isinstance(following, Tag)
    assert following["href"] == "../steps/cut-dado.html"


def test_ticks_have_the_same_keys_on_step_and_stage() -> None:
    def keys(path: str) -> list[str]:
        return [str(box["data-tick"]) for box in soup("bench", path).select("[data-checks] input")]

    assert keys("steps/mill-all.html") == ["k1", "k2"]
    assert keys("stages/wood.html") == ["k1", "k2", "k3"]


def test_scripts_get_the_sizes_a_step_shows() -> None:
    said = json.loads(words_of_data("steps/mill-all.html"))
    assert said["step"] == "mill-all"
    assert said["sizes"]["side.width"] == "762/5"
    assert said["sizes"]["width"] == "1524/5"
    assert said["names"]["side.width"] == "Side, width"
    assert json.loads(words_of_data("stages/wood.html"))["steps"]["mill-all"] == said


def words_of_data(path: str) -> str:
    block = soup("bench", path).find("script", id="page-data")
    assert isinstance(block, Tag)
    return str(block.string)


def test_the_question_goes_where_the_project_says() -> None:
    form = soup("bench", "steps/mill-all.html").find("form", attrs={"data-question": True})
    assert isinstance(form, Tag)
    assert [tag["data-hand-over"] for tag in form.select("[data-hand-over]")] == [
        "copy",
        "file",
        "mail",
        "board",
    ]


def test_a_part_says_its_cuts_and_what_rounding_does() -> None:
    said = words(soup("bench", "parts/side.html").find("main"))
    assert "From end a to its near wall" in said
    assert "Exactly 4 6/7 in. The size shown is 0.013 in under." in said
    assert "from depth" in said
    assert "Cut the dado" in said


def test_the_cut_list_is_by_stock_and_thickness() -> None:
    page = soup("bench", "cut-list.html")
    assert [words(head) for head in page.find_all("h2")] == [
        "Pine, white pine, flat sawn, bought as 4/4",
        "Beech",
        "Rough sizes: cut these out first",
    ]
    assert [words(table.caption) for table in page.find_all("table")][1].startswith("1/2 in thick 4 in all")
    assert all(table.has_attr("data-sortable") for table in page.select(".stock table"))


def test_sizes_show_formula_value_and_what_they_follow_from() -> None:
    line = soup("bench", "sizes.html").find(id="size-shelf_at")
    assert isinstance(line, Tag)
    assert "width / 3 + depth / 7" in words(line)
    assert "≈ 4 27/32 in" in words(line)
    assert "Follows from depth, width" in words(line)


def test_the_project_own_words_come_first() -> None:
    entry = soup("bench", "words.html").find(id="word-kerf")
    assert isinstance(entry, Tag)
    assert words(entry.dd) == "our own word for it"


def test_search_finds_steps_parts_questions_sizes_and_words() -> None:
    text = site("bench")["data/search.js"].removeprefix("var benchalongSearch = ").removesuffix(";\n")
    entries = json.loads(text)
    assert {entry[0] for entry in entries} == {"step", "part", "question", "size", "word"}
    assert ["question", "How flat?", "questions.html#question-how-flat", "Is it?"] in entries


def test_progress_is_counted_from_every_check() -> None:
    text = site("bench")["data/checks.js"].removeprefix("var benchalongChecks = ").removesuffix(";\n")
    said = json.loads(text)
    assert said["piece"] == ["k1", "k2", "k3"]
    assert said["stages"][1] == {"id": "fit", "steps": [{"id": "fit-shelf", "checks": []}]}


def how_to() -> dict[str, Any]:
    block = soup("bench", "index.html").find("script", type="application/ld+json")
    assert isinstance(block, Tag)
    said: dict[str, Any] = json.loads(str(block.string))
    return said


def test_the_build_is_told_to_machines_too() -> None:
    said = how_to()
    assert (said["@type"], said["name"]) == ("HowTo", "Box & shelf")
    assert [section["@type"] for section in said["step"]] == ["HowToSection", "HowToSection"]
    first = said["step"][0]["itemListElement"][0]
    assert first["url"] == "steps/mill-all.html"
    assert first["text"] == "Plane the side first, to ≈ 4 27/32 in."
    assert "totalTime" not in said, "one step doesn't say how long it takes"


def test_nothing_an_author_writes_ends_a_data_block() -> None:
    for path, text in site("bench").items():
        if path.endswith(".html"):
            assert "Shelf <thin>" not in text, path


def test_paper_holds_everything_in_order() -> None:
    page = soup("bench", "paper.html")
    steps = [str(step["aria-labelledby"]) for step in page.select("article.paper-step")]
    assert steps == ["step-mill-all", "step-cut-dado", "step-fit-shelf"]
    assert not page.select("main input")
    assert len(page.select(".boxes li")) == 3
    assert page.find(id="part-wedge")


@pytest.mark.parametrize("theme", THEMES)
def test_a_faulty_plan_says_so_on_every_page(theme: str) -> None:
    whole = Travelled()
    fault = Finding("cut-outside-part", "fault", at("project.yaml"), "side", "It sticks out", "Make it less.")
    doubt = Finding("cuts-no-wood", "doubt", at("project.yaml"), "side", "It cuts air", "")
    faulty = Travelled(worked=Worked(whole.worked.results, (fault, doubt)))
    for path, text in filled(theme, faulty).items():
        if path.endswith(".html"):
            assert "The plan check found 1 fault." in text, path
            assert "fault-line" in text, path
            assert "fault-line" not in site(theme)[path], path
    assert "It sticks out" in filled(theme, faulty)["index.html"]
    assert "It cuts air" in filled(theme, faulty)["index.html"]


def test_a_theme_is_more_than_colour() -> None:
    assert soup("wall", "stages/wood.html").select("ul.board > li.card")
    assert not soup("bench", "stages/wood.html").select(".board")
    order = [tag.name for tag in soup("wall", "index.html").select("body > main, body > header")]
    assert order == ["main", "header"], "ways to other pages stand at the foot"
