"""Every table of the plan language, in the order of the reference."""

from __future__ import annotations

from benchalong.reading import language as said
from benchalong.reading import sawing_language as sawing
from benchalong.reading.holding_language import HANGING, STANDING
from benchalong.reading.joint_language import JOINTS
from benchalong.reading.language import CUTS, Table

TABLES: tuple[Table, ...] = (
    said.PROJECT, said.ORIGIN, said.SIZE, said.SHOP, sawing.ALLOWANCES, sawing.ALLOWANCE, sawing.RESAW,
    sawing.JOINTER, sawing.PLANER, said.HOUSE, said.SPECIES, said.RATES, said.STOCK,
    said.PART,
    said.LOAD, sawing.TEST_PIECE, sawing.MATCH, *CUTS.values(), said.CORNER,
    *JOINTS.values(), said.ASSEMBLY, said.PLACE, said.HARDWARE, said.HARDWARE_HOLE, said.SEAT,
    HANGING, STANDING, said.JIG,
    said.FINISH, said.CHANGE,
    said.HAND_OVER, said.LOOK, said.STAGE, said.STEP, said.AMISS, said.PICTURE, said.QUESTION, said.REPLY,
    said.BUILDER, sawing.BOARD, sawing.DEFECT,
)  # fmt: skip


def others_with(key: str, table: Table) -> tuple[str, ...]:
    """The other kinds of the same thing that take a key: of cuts for a cut, of joints for a joint."""
    for kinds in (CUTS, JOINTS):
        if table in kinds.values():
            return tuple(other.called for other in kinds.values() if key in other.by_name)
    return ()
