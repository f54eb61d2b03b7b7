"""What would the panels do in another house?

The same plan is built in many rooms. Each panel is looked at in every climate that the trade has a name for,
and in the house of each builder who says something of theirs; everything else stays as in the plan.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Air, BuilderAir, Plan
from benchalong.plan.moistures import Moistures, moistures
from benchalong.trade.moisture import CLIMATES
from benchalong.trade.movement import across_width
from benchalong.workings.climate import CLIMATE, Climate, said_of
from benchalong.workings.floating import FLOATING, Floating, floating_in, hundredth_up
from benchalong.workings.movement import MOVEMENT, Movement, over_the_year
from benchalong.workings.placed import PLACED, Placed
from benchalong.workings.telling import Telling, called
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class House:
    """One house, and every panel in it."""

    said: str
    """`a house on a damp coast`."""
    builder: str
    """The handle of the builder whose it is; empty for one of the trade's."""
    name: str
    """What that builder is called."""
    moistures: Moistures
    is_here: bool
    """Whether it is what the plan itself is worked out for."""
    panels: tuple[Floating, ...]


def look_at_houses(plan: Plan, worked: Worked) -> tuple[tuple[House, ...], tuple[Finding, ...]]:
    panels, movement, here = worked[FLOATING], worked[MOVEMENT], worked[CLIMATE]
    if not panels:
        return (), ()
    named = (
        _house(climate.said, None, moistures(plan.shop.air, Air(climate=name)), panels, movement, here)
        for name, climate in CLIMATES.items()
    )
    own = (_own(air, plan, panels, movement, here) for air in plan.builder_airs)
    houses = (*named, *own)
    return houses, tuple(_findings(plan, worked[PLACED], houses, panels))


def _own(
    air: BuilderAir, plan: Plan, panels: tuple[Floating, ...], movement: Movement, here: Climate
) -> House:
    """What they don't say is as in the plan."""
    house = air.house if air.house.says_how_damp else plan.house
    shop = air.shop if air.shop.says_how_damp else plan.shop.air
    year = moistures(shop, house)
    said = said_of(house) if air.house.says_how_damp else here.house
    return _house(said, air, year, panels, movement, here)


def _house(
    said: str,
    builder: BuilderAir | None,
    year: Moistures,
    panels: tuple[Floating, ...],
    movement: Movement,
    here: Climate,
) -> House:
    is_here = year == Moistures(here.made_at, here.driest, here.dampest)
    there = tuple(found for one in panels if (found := _there(one, year, movement)) is not None)
    handle, name = (builder.handle, builder.name) if builder else ("", "")
    return House(said, handle, name, year, is_here, there)


def _there(one: Floating, year: Moistures, movement: Movement) -> Floating | None:
    moves = movement.parts[one.part]
    change = over_the_year(across_width, moves.species, moves.sawn, year)
    return None if change is None else floating_in(one, change.shares)


def _findings(
    plan: Plan, placed: Placed, houses: tuple[House, ...], here: tuple[Floating, ...]
) -> Iterator[Finding]:
    """Only of builders' own houses, and only what isn't so in the plan's."""
    fine = {(one.joint, one.part, one.marks) for one in here if one.room.at_dampest >= 0}
    files = {air.handle: air.file for air in plan.builder_airs}
    for house in houses if plan.builder_airs else ():
        for one in house.panels if house.builder else ():
            if one.room.at_dampest < 0 and (one.joint, one.part, one.marks) in fine:
                yield _tight(plan, placed, house, one, files[house.builder])


def _tight(plan: Plan, placed: Placed, house: House, one: Floating, file: str) -> Finding:
    shown = Telling(plan).fine
    less = hundredth_up(one.width - one.widths.most)
    dampest = f"{float(house.moistures.dampest):g} %"
    message = (
        f"in the house of {house.name} the wood comes to {dampest}, and "
        f"{called(placed.by_mark[one.marks[0]])} would push its frame apart"
    )
    return Finding(
        "panel-tight-at-builder",
        "doubt",
        Place((file,)),
        one.part,
        message,
        f"there it is cut {shown(less)} narrower",
        {"less": less},
    )


HOUSES: Working[tuple[House, ...]] = Working(
    "houses",
    "What would the panels do in another house?",
    look_at_houses,
    (FLOATING, MOVEMENT, CLIMATE, PLACED),
)
