"""The marks of copies within an assembly: those given, for the rest letters from the name, with numbers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rows import entries
from benchalong.reading.written import PROJECT_FILE, Part, Place


def marks_in(assembly: str, places: tuple[Place, ...], sums: Reckoning) -> tuple[str, ...]:
    """One mark for each copy; says so when one is given twice. Copies of a row are numbered from its mark."""
    _refuse_doubles(assembly, places, sums)
    copies = tuple(entries(places))
    bases = [entry.place.mark or base_mark(entry.place, sums.draft.written.parts) for entry in copies]
    unmarked = Counter(base for base, entry in zip(bases, copies, strict=True) if not entry.own_mark)
    taken = {entry.own_mark for entry in copies if entry.own_mark}
    marks: list[str] = []
    for base, entry in zip(bases, copies, strict=True):
        marks.append(entry.own_mark or _free(base, taken, alone=unmarked[base] == 1))
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
