"""Prose with its holes filled."""

from __future__ import annotations

import pytest

from benchalong.ground.lengths import INCH
from benchalong.ground.prose import Address, LiveNumber, LiveSize, PartName, Prose
from benchalong.ground.shown import Precision
from benchalong.pages.prose import PAPER, Fills, levelled, plain
from benchalong.pages.shown import Shows

SHOWS = Shows("inch", Precision())
STILE = LiveSize("stile", INCH * 19 / 8)
STILE_NAME = PartName("door_stile", "Door stile", leads=False)
SIZE = '<data class="size" value="2413/40">2 3/8 in</data>'

FILLED: list[tuple[Prose, str]] = [
    ((), ""),
    (("<p>Plain.</p>",), "<p>Plain.</p>"),
    (("Rip to ", STILE, "."), f"Rip to {SIZE}."),
    (("Rip the ", STILE_NAME, "."), "Rip the door stile."),
    (("<p>Rip. ", STILE_NAME, "s: ", STILE_NAME), "<p>Rip. Door stiles: door stile"),
    (("<li>", STILE_NAME, " and “", STILE_NAME), "<li>Door stile and “door stile"),
    (("<p><em>", STILE_NAME), "<p><em>Door stile"),
    (("<strong>Stop.</strong> ", STILE_NAME), "<strong>Stop.</strong> Door stile"),
    (
        ('<p><a href="', Address("part", "a"), '">', STILE_NAME, "</a>"),
        '<p><a href="../parts/a.html">Door stile</a>',
    ),
    ((STILE, " ", STILE_NAME), f"{SIZE} door stile"),
    (("The ", PartName("a", "T-rail", leads=False)), "The T-rail"),
    (("The ", PartName("a", "Windsor Seat", leads=False)), "The Windsor Seat"),
    (("Cut ", LiveNumber("n", "4 < 5")), "Cut 4 &lt; 5"),
    ((PartName("side", "Side & back"),), '<a href="../parts/side.html">Side &amp; back</a>'),
    ((PartName("side", "Side", leads=False),), "Side"),
    (('<a href="', Address("step", "mill-all"), '">there</a>'), '<a href="../steps/mill-all.html">there</a>'),
    (('<a href="', Address("question", "q"), '">it</a>'), '<a href="../questions.html#question-q">it</a>'),
    (('<img src="', Address("picture", "pictures/a.jpg"), '">'), '<img src="../pictures/a.jpg">'),
]


@pytest.mark.parametrize(("prose", "html"), FILLED)
def test_holes_are_filled(prose: Prose, html: str) -> None:
    assert Fills(SHOWS, "../").fill(prose) == html


def test_a_title_holds_no_link() -> None:
    assert Fills(SHOWS, "").title(("Cut the ", PartName("side", "Side"))) == "Cut the side"


def test_on_paper_parts_and_steps_are_further_down() -> None:
    paper = Fills(SHOWS, "", places=PAPER)
    assert paper.fill((PartName("side", "Side"),)) == '<a href="#part-side">Side</a>'
    assert paper.fill((Address("step", "mill-all"),)) == "#step-mill-all"


PLAIN = [
    ("<p>One.</p>\n<p>Two &amp; three.</p>", "One. Two & three."),
    ("to <em>all</em>, then", "to all, then"),
    ("a<br>b", "a b"),
    ("1 &lt; 2", "1 < 2"),
    ("<ul><li>a</li><li>b</li></ul>", "a b"),
]


@pytest.mark.parametrize(("html", "words"), PLAIN)
def test_plain_words(html: str, words: str) -> None:
    assert plain(html) == words


def test_a_full_stop_stays_with_its_size() -> None:
    assert Fills(SHOWS, "").plain(("<p>Rip to ", STILE, ".</p>")) == "Rip to 2 3/8 in."


LEVELS = [
    ("<h4>A</h4><p>b</p><h5>C</h5>", 3, "<h3>A</h3><p>b</p><h4>C</h4>"),
    ("<h3>A</h3><h6>B</h6>", 5, "<h5>A</h5><h6>B</h6>"),
    ("<p>a</p><hr>", 3, "<p>a</p><hr>"),
]


@pytest.mark.parametrize(("html", "level", "moved"), LEVELS)
def test_headings_begin_where_the_page_has_room(html: str, level: int, moved: str) -> None:
    assert levelled(html, level) == moved
