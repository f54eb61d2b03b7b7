"""The pass that takes hardware as written: what it is, its sizes, and the holes it takes in the wood."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, cast

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.draft import Draft
from benchalong.plan.hardware.sizes import sizes_of_hardware
from benchalong.plan.price import price
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

NOTHING = Length(0)
MAY_BE_NOTHING = ("clearance", "pilot")
"""A nail needs neither."""


def take_hardware(draft: Draft) -> Draft:
    """Adds `hardware`, without its places and without what follows from them."""
    sums = Reckoning(draft)
    things = draft.written.hardware.items()
    return sums.done(hardware={name: _Taking(name, entry, sums).take() for name, entry in things})


class _Taking:
    def __init__(self, name: str, entry: written.Hardware, sums: Reckoning) -> None:
        self.name, self.entry, self.sums = name, entry, sums
        self.path: Path = (PROJECT_FILE, "hardware", name)

    def take(self) -> model.Hardware:
        entry = self.entry
        self._look_at_weight()
        return model.Hardware(
            self.name,
            entry.name or in_words(self.name),
            entry.size,
            entry.count,
            price(entry.price, (*self.path, "price"), self.sums),
            entry.note,
            kind=entry.kind,
            measured=cast(Literal["", "yes", "no"], entry.measured),
            sizes=tuple(self._sizes()),
            weight=entry.weight.kilograms if entry.weight else None,
            held_by=self._screw(entry.held_by, (*self.path, "held_by")),
            screws=entry.screws or len(entry.holes) * bool(entry.held_by),
            bores=tuple(self._bores()),
            latches=entry.latches,
            said=entry.count,
            on_hand=entry.on_hand or 0,
        )

    def _look_at_weight(self) -> None:
        weight = self.entry.weight
        if weight and (weight.per or not weight.kilograms):
            message = "what one weighs is a weight above zero, not one for each length"
            self.sums.say((*self.path, "weight"), message, "such as 40 g or 2 oz")

    def _sizes(self) -> Iterator[model.CutSize]:
        names = self.sums.draft.names
        for key, text in sizes_of_hardware(self.name, self.entry, self.sums.draft.written).items():
            known = names[f"{self.name}.{key}"]
            if known.value is None:
                continue
            length, path = known.value.value, (*self.path, key)
            if key in MAY_BE_NOTHING and length == 0:
                continue
            if self.sums.is_size_of_wood(length, text, path, f"the {key} of {self.name}"):
                yield model.CutSize(key, length, tuple(sorted(known.follows)))

    def _screw(self, name: str, path: Path) -> str:
        known = not name or self.sums.knows("hardware", name, path, among=self.sums.draft.written.hardware)
        return name if known else ""

    # its holes

    def _bores(self) -> Iterator[model.Bore]:
        if self.entry.holes:
            for index, hole in enumerate(self.entry.holes):
                yield from self._bore(hole, (*self.path, "holes", index))
        else:
            yield from self._in_a_row()

    def _in_a_row(self) -> Iterator[model.Bore]:
        """Its screws spread evenly along its middle, where all that takes is known."""
        count, length = self.entry.screws, self._size(self.name, "length")
        pilot, deep = (self._size(self.entry.held_by, key) for key in ("pilot", "length"))
        if not count or length is None or not pilot or deep is None:
            return
        for n in range(count):
            along = length * (2 * n + 1 - count) / (2 * count)
            yield model.Bore(pilot, deep, along, NOTHING, self.entry.held_by)

    def _bore(self, hole: written.HardwareHole, path: Path) -> Iterator[model.Bore]:
        screw = self._screw(hole.screw, (*path, "screw")) if hole.screw else self.entry.held_by
        diameter = self._hole_size(hole.diameter, (*path, "diameter"), self._size(screw, "pilot"))
        through = hole.depth == "through"
        depth = (
            None if through else self._hole_size(hole.depth, (*path, "depth"), self._size(screw, "length"))
        )
        along, across = (
            NOTHING if text is None else self.sums.length(text, (*path, key))
            for key, text in (("along", hole.along), ("across", hole.across))
        )
        if diameter and along is not None and across is not None and (through or depth):
            yield model.Bore(diameter, depth, along, across, screw)

    def _hole_size(self, text: str | None, path: Path, otherwise: Length | None) -> Length | None:
        """As written, else as its screw asks; says so where neither does."""
        key = str(path[-1])
        if text is not None:
            return self.sums.size_of_wood(text, path, f"the {key} of the hole")
        if otherwise is None and not self.sums.draft.is_lost(*path) and not self._is_silent():
            expected = "diameter: how wide" if key == "diameter" else "depth: how deep, or through"
            self.sums.say(path[:-1], f"this hole has no {key}, and no screw says it", expected)
        return otherwise

    def _is_silent(self) -> bool:
        """Whether its screw leads nowhere, which has been said."""
        return bool(self.entry.held_by) and self.entry.held_by not in self.sums.draft.written.hardware

    def _size(self, name: str, key: str) -> Length | None:
        """Of this or another piece of hardware; None where it isn't said or can't be worked out."""
        known = self.sums.draft.names.get(f"{name}.{key}")
        return known.value.value if known and known.value else None
