"""The page of named sizes: each formula as typed, and what comes of it."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup, escape

from benchalong.ground.shown import decimal
from benchalong.pages.makings import Makings
from benchalong.pages.shell import Shell
from benchalong.plan.model import Size, SizeName
from benchalong.plan.quantity import Quantity


@dataclass(frozen=True)
class SizeLine:
    name: SizeName
    typed: str
    """The formula, as the author typed it."""
    value: Markup
    rounding: Markup
    follows: tuple[SizeName, ...]
    """Other named sizes it follows from; each has its own line on this page."""
    note: str
    is_given: bool
    """Whether it stands by itself, and is not worked out from others."""


@dataclass(frozen=True)
class SizesPage:
    shell: Shell
    sizes: tuple[SizeLine, ...]
    is_rounded: bool


def sizes_page(makings: Makings) -> SizesPage:
    lines = sizes_shown(makings)
    return SizesPage(Shell("sizes", "sizes.html", "Sizes"), lines, any(line.rounding for line in lines))


def sizes_shown(makings: Makings) -> tuple[SizeLine, ...]:
    return makings.once(
        "sizes", "", lambda: tuple(_line(makings, size) for size in makings.plan.sizes.values())
    )


def _line(makings: Makings, size: Size) -> SizeLine:
    value, rounding = _value(makings, size.value)
    follows = tuple(name for name in size.follows if name in makings.plan.sizes)
    return SizeLine(size.name, size.typed, value, rounding, follows, size.note, not size.follows)


def _value(makings: Makings, value: Quantity) -> tuple[Markup, Markup]:
    if value.dimension == 1:
        return makings.shows.size(value.value), makings.shows.rounding(value.value)
    return Markup(escape(decimal(value.value, 4))), Markup("")
