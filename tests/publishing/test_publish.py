"""The whole site: complete, the same bytes each time, dressed as the project says, or not written at all."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from benchalong.command_line.beginning import lay_down
from benchalong.ground.marks import Marks
from benchalong.ground.problems import Finding, Unreadable
from benchalong.ground.report import problem_text
from benchalong.ground.store import MemoryStore
from benchalong.publishing.destination import MARKER
from benchalong.publishing.publish import Faulty, Published, publish
from benchalong.road import travel
from benchalong.workings.working import Worked
from publishing.shelf import changed, digests

ROOT = Path(__file__).resolve().parent.parent.parent
STORE = MemoryStore()
"""Drawings are drawn once for all these tests."""


@pytest.fixture
def project(tmp_path: Path) -> Path:
    folder = tmp_path / "shelf"
    lay_down(folder, units="inch")
    return folder


def published(project: Path, **wishes: Any) -> Published:
    return publish(travel(project), project.with_name("site"), project=project, store=STORE, **wishes)


def refusal(project: Path, **wishes: Any) -> str:
    with pytest.raises(Unreadable) as caught:
        published(project, **wishes)
    assert not project.with_name("site").exists()
    return "\n".join(problem_text(problem, caught.value.marks) for problem in caught.value.problems)


def look(project: Path, file: str, text: str) -> None:
    path = project / "look" / file
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def test_a_second_publish_with_what_is_stored_gives_the_same_bytes(project: Path, tmp_path: Path) -> None:
    store = MemoryStore()
    sites = [
        publish(travel(project, store), tmp_path / name, project=project, store=store).folder
        for name in ("first", "second", "first")
    ]
    fresh = publish(travel(project), tmp_path / "fresh", project=project).folder
    assert digests(sites[0]) == digests(sites[1]) == digests(fresh)


PUBLISH = """
import sys
from dataclasses import replace
from pathlib import Path
from benchalong.publishing.publish import publish
from benchalong.publishing.store import FolderStore
from benchalong.road import travel

