"""Serves a folder on this machine and to nobody else.

Listens on 127.0.0.1 alone. A page from elsewhere that the user has open could still send requests here,
under a name of its own that leads to 127.0.0.1; so the Host must be ours, or nothing is answered.
"""

from __future__ import annotations

import html
import mimetypes
import re
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

from benchalong.serving.standing import Standing

HERE = "127.0.0.1"
OURS = "/benchalong-open/"
"""What `open` adds to a site stands under this."""
SCRIPT, STYLE, NEWS = f"{OURS}reload.js", f"{OURS}problems.css", f"{OURS}news"
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".csv": "text/csv; charset=utf-8",
    ".svg": "image/svg+xml",
    ".webp": "image/webp",
}
LONGEST_WAIT = 25.0
"""Seconds a page waits for news before it asks again."""

_BODY = re.compile(rb"<body\b[^>]*>")
_HEAD = re.compile(rb"</head>")

RELOAD_JS = """\
"use strict";
(function () {
  var since = document.currentScript.getAttribute("data-since");
  function ask() {
    fetch("/benchalong-open/news?since=" + since, {cache: "no-store"})
      .then(function (answer) { return answer.text(); })
      .then(function (now) { if (now !== since) { location.reload(); } else { ask(); } })
      .catch(function () { setTimeout(ask, 1000); });
  }
  ask();
})();
"""
BARE = b'<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>benchalong</title></head>'
"""The head of a page that no site has."""
PROBLEMS_CSS = """\
.benchalong-open { margin: 0; padding: 1rem; background: #fff4d6; color: #1a1a1a; }
.benchalong-open p { margin: 0 0 0.5rem; font: bold 1.125rem/1.4 system-ui, sans-serif; }
.benchalong-open pre { margin: 0; max-height: 50vh; overflow: auto; font: 1rem/1.4 ui-monospace, monospace; }
@media print { .benchalong-open { display: none; } }
"""


class PageServer(ThreadingHTTPServer):
    """The server of one `open`."""

    daemon_threads = True
    allow_reuse_address = True

    def __init__(self, port: int, standing: Standing) -> None:
        """Raises OSError when the port is taken; port 0 takes any free one."""
        super().__init__((HERE, port), _Answers)
        self.standing = standing

    @property
    def address(self) -> str:
        return f"http://{HERE}:{self.server_port}/"

    def handle_error(self, request: Any, client_address: Any) -> None:
        """A reader that went away in the middle is nothing to speak of."""


class _Answers(BaseHTTPRequestHandler):
    server: PageServer
    server_version = "benchalong"
    sys_version = ""
    protocol_version = "HTTP/1.1"
    timeout = 60

    def do_GET(self) -> None:
        self._answer()

    def do_HEAD(self) -> None:
        self._answer()

    def log_message(self, format: str, *args: Any) -> None:
        """Nobody reads it."""

    def _answer(self) -> None:
        if self.headers.get("Host", "").lower() not in self._our_names():
            self._send(
                HTTPStatus.MISDIRECTED_REQUEST, "text/plain", b"This site is served to this machine only.\n"
            )
            return
        address = urlsplit(self.path)
        if address.path == NEWS:
            self._send(HTTPStatus.OK, "text/plain", self._news(address.query))
        elif address.path == SCRIPT:
            self._send(HTTPStatus.OK, TYPES[".js"], RELOAD_JS.encode())
        elif address.path == STYLE:
            self._send(HTTPStatus.OK, TYPES[".css"], PROBLEMS_CSS.encode())
        else:
            self._file(unquote(address.path))

    def _our_names(self) -> tuple[str, ...]:
        port = self.server.server_port
        names = (f"{HERE}:{port}", f"localhost:{port}")
        return (*names, HERE, "localhost") if port == 80 else names

    def _news(self, query: str) -> bytes:
        since = query.removeprefix("since=")
        now = self.server.standing.wait_for_news(int(since) if since.isdigit() else -1, LONGEST_WAIT)
        return str(now).encode()

    def _file(self, path: str) -> None:
        state = self.server.standing.now()
        if state.site is None:
            self._page(HTTPStatus.OK, b"<body></body>", state.number, state.problems)
            return
        file = inside(state.site, path)
        try:
            data = file.read_bytes() if file else None
        except OSError:
            data = None
        if file is None or data is None:
            self._page(
                HTTPStatus.NOT_FOUND,
                b"<body><p>There is no such page.</p></body>",
                state.number,
                state.problems,
            )
        elif file.suffix == ".html":
            self._page(HTTPStatus.OK, data, state.number, state.problems)
        else:
            self._send(HTTPStatus.OK, _type(file), data)

    def _page(self, status: HTTPStatus, data: bytes, number: int, problems: str) -> None:
        if not _HEAD.search(data):
            data = BARE + data + b"</html>"
        self._send(status, TYPES[".html"], dressed(data, number, problems))

    def _send(self, status: HTTPStatus, kind: str, data: bytes) -> None:
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(data)))
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Content-Security-Policy", "default-src 'self'; frame-ancestors 'none'")
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(data)


def inside(site: Path, path: str) -> Path | None:
    """The file of a site that a request asks for; None for anything else, a folder without index too."""
    names = [name for name in path.split("/") if name]
    if any(name in (".", "..") or "\\" in name or "\0" in name or ":" in name for name in names):
        return None
    file = site.joinpath(*names)
    if file.is_dir():
        file = file / "index.html"
    return file if file.is_file() and file.resolve().is_relative_to(site.resolve()) else None


def dressed(page: bytes, number: int, problems: str) -> bytes:
    """A page as `open` shows it: it asks for news, and has the problems on top while there are any."""
    added = f'<script src="{SCRIPT}" data-since="{number}" defer></script>'
    if problems:
        added += f'<link rel="stylesheet" href="{STYLE}">'
    page = _HEAD.sub(lambda end: added.encode() + end[0], page, count=1)
    if not problems:
        return page
    banner = (
        '<section class="benchalong-open" aria-label="Problems in the plan"><p>The plan has a mistake. '
        f"What is shown below is the last site that was good.</p><pre>{html.escape(problems)}</pre></section>"
    )
    return _BODY.sub(lambda body: body[0] + banner.encode(), page, count=1)


def _type(file: Path) -> str:
    return TYPES.get(file.suffix) or mimetypes.guess_type(file.name)[0] or "application/octet-stream"
