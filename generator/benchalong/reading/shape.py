"""From loose tables to the classes of `written.py`, so that building one reads like the language itself.

An `Entry` is one table as the author filled it in. Each of its methods reads one key as one kind of
thing, which must be the kind that `language.py` gives it. What can't be read is reported, left at
its default, and its path put among the unreadable; reading goes on.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from datetime import date
from typing import Any, Literal, TypeAlias, TypeVar

from benchalong.ground.marks import Mark, Path, Place
from benchalong.ground.problems import Problem
from benchalong.ground.prose import WrittenProse
from benchalong.ground.report import either
from benchalong.ground.words import nearest_words, slips
from benchalong.reading import measures
from benchalong.reading.holes import one_line
from benchalong.reading.language import Key, Kind, Table
from benchalong.reading.markdown import markdown
from benchalong.reading.spots import marks_so_far
from benchalong.reading.tables import others_with
from benchalong.reading.tally import Tally
from benchalong.reading.written import Formula, Name
from benchalong.reading.yamltraps import in_quotes
from benchalong.reading.yamltree import UNREAD, Unread, Value

T = TypeVar("T")
On: TypeAlias = Literal["value", "key"]

NAME = re.compile(r"[a-z][a-z0-9_]*\Z")
DOTTED = re.compile(r"[a-z][a-z0-9_]*\.(?:thickness|width|length)\Z")
SLUG = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*\Z")
HANDLE = re.compile(r"\w[\w.-]{0,39}\Z")
MAIL = re.compile(r"[^@\s<>\"']+@[^@\s<>\"']+\.[^@\s<>\"']+\Z")
WEB = re.compile(r"https?://[^/\s?#\"'<>]+[^\s\"'<>]*\Z", re.IGNORECASE)
DAY = re.compile(r"\d{4}-\d\d-\d\d\Z")
COUNT = re.compile(r"[1-9]\d{0,5}\Z")
SHEET = re.compile(r"\s+[x×]\s+")

SPELT = {
    Kind.SLUG: (SLUG, "small letters, digits and hyphens: seed-cupboard"),
    Kind.HANDLE: (HANDLE, "a handle without spaces: letters, digits, hyphens"),
    Kind.MAIL: (MAIL, "a mail address: bench@example.org"),
    Kind.WEB: (WEB, "a web address that begins with https://"),
}
MEASURES: Mapping[Kind, Callable[[str], object]] = {
    Kind.NUMBER: measures.number,
    Kind.SESSION: measures.session,
    Kind.PACE: measures.pace,
    Kind.PERCENT: measures.percent,
    Kind.PERCENTS: measures.percents,
    Kind.TEMPERATURE: measures.celsius,
    Kind.BURDEN: measures.burden,
}
ENOUGH = 1000
"""So many problems are answered with the nearest right word; who has more has another trouble."""
NAME_RULE = "small letters, digits and underscores, a letter first: door_stile"


class Entry:
    """One table as written."""

    def __init__(self, table: Table, values: Mapping[str, Value], path: Path, tally: Tally) -> None:
        self.table = table
        self.path = path
        self.tally = tally
        self._values = values
        known = table.by_name
        unknown = [key for key in values if key not in known]
        missing = [key for key in table.required if key.name not in values]
        if unknown or missing:
            self._say_what_is_wrong(unknown, missing)

    def __contains__(self, key: str) -> bool:
        return key in self._values

    def text(self, key: str, kind: Kind = Kind.TEXT) -> str:
        """A text as typed; empty when there is none."""
        return self._text(key, kind) or ""

    def spelt(self, key: str, kind: Kind) -> str:
        """A text that must have a certain form: a slug, a handle, a mail or web address."""
        text = self._text(key, kind)
        form, expected = SPELT[kind]
        if text is None or form.match(text):
            return text or ""
        self.complain(key, f"{_shown(text)} can't be used as {key}", expected)
        return ""

    def date(self, key: str) -> str:
        text = self._text(key, Kind.DATE)
        if text is None or _is_date(text):
            return text or ""
        self.complain(key, f"{_shown(text)} is not a date", "year, month and day: 2026-03-02")
        return ""

    def formula(self, key: str) -> Formula | None:
        return self._text(key, Kind.FORMULA)

    def word(self, key: str, default: str = "") -> str:
        """One of a closed list."""
        text = self._text(key, Kind.WORD)
        if text is None:
            return default
        return self.one_of(text, self.table.by_name[key].words, (*self.path, key), key) or default

    def count(self, key: str) -> int | None:
        text = self._text(key, Kind.COUNT)
        if text is None:
            return None
        if COUNT.match(text):
            return int(text)
        self.not_a_count(text, (*self.path, key))
        return None

    def measure(self, key: str, kind: Kind) -> Any:
        """A number with its unit; which type it is follows from its kind, in `MEASURES`."""
        text = self._text(key, kind)
        found = None if text is None else MEASURES[kind](text.strip())
        if text is not None and found is None:
            self.complain(key, f"{_shown(text)} can't be used as {key}", kind.value)
        return found

    def name(self, key: str) -> Name:
        return self._text(key, Kind.NAME) or ""

    def prose(self, key: str) -> WrittenProse:
        text = self._text(key, Kind.PROSE)
        return one_line(text, (*self.path, key), self.tally) if text else ()

    def markdown(self, key: str) -> WrittenProse:
        text = self._text(key, Kind.MARKDOWN)
        return markdown(text, (*self.path, key), self.tally)[0] if text else ()

    def texts(self, key: str, kind: Kind = Kind.TEXTS) -> tuple[str, ...]:
        """A list of texts as typed; one text alone counts as a list of one."""
        return self.names_in(self.value(key, kind), (*self.path, key))

    def names(self, key: str) -> tuple[Name, ...]:
        return self.texts(key, Kind.NAMES)

    def names_in(self, value: Value, path: Path) -> tuple[Name, ...]:
        return tuple(text for text, _ in self._items(value, path))

    def proses(self, key: str) -> tuple[WrittenProse, ...]:
        return self.proses_as_typed(key)[0]

    def proses_as_typed(self, key: str) -> tuple[tuple[WrittenProse, ...], tuple[str, ...]]:
        """The same texts twice: as prose, and as they were typed."""
        items = self._items(self.value(key, Kind.PROSES), (*self.path, key))
        prose = tuple(one_line(text, path, self.tally) for text, path in items)
        return prose, tuple(text for text, _ in items)

    def sheet(self, key: str) -> tuple[Formula, Formula] | None:
        text = self._text(key, Kind.SHEET)
        if text is None:
            return None
        sides = SHEET.split(text.strip())
        if len(sides) == 2:
            return (sides[0], sides[1])
        self.complain(
            key,
            f"{_shown(text)} is not the size of a sheet",
            "two sizes with an x between them: 48 in x 96 in",
        )
        return None

    def point(self, key: str) -> tuple[Formula, ...] | None:
        """A list of sizes in brackets; how many is for the caller to say."""
        value = self.value(key, Kind.POINT)
        return None if value is None else self.sizes_in(value, (*self.path, key))

    def lengths(self, key: str) -> tuple[Formula, ...]:
        """Sizes in brackets; one alone counts as a list of one."""
        return self.texts(key, Kind.LENGTHS)

    def counts(self, key: str) -> dict[Name, int]:
        """Names, each with a whole number above zero."""
        found = {}
        for name, text in self.texts_by_name(key, Kind.COUNTS).items():
            if COUNT.match(text):
                found[name] = int(text)
            else:
                self.not_a_count(text, (*self.path, key, name))
        return found

    def not_a_count(self, text: str, path: Path) -> None:
        expected = "a whole number, such as 4"
        self.tally.add(Place(path), f"{_shown(text)} is not a whole number above zero", expected=expected)

    def sizes_in(self, value: Value, path: Path) -> tuple[Formula, ...] | None:
        if isinstance(value, list) and all(isinstance(item, str) for item in value):
            return tuple(str(item) for item in value)
        self.wrong_kind(value, path, "sizes in brackets: [0, stile, 1 in]")
        return None

    def one(self, key: str, read: Callable[[Entry], T], table: Table) -> T | None:
        """A table under a key."""
        value = self.value(key, Kind.TABLE)
        return None if value is None else self.entry(value, (*self.path, key), read, table)

    def list_of(self, key: str, read: Callable[[Entry], T], table: Table) -> tuple[T, ...]:
        """A list of tables, each read in its turn."""
        items = self._list(key, Kind.TABLES, f"a list: each {table.noun} begins with `- `")
        read_items = [
            self.entry(item, (*self.path, key, index), read, table) for index, item in enumerate(items)
        ]
        return tuple(item for item in read_items if item is not None)

    def named(self, key: str, read: Callable[[Entry], T], table: Table) -> dict[Name, T]:
        """Names, each with a table."""
        found = {}
        for name, value in self._table_of(key, Kind.NAMED, f"names, each with {table.called}").items():
            path = (*self.path, key, name)
            read_value = self.entry(value, path, read, table) if self.is_name(name, path) else None
            if read_value is not None:
                found[name] = read_value
        return found

    def texts_by_name(self, key: str, kind: Kind) -> dict[str, str]:
        """Names or words, each with a text: formulas, meanings, other names."""
        found = {}
        for name, value in self._table_of(key, kind, kind.value).items():
            path = (*self.path, key, name)
            if kind is not Kind.WORDS and not self.is_name(name, path, dotted=kind is Kind.FORMULAS):
                continue
            text = self.read_text(value, path, kind)
            if text is not None:
                found[name] = text
        return found

    def entry(self, value: Value, path: Path, read: Callable[[Entry], T], table: Table) -> T | None:
        """What stands at a path, as a table; a bare text where the table has a shorthand for one."""
        if isinstance(value, str) and table.shorthand:
            value = {table.shorthand: value}
        if isinstance(value, dict):
            return read(Entry(_variant(table, value), value, path, self.tally))
        first = table.required[0].name if table.required else table.keys[0].name
        self.wrong_kind(value, path, f"{table.called}: `{first}: …` and its other keys")
        return None

    def value(self, key: str, *kinds: Kind) -> Value:
        """What stands after a key, whatever it is; None when nothing does."""
        value = self._values.get(key)
        if value is None and key not in self._values:
            return None
        spec = self.table.by_name[key]
        if spec.kind not in kinds:
            raise TypeError(f"{key} of {self.table.called} holds {spec.kind}, not {kinds}")
        if value is None:
            self.nothing_there((*self.path, key), spec)
        if value is UNREAD:
            self.tally.unreadable.add((*self.path, key))
            return None
        return value

    def one_of(self, text: str, words: tuple[str, ...], path: Path, what: str, on: On = "value") -> str:
        """The text when it is among the words; otherwise nothing, and a problem."""
        if text in words:
            return text
        self.tally.add(
            Place(path, on=on),
            f"{_shown(text)} is not a word for {what}",
            expected=listed(words),
            meant=nearest_words(text, words),
        )
        return ""

    def is_name(self, name: str, path: Path, *, dotted: bool = False) -> bool:
        """Whether an author's own name is spelt so that it can be used in arithmetic; reported when not.
        A dotted one leads to a size of something: `back_ply.thickness`."""
        if NAME.match(name) or (dotted and DOTTED.match(name)):
            return True
        reason = ": a hyphen reads as minus in arithmetic" if "-" in name else ""
        better = re.sub(r"[^a-z0-9_]+", "_", name.lower()).strip("_")
        self.tally.add(
            Place(path, on="key"),
            f"{_shown(name)} can't be used as a name{reason}",
            expected=NAME_RULE,
            meant=(better,) if NAME.match(better) else (),
        )
        return False

    def complain(self, key: str, message: str, expected: str, meant: tuple[str, ...] = ()) -> None:
        self.tally.add(Place((*self.path, key)), message, expected=expected, meant=meant)

    def lacks(self, key: str, meaning: str) -> None:
        """A key that must be there and isn't."""
        spec = self.table.by_name[key]
        missing = "doesn't say its kind" if key == self.table.chosen_by else f"has no {key}"
        expected = f"{key}: {listed(spec.words) if key == self.table.chosen_by else meaning}"
        self.tally.problems.append(Problem(Place(self.path, on="key"), f"{self.called} {missing}", expected))
        self.tally.unreadable.add((*self.path, key))

    @property
    def called(self) -> str:
        """What it is in a sentence: `the part door_stile`, `this cut`."""
        last = self.path[-1]
        if (
            len(self.path) > 2
            and isinstance(last, str)
            and last
            not in ("origin", "shop", "house", "rates", "load", "cut_when", "leave", "ask", "look", *_SAWING)
        ):
            return f"the {self.table.noun} {last}"
        return f"this {self.table.noun}"

    def wrong_kind(self, value: Value, path: Path, expected: str) -> None:
        """A text where a list is due, and the like; what was reported already is not reported again."""
        if isinstance(value, Unread):
            self.tally.unreadable.add(path)
            return
        if value is None:
            self.nothing_there(path, None, expected)
            return
        found = "a list" if isinstance(value, list) else "a table" if isinstance(value, dict) else "a text"
        self.tally.add(Place(path), f"{found} stands here", expected=_better(value, expected))

    def nothing_there(self, path: Path, spec: Key | None, expected: str = "") -> None:
        """A key with nothing after it: reported when something must be there, or when a `#` swallowed it."""
        swallowed = self._comment(path)
        if swallowed:
            self.tally.add(
                Place(path, mark=swallowed[1]),
                "a # begins a comment, so nothing is left here",
                expected=f"the text in quotes: {in_quotes(swallowed[0])}",
            )
        elif spec is None or spec.required:
            what = f"after {path[-1]}" if isinstance(path[-1], str) else "in this item"
            self.tally.add(
                Place(path, on="key"),
                f"nothing stands {what}",
                expected=expected or (spec.meaning if spec else ""),
            )

    def read_text(self, value: Value, path: Path, kind: Kind) -> str | None:
        """A text; None, and a problem, when it is something else."""
        if isinstance(value, str):
            return value
        self.wrong_kind(value, path, _EXPECTED.get(kind, "a text"))
        return None

    def _text(self, key: str, kind: Kind) -> str | None:
        value = self.value(key, kind)
        return (
            value
            if value is None or isinstance(value, str)
            else self.read_text(value, (*self.path, key), kind)
        )

    def _items(self, value: Value, path: Path) -> list[tuple[str, Path]]:
        """The texts of a list, each with its path."""
        if isinstance(value, str):
            return [(value, path)]
        items = self._checked_list(value, path, "a list: each item on its own line after `- `")
        return [
            (self.read_text(item, (*path, index), Kind.TEXT) or "", (*path, index))
            for index, item in enumerate(items)
        ]

    def _list(self, key: str, kind: Kind, expected: str) -> list[Value]:
        return self._checked_list(self.value(key, kind), (*self.path, key), expected)

    def _checked_list(self, value: Value, path: Path, expected: str) -> list[Value]:
        if isinstance(value, list) or value is None:
            return value or []
        self.wrong_kind(value, path, expected)
        return []

    def _table_of(self, key: str, kind: Kind, expected: str) -> dict[str, Value]:
        value = self.value(key, kind)
        if isinstance(value, dict) or value is None:
            return value or {}
        self.wrong_kind(value, (*self.path, key), expected)
        return {}

    def _say_what_is_wrong(self, unknown: list[str], missing: list[Key]) -> None:
        """Unknown keys; then what is missing, unless an unknown key was meant to be it."""
        absent = [key for key in self.table.by_name if key not in self._values]
        meant = {self._unknown(key, absent) for key in unknown}
        for key in missing:
            if key.name not in meant:
                self.lacks(key.name, key.meaning)

    def _unknown(self, key: str, absent: list[str]) -> str:
        """Reports a key that the table doesn't have; the key that was meant, as far as can be told."""
        known = self.table.by_name
        glued, _, value = key.partition(":")
        others = others_with(key, self.table)
        meant: tuple[str, ...] = ()
        if value and glued in known:
            message, expected = f"no space stands after {glued}:", f"`{glued}: {value}`"
        elif self._is_rest_of_text(key):
            message, expected = (
                f"a comma ends a text between {{ and }}, so {_shown(key)} reads as a key",
                "the text in quotes",
            )
        elif others:
            message, expected = (
                f"{key} belongs to {either(others)}, not to {self.table.called}",
                listed(known),
            )
            meant = tuple(word for word in absent if slips(key, word, most=1) is not None)
        else:
            message, expected = f"{_shown(key)} is not a key of {self.table.called}", listed(known)
            meant = nearest_words(key, known, prefer=absent) if len(self.tally.problems) < ENOUGH else ()
        self.tally.problems.append(Problem(Place((*self.path, key), on="key"), message, expected, meant))
        likely = glued if value and glued in known else meant[0] if meant else ""
        self.tally.unreadable.update((*self.path, name) for name in (key, likely) if name)
        return likely

    def _is_rest_of_text(self, key: str) -> bool:
        """Whether it stands between braces without a colon: `{title: Round, and smooth}`."""
        if self._values[key] is not None:
            return False
        marks = marks_so_far(str(self.path[0]), self.tally)
        mark = marks.find(Place((*self.path, key), on="key"))
        return bool(re.match(r"\s*[,}]", marks.line(mark)[mark.column - 1 + mark.length :]))

    def _comment(self, path: Path) -> tuple[str, Mark] | None:
        """The comment in the line of an empty value, and where it stands."""
        marks = marks_so_far(str(self.path[0]), self.tally)
        mark = marks.find(Place(path, on="key"))
        after = marks.line(mark)[mark.column - 1 + (mark.length if isinstance(path[-1], str) else 0) :]
        found = re.match(r"\s*[-:]?\s*(#.*\S)", after)
        if not found:
            return None
        return found[1], Mark(
            mark.file, mark.line, len(marks.line(mark)) - len(after) + found.start(1) + 1, len(found[1])
        )


