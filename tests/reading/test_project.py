"""A project's folder: what is missing, what is in the way, what leads out of it."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchalong.reading.project import read_project
from reading.shared import SMALLEST, STEP, WHOLE, messages, read, told

PNG = b"\x89PNG\r\n\x1a\n" + b"\0" * 8


def test_the_whole_project_is_read() -> None:
    reading = read_project(WHOLE)
    assert told(reading) == ""
    assert reading.unreadable == frozenset()
    step = reading.project.steps[0]
    assert (step.id, step.number, step.file) == ("mill-rail", 1, "steps/01-mill-rail.md")
    assert step.check_sources == ("The rail is (=stile) wide", "Both ends are square")
    assert step.jigs == ("stop",)
    assert step.note_pictures == reading.project.pictures == ("pictures/rail.png",)
    assert reading.project.questions[0].replies[0].when == "2026-03-03"
    assert reading.project.builders[0].handle == "robin"


def test_an_id_is_made_from_the_title_when_there_is_none(tmp_path: Path) -> None:
    assert (
        read(tmp_path, {"project.yaml": "title: A Box (=x), oiled!\nunits: inch\n"}).project.id
        == "a-box-oiled"
    )


def test_there_is_no_such_folder(tmp_path: Path) -> None:
    assert messages(read_project(tmp_path / "none")) == [f"{tmp_path / 'none'} doesn't exist"]


def test_a_file_where_the_project_should_be(tmp_path: Path) -> None:
    (tmp_path / "plan").write_text("x")
    assert messages(read_project(tmp_path / "plan")) == [f"{tmp_path / 'plan'} is a file"]


def test_there_is_no_plan_in_the_folder(tmp_path: Path) -> None:
    reading = read_project(tmp_path)
    assert messages(reading) == [f"there is no project.yaml in {tmp_path}"]
    assert ("project.yaml",) in reading.unreadable


def test_a_folder_where_the_plan_should_be(tmp_path: Path) -> None:
    (tmp_path / "project.yaml").mkdir()
    assert messages(read_project(tmp_path)) == ["project.yaml is not a file"]


def test_a_file_where_a_folder_should_be(tmp_path: Path) -> None:
    reading = read(tmp_path, {"project.yaml": SMALLEST, "steps": "x"})
    assert messages(reading) == ["steps is a file, and a folder is expected here"]


def test_a_folder_among_the_steps(tmp_path: Path) -> None:
    reading = read(tmp_path, {"project.yaml": SMALLEST, "steps/more/01-mill.md": STEP})
    assert messages(reading) == ["steps/more is a folder, and only files are read here"]


def test_hidden_files_are_passed_over(tmp_path: Path) -> None:
    files = {"project.yaml": SMALLEST, "steps/.01-mill.md.swp": "x", "pictures/.thumbs": "x"}
    assert messages(read(tmp_path, files)) == []


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_what_may_not_be_read(tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_text(SMALLEST)
    (tmp_path / "project.yaml").chmod(0)
    assert messages(read_project(tmp_path)) == ["project.yaml can't be read: permission denied"]


def test_what_can_not_be_opened_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    (tmp_path / "project.yaml").write_text(SMALLEST)
    monkeypatch.setattr("benchalong.reading.folder.open", refuse, raising=False)
    assert messages(read_project(tmp_path)) == ["project.yaml can't be read: permission denied"]


@pytest.mark.parametrize(
    ("link", "target"),
    [
        ("steps/01-mill.md", "secret.md"),
        ("steps", "folder"),
        ("pictures/rail.png", "secret.png"),
        ("builders/robin.yaml", "secret.yaml"),
        ("project.yaml", "secret.yaml"),
    ],
)
def test_links_out_of_the_project_are_refused(tmp_path: Path, link: str, target: str) -> None:
    outside, project = tmp_path / "outside", tmp_path / "project"
    (outside / "folder").mkdir(parents=True)
    for name in ("secret.md", "secret.png", "secret.yaml"):
        (outside / name).write_text("name: secret\n")
    files = {"project.yaml": SMALLEST} if link != "project.yaml" else {}
    read(project, {**files, "questions/.keep": ""})
    (project / link).parent.mkdir(exist_ok=True)
    (project / link).symlink_to(outside / target)
    reading = read_project(project)
    assert messages(reading) == [f"{link} leads out of the project"]
    assert "secret" not in repr(reading.project)


def test_links_within_the_project_are_followed(tmp_path: Path) -> None:
    read(tmp_path, {"project.yaml": SMALLEST, "drafts/mill.md": STEP, "steps/.keep": ""})
    (tmp_path / "steps/01-mill.md").symlink_to("../drafts/mill.md")
    reading = read_project(tmp_path)
    assert messages(reading) == []
    assert [step.id for step in reading.project.steps] == ["mill"]


def test_a_link_to_nothing_is_told(tmp_path: Path) -> None:
    read(tmp_path, {"project.yaml": SMALLEST, "steps/.keep": ""})
    (tmp_path / "steps/01-mill.md").symlink_to("02-none.md")
    assert len(read_project(tmp_path).problems) == 1


@pytest.mark.parametrize(
    ("name", "data", "message"),
    [
        ("rail.svg", b"<svg/>", "pictures/rail.svg is not taken as a picture: an SVG can carry a program"),
        ("rail.bmp", b"BM", "pictures/rail.bmp is not taken as a picture"),
        ("rail.png", b"<html>", "pictures/rail.png doesn't hold what its ending says"),
        ("rail.webp", b"RIFF____AVI ", "pictures/rail.webp doesn't hold what its ending says"),
    ],
)
def test_only_pictures_are_taken_as_pictures(tmp_path: Path, name: str, data: bytes, message: str) -> None:
    reading = read(tmp_path, {"project.yaml": SMALLEST, f"pictures/{name}": data})
    assert messages(reading) == [message]
    assert reading.project.pictures == ()


def test_a_file_name_with_control_characters_is_refused_and_not_printed_as_it_is(tmp_path: Path) -> None:
    reading = read(tmp_path, {"project.yaml": SMALLEST, "pictures/a\x1b[31m.png": PNG})
    assert messages(reading) == [r"the file name 'a\x1b[31m.png' can't be used"]
    assert reading.project.pictures == ()


def test_pictures_are_listed(tmp_path: Path) -> None:
    pictures = {"b.PNG": PNG, "a.jpg": b"\xff\xd8\xff\xe0", "c.webp": b"RIFF\0\0\0\0WEBP", "d.gif": b"GIF89a"}
    reading = read(
        tmp_path, {"project.yaml": SMALLEST, **{f"pictures/{name}": data for name, data in pictures.items()}}
    )
    assert messages(reading) == []
    assert reading.project.pictures == (
        "pictures/a.jpg",
        "pictures/b.PNG",
        "pictures/c.webp",
        "pictures/d.gif",
    )


def test_steps_come_in_the_order_of_their_numbers(tmp_path: Path) -> None:
    steps = {f"steps/{name}.md": STEP for name in ("10-sand", "9-glue", "002-cut")}
    reading = read(tmp_path, {"project.yaml": SMALLEST, **steps})
    assert [step.id for step in reading.project.steps] == ["cut", "glue", "sand"]


ODD_TEXT = st.text(st.characters(codec="utf-8"), max_size=200)
YAML_LIKE = st.lists(
    st.sampled_from(
        [*"[]{}:,-?&*!|>'\"%@`#~<=()\t\n ", "title: ", "sizes:\n  ", "parts:\n  ", "cuts:\n", "  - ", "- ",
         "&a ", "*a", "<<: ", "---\n",
         "on: ", "cut: groove", "(=", "x", "3/4 in", "'", "place:\n", "steps", "amiss: ", "does:\n  - mill: "]
    ),
    max_size=60,
).map("".join)  # fmt: skip
QUIET = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@given(st.one_of(st.binary(max_size=200), ODD_TEXT.map(str.encode), YAML_LIKE.map(str.encode)))
@QUIET
def test_no_plan_whatever_is_in_it_raises_anything(tmp_path: Path, data: bytes) -> None:
    told(read(tmp_path, {"project.yaml": data}))
    told(read(tmp_path, {"project.yaml": SMALLEST.encode() + data}))


@given(st.one_of(st.binary(max_size=200), ODD_TEXT.map(str.encode), YAML_LIKE.map(str.encode)))
@QUIET
def test_no_note_thread_or_edition_whatever_is_in_it_raises_anything(tmp_path: Path, data: bytes) -> None:
    files = ("steps/01-mill.md", "questions/flat.md", "builders/robin.yaml")
    told(read(tmp_path, {"project.yaml": SMALLEST.encode(), **dict.fromkeys(files, data)}))
    head = STEP.encode()
    told(
        read(
            tmp_path,
            {
                "steps/01-mill.md": head + data,
                "questions/flat.md": head + data,
                "builders/robin.yaml": b"boards:\n" + data,
            },
        )
    )


@given(st.data())
@QUIET
def test_no_slip_in_a_whole_project_raises_anything(tmp_path: Path, data: st.DataObject) -> None:
    """One stretch of one file is lost, doubled or replaced."""
    files = {
        path.relative_to(WHOLE).as_posix(): path.read_bytes()
        for path in WHOLE.rglob("*.[ym]*")
        if path.is_file()
    }
    name = data.draw(st.sampled_from(sorted(files)))
    text = files[name]
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, min(len(text), start + 20)))
    put = data.draw(st.one_of(st.just(b""), st.just(text[start:end] * 2), YAML_LIKE.map(str.encode)))
    told(read(tmp_path, {**files, name: text[:start] + put + text[end:]}))
