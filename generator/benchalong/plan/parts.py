"""The parts themselves: boxes, cuts, how many there are and what each copy is marked with."""

from __future__ import annotations

from collections import defaultdict
from itertools import chain

from benchalong.ground.marks import Path, Place
from benchalong.plan import model
from benchalong.plan.draft import Draft
from benchalong.plan.piece import contents
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words
from benchalong.plan.strips import strips
from benchalong.plan.walk import copies_of, walk
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

SIZES = ("thickness", "width", "length")


def make_parts(draft: Draft) -> Draft:
    """Adds `parts`. Counted from the places, or given for what has none."""
    sums = Reckoning(draft)
    marks = _marks(draft)
    placed = {of for inside in contents(draft).values() for of in inside}
    copies = copies_of(contents(draft), draft.piece) if draft.piece else None
    parts = {}
    for name, part in draft.written.parts.items():
        count = _count(name, part, copies[name] if copies else None, name in placed, sums)
        if name in draft.boxes and count is not None:
            given = marks[name] if name in placed else _numbered(part.mark, count)
            parts[name] = _part(name, part, count, given, sums)
    return sums.done(parts=parts)


def _marks(draft: Draft) -> defaultdict[str, tuple[str, ...]]:
    marks: defaultdict[str, tuple[str, ...]] = defaultdict(tuple)
    for standing in walk(draft.assemblies, draft.piece) if draft.piece else ():
        if standing.is_part:
            marks[standing.of] += (standing.mark,)
    return marks


def _count(name: str, part: written.Part, copies: int | None, is_placed: bool, sums: Reckoning) -> int | None:
    """None when it can't be told. `copies` are those in the piece, None where there is no piece."""
    path: Path = (PROJECT_FILE, "parts", name)
    if is_placed and copies is None:
        return None
    if is_placed:
        if part.count is not None and part.count != copies:
            sums.say(
                (*path, "count"),
                f"{name} stands in {copies} places, and its count says {part.count}",
                "no count; it is counted from the places",
            )
        return copies
    if part.count is None and not _may_be_placed(sums.draft, path):
        message = f"{name} stands in no assembly and has no count"
        sums.say(Place(path).key(), message, "a place for it, or count: and how many")
    return part.count


def _may_be_placed(draft: Draft, path: Path) -> bool:
    """Whether its place or count may be among what could not be read, or stand under a name with a slip."""
    if draft.is_lost(*path, "count"):
        return True
    if any(lost[:2] == (PROJECT_FILE, "assemblies") for lost in draft.unreadable):
        return True
    known = {*draft.written.parts, *draft.written.assemblies}
    return any(of not in known for of in chain(*contents(draft).values()))


def _numbered(mark: str, count: int) -> tuple[str, ...]:
    if not mark or count == 1:
        return (mark,) if mark else ()
    return tuple(f"{mark}{number}" for number in range(1, count + 1))


def _part(name: str, part: written.Part, count: int, marks: tuple[str, ...], sums: Reckoning) -> model.Part:
    length, width, thickness = sums.draft.boxes[name]
    return model.Part(
        name,
        part.name or in_words(name),
        part.stock,
        thickness,
        width,
        length,
        count,
        marks,
        sums.draft.cuts[name],
        part.glued_up,
        strips(part.glued_up, (PROJECT_FILE, "parts", name, "glued_up"), sums),
        part.resaw or 1,
        _rough_with(name, part, sums),
        part.purpose,
        part.shows,
        part.note,
        {size: tuple(sorted(sums.draft.names[f"{name}.{size}"].follows)) for size in SIZES},
    )


def _rough_with(name: str, part: written.Part, sums: Reckoning) -> str:
    path: Path = (PROJECT_FILE, "parts", name, "rough_with")
    if part.rough_with and sums.knows("parts", part.rough_with, path, among=sums.draft.written.parts):
        other = sums.draft.written.parts[part.rough_with]
        if part.rough_with == name:
            sums.say(path, f"{name} can't stay in one piece with itself", "another part")
        elif other.stock != part.stock:
            message = f"{part.rough_with} is made from {other.stock}, and {name} from {part.stock}"
            sums.say(path, message, "a part from the same stock")
        elif other.rough_with:
            message = f"{part.rough_with} stays with {other.rough_with} itself"
            sums.say(path, message, f"the part they all stay with: {other.rough_with}")
    return part.rough_with
