"""Joints, hands and the plan check on pages: what a builder reads there, and where it leads."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from functools import cache
from itertools import pairwise
from posixpath import dirname, join, normpath

import pytest
from bs4 import BeautifulSoup, Tag

from benchalong.ground.lengths import INCH
from benchalong.ground.marks import at
from benchalong.ground.problems import Finding
from benchalong.ground.shown import Precision
from benchalong.pages.live_text import live
from benchalong.pages.shown import Shows
from benchalong.workings.working import Worked
from pages.joined import PROJECT, cupboard
from pages.test_site import filled, words

THEMES = ("bench", "wall")


@cache
def site(theme: str) -> dict[str, str]:
    return filled(theme, cupboard())


@cache
def soup(path: str, theme: str = "bench") -> BeautifulSoup:
    return BeautifulSoup(site(theme)[path], "html.parser")


def main(path: str) -> str:
    return words(soup(path).find("main"))


def section(path: str, heading: str) -> Tag:
    """The section under a heading."""
    found = soup(path).find(id=heading)
    assert isinstance(found, Tag)
    assert isinstance(found.parent, Tag)
    return found.parent


@pytest.mark.parametrize("theme", THEMES)
def test_every_page_is_sound(theme: str) -> None:
    pages = [path for path in site(theme) if path.endswith(".html")]
    assert {"check.html", "joints/frame.html", "joints/housing.html"} <= set(pages)
    for path in pages:
        page = soup(path, theme)
        ids = [tag["id"] for tag in page.find_all(id=True)]
        assert len(ids) == len(set(ids)), path
        levels = [int(tag.name[1]) for tag in page.find_all(re.compile("^h[1-6]$"))]
        assert levels[0] == 1, path
        assert all(after <= before + 1 for before, after in pairwise(levels)), path
        assert all(page.find(id=tag["aria-labelledby"]) for tag in page.select("[aria-labelledby]")), path


@pytest.mark.parametrize("theme", THEMES)
def test_every_link_leads_somewhere(theme: str) -> None:
    for path in site(theme):
        for link in soup(path, theme).find_all("a", href=True) if path.endswith(".html") else ():
            target, _, anchor = str(link["href"]).partition("#")
            if target.endswith(".csv"):
                continue
            found = normpath(join(dirname(path), target)) if target else path
            assert found in site(theme), (path, link)
            assert not anchor or soup(found, theme).find(id=anchor), (path, link)


# The joint's page


def test_a_joint_says_what_it_joins_by_part_side_and_mark() -> None:
    said = words(section("joints/frame.html", "joins"))
    assert "Door stile edge a or edge b takes Door rail end a or end b" in said
    assert "LD/H with LD/T and LD/B" in said
    assert "Door panel lies loose in it, without glue." in said


def test_a_joint_names_its_sizes_and_says_where_they_come_from() -> None:
    lines = {
        words(line.dt): words(line.dd) for line in soup("joints/frame.html").select(".joint-sizes > div")
    }
    assert lines["Groove, depth frame.depth"].startswith("7/16 in Exactly 11.1125 mm.")
    assert lines["Tongue, length frame.tongue_length"].startswith("13/32 in follows from the others")
    assert lines["Room left beyond the tongue frame.end_play"].startswith("1/32 in the default")
    assert not any("stop_by" in name for name in lines), "it stops nowhere"


def test_a_joint_says_its_play_on_each_side_and_in_all() -> None:
    rows = section("joints/frame.html", "play").select("tbody tr")
    assert [[words(cell) for cell in row.select("th, td")] for row in rows] == [
        ["What goes in, across its thickness", "none", "none"],
        ["What goes in, beyond its end", "1/32 in0.79 mm", ""],
        ["Door panel, across its thickness", "1/32 in0.79 mm", "1/16 in1.59 mm"],
        ["Door panel, beyond its edges and ends", "3/32 in2.38 mm", ""],
    ]


def test_where_a_dado_stops_is_no_play() -> None:
    rows = section("joints/housing.html", "play").select("tbody tr")
    assert [words(row.select("th")[0]) for row in rows] == [
        "What goes in, across its thickness",
        "What goes in, beyond its end",
    ]


def test_a_joint_says_what_each_part_loses_in_words_with_sizes() -> None:
    said = words(section("joints/housing.html", "losses"))
    assert "Side, left hand C/SL" in said
    assert "Dado in the back, across the grain" in said
    assert "Notch" in said, "the shelf is notched at the stop"


def test_a_joint_says_common_practice_as_such_in_both_systems() -> None:
    practice = section("joints/housing.html", "practice")
    assert words(practice.h2) == "Common practice"
    assert "6 mm" in words(practice.select_one(".only-millimetre"))
    assert "1/4 in" in words(practice.select_one(".only-inch"))


def test_a_joint_leads_to_the_steps_that_make_or_close_it() -> None:
    links = [str(link["href"]) for link in section("joints/frame.html", "steps").select("a")]
    assert links == ["../steps/glue.html"], "milling has nothing to do with it"
    cut = [str(link["href"]) for link in section("joints/housing.html", "steps").select("a")]
    assert cut == ["../steps/cut.html"], "it says the dado's depth; doors are glued, not the case"


# Parts: hands, turned copies, whose cut it is


def test_a_part_of_two_hands_shows_each_with_its_marks_and_drawing() -> None:
    page = soup("parts/side.html")
    heads = [words(head) for head in page.find_all("h2")]
    assert ("Left hand: C/SL" in heads, "Right hand: C/SR" in heads) == (True, True)
    assert len(page.select(".views svg")) == 2
    assert "each the mirror image of the other" in main("parts/side.html")


def test_a_part_says_which_copies_are_the_same_turned() -> None:
    assert "LD/M and RD/H are the same pieces, turned end for end." in main("parts/door_stile.html")
    assert "Left hand" not in main("parts/door_stile.html")


def test_a_cut_leads_to_the_joint_that_gives_it() -> None:
    link = soup("parts/door_stile.html").select_one(".cut-words a")
    assert link is not None
    assert (words(link), link["href"]) == ("Frame of the door", "../joints/frame.html")
    assert "Groove in edge b" in main("parts/door_stile.html")


def test_the_cut_list_marks_hands() -> None:
    row = next(row for row in soup("cut-list.html").select("tbody tr") if "Side" in row.get_text())
    assert words(row.th) == "Side Left hand C/SL Right hand C/SR"


# The piece, its steps, its sizes


def test_the_piece_is_shown_together_and_apart_and_its_joints_listed() -> None:
    captions = [words(caption) for caption in soup("index.html").select("figcaption")]
    assert captions[:2] == [
        "Put together",
        "Pulled apart: each part is drawn away from its place along the way it comes out",
    ]
    assert captions.count("Pulled apart") == 2, "case and door"
    assert "Frame of the door Tongue and groove" in words(section("index.html", "joints"))
    assert soup("index.html").select("a[href='check.html']")


def test_a_step_that_closes_joints_shows_them_and_one_that_mills_does_not() -> None:
    card = words(section("steps/glue.html", "joined"))
    assert card.startswith("Joints in this step The joint frame sawn through Frame of the door")
    assert "Groove, depth7/16 in" in card
    assert soup("steps/mill.html").find(id="joined") is None


def test_sizes_of_joints_have_their_names_and_formulas_lead_to_them() -> None:
    line = soup("sizes.html").find(id="size-frame.tongue_length")
    assert isinstance(line, Tag)
    assert "13/32 in" in words(line)
    uses = soup("sizes.html").select_one("#size-rail_length a[href='#size-frame.tongue_length']")
    assert uses is not None


def test_search_finds_joints_and_their_sizes() -> None:
    text = site("bench")["data/search.js"].removeprefix("var benchalongSearch = ").removesuffix(";\n")
    found = {(kind, title): path for kind, title, path, _ in json.loads(text)}
    assert found["joint", "Frame of the door"] == "joints/frame.html"
    assert found["size", "frame.depth"] == "sizes.html#size-frame.depth"


def test_paper_holds_the_joints_too() -> None:
    page = soup("paper.html")
    assert page.find(id="joint-frame")
    assert "Left hand" in words(page.find(id="part-side").parent)  # type: ignore[union-attr]


# The plan check's page


def test_the_check_is_in_the_menu_and_says_that_it_is_no_dry_fit() -> None:
    assert soup("parts/side.html").select("#menu a[href='../check.html']")
    assert "This is not the dry fit" in main("check.html")


def test_the_check_lists_its_questions_and_what_it_could_not_look_at() -> None:
    asked = words(section("check.html", "asked"))
    assert "Do any two pieces of wood lie in each other, and how deep?" in asked
    assert "2 joints" in asked
    assert "Batten stands nowhere in the piece" in words(section("check.html", "not-looked"))


def test_a_plan_without_places_says_what_could_not_be_asked() -> None:
    start, _, rest = PROJECT.partition("assemblies:\n")
    loose = start.replace("piece: cupboard\n", "") + rest[rest.index("stages:") :]
    parts = [name for name in cupboard().plan.parts if name != "batten"]
    for part in parts:
        loose = loose.replace(f"  {part}: {{name", f"  {part}: {{count: 2, name")
    page = BeautifulSoup(filled("bench", cupboard(loose))["check.html"], "html.parser")
    said = words(page.find(id="not-looked").parent)  # type: ignore[union-attr]
    assert "Nothing is placed yet" in said
    assert "Do any two pieces of wood lie in each other, and how deep?" in said
    assert "lie in each other" not in words(page.find(id="asked").parent)  # type: ignore[union-attr]


FAULT = Finding(
    "parts-overlap",
    "fault",
    at("project.yaml", "parts", "shelf"),
    "shelf",
    "shelf S stands 2 in in side SL",
    "take 1/4 in off",
    {"depth": 2 * INCH},
    ("width",),
)


def test_a_finding_leads_to_its_part_and_says_where_it_is_written() -> None:
    plan = cupboard()
    faulty = replace(plan, worked=Worked(plan.worked.results, (FAULT,)))
    pages = filled("bench", faulty)
    page = BeautifulSoup(pages["check.html"], "html.parser")
    found = page.select_one("#faults ~ .findings .finding")
    assert found is not None
    assert "project.yaml:16" in words(found)
    assert [str(link["href"]) for link in found.select("a")] == ["parts/shelf.html", "sizes.html#size-width"]
    assert [str(size["value"]) for size in found.select("data.size")] == ["254/5", "127/20"]
    assert "stands 2 in in side SL" in pages["parts/shelf.html"].replace(
        '<data class="size" value="254/5">', ""
    ).replace("</data>", "")


SHOWS = Shows("inch", Precision())


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("leaves 3/32 in of it", ["381/160"]),
        ("is 1 3/4 in wide, not 1/2 in", ["889/20", "127/10"]),
        ("makes 2 in the case", []),
        ("is 12.7 mm deep", []),
        ("about ≈ 3/32 in", []),
        ("12-3/8 in", []),
        ("1/0 in", []),
        ("frame.width is <b>", []),
    ],
)
def test_only_what_is_a_size_for_certain_is_live(text: str, values: list[str]) -> None:
    page = BeautifulSoup(live(text, SHOWS), "html.parser")
    assert [tag["value"] for tag in page.select("data")] == values
    assert page.get_text() == text


def test_a_rounded_size_is_told_from_the_numbers_of_the_finding() -> None:
    third = INCH / 3
    said = live(f"leaves {SHOWS.text(third)} open", SHOWS, [third])
    assert f'value="{third}"' in said
