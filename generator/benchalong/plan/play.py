"""The play a panel needs in its grooves, where the author leaves it to its wood and its house.

`panel_side_play: by movement` says so; it is also what a joint has by itself where a solid panel of a known
wood has `width: fits` that joint. It is the play that leaves a little room on each side when the panel is
at its dampest. Of several panels in one joint, the one that moves most sets it.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import cast

from benchalong.ground.lengths import INCH, Length
from benchalong.plan.moistures import Moistures, moistures
from benchalong.plan.wood import air_of, woods_of
from benchalong.reading.written import Joint, Project, Stock
from benchalong.trade.movement import Sawn, across_width
from benchalong.trade.proportions import PANEL_CLEAR
from benchalong.trade.room import side_play

FITS = re.compile(r"fits +(\S+)\s*\Z")
"""`fits frame`: a size that is measured where it goes."""
BY_MOVEMENT = "by movement"
SIDE_PLAY = "panel_side_play"


def is_by_movement(name: str, joint: Joint, project: Project) -> bool:
    """Whether a joint's play beside its panels is worked out from how they move."""
    typed = joint.sizes.get(SIDE_PLAY)
    if typed is not None:
        return typed.strip() == BY_MOVEMENT
    return bool(fitted_panels(name, joint, project))


def fitted_panels(name: str, joint: Joint, project: Project) -> tuple[str, ...]:
    """The solid parts of known wood that float in it and are as wide as fits."""
    own = (part for part in joint.floats if _fits(name, part, project))
    return tuple(part for part in own if swells(part, project) is not None)


def _fits(name: str, part: str, project: Project) -> bool:
    written = project.parts.get(part)
    found = FITS.match(written.width or "") if written else None
    return found is not None and found[1] == name


def swells(part: str, project: Project) -> Fraction | None:
    """By which share of its width a part grows from made to dampest; None where its wood isn't known or it is
    no solid wood."""
    written = project.parts.get(part)
    stock = project.stock.get(written.stock) if written else None
    return None if stock is None else _share(stock, project)


def _share(stock: Stock, project: Project) -> Fraction | None:
    species = woods_of(project).find(stock.species) if stock.species else None
    if stock.kind not in ("board", "turned") or species is None:
        return None
    year = _year(project)
    change = across_width(species, cast(Sawn, stock.sawn or "flat"), before=year.made_at, after=year.dampest)
    return None if change is None else change.share


def _year(project: Project) -> Moistures:
    return moistures(air_of(project.shop.air), air_of(project.house))


def play_in(opening: Length, share: Fraction, units: str) -> Length:
    """Beside each edge, in mm, of a panel in an opening from groove bottom to groove bottom; up to the next
    1/32 in or half millimetre."""
    step = INCH / 32 if units == "inch" else Length(1, 2)
    play = side_play(opening, max(share, Fraction(0)), PANEL_CLEAR.of(units))
    return step * -(-play // step)