project, into, store = Path(sys.argv[1]), Path(sys.argv[2]), FolderStore(Path(sys.argv[3]))
publish(travel(project, store), into, project=project, store=store)
print(sorted({"PIL", "jinja2", "manifold3d", "numpy", "pint", "svgwrite"} & set(sys.modules)))
"""


def test_what_is_stored_needs_none_of_the_libraries_that_make_it(project: Path, tmp_path: Path) -> None:
    """In another process, which writes its sets in another order."""
    words = [
        sys.executable,
        "-c",
        PUBLISH,
        *(str(tmp_path / name) for name in (project.name, "site", "store")),
    ]
    env = {**os.environ, "PYTHONPATH": str(ROOT / "generator")}
    first, second = (
        subprocess.run(words, env={**env, "PYTHONHASHSEED": seed}, capture_output=True, text=True, check=True)
        for seed in "12"
    )
    assert all(name in first.stdout for name in ("jinja2", "manifold3d", "numpy", "svgwrite"))
    assert second.stdout.strip() == "[]"


def test_everything_is_there(project: Path) -> None:
    done = published(project)
    names = set(digests(done.folder))
    wanted = {
        "index.html", "cut-list.html", "questions.html", "find.html", "paper.html", "stages/make_parts.html",
        "steps/mill-and-cut.html", "parts/shelf.html", "assets/colours.css", "plan.json", "plan.schema.json",
        "cut-list-inch.csv", "cut-list-millimetre.csv", "buy.html", "purchases.csv", MARKER,
    }  # fmt: skip
    assert wanted <= names
    assert done.pages == sum(name.endswith(".html") for name in names)
    assert json.loads((done.folder / MARKER).read_text())["project"] == travel(project).plan.id


def test_every_page_has_the_policy_and_no_other_script(project: Path) -> None:
    folder = published(project).folder
    for page in folder.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        assert '<meta http-equiv="Content-Security-Policy" content="default-src \'self\'">' in text
        assert " style=" not in text
        assert "<script>" not in text


def test_twice_in_two_processes_the_same_bytes(project: Path, tmp_path: Path) -> None:
    made = []
    for seed, zone in (("1", "UTC"), ("4242", "Pacific/Auckland")):
        around = {
            **os.environ, "PYTHONPATH": str(ROOT / "generator"), "PYTHONHASHSEED": seed, "TZ": zone,
            "XDG_CACHE_HOME": str(tmp_path / f"cache-{seed}"),
        }  # fmt: skip
        into = tmp_path / f"site-{seed}"
        words = [sys.executable, "-m", "benchalong", "publish", str(project), "--into", str(into)]
        subprocess.run(words, env=around, check=True, capture_output=True)
        made.append(digests(into))
    assert made[0] == made[1]


def test_a_stored_drawing_gives_the_same_bytes(project: Path) -> None:
    travelled = travel(project)
    store = MemoryStore()
    first = digests(publish(travelled, project.with_name("cold"), project=project, store=store).folder)
    assert (
        digests(publish(travelled, project.with_name("warm"), project=project, store=store).folder) == first
    )


def test_a_comment_changes_no_byte_but_where_things_stand(project: Path) -> None:
    first = digests(published(project).folder)
    file = project / "project.yaml"
    file.write_text("# one more note\n" + file.read_text(encoding="utf-8"), encoding="utf-8")
    assert digests(published(project).folder) == first


def test_a_fault_keeps_the_old_site(project: Path) -> None:
    first = digests(published(project).folder)
    changed(project, "width: thick, depth: rabbet_depth", "width: thick, depth: 2 * thick")
    with pytest.raises(Faulty):
        published(project)
    assert digests(project.with_name("site")) == first
    published(project, with_faults=True)
    assert digests(project.with_name("site")) != first


def test_a_doubt_keeps_nothing(project: Path) -> None:
    travelled = travel(project)
    finding = Finding("odd", "doubt", next(iter(_places(travelled.marks))), "thick", "is odd", "")
    doubtful = replace(travelled, worked=Worked(travelled.worked.results, (finding,)))
    publish(doubtful, project.with_name("site"), project=project, store=STORE)


def _places(marks: Marks) -> list[Any]:
    from benchalong.ground.marks import Place

    return [Place(path) for path in marks.values]


def test_a_page_of_the_project_s_own(project: Path) -> None:
    look(
        project,
        "templates/words.html",
        '{% extends "base.html" %}{% block main %}<h1>Our words</h1>{% endblock %}',
    )
    folder = published(project).folder
    assert "<h1>Our words</h1>" in (folder / "words.html").read_text(encoding="utf-8")


def test_a_template_at_fault_points_at_its_line(project: Path) -> None:
    look(
        project,
        "templates/words.html",
        '{% extends "base.html" %}\n{% block main %}\n{{ page.wrods }}\n{% endblock %}',
    )
    assert refusal(project).startswith("look/templates/words.html:3:1: the template can't be filled: ")


def test_a_template_that_drops_the_policy_is_refused(project: Path) -> None:
    look(project, "templates/words.html", "<!DOCTYPE html><title>Words</title><p>none")
    assert "has lost its security policy" in refusal(project)


def test_a_script_written_by_a_template_is_refused(project: Path) -> None:
    script = '{{ ("<scr" ~ "ipt>alert(1)</scr" ~ "ipt>") | safe }}'
    text = f'{{% extends "base.html" %}}{{% block main %}}{script}{{% endblock %}}'
    look(project, "templates/words.html", text)
    assert "holds a script of its own" in refusal(project)


def test_a_theme_without_a_template_is_said_plainly(project: Path) -> None:
    look(project, "mine/theme.yaml", "title: Mine\n")
    changed(project, "piece: wall_shelf", "look: {theme: look/mine}\npiece: wall_shelf")
    assert "look/mine/templates/piece.html:1:1: the theme has no template piece.html" in refusal(project)


def test_a_style_of_the_project_s_own(project: Path) -> None:
    look(project, "styles/print.css", "p { orphans: 3 }\n")
    assert (published(project).folder / "assets" / "print.css").read_text() == "p { orphans: 3 }\n"


def test_a_few_rules_come_after_the_theme_s(project: Path) -> None:
    look(project, "styles/own.css", "h1 { hyphens: auto }\n")
    assert (
        (published(project).folder / "assets" / "colours.css").read_text().endswith("h1 { hyphens: auto }\n")
    )
    assert not (project.with_name("site") / "assets" / "own.css").exists()


def test_colours_of_the_project_s_own(project: Path) -> None:
    changed(project, "piece: wall_shelf", 'look: {accent: "#7A3B1E"}\npiece: wall_shelf')
    assert "--accent: #7a3b1e;" in (published(project).folder / "assets" / "colours.css").read_text()


def test_a_colour_that_can_t_be_read_is_refused_with_its_place(project: Path) -> None:
    changed(project, "piece: wall_shelf", 'look: {accent: "#dddddd"}\npiece: wall_shelf')
    said = refusal(project)
    assert "#dddddd and the paper" in said
    assert "expected a contrast of at least 4.5 to 1" in said
    assert said.startswith("project.yaml:")


def with_picture(project: Path, name: str = "pictures/rail.png") -> Path:
    file = project / name
    file.parent.mkdir(exist_ok=True)
    Image.new("RGB", (30, 20), "tan").save(file)
    pictures = f"pictures: [{{file: {name}, alt: The rail with its three holes}}]\n---\nCut the rabbet"
    changed(project, "---\nCut the rabbet", pictures, file="steps/02-rabbet-holes-slopes.md")
    return file


def test_a_picture_goes_along(project: Path) -> None:
    with_picture(project)
    done = published(project)
    assert done.pictures == 1
    assert (done.folder / "pictures" / "rail.png").is_file()
    assert "pictures/rail.png" in (done.folder / "steps" / "rabbet-holes-slopes.html").read_text(
        encoding="utf-8"
    )


def test_a_damaged_picture_is_refused_where_it_is_named(project: Path) -> None:
    file = with_picture(project)
    file.write_bytes(file.read_bytes()[:60])
    said = refusal(project)
    assert said.startswith("steps/02-rabbet-holes-slopes.md:")
    assert "pictures/rail.png is damaged" in said


def test_progress_is_told(project: Path) -> None:
    told: list[tuple[str, int, int]] = []
    published(project, progress=lambda what, done, of: told.append((what, done, of)))
    assert told[0][:2] == ("pages", 0)
    assert told[-1][1] == told[-1][2]
