"""A large project made by rule: for timing, never for show. The same counts give the same files."""

from __future__ import annotations

import random
from pathlib import Path

SENTENCE = (
    "set the fence to the mark and run the first rail along it with the face down then turn it end for end "
    "check the fit in scrap before the good wood and write the setting on the bench so that it can be found "
    "again"
)
WORDS = tuple(SENTENCE.split(" "))


def write_project(folder: Path, *, steps: int, parts: int, seed: int = 7) -> None:
    """A project of so many steps (notes of about 300 words) and parts (none to four cuts each)."""
    chance = random.Random(seed)
    (folder / "steps").mkdir(parents=True)
    (folder / "project.yaml").write_text(_plan(parts, stages=max(1, steps // 20)), encoding="utf-8")
    for number in range(1, steps + 1):
        stage = (number - 1) // 20 + 1
        part = (number - 1) % parts + 1
        text = _step(number, stage=min(stage, max(1, steps // 20)), part=part, chance=chance)
        (folder / "steps" / f"{number:04}-step-{number}.md").write_text(text, encoding="utf-8")


def _plan(parts: int, *, stages: int) -> str:
    lines = ["title: A large piece", "units: inch", "sizes:", "  thick: 3/4 in", "  groove_depth: 3/8 in"]
    lines += ["stock:", "  ash: {kind: board, species: ash, thickness: thick}", "parts:"]
    for number in range(1, parts + 1):
        lines += _part(number)
    lines += ["stages:"]
    lines += [f"  stage_{number}: {{title: Stage {number}}}" for number in range(1, stages + 1)]
    return "\n".join(lines) + "\n"


def _part(number: int) -> list[str]:
    cuts = (
        "{cut: groove, on: edge b, width: 1/4 in, depth: groove_depth}",
        "{cut: tongue, on: end a, thickness: 1/4 in, length: 5/16 in}",
        "{cut: dado, on: face, at: 6 in, width: 1/2 in, depth: 1/4 in}",
        "{cut: hole, on: face, diameter: 3/8 in, depth: through, at: 9 in, across: centred}",
    )
    width, length = f"{2 + number % 7} {number % 8 + 1}/16 in", f"{14 + number % 31} {number % 4 + 1}/8 in"
    head = f"  part_{number}: {{name: Part {number}, stock: ash, width: {width}, length: {length}, count: 2"
    chosen = ", ".join(cuts[: number % 5])
    return [f"{head}, cuts: [{chosen}]}}" if chosen else f"{head}}}"]


def _step(number: int, *, stage: int, part: int, chance: random.Random) -> str:
    def sentence() -> str:
        return " ".join(chance.choices(WORDS, k=15)).capitalize() + "."

    def paragraph() -> str:
        return " ".join(sentence() for _ in range(4))

    note = "\n\n".join(
        (
            f"{paragraph()} The part is (=part_{part}.width) wide.",
            paragraph(),
            "\n".join(f"- **{sentence()}**" for _ in range(3)),
            paragraph(),
            f"{paragraph()} See (=part part_{part}).",
        )
    )
    return f"""---
stage: stage_{stage}
title: Step {number}, part {part}
why: {sentence()}
does:
  - cut: part_{part}
tools: [table saw, square]
minutes: {10 + number % 50}
cautions:
  - Keep hands away from the cutter.
checks:
  - The part is (=part_{part}.width) wide
  - Both ends are square
amiss:
  - {{sign: It rocks, cause: A chip under it, cure: Brush the table clean}}
---
{note}
"""
