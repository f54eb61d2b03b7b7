"""Makes anew what is kept in the repository though it follows from the rest; the tests compare.

    .venv/bin/python tests/refresh.py

Two things: the plan language in the README, and `site_example/`, the first example as published.
"""

from __future__ import annotations

import sys
from pathlib import Path

from benchalong.commands import run
from benchalong.reading.reference import reference

ROOT = Path(__file__).resolve().parent.parent
README = ROOT / "README.md"
EXAMPLE = ROOT / "content" / "seed-cupboard"
SITE = ROOT / "site_example"
START, END = "<!-- language -->\n", "<!-- end of language -->\n"


def with_reference(readme: str) -> str:
    """The README with the plan language as it is now."""
    before, rest = readme.split(START)
    _, after = rest.split(END)
    return f"{before}{START}\n{reference().strip()}\n\n{END}{after}"


def main() -> int:
    """Writes both; the exit code of the publish."""
    README.write_text(with_reference(README.read_text(encoding="utf-8")), encoding="utf-8")
    return run(["publish", str(EXAMPLE), "--into", str(SITE)])


if __name__ == "__main__":
    sys.exit(main())
