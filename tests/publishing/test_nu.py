"""Every published page, the drawings in it included, passes the Nu validator."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

import pytest


@pytest.mark.tools
def test_every_page_is_valid(nu_jar: Path, sites: dict[str, Path]) -> None:
    """Both sites in one run, since starting Java takes longer than reading them."""
    command = [
        "java",
        "-jar",
        str(nu_jar),
        "--errors-only",
        "--format",
        "json",
        "--also-check-svg",
        "--skip-non-html",
    ]
    done = subprocess.run([*command, *map(str, sites.values())], capture_output=True, text=True, check=False)
    messages = json.loads(done.stderr)["messages"]
    said = [f"{Path(told['url']).name}:{told.get('lastLine')}: {told['message']}" for told in messages]
    assert said[:20] == []
    assert done.returncode == 0
