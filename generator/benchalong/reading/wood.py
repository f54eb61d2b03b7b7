"""Of the wood: species, the air of shop and house, what a part carries."""

from __future__ import annotations

from fractions import Fraction

from benchalong.reading.language import Kind
from benchalong.reading.shape import Entry
from benchalong.reading.written import Air, Load, Rates, Wood


def species(entry: Entry) -> Wood:
    def number(key: str) -> Fraction | None:
        found: Fraction | None = entry.measure(key, Kind.NUMBER)
        return found

    return Wood(
        name=entry.text("name"),
        also=entry.texts("also"),
        radial=number("radial"),
        tangential=number("tangential"),
        volumetric=number("volumetric"),
        moves_radial=number("moves_radial"),
        moves_tangential=number("moves_tangential"),
        gravity=number("gravity"),
        stiffness=number("stiffness"),
        source=entry.text("source"),
        note=entry.text("note"),
    )


def shop_air(entry: Entry) -> Air:
    """One humidity or moisture stands for both ends of a range."""
    humidity, moisture = entry.measure("humidity", Kind.PERCENT), entry.measure("made_at", Kind.PERCENT)
    return Air(
        humidity=None if humidity is None else (humidity, humidity),
        moisture=None if moisture is None else (moisture, moisture),
        celsius=entry.measure("temperature", Kind.TEMPERATURE),
    )


def house(entry: Entry) -> Air:
    """Where more than one is said, the plan takes what was measured nearest to the wood."""
    return Air(
        climate=entry.word("climate"),
        humidity=entry.measure("humidity", Kind.PERCENTS),
        moisture=entry.measure("moisture", Kind.PERCENTS),
        celsius=entry.measure("temperature", Kind.TEMPERATURE),
    )


def rates(entry: Entry) -> Rates:
    return Rates(
        finish=entry.measure("finish", Kind.NUMBER),
        wasted=entry.measure("wasted", Kind.PERCENT),
        glue=entry.measure("glue", Kind.NUMBER),
        squeezed_out=entry.measure("squeezed_out", Kind.PERCENT),
        clamp_every=entry.formula("clamp_every"),
        lift=entry.measure("lift", Kind.BURDEN),
    )


def load(entry: Entry) -> Load:
    return Load(
        burden=entry.measure("is", Kind.BURDEN),
        at=entry.word("at", "spread"),
        ends=entry.word("ends", "resting"),
        span=entry.formula("span"),
        limit=entry.formula("limit"),
    )
