"""Both examples as published: every note filled in, every picture where the page says it is."""

from __future__ import annotations

import re
from pathlib import Path

from bs4 import BeautifulSoup

CODE = ("script", "style", "code", "pre")


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def test_each_step_and_part_has_its_page(site: Path) -> None:
    assert len(list((site / "steps").glob("*.html"))) in (25, 10)
    assert len(list((site / "parts").glob("*.html"))) in (12, 6)


def test_no_live_size_is_left_as_typed(site: Path) -> None:
    for page in pages(site):
        soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
        for element in soup(list(CODE)):
            element.decompose()
        assert "(=" not in soup.get_text(), page.name


def test_prose_shows_no_marks_of_markdown(site: Path) -> None:
    """One-line texts are plain: a star or a backtick in one would stand on the page as typed."""
    for page in (site / "steps").glob("*.html"):
        soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
        for element in soup([*CODE, "svg"]):
            element.decompose()
        assert not re.search(r"\*\w|\w\*|`", soup.get_text()), page.name


def test_pictures_are_there_and_said_in_words(site: Path) -> None:
    for page in pages(site):
        soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
        for image in soup("img"):
            assert (page.parent / str(image["src"])).is_file(), f"{page.name}: {image['src']}"
            assert len(str(image["alt"]).split()) >= 10, f"{page.name}: {image['alt']}"
