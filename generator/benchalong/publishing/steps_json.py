"""Stages, steps, questions and changes as plain data, for `plan.json`."""

from __future__ import annotations

from dataclasses import asdict

from benchalong.plan.model import Change, Job, Question, Stage, Step
from benchalong.publishing.plain import Json, Plain


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
        "to": [{key: list(names) for key, names in asdict(to).items()} for to in job.to],
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
