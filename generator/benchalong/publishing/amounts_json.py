"""Weights, amounts and loads as plain data, for `plan.json`."""

from __future__ import annotations

from benchalong.plan.model import PartId
from benchalong.publishing.plain import Json, Plain, maybe_number
from benchalong.publishing.wood_json import glue_json
from benchalong.workings.amounts import AMOUNTS
from benchalong.workings.glue import GLUE
from benchalong.workings.sag import Sag
from benchalong.workings.weights import WEIGHTS
from benchalong.workings.working import Worked


def amounts_json(worked: Worked) -> Json:
    weights, amounts = worked[WEIGHTS](), worked[AMOUNTS]()
    return {
        "weights": {
            "parts": [{"part": part, "kilograms": float(kg)} for part, kg in weights.parts.items()],
            "assemblies": [
                {"assembly": assembly, "kilograms": float(kg)} for assembly, kg in weights.assemblies.items()
            ],
            "piece": maybe_number(weights.piece),
            "unknown": list(weights.unknown),
            "more_than_one_lifts": weights.is_for_two,
        },
        "glue": glue_json(worked[GLUE]()),
        "surface_square_metres": float(amounts.surface / 1_000_000),
        "finish": [
            {"finish": name, "coats": each.coats, "litres": float(each.litres)}
            for name, each in amounts.finish.items()
        ],
    }


def load_json(part: PartId, sag: Sag, plain: Plain) -> Json:
    load, length = sag.load, plain.length
    return {
        "part": part,
        "kilograms": float(load.kilograms),
        "per": plain.maybe(load.per),
        "at": load.at,
        "ends": load.ends,
        "on_edge": sag.is_on_edge,
        "span": length(sag.span),
        "sag": length(sag.at_once),
        "sag_after_years": length(sag.after_years),
        "limit": length(sag.most),
        "longest_span": length(sag.longest),
    }
