"""How is it held, and is it safe there?"""

from __future__ import annotations

from dataclasses import dataclass

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.workings.hardware import HARDWARE
from benchalong.workings.holding.hanging import hang
from benchalong.workings.holding.hung import Hung
from benchalong.workings.holding.lids import Lid, look_at_lids
from benchalong.workings.holding.standing import Stands, stand
from benchalong.workings.moving import MOVING
from benchalong.workings.weights import WEIGHTS
from benchalong.workings.woods import WOODS
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Held:
    hung: Hung | None
    stands: Stands | None
    lids: tuple[Lid, ...]


def look_how_it_is_held(plan: Plan, worked: Worked) -> tuple[Held, tuple[Finding, ...]]:
    """Weights are only worked out where something hangs, stands or shuts."""
    placed, weigh, moving = worked[HARDWARE].placed, worked[WEIGHTS], worked[MOVING]
    hung, hanging = hang(plan, plan.hanging, placed, weigh()) if plan.hanging and plan.copies else (None, ())
    stands, standing = (
        stand(plan, plan.standing, placed, moving, weigh(), worked[WOODS])
        if plan.standing and plan.copies
        else (None, ())
    )
    lids, lidded = look_at_lids(plan, placed, moving, weigh)
    return Held(hung, stands, lids), (*hanging, *standing, *lidded)


HELD: Working[Held] = Working(
    "held", "How is it held, and does it stay there?", look_how_it_is_held, (HARDWARE, MOVING, WEIGHTS, WOODS)
)
