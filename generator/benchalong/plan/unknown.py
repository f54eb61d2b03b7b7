"""What is said when a name leads nowhere."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from benchalong.ground.words import nearest_words
from benchalong.plan.refused import Refused, Span, Unnamed
from benchalong.plan.tree import Name

ONE_OF = {
    "sizes": "a size", "parts": "a part", "stock": "a stock", "joints": "a joint",
    "assemblies": "an assembly", "hardware": "a piece of hardware", "jigs": "a jig", "stages": "a stage",
    "steps": "a step", "questions": "a question", "pictures": "a picture",
}  # fmt: skip
_HYPHEN_LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-"


@dataclass(frozen=True)
class Directory:
    """Everything the author has given a name, for messages."""

    values: Collection[str] = ()
    """Names that stand in formulas: `stile`, `door_rail.length`."""
    sections: Mapping[str, str] = field(default_factory=dict)
    """Each id and the section it is defined in."""

    def refuse(self, name: Name, text: str) -> Refused:
        """The reason why a name in a formula is none."""
        return self._hyphenated(name, text) or self._undotted(name) or self._dotted(name) or self._plain(name)

    def explain(self, refused: Unnamed) -> Refused:
        """The reason why a word can't follow a number, when it may be a name."""
        word, number = refused.word, refused.number
        names = [word] if word in self.values else nearest_words(word, self.values)[:1]
        if not names or (refused.meant and word not in self.values):
            return refused
        return Refused(
            f"the name {word} can't follow a number directly" if word in self.values else refused.message,
            refused.span,
            f"a sign between them: {number}*{names[0]}",
        )

    def _hyphenated(self, name: Name, text: str) -> Refused | None:
        span = _hyphened_stretch(name.span, text)
        joined = text[slice(*span)].replace("-", "_")
        if joined == name.name or joined not in self.values:
            return None
        reads = " minus ".join(text[slice(*span)].split("-"))
        return Refused(f"{text[slice(*span)]} reads as {reads}", span, joined)

    def _undotted(self, name: Name) -> Refused | None:
        section = self.sections.get(name.name)
        if section is None or section == "sizes":
            return None
        return Refused(
            f"{name.name} is {ONE_OF[section]}, not a length",
            name.span,
            _either(self._own(name.name)) or "the name of a size",
        )

    def _dotted(self, name: Name) -> Refused | None:
        head, dot, tail = name.name.partition(".")
        section = self.sections.get(head)
        if not dot or section is None:
            return None
        own = self._own(head)
        if not own:
            return Refused(
                f"{head} is {ONE_OF[section]} and has no sizes of its own", name.span, "the name of a size"
            )
        meant = tuple(
            f"{head}.{size}" for size in nearest_words(tail, (size.partition(".")[2] for size in own))
        )
        return Refused(f"{ONE_OF[section]} has no {tail}", name.span, _either(own), meant)

    def _own(self, head: str) -> tuple[str, ...]:
        """The sizes that something has of its own, written after a dot."""
        return tuple(name for name in self.values if name.startswith(f"{head}."))

    def _plain(self, name: Name) -> Refused:
        what = "part, joint or stock" if "." in name.name else "size"
        called = name.name.partition(".")[0] if "." in name.name else name.name
        return Refused(
            f"there is no {what} called {called}", name.span, meant=nearest_words(name.name, self.values)
        )


def _either(names: tuple[str, ...]) -> str:
    return " or ".join(names) if len(names) <= 3 else f"one of {', '.join(names)}"


def _hyphened_stretch(span: Span, text: str) -> Span:
    """The letters, digits, underscores and hyphens that touch the name."""
    start, end = span
    while start and text[start - 1] in _HYPHEN_LETTERS:
        start -= 1
    while end < len(text) and text[end] in _HYPHEN_LETTERS:
        end += 1
    return (start, end)
