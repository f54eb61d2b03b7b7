"""What is known of each wood: how it shrinks, how heavy and how stiff it is, and how well that is known.

The values stand in `species.csv`, each beside its standing and its source. What isn't there is None: a
value is never guessed from a similar wood.
"""

from __future__ import annotations

import csv
import re
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from importlib import resources
from typing import Literal, TypeAlias

from benchalong.ground.words import nearest_words

Standing: TypeAlias = Literal["seen", "memory", "group value", "stated"]
"""Seen in a table or a page; from memory; a group's or another wood's value printed for this one; stated by
the author of the project."""

SAID: Mapping[Standing, str] = {
    "seen": "seen in a table",
    "memory": "from memory, not checked against its table",
    "group value": "a value of its group or of another wood, as printed",
    "stated": "stated by the author of this plan",
}
GPA_PER_MPSI = Fraction("6.894757")
"""One million pounds-force per square inch, in gigapascal (NIST SP 811, appendix B.8)."""


@dataclass(frozen=True)
class Value:
    """One number from a table, with where it stands."""

    amount: Fraction
    standing: Standing
    source: str = ""


CONIFERS = frozenset((
    "Abies", "Callitropsis", "Calocedrus", "Chamaecyparis", "Cupressus", "Juniperus", "Larix", "Picea",
    "Pinus", "Pseudotsuga", "Sequoia", "Sequoiadendron", "Taxodium", "Taxus", "Thuja", "Tsuga",
))  # fmt: skip
"""Genera whose wood is called softwood, however hard it is."""


@dataclass(frozen=True)
class Species:
    name: str
    also: tuple[str, ...] = ()
    latin: str = ""
    radial: Value | None = None
    """Shrinkage from green to ovendry across the rings, in percent of the green size."""
    tangential: Value | None = None
    """The same along the rings."""
    volumetric: Value | None = None
    """The same of the volume."""
    c_radial: Value | None = None
    """Change per size and percent of moisture across the rings, for 6 to 14 percent."""
    c_tangential: Value | None = None
    """The same along the rings."""
    c_of: str = ""
    """Whose coefficients these are when they do not follow from the wood's own shrinkage."""
    starts_at: Fraction = Fraction(30)
    """The moisture content in percent below which it shrinks, as the Handbook's coefficients take it."""
    gravity_12: Value | None = None
    """Specific gravity: ovendry mass over the volume at 12 percent moisture."""
    gravity_green: Value | None = None
    """The same over the green volume."""
    stiffness: Value | None = None
    """Modulus of elasticity in bending at 12 percent moisture, in GPa."""
    note: str = ""

    @property
    def is_softwood(self) -> bool:
        return self.latin.partition(" ")[0] in CONIFERS


@dataclass(frozen=True)
class Woods:
    """Every wood known: the table's, with an author's own over them."""

    by_name: Mapping[str, Species]

    def find(self, name: str) -> Species | None:
        """The wood of that name or synonym; None when there is none, or when several go by it."""
        found = self.called(name)
        return found[0] if len(found) == 1 else None

    def called(self, name: str) -> tuple[Species, ...]:
        """Every wood that goes by a name: several for `oak`, none for an unknown one."""
        return _index(tuple(self.by_name.values())).get(plain(name), ())

    def nearest(self, name: str) -> tuple[str, ...]:
        """Names likely meant: those that share the name, then those spelt much the same."""
        shared = tuple(species.name for species in self.called(name))
        if shared:
            return shared
        index = _index(tuple(self.by_name.values()))
        near = nearest_words(plain(name), index)
        return tuple(dict.fromkeys(species.name for word in near for species in index[word]))

    def with_own(self, own: Iterable[Species]) -> Woods:
        """The same with an author's woods over them: a value they give replaces the table's."""
        woods = dict(self.by_name)
        for species in own:
            known = self.find(species.name)
            if known is None:
                woods[species.name] = species
            else:
                woods[known.name] = _over(known, species)
        return Woods(woods)


def plain(name: str) -> str:
    """A name as it is looked up: `Cherry, black` and `black-cherry` are one."""
    words = re.sub(r"\s*\(.*?\)", "", name.lower()).replace("-", " ").replace("_", " ")
    first, comma, rest = words.partition(",")
    return " ".join(f"{rest} {first}".split() if comma else words.split())


@cache
def woods() -> Woods:
    """The package's own table, read once."""
    text = resources.files("benchalong.trade").joinpath("species.csv").read_text(encoding="utf-8")
    return Woods({species.name: species for species in map(_species, csv.DictReader(text.splitlines()))})


def _species(row: Mapping[str, str]) -> Species:
    shrinkage, mechanical = row["shrinkage_source"], row["mechanical_source"]
    gravity, stiffness = row["g_standing"], _value(row["e_mpsi"], row["e_standing"], mechanical)
    return Species(
        name=row["name"],
        also=tuple(filter(None, row["also"].split(";"))),
        latin=row["latin"],
        radial=_value(row["radial"], row["shrinkage_standing"], shrinkage),
        tangential=_value(row["tangential"], row["shrinkage_standing"], shrinkage),
        volumetric=_value(row["volumetric"], row["shrinkage_standing"], shrinkage),
        c_radial=_coefficient(row, "c_radial"),
        c_tangential=_coefficient(row, "c_tangential"),
        c_of="" if row["c_of"] == "rounding" else row["c_of"],
        starts_at=Fraction(row["starts_at"]),
        gravity_12=_value(row["g_12"], gravity, mechanical),
        gravity_green=_value(row["g_green"], gravity, mechanical),
        stiffness=stiffness and replace(stiffness, amount=stiffness.amount * GPA_PER_MPSI),
        note=row["note"],
    )


def _coefficient(row: Mapping[str, str], key: str) -> Value | None:
    """Seen, but another wood's: that is a group value."""
    standing = row[f"{key}_standing"]
    borrowed = standing == "seen" and row["c_of"] not in ("", "rounding")
    return _value(row[key], "group value" if borrowed else standing, row["c_source"])


def _value(text: str, standing: str, source: str) -> Value | None:
    if not text:
        return None
    known = next(one for one in SAID if one == standing)
    return Value(Fraction(text), known, source)


@cache
def _index(known: tuple[Species, ...]) -> Mapping[str, tuple[Species, ...]]:
    """Names first: a synonym never stands in the way of a wood's own name."""
    own = {plain(species.name): (species,) for species in known}
    shared: defaultdict[str, list[Species]] = defaultdict(list)
    for species in known:
        for name in species.also:
            shared[plain(name)].append(species)
    return {name: tuple(found) for name, found in shared.items()} | own


_VALUES = ("radial", "tangential", "volumetric", "c_radial", "c_tangential", "gravity_12", "stiffness")


def _over(known: Species, own: Species) -> Species:
    """The author's values where they give one. Shrinkage of their own does away with printed coefficients,
    which would no longer follow from it."""
    given = {key: getattr(own, key) for key in _VALUES if getattr(own, key) is not None}
    if own.radial or own.tangential:
        given = {"c_radial": None, "c_tangential": None, "c_of": ""} | given
    if own.c_radial or own.c_tangential:
        given["c_of"] = ""
    return replace(known, **given, note=own.note or known.note)
