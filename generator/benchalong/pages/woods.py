"""What is known of each wood in the piece, where the numbers come from, and what is missing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from benchalong.pages.makings import Makings
from benchalong.pages.wood import capital
from benchalong.trade.species import SAID, Species, Value
from benchalong.workings.woods import WOODS, is_solid

WHAT: tuple[tuple[str, tuple[str, ...], str], ...] = (
    ("Movement", ("c_tangential", "c_radial", "tangential", "radial"), "how it moves"),
    ("Weight", ("gravity_12", "gravity_green"), "what it weighs"),
    ("Stiffness", ("stiffness",), "how far it sags"),
)
"""What is worked out, the values it is worked out from, and what can't be said without them."""


@dataclass(frozen=True)
class WoodKnown:
    stock: str
    species: str
    """Empty where the stock names none, or none that is known."""
    typed: str
    """What the stock says."""
    known: tuple[tuple[str, str], ...]
    """What it is, and where its numbers come from."""
    missing: tuple[str, ...]
    """What can't be said: `how far it sags`."""
    note: str


def woods_known(makings: Makings) -> tuple[WoodKnown, ...]:
    return tuple(_each(makings))


def _each(makings: Makings) -> Iterator[WoodKnown]:
    solid = makings.worked[WOODS].solid
    used = {part.stock for part in makings.plan.parts.values()}
    for stock in makings.plan.stock.values():
        if is_solid(stock) and stock.id in used:
            species = solid.get(stock.id)
            yield WoodKnown(
                stock.name,
                capital(species.name) if species else "",
                stock.species,
                tuple(_known(species)) if species else (),
                tuple(_missing(species)),
                species.note if species else "",
            )


def _values(species: Species, keys: tuple[str, ...]) -> list[Value]:
    return [value for key in keys if (value := getattr(species, key)) is not None]


def _known(species: Species) -> Iterator[tuple[str, str]]:
    for what, keys, _ in WHAT:
        said = dict.fromkeys(_said(value) for value in _values(species, keys))
        if said:
            yield what, capital("; ".join(said))


def _said(value: Value) -> str:
    return f"{SAID[value.standing]}: {value.source}" if value.source else SAID[value.standing]


def _missing(species: Species | None) -> Iterator[str]:
    for what, keys, unsaid in WHAT:
        if species is None or not (_moves(species) if what == "Movement" else _values(species, keys)):
            yield unsaid


def _moves(species: Species) -> bool:
    """Whether both ways across the grain are known."""
    return bool((species.c_radial or species.radial) and (species.c_tangential or species.tangential))
