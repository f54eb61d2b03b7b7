"""Words on the command line that lead nowhere, shown like any problem: line, mark, the right word."""

from __future__ import annotations

import shlex
from collections.abc import Sequence

import click

from benchalong.ground.marks import Mark
from benchalong.ground.problems import Unreadable
from benchalong.ground.words import nearest_words
from benchalong.publishing.pointing import Pointed, unreadable

FILE = "command line"
"""The file that a message about the command line stands in."""
PROGRAM = "benchalong"


class Typed:
    """The command line as it was typed."""

    def __init__(self, words: Sequence[str]) -> None:
        self.words = tuple(words)
        self.line = " ".join([PROGRAM, *map(shlex.quote, self.words)])

    def mark(self, word: str) -> Mark:
        """Where a word stands; the end of the line when it isn't there."""
        column = len(PROGRAM) + 2
        for typed in self.words:
            quoted = shlex.quote(typed)
            if typed == word:
                return Mark(FILE, 1, column, len(quoted))
            if typed.startswith("--") and typed.split("=", 1)[0] == word:
                return Mark(FILE, 1, column, len(word))
            column += len(quoted) + 1
        return Mark(FILE, 1, len(self.line) + 1)

    def problem(self, word: str, message: str, expected: str = "", meant: tuple[str, ...] = ()) -> Unreadable:
        """A problem with one word."""
        return unreadable([Pointed(self.mark(word), self.line, message, expected, meant)])

    def usage(self, error: click.UsageError) -> Unreadable:
        """What click found wrong, in our words."""
        if isinstance(error, click.NoSuchOption):
            return self._no_such_option(error)
        if isinstance(error, click.MissingParameter):
            return self._missing(error)
        if isinstance(error, click.BadParameter) and isinstance(error.param, click.Option):
            return self._bad_value(error.param)
        if verbs := _unknown_verb(error, self.words):
            word, known = verbs
            near = nearest_words(word, known)
            return self.problem(word, f"there is no verb {word}", f"one of {', '.join(known)}", near)
        return self._other(error)

    def _no_such_option(self, error: click.NoSuchOption) -> Unreadable:
        known = [name for param in _params(error) for name in param.opts if name.startswith("--")]
        name = error.option_name
        near = nearest_words(name, known) or tuple(error.possibilities or ())
        return self.problem(name, f"there is no option {name} here", f"one of {', '.join(known)}", near)

    def _bad_value(self, option: click.Option) -> Unreadable:
        """The word after an option that takes a number or one of a few words."""
        name = next(name for name in option.opts if name.startswith("--"))
        word = self._after(name)
        known = [str(choice) for choice in getattr(option.type, "choices", ())]
        least, most = getattr(option.type, "min", None), getattr(option.type, "max", None)
        expected = f"one of {', '.join(known)}" if known else f"a whole number from {least} to {most}"
        return self.problem(word, f"{name} can't be {word}", expected, nearest_words(word, known))

    def _after(self, option: str) -> str:
        """The word that was given to an option, be it after it or after its = sign."""
        for word, following in zip(self.words, [*self.words[1:], ""], strict=True):
            if word == option:
                return following
            if word.startswith(f"{option}="):
                return word.removeprefix(f"{option}=")
        return ""

    def _missing(self, error: click.MissingParameter) -> Unreadable:
        param = error.param
        if isinstance(param, click.Option):
            return self.problem(
                "", f"the option {param.opts[0]} is missing", f"{param.opts[0]} and a folder after it"
            )
        name = param.make_metavar(error.ctx) if param is not None and error.ctx else "a word"
        return self.problem("", f"{name} is missing", _usage_line(error))

    def _other(self, error: click.UsageError) -> Unreadable:
        named = [
            word
            for word in self.words
            if word and any(quoted in error.message for quoted in (f"'{word}'", f"({word})"))
        ]
        message = error.format_message().rstrip(".")
        return self.problem(named[0] if named else "", message[:1].lower() + message[1:], _usage_line(error))


def _params(error: click.UsageError) -> list[click.Parameter]:
    return error.ctx.command.get_params(error.ctx) if error.ctx else []


def _unknown_verb(error: click.UsageError, words: Sequence[str]) -> tuple[str, list[str]] | None:
    """The word that stands where a verb should, and the verbs there are."""
    if error.ctx is None or not isinstance(error.ctx.command, click.Group):
        return None
    known = sorted(error.ctx.command.commands)
    first = next((word for word in words if not word.startswith("-")), "")
    return (first, known) if first and first not in known else None


def _usage_line(error: click.UsageError) -> str:
    return " ".join(error.ctx.get_usage().split()).removeprefix("Usage: ") if error.ctx else ""
