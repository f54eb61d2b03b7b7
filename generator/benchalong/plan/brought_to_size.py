"""The pass for what is fitted, not just cut: what it is measured on, after which job, and what is left on
until then."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import cast

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.ground.words import nearest_words
from benchalong.plan import model
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.reading import written
from benchalong.reading.language import JOBS
from benchalong.reading.written import PROJECT_FILE

UNTIL = re.compile(r"\s+until\b\s*")
UNTIL_WORDS = ("hung", "fitted", "glued")
JOB_EXPECTED = "a job and what it is done to: glue up case"
DONE_TO = ("parts", "assemblies", "hardware", "jigs")
"""The sections whose names may follow a job word."""


def bring_to_size(draft: Draft) -> Draft:
    """Adds `brought_to_size`, by part or assembly."""
    sums = Reckoning(draft)
    found: dict[str, model.Fitted] = {}
    for section in ("parts", "assemblies"):
        entries = draft.written.parts if section == "parts" else draft.written.assemblies
        for name, entry in entries.items():
            if entry.cut_when or entry.leave:
                found[name] = _fitted(entry, (PROJECT_FILE, section, name), sums)
    return sums.done(brought_to_size=found)


def _fitted(entry: written.Part | written.Assembly, path: Path, sums: Reckoning) -> model.Fitted:
    when = entry.cut_when or written.Fitting()
    measured = parts_or_assemblies(when.measured, (*path, "cut_when", "measured"), sums)
    if path[-1] in measured:
        own = (when.measured.index(str(path[-1])),) if len(when.measured) > 1 else ()
        place = (*path, "cut_when", "measured", *own)
        sums.say(place, f"{path[-1]} can't be measured on itself", "what it meets")
    after = job_named(when.after, (*path, "cut_when", "after"), sums) if when.after else None
    if entry.leave is None:
        return model.Fitted(measured, after)
    return _left_on(model.Fitted(measured, after), entry.leave, (*path, "leave"), sums)


def _left_on(fitted: model.Fitted, leave: written.Leave, path: Path, sums: Reckoning) -> model.Fitted:
    """With what stays on. A size that isn't said is the one for both, or nothing."""
    size, _, until = UNTIL.sub("\n", leave.both.strip(), count=1).partition("\n")
    both = _over(size, (*path, "is"), sums) if size else Length(0)
    wider = both if leave.width is None else _over(leave.width, (*path, "width"), sums)
    longer = both if leave.length is None else _over(leave.length, (*path, "length"), sums)
    if leave.until:
        until_word, job = _until(leave.until, (*path, "until"), sums)
    else:
        until_word, job = _until(until, (*path, "is"), sums)
    used = (text for text in (size, leave.width, leave.length) if text)
    follows = tuple(sorted({name for text in used for name in sums.follows(text)}))
    return replace(fitted, wider=wider, longer=longer, until=until_word, until_job=job, follows=follows)


def _over(text: str, path: Path, sums: Reckoning) -> Length | None:
    over = sums.length(text, path)
    if over is not None and over <= 0:
        expected = "a length above zero: 1/16 in until hung"
        sums.say(path, f"what is left on comes to {sums.shown(over)}", expected)
        return None
    return over


def _until(text: str, path: Path, sums: Reckoning) -> tuple[model.Until, model.Job | None]:
    if not text or text in UNTIL_WORDS:
        return cast(model.Until, text or "fitted"), None
    if _word_of(text) in (None, text):
        sums.say(
            path,
            f"`until {text}` leads to no job",
            f"until {', '.join(UNTIL_WORDS)}, or {JOB_EXPECTED}",
            nearest_words(text, UNTIL_WORDS) or nearest_words(text, JOBS),
        )
        return "fitted", None
    return "fitted", job_named(text, path, sums)


def job_named(text: str, path: Path, sums: Reckoning) -> model.Job | None:
    """A job in words, `glue up case`; None, and a problem, where it is none."""
    word = _word_of(text)
    if word is None:
        begins = " ".join(text.split()[:-1]) or text
        sums.say(path, f"{text} is no job", JOB_EXPECTED, nearest_words(begins, JOBS))
        return None
    names = tuple(name for name in re.split(r"[\s,]+", text[len(word) :].strip()) if name and name != "and")
    project = sums.draft.written
    among = {name: section for section in DONE_TO for name in getattr(project, section)}
    if not names:
        sums.say(path, f"{text} doesn't say what to", JOB_EXPECTED)
    found: dict[str, list[str]] = {section: [] for section in DONE_TO}
    for name in names:
        if name in among:
            found[among[name]].append(name)
        elif not any(sums.draft.is_lost(PROJECT_FILE, section, name) for section in DONE_TO):
            sums.unknown("part, assembly, piece of hardware or jig", name, path, among)
    parts, assemblies, hardware, jigs = (tuple(found[section]) for section in DONE_TO)
    return model.Job(word, parts, assemblies, hardware, jigs)


def _word_of(text: str) -> str | None:
    """The job word a text begins with, the longest that fits."""
    fitting = [word for word in JOBS if text == word or text.startswith(word + " ")]
    return max(fitting, key=len, default=None)


def parts_or_assemblies(names: tuple[str, ...], path: Path, sums: Reckoning) -> tuple[str, ...]:
    """Those that are; says so of each that is neither."""
    project = sums.draft.written
    among: dict[str, object] = {**project.parts, **project.assemblies}
    known = []
    for index, name in enumerate(names):
        if name in among:
            known.append(name)
        elif not any(sums.draft.is_lost(PROJECT_FILE, section, name) for section in ("parts", "assemblies")):
            sums.unknown("part or assembly", name, (*path, index) if len(names) > 1 else path, among)
    return tuple(known)
