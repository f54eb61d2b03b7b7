"""How much surface do two parts share in a joint: what glue goes on.

In closed form, from the joint's own sizes and from how far the two parts' boxes lie beside or in each other:
cheeks, walls and shoulders, everything that touches when the joint is closed. Room that is left on purpose
(beyond a tenon, at the bottom of a dado) takes none; play beside a cheek counts as closed, since glue fills
it. Holes for screws and dowels are not taken off, nor what other joints' cuts take from this one. Areas in
square mm.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, sqrt
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.model import Joint, Meeting
from benchalong.plan.turns import axis_of
from benchalong.workings.grain import axis_in_room
from benchalong.workings.placed import Lying, Placed

Area: TypeAlias = Fraction
"""Square mm."""
NOTHING = Length(0)


@dataclass(frozen=True)
class Met:
    """Two parts in a joint, and what their boxes have in common along each axis of the room."""

    joint: Joint
    meeting: Meeting
    one: Lying
    """What is cut in."""
    other: Lying
    """What enters."""

    def __getitem__(self, key: str) -> Length:
        """A size of the joint; 0 where it has none of that name."""
        return self.joint.length_of(key)

    @property
    def normal(self) -> int:
        """The axis along which the other goes in."""
        assert self.meeting.takes is not None
        return axis_of(self.other.way(self.other.surface(self.meeting.takes.surfaces[0])))

    def over(self, n: int) -> Length:
        one, other = self.one.room, self.other.room
        return max(NOTHING, min(one[1][n], other[1][n]) - max(one[0][n], other[0][n]))

    @property
    def beside(self) -> tuple[int, int]:
        """The two axes of the plane in which they meet: along the joint, then across it, which is the
        thickness of what enters where it isn't that way round."""
        thick = axis_in_room(self.other, "down")
        first, second = (n for n in range(3) if n != self.normal)
        return (second, first) if first == thick else (first, second)

    @property
    def run(self) -> Length:
        """The length of the joint."""
        return self.over(self.beside[0])

    @property
    def thick(self) -> Length:
        return self.over(self.beside[1])


def glue_face(joint: Joint, meeting: Meeting, placed: Placed) -> Area:
    """0 for what lies loose, and for kinds that let something move."""
    takes = meeting.takes
    if takes is None or takes.part in joint.floats or joint.kind not in FACES:
        return Area(0)
    met = Met(joint, meeting, placed.by_mark[meeting.cut_in.copy], placed.by_mark[takes.copy])
    return max(Area(0), FACES[joint.kind](met))


def _butt(met: Met) -> Area:
    """Nothing where it lies in the other: then another joint lets it in, and counts."""
    return Area(0) if met.over(met.normal) else met.run * met.thick


def _rabbet(met: Met) -> Area:
    """The floor of the step and its wall."""
    return met.run * (met.thick + met.over(met.normal))


def _dado(met: Met) -> Area:
    """Both walls; where it stops short, the shoulder of the corner that is taken off; the bottom, if what
    enters reaches it."""
    notch = met["notch"] if met.joint.words.get("stopped") else NOTHING
    run = met.run - notch
    bottom = run * met.thick if not met["end_play"] else Area(0)
    return 2 * met["reach"] * run + min(notch, met["stop_by"]) * met.thick + bottom


def _tongue(met: Met) -> Area:
    """Both cheeks of the tongue, and the shoulders beside it. A groove along the edge of what enters takes
    its depth from the tongue."""
    grooved = {
        meeting.cut_in.surfaces
        for meeting in met.joint.meetings
        if meeting.cut_in.copy == met.other.copy.mark
    }
    cheek = met.run - len(grooved) * met["depth"]
    return 2 * met["tongue_length"] * cheek + (met.thick - met["tongue_width"]) * met.run


def _tenon(met: Met) -> Area:
    """Cheeks and edges of the tenon and the shoulders around it. A haunch has its cheeks too, and takes its
    groove's depth from the tenon's edge above it."""
    long, wide, thick = met["tenon_length"], met["width"], met["thickness"]
    haunch = met["haunch_width"]
    haunch_long = met["haunch_length"] if haunch else NOTHING
    groove = haunch_long + met["end_play"] if haunch else NOTHING
    sides = 2 * long * (wide + thick) - groove * thick + 2 * haunch * haunch_long
    return sides + met.run * met.thick - thick * (wide + haunch)


def _half_lap(met: Met) -> Area:
    """The lap, and each wall that the other's side stands against."""
    n = met.normal
    first, second = (axis for axis in range(3) if axis != n)
    left = met.over(n) - met["depth"]
    walls = Area(0)
    for along, across in ((first, second), (second, first)):
        for end, sign in ((0, 1), (1, -1)):
            beyond = sign * (met.other.room[end][along] - met.one.room[end][along])
            walls += met.over(across) * (met["depth"] if beyond > 0 else left if beyond < 0 else NOTHING)
    return met.over(first) * met.over(second) + walls


def _mitre(met: Met) -> Area:
    """The slope, less the slot for a spline, and both cheeks of the spline."""
    thick = axis_in_room(met.other, "down")
    slope = _root(sum((met.over(n) ** 2 for n in range(3) if n != thick), Fraction(0)))
    return slope * (met.over(thick) - met["spline_thickness"] + 2 * met["spline_width"])


def _fingers(met: Met) -> Area:
    """The walls between fingers, and the bottoms that their inner sides stand against. The first finger is
    that of what is cut in."""
    run = axis_in_room(met.other, "across")
    first, second = (met.over(n) for n in range(3) if n != run)
    into = met.over(met.normal)
    thick = first * second / into if into else NOTHING
    finger, whole = met["finger"], met.over(run)
    if not finger:
        return Area(0)
    count = ceil(whole / finger)
    last = whole - (count - 1) * finger
    own = finger * -(-count // 2) - (finger - last if count % 2 else 0)
    return (count - 1) * first * second + own * thick + (whole - own) * into


def _tails(met: Met) -> Area:
    """The sloping cheeks, the tails' inner sides on the pins' board, the pins' on the tails'; the tails' ends
    where a lap stands in front of them."""
    run, long = axis_in_room(met.other, "across"), met["tail_length"]
    thick, whole = met.over(axis_in_room(met.other, "down")), met.over(run)
    said = met.joint.words.get("tails")
    count = max(1, int(said) if said else round(whole / (2 * long))) if long else 0
    ends = whole - (count + 1) * met["pin"]
    narrowed = 2 * count * met["slope"] * long
    cheeks = 2 * count * thick * long * _root(1 + met["slope"] ** 2)
    sides = long * (ends - narrowed / 2) + thick * (whole - ends + narrowed)
    lap = ends * thick if met.joint.words.get("dovetail") == "half-blind" else Area(0)
    return cheeks + sides + lap


def _root(square: Fraction) -> Fraction:
    return Fraction(sqrt(square)).limit_denominator(1_000_000)


FACES: Mapping[str, Callable[[Met], Area]] = {
    "butt": _butt,
    "rabbet": _rabbet,
    "dado": _dado,
    "tongue and groove": _tongue,
    "mortise and tenon": _tenon,
    "half lap": _half_lap,
    "mitre": _mitre,
    "box joint": _fingers,
    "dovetail": _tails,
}
