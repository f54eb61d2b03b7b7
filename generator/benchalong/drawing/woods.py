"""Which of a few classes a part's wood is drawn in, so that a theme can tell plywood from cherry."""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.plan.model import PartId, Plan

WOODS: tuple[str, ...] = ("wood-a", "wood-b", "wood-c")


def woods_of(plan: Plan) -> Mapping[PartId, str]:
    """The plan's first stock in the first class, and so on; a fourth stock begins anew."""
    stock = [part.stock for part in plan.parts.values()]
    order = {name: WOODS[at % len(WOODS)] for at, name in enumerate(dict.fromkeys((*plan.stock, *stock)))}
    return {part.id: order[part.stock] for part in plan.parts.values()}
