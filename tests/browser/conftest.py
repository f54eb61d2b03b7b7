"""A reader's browser before a site, opened from its folder or from a host on this machine."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import TypeAlias

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from conftest import ROOT

HERE = Path(__file__).resolve().parent
SCRIPTS = ROOT / "themes" / "bench" / "scripts"

Address: TypeAlias = str
"""Where a site begins, without a slash at its end."""
Hosted: TypeAlias = Callable[[Path], Address]


asked_for: list[str] = []
"""Every path that the host was asked for."""


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Notes the path, and says nothing: a test's output is its own."""
        asked_for.append(self.path)

    def end_headers(self) -> None:
        # Editions follow each other within the second that a cache would compare by.
        self.send_header("Cache-Control", "no-store")
        super().end_headers()


@contextmanager
def _served(folder: Path) -> Iterator[Address]:
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        server.server_close()


@pytest.fixture(scope="session")
def host(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Address]:
    """One host for everything that this session makes; a site stands in a folder below it."""
    with _served(tmp_path_factory.getbasetemp()) as address:
        yield address


@pytest.fixture(scope="session")
def on_host(host: Address, tmp_path_factory: pytest.TempPathFactory) -> Hosted:
    """Gives a site's folder its address on the host."""
    base = tmp_path_factory.getbasetemp()
    return lambda folder: f"{host}/{folder.relative_to(base).as_posix()}"


@pytest.fixture(params=["file", "localhost"])
def hosted(request: pytest.FixtureRequest) -> Hosted:
    """Gives a site's folder its address: as opened from the folder, and then as a host gives it out."""
    if request.param == "file":
        return lambda folder: folder.as_uri()
    on_host: Hosted = request.getfixturevalue("on_host")
    return on_host


@pytest.fixture
def reader(browser: Browser) -> Iterator[BrowserContext]:
    """A device that has kept nothing yet. Whatever its pages say on the console fails the test."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    context.set_default_timeout(5000)
    said: list[str] = []
    context.on("console", lambda message: said.append(f"{message.type}: {message.text}"))
    context.on("weberror", lambda trouble: said.append(f"error: {trouble.error}"))
    yield context
    context.close()
    assert said == []


@pytest.fixture
def page(reader: BrowserContext) -> Page:
    return reader.new_page()


@pytest.fixture
def trial(tmp_path: Path) -> Path:
    """A site of three pages written by hand, with the theme's scripts."""
    site = shutil.copytree(HERE / "fixtures", tmp_path / "trial")
    shutil.copytree(SCRIPTS, site / "scripts")
    return site


def rewrite(file: Path, *changes: tuple[str, str]) -> None:
    """A new edition of a page: each text in turn for another, which must be there."""
    text = file.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, f"{old!r} is not in {file.name}"
        text = text.replace(old, new)
    file.write_text(text, encoding="utf-8")
