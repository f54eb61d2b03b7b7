"""How long a large project takes to publish, against the floor of rendering its notes and nothing else.

    python tests/bench/publish_bench.py [--steps 1000] [--parts 500] [--rounds 3]

Every figure is a process of its own, run in turn round by round, so that a noisy machine is noisy for all;
ratios are taken within a round and the median is shown. Processor time is what is compared. Modules are
compiled beforehand, as an installed program's are.

- `floor` renders the same notes with bare markdown-it-py, fills a bare Jinja page with each and writes it;
- `plain` publishes with drawings left out and nothing in the store: a layout and an order of work are
  searched for too, whose time is bounded by counted work and has nothing to do with the floor;
- `cold` draws everything, with nothing in the store;
- `stored` finds everything in the store, and writes the site into a new folder, after one note was saved;
- `again` publishes over the site that stands, after one note was saved;
- `open` is the second publish of `benchalong open`, after one note was saved: look at its wall time;
- `sized` publishes over the site that stands, after one size was changed: every page is made anew, and so is
  all that follows from the size;
- `check` goes over the plan with nothing in the store, `checked` does so once more.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TypeAlias

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "generator"), str(ROOT / "tests")]

KINDS = ("floor", "plain", "cold", "stored", "again", "open", "sized", "check", "checked")
Figures: TypeAlias = dict[str, float]

PAGE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>{{ title }}</title></head>
<body><main><h1>{{ title }}</h1>{{ note }}</main></body></html>
"""


def floor(project: Path, work: Path) -> None:
    import jinja2
    from markdown_it import MarkdownIt
    from markupsafe import Markup

    reader = MarkdownIt("commonmark").enable("table")
    page = jinja2.Environment(autoescape=True).from_string(PAGE)
    into = work / "floor"
    into.mkdir(exist_ok=True)
    for note in sorted((project / "steps").iterdir()):
        body = note.read_text(encoding="utf-8").split("---\n", 2)[2]
        filled = page.render(title=note.stem, note=Markup(reader.render(body)))
        (into / f"{note.stem}.html").write_text(filled, encoding="utf-8")


def plain(project: Path, work: Path) -> None:
    from benchalong.drawing.drawings import Drawings

    for name in ("part", "small", "piece", "assembly", "step"):
        setattr(Drawings, name, lambda *_: None)
    _publish(project, _new(work, "plain"), _new(work, "plain-store"))


def cold(project: Path, work: Path) -> None:
    _publish(project, _new(work, "cold"), work / "store")


def stored(project: Path, work: Path) -> None:
    _publish(project, _new(work, "stored"), work / "store")


def again(project: Path, work: Path) -> None:
    standing = max(work.glob("stored-*"), key=lambda site: site.stat().st_mtime)
    _publish(project, standing, work / "store")


def sized(project: Path, work: Path) -> None:
    again(project, work)


def check(project: Path, work: Path) -> None:
    from benchalong.publishing.store import FolderStore
    from benchalong.road import travel

    travel(project, FolderStore(work / "check-store"))


def _new(work: Path, name: str) -> Path:
    """A name of its own for each run: where files were deleted a moment ago, some file systems are slow to
    make new ones, and that would be measured."""
    return work / f"{name}-{os.getpid()}"


class Again:
    """`benchalong open` with its first publish done and one note saved since."""

    def __init__(self, project: Path, work: Path) -> None:
        from benchalong.serving.open_site import Opened, Wishes

        os.environ["XDG_CACHE_HOME"] = str(work / "cache")
        (work / "cache").mkdir(exist_ok=True)
        if not (work / "cache" / "benchalong").exists():
            (work / "cache" / "benchalong").symlink_to(work / "store")
        self.opened = Opened(project, Wishes(), port=None)
        self.opened.publish_again()
        save_a_note(project)

    def __call__(self, project: Path, work: Path) -> None:  # noqa: ARG002
        if not self.opened.publish_again().startswith("published"):
            raise AssertionError("nothing was published")


MEASURED: Mapping[str, Callable[[Path, Path], None]] = {
    "floor": floor,
    "plain": plain,
    "cold": cold,
    "stored": stored,
    "again": again,
    "sized": sized,
    "check": check,
    "checked": check,
}


