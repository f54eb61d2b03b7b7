"""The workings, in the order in which they are done. A new one is a module and a line here."""

from __future__ import annotations

from typing import Any

from benchalong.workings.across import ACROSS
from benchalong.workings.amounts import AMOUNTS
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.bulks import BULKS
from benchalong.workings.clashes import CLASHES
from benchalong.workings.climate import CLIMATE
from benchalong.workings.copies import COPIES
from benchalong.workings.corner_fingers import CORNER_FINGERS
from benchalong.workings.cut_check import CUT_CHECK
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.extent import EXTENT
from benchalong.workings.floating import FLOATING
from benchalong.workings.gaps import GAPS
from benchalong.workings.glue import GLUE
from benchalong.workings.glue_ups import GLUE_UPS
from benchalong.workings.groove_ends import GROOVE_ENDS
from benchalong.workings.hardware import HARDWARE
from benchalong.workings.holding.held import HELD
from benchalong.workings.houses import HOUSES
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.left_wood import LEFT_WOOD
from benchalong.workings.meetings import MEETINGS
from benchalong.workings.movement import MOVEMENT
from benchalong.workings.moving import MOVING
from benchalong.workings.never_used import NEVER_USED
from benchalong.workings.placed import PLACED
from benchalong.workings.placing_check import PLACING_CHECK
from benchalong.workings.proportions import PROPORTIONS
from benchalong.workings.purchases.purchases import PURCHASES
from benchalong.workings.sag import SAG
from benchalong.workings.sessions.sessions import SESSIONS
from benchalong.workings.solids import SOLIDS
from benchalong.workings.step_check.done_in import DONE_IN
from benchalong.workings.step_check.step_check import STEP_CHECK
from benchalong.workings.swollen import SWOLLEN
from benchalong.workings.touched import TOUCHED
from benchalong.workings.touching import TOUCHING_CHECK
from benchalong.workings.triangles import TRIANGLES
from benchalong.workings.ways_out import WAYS_OUT
from benchalong.workings.weights import WEIGHTS
from benchalong.workings.woods import WOODS
from benchalong.workings.work_order.work_order import ORDER
from benchalong.workings.working import Working

WORKINGS: tuple[Working[Any], ...] = (
    COPIES,
    EXTENT,
    CUT_LIST,
    BLANKS,
    TOUCHED,
    NEVER_USED,
    CUT_CHECK,
    SOLIDS,
    PLACED,
    TRIANGLES,
    CLASHES,
    MEETINGS,
    TOUCHING_CHECK,
    CORNER_FINGERS,
    GROOVE_ENDS,
    LEFT_WOOD,
    WAYS_OUT,
    JOBS,
    DONE_IN,
    ORDER,
    STEP_CHECK,
    HARDWARE,
    MOVING,
    PLACING_CHECK,
    PROPORTIONS,
    BULKS,
    WOODS,
    CLIMATE,
    MOVEMENT,
    FLOATING,
    ACROSS,
    GAPS,
    HOUSES,
    SWOLLEN,
    WEIGHTS,
    AMOUNTS,
    GLUE,
    GLUE_UPS,
    SESSIONS,
    SAG,
    BOARDS,
    PURCHASES,
    HELD,
)
"""Each after those it needs."""
