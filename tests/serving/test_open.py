"""`open`: to this machine only, follows a save, keeps the last good site up."""

from __future__ import annotations

import contextlib
import http.client
import socket
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from benchalong.command_line.beginning import lay_down
from benchalong.serving.open_site import Opened, Wishes
from benchalong.serving.page_server import NEWS, SCRIPT, STYLE, dressed, inside


@pytest.fixture
def project(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    folder = tmp_path / "shelf"
    lay_down(folder, units="inch")
    return folder


@contextlib.contextmanager
def following(project: Path) -> Iterator[Opened]:
    """The project served, with saves being followed."""
    with Opened(project, Wishes(), port=0) as opened:
        opened.publish_again()
        follower = threading.Thread(target=lambda: list(opened.follow()), daemon=True)
        follower.start()
        time.sleep(0.3)
        yield opened
        opened.stop()
        follower.join(timeout=10)
        assert not follower.is_alive()


def get(opened: Opened, path: str, *, host: str | None = None, method: str = "GET") -> tuple[int, str]:
    port = int(opened.address.rsplit(":", 1)[1].rstrip("/"))
    asked = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
    asked.putrequest(method, path, skip_host=True)
    asked.putheader("Host", host or f"127.0.0.1:{port}")
    asked.endheaders()
    answer = asked.getresponse()
    text = answer.read().decode()
    asked.close()
    return answer.status, text


def news(opened: Opened, since: int) -> int:
    return int(get(opened, f"{NEWS}?since={since}")[1])


def save(project: Path, old: str, new: str) -> None:
    file = project / "project.yaml"
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def test_a_save_is_followed_and_a_mistake_keeps_the_last_good_site(project: Path) -> None:
    with following(project) as opened:
        status, page = get(opened, "/")
        assert status == 200
        assert "Wall shelf with pegs" in page
        assert f'<script src="{SCRIPT}" data-since="1" defer></script>' in page
        assert "benchalong-open" not in page.replace(SCRIPT, "")

        save(project, "title: Wall shelf with pegs", "title: Hall shelf")
        assert news(opened, 1) == 2
        assert "Hall shelf" in get(opened, "/")[1]

        save(project, "stock: oak\n", "stock: aok\n")
        assert news(opened, 2) == 3
        page = get(opened, "/")[1]
        assert "Hall shelf" in page
        assert "did you mean oak?" in page
        assert STYLE in page

        save(project, "stock: aok\n", "stock: oak\n")
        assert news(opened, 3) == 4
        assert "did you mean" not in get(opened, "/")[1]


def test_a_plan_that_was_never_good_shows_its_problems_and_recovers(project: Path) -> None:
    save(project, "stock: oak\n", "stock: aok\n")
    with following(project) as opened:
        status, page = get(opened, "/steps/anything.html")
        assert status == 200
        assert "did you mean oak?" in page
        save(project, "stock: aok\n", "stock: oak\n")
        assert news(opened, 1) == 2
        assert "Wall shelf" in get(opened, "/")[1]


def test_a_fault_keeps_the_last_good_site_too(project: Path) -> None:
    with following(project) as opened:
        save(project, "width: thick, depth: rabbet_depth", "width: thick, depth: 2 * thick")
        assert news(opened, 1) == 2
        assert "fault: " in get(opened, "/")[1]


def test_only_our_own_names_are_answered(project: Path) -> None:
    with Opened(project, Wishes(), port=0) as opened:
        opened.publish_again()
        port = opened.address.rsplit(":", 1)[1].rstrip("/")
        assert get(opened, "/", host=f"localhost:{port}")[0] == 200
        for host in (
            "example.org",
            f"example.org:{port}",
            "127.0.0.1",
            "localhost:1",
            f"127.0.0.1.example.org:{port}",
        ):
            for path in ("/", NEWS, SCRIPT, "/plan.json"):
                status, text = get(opened, path, host=host)
                assert status == 421
                assert "Wall shelf" not in text


def test_it_listens_on_this_machine_only(project: Path) -> None:
    with Opened(project, Wishes(), port=0) as opened:
        assert opened.address.startswith("http://127.0.0.1:")


@pytest.mark.parametrize(
    "path",
    [
        "/steps/",
        "/assets",
        "/../project.yaml",
        "/..%2f..%2fetc/passwd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/steps/..%5c..%5cproject.yaml",
        "//etc/passwd",
        "/index.html%00",
        "/C:/index.html",
    ],
)
def test_nothing_but_the_site_s_files(project: Path, path: str) -> None:
    with Opened(project, Wishes(), port=0) as opened:
        opened.publish_again()
        assert get(opened, path)[0] == 404


def test_other_methods_are_refused(project: Path) -> None:
    with Opened(project, Wishes(), port=0) as opened:
        opened.publish_again()
        assert get(opened, "/", method="POST")[0] == 501
        assert get(opened, "/", method="HEAD") == (200, "")


def test_the_next_free_port_is_taken_unless_one_was_asked_for(project: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        with Opened(project, Wishes(), port=None, usual_port=port) as opened:
            assert opened.address != f"http://127.0.0.1:{port}/"
        with pytest.raises(OSError, match="in use"):
            Opened(project, Wishes(), port=port)


def test_nothing_is_left_behind(project: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "temp"))
    (tmp_path / "temp").mkdir()
    before = sorted(path.name for path in project.rglob("*"))
    with Opened(project, Wishes(), port=0) as opened:
        opened.publish_again()
        assert list((tmp_path / "temp").iterdir())
    assert not list((tmp_path / "temp").iterdir())
    assert sorted(path.name for path in project.rglob("*")) == before


def test_problems_can_t_put_anything_into_the_page() -> None:
    page = dressed(b"<html><head></head><body class='a'><p>", 1, "<script>alert(1)</script> \\1 \\g<0>")
    assert b"<script>alert" not in page
    assert b"&lt;script&gt;alert(1)&lt;/script&gt; \\1 \\g&lt;0&gt;" in page


def test_a_link_out_of_the_site_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "secret.html").write_text("secret")
    (tmp_path / "site").mkdir()
    (tmp_path / "site" / "a.html").symlink_to(tmp_path / "secret.html")
    assert inside(tmp_path / "site", "/a.html") is None
