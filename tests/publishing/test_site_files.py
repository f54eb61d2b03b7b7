"""A site's files: written, or taken over from the site before where they are the same."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from benchalong.publishing.site_files import SiteFiles

FILES = {"index.html": "one", "steps/a.html": "two ½", "steps/b.html": "three"}


def site(folder: Path, *, before: Path | None = None, **changed: str) -> dict[str, int]:
    """A site with these files; their numbers on the disk."""
    folder.mkdir()
    files = SiteFiles(folder, before=before)
    for path, text in FILES.items():
        files.write(path, changed.get(path[-6], text))
    assert files.top == {"index.html", "steps"}
    for path, text in FILES.items():
        assert (folder / path).read_text(encoding="utf-8") == changed.get(path[-6], text)
    return {path: os.stat(folder / path).st_ino for path in FILES}


def test_what_is_the_same_is_taken_over(tmp_path: Path) -> None:
    before = site(tmp_path / "before")
    now = site(tmp_path / "now", before=tmp_path / "before", a="two 1/4")
    assert [path for path in FILES if now[path] == before[path]] == ["index.html", "steps/b.html"]
    assert (tmp_path / "before" / "steps" / "a.html").read_text(encoding="utf-8") == "two ½"


def test_nothing_is_taken_over_where_there_is_no_site(tmp_path: Path) -> None:
    site(tmp_path / "now", before=tmp_path / "none")


def test_links_and_folders_in_the_site_before_are_passed_over(tmp_path: Path) -> None:
    before = tmp_path / "before"
    site(before)
    (before / "index.html").rename(tmp_path / "elsewhere.html")
    (before / "index.html").symlink_to(tmp_path / "elsewhere.html")
    (before / "steps" / "b.html").unlink()
    (before / "steps" / "b.html").mkdir()
    site(tmp_path / "now", before=before)
    assert not (tmp_path / "now" / "index.html").is_symlink()


def test_where_there_are_no_second_names_files_are_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise OSError("not on this disk")

    monkeypatch.setattr(os, "link", refuse)
    before = site(tmp_path / "before")
    assert not set(before.values()) & set(site(tmp_path / "now", before=tmp_path / "before").values())


def test_no_two_files_have_one_path(tmp_path: Path) -> None:
    files = SiteFiles(tmp_path)
    files.write("index.html", "x")
    with pytest.raises(AssertionError):
        files.write("index.html", "x")
