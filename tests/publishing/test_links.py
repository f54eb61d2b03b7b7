"""No broken link or anchor in the whole site; its own files are named relative to the page; unique ids."""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from urllib.parse import unquote, urlsplit

from bs4 import BeautifulSoup, Tag

LEADS = {
    "a": ("href",),
    "area": ("href",),
    "audio": ("src",),
    "button": ("formaction",),
    "embed": ("src",),
    "form": ("action",),
    "iframe": ("src",),
    "image": ("href", "xlink:href"),
    "img": ("src", "srcset"),
    "input": ("src", "formaction"),
    "link": ("href",),
    "object": ("data",),
    "script": ("src",),
    "source": ("src", "srcset"),
    "use": ("href", "xlink:href"),
    "video": ("src", "poster"),
}
"""Every attribute that names another file."""
IDS = ("for", "aria-labelledby", "aria-describedby", "aria-controls", "aria-owns", "list", "headers", "form")
OUTSIDE = ("http", "https", "mailto")
"""Schemes that a link, followed by the reader, may have."""
IN_STYLE = re.compile(r"url\(\s*['\"]?([^'\")]+)|@import\s+['\"]([^'\"]+)")


@dataclass(frozen=True)
class Leading:
    page: Path
    tag: str
    address: str


@cache
def read(page: Path) -> BeautifulSoup:
    return BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def tags(page: Path) -> Iterator[Tag]:
    yield from (tag for tag in read(page).find_all(True) if isinstance(tag, Tag))


@cache
def ids(page: Path) -> frozenset[str]:
    return frozenset(str(tag["id"]) for tag in tags(page) if tag.has_attr("id"))


def leads(site: Path) -> Iterator[Leading]:
    for page in pages(site):
        for tag in tags(page):
            for attribute in LEADS.get(tag.name, ()):
                if tag.has_attr(attribute):
                    yield Leading(page, tag.name, str(tag[attribute]))


def is_outside(leading: Leading) -> bool:
    return leading.tag == "a" and urlsplit(leading.address).scheme in OUTSIDE


def is_broken(site: Path, page: Path, address: str) -> bool:
    parts = urlsplit(address)
    if parts.scheme or parts.netloc or parts.path.startswith("/"):
        return True
    target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
    if not target.is_file() or not target.is_relative_to(site.resolve()):
        return True
    return bool(parts.fragment) and unquote(parts.fragment) not in ids(target)


def test_every_link_leads_somewhere_in_the_site(site: Path) -> None:
    inside = [leading for leading in leads(site) if not is_outside(leading)]
    assert len(inside) > 100
    assert [leading for leading in inside if is_broken(site, leading.page, leading.address)] == []


def test_every_page_names_its_icon(site: Path) -> None:
    """Where none is named, a browser asks for one at the top of the host, outside the site's folder."""
    assert [page.name for page in pages(site) if not read(page).select_one("link[rel=icon][href]")] == []


def test_ids_are_unique(site: Path) -> None:
    for page in pages(site):
        counted = Counter(str(tag["id"]) for tag in tags(page) if tag.has_attr("id"))
        assert [name for name, count in counted.items() if count > 1] == [], page.name


def test_every_id_that_is_named_is_there(site: Path) -> None:
    for page in pages(site):
        named = {
            (attribute, name)
            for tag in tags(page)
            for attribute in IDS
            if tag.has_attr(attribute)
            for name in " ".join(map(str, tag.get_attribute_list(attribute))).split()
        }
        assert [pair for pair in sorted(named) if pair[1] not in ids(page)] == [], page.name


def test_every_page_can_be_reached_from_the_piece(site: Path) -> None:
    ways: dict[Path, set[Path]] = {}
    for leading in leads(site):
        if leading.tag == "a" and not is_outside(leading):
            path = unquote(urlsplit(leading.address).path)
            ways.setdefault(leading.page.resolve(), set()).add((leading.page.parent / path).resolve())
    seen: set[Path] = set()
    ahead = {(site / "index.html").resolve()}
    while ahead:
        seen |= ahead
        ahead = set().union(*(ways.get(page, set()) for page in ahead)) - seen
    assert [page.name for page in pages(site) if page.resolve() not in seen] == []


def test_what_the_search_finds_is_there(site: Path) -> None:
    script = (site / "data" / "search.js").read_text(encoding="utf-8")
    entries = json.loads(script.removeprefix("var benchalongSearch = ").rstrip().removesuffix(";"))
    assert {"step", "part", "question", "word"} <= {kind for kind, *_ in entries}
    assert [entry for entry in entries if is_broken(site, site / "find.html", entry[2])] == []


def test_styles_name_only_files_of_the_site(site: Path) -> None:
    for style in site.rglob("*.css"):
        for found in IN_STYLE.finditer(style.read_text(encoding="utf-8")):
            assert not is_broken(site, style, found[1] or found[2]), f"{style.name} names {found[0]}"
