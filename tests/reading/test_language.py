"""The language is the table in `language.py`: each of its keys is read, and each slip in one is caught."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from benchalong.reading import shape
from benchalong.reading.joint_language import JOINTS
from benchalong.reading.language import CUT_SURFACES, CUTS, Key, Table
from benchalong.reading.project import read_project
from benchalong.reading.reference import reference
from benchalong.reading.shape import Entry
from benchalong.reading.tables import TABLES
from benchalong.reading.tally import Tally
from benchalong.reading.written import CUT_KINDS
from reading.shared import WHOLE, messages, read

LETTERS = "abcdefghijklmnopqrstuvwxyz_- S2"
"""What may slip in."""


def slips_in(word: str) -> Iterator[str]:
    """Every deletion and swap, and substitutions and insertions at every place."""
    for at in range(len(word) + 1):
        before, after = word[:at], word[at:]
        if after:
            yield before + after[1:]
            yield from (before + letter + after[1:] for letter in LETTERS)
        if len(after) > 1:
            yield before + after[1] + after[0] + after[2:]
        yield from (before + letter + after for letter in LETTERS)


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.called)
def test_every_slip_in_every_key_is_caught_and_the_right_word_comes_first(table: Table) -> None:
    for key in table.by_name:
        for typed in sorted(set(slips_in(key)) - {key, ""}):
            if typed in table.by_name:
                continue  # then it stands there twice; test_yamltree.py has that
            tally = Tally()
            Entry(table, {typed if name == key else name: "x" for name in table.by_name}, ("file",), tally)
            assert [problem.meant[:1] for problem in tally.problems] == [(key,)], f"{typed} for {key}"


def test_a_missing_key_is_told_unless_a_mistyped_one_was_meant_to_be_it(tmp_path: Path) -> None:
    reading = read(tmp_path, {"project.yaml": "titel: Box\n"})
    assert messages(reading) == ["this project has no units", "titel is not a key of a project"]


def test_every_key_of_the_language_stands_in_the_whole_project(monkeypatch: pytest.MonkeyPatch) -> None:
    seen: set[tuple[str, str]] = set()
    monkeypatch.setattr(shape, "Entry", entry_that_notes(seen))
    for module in ("whole_file", "notes", "questions"):
        monkeypatch.setattr(f"benchalong.reading.{module}.Entry", shape.Entry)
    assert messages(read_project(WHOLE)) == []
    every = {(table.called, key) for table in TABLES for key in table.by_name}
    common = ("name", "note", "only", "glue", "play")
    elsewhere = {
        (table.called, key)
        for table in (*CUTS.values(), *JOINTS.values())
        for key in common
        if table.called not in ("a groove", "a tongue and groove joint")
    }
    assert every - seen - elsewhere == set()


def entry_that_notes(seen: set[tuple[str, str]]) -> type[Entry]:
    class Noting(Entry):
        def __init__(self, table: Table, values: Any, path: Any, tally: Tally) -> None:
            super().__init__(table, values, path, tally)
            seen.update((table.called, key) for key in values)

    return Noting


def test_every_key_of_the_plan_makes_a_difference(tmp_path: Path) -> None:
    text = (WHOLE / "project.yaml").read_text(encoding="utf-8")
    whole = yaml.load(text, Loader=yaml.BaseLoader)
    before = read(tmp_path, {"project.yaml": yaml.safe_dump(whole)})
    for path in keys_in(whole):
        after = read(tmp_path, {"project.yaml": yaml.safe_dump(without(whole, path))})
        is_seen = after.project != before.project or len(after.problems) > len(before.problems)
        assert is_seen, f"nothing changes without {'.'.join(map(str, path))}"


def keys_in(tree: Any) -> Iterator[tuple[str | int, ...]]:
    """The path of every key and item, outermost first."""
    pairs = tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    for key, value in pairs:
        if isinstance(tree, dict):
            yield (key,)
        yield from ((key, *rest) for rest in keys_in(value))


def without(tree: Any, path: tuple[str | int, ...]) -> Any:
    tree = copy.deepcopy(tree)
    inner = tree
    for key in path[:-1]:
        inner = inner[key]
    del inner[path[-1]]
    return tree


def test_each_kind_of_cut_has_its_table_and_its_surfaces() -> None:
    assert tuple(CUTS) == CUT_KINDS == tuple(CUT_SURFACES)


def test_no_key_stands_twice_in_a_table_and_each_says_what_it_means() -> None:
    for table in TABLES:
        assert len(table.by_name) == len(table.keys)
        assert all(key.meaning and not key.meaning.endswith(".") for key in table.keys)


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.called)
def test_the_reference_says_every_key(table: Table) -> None:
    section = next(part for part in reference().split("### ") if part.lower().startswith(f"{table.called}\n"))
    assert [key for key in table.keys if not is_said(key, section)] == []


def is_said(key: Key, section: str) -> bool:
    return f"| {'**' if key.required else ''}`{key.name}`" in section and key.meaning in section
