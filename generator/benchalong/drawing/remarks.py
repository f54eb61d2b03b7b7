"""What the numbers of a drawing can't say: which cuts are alike, which go right through."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchalong.drawing.alt import cuts_in_words, many
from benchalong.drawing.wanted import prism_box, shape_room
from benchalong.ground.lengths import ZERO, Length
from benchalong.plan.model import AXES, Axis, Cut, Part, Prism

PLACES = ("at", "across", "from", "to")
"""Sizes that say where a cut is, not how large."""


def likeness(cut: Cut) -> tuple[object, ...]:
    """Equal for cuts made with one cutter at one setting: kind, sizes, kind of surface."""
    own = tuple((size.name, size.length) for size in cut.sizes if size.name not in PLACES)
    kinds = tuple(sorted(surface.split()[0] for surface in cut.surfaces))
    return (cut.kind, kinds, own, tuple(sorted(_measures(prism) for prism in cut.takes)))


def _measures(prism: Prism) -> tuple[str, Length, Length, Length]:
    low, high = shape_room(prism.shape)
    return (prism.axis, high[0] - low[0], high[1] - low[1], prism.end - prism.start)


def notes(part: Part) -> Iterator[str]:
    """Sentences without sizes, each once."""
    groups: dict[tuple[object, ...], list[Cut]] = {}
    for cut in (cut for cut in part.cuts if cut.takes and cut.kind != "outline"):
        groups.setdefault(likeness(cut), []).append(cut)
    said = [note for cuts in groups.values() for note in _notes_on(cuts, part)]
    yield from dict.fromkeys(said)


def _notes_on(cuts: Sequence[Cut], part: Part) -> Iterator[str]:
    kind = cuts[0].kind
    is_all = len(cuts) == sum(cut.kind == kind for cut in part.cuts)
    called = f"{'both' if len(cuts) == 2 else 'all'} {many(kind)}" if is_all else f"the {cuts_in_words(cuts)}"
    if len(cuts) > 1:
        yield f"{called[0].upper()}{called[1:]} are alike."
    if kind in ("hole", "mortise") and all(_goes_through(cut, part) for cut in cuts):
        one = f"the {kind}" if is_all else f"the {cuts_in_words(cuts)}"
        words = f"{one} goes" if len(cuts) == 1 else f"{called} go"
        yield f"{words[0].upper()}{words[1:]} right through."


def _goes_through(cut: Cut, part: Part) -> bool:
    surface = cut.surfaces[0] if cut.surfaces else "face"
    into: Axis = "along" if surface.startswith("end") else "across" if surface.startswith("edge") else "down"
    return all(prism_box(prism, part).on(into) == (ZERO, part.box[AXES.index(into)]) for prism in cut.takes)
