"""Stages and steps: jobs led to what they are done to, prose filled, parts touched gathered."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from benchalong.ground.marks import Path
from benchalong.ground.prose import PartName, Prose
from benchalong.plan import model
from benchalong.plan.checks import checks_of
from benchalong.plan.done_to import DoneToWords, job_to, parts_of_joint
from benchalong.plan.draft import Draft
from benchalong.plan.prose import Filling
from benchalong.plan.reckoning import Reckoning
from benchalong.reading import written


def take_steps(draft: Draft) -> Draft:
    """Adds `stages` and `steps`, both in the order of work."""
    sums = Reckoning(draft)
    taking = _Taking(sums)
    steps = {step.id: taking.step(step) for step in draft.written.steps}
    stages = {name: taking.stage(name, stage, steps.values()) for name, stage in draft.written.stages.items()}
    return sums.done(steps=steps, stages=stages)


class _Taking:
    def __init__(self, sums: Reckoning) -> None:
        self.sums = sums
        self.project = sums.draft.written
        self.filling = Filling(sums)
        self.opened = _opened(self.project.assemblies)
        self.words = DoneToWords(sums)
        self.joined = {name: parts_of_joint(joint) for name, joint in self.project.joints.items()}

    def stage(self, name: str, stage: written.Stage, steps: Iterable[model.Step]) -> model.Stage:
        own = tuple(step.id for step in steps if step.stage == name)
        return model.Stage(name, self.filling.fill(stage.title), self.filling.fill(stage.about), own)

    def step(self, step: written.Step) -> model.Step:
        file, fill, fill_all = step.file, self.filling.fill, self.filling.fill_all
        self.sums.knows("stages", step.stage, (file, "stage"), among=self.project.stages)
        does = tuple(self.job(does, (file, "does", index)) for index, does in enumerate(step.does))
        parts = self.names("parts", step.parts, (file, "parts"))
        why, note, title = fill(step.why), fill(step.note), fill(step.title)
        checks = checks_of(step, fill_all(step.checks))
        amiss = tuple(model.Amiss(fill(each.sign), fill(each.cause), fill(each.cure)) for each in step.amiss)
        return model.Step(
            id=step.id,
            stage=step.stage,
            title=title,
            why=why,
            does=does,
            parts=_each_once(
                (*self.parts_of(does), *parts, *_named((title, why, note, *(check.text for check in checks))))
            ),
            tools=step.tools,
            jigs=_each_once(
                (*(name for job in does for name in job.jigs), *self.names("jigs", step.jigs, (file, "jigs")))
            ),
            hardware=_each_once(
                (
                    *(name for job in does for name in job.hardware),
                    *self.names("hardware", step.hardware, (file, "hardware")),
                )
            ),
            minutes=step.minutes,
            wait=step.wait,
            hands=step.hands,
            cautions=fill_all(step.cautions),
            checks=checks,
            amiss=amiss,
            ask=fill_all(step.ask),
            pictures=tuple(
                self.picture(picture, (file, "pictures", index))
                for index, picture in enumerate(step.pictures)
            ),
            note=note,
            file=step.file,
            note_pictures=step.note_pictures,
        )

    def job(self, does: written.Does, path: Path) -> model.Job:
        many = len(does.to) > 1
        to = [
            self.words.done_to(item, (*path, does.job, index) if many else (*path, does.job))
            for index, item in enumerate(does.to)
        ]
        return job_to(does.job, tuple(one for one in to if one is not None))

    def names(self, section: str, names: tuple[str, ...], path: Path) -> tuple[str, ...]:
        among: Mapping[str, object] = getattr(self.project, section)
        for index, name in enumerate(names):
            self.sums.knows(section, name, (*path, index) if len(names) > 1 else path, among=among)
        return names

    def parts_of(self, does: Iterable[model.Job]) -> Iterable[str]:
        for job in does:
            yield from job.parts
            for assembly in job.assemblies:
                yield from self.opened.get(assembly, ())
            for to in job.to:
                for joint in to.joints if not to.parts else ():
                    yield from (part for part in self.joined[joint] if part in self.project.parts)

    def picture(self, picture: written.Picture, path: Path) -> model.Picture:
        self.sums.knows("pictures", picture.file, (*path, "file"), among=dict.fromkeys(self.project.pictures))
        return model.Picture(picture.file, picture.alt, self.filling.fill(picture.caption))


def _opened(assemblies: Mapping[str, written.Assembly]) -> dict[str, tuple[str, ...]]:
    """The parts in each assembly and in the assemblies it holds, each once."""
    return {name: _parts_in(name, assemblies) for name in assemblies}


def _parts_in(name: str, assemblies: Mapping[str, written.Assembly]) -> tuple[str, ...]:
    parts: dict[str, None] = {}
    seen, waiting = {name}, [name]
    while waiting:
        for place in assemblies[waiting.pop()].place:
            if place.kind == "part":
                parts[place.of] = None
            elif place.of in assemblies and place.of not in seen:
                seen.add(place.of)
                waiting.append(place.of)
    return tuple(parts)


def _named(texts: Iterable[Prose]) -> Iterable[str]:
    return (piece.part for text in texts for piece in text if isinstance(piece, PartName))


def _each_once(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))
