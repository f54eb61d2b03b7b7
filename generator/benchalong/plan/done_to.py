"""What a line of a step's `does:` is done to: names, patterns, and several words that narrow each other.

`side` is a part, `door_*` every part (or assembly, joint, piece of hardware, jig) whose name begins so, and
`frame tongue` the tongues of one joint. A word is a name first, and a kind of cut where nothing is called so.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields
from fnmatch import fnmatchcase
from typing import get_args

from benchalong.ground.marks import Path
from benchalong.plan.model import CutKind, DoneTo, Job
from benchalong.plan.reckoning import Reckoning
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

DONE_TO = ("parts", "assemblies", "hardware", "jigs")
"""The sections whose names may stand in `does:`, and a pattern can mean."""
SECTIONS = (*DONE_TO, "joints")
CUT_KINDS: tuple[str, ...] = get_args(CutKind)


class DoneToWords:
    """Leads the words of `does:` to what they mean."""

    def __init__(self, sums: Reckoning) -> None:
        self._sums = sums
        project = sums.draft.written
        self._sections = {
            name: section for section in reversed(SECTIONS) for name in getattr(project, section)
        }

    def done_to(self, item: str, path: Path) -> DoneTo | None:
        """None where a word leads nowhere, which is said."""
        found = [self._word(word, path) for word in item.split()]
        if not found or None in found:
            return None
        return _together(one for one in found if one is not None)

    def _word(self, word: str, path: Path) -> DoneTo | None:
        if "*" in word:
            return self._pattern(word, path)
        if word in self._sections:
            return DoneTo(**{self._sections[word]: (word,)})  # type: ignore[arg-type]
        if word in CUT_KINDS:
            return DoneTo(cuts=(word,))  # type: ignore[arg-type]
        self._report(word, path)
        return None

    def _pattern(self, pattern: str, path: Path) -> DoneTo | None:
        """What it means of the first section that has any such name."""
        for section in SECTIONS:
            names = getattr(self._sums.draft.written, section)
            fitting = tuple(name for name in names if fnmatchcase(name, pattern))
            if fitting:
                return DoneTo(**{section: fitting})
        if not any(self._sums.draft.is_lost(PROJECT_FILE, section) for section in SECTIONS):
            self._sums.say(
                path, f"no part, assembly, piece of hardware, jig or joint is called like {pattern}"
            )
        return None

    def _report(self, name: str, path: Path) -> None:
        if not any(self._sums.draft.is_lost(PROJECT_FILE, section, name) for section in SECTIONS):
            noun = "part, assembly, piece of hardware, jig or joint"
            self._sums.unknown(noun, name, path, self._sections)


def job_to(kind: str, to: tuple[DoneTo, ...]) -> Job:
    """A line of work, with all it names gathered by what it is."""
    flat = {key: tuple(dict.fromkeys(name for one in to for name in getattr(one, key))) for key in DONE_TO}
    return Job(kind, **flat, to=to)


def parts_of_joint(joint: written.Joint) -> tuple[str, ...]:
    """The parts a joint's sides name, as they are written: `side inner face` is the side."""
    sides = (*joint.cut_in, *joint.takes, *joint.floats)
    return tuple(dict.fromkeys(word for side in sides for word in _first_word(side)))


def _first_word(side: str) -> Iterator[str]:
    yield from side.split()[:1]


def _together(words: Iterable[DoneTo]) -> DoneTo:
    given = list(words)
    return DoneTo(
        **{each.name: tuple(n for one in given for n in getattr(one, each.name)) for each in fields(DoneTo)}
    )
