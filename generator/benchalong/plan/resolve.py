"""From what was written to what it means, in passes.

Each pass adds to the draft and to its problems; none stops at the first. What hangs on something that
is broken stays silent, so that one slip makes one message.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import reduce
from typing import Literal, TypeAlias, cast

from benchalong.ground.marks import Path
from benchalong.ground.names import Names
from benchalong.ground.problems import Problem
from benchalong.plan import model
from benchalong.plan.boards import take_boards
from benchalong.plan.boxes import measure_boxes
from benchalong.plan.brought_to_size import bring_to_size
from benchalong.plan.builders import look_over_builders
from benchalong.plan.cuts.resolving import resolve_cuts
from benchalong.plan.draft import Draft
from benchalong.plan.fitting import fit_parts
from benchalong.plan.hardware.holding import take_holding
from benchalong.plan.hardware.seating import seat_hardware
from benchalong.plan.hardware.taking import take_hardware
from benchalong.plan.joints.joining import join_parts
from benchalong.plan.matches import take_matches
from benchalong.plan.names import work_out_names
from benchalong.plan.parts import make_parts
from benchalong.plan.piece import find_piece
from benchalong.plan.placing import place_assemblies
from benchalong.plan.questions import take_questions
from benchalong.plan.sawing import take_sawing
from benchalong.plan.shapes import find_shapes
from benchalong.plan.sizes import settle_precision, take_sizes
from benchalong.plan.steps import take_steps
from benchalong.plan.stock import take_stock
from benchalong.plan.things import take_texts, take_things
from benchalong.plan.wood import take_wood
from benchalong.reading import written

Pass: TypeAlias = Callable[[Draft], Draft]

PASSES: tuple[Pass, ...] = (
    fit_parts,
    work_out_names,
    settle_precision,
    take_sizes,
    take_stock,
    measure_boxes,
    resolve_cuts,
    place_assemblies,
    find_piece,
    make_parts,
    take_hardware,
    join_parts,
    seat_hardware,
    find_shapes,
    take_wood,
    take_sawing,
    take_boards,
    take_matches,
    bring_to_size,
    take_holding,
    take_things,
    take_texts,
    take_steps,
    take_questions,
    look_over_builders,
)

DEFAULT_THEME = "bench"


@dataclass(frozen=True)
class Resolved:
    plan: model.Plan | None
    """None when there were problems, here or in what could not be read."""
    problems: tuple[Problem, ...]


def resolve(project: written.Project, unreadable: frozenset[Path] = frozenset()) -> Resolved:
    """The plan, or every problem that keeps it from being understood.

    Nothing is said about paths in `unreadable`, which have been reported, nor about what hangs on them.
    """
    draft = reduce(lambda so_far, step: step(so_far), PASSES, Draft(project, unreadable))
    plan = None if draft.problems or unreadable else _plan(draft)
    return Resolved(plan, draft.problems)


def _plan(draft: Draft) -> model.Plan:
    project = draft.written
    return model.Plan(
        id=project.id,
        title=draft.title,
        about=draft.about,
        edition=project.edition,
        units=project.units,
        precision=draft.precision,
        projection=cast(Literal["third angle", "first angle"], project.projection),
        currency=project.currency,
        origin=model.Origin(project.origin.plan, project.origin.rights, project.origin.by),
        shop=_shop(project.shop, draft),
        sizes=draft.sizes,
        stock=draft.stock,
        parts=draft.parts,
        assemblies=draft.assemblies,
        piece=draft.piece,
        joints=draft.joints,
        shapes=draft.shapes,
        copies=draft.copies,
        hardware=draft.hardware,
        jigs=draft.jigs,
        finish=draft.finish,
        changes=draft.changes,
        cautions=draft.cautions,
        words=project.words,
        ask=model.HandOver(project.ask.mail, project.ask.board),
        look=_look(project.look),
        stages=draft.stages,
        steps=draft.steps,
        questions=draft.questions,
        pictures=project.pictures,
        used_sizes=Names(draft.used & project.sizes.keys()),
        house=draft.house,
        woods=draft.woods,
        builder_airs=draft.builder_airs,
        loads=draft.loads,
        fitted=draft.brought_to_size,
        hanging=draft.hanging,
        standing=draft.standing,
        rates=draft.rates,
        boards=draft.boards,
        spares=project.spares,
        test_pieces=draft.test_pieces,
        matches=draft.matches,
        chosen_at_the_bench=project.chosen_at_the_bench,
    )


def _shop(shop: written.Shop, draft: Draft) -> model.Shop:
    return model.Shop(
        shop.tools,
        shop.country,
        shop.session,
        shop.pace or Fraction(1),
        shop.bench,
        draft.shop_air,
        draft.sawing,
    )


def _look(look: written.Look) -> model.Look:
    return model.Look(look.theme or DEFAULT_THEME, look.language, look.accent, look.paper)
