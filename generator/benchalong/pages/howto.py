"""The build as schema.org's HowTo, for whoever reads sites by machine.

Stages are HowToSection, steps HowToStep. A time is given only where every step says its own: a
number nobody wrote is not made up. https://schema.org/HowTo
"""

from __future__ import annotations

from typing import Any

from markupsafe import Markup

from benchalong.pages.makings import Makings
from benchalong.pages.step import embedded_json
from benchalong.plan.model import Stage, Step


def how_to(makings: Makings, tools: tuple[str, ...]) -> Markup:
    plan = makings.plan
    said: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": makings.title,
        "description": makings.outer.plain(plan.about) or makings.title,
        "inLanguage": plan.look.language or "en",
        "tool": [{"@type": "HowToTool", "name": tool} for tool in tools],
        "supply": [{"@type": "HowToSupply", "name": name} for name in _supplies(makings)],
        "step": [_section(makings, stage) for stage in plan.stages.values()],
    }
    minutes = [step.minutes for step in makings.order if step.minutes is not None]
    if minutes and len(minutes) == len(makings.order):
        said["totalTime"] = f"PT{sum(minutes)}M"
    return embedded_json(said)


def _supplies(makings: Makings) -> list[str]:
    plan = makings.plan
    finishes = [finish.what for finish in plan.finish.values()]
    return (
        [stock.name for stock in plan.stock.values()]
        + [thing.name for thing in plan.hardware.values()]
        + finishes
    )


def _section(makings: Makings, stage: Stage) -> dict[str, Any]:
    return {
        "@type": "HowToSection",
        "name": makings.inner.plain(stage.title),
        "itemListElement": [_step(makings, makings.plan.steps[step]) for step in stage.steps],
    }


def _step(makings: Makings, step: Step) -> dict[str, Any]:
    name = makings.inner.plain(step.title)
    said: dict[str, Any] = {
        "@type": "HowToStep",
        "name": name,
        "text": makings.note_words(step) or makings.inner.plain(step.why) or name,
        "url": f"steps/{step.id}.html",
    }
    return said
