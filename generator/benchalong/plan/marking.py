"""The marks of copies within an assembly: those given, for the rest letters from the name, with numbers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from benchalong.plan.reckoning import Reckoning
from benchalong.reading.written import PROJECT_FILE, Part, Place


def marks_in(assembly: str, places: tuple[Place, ...], sums: Reckoning) -> tuple[str, ...]:
    """One mark for each place; says so when one is given twice."""
    _refuse_doubles(assembly, places, sums)
    bases = [place.mark or base_mark(place, sums.draft.written.parts) for place in places]
    unmarked = Counter(base for base, place in zip(bases, places, strict=True) if not place.mark)
    taken = {place.mark for place in places if place.mark}
    marks: list[str] = []
    for base, place in zip(bases, places, strict=True):
        marks.append(place.mark or _free(base, taken, alone=unmarked[base] == 1))
        taken.add(marks[-1])
    return tuple(marks)


def base_mark(place: Place, parts: Mapping[str, Part]) -> str:
    """The part's own mark, or the first letters of the words in its name: `door_rail` is DR."""
    part = parts.get(place.of) if place.kind == "part" else None
    return part.mark if part is not None and part.mark else initials(place.of)


def initials(name: str) -> str:
    return "".join(word[0] for word in name.split("_") if word).upper()


def _free(base: str, taken: set[str], *, alone: bool) -> str:
    if alone and base not in taken:
        return base
    number = 1
    while f"{base}{number}" in taken:
        number += 1
    return f"{base}{number}"


def _refuse_doubles(assembly: str, places: tuple[Place, ...], sums: Reckoning) -> None:
    first: set[str] = set()
    for index, place in enumerate(places):
        path = (PROJECT_FILE, "assemblies", assembly, "place", index, "mark")
        if "/" in place.mark:
            sums.say(
                path,
                f"the mark {place.mark} has a / in it",
                "letters and digits; the / joins the marks of assemblies",
            )
        elif place.mark and place.mark in first:
            sums.say(
                path, f"the mark {place.mark} is given twice in {assembly}", "a mark of its own for each copy"
            )
        first.add(place.mark)