def _variant(table: Table, values: Mapping[str, Value]) -> Table:
    kind = values.get(table.chosen_by)
    return table.variants.get(kind, table) if isinstance(kind, str) else table


_EXPECTED = dict.fromkeys((Kind.FORMULA, Kind.FORMULAS), "a size or a formula: stile + 1/4 in") | {
    Kind.COUNTS: "a whole number, such as 4"
}
"""What is expected where no text stands."""


_SINGLE = ("origin", "shop", "house", "rates", "load", "cut_when", "leave", "ask", "look")
"""Keys that hold one table of their own, not names that an author gave."""
_SAWING = (
    "allowances", "resaw", "jointer", "planer", "board", "sheet", "turned", "glued_up",
)  # fmt: skip
"""Keys of the shop that hold tables; a table under one is called by what it is."""


def listed(words: Iterable[str]) -> str:
    """A closed list of words, after "expected"."""
    words = tuple(words)
    return f"one of {', '.join(words)}" if len(words) > 2 else " or ".join(words)


def _shown(text: str) -> str:
    """An author's word inside a message, on one line and not too long."""
    words = " ".join(text.split())
    return words if len(words) <= 60 else f"{words[:60]}…"


def _better(value: Value, expected: str) -> str:
    """What would be right, with the hint that goes with what was typed."""
    if isinstance(value, str) and re.match(r"-\S", value):
        return f"{expected}, with a space after each hyphen"
    if isinstance(value, (list, dict)) and expected == "a text":
        return "a text; in quotes when it begins with [ or {, or holds a colon"
    return expected


def _is_date(text: str) -> bool:
    if not DAY.match(text):
        return False
    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return True
