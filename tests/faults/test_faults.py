"""Every planted fault is found, at the right part, with the right number, and nothing is said beyond it."""

from __future__ import annotations

from pathlib import Path

import pytest

from faults.catalogue import BASES, CASES, all_cases, found_in, read_case


@pytest.mark.parametrize("path", all_cases(), ids=lambda path: str(path.relative_to(CASES)))
def test_planted_fault_is_found(path: Path) -> None:
    case = read_case(path)
    assert case.expected.strip(), "a case says what it expects"
    assert found_in(case.project()) == case.expected


@pytest.mark.parametrize("base", sorted(path.stem for path in BASES.glob("*.yaml")))
def test_what_they_are_planted_in_is_sound(base: str) -> None:
    assert found_in((BASES / f"{base}.yaml").read_text(encoding="utf-8")) == ""


def test_there_are_enough_cases() -> None:
    assert len(all_cases()) >= 40
