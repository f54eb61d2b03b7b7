"""Stages, steps, questions and changes as plain data, for `plan.json`."""

from __future__ import annotations

from dataclasses import fields

from benchalong.ground.put_off import put_off
from benchalong.plan.model import Change, DoneTo, Job, Plan, Question, Stage, Step
from benchalong.publishing.plain import Json, Plain, in_short

STEPS = "steps"
"""The hole that stands for all of them in a text that is kept: they are told in words, and words change."""
DONE_TO = tuple(field.name for field in fields(DoneTo))


def with_steps(text: str, plan: Plan) -> str:
    """The text of `plan.json` with the steps that were put off in it."""
    steps = in_short(steps_json(plan, Plain(plan.units, plan.precision)))
    return text.replace(f'"{put_off(STEPS)}"', steps, 1)


def steps_json(plan: Plan, plain: Plain) -> list[Json]:
    return [step_json(step, plain) for step in plan.steps.values()]


def stage_json(stage: Stage, plain: Plain) -> Json:
    prose = plain.prose
    return {
        "id": stage.id,
        "title": prose(stage.title),
        "about": prose(stage.about),
        "steps": list(stage.steps),
    }


def step_json(step: Step, plain: Plain) -> Json:
    prose = plain.prose
    return {
        "id": step.id,
        "file": step.file,
        "stage": step.stage,
        "title": prose(step.title),
        "why": prose(step.why),
        "does": [job_json(job) for job in step.does],
        "parts": list(step.parts),
        "tools": list(step.tools),
        "jigs": list(step.jigs),
        "hardware": list(step.hardware),
        "minutes": step.minutes,
        "wait": step.wait,
        "hands": step.hands,
        "cautions": [prose(caution) for caution in step.cautions],
        "note": prose(step.note),
        "checks": [{"key": check.key, "text": prose(check.text)} for check in step.checks],
        "amiss": [
            {"sign": prose(one.sign), "cause": prose(one.cause), "cure": prose(one.cure)}
            for one in step.amiss
        ],
        "ask": [prose(ask) for ask in step.ask],
        "pictures": [
            {"file": picture.file, "alt": picture.alt, "caption": prose(picture.caption)}
            for picture in step.pictures
        ],
    }


def job_json(job: Job) -> Json:
    return {
        "job": job.kind,
        "parts": list(job.parts),
        "assemblies": list(job.assemblies),
        "hardware": list(job.hardware),
        "jigs": list(job.jigs),
        "to": [{name: list(getattr(to, name)) for name in DONE_TO} for to in job.to],
    }


def question_json(question: Question, plain: Plain) -> Json:
    prose = plain.prose
    return {
        "id": question.id,
        "step": question.step,
        "by": question.by,
        "when": question.when,
        "status": question.status,
        "title": prose(question.title),
        "text": prose(question.text),
        "replies": [
            {"by": reply.by, "when": reply.when, "text": prose(reply.text)} for reply in question.replies
        ],
    }


def change_json(change: Change) -> Json:
    return {"kind": change.kind, "of": change.of, "was": change.was, "why": change.why}
