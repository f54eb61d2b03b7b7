"""Questions and their replies, each led to its step."""

from __future__ import annotations

from typing import Literal, cast

from benchalong.plan import model
from benchalong.plan.draft import Draft
from benchalong.plan.prose import Filling
from benchalong.plan.reckoning import Reckoning
from benchalong.reading import written


def take_questions(draft: Draft) -> Draft:
    """Adds `questions`."""
    sums = Reckoning(draft)
    filling = Filling(sums)
    return sums.done(
        questions={question.id: _question(question, filling) for question in draft.written.questions}
    )


def _question(question: written.Question, filling: Filling) -> model.Question:
    steps = {step.id: step for step in filling.sums.draft.written.steps}
    filling.sums.knows("steps", question.step, (question.file, "step"), among=steps)
    return model.Question(
        question.id,
        question.step,
        question.by,
        question.when,
        cast(Literal["open", "answered"], question.status),
        filling.fill(question.title),
        filling.fill(question.text),
        tuple(model.Reply(reply.by, reply.when, filling.fill(reply.text)) for reply in question.replies),
    )
