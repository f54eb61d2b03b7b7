"""Every planted fault of order is found at its line, and nothing more than it brings with it."""

from __future__ import annotations

import pytest

from workings.step_check.planted import Case, all_cases, said_of

ALL = all_cases()


@pytest.mark.parametrize("case", ALL, ids=lambda case: case.title)
def test_a_planted_fault_is_found_where_it_stands(case: Case) -> None:
    assert case.expected.strip(), "fill in, and read, what is expected"
    assert said_of(case).strip() == case.expected.strip()


def test_restless_wood_split_rested_and_flattened_is_as_it_should_be() -> None:
    assert not said_of(Case("as written", "restless", (), ""))


def test_there_are_enough_of_them_and_of_every_code() -> None:
    codes = {line.split()[1] for case in ALL for line in case.expected.splitlines() if line[:1].isalpha()}
    assert len(ALL) >= 25
    assert codes == {
        "cut-out-of-reach", "glued-before-finished", "used-before-cut", "step-too-early", "work-in-no-step",
        "work-in-two-steps", "setup-made-again", "jig-used-before-made", "rest-too-short",
        "steps-say-no-work",
    }  # fmt: skip
