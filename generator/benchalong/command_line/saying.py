"""What the command line says, and how it ends.

One place decides the exit code and how each kind of trouble is said. Nothing a user meets is a
traceback: a fault of ours says so in a sentence and leaves its details in a file.
"""

from __future__ import annotations

import contextlib
import io
import json
import os
import sys
import tempfile
import traceback
from collections.abc import Iterable
from typing import TextIO

from benchalong.ground.marks import Marks
from benchalong.ground.problems import LEVELS, Finding, Unreadable
from benchalong.ground.report import finding_text, in_order, problem_text
from benchalong.ground.words import counted
from benchalong.publishing.plain import Json, problems_json

DONE, FAULT, UNREADABLE, ELSE = 0, 1, 2, 3
"""The exit codes: promises, as the README says."""


def forgiving() -> None:
    """Let any character be printed wherever the output goes; what it can't show becomes a question mark."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def say(text: str, *, to: TextIO | None = None) -> None:
    """Print a line; when nobody reads any more, be quiet from then on."""
    stream = to or sys.stdout
    if stream is None:
        return
    try:
        stream.write(f"{text}\n")
        stream.flush()
    except (OSError, ValueError):
        _stop_talking(stream)


def say_json(document: Json) -> None:
    """The one document of a run with `--json`."""
    say(json.dumps(document, indent=2))


def say_problems(trouble: Unreadable, *, as_json: bool) -> int:
    """Every problem, on standard error for people, on standard output for programs."""
    problems = in_order(trouble.problems, trouble.marks)
    if as_json:
        say_json(problems_json(problems, trouble.marks))
        return UNREADABLE
    for problem in problems:
        say(f"{problem_text(problem, trouble.marks)}\n", to=sys.stderr)
    say(counted(len(problems), "problem"), to=sys.stderr)
    return UNREADABLE


def say_findings(findings: Iterable[Finding], marks: Marks, *, to: TextIO | None = None) -> None:
    """Every finding, then how many of each level."""
    every = sorted(findings, key=lambda finding: LEVELS.index(finding.level))
    for finding in every:
        say(f"{finding_text(finding, marks)}\n", to=to)
    counts = [(level, sum(finding.level == level for finding in every)) for level in LEVELS]
    say(", ".join(counted(count, level) for level, count in counts if count) or "no findings", to=to)


def say_refused(message: str, *, as_json: bool) -> int:
    """What could not be done, though the plan is understood."""
    if as_json:
        say_json({"refused": message})
    else:
        say(f"{message}.", to=sys.stderr)
    return ELSE


def of_the_machine(error: OSError) -> str:
    """A file or folder that could not be read or written, in a sentence."""
    where = f"{error.filename}: " if error.filename else ""
    return f"{where}{(error.strerror or str(error)).lower()}"


def our_fault(*, as_json: bool) -> int:
    """For what nobody foresaw: say that it is ours, and where the details are."""
    details = _written_down(traceback.format_exc())
    message = f"Something went wrong inside benchalong. It is a fault of ours, not of your plan{details}"
    return say_refused(message, as_json=as_json)


class ProgressLine:
    """Progress on one line of standard error, and only where somebody sees it."""

    def __init__(self) -> None:
        self._shown = ""
        self._seen = sys.stderr is not None and sys.stderr.isatty()

    def __call__(self, what: str, done: int, of: int) -> None:
        text = f"{what} {done} of {of}"
        if self._seen and (done == of or done % 20 == 0):
            self._write(text)

    def clear(self) -> None:
        if self._shown:
            self._write("")

    def _write(self, text: str) -> None:
        with contextlib.suppress(OSError, ValueError):
            sys.stderr.write("\r" + text.ljust(len(self._shown)) + ("" if text else "\r"))
            sys.stderr.flush()
        self._shown = text


def _written_down(details: str) -> str:
    try:
        with tempfile.NamedTemporaryFile(
            "w", prefix="benchalong-fault-", suffix=".txt", delete=False, encoding="utf-8"
        ) as file:
            file.write(details)
        return f"; the details are in {file.name}"
    except OSError:
        return ""


def _stop_talking(stream: TextIO) -> None:
    """Python would complain once more when it closes a broken pipe; give it one that holds."""
    with contextlib.suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)
