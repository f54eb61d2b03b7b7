"""The command line: thin. Each verb reads its words, calls one room, and says how it went.

Rooms are imported where they are used, so that `--help` and a mistyped word answer at once.
"""

from __future__ import annotations

import shlex
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchalong import __version__
from benchalong.command_line.saying import (
    DONE,
    FAULT,
    UNREADABLE,
    ProgressLine,
    forgiving,
    of_the_machine,
    our_fault,
    say,
    say_findings,
    say_json,
    say_problems,
    say_refused,
)
from benchalong.command_line.typed import Typed
from benchalong.ground.problems import Finding, Unreadable
from benchalong.ground.words import counted, nearest_words
from benchalong.publishing.destination import Refused
from benchalong.reading.written import PROJECT_FILE

if TYPE_CHECKING:
    from benchalong.publishing.publish import Published
    from benchalong.publishing.theme import Chosen
    from benchalong.road import Travelled

USUAL_PORT = 8710

JSON = click.option("--json", "as_json", is_flag=True, help="Print one JSON document and nothing else.")
PROJECT = click.argument("project", type=click.Path(path_type=Path))
THEME = click.option(
    "--theme", metavar="NAME", help="A theme, or a folder of the project with a / in its name."
)
WITH_SCRIPTS = click.option(
    "--with-scripts",
    is_flag=True,
    help="Let the project's own scripts into the site. They run on every reader's device.",
)
WITH_FAULTS = click.option("--with-faults", is_flag=True, help="Publish although the plan has a fault.")


@click.group(
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog="Exit codes: 0 done, 1 the plan has a fault, 2 something can't be read, 3 anything else.",
)
@click.version_option(__version__, "-V", "--version", message="benchalong %(version)s")
def benchalong() -> None:
    """Make a site for building along from a woodworking plan and its step notes."""


@benchalong.command()
@click.argument("folder", metavar="DIR", type=click.Path(path_type=Path))
@click.option(
    "--units",
    type=click.Choice(["inch", "millimetre"]),
    default="inch",
    show_default=True,
    help="What the new plan counts in.",
)
def begin(folder: Path, units: str) -> int:
    """Lay down a new project in DIR.

    A small piece that publishes as it is, with comments that teach the plan language.
    """
    from benchalong.command_line.beginning import lay_down

    lay_down(folder, units="inch" if units == "inch" else "millimetre")
    named = shlex.quote(str(folder))
    say(f"A small project is in {named}. Read {folder / 'project.yaml'}, change it, and try:")
    say(f"  benchalong check {named}\n  benchalong open {named}")
    return DONE


@benchalong.command()
@PROJECT
@JSON
def check(project: Path, as_json: bool) -> int:
    """Go over the whole plan in PROJECT before wood is cut, and print what was found."""
    from benchalong.command_line.checked import check_json, looked_at
    from benchalong.publishing.store import FolderStore, cache_folder
    from benchalong.road import travel

    travelled = travel(_project(project), FolderStore(cache_folder()))
    if as_json:
        say_json(check_json(travelled))
    else:
        say_findings(travelled.worked.findings, travelled.marks)
        say(looked_at(travelled))
    return FAULT if _faults(travelled) else DONE


@benchalong.command()
@PROJECT
@click.option(
    "--into", metavar="DIR", type=click.Path(path_type=Path), required=True, help="Where the site goes."
)
@THEME
@WITH_FAULTS
@WITH_SCRIPTS
@JSON
def publish(
    project: Path, into: Path, theme: str | None, with_faults: bool, with_scripts: bool, as_json: bool
) -> int:
    """Write the site of PROJECT into a folder: all of it, or nothing."""
    from benchalong.publishing import publish as publishing
    from benchalong.publishing.store import FolderStore, cache_folder
    from benchalong.road import travel

    folder = _project(project)
    store, progress = FolderStore(cache_folder()), ProgressLine()
    travelled = travel(folder, store)
    try:
        published = publishing.publish(
            travelled,
            into,
            project=folder,
            with_faults=with_faults,
            with_scripts=with_scripts,
            theme=_chosen(theme),
            store=store,
            progress=progress,
        )
    except publishing.Faulty:
        progress.clear()
        return _not_published(travelled, into, as_json=as_json)
    finally:
        progress.clear()
    store.prune()
    return _published(published, travelled, as_json=as_json)


