"""`steps/NN-name.md`: a block of keys between two `---` lines, and the note in Markdown."""

from __future__ import annotations

import re

from benchalong.ground.marks import Mark, Path
from benchalong.ground.words import nearest_words
from benchalong.reading import language
from benchalong.reading.language import JOBS, Kind
from benchalong.reading.markdown import PICTURE_FILES, markdown
from benchalong.reading.shape import Entry
from benchalong.reading.tally import Block, Source, Tally
from benchalong.reading.written import Amiss, Does, Picture, Step
from benchalong.reading.yamltree import Value, read_block

BAR = re.compile(r"---[ \t]*$", re.MULTILINE)
FILE_NAME = re.compile(r"(\d{1,6})-([a-z0-9]+(?:-[a-z0-9]+)*)\.md\Z")


def step(file: str, text: str, tally: Tally) -> Step:
    """The step in a file whose name is known to be right."""
    found = FILE_NAME.match(file.rpartition("/")[2])
    number, name = (int(found[1]), found[2]) if found else (0, "")
    front, note = split_front(file, text, tally)
    if front is None:
        return Step(id=name, file=file, number=number)
    path: Path = (file, "note")
    values = read_block(front, tally)
    prose, pictures = markdown(note, path, tally)
    if not isinstance(values, dict):
        _no_keys(values, front, tally)
        return Step(id=name, file=file, number=number, note=prose, note_pictures=pictures)
    entry = Entry(language.STEP, values, (file,), tally)
    checks, check_sources = entry.proses_as_typed("checks")
    return Step(
        id=name,
        file=file,
        number=number,
        stage=entry.name("stage"),
        title=entry.prose("title"),
        why=entry.prose("why"),
        does=_does(entry),
        parts=entry.names("parts"),
        tools=entry.texts("tools"),
        jigs=entry.names("jigs"),
        hardware=entry.names("hardware"),
        minutes=entry.count("minutes"),
        wait=entry.text("wait"),
        hands=entry.count("hands") or 1,
        cautions=entry.proses("cautions"),
        checks=checks,
        check_sources=check_sources,
        amiss=entry.list_of("amiss", _amiss, language.AMISS),
        ask=entry.proses("ask"),
        pictures=entry.list_of("pictures", _picture, language.PICTURE),
        note=prose,
        note_pictures=pictures,
    )


def split_front(file: str, text: str, tally: Tally) -> tuple[Block | None, str]:
    """The block at the head of a note, and the Markdown after it; the tally hears where both stand.
    No block, and a problem, when there is none."""
    source = tally.sources[file] = Source(text)
    opens = BAR.match(text)
    closes = BAR.search(text, opens.end()) if opens else None
    if opens is None or closes is None:
        tally.unreadable.add((file,))
        found = (
            "this note doesn't begin with a `---` line"
            if opens is None
            else "the block that begins here has no second `---` line"
        )
        tally.add_at(
            Mark(file, 1, 1, 3), found, expected="a `---` line, the keys of the step, and a `---` line again"
        )
        return None, ""
    block = Block((file,), 2, text[opens.end() + 1 : closes.start()])
    source.blocks.append(block)
    source.notes.append(((file, "note"), text.count("\n", 0, closes.end()) + 2))
    return block, text[closes.end() + 1 :]


def _no_keys(values: Value, block: Block, tally: Tally) -> None:
    """Nothing, or no table, between the two lines; what could not be read has been reported."""
    if values is None or isinstance(values, (str, list)):
        tally.unreadable.add(block.path)
        tally.add_at(
            Mark(str(block.path[0]), block.first_line, 1),
            "no keys stand between the two `---` lines",
            expected="`stage: …` and `title: …`",
        )


def _does(entry: Entry) -> tuple[Does, ...]:
    value = entry.value("does", Kind.JOBS)
    path = (*entry.path, "does")
    if value is None:
        return ()
    if isinstance(value, list):
        jobs = [_job(entry, item, (*path, index)) for index, item in enumerate(value)]
        return tuple(job for job in jobs if job is not None)
    entry.wrong_kind(value, path, "a list of jobs: `- mill: [door_stile, door_rail]`")
    return ()


def _job(entry: Entry, value: Value, path: Path) -> Does | None:
    if not isinstance(value, dict) or len(value) != 1:
        entry.wrong_kind(value, path, "one job and what it is done to: `- mill: [door_stile, door_rail]`")
        return None
    ((job, names),) = value.items()
    word = entry.one_of(job, JOBS, (*path, job), "a job", on="key")
    to = entry.names_in(names, (*path, job))
    return Does(word, to) if word else None


def _amiss(entry: Entry) -> Amiss:
    return Amiss(sign=entry.prose("sign"), cause=entry.prose("cause"), cure=entry.prose("cure"))


def _picture(entry: Entry) -> Picture:
    file = entry.text("file").removeprefix("../")
    is_there = file in entry.tally.pictures
    if file and not is_there:
        entry.complain(
            "file",
            f"there is no picture {file} in the project",
            PICTURE_FILES,
            nearest_words(file, entry.tally.pictures),
        )
    return Picture(file=file if is_there else "", alt=entry.text("alt"), caption=entry.prose("caption"))
