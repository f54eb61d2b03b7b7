"""One cut of a part's own: its kind says which keys it takes and which surfaces it goes into."""

from __future__ import annotations

from benchalong.ground.marks import Path, Place
from benchalong.ground.report import either
from benchalong.ground.words import counted, nearest_words
from benchalong.reading.language import CORNER, CUT, CUT_SURFACES, EDGES, ENDS, FACES, Kind
from benchalong.reading.shape import Entry
from benchalong.reading.written import CUT_KINDS, SURFACES, Corner, Cut, Formula
from benchalong.reading.yamltree import Value

GROUPS = {
    SURFACES: "a surface",
    FACES: "face or back",
    EDGES: "an edge",
    ENDS: "an end",
    EDGES + ENDS: "an edge or end",
    EDGES + FACES: "an edge, face or back",
}
"""What each group of surfaces in `language.CUT_SURFACES` is called."""
OTHER_WORDS = {"thru": "through", "middle": "centred", "center": "centred"}
"""What is often said instead."""


def cut(entry: Entry) -> Cut:
    if entry.table is CUT:
        return _of_no_kind(entry)
    kind = entry.text("cut", Kind.WORD)
    surfaces = _surfaces(entry, kind)
    if kind == "notch" and len(surfaces) == 1 and "at" not in entry:
        entry.lacks("at", "from end a, or on an end from edge a, to its near wall")
    return Cut(
        kind=kind,
        surfaces=surfaces,
        sizes=_sizes(entry),
        corners=_corners(entry),
        removes=entry.word("removes", "outside") if kind == "outline" else "",
        name=entry.text("name"),
        note=entry.text("note"),
    )


def _of_no_kind(entry: Entry) -> Cut:
    """What it takes can't be said, so its kind is all that is looked at."""
    kind = entry.text("cut", Kind.WORD)
    if kind:
        entry.one_of(kind, CUT_KINDS, (*entry.path, "cut"), "a cut")
    entry.tally.unreadable.add(entry.path)
    return Cut(kind="")


def _sizes(entry: Entry) -> dict[str, Formula]:
    found = {}
    for key in entry.table.keys:
        size = entry.formula(key.name) if key.kind is Kind.FORMULA else None
        if size is not None and not _is_mistyped(entry, key.name, size, key.words):
            found[key.name] = size
    return found


def _is_mistyped(entry: Entry, key: str, size: Formula, words: tuple[str, ...]) -> bool:
    """`centerd` for `centred`: told here, since to the plan's arithmetic it is a name like any other."""
    if size in words or size in entry.tally.size_names:
        return False
    is_near = bool(nearest_words(size, words)) or OTHER_WORDS.get(size) in words
    if is_near:
        entry.complain(
            key, f"{size} is neither a size nor a word for {key}", f"a size, or {either(words)}", words
        )
    return is_near


def _corners(entry: Entry) -> tuple[Corner, ...]:
    value = entry.value("corners", Kind.CORNERS) if "corners" in entry.table.by_name else None
    if value is None:
        return ()
    if not isinstance(value, list):
        entry.wrong_kind(
            value, (*entry.path, "corners"), "a list of corners: [[0, 0], [0, stile], [1 in, stile]]"
        )
        return ()
    if len(value) < 3:
        entry.complain("corners", "a shape has three corners or more", "[[0, 0], [0, stile], [1 in, stile]]")
    return tuple(_corner(entry, item, (*entry.path, "corners", index)) for index, item in enumerate(value))


def _corner(entry: Entry, value: Value, path: Path) -> Corner:
    if isinstance(value, dict):
        return entry.entry(value, path, _rounded_corner, CORNER) or Corner("0", "0")
    return _at(entry, entry.sizes_in(value, path), path)


def _rounded_corner(entry: Entry) -> Corner:
    corner = _at(entry, entry.point("at"), (*entry.path, "at"))
    return Corner(corner.along, corner.across, entry.formula("round"))


def _at(entry: Entry, sizes: tuple[Formula, ...] | None, path: Path) -> Corner:
    if sizes is not None and len(sizes) == 2:
        return Corner(sizes[0], sizes[1])
    if sizes is not None:
        entry.tally.add(
            Place(path),
            f"{counted(len(sizes), 'size')} here, and a corner takes 2",
            expected="[from end a, from edge a]",
        )
    return Corner("0", "0")


def _surfaces(entry: Entry, kind: str) -> tuple[str, ...]:
    allowed = CUT_SURFACES[kind]
    if not allowed:
        return ()
    named = _named(entry)
    if not named or any(_suits(named, groups) for groups in allowed):
        return named
    expected = ", or ".join(_called(groups) for groups in allowed)
    entry.complain("on", f"{entry.table.called} can't be cut on {' and '.join(named)}", expected)
    return ()


def _named(entry: Entry) -> tuple[str, ...]:
    """The surfaces that `on:` names; none when one of them is no surface."""
    value = entry.value("on", Kind.SURFACES)
    path = (*entry.path, "on")
    if value is None:
        return ()
    items: list[tuple[Value, Path]] = [(value, path)]
    if isinstance(value, list):
        items = [(item, (*path, index)) for index, item in enumerate(value)]
    read = [_surface(entry, item, where) for item, where in items]
    if all(read):
        return tuple(read)
    entry.tally.unreadable.add(path)
    return ()


def _surface(entry: Entry, value: Value, path: Path) -> str:
    text = entry.read_text(value, path, Kind.SURFACES)
    return entry.one_of(text, SURFACES, path, "a surface") if text is not None else ""


def _suits(named: tuple[str, ...], groups: tuple[tuple[str, ...], ...]) -> bool:
    return len(named) == len(groups) and all(name in group for name, group in zip(named, groups, strict=True))


def _called(groups: tuple[tuple[str, ...], ...]) -> str:
    words = [GROUPS[group] for group in groups]
    return words[0] if len(words) == 1 else f"[{', '.join(words)}]"
