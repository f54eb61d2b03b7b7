"""Where a site may go, and that it gets there whole or not at all."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from benchalong.publishing.destination import LEFT_ALONE, MARKER, Destination, Refused, is_site, marker_text


@pytest.fixture
def project(tmp_path: Path) -> Path:
    folder = tmp_path / "above" / "project"
    folder.mkdir(parents=True)
    (folder / "project.yaml").write_text("title: A stool\n")
    return folder


def fill(into: Path, project: Path, word: str = "first") -> None:
    with Destination(into, project=project).new_site() as folder:
        (folder / "index.html").write_text(word)
        (folder / MARKER).write_text(marker_text("stool", "ab12cd34", {"index.html"}))


def beside(into: Path) -> list[str]:
    return sorted(entry.name for entry in into.parent.iterdir())


@pytest.mark.parametrize(
    ("into", "said"),
    [
        ("above/project", "is the project itself"),
        ("above/project/site", "lies inside the project"),
        ("above/project/new/site", "lies inside the project"),
        ("above", "holds the project"),
        (".", "holds the project"),
        ("above/../above/project", "is the project itself"),
        ("full", "holds files and is not a site of ours"),
        ("a-file", "is a file"),
        ("a-link", "is a link to another place"),
        ("way/project", "is the project itself"),
    ],
)
def test_refused(tmp_path: Path, project: Path, into: str, said: str) -> None:
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "letter.txt").write_text("keep me")
    (tmp_path / "a-file").write_text("keep me")
    (tmp_path / "a-link").symlink_to(tmp_path / "elsewhere")
    (tmp_path / "way").symlink_to(tmp_path / "above")
    with pytest.raises(Refused, match=said):
        Destination(tmp_path / into, project=project)
    assert (tmp_path / "full" / "letter.txt").read_text() == "keep me"


def test_a_root_is_refused(project: Path) -> None:
    with pytest.raises(Refused, match="holds the project"):
        Destination(Path("/"), project=project)


@pytest.mark.parametrize("there", [False, True])
def test_a_missing_or_empty_folder_is_filled(tmp_path: Path, project: Path, there: bool) -> None:
    into = tmp_path / "sites" / "stool"
    if there:
        into.mkdir(parents=True)
    fill(into, project)
    assert (into / "index.html").read_text() == "first"
    assert beside(into) == ["stool"]


def test_a_site_of_ours_is_replaced_whole(tmp_path: Path, project: Path) -> None:
    into = tmp_path / "site"
    fill(into, project)
    fill(into, project, "second")
    assert (into / "index.html").read_text() == "second"
    assert beside(into) == ["above", "site"]


def test_what_someone_added_to_a_site_is_not_lost(tmp_path: Path, project: Path) -> None:
    into = tmp_path / "site"
    fill(into, project)
    (into / ".git").mkdir()
    with pytest.raises(Refused, match=r"holds what no publish wrote \(\.git\)"):
        fill(into, project, "second")
    assert (into / "index.html").read_text() == "first"


def test_a_failure_leaves_the_old_site(tmp_path: Path, project: Path) -> None:
    into = tmp_path / "site"
    fill(into, project)

    def fail_halfway() -> None:
        with Destination(into, project=project).new_site() as folder:
            (folder / "index.html").write_text("half")
            raise RuntimeError

    with pytest.raises(RuntimeError):
        fail_halfway()
    assert (into / "index.html").read_text() == "first"
    assert beside(into) == ["above", "site"]


def test_a_failed_swap_brings_the_old_site_back(
    tmp_path: Path, project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    into = tmp_path / "site"
    fill(into, project)
    rename = Path.rename

    def refuse(self: Path, target: Path) -> Path:
        if ".benchalong-new-" in self.name:
            raise OSError("no")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(OSError, match="no"):
        fill(into, project, "second")
    assert (into / "index.html").read_text() == "first"
    assert beside(into) == ["above", "site"]


def test_a_run_cut_off_in_the_swap_is_mended_by_the_next(tmp_path: Path, project: Path) -> None:
    into = tmp_path / "site"
    fill(into, project)
    into.rename(tmp_path / ".site.benchalong-old-0badcafe")
    Destination(into, project=project)
    assert (into / "index.html").read_text() == "first"


def test_left_over_halves_are_cleared_once_they_are_old(tmp_path: Path, project: Path) -> None:
    old, young = (tmp_path / f".site.benchalong-new-{which}" for which in ("aaaaaaaa", "bbbbbbbb"))
    old.mkdir()
    young.mkdir()
    before = time.time() - LEFT_ALONE - 10
    os.utime(old, (before, before))
    fill(tmp_path / "site", project)
    assert not old.exists()
    assert young.exists(), "it may be another publish at work"


def test_nobody_loses_the_ground_they_stand_on(
    tmp_path: Path, project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    into = tmp_path / "site"
    fill(into, project)
    monkeypatch.chdir(into)
    with pytest.raises(Refused, match="you are standing in"):
        fill(Path(), project, "second")


def test_a_marker_must_be_ours(tmp_path: Path) -> None:
    for said in ("", "[]", "{}", '{"made_by": "another", "holds": []}', "\x00"):
        (tmp_path / MARKER).write_text(said)
        assert not is_site(tmp_path)


def test_the_marker_has_no_date() -> None:
    assert marker_text("stool", "ab12cd34", {"b", "a"}) == (
        '{\n  "made_by": "benchalong",\n  "project": "stool",\n  "edition": "ab12cd34",\n'
        '  "holds": [\n    "a",\n    "b",\n    "benchalong-site.json"\n  ]\n}\n'
    )
