"""Square bites out of a side, each told as the kind of cut a builder would call it."""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, Range
from benchalong.plan.flips import SURFACE_PAIRS
from benchalong.plan.joints.family import Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import AXES, Axis, Surface

Room = Mapping[Axis, Range]


def bite(side: Side, room: Room) -> Loss:
    """The loss of a body within this part: right through it a notch, else a rabbet, groove or dado."""
    out = {axis: _runs_out(side, axis, room[axis]) for axis in AXES}
    if len(out["down"]) == 2:
        return _notch(room, out)
    if not out["down"]:
        return _slot(side, room)
    flat = side.surfaces[0] if side.surfaces[0] in out["down"] else out["down"][0]
    if len(out["along"]) == 1:
        return _step((out["along"][0], flat), side, room)
    if out["along"] and len(out["across"]) == 1:
        return _step((out["across"][0], flat), side, room)
    return _channel(flat, side, room, run="along" if out["along"] else "across")


def grown(room: Room, play: Length, *axes: Axis) -> dict[Axis, Range]:
    """A body made larger by the play on both sides of some axes."""
    return {
        axis: (low - play, high + play) if axis in axes else (low, high) for axis, (low, high) in room.items()
    }


def is_empty(room: Room) -> bool:
    return any(low >= high for low, high in room.values())


def size_of(span: Range) -> Length:
    return span[1] - span[0]


def _runs_out(side: Side, axis: Axis, span: Range) -> tuple[Surface, ...]:
    """The surfaces across an axis that a body comes out at."""
    near, far = SURFACE_PAIRS[axis]
    whole = side.box[AXES.index(axis)]
    return ((near,) if span[0] <= 0 else ()) + ((far,) if span[1] >= whole else ())


def _notch(room: Room, out: Mapping[Axis, tuple[Surface, ...]]) -> Loss:
    lengths = {"length": size_of(room["along"]), "width": size_of(room["across"])}
    if len(out["along"]) == 1 and len(out["across"]) == 1:
        return Loss("notch", (out["along"][0], out["across"][0]), lengths)
    if len(out["along"]) == 1:
        return Loss("notch", out["along"], {**lengths, "at": room["across"][0]})
    return Loss("notch", out["across"][:1], {**lengths, "at": room["along"][0]})


def _slot(side: Side, room: Room) -> Loss:
    """Between face and back, into an end or an edge."""
    on = side.surfaces[0]
    lies = SURFACES[on]
    lengths = {"width": size_of(room["down"]), "depth": size_of(room[lies.inward]), "across": room["down"][0]}
    return Loss("groove", (on,), lengths | _stretch(side, lies.run, room))


def _step(arris: tuple[Surface, Surface], side: Side, room: Room) -> Loss:
    lies = SURFACES[arris[0]]
    lengths = {"width": size_of(room[lies.inward]), "depth": size_of(room["down"])}
    return Loss("rabbet", arris, lengths | _stretch(side, lies.run, room))


def _channel(flat: Surface, side: Side, room: Room, *, run: Axis) -> Loss:
    wide: Axis = "across" if run == "along" else "along"
    lengths = {"width": size_of(room[wide]), "depth": size_of(room["down"])} | _stretch(side, run, room)
    if run == "along":
        return Loss("groove", (flat,), {**lengths, "across": room[wide][0]})
    return Loss("dado", (flat,), {**lengths, "at": room[wide][0]})


def _stretch(side: Side, run: Axis, room: Room) -> dict[str, Length]:
    """From where to where; nothing said at an end that it runs out of."""
    low, high = room[run]
    whole = side.box[AXES.index(run)]
    return ({"from": low} if low > 0 else {}) | ({"to": high} if high < whole else {})
