"""What the pages' own scripts need of the whole site, as scripts: `file://` can't fetch."""

from __future__ import annotations

import json
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.pages.makings import Makings


@dataclass(frozen=True)
class Data:
    """A file that is its own text."""

    text: Markup

    def __str__(self) -> str:
        return self.text


def edition_script(makings: Makings) -> str:
    """Which edition this is: in a file of its own, so that a page stays the same file when only the words of
    another change."""
    return f"document.documentElement.dataset.edition = {json.dumps(makings.edition, ensure_ascii=False)};\n"


def checks_script(makings: Makings) -> str:
    """Every check's key, by stage and step: what progress is counted from."""
    stages = [
        {"id": stage.id, "steps": [{"id": step, "checks": _keys(makings, step)} for step in stage.steps]}
        for stage in makings.plan.stages.values()
    ]
    piece = [key for step in makings.plan.steps for key in _keys(makings, step)]
    text = json.dumps({"piece": piece, "stages": stages}, ensure_ascii=False, separators=(",", ":"))
    return f"var benchalongChecks = {text};\n"


def _keys(makings: Makings, step: str) -> list[str]:
    return [check.key for check in makings.plan.steps[step].checks]
