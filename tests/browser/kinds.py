"""One page of each kind of a published site: the longest, which has most to show."""

from __future__ import annotations

import re
from pathlib import Path

KINDS = (
    "boards", "buy", "check", "cut-list", "find", "joint", "marks", "paper", "part", "piece",
    "questions", "sessions", "setup", "setups", "sizes", "stage", "step", "wood", "words",
)  # fmt: skip
KIND = re.compile(r'<html [^>]*data-page="([a-z-]+)"')


def one_of_each_kind(site: Path) -> dict[str, str]:
    """Kind -> the page's path in the site."""
    pages = sorted(site.rglob("*.html"), key=lambda page: (page.stat().st_size, str(page)))
    return {_kind(page): page.relative_to(site).as_posix() for page in pages}


def _kind(page: Path) -> str:
    found = KIND.search(page.read_text(encoding="utf-8"))
    assert found, f"{page.name} does not say what kind of page it is"
    return found[1]
