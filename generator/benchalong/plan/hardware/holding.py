"""The pass that takes how the piece is held: hung on a wall, or standing on the floor."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal, cast

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.fixings import CHILD, WALLBOARD, studs_apart


def take_holding(draft: Draft) -> Draft:
    """Adds `hanging` and `standing`."""
    sums = Reckoning(draft)
    hanging, standing = draft.written.hanging, draft.written.standing
    if hanging and standing:
        path = (PROJECT_FILE, "standing")
        sums.say(path, "a piece that hangs doesn't stand on the floor as well", "hanging: or standing:")
    return sums.done(
        hanging=_hanging(hanging, sums) if hanging else None,
        standing=_standing(standing, sums) if standing else None,
    )


def _hanging(hanging: written.Hanging, sums: Reckoning) -> model.Hanging:
    path: Path = (PROJECT_FILE, "hanging")
    project = sums.draft.written
    usual, _ = studs_apart(project.shop.country)
    sums.knows("parts", hanging.rail, (*path, "rail"), among=project.parts)
    sums.knows("hardware", hanging.fixings, (*path, "fixings"), among=project.hardware)
    return model.Hanging(
        hanging.rail,
        cast(Literal["rail", "cleat"], hanging.way),
        hanging.fixings,
        cast(Literal["studs", "solid wall", "other"], hanging.into),
        _weight(hanging.each_holds, (*path, "each_holds"), sums),
        _size(hanging.studs, (*path, "studs"), "the studs' distance", sums) or usual,
        hanging.studs is None,
        _behind(hanging, (*path, "behind"), sums),
        hanging.behind is None,
        _weight(hanging.load, (*path, "load"), sums),
        hanging.note,
    )


def _behind(hanging: written.Hanging, path: Path, sums: Reckoning) -> Length:
    """Nothing, where it hangs on a bare wall of solid stuff."""
    if hanging.behind is None:
        return WALLBOARD[sums.draft.written.units] if hanging.into == "studs" else Length(0)
    length = sums.length(hanging.behind, path)
    if length is not None and length < 0:
        sums.say(path, "what lies behind it can't be less than nothing", "0, or how thick it is")
    return length or Length(0)


def _standing(standing: written.Standing, sums: Reckoning) -> model.StandsFree:
    path: Path = (PROJECT_FILE, "standing")
    for index, part in enumerate(standing.on):
        sums.knows("parts", part, (*path, "on", index), among=sums.draft.written.parts)
    if standing.carries and not standing.on:
        sums.say((*path, "carries"), "nothing says what is stood or sat on", "on: [tread]")
    pull = _weight(standing.pull, (*path, "pull"), sums)
    return model.StandsFree(
        _weight(standing.carries, (*path, "carries"), sums),
        standing.on,
        standing.restrained == "yes",
        CHILD if pull is None else pull,
        standing.pull is None,
        standing.note,
    )


def _weight(burden: written.Burden | None, path: Path, sums: Reckoning) -> Fraction | None:
    """A whole weight above zero, in kilograms."""
    if burden is None:
        return None
    if burden.per or not burden.kilograms:
        sums.say(path, "this is a whole weight above zero, not one for each length", "such as 20 kg or 45 lb")
        return None
    return burden.kilograms


def _size(text: str | None, path: Path, what: str, sums: Reckoning) -> Length | None:
    return None if text is None else sums.size_of_wood(text, path, what)
