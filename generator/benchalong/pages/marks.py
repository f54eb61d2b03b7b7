"""The label sheet: a small label for each piece of wood, to cut out, with where it stands and how."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.words import in_sentence
from benchalong.pages.fitted import FittedShown, fitted_shown
from benchalong.pages.makings import Makings
from benchalong.pages.shell import Link, Shell
from benchalong.pages.turned import written_turns
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import AXES, Copy, Surface, Turn
from benchalong.plan.turns import WAYS
from benchalong.workings.triangles import TRIANGLES

OTHERS: tuple[Surface, ...] = ("edge a", "edge b", "end a", "end b")
LOOKS: Mapping[str, str] = {
    "right": "to the right", "left": "to the left", "back": "to the back", "front": "to the front",
    "up": "up", "down": "down",
}  # fmt: skip


@dataclass(frozen=True)
class LabelShown:
    mark: str
    part: Link
    place: str
    """`Left door, in the Seed cupboard`; the assemblies it stands in, the nearest first."""
    face: str
    """Which way its face looks; empty for what stands at a slant."""
    up: str
    """Which edge or end is up; empty where a face is."""
    triangle: str
    """Its piece of the triangle on its set; empty where there is none."""
    size: Markup
    """Final: thick by wide by long."""
    fitted: FittedShown | None


@dataclass(frozen=True)
class LabelsOf:
    id: str
    name: str
    labels: tuple[LabelShown, ...]


@dataclass(frozen=True)
class MarksPage:
    shell: Shell
    groups: tuple[LabelsOf, ...]
    """By the assembly that each piece stands in first."""


def marks_page(makings: Makings) -> MarksPage:
    plan = makings.plan
    by_assembly: dict[str, list[LabelShown]] = {}
    triangles = dict(_triangles(makings))
    for copy in plan.copies:
        own = copy.assemblies[-1] if copy.assemblies else ""
        by_assembly.setdefault(own, []).append(_label(makings, copy, triangles.get(copy.mark, "")))
    groups = (
        LabelsOf(name or "loose", plan.assemblies[name].name if name else "Loose", tuple(labels))
        for name, labels in by_assembly.items()
    )
    return MarksPage(Shell("marks", "marks.html", "Marks to cut out"), tuple(groups))


def _triangles(makings: Makings) -> Iterator[tuple[str, str]]:
    for triangle in makings.worked[TRIANGLES]:
        for piece in triangle.pieces:
            yield piece.mark, f"{piece.carries} of the triangle, on its {piece.named}"


def _label(makings: Makings, copy: Copy, triangle: str) -> LabelShown:
    part, size = makings.plan.parts[copy.part], makings.shows.size
    turn = written_turns(makings).get(copy.mark, copy.turn)
    return LabelShown(
        copy.mark,
        makings.part_link(part),
        " in ".join(
            name if not number else in_sentence(name)
            for number, name in enumerate(
                makings.plan.assemblies[one].name for one in reversed(copy.assemblies)
            )
        ),
        _face(copy, turn),
        _up(copy, turn),
        triangle,
        Markup("{} × {} × {}").format(size(part.thickness), size(part.width), size(part.length)),
        fitted_shown(makings, copy.part),
    )


def _face(copy: Copy, turn: Turn) -> str:
    looks = _looks(turn, "face") if copy.tilt is None else ""
    return f"Face {LOOKS[looks]}" if looks else ""


def _up(copy: Copy, turn: Turn) -> str:
    if copy.tilt is not None:
        return ""
    up = next((surface for surface in OTHERS if _looks(turn, surface) == "up"), "")
    return f"{up[:1].upper()}{up[1:]} up" if up else ""


def _looks(turn: Turn, surface: Surface) -> str:
    """Which way a surface, as the plan calls it, looks in the piece."""
    lies = SURFACES[surface]
    sign = 1 if lies.is_far else -1
    way = tuple(sign * row[AXES.index(lies.inward)] for row in turn)
    return next(name for name, other in WAYS.items() if other == way)
