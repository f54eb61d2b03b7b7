"""The pages' scripts hold what their own comments promise: checked by the TypeScript compiler, strictly."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from conftest import ROOT

STRICTLY = ("--allowJs", "--checkJs", "--strict", "--noEmit")
FOR_BROWSERS = ("--target", "es2022", "--lib", "es2022,dom,dom.iterable")


def checked(compiler: Path, scripts: list[Path]) -> str:
    command = ["node", str(compiler), *STRICTLY, *FOR_BROWSERS, *map(str, scripts)]
    done = subprocess.run(command, capture_output=True, text=True, check=False, cwd=ROOT)
    return done.stdout + done.stderr


@pytest.mark.tools
def test_every_script_of_the_themes_is_typed(typescript: Path) -> None:
    """All together, since a page loads them one after another into one room."""
    scripts = sorted((ROOT / "themes").glob("*/scripts/*.js"))
    assert len(scripts) > 10
    assert checked(typescript, scripts) == ""


@pytest.mark.tools
def test_a_wrong_type_is_found(typescript: Path, tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.js"
    wrong.write_text('"use strict";\n/** @type {number} */\nconst size = "a";\n', encoding="utf-8")
    assert "not assignable to type 'number'" in checked(typescript, [wrong])
