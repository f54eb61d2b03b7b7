"""Questions with their replies: under their steps, and all together."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from markupsafe import Markup

from benchalong.pages.makings import Makings
from benchalong.pages.prose import Fills
from benchalong.pages.shell import Link, Shell
from benchalong.plan.model import Question, StepId
from benchalong.workings.touched import TOUCHED


@dataclass(frozen=True)
class ReplyShown:
    by: str
    when: str
    text: Markup


@dataclass(frozen=True)
class Thread:
    id: str
    title: Markup
    by: str
    when: str
    is_open: bool
    text: Markup
    replies: tuple[ReplyShown, ...]


@dataclass(frozen=True)
class StepThreads:
    """The questions under one step."""

    step: Link
    number: int
    threads: tuple[Thread, ...]


@dataclass(frozen=True)
class QuestionsPage:
    shell: Shell
    open: tuple[StepThreads, ...]
    answered: tuple[StepThreads, ...]
    """Both in the order of work."""
    open_count: int
    answered_count: int


def questions_page(makings: Makings) -> QuestionsPage:
    asked = sorted(
        makings.plan.questions.values(), key=lambda each: (makings.number[each.step], each.when, each.id)
    )
    still_open = [each for each in asked if each.status == "open"]
    answered = [each for each in asked if each.status != "open"]
    return QuestionsPage(
        shell=Shell("questions", "questions.html", "Questions"),
        open=_by_step(makings, still_open),
        answered=_by_step(makings, answered),
        open_count=len(still_open),
        answered_count=len(answered),
    )


def _by_step(makings: Makings, asked: list[Question]) -> tuple[StepThreads, ...]:
    return tuple(
        StepThreads(
            makings.step_link(step),
            makings.number[step],
            tuple(thread(each, makings.outer) for each in group),
        )
        for step, group in groupby(asked, key=lambda each: each.step)
    )


def threads_of(makings: Makings, step: StepId, fills: Fills, *, headings: int) -> tuple[Thread, ...]:
    """A step's questions, those still open first, then the newest."""
    asked = makings.worked[TOUCHED].questions.get(step, ())
    return tuple(thread(makings.plan.questions[each], fills, headings=headings) for each in asked)


def thread(asked: Question, fills: Fills, *, headings: int = 5) -> Thread:
    """A question with its replies; their own headings begin at the level given."""
    return Thread(
        id=asked.id,
        title=fills.title(asked.title),
        by=asked.by,
        when=asked.when,
        is_open=asked.status == "open",
        text=fills.fill(asked.text, headings=headings),
        replies=tuple(
            ReplyShown(reply.by, reply.when, fills.fill(reply.text, headings=headings))
            for reply in asked.replies
        ),
    )
