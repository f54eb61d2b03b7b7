"""The wood: species an author knows better, the air of shop and house, and what parts carry."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal, cast

from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.amounts import Rates
from benchalong.trade.species import Species, Value, Woods, woods

STEEPEST = Fraction(1, 50)
"""A limit on the sag beyond this share of the span is no limit."""


def take_wood(draft: Draft) -> Draft:
    """Adds `woods`, `shop_air`, `house`, `rates` and `loads`."""
    sums = Reckoning(draft)
    project = draft.written
    loads = {name: _load(name, part.load, sums) for name, part in project.parts.items() if part.load}
    return sums.done(
        woods=woods_of(project),
        shop_air=air_in(project.shop.air, (PROJECT_FILE,), "shop", sums),
        house=air_in(project.house, (PROJECT_FILE,), "house", sums),
        rates=_rates(project.rates, sums),
        loads={name: load for name, load in loads.items() if load is not None},
    )


def woods_of(project: written.Project) -> Woods:
    """The trade's table with the author's own over it."""
    return woods().with_own(_species(name, wood) for name, wood in project.species.items())


def _species(name: str, wood: written.Wood) -> Species:
    def value(amount: Fraction | None) -> Value | None:
        return None if amount is None else Value(amount, "stated", wood.source)

    called = wood.name or in_words(name)
    return Species(
        name=called,
        also=(in_words(name), *wood.also),
        radial=value(wood.radial),
        tangential=value(wood.tangential),
        volumetric=value(wood.volumetric),
        c_radial=value(wood.moves_radial),
        c_tangential=value(wood.moves_tangential),
        gravity_12=value(wood.gravity),
        stiffness=value(wood.stiffness),
        note=wood.note,
    )


NO_AIR = model.Air()


def air_in(air: written.Air, file: Path, section: str, sums: Reckoning) -> model.Air:
    """Shares that no air and no wood can have are problems; what only the equations can't follow is not."""
    path: Path = (*file, section)
    if air.humidity and air.humidity[1] > 100:
        sums.say((*path, "humidity"), "air can't be damper than 100 %", "a relative humidity: 45 %")
    if air.moisture and air.moisture[1] > 100:
        key = "made_at" if section == "shop" else "moisture"
        sums.say((*path, key), "a moisture content over 100 % is wood fresh from the log", "such as 8 %")
    return air_of(air)


def air_of(air: written.Air) -> model.Air:
    return model.Air(air.climate, air.humidity, air.moisture, air.celsius)


def _rates(rates: written.Rates, sums: Reckoning) -> Rates:
    path, usual = (PROJECT_FILE, "rates"), Rates()
    if rates.finish == 0:
        sums.say((*path, "finish"), "a litre that covers nothing never gets there", "square metres: 8.5")
    if rates.lift and rates.lift.per:
        sums.say(
            (*path, "lift"), "what one person lifts is a weight, not one for each length", "such as 25 kg"
        )
    every = None
    if rates.clamp_every is not None:
        every = sums.size_of_wood(rates.clamp_every, (*path, "clamp_every"), "the way between two clamps")
    return Rates(
        glue=usual.glue if rates.glue is None else rates.glue,
        squeezed_out=usual.squeezed_out if rates.squeezed_out is None else rates.squeezed_out / 100,
        clamp_spacing=every or usual.clamps_every(sums.draft.written.units),
        finish=rates.finish or usual.finish,
        finish_wasted=usual.finish_wasted if rates.wasted is None else rates.wasted / 100,
        lift=rates.lift.kilograms if rates.lift else usual.lift,
    )


def _load(name: str, load: written.Load, sums: Reckoning) -> model.Load | None:
    path: Path = (PROJECT_FILE, "parts", name, "load")
    span = None if load.span is None else sums.size_of_wood(load.span, (*path, "span"), "the span")
    limit = _limit(load.limit, (*path, "limit"), sums)
    if load.burden is None:
        return None
    if load.burden.kilograms == 0:
        sums.say((*path, "is"), "a load of nothing bends nothing", "a weight above zero: 20 kg")
        return None
    follows = () if load.span is None else sums.follows(load.span)
    return model.Load(
        load.burden.kilograms,
        load.burden.per,
        cast(Literal["spread", "middle"], load.at),
        cast(Literal["resting", "fixed"], load.ends),
        span,
        limit,
        follows,
    )


def _limit(text: str | None, path: Path, sums: Reckoning) -> Fraction | None:
    quantity = None if text is None else sums.quantity(text, path)
    if quantity is None:
        return None
    if quantity.dimension == 0 and 0 < quantity.value <= STEEPEST:
        return quantity.value
    sums.say(path, "a limit is a small share of the span", "such as 1/600, and at most 1/50")
    return None
