"""What can be found: one list, for the page with every link and for the script that searches."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import NamedTuple

from benchalong.pages.makings import Makings
from benchalong.pages.part import part_line
from benchalong.pages.shell import Shell
from benchalong.pages.sizes import sizes_shown
from benchalong.pages.words import words_shown

KINDS = {
    "step": "Steps",
    "part": "Parts",
    "question": "Questions",
    "size": "Sizes",
    "word": "Words of the trade",
}


class Entry(NamedTuple):
    """Something to be found, in the order `data/search.js` has it."""

    kind: str
    title: str
    path: str
    text: str


@dataclass(frozen=True)
class Shelf:
    """All entries of one kind."""

    kind: str
    name: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class FindPage:
    shell: Shell
    shelves: tuple[Shelf, ...]


def find_page(makings: Makings) -> FindPage:
    every = entries(makings)
    shelves = (
        Shelf(kind, name, tuple(entry for entry in every if entry.kind == kind))
        for kind, name in KINDS.items()
    )
    return FindPage(Shell("find", "find.html", "Find"), tuple(shelf for shelf in shelves if shelf.entries))


def search_script(makings: Makings) -> str:
    """A script and not JSON: a page opened from a folder can't fetch anything."""
    return (
        f"var benchalongSearch = {json.dumps(entries(makings), ensure_ascii=False, separators=(',', ':'))};\n"
    )


def entries(makings: Makings) -> tuple[Entry, ...]:
    return makings.once("entries", "", lambda: tuple(_entries(makings)))


def _entries(makings: Makings) -> list[Entry]:
    return [*_steps(makings), *_parts(makings), *_questions(makings), *_sizes(makings), *_words(makings)]


def _steps(makings: Makings) -> list[Entry]:
    plain = makings.outer.plain
    found = []
    for step in makings.order:
        checks = (piece for check in step.checks for piece in (*check.text, " "))
        amiss = (piece for line in step.amiss for piece in (*line.sign, " "))
        text = plain((*step.why, " ", *checks, *amiss))
        said = " ".join((text, makings.note_words(step), *step.tools))
        found.append(Entry("step", plain(step.title), f"steps/{step.id}.html", said))
    return found


def _parts(makings: Makings) -> list[Entry]:
    found = []
    for part in makings.plan.parts.values():
        text = " ".join(
            (makings.plan.stock[part.stock].name, part.purpose, part_line(makings, part.id).marks)
        )
        found.append(Entry("part", part.name, f"parts/{part.id}.html", text))
    return found


def _questions(makings: Makings) -> list[Entry]:
    plain = makings.outer.plain
    found = []
    for asked in makings.plan.questions.values():
        replies = (piece for reply in asked.replies for piece in (" ", *reply.text))
        text = plain((*asked.text, *replies))
        found.append(Entry("question", plain(asked.title), f"questions.html#question-{asked.id}", text))
    return found


def _sizes(makings: Makings) -> list[Entry]:
    return [
        Entry("size", size.name, f"sizes.html#size-{size.name}", size.note) for size in sizes_shown(makings)
    ]


def _words(makings: Makings) -> list[Entry]:
    return [Entry("word", word.word, f"words.html#{word.id}", word.meaning) for word in words_shown(makings)]
