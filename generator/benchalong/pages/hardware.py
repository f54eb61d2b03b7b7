"""What is known of a piece of hardware besides its name: in rows, each with its word."""

from __future__ import annotations

from collections.abc import Iterator

from markupsafe import Markup

from benchalong.pages.makings import Makings, marks_in_short
from benchalong.plan.model import Hardware

SIZES = {
    "length": "long",
    "width": "wide",
    "depth": "deep",
    "diameter": "across",
    "closed": "thick when closed",
    "travel": "of travel",
}
"""What follows its sizes; a screw's holes are told with what it is screwed into."""
MEASURED = {"yes": ", as measured", "no": ", not measured yet: measure it before wood is cut for it", "": ""}


def hardware_facts(makings: Makings, thing: Hardware) -> tuple[tuple[str, Markup], ...]:
    return tuple(_facts(makings, thing))


def _facts(makings: Makings, thing: Hardware) -> Iterator[tuple[str, Markup]]:
    plan, hole = makings.plan, makings.shows.hole
    sizes = [Markup("{} {}").format(hole(each.length), SIZES[each.name])
             for each in thing.sizes if each.name in SIZES]  # fmt: skip
    if sizes:
        yield "Measures", Markup(", ").join(sizes) + MEASURED[thing.measured]
    holes = {each.name: each.length for each in thing.sizes if each.name in ("clearance", "pilot")}
    if holes:
        words = {"clearance": "to go through", "pilot": "to hold in"}
        yield (
            "Holes",
            Markup(", ").join(Markup("{} {}").format(hole(at), words[key]) for key, at in holes.items()),
        )
    if thing.held_by:
        each = f"{thing.screws} × " if thing.screws else ""
        sides = " on each side" if thing.kind in ("hinge", "stay", "slide") and thing.screws else ""
        yield "Held by", Markup.escape(f"{each}{plan.hardware[thing.held_by].name}{sides}")
    if thing.seated:
        where = dict.fromkeys(f"{plan.parts[one.part].name}, {one.side}" for one in thing.seated)
        marks = marks_in_short(tuple(dict.fromkeys(one.mark for one in thing.seated)))
        yield "Sits on", Markup.escape(f"{'; '.join(where)} ({marks})")
    if thing.weight is not None:
        yield "Weighs", makings.shows.weight(thing.weight) + Markup(" each")
