"""Builders' editions: looked over, so that a slip in one is said at once, and the air of their shop and house
taken in."""

from __future__ import annotations

import re
from fractions import Fraction

from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.boards import board_of
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.wood import NO_AIR, air_in
from benchalong.reading import written

SHARE = re.compile(r"(\d+(?:\.\d+)?) ?%(?: to (\d+(?:\.\d+)?) ?%)?([^,;%]*)")
"""`45 % in the shop`: one share of humidity or two, and the words after them."""
DAMPEST = Fraction(100)


def look_over_builders(draft: Draft) -> Draft:
    """Adds `builder_airs`, and problems."""
    sums = Reckoning(draft)
    for builder in draft.written.builders:
        _sizes(builder, sums)
        _stock(builder, sums)
        for index, board in enumerate(builder.boards):
            board_of(board, (builder.file, "boards", index), sums)
    airs = (_air(builder, sums) for builder in draft.written.builders)
    return sums.done(builder_airs=tuple(air for air in airs if air.shop != NO_AIR or air.house != NO_AIR))


def _air(builder: written.Builder, sums: Reckoning) -> model.BuilderAir:
    """What they say under `house:` goes before what they write under `humidity:` in words. Of a share that
    isn't said to be the shop's, the house is meant."""
    shop, house = NO_AIR, air_in(builder.house, (builder.file,), "house", sums)
    for low, high, where in SHARE.findall(builder.humidity):
        humidity = (Fraction(low), Fraction(high or low))
        if max(humidity) <= DAMPEST and "shop" in where and shop == NO_AIR:
            shop = model.Air(humidity=humidity)
        elif max(humidity) <= DAMPEST and "shop" not in where and house == NO_AIR:
            house = model.Air(humidity=(min(humidity), max(humidity)))
    return model.BuilderAir(builder.handle, builder.name or builder.handle, builder.file, shop, house)


def _sizes(builder: written.Builder, sums: Reckoning) -> None:
    project = sums.draft.written
    for name, formula in builder.sizes.items():
        path: Path = (builder.file, "sizes", name)
        sums.knows("sizes", name, path, among=project.sizes, on="key")
        sums.length(formula, path)
    for name, formula in builder.measured.items():
        path = (builder.file, "measured", name)
        if "." in name:
            sums.knows_dotted(name, path)
        else:
            sums.knows("sizes", name, path, among=project.sizes, on="key")
        sums.length(formula, path)


def _stock(builder: written.Builder, sums: Reckoning) -> None:
    project = sums.draft.written
    for part, stock in builder.stock.items():
        path: Path = (builder.file, "stock", part)
        sums.knows("parts", part, path, among=project.parts, on="key")
        sums.knows("stock", stock, path, among=project.stock)
