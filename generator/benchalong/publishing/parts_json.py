"""Stock, parts, their cuts and the cut list as plain data, for `plan.json`."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.plan.model import Cut, CutSize, Fitted, Part, Plan, Shape, Stock
from benchalong.publishing.plain import Json, Plain, maybe_number
from benchalong.publishing.rough_json import allowance_json, price_json, strips_json
from benchalong.publishing.steps_json import job_json
from benchalong.workings.cut_list import CutList


def stock_json(stock: Stock, plain: Plain) -> Json:
    length = plain.maybe
    return {
        "id": stock.id,
        "kind": stock.kind,
        "name": stock.name,
        "species": stock.species,
        "sawn": stock.sawn,
        "buy": stock.buy,
        "thickness": length(stock.thickness),
        "nominal": length(stock.nominal),
        "sheet": plain.lengths(stock.sheet) if stock.sheet else None,
        "grain_along": length(stock.grain_along),
        "price": price_json(stock.price),
        "grade": stock.grade,
        "waste": maybe_number(stock.waste),
        "sold_in": plain.lengths(stock.sold_in),
        "board_width": length(stock.board_width),
        "moisture": maybe_number(stock.moisture),
        "is_restless": stock.is_restless,
        "allowance": allowance_json(stock.allowance, plain),
        "note": stock.note,
    }


def part_json(part: Part, plain: Plain) -> Json:
    return {
        "id": part.id,
        "name": part.name,
        "stock": part.stock,
        "thickness": plain.length(part.thickness),
        "width": plain.length(part.width),
        "length": plain.length(part.length),
        "count": part.count,
        "marks": list(part.marks),
        "cuts": [cut_json(cut, plain) for cut in part.cuts],
        "glued_up": part.glued_up,
        "strips": strips_json(part.strips, plain),
        "resaw": part.resaw,
        "rough_with": part.rough_with,
        "for": part.purpose,
        "face": part.shows,
        "note": part.note,
        "follows": {name: list(sizes) for name, sizes in part.follows.items()},
    }


def fitted_json(name: str, fitted: Fitted, plan: Plan, plain: Plain) -> Json:
    """A part or assembly that gets its final size at the bench; of a part, what it is cut to first."""
    part = plan.parts.get(name)
    first = part and fitted.first_size(part)
    return {
        "name": name,
        "measured": list(fitted.measured),
        "after": job_json(fitted.after) if fitted.after else None,
        "wider": plain.maybe(fitted.wider),
        "longer": plain.maybe(fitted.longer),
        "until": "" if fitted.until_job else fitted.until,
        "until_job": job_json(fitted.until_job) if fitted.until_job else None,
        "first_width": plain.maybe(first[1] if first else None),
        "first_length": plain.maybe(first[0] if first else None),
        "follows": list(fitted.follows),
    }


def cut_json(cut: Cut, plain: Plain) -> Json:
    return {
        "cut": cut.kind,
        "name": cut.name,
        "on": list(cut.surfaces),
        "where": cut.where,
        "sizes": sizes_json(cut.sizes, plain),
        "follows": list(cut.follows),
        "note": cut.note,
        "joint": cut.joint,
        "hardware": cut.hardware,
    }


def sizes_json(sizes: Iterable[CutSize], plain: Plain) -> list[Json]:
    return [
        {"name": size.name, "length": plain.length(size.length), "follows": list(size.sizes)}
        for size in sizes
    ]


def shape_json(shape: Shape, plain: Plain) -> Json:
    return {
        "id": shape.id,
        "part": shape.part,
        "hand": shape.hand,
        "cuts": [cut_json(cut, plain) for cut in shape.cuts],
        "marks": list(shape.marks),
        "turned": sorted(shape.turned),
    }


def cut_list_json(cut_list: CutList, plain: Plain) -> list[Json]:
    return [
        {
            "stock": group.stock,
            "thickness": plain.length(group.thickness),
            "rows": [
                {
                    "part": row.part,
                    "count": row.count,
                    "spares": row.spares,
                    "marks": list(row.marks),
                    "thickness": plain.length(row.thickness),
                    "width": plain.length(row.width),
                    "length": plain.length(row.length),
                    "shoulder_length": plain.maybe(row.shoulder_length),
                }
                for row in group.rows
            ],
        }
        for group in cut_list.groups
    ]
