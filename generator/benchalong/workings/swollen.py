"""Does what goes into a dado or groove at its full thickness still go in when it has swollen?

Thickness moves little, a tenth of a millimetre or two; it counts in thick and in quarter-sawn boards, and
where a shelf is to come out again.
"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Joint, PartId, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import DADO_SLACK, HAND_FIT
from benchalong.workings.movement import MOVEMENT, Movement
from benchalong.workings.telling import Telling, start
from benchalong.workings.working import Worked, Working


def look_at_thickness(plan: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    return None, tuple(_findings(plan, worked[MOVEMENT]))


def _findings(plan: Plan, movement: Movement) -> Iterator[Finding]:
    for joint in plan.joints.values():
        if joint.kind == "dado":
            parts = dict.fromkeys(meeting.takes.part for meeting in joint.meetings if meeting.takes)
            for part in parts:
                yield from _swollen(plan, joint, part, movement)


def _swollen(plan: Plan, joint: Joint, part: PartId, movement: Movement) -> Iterator[Finding]:
    """A glued one is pressed into a little more; a loose one has only its play."""
    moves = movement.parts.get(part)
    width = next((size.length for size in joint.sizes if size.name == "width"), None)
    if moves is None or width is None:
        return
    swollen, thick = moves.thickness.dampest, plan.parts[part].thickness
    slack = DADO_SLACK if joint.glue == "yes" else HAND_FIT
    over = swollen - width
    if width < thick or over <= slack or moves.thickness.to_dampest <= 0:
        return
    shown = Telling(plan).fine
    yield Finding(
        "swells-in-dado",
        "note",
        Place((PROJECT_FILE, "joints", joint.id)).key(),
        part,
        f"{start(plan.parts[part].name)} swells to {shown(swollen)} at the dampest, {shown(over)} more than "
        f"{joint.name} is wide",
        f"play: {shown(over / 2)} on each side, if it is to go in, or come out, in a damp season",
        {"swollen": swollen, "width": width, "over": over, "play": over / 2},
        tuple(sorted({name for size in joint.sizes for name in size.sizes})),
    )


SWOLLEN: Working[None] = Working(
    "swollen", "Do shelves still go into their dadoes at the dampest?", look_at_thickness, (MOVEMENT,)
)