@benchalong.command()
@PROJECT
@JSON
def outline(project: Path, as_json: bool) -> int:
    """Draft stages and step notes for the work in PROJECT that no step does.

    What is written stays as it is.
    """
    from benchalong.command_line.outlining import outline as draft
    from benchalong.publishing.store import FolderStore, cache_folder
    from benchalong.road import travel

    folder = _project(project)
    made = draft(folder, travel(folder, FolderStore(cache_folder())))
    if as_json:
        moves = [{"file": file, "before": before} for file, before in made.moves]
        say_json({"wrote": list(made.files), "stages": list(made.stages), "belongs_before": moves})
        return DONE
    for file in made.files:
        say(file)
    for file, before in made.moves:
        say(f"no number was free: {file} belongs before {before}; rename it when you have made room")
    if made.stages:
        say(f"added to {PROJECT_FILE}: stages {', '.join(made.stages)}")
    drafted = f"drafted {counted(len(made.files), 'step')}; read them before you build by them"
    say(drafted if made.files else "nothing to draft: every piece of work is in a step")
    return DONE


@benchalong.command("open")
@PROJECT
@click.option(
    "--port",
    type=click.IntRange(1, 65535),
    help=f"Where to listen; {USUAL_PORT} or the next free one by itself.",
)
@THEME
@WITH_FAULTS
@WITH_SCRIPTS
def open_(project: Path, port: int | None, theme: str | None, with_faults: bool, with_scripts: bool) -> int:
    """Serve the site of PROJECT on this machine, and publish it anew whenever a file is saved."""
    from benchalong.serving.open_site import Wishes, open_site

    wishes = Wishes(theme=_chosen(theme), with_faults=with_faults, with_scripts=with_scripts)
    open_site(_project(project), wishes, port=port, usual_port=USUAL_PORT, say=say)
    return DONE


def run(words: Sequence[str]) -> int:
    """Do what was typed after `benchalong`; the exit code. No exception leaves this."""
    forgiving()
    as_json, typed = "--json" in words, Typed(words)
    try:
        code = benchalong.main(args=list(words), prog_name="benchalong", standalone_mode=False, obj=typed)
        return code if isinstance(code, int) else DONE
    except Unreadable as trouble:
        return say_problems(trouble, as_json=as_json)
    except click.exceptions.NoArgsIsHelpError as error:
        say(error.ctx.get_help() if error.ctx else "", to=sys.stderr)
        return UNREADABLE
    except click.UsageError as error:
        return say_problems(typed.usage(error), as_json=as_json)
    except Refused as refused:
        return say_refused(str(refused), as_json=as_json)
    except (KeyboardInterrupt, click.Abort):
        return say_refused("stopped; what stood before still stands", as_json=as_json)
    except OSError as error:
        return say_refused(of_the_machine(error), as_json=as_json)
    except Exception:
        return our_fault(as_json=as_json)


def _typed() -> Typed:
    return click.get_current_context().ensure_object(Typed)


def _project(folder: Path) -> Path:
    """The folder, if it holds a project. Raises Unreadable otherwise."""
    word = str(folder)
    if not folder.exists():
        raise _typed().problem(word, f"there is no folder {folder}", "the folder of a project", _near(folder))
    if not folder.is_dir():
        meant = (str(folder.parent),) if folder.name == PROJECT_FILE else ()
        raise _typed().problem(word, f"{folder} is a file", "the folder of a project", meant)
    if not (folder / PROJECT_FILE).is_file():
        expected = f"a folder with a {PROJECT_FILE} in it; benchalong begin DIR lays one down"
        raise _typed().problem(word, f"{folder} holds no {PROJECT_FILE}", expected)
    return folder


def _near(folder: Path) -> tuple[str, ...]:
    """Projects beside a folder that isn't there, whose names are near to it."""
    if not folder.parent.is_dir():
        return ()
    known = {entry.name for entry in folder.parent.iterdir() if (entry / PROJECT_FILE).is_file()}
    return tuple(str(folder.parent / name) for name in nearest_words(folder.name, known))


def _chosen(theme: str | None) -> Chosen | None:
    from benchalong.publishing.theme import Chosen

    typed = _typed()
    return None if theme is None else Chosen(theme, typed.mark(theme), typed.line)


def _faults(travelled: Travelled) -> tuple[Finding, ...]:
    return tuple(finding for finding in travelled.worked.findings if finding.level == "fault")


def _not_published(travelled: Travelled, into: Path, *, as_json: bool) -> int:
    from benchalong.command_line.checked import check_json

    if as_json:
        say_json(check_json(travelled))
        return FAULT
    say_findings(_faults(travelled), travelled.marks, to=sys.stderr)
    say(f"not published: {into} is as it was; --with-faults publishes in spite of this", to=sys.stderr)
    return FAULT


def _published(published: Published, travelled: Travelled, *, as_json: bool) -> int:
    from benchalong.command_line.checked import check_json

    if as_json:
        counts = {
            "published": str(published.folder),
            "pages": published.pages,
            "pictures": published.pictures,
        }
        say_json({**counts, **check_json(travelled)})
        return DONE
    if travelled.worked.findings:
        say_findings(travelled.worked.findings, travelled.marks, to=sys.stderr)
    folder = published.folder
    say(f"{counted(published.pages, 'page')} in {folder}; begin with {folder / 'index.html'}")
    return DONE
