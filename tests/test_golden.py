"""Every faulty project in `tests/golden/` is told about word for word, caret and all."""

from __future__ import annotations

from pathlib import Path

import pytest

from golden import CASES, all_cases, found_in, read_case


@pytest.mark.parametrize("path", all_cases(), ids=lambda path: str(path.relative_to(CASES)))
def test_faulty_project_is_told_about(path: Path) -> None:
    case = read_case(path)
    assert case.expected.strip(), "a case says what it expects"
    assert found_in(case) == case.expected


def test_there_are_enough_cases() -> None:
    assert len(all_cases()) >= 30
