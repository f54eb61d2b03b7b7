"""What an author wants fitted: which sizes, to which joint or between whom, and whether that makes sense."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from benchalong.ground.marks import Path, Place
from benchalong.ground.words import nearest_words
from benchalong.plan.draft import Draft
from benchalong.plan.joints.named import part_called
from benchalong.plan.joints.openings import GOES_IN, RABBET
from benchalong.plan.names import BETWEEN, THICK_IN
from benchalong.plan.play import FITS
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.turns import WAYS
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

KEYS = ("width", "length")


@dataclass(frozen=True)
class Wanted:
    """A size that says which joint it fits, or between whom it is measured."""

    part: str
    key: str
    joint: str
    """None is empty."""
    at: Place
    between: tuple[str, ...] = ()
    """A part, or the two that it stands between."""

    @property
    def name(self) -> str:
        return f"{self.part}.{self.key}"


@dataclass(frozen=True)
class Spot:
    """One place where a fitted part stands."""

    assembly: str
    index: int
    place: written.Place

    @property
    def path(self) -> Path:
        return (PROJECT_FILE, "assemblies", self.assembly, "place", self.index)


def wanted_in(draft: Draft) -> Iterator[Wanted]:
    for name, part in draft.written.parts.items():
        for key in KEYS:
            text: str | None = getattr(part, key)
            path = (PROJECT_FILE, "parts", name, key)
            if found := FITS.match(text or ""):
                yield Wanted(name, key, found[1], Place(path, start=found.start(1), end=found.end(1)))
            elif found := BETWEEN.match(text or ""):
                last = 2 if found[2] else 1
                at = Place(path, start=found.start(1), end=found.end(last))
                yield Wanted(name, key, "", at, tuple(who for who in found.groups() if who))


def look_at_thicknesses(draft: Draft, sums: Reckoning) -> None:
    """A thickness that fits a joint follows from its sizes alone; says so where it can't."""
    for name, part in draft.written.parts.items():
        path, text = (PROJECT_FILE, "parts", name, "thickness"), part.thickness or ""
        found = FITS.match(text)
        place = Place(path, start=found.start(1), end=found.end(1)) if found else Place(path)
        if BETWEEN.match(text):
            sums.say(place, "a thickness isn't measured between others", "a size, or fits and a joint")
        elif found and sums.knows("joints", found[1], place, among=draft.written.joints):
            joint = draft.written.joints[found[1]]
            if joint.kind not in THICK_IN and not draft.is_lost(PROJECT_FILE, "joints", found[1]):
                message = f"how thick it must be doesn't follow from {found[1]}, which is a {joint.kind}"
                sums.say(place, message, "a tongue and groove or a dado; or a size")


def makes_sense(one: Wanted, sums: Reckoning) -> bool:
    """Whether there is such a joint, and the part belongs between its sides."""
    draft = sums.draft
    if one.between:
        return _makes_sense_between(one, sums)
    if not sums.knows("joints", one.joint, one.at, among=draft.written.joints):
        return False
    joint = draft.written.joints[one.joint]
    goes = joint.kind in GOES_IN or joint.kind == RABBET
    enters = goes and any(
        part_called(side.split()[0], draft.written) == one.part for side in joint.takes if side.split()
    )
    if one.part not in joint.floats and not enters:
        if not draft.is_lost(PROJECT_FILE, "joints", one.joint):
            message = f"{one.part} neither floats in {one.joint} nor goes into it at its ends"
            sums.say(one.at, message, f"floats: [{one.part}] in {one.joint}")
        return False
    return _stands_somewhere(one, sums)


def _stands_somewhere(one: Wanted, sums: Reckoning) -> bool:
    if not list(spots_of(one.part, sums.draft)) and not sums.draft.unreadable:
        sums.say(one.at, f"{one.part} stands nowhere, so there is no opening to measure", "a place for it")
        return False
    return True


def _makes_sense_between(one: Wanted, sums: Reckoning) -> bool:
    """Whether there are such parts or marks, and the part stands somewhere."""
    project = sums.draft.written
    for who in one.between:
        if not part_called(who, project):
            if not sums.draft.unreadable:
                marks = {place.mark for a in project.assemblies.values() for place in a.place if place.mark}
                start = _text(one, project).find(who, one.at.start or 0)
                at = replace(one.at, start=start, end=start + len(who))
                meant = nearest_words(who, {*project.parts, *marks})
                sums.say(
                    at, f"no part or copy is called {who}", "a part, or the marks of two: SL and SR", meant
                )
            return False
    return _stands_somewhere(one, sums)


def _text(one: Wanted, project: written.Project) -> str:
    text: str = getattr(project.parts[one.part], one.key)
    return text


def spots_of(part: str, draft: Draft) -> Iterator[Spot]:
    for name, assembly in draft.written.assemblies.items():
        for index, place in enumerate(assembly.place):
            if place.kind == "part" and place.of == part and {place.along, place.face} <= WAYS.keys():
                yield Spot(name, index, place)
