"""How the wood moves, as plain data: the part of `plan.json` that `movement` holds."""

from __future__ import annotations

from benchalong.ground.lengths import Length, to_nearest
from benchalong.publishing.plain import Json, Plain
from benchalong.workings.across import ACROSS
from benchalong.workings.across import Across as Held
from benchalong.workings.climate import CLIMATE, Climate
from benchalong.workings.floating import FLOATING, Floating
from benchalong.workings.gaps import GAPS, Gap
from benchalong.workings.glue import Glue
from benchalong.workings.houses import HOUSES, House
from benchalong.workings.movement import MOVEMENT, Across, Moves
from benchalong.workings.working import Worked

CENT = Length(1, 100)
"""Mm: the tables behind these lengths carry no more."""


def movement_json(worked: Worked, plain: Plain) -> Json:
    says, movement = _Says(plain), worked[MOVEMENT]
    return {
        "climate": _climate(worked[CLIMATE]),
        "parts": [says.over_the_year(moves) for moves in movement.parts.values()],
        "panels": [says.panel(one) for one in worked[FLOATING]],
        "held_across": [says.held(one) for one in worked[ACROSS]],
        "gaps": [says.gap(one) for one in worked[GAPS]],
        "houses": [says.house(house) for house in worked[HOUSES]],
        "still": list(movement.still),
        "unknown": list(movement.unknown),
    }


def glue_json(glue: Glue) -> Json:
    return {
        "grams": float(glue.grams),
        "joints": [
            {
                "joint": each.joint,
                "square_centimetres": float(each.area / 100),
                "grams": float(each.grams),
                "clamps": each.clamps,
                "assemblies": each.assemblies,
            }
            for each in glue.joints.values()
        ],
        "not_counted": list(glue.not_counted),
    }


def _climate(climate: Climate) -> Json:
    assumed = {"shop": climate.is_shop_assumed, "house": climate.is_house_assumed}
    return {
        "made_at": float(climate.made_at),
        "driest": float(climate.driest),
        "dampest": float(climate.dampest),
        "shop": climate.shop,
        "house": climate.house,
        "assumed": [name for name, is_assumed in assumed.items() if is_assumed],
    }


class _Says:
    def __init__(self, plain: Plain) -> None:
        self.plain = plain

    def cent(self, length: Length) -> Json:
        return self.plain.length(to_nearest(length, CENT))

    def over_the_year(self, moves: Moves) -> Json:
        return {
            "part": moves.part,
            "species": moves.species.name,
            "sawn": moves.sawn,
            "sawn_assumed": moves.is_sawn_assumed,
            "width": self.across(moves.width),
            "thickness": self.across(moves.thickness),
            "quarter_sawn_width": self.across(moves.as_quarter),
            "along_at_most": self.plain.length(moves.along),
            "equation": moves.by,
            "standing": moves.standing,
        }

    def across(self, across: Across) -> Json:
        return {name: self.plain.length(getattr(across, name)) for name in ("made", "driest", "dampest")}

    def panel(self, one: Floating) -> Json:
        return {
            "joint": one.joint,
            "part": one.part,
            "copies": list(one.marks),
            "width": self.plain.length(one.width),
            "sight": self.plain.length(one.frame.sight),
            "opening": self.plain.length(one.frame.opening),
            "room_at_dampest": self.cent(one.room.at_dampest),
            "held_at_driest": self.cent(one.held),
            "held_if_fixed_in_the_middle": self.cent(one.pinned.held_at_driest),
            "to_hold": self.plain.length(one.hold),
            "cut_today": {"least": self.cent(one.widths.least), "most": self.cent(one.widths.most)},
        }

    def house(self, house: House) -> Json:
        year = house.moistures
        return {
            "said": house.said,
            "builder": house.builder,
            "made_at": float(year.made_at),
            "driest": float(year.driest),
            "dampest": float(year.dampest),
            "panels": [
                {
                    "joint": one.joint,
                    "part": one.part,
                    "copies": list(one.marks),
                    "room_at_dampest": self.cent(one.room.at_dampest),
                    "held_at_driest": self.cent(one.held),
                }
                for one in house.panels
            ],
        }

    def held(self, one: Held) -> Json:
        return {
            "joint": one.joint,
            "copy": one.mover,
            "other": one.other,
            "over": self.plain.length(one.over),
            "moves": self.plain.length(one.moves),
            "each_way": self.plain.length(one.each_way),
            "fast": one.is_held,
            "mixed_wood": one.is_mixed,
        }

    def gap(self, one: Gap) -> Json:
        return {
            "joint": one.joint,
            "goes": one.goes,
            "beside": one.beside,
            "way": list(one.way),
            "gap": self.plain.length(one.made),
            "swells": self.plain.length(one.grows),
            "left": self.plain.length(one.at_dampest),
        }
