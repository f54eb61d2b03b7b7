"""Stock: what parts are made from. A thickness that was measured wins over the one it is called by."""

from __future__ import annotations

from typing import Literal, cast

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.draft import Draft
from benchalong.plan.price import price
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.sawing import allowance
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE


def take_stock(draft: Draft) -> Draft:
    """Adds `stock`."""
    sums = Reckoning(draft)
    return sums.done(stock={name: _stock(name, stock, sums) for name, stock in draft.written.stock.items()})


def _stock(name: str, stock: written.Stock, sums: Reckoning) -> model.Stock:
    path: Path = (PROJECT_FILE, "stock", name)
    thickness = _thickness(name, stock, path, sums)
    called = thickness
    if stock.measured is not None and stock.thickness is not None:
        called = sums.size_of_wood(stock.thickness, (*path, "thickness"), "the thickness")
    sheet = _sheet(stock, path, sums)
    return model.Stock(
        name,
        cast(Literal["board", "sheet", "turned", "bought"], stock.kind),
        stock.name or in_words(name),
        species=stock.species,
        sawn=stock.sawn,
        buy=stock.buy,
        thickness=thickness,
        nominal=None if called == thickness else called,
        sheet=sheet,
        grain_along=_grain(stock, sheet, path, sums),
        price=price(stock.price, (*path, "price"), sums),
        grade=stock.grade,
        waste=None if stock.waste is None else stock.waste / 100,
        sold_in=_sold_in(stock, path, sums),
        board_width=None
        if stock.board_width is None
        else sums.size_of_wood(stock.board_width, (*path, "board_width"), "the width of its boards"),
        moisture=stock.moisture,
        is_restless=stock.restless in ("yes", "true"),
        allowance=allowance(stock.allowances, (*path, "allowances"), sums),
        note=stock.note,
    )


def _thickness(name: str, stock: written.Stock, path: Path, sums: Reckoning) -> Length | None:
    key, text = ("thickness", stock.thickness) if stock.measured is None else ("measured", stock.measured)
    value = sums.draft.names[f"{name}.thickness"].value
    if value is None or text is None:
        return None
    what = "the thickness" if key == "thickness" else "the measured thickness"
    return value.value if sums.is_size_of_wood(value.value, text, (*path, key), what) else None


def _sheet(stock: written.Stock, path: Path, sums: Reckoning) -> tuple[Length, Length] | None:
    if stock.sheet is None:
        return None
    sides = [sums.size_of_wood(side, (*path, "sheet"), "a side of the sheet") for side in stock.sheet]
    return None if sides[0] is None or sides[1] is None else (sides[0], sides[1])


def _sold_in(stock: written.Stock, path: Path, sums: Reckoning) -> tuple[Length, ...]:
    found = [
        sums.size_of_wood(text, (*path, "sold_in", index), "a length it is sold in")
        for index, text in enumerate(stock.sold_in)
    ]
    return tuple(sorted(length for length in found if length is not None))


def _grain(
    stock: written.Stock, sheet: tuple[Length, Length] | None, path: Path, sums: Reckoning
) -> Length | None:
    """The side the face grain runs along: the one named, else the longer."""
    word, _, side = stock.grain.partition(" ")
    if sheet is None or stock.grain == "none":
        return None
    if not stock.grain:
        return max(sheet)
    if word != "along":
        sums.say(
            (*path, "grain"), f"the grain can't run {stock.grain}", "along and a side of the sheet, or none"
        )
        return None
    length = sums.length(side, (*path, "grain"))
    if length is not None and length not in sheet:
        sides = " or ".join(f"along {sums.shown(each)}" for each in sheet)
        sums.say((*path, "grain"), f"the sheet has no side of {sums.shown(length)}", sides)
        return None
    return length


def in_words(name: str) -> str:
    """An id as words: `door_rail` is `Door rail`."""
    words = name.replace("_", " ")
    return words[:1].upper() + words[1:]
