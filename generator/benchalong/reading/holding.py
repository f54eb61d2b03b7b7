"""How the piece is held: hung on a wall, or standing on the floor."""

from __future__ import annotations

from benchalong.reading.language import Kind
from benchalong.reading.shape import Entry
from benchalong.reading.written import Hanging, Standing


def hanging(entry: Entry) -> Hanging:
    return Hanging(
        rail=entry.name("rail"),
        way=entry.word("way", "rail"),
        fixings=entry.name("fixings"),
        into=entry.word("into", "studs"),
        each_holds=entry.measure("each_holds", Kind.BURDEN),
        studs=entry.formula("studs"),
        behind=entry.formula("behind"),
        load=entry.measure("load", Kind.BURDEN),
        note=entry.text("note"),
    )


def standing(entry: Entry) -> Standing:
    return Standing(
        carries=entry.measure("carries", Kind.BURDEN),
        on=entry.names("on"),
        restrained=entry.word("restrained", "no"),
        pull=entry.measure("pull", Kind.BURDEN),
        note=entry.text("note"),
    )
