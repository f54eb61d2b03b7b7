"""The words of the plan check: who, where on the wood, which way, how much, and where it is written."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.shown import Precision, System, shown
from benchalong.ground.words import in_sentence
from benchalong.plan.model import AXES, Axis, Copy, Cut, Part, PartId, Plan
from benchalong.plan.turns import WAYS, Way, turned
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.placed import Lying, Placed, Range, transposed


def exact(measured: float) -> Length:
    """A length measured on solids as the exact one it must be: ten-thousandths of a mm, or of an inch 768ths,
    within a ten-millionth; for what is none of these, to a millionth."""
    for step in (Length(1, 10_000), INCH / 768):
        near = round(measured / float(step)) * step
        if abs(float(near) - measured) < 1e-7:
            return near
    return Length(round(measured * 1_000_000), 1_000_000)


def cut_at(part: PartId, cut: Cut) -> Place:
    """Where the author wrote what gives a cut: its joint, the hardware that takes it, or the part itself."""
    if cut.joint:
        return Place((PROJECT_FILE, "joints", cut.joint)).key()
    if cut.hardware:
        return Place((PROJECT_FILE, "hardware", cut.hardware)).key()
    return Place((PROJECT_FILE, "parts", part, "cuts", cut.index))


FINE = Precision(INCH / 64, Length(1, 10))


def finer_text(length: Length, units: System, own: Precision) -> str:
    """A length at least to 1/64 in or a tenth of a mm."""
    finer = Precision(min(own.inch, FINE.inch), min(own.millimetre, FINE.millimetre))
    return shown(length, units, finer).text


@dataclass(frozen=True)
class Telling:
    """Says things in the author's units."""

    plan: Plan

    def shown(self, length: Length) -> str:
        return shown(length, self.plan.units, self.plan.precision).text

    def fine(self, length: Length) -> str:
        """As finely as wood movement asks for, where the plan's own sizes are shown more coarsely."""
        return finer_text(length, self.plan.units, self.plan.precision)

    def size(self, ranges: Mapping[Axis, Range]) -> str:
        """`2 1/4 in x 3/4 in x 3/8 in`, the longest first."""
        return " x ".join(self.shown(high - low) for low, high in _longest_first(ranges.values()))

    def spot(self, lying: Lying, ranges: Mapping[Axis, Range]) -> str:
        """Where on a part something is: `at end b, at edge a`; for the whole of it `all of it`."""
        seen = lying.as_written(ranges)
        said = [word for axis in AXES if (word := self._along(axis, lying.part, seen[axis]))]
        return ", ".join(said) or "all of it"

    def _along(self, axis: Axis, part: Part, span: Range) -> str:
        whole = part.box[AXES.index(axis)]
        near, far = span[0] <= 0, span[1] >= whole
        if near and far:
            return ""
        if near or far:
            return {
                "along": f"at end {'a' if near else 'b'}",
                "across": f"at edge {'a' if near else 'b'}",
                "down": f"at the {'face' if near else 'back'}",
            }[axis]
        start = {"along": "from end a", "across": "from edge a", "down": "under the face"}[axis]
        return f"{self.shown(span[0])} {start}"


def _longest_first(spans: Iterable[Range]) -> list[Range]:
    return sorted(spans, key=lambda span: span[0] - span[1])


def called(lying: Lying) -> str:
    """In the middle of a sentence: `top rail LD/T`."""
    if lying.hardware:
        return f"{in_sentence(lying.hardware)} on {lying.copy.mark}"
    return f"{in_sentence(lying.part.name)} {lying.copy.mark}"


def common(one: Copy, other: Copy) -> str:
    """The mark of the smallest assembly in the piece that holds both."""
    shared = []
    for a, b in zip(one.mark.split("/")[:-1], other.mark.split("/")[:-1], strict=False):
        if a != b:
            break
        shared.append(a)
    return "/".join(shared)


def placed_at(plan: Plan, copy: Copy, within: str = "") -> Place:
    """Where the author wrote the place of a copy, or of the assembly that brings it into another."""
    depth = len(within.split("/")) if within else 0
    assembly, mark = copy.assemblies[depth], copy.mark.split("/")[depth]
    number = next((placed.index for placed in plan.assemblies[assembly].placed if placed.mark == mark), 0)
    return Place((PROJECT_FILE, "assemblies", assembly, "place", number))


def place_sizes(plan: Plan, *copies: Copy) -> tuple[str, ...]:
    """The named sizes that the boxes of these copies follow from, and their places in what holds them all."""
    found = {name for copy in copies for of in plan.parts[copy.part].follows.values() for name in of}
    depth = min((_depth(copies[0], copy) for copy in copies), default=0)
    for copy in copies:
        for assembly, mark in list(zip(copy.assemblies, copy.mark.split("/"), strict=True))[depth:]:
            found.update(*(p.follows for p in plan.assemblies[assembly].placed if p.mark == mark))
    return tuple(sorted(found))


def _depth(one: Copy, other: Copy) -> int:
    """How many assemblies inside the piece hold both."""
    shared = common(one, other)
    return len(shared.split("/")) if shared else 0


def in_frame(placed: Placed, within: str, way: Way) -> Way:
    """A way in the room as the assembly with that mark sees it before it is turned into its place."""
    x, y, z = (Length(value) for value in way)
    seen = turned((x, y, z), transposed(placed.frames.get(within, placed.frames[""])))
    return (int(seen[0]), int(seen[1]), int(seen[2]))


def way_in(placed: Placed, within: str, way: Way) -> str:
    """A way in the room in the words of the assembly it is typed in: `left`, `up`."""
    seen = in_frame(placed, within, way)
    return next(word for word, other in WAYS.items() if other == seen)


def led(way: str) -> str:
    """`to the left`, `up`."""
    return way if way in ("up", "down") else f"to the {way}"


def likewise(pairs: Iterable[str]) -> str:
    """What else the same goes for."""
    others = list(dict.fromkeys(pairs))
    if not others:
        return ""
    said = ", ".join(others[:3]) + (f" and {len(others) - 3} more" if len(others) > 3 else "")
    return f"; the same with {said}"


def once(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """What a joint does to several parts alike is said of the first, and the other parts named."""
    alike: dict[object, list[Finding]] = {}
    for finding in findings:
        alike.setdefault((finding.code, finding.place, *finding.numbers.values()), []).append(finding)
    return tuple(
        replace(
            same[0],
            message=same[0].message + likewise(_named(f) for f in same if f.subject != same[0].subject),
        )
        for same in alike.values()
    )


def _named(finding: Finding) -> str:
    """The part that a message begins with."""
    return finding.message.split(":")[0].lower()


def the(surface: str) -> str:
    """`the face`, `edge a`."""
    return f"the {surface}" if surface in ("face", "back") else surface


def start(text: str) -> str:
    """The same as the beginning of a sentence."""
    return text[:1].upper() + text[1:]
