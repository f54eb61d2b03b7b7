"""Both examples, travelled once a session."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchalong.road import Travelled, travel
from content.standing import Stands, stands

CONTENT = Path(__file__).resolve().parents[2] / "content"


@pytest.fixture(scope="session")
def cupboard() -> Travelled:
    return travel(CONTENT / "seed-cupboard")


@pytest.fixture(scope="session")
def stool() -> Travelled:
    return travel(CONTENT / "step-stool")


@pytest.fixture(scope="session")
def in_cupboard(cupboard: Travelled) -> Stands:
    return stands(cupboard)


@pytest.fixture(scope="session")
def in_stool(stool: Travelled) -> Stands:
    return stands(stool)
