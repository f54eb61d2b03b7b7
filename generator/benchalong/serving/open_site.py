"""`benchalong open`: publish, serve, and publish again whenever a file of the project is saved.

Each site goes into a folder of its own, outside the project, and readers are moved over when it is
whole. While the plan has a mistake the last good site stays up with the problems on top.
"""

from __future__ import annotations

import contextlib
import shutil
import signal
import tempfile
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from benchalong.ground.marks import Marks
from benchalong.ground.problems import Finding, Unreadable
from benchalong.ground.report import finding_text, in_order, problem_text
from benchalong.publishing.publish import Faulty, publish
from benchalong.publishing.store import FolderStore, cache_folder
from benchalong.publishing.theme import Chosen
from benchalong.road import travel
from benchalong.serving.page_server import PageServer
from benchalong.serving.standing import Standing

PORTS_TRIED = 50


@dataclass(frozen=True)
class Wishes:
    """What the user asked for on the command line."""

    theme: Chosen | None = None
    with_faults: bool = False
    with_scripts: bool = False


def open_site(
    project: Path, wishes: Wishes, *, port: int | None, usual_port: int, say: Callable[[str], None]
) -> None:
    """Serve until the user stops it with Ctrl-C. Raises OSError when a port asked for is taken."""
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    with Opened(project, wishes, port=port, usual_port=usual_port) as opened:
        say(opened.publish_again())
        say(f"{opened.address} shows {project}; save a file and the page follows. Ctrl-C ends it.")
        with contextlib.suppress(KeyboardInterrupt):
            for report in opened.follow():
                say(report)


class Opened:
    """A project that is being served."""

    def __init__(self, project: Path, wishes: Wishes, *, port: int | None, usual_port: int = 0) -> None:
        self._project = project
        self._wishes = wishes
        self._store = FolderStore(cache_folder())
        self._standing = Standing()
        self._stop = threading.Event()
        self._server = _listening(port, usual_port, self._standing)
        self._folder = Path(tempfile.mkdtemp(prefix="benchalong-open-"))
        self._count = 0

    def __enter__(self) -> Opened:
        threading.Thread(target=self._server.serve_forever, args=(0.1,), daemon=True).start()
        return self

    def __exit__(self, *_: object) -> None:
        self._stop.set()
        self._server.shutdown()
        self._server.server_close()
        shutil.rmtree(self._folder, ignore_errors=True)

    @property
    def address(self) -> str:
        return self._server.address

    def stop(self) -> None:
        """End `follow`, from another thread."""
        self._stop.set()

    def follow(self) -> Iterator[str]:
        """Publish again after each save; says what came of it."""
        # Loaded here: nothing but this needs it.
        from watchfiles import watch

        for _ in watch(self._project, stop_event=self._stop, debounce=300, step=50, raise_interrupt=True):
            yield self.publish_again()

    def publish_again(self) -> str:
        """Publish into a new folder and move readers over; or show what is wrong."""
        try:
            return self._published()
        except Unreadable as trouble:
            problems = in_order(trouble.problems, trouble.marks)
            return self._wrong([problem_text(problem, trouble.marks) for problem in problems])
        except OSError as error:
            return self._wrong([str(error)])

    def _published(self) -> str:
        travelled = travel(self._project, self._store)
        before = self._standing.now().site
        self._count += 1
        new = self._folder / f"site-{self._count}"
        try:
            published = publish(
                travelled,
                new,
                project=self._project,
                with_faults=self._wishes.with_faults,
                with_scripts=self._wishes.with_scripts,
                theme=self._wishes.theme,
                store=self._store,
                before=before,
            )
        except Faulty as faulty:
            return self._wrong(_texts(faulty.faults, travelled.marks))
        self._standing.good(new)
        if before is not None:
            shutil.rmtree(before, ignore_errors=True)
        return f"published {published.pages} pages"

    def _wrong(self, texts: list[str]) -> str:
        problems = "\n\n".join(texts)
        self._standing.bad(problems)
        return f"{problems}\n\nthe last good site stays up" if self._standing.now().site else problems


def _texts(findings: tuple[Finding, ...], marks: Marks) -> list[str]:
    return [finding_text(finding, marks) for finding in findings]


def _listening(port: int | None, usual_port: int, standing: Standing) -> PageServer:
    """At the port asked for; or at the usual one, or the next that is free."""
    if port is not None:
        return PageServer(port, standing)
    for tried in range(usual_port, usual_port + PORTS_TRIED):
        with contextlib.suppress(OSError):
            return PageServer(tried, standing)
    return PageServer(0, standing)
