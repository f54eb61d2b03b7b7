"""The paper edition: everything in order on one page, to be printed and taken to the bench."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.pages.cut_list import StockShown, stocks_shown
from benchalong.pages.joint import JointPage, joint_page
from benchalong.pages.makings import Makings
from benchalong.pages.part import PartPage, part_page
from benchalong.pages.piece import PiecePage, piece_page
from benchalong.pages.questions import Thread, threads_of
from benchalong.pages.shell import Shell
from benchalong.pages.sizes import SizeLine, sizes_shown
from benchalong.pages.step import StepShown, step_shown
from benchalong.pages.wood_page import YearShown, year_shown
from benchalong.plan.model import Stage


@dataclass(frozen=True)
class PaperStep:
    step: StepShown
    threads: tuple[Thread, ...]


@dataclass(frozen=True)
class PaperStage:
    id: str
    number: int
    title: Markup
    about: Markup
    each_step: Callable[[], Iterator[PaperStep]]
    """Made one after the other: a long project's pictures need not all be in memory at once."""


@dataclass(frozen=True)
class PaperPage:
    shell: Shell
    piece: PiecePage
    year: YearShown
    stocks: tuple[StockShown, ...]
    sizes: tuple[SizeLine, ...]
    stages: tuple[PaperStage, ...]
    each_part: Callable[[], Iterator[PartPage]]
    each_joint: Callable[[], Iterator[JointPage]]


def paper_page(makings: Makings) -> PaperPage:
    stages = makings.plan.stages.values()
    return PaperPage(
        shell=Shell("paper", "paper.html", f"{makings.title}: paper edition"),
        piece=piece_page(makings),
        year=year_shown(makings),
        stocks=stocks_shown(makings),
        sizes=sizes_shown(makings),
        stages=tuple(_stage(makings, stage, number) for number, stage in enumerate(stages, start=1)),
        each_part=lambda: (part_page(makings, part) for part in makings.plan.parts.values()),
        each_joint=lambda: (joint_page(makings, joint) for joint in makings.plan.joints.values()),
    )


def _stage(makings: Makings, stage: Stage, number: int) -> PaperStage:
    def steps() -> Iterator[PaperStep]:
        for step in (makings.plan.steps[each] for each in stage.steps):
            yield PaperStep(
                step_shown(makings, step, makings.paper, headings=4),
                threads_of(makings, step.id, makings.paper, headings=6),
            )

    return PaperStage(
        stage.id, number, makings.stage_titles[stage.id], makings.paper.fill(stage.about), steps
    )
