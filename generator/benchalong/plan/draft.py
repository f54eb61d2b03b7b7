"""The plan while it is being resolved: what the passes have made of it so far. Replaced, never changed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from benchalong.ground.lengths import INCH, MILLIMETRE, Length, Point3
from benchalong.ground.marks import Path
from benchalong.ground.problems import Problem
from benchalong.ground.prose import Prose
from benchalong.ground.shown import Precision
from benchalong.plan import model, rough
from benchalong.plan.quantity import Quantity
from benchalong.reading import written
from benchalong.trade.amounts import Rates
from benchalong.trade.species import Woods, woods

SECTIONS = ("sizes", "stock", "parts", "joints", "assemblies", "hardware", "jigs")
"""What shares one name space."""

Box: TypeAlias = Point3
"""(length, width, thickness), as (along, across, down)."""


@dataclass(frozen=True)
class Known:
    """A name of the plan's arithmetic, worked out."""

    value: Quantity | None
    """None when it can't be worked out, which has been reported."""
    follows: frozenset[str] = frozenset()
    """The named sizes it follows from, itself not included."""


@dataclass(frozen=True)
class Draft:
    written: written.Project
    unreadable: frozenset[Path] = frozenset()
    problems: tuple[Problem, ...] = ()
    used: frozenset[str] = frozenset()
    """Names that some formula or text uses."""
    names: Mapping[str, Known] = field(default_factory=dict)
    """Sizes bare, the rest dotted: `stile`, `door_rail.length`, `cherry.thickness`."""
    fitted: Mapping[str, Known] = field(default_factory=dict)
    """Sizes of parts that fit a joint, as measured between their neighbours: `door_panel.width`."""
    fitted_at: Mapping[Path, Point3] = field(default_factory=dict)
    """Where such a part stands that has no `at`, by the path of its place."""
    precision: Precision = field(default_factory=Precision)
    sizes: Mapping[str, model.Size] = field(default_factory=dict)
    stock: Mapping[str, model.Stock] = field(default_factory=dict)
    boxes: Mapping[str, Box] = field(default_factory=dict)
    """Of the parts whose three sizes are known."""
    cuts: Mapping[str, tuple[model.Cut, ...]] = field(default_factory=dict)
    assemblies: Mapping[str, model.Assembly] = field(default_factory=dict)
    piece: str | None = None
    parts: Mapping[str, model.Part] = field(default_factory=dict)
    joints: Mapping[str, model.Joint] = field(default_factory=dict)
    joint_cuts: Mapping[str, tuple[model.Cut, ...]] = field(default_factory=dict)
    """What joints take from each copy, by its mark from the piece down, in the part's own directions."""
    shapes: Mapping[str, model.Shape] = field(default_factory=dict)
    copies: tuple[model.Copy, ...] = ()
    hardware: Mapping[str, model.Hardware] = field(default_factory=dict)
    jigs: Mapping[str, model.Jig] = field(default_factory=dict)
    finish: Mapping[str, model.Finish] = field(default_factory=dict)
    changes: tuple[model.Change, ...] = ()
    stages: Mapping[str, model.Stage] = field(default_factory=dict)
    steps: Mapping[str, model.Step] = field(default_factory=dict)
    questions: Mapping[str, model.Question] = field(default_factory=dict)
    title: Prose = ()
    about: Prose = ()
    cautions: tuple[Prose, ...] = ()
    woods: Woods = field(default_factory=woods)
    shop_air: model.Air = field(default_factory=model.Air)
    house: model.Air = field(default_factory=model.Air)
    sawing: rough.Sawing = field(default_factory=rough.usual_sawing)
    boards: tuple[rough.Board, ...] = ()
    test_pieces: Mapping[str, rough.TestPiece] = field(default_factory=dict)
    matches: Mapping[str, rough.Match] = field(default_factory=dict)
    builder_airs: tuple[model.BuilderAir, ...] = ()
    loads: Mapping[str, model.Load] = field(default_factory=dict)
    brought_to_size: Mapping[str, model.Fitted] = field(default_factory=dict)
    hanging: model.Hanging | None = None
    standing: model.StandsFree | None = None
    rates: Rates = field(default_factory=Rates)

    @property
    def unit(self) -> Length:
        """What a bare number counts in where a length is needed."""
        return INCH if self.written.units == "inch" else MILLIMETRE

    def is_lost(self, *path: str | int) -> bool:
        """Whether something stands at the path, or around it, that could not be read."""
        return any(path[:length] in self.unreadable for length in range(1, len(path) + 1))
