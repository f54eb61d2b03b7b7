"""Hardware: what it is, the room and the holes it takes, where it sits."""

from __future__ import annotations

from benchalong.reading import language
from benchalong.reading.language import Kind
from benchalong.reading.shape import Entry
from benchalong.reading.written import HARDWARE_SIZES, Hardware, HardwareHole, Seat


def hardware(entry: Entry) -> Hardware:
    sizes = {key: entry.formula(key) for key in HARDWARE_SIZES}
    return Hardware(
        name=entry.text("name"),
        kind=entry.word("kind"),
        size=entry.text("size"),
        measured=entry.word("measured"),
        sizes={key: size for key, size in sizes.items() if size is not None},
        weight=entry.measure("weight", Kind.BURDEN),
        held_by=entry.name("held_by"),
        screws=entry.count("screws"),
        holes=entry.list_of("holes", hole, language.HARDWARE_HOLE),
        latches=entry.word("latches"),
        sits=entry.list_of("sits", seat, language.SEAT),
        count=entry.count("count"),
        on_hand=entry.count("on_hand"),
        price=entry.text("price"),
        note=entry.text("note"),
    )


def hole(entry: Entry) -> HardwareHole:
    return HardwareHole(
        diameter=entry.formula("diameter"),
        depth=entry.formula("depth"),
        along=entry.formula("along"),
        across=entry.formula("across"),
        screw=entry.name("screw"),
    )


def seat(entry: Entry) -> Seat:
    return Seat(
        on=entry.texts("on"),
        at=entry.formula("at"),
        across=entry.formula("across"),
        lies=entry.word("lies", "along"),
        only=entry.texts("only"),
    )
