"""The store makes a run faster, never wrong, and never fail."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from benchalong.publishing.store import KEPT_FOR, FolderStore, cache_folder

TEXTS = ["", "plain", "two\nlines\r\n", "≈ 60.3 mm ½\u2028", "a\nb\nc\n"]


@pytest.mark.parametrize("text", TEXTS)
def test_a_text_comes_back_as_it_was(tmp_path: Path, text: str) -> None:
    FolderStore(tmp_path).put("a key\nof two lines", text)
    assert FolderStore(tmp_path).get("a key\nof two lines") == text
    assert FolderStore(tmp_path).get("another key") is None


@pytest.mark.parametrize("damage", [b"", b"nonsense", b"\xff\xfe\n\n", b"\n\n\n"])
def test_a_damaged_file_is_not_found(tmp_path: Path, damage: bytes) -> None:
    store = FolderStore(tmp_path)
    store.put("key", "text")
    (file,) = (path for path in tmp_path.rglob("*") if path.is_file())
    file.write_bytes(damage)
    assert store.get("key") is None
    store.put("key", "text")
    assert store.get("key") == "text"


def test_a_text_cut_short_is_not_found(tmp_path: Path) -> None:
    store = FolderStore(tmp_path)
    store.put("key", "a longer text")
    (file,) = (path for path in tmp_path.rglob("*") if path.is_file())
    file.write_bytes(file.read_bytes()[:-3])
    assert store.get("key") is None


def test_where_nothing_can_be_written_nothing_fails(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file where the folder should be")
    store = FolderStore(tmp_path / "taken")
    store.put("key", "text")
    assert store.get("key") is None
    store.prune()


def test_what_is_old_goes(tmp_path: Path) -> None:
    store = FolderStore(tmp_path)
    store.put("key", "text")
    store.prune()
    assert store.get("key") == "text"
    store.prune(now=time.time() + KEPT_FOR + 10)
    assert store.get("key") is None


def test_what_is_too_much_goes_oldest_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    store = FolderStore(tmp_path)
    for age, key in enumerate(("new", "old")):
        store.put(key, "x" * 1000)
        (file,) = (
            path for path in tmp_path.rglob("*") if path.is_file() and time.time() - path.stat().st_mtime < 50
        )
        os.utime(file, (time.time() - 100 * (age + 1),) * 2)
    monkeypatch.setattr("benchalong.publishing.store.LARGEST", 1500)
    store.prune()
    assert store.get("new") is not None
    assert store.get("old") is None


def test_the_cache_folder_can_be_named(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    assert cache_folder() == tmp_path / "benchalong"
