"""The piece with the hardware that sits on it, as bodies that take room beside the wood.

Each is a box, or a round body where its diameter is given: what knocks against it is judged by that. Hinges,
slides and stays stand in the gap their joint leaves and take no room of their own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from benchalong.ground.lengths import Length
from benchalong.plan.model import AXES, Circle, Cut, Part, Plan, Prism, Seated
from benchalong.plan.turns import UNTURNED, Room
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.solids import Solids


def fitted_out(plan: Plan, placed: Placed) -> Placed:
    """The same, with a body for each piece of hardware whose room is known after all the wood."""
    bodies = list(_bodies(plan, placed))
    if not bodies:
        return placed
    shapes = {one.copy.shape: one.part for one in bodies}
    numbered = tuple(replace(one, number=len(placed.lying) + n) for n, one in enumerate(bodies))
    return Placed((*placed.lying, *numbered), Solids({**placed.solids.parts, **shapes}), placed.frames)


def _bodies(plan: Plan, placed: Placed) -> Iterator[Lying]:
    for thing in plan.hardware.values():
        for seated in thing.seated:
            if seated.room is None:
                continue
            below = placed.by_mark[seated.mark]
            part = _as_part(below.part, seated, seated.room)
            shape = f"{thing.id}@{AXES[_axis(seated)]}"
            copy = replace(below.copy, shape=shape, turn=UNTURNED, at=seated.room[0])
            yield Lying(0, copy, part, UNTURNED, seated.room, thing.name)


def _as_part(wood: Part, seated: Seated, room: Room) -> Part:
    """As a part that is not turned: along to the right, across to the back."""
    sides = [far - near for near, far in zip(*room, strict=True)]
    axis = _axis(seated)
    flat = [side for n, side in enumerate(sides) if n != axis]
    cuts: tuple[Cut, ...] = ()
    if seated.is_round:
        circle = Circle((flat[0] / 2, flat[1] / 2), flat[0])
        prism = Prism(AXES[axis], circle, Length(0), sides[axis], outside=True)
        cuts = (Cut("outline", "round", ("face",), "", (), (prism,)),)
    return replace(wood, length=sides[0], width=sides[1], thickness=sides[2], cuts=cuts)


def _axis(seated: Seated) -> int:
    return next(n for n in range(3) if seated.looks[n])
