"""Themes are folders; a project lays single files over one."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchalong.ground.marks import Mark, Marks
from benchalong.ground.problems import Unreadable
from benchalong.ground.report import problem_text
from benchalong.publishing.theme import Chosen, Theme, chosen_in, load_theme, shipped_themes


def chosen(name: str) -> Chosen:
    return Chosen(name, Mark("project.yaml", 3, 10, len(name)), f"  theme: {name}")


def write(folder: Path, **files: str) -> Path:
    for name, text in files.items():
        path = folder / name.replace("__", "/").replace("_css", ".css").replace("_html", ".html")
        path = path.with_name(path.name.replace("_js", ".js").replace("_yaml", ".yaml"))
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def refusal(project: Path, name: str = "bench") -> str:
    with pytest.raises(Unreadable) as caught:
        load_theme(chosen(name), project)
    return "\n".join(problem_text(problem, caught.value.marks) for problem in caught.value.problems)


def own_theme(project: Path) -> Theme:
    return load_theme(chosen("look/mine"), project)


def test_every_theme_that_is_shipped_can_be_loaded(tmp_path: Path) -> None:
    assert "bench" in shipped_themes()
    for name in shipped_themes():
        theme = load_theme(chosen(name), tmp_path)
        assert {"base.html", "step.html", "piece.html"} <= set(theme.templates)
        assert not theme.is_own


def test_a_project_that_names_none_has_the_usual_one() -> None:
    assert chosen_in("", Marks()).name == "bench"


def test_a_single_file_of_the_project_stands_in_for_the_theme_s(tmp_path: Path) -> None:
    write(tmp_path, look__templates__step_html="mine")
    theme = load_theme(chosen("bench"), tmp_path)
    assert theme.templates["step.html"].text == "mine"
    assert theme.templates["step.html"].file == "look/templates/step.html"
    assert theme.templates["part.html"].text != "mine"
    assert theme.is_own


def test_a_theme_of_the_project_falls_back(tmp_path: Path) -> None:
    write(
        tmp_path,
        look__mine__theme_yaml="falls_back_to: bench\ncolours: {text: '#000000'}\n",
        look__mine__templates__step_html="mine",
    )
    theme = own_theme(tmp_path)
    assert theme.templates["step.html"].text == "mine"
    assert "part.html" in theme.templates
    assert theme.colours.text == "#000000"


def test_an_unknown_theme_names_the_nearest(tmp_path: Path) -> None:
    said = refusal(tmp_path, "benhc")
    assert said.startswith(
        "project.yaml:3:10: there is no theme called benhc\n      theme: benhc\n             ^^^^^\n"
    )
    assert said.endswith("did you mean bench?")


@pytest.mark.parametrize("name", ["../outside", "/etc", "look/../../outside"])
def test_a_theme_outside_the_project_is_refused(tmp_path: Path, name: str) -> None:
    project = tmp_path / "project"
    project.mkdir()
    write(tmp_path / "outside", theme_yaml="title: Mine\n")
    assert f"the theme {name} lies outside the project" in refusal(project, name)


def test_themes_that_fall_back_in_a_circle_are_refused(tmp_path: Path) -> None:
    write(tmp_path, look__mine__theme_yaml="falls_back_to: look/mine\n")
    assert "falls back in a circle" in refusal(tmp_path, "look/mine")


@pytest.mark.parametrize(
    ("settings", "said"),
    [
        ("falls_bakc_to: bench\n", "unknown key falls_bakc_to, did you mean falls_back_to?"),
        ("colours: {txet: '#000000'}\n", "unknown key txet, did you mean text?"),
        ("colours: {text: black}\n", "'black' is not a colour"),
        ("a: [\n", "can't be read as YAML"),
        ("- a list\n", "the theme's settings"),
    ],
)
def test_settings_that_are_wrong_are_said(tmp_path: Path, settings: str, said: str) -> None:
    write(tmp_path, look__mine__theme_yaml=settings)
    text = refusal(tmp_path, "look/mine")
    assert text.startswith("look/mine/theme.yaml:")
    assert said in text


def test_a_file_that_would_change_nothing_is_refused(tmp_path: Path) -> None:
    write(tmp_path, look__templates__stepp_html="", look__styles__shete_css="")
    said = refusal(tmp_path)
    assert "look/templates/stepp.html:1:1: the theme has no template called stepp.html" in said
    assert "did you mean step.html?" in said
    assert "look/styles/shete.css:1:1: the theme has no style called shete.css" in said


def test_own_files_may_be_added(tmp_path: Path) -> None:
    write(tmp_path, look__templates__own_crest_html="", look__styles__own_crest_css="")
    (tmp_path / "look/templates/own_crest.html").rename(tmp_path / "look/templates/own-crest.html")
    (tmp_path / "look/styles/own_crest.css").rename(tmp_path / "look/styles/own-crest.css")
    theme = load_theme(chosen("bench"), tmp_path)
    assert "own-crest.html" in theme.templates
    assert "own-crest.css" in theme.styles


def test_scripts_need_the_user_s_word(tmp_path: Path) -> None:
    write(tmp_path, look__scripts__page_js="alert(1)\n")
    said = refusal(tmp_path)
    assert "a script of the project's own would run on every reader's device" in said
    assert "--with-scripts" in said
    theme = load_theme(chosen("bench"), tmp_path, with_scripts=True)
    assert theme.scripts["page.js"].text == "alert(1)\n"


def test_a_theme_of_the_project_needs_the_word_for_its_scripts_too(tmp_path: Path) -> None:
    write(
        tmp_path, look__mine__theme_yaml="falls_back_to: bench\n", look__mine__scripts__page_js="alert(1)\n"
    )
    assert "--with-scripts" in refusal(tmp_path, "look/mine")


def test_a_remote_address_in_a_style_is_refused_with_its_place(tmp_path: Path) -> None:
    write(tmp_path, look__styles__print_css="p {}\na { background: url(//example.org/a.png) }\n")
    assert refusal(tmp_path).startswith(
        "look/styles/print.css:2:17: a style names an address outside the site\n"
        "    a { background: url(//example.org/a.png) }\n"
        "                    ^^^^"
    )


def test_links_out_of_the_folder_and_odd_bytes_are_refused(tmp_path: Path) -> None:
    (tmp_path / "secret.html").write_text("secret")
    folder = tmp_path / "project" / "look" / "templates"
    folder.mkdir(parents=True)
    (folder / "step.html").symlink_to(tmp_path / "secret.html")
    (folder / "part.html").write_bytes(b"\xff\xfe")
    said = refusal(tmp_path / "project")
    assert "look/templates/step.html:1:1: is a link out of its folder" in said
    assert "look/templates/part.html:1:1: is not UTF-8 text" in said


def test_a_style_kept_by_subject_is_one_file_in_order_of_its_names(tmp_path: Path) -> None:
    write(
        tmp_path,
        look__mine__theme_yaml="{}\n",
        look__mine__styles__sheet__20_wide_css="p { color: blue }",
        look__mine__styles__sheet__10_narrow_css="p { color: red }",
    )
    assert own_theme(tmp_path).styles["sheet.css"].text == "p { color: red }\np { color: blue }"


def test_in_the_usual_sheet_the_wider_screen_comes_after_every_subject(tmp_path: Path) -> None:
    """It says again, with the same selectors, what the subjects say for a narrow one: the later rule wins."""
    sheet = load_theme(chosen("bench"), tmp_path).styles["sheet.css"].text
    narrow, wide = sheet.split("@media (min-width: 62rem)")
    for selector in ("body", ".head", ".menu", "main", ".foot", "h1"):
        assert f"\n{selector} {{" in narrow
        assert f"\n  {selector} {{" in wide
        assert f"\n{selector} {{" not in wide


def test_a_project_stands_in_for_one_subject_or_for_the_whole_sheet(tmp_path: Path) -> None:
    write(tmp_path, look__styles__sheet__45_care_css="/* mine */\n")
    (tmp_path / "look/styles/sheet/45_care.css").rename(tmp_path / "look/styles/sheet/45-care.css")
    text = load_theme(chosen("bench"), tmp_path).styles["sheet.css"].text
    assert "/* mine */" in text
    assert "/* Care */" not in text
    assert text.index("/* The head of a sheet */") < text.index("/* mine */") < text.index("/* Tables */")
    write(tmp_path, look__styles__sheet_css="p {}\n")
    assert load_theme(chosen("bench"), tmp_path).styles["sheet.css"].text == "p {}\n"


def test_a_subject_that_the_theme_has_not_is_refused(tmp_path: Path) -> None:
    write(tmp_path, look__styles__sheet__45_crae_css="p {}\n")
    assert "the theme has no style called sheet/45_crae.css" in refusal(tmp_path)
