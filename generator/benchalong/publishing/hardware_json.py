"""Hardware, jigs and finish as plain data, for `plan.json`."""

from __future__ import annotations

from benchalong.plan.model import Finish, Hardware, Jig, Seated
from benchalong.publishing.parts_json import sizes_json
from benchalong.publishing.plain import Json, Plain, maybe_number
from benchalong.publishing.rough_json import price_json


def hardware_json(thing: Hardware, plain: Plain) -> Json:
    length = plain.length
    return {
        "id": thing.id,
        "name": thing.name,
        "kind": thing.kind,
        "size": thing.size,
        "measured": thing.measured,
        "sizes": sizes_json(thing.sizes, plain),
        "weight": maybe_number(thing.weight),
        "held_by": thing.held_by,
        "screws": thing.screws,
        "bores": [
            {
                "diameter": length(bore.diameter),
                "depth": plain.maybe(bore.depth),
                "along": length(bore.along),
                "across": length(bore.across),
                "screw": bore.screw,
            }
            for bore in thing.bores
        ],
        "latches": thing.latches,
        "seated": [_seated(seated, plain) for seated in thing.seated],
        "count": thing.count,
        "said": thing.said,
        "needed": thing.needed,
        "on_hand": thing.on_hand,
        "price": price_json(thing.price),
        "note": thing.note,
    }


def _seated(seated: Seated, plain: Plain) -> Json:
    room = seated.room
    return {
        "mark": seated.mark,
        "part": seated.part,
        "side": seated.side,
        "looks": list(seated.looks),
        "middle": plain.lengths(seated.middle),
        "room": None if room is None else [plain.lengths(corner) for corner in room],
        "is_round": seated.is_round,
        "follows": list(seated.follows),
    }


def jig_json(jig: Jig, plain: Plain) -> Json:
    note = plain.prose(jig.note)
    return {"id": jig.id, "name": jig.name, "for": jig.purpose, "made_from": jig.made_from, "note": note}


def finish_json(finish: Finish) -> Json:
    return {
        "id": finish.id,
        "what": finish.what,
        "coats": finish.coats,
        "wait": finish.wait,
        "on": list(finish.on),
        "faces": finish.faces,
        "bare": finish.bare,
        "note": finish.note,
    }
