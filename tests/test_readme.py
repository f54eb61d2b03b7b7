"""The README says what is so: two commands for a fresh machine, the language, the exit codes."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from benchalong.command_line import saying
from benchalong.commands import benchalong
from benchalong.publishing.theme import shipped_themes
from refresh import README, with_reference

TEXT = README.read_text(encoding="utf-8")
ROOT = README.parent


def command(name: str) -> str:
    """The command under a mark, as `.ci/run` takes it."""
    found = re.search(rf"<!-- {name} -->\n```sh\n(.+)\n```\n", TEXT)
    assert found
    return found[1]


def test_the_language_is_as_it_is_now() -> None:
    assert with_reference(TEXT) == TEXT, "run tests/refresh.py"


def test_two_commands_each_whole_on_one_line() -> None:
    assert TEXT.count("```sh\n") == 2
    for name in ("publish", "tests"):
        assert command(name).startswith("python3 -m venv .venv && .venv/bin/pip install ")
    assert "publish content/seed-cupboard --into my-site" in command("publish")


def test_ci_runs_the_very_command_of_the_readme() -> None:
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    function = re.search(r"readme_command\(\) .*?\n}\n", script, re.DOTALL)
    assert function
    done = subprocess.run(
        ["bash", "-c", f"{function[0]}\nreadme_command tests"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.strip() == command("tests")


@pytest.mark.parametrize(
    ("code", "means"),
    [
        (saying.DONE, "done"),
        (saying.FAULT, "fault"),
        (saying.UNREADABLE, "can't be read"),
        (saying.ELSE, "else"),
    ],
)
def test_exit_codes(code: int, means: str) -> None:
    assert re.search(rf"^\| {code} \| .*{means}", TEXT, re.MULTILINE)


def test_every_verb_and_theme_and_option_is_named() -> None:
    for verb in benchalong.commands:
        assert f"`benchalong {verb} " in TEXT
    for theme in shipped_themes():
        assert f"`{theme}`" in TEXT
    options = {name for verb in benchalong.commands.values() for param in verb.params for name in param.opts}
    for option in options - {"--port"}:
        assert not option.startswith("--") or option in TEXT, option


def test_links_lead_somewhere() -> None:
    links = re.findall(r"\]\(([^)#:]+)\)", TEXT)
    assert links
    assert [link for link in links if not (ROOT / Path(link)).exists()] == []
