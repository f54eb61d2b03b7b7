"""Every name of the examples with a slip in it: caught where it is used, or as defined and never used."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TypeVar

import pytest

from benchalong.plan.cuts.given import WORDS
from benchalong.plan.formula import parse
from benchalong.plan.refused import Refused
from benchalong.plan.resolve import resolve
from benchalong.plan.tree import names_in
from benchalong.reading.project import read_project
from benchalong.reading.written import Part, Project, Size, Step
from benchalong.workings.never_used import NEVER_USED
from benchalong.workings.working import work_all
from conftest import EXAMPLES, ROOT

T = TypeVar("T")
SECTIONS = ("sizes", "stock", "parts", "assemblies", "hardware", "jigs", "stages")


@pytest.fixture(scope="module", params=EXAMPLES)
def example(request: pytest.FixtureRequest) -> Project:
    return read_project(ROOT / "content" / request.param).project


def with_key(thing: T, key: str, value: object) -> T:
    return replace(thing, **{key: value})  # type: ignore[type-var]


def slip(name: str) -> str:
    """The last two letters swapped, or one doubled where that changes nothing."""
    swapped = name[:-2] + name[-1] + name[-2]
    return swapped if swapped != name else name + name[-1]


def what_is_said(project: Project) -> list[str]:
    resolved = resolve(project)
    if resolved.plan is None:
        return [problem.message for problem in resolved.problems]
    return [finding.message for finding in work_all(resolved.plan, (NEVER_USED,)).findings]


def test_the_examples_as_they_stand_have_nothing_said_of_their_names(example: Project) -> None:
    assert what_is_said(example) == []


@pytest.mark.parametrize("section", SECTIONS)
def test_a_slip_where_a_name_is_defined(example: Project, section: str) -> None:
    defined = getattr(example, section)
    for name in defined:
        renamed = {slip(each) if each == name else each: told for each, told in defined.items()}
        said = what_is_said(with_key(example, section, renamed))
        assert any(name in message or slip(name) in message for message in said), name


def drawn_only(project: Project) -> Project:
    """Without steps and questions, where they can't make a difference."""
    return replace(project, steps=(), questions=(), builders=())


def speaks_of(typed: str, message: str) -> bool:
    """Whether a message is about the name, or about the size that a part or stock doesn't have."""
    return typed.partition(".")[0] in message or "has no" in message


def misspelt(formula: str) -> Iterator[tuple[str, str]]:
    """The formula with a slip in one of its names at a time, and that name."""
    try:
        names = names_in(parse(formula))
    except Refused:
        return
    for name in names:
        start, end = name.span
        yield formula[:start] + slip(name.name) + formula[end:], slip(name.name)


def test_a_slip_where_a_size_uses_a_name(example: Project) -> None:
    for size, told in example.sizes.items():
        for formula, typed in misspelt(told.formula):
            sizes = {**example.sizes, size: Size(formula, told.note)}
            said = what_is_said(replace(drawn_only(example), sizes=sizes))
            assert any(speaks_of(typed, message) for message in said), (size, typed)


def slips_in(part: Part) -> Iterator[tuple[Part, str]]:
    for key in ("width", "length", "thickness"):
        for formula, typed in misspelt(getattr(part, key) or ""):
            yield with_key(part, key, formula), typed
    for index, cut in enumerate(part.cuts):
        for key, text in cut.sizes.items():
            if text in WORDS:
                continue
            for formula, typed in misspelt(text):
                changed = replace(cut, sizes={**cut.sizes, key: formula})
                yield replace(part, cuts=(*part.cuts[:index], changed, *part.cuts[index + 1 :])), typed
    yield replace(part, stock=slip(part.stock)), slip(part.stock)


def test_a_slip_where_a_part_uses_a_name(example: Project) -> None:
    for name, part in example.parts.items():
        for changed, typed in slips_in(part):
            said = what_is_said(replace(drawn_only(example), parts={**example.parts, name: changed}))
            assert any(speaks_of(typed, message) for message in said), (name, typed)


def test_a_slip_where_a_place_uses_a_name(example: Project) -> None:
    for name, told in example.assemblies.items():
        for index, place in enumerate(told.place):
            changed = replace(place, of=slip(place.of))
            places = (*told.place[:index], changed, *told.place[index + 1 :])
            assemblies = {**example.assemblies, name: replace(told, place=places)}
            said = what_is_said(replace(drawn_only(example), assemblies=assemblies))
            assert any(slip(place.of) in message for message in said)


def slips_in_step(step: Step) -> Iterator[Step]:
    yield replace(step, stage=slip(step.stage))
    for key in ("parts", "jigs", "hardware"):
        names: tuple[str, ...] = getattr(step, key)
        for name in names:
            yield with_key(step, key, tuple(slip(each) if each == name else each for each in names))
    for does in step.does:
        yield replace(step, does=(replace(does, to=tuple(map(slip, does.to))),))


def test_a_slip_where_a_step_uses_a_name(example: Project) -> None:
    for index, step in enumerate(example.steps):
        for changed in slips_in_step(step):
            steps = (*example.steps[:index], changed, *example.steps[index + 1 :])
            said = what_is_said(replace(example, steps=steps, questions=()))
            assert any("there is no" in message for message in said), changed