def made_ready(kind: str, project: Path, work: Path) -> Callable[[Path, Path], None]:
    """What is to be timed, with all done that comes before it."""
    if kind == "cold":
        shutil.rmtree(work / "store", ignore_errors=True)
    if kind in ("stored", "again"):
        save_a_note(project)
    if kind == "sized":
        change_a_size(project)
    if kind == "check":
        shutil.rmtree(work / "check-store", ignore_errors=True)
    if kind == "open":
        return Again(project, work)
    return MEASURED[kind]


def save_a_note(project: Path) -> None:
    note = sorted((project / "steps").iterdir())[-1]
    note.write_text(note.read_text(encoding="utf-8") + "One more word.\n", encoding="utf-8")


def change_a_size(project: Path) -> None:
    """The grooves' depth, which a fifth of the parts' cuts follow from."""
    plan = project / "project.yaml"
    text = plan.read_text(encoding="utf-8")
    for old, new in (("3/8", "11/32"), ("11/32", "5/16"), ("5/16", "9/32"), ("9/32", "3/8")):
        if f"groove_depth: {old} in" in text:
            plan.write_text(text.replace(f"groove_depth: {old}", f"groove_depth: {new}"), encoding="utf-8")
            return


def _publish(project: Path, into: Path, store: Path) -> None:
    from benchalong.publishing.publish import publish
    from benchalong.publishing.store import FolderStore
    from benchalong.road import travel

    publish(travel(project, FolderStore(store)), into, project=project, store=FolderStore(store))


def measure(kind: str, project: Path, work: Path) -> Figures:
    """One run in this process; called in a fresh one each time."""
    work_kind = made_ready(kind, project, work)
    began, clock = time.process_time(), time.perf_counter()
    work_kind(project, work)
    return {
        "cpu_s": time.process_time() - began,
        "wall_s": time.perf_counter() - clock,
        "peak_mb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
    }


def in_own_process(kind: str, project: Path, work: Path, *, compiled: Path) -> Figures:
    words = [sys.executable, __file__, "--one", kind, "--project", str(project), "--work", str(work)]
    env = {**os.environ, "PYTHONPYCACHEPREFIX": str(compiled)}
    env.pop("PYTHONDONTWRITEBYTECODE", None)
    done = subprocess.run(words, capture_output=True, text=True, check=True, env=env)
    figures: Figures = json.loads(done.stdout.splitlines()[-1])
    return figures


def _compile(work: Path) -> None:
    """One small publish, so that every module that is used has been compiled."""
    from bench.generated import write_project

    small = work / "small"
    write_project(small / "project", steps=4, parts=4)
    for kind in KINDS:
        (small / "work").mkdir(exist_ok=True)
        in_own_process(kind, small / "project", small / "work", compiled=work / "compiled")


def compare(*, steps: int, parts: int, rounds: int) -> dict[str, Figures]:
    """Medians over the rounds: figures of each kind, and its time against the floor of its round."""
    from bench.generated import write_project

    with tempfile.TemporaryDirectory() as folder:
        project, work = Path(folder) / "project", Path(folder) / "work"
        work.mkdir()
        write_project(project, steps=steps, parts=parts)
        _compile(work)
        taken = [
            {kind: in_own_process(kind, project, work, compiled=work / "compiled") for kind in KINDS}
            for _ in range(rounds)
        ]
    medians: dict[str, Figures] = {}
    for kind in KINDS:
        medians[kind] = {name: statistics.median(one[kind][name] for one in taken) for name in taken[0][kind]}
        ratios = [one[kind]["cpu_s"] / one["floor"]["cpu_s"] for one in taken]
        medians[kind]["times_floor"] = statistics.median(ratios)
    medians["drawings"] = {
        "ms_each": 1000 * (medians["cold"]["cpu_s"] - medians["plain"]["cpu_s"]) / (2 * parts),
    }
    return medians


def main() -> None:
    asked = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    asked.add_argument("--steps", type=int, default=1000)
    asked.add_argument("--parts", type=int, default=500)
    asked.add_argument("--rounds", type=int, default=3)
    asked.add_argument("--one", choices=KINDS, help=argparse.SUPPRESS)
    asked.add_argument("--project", type=Path, help=argparse.SUPPRESS)
    asked.add_argument("--work", type=Path, help=argparse.SUPPRESS)
    given = asked.parse_args()
    if given.one:
        print(json.dumps(measure(given.one, given.project, given.work)))
        return
    for kind, figures in compare(steps=given.steps, parts=given.parts, rounds=given.rounds).items():
        print(f"{kind:9}", "  ".join(f"{name} {value:.2f}" for name, value in figures.items()))


if __name__ == "__main__":
    main()
