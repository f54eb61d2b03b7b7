"""The workings, in the order in which they are done. A new one is a module and a line here."""

from __future__ import annotations

from typing import Any

from benchalong.workings.amounts import AMOUNTS
from benchalong.workings.bulks import BULKS
from benchalong.workings.climate import CLIMATE
from benchalong.workings.copies import COPIES
from benchalong.workings.cut_check import CUT_CHECK
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.extent import EXTENT
from benchalong.workings.movement import MOVEMENT
from benchalong.workings.never_used import NEVER_USED
from benchalong.workings.sag import SAG
from benchalong.workings.shapes import SOLIDS
from benchalong.workings.touched import TOUCHED
from benchalong.workings.weights import WEIGHTS
from benchalong.workings.woods import WOODS
from benchalong.workings.working import Working

WORKINGS: tuple[Working[Any], ...] = (
    COPIES,
    EXTENT,
    CUT_LIST,
    TOUCHED,
    NEVER_USED,
    CUT_CHECK,
    SOLIDS,
    BULKS,
    WOODS,
    CLIMATE,
    MOVEMENT,
    WEIGHTS,
    AMOUNTS,
    SAG,
)
"""Each after those it needs."""
