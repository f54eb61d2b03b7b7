"""A theme, with what a project lays over it.

A theme is a folder: `theme.yaml`, `icon.svg`, `templates/`, `styles/`, `scripts/`. It may fall back to
another for every file it does not have. A project lays single files over its theme from its `look/` folder:
`look/templates/step.html` stands in for the theme's `step.html`. A name the theme doesn't have would do
nothing, so it is refused, except a new template or style whose name begins with `own-`, to be included
by another, and `look/styles/own.css`: a few rules more, after the theme's.

`theme.yaml`:

    title: Bench
    about: A line on what it is for.
    falls_back_to: bench      # optional
    colours:                  # what a project's own colours must be readable with, in light mode
      text: "#1a1a1a"
      quiet: "#4a4a4a"
      paper: "#ffffff"
      on_accent: "#ffffff"
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from pathlib import Path

import yaml

from benchalong.ground.folders import shipped
from benchalong.ground.marks import Mark, Marks, at
from benchalong.ground.problems import Unreadable
from benchalong.ground.words import nearest_words
from benchalong.publishing.colours import ThemeColours, is_colour
from benchalong.publishing.pointing import Pointed, unreadable
from benchalong.publishing.style_folders import pieces_of, style_names, whole_names
from benchalong.publishing.styles import style_problems

USUAL = "bench"
"""The theme of a project that names none."""
THEME_FILE = "theme.yaml"
ICON_FILE = "icon.svg"
OVERLAY = "look"
"""The project's own folder of templates, styles and scripts."""
OWN_RULES = "own.css"
LARGEST_FILE = 1024 * 1024
LARGEST_SETTINGS = 64 * 1024
DEEPEST = 5
"""Themes may fall back to one another so far."""


@dataclass(frozen=True)
class Kind:
    folder: str
    ending: str


TEMPLATES, STYLES, SCRIPTS = Kind("templates", ".html"), Kind("styles", ".css"), Kind("scripts", ".js")
KINDS = (TEMPLATES, STYLES, SCRIPTS)


@dataclass(frozen=True)
class Source:
    """One file of a theme or of a project's look."""

    file: str
    """As a person finds it: `look/templates/step.html`, `themes/bench/templates/step.html`."""
    text: str
    own: bool
    """Whether it is the project's and not shipped."""


Sources = Mapping[str, Source]


@dataclass(frozen=True)
class Theme:
    name: str
    colours: ThemeColours
    templates: Sources
    styles: Sources
    scripts: Sources
    own_rules: str
    """Rules of the project's that come after the theme's."""
    icon: str
    """An SVG; always a shipped theme's, since an SVG of a project's own could hold a script."""

    @property
    def is_own(self) -> bool:
        """Whether any template is the project's own, so that what it makes must be looked at."""
        return any(source.own for source in self.templates.values())


@dataclass(frozen=True)
class Chosen:
    """Which theme, and where the choice was written: in `project.yaml`, or on the command line."""

    name: str
    mark: Mark
    line: str


def chosen_in(look_theme: str, marks: Marks) -> Chosen:
    """The choice a project makes; the usual theme when it makes none.

    A shipped theme is never refused, so nobody will ask where it was written; to find out, the plan would be
    read once more.
    """
    name = look_theme or USUAL
    if name in shipped_themes():
        return Chosen(name, Mark("project.yaml", 1, 1), "")
    mark = marks.find(at("project.yaml", "look", "theme"))
    return Chosen(name, mark, marks.line(mark))


def load_theme(chosen: Chosen, project: Path, *, with_scripts: bool = False) -> Theme:
    """The theme and what the project lays over it. Raises Unreadable with every problem in them."""
    layers = _layers(chosen, project)
    problems: list[Pointed] = []
    found = {kind: _laid_over(kind, layers, project, problems) for kind in KINDS}
    if not with_scripts:
        problems += _unasked_scripts(found[SCRIPTS])
    for source in found[STYLES].values():
        problems += style_problems(source.file, source.text) if source.own else []
    if problems:
        raise unreadable(problems)
    own_rules = found[STYLES].pop(OWN_RULES, None)
    return Theme(
        name=chosen.name,
        colours=layers[0].settings.colours,
        templates=found[TEMPLATES],
        styles=_whole_styles(found[STYLES]),
        scripts=found[SCRIPTS],
        own_rules=own_rules.text if own_rules else "",
        icon=_icon(layers),
    )


def shipped_themes() -> tuple[str, ...]:
    """The names of the themes that come with benchalong."""
    return tuple(
        sorted(entry.name for entry in shipped("themes").iterdir() if (entry / THEME_FILE).is_file())
    )


@dataclass(frozen=True)
class _Settings:
    colours: ThemeColours
    falls_back_to: str = ""


@dataclass(frozen=True)
class _Folder:
    path: Path
    shown: str
    own: bool


@dataclass(frozen=True)
class _Layer:
    folder: _Folder
    settings: _Settings


def _layers(chosen: Chosen, project: Path) -> list[_Layer]:
    """The theme, what it falls back to, and so on."""
    layers: list[_Layer] = []
    name = chosen.name
    while name:
        layer = _layer(name, chosen, project)
        if any(layer.folder == known.folder for known in layers) or len(layers) == DEEPEST:
            raise _refused(chosen, f"the theme {chosen.name} falls back in a circle, or too far", "")
        layers.append(layer)
        name = layer.settings.falls_back_to
    return layers


def _layer(name: str, chosen: Chosen, project: Path) -> _Layer:
    own = "/" in name
    path = (project / name).resolve() if own else shipped("themes") / name
    if own and not path.is_relative_to(project.resolve()):
        raise _refused(chosen, f"the theme {name} lies outside the project", "a folder inside the project")
    if not own and name not in shipped_themes():
        known = shipped_themes()
        expected = f"one of {', '.join(known)}, or a folder of the project with a / in its name"
        raise _refused(chosen, f"there is no theme called {name}", expected, nearest_words(name, known))
    if not (path / THEME_FILE).is_file():
        raise _refused(chosen, f"{name} is not a theme: it holds no {THEME_FILE}", "")
    shown = name if own else f"themes/{name}"
    return _Layer(_Folder(path, shown, own), _settings(path / THEME_FILE, f"{shown}/{THEME_FILE}"))


def _refused(chosen: Chosen, message: str, expected: str, meant: tuple[str, ...] = ()) -> Unreadable:
    return unreadable([Pointed(chosen.mark, chosen.line, message, expected, meant)])


def _settings(path: Path, shown: str) -> _Settings:
    try:
        if path.stat().st_size > LARGEST_SETTINGS:
            raise ValueError("larger than settings can be (64 KB)")
        said = yaml.safe_load(path.read_text(encoding="utf-8")) or {}
        colours = said.get("colours") or {}
        _only_known(said, ("title", "about", "falls_back_to", "colours"))
        _only_known(colours, [field.name for field in fields(ThemeColours)])
        if wrong := [value for value in colours.values() if not is_colour(str(value))]:
            raise ValueError(f"{wrong[0]!r} is not a colour like '#7a3b1e'")
        return _Settings(ThemeColours(**colours), str(said.get("falls_back_to") or ""))
    except (OSError, ValueError, AttributeError, TypeError, yaml.YAMLError) as error:
        said_mark = getattr(error, "problem_mark", None)
        mark = Mark(shown, said_mark.line + 1, said_mark.column + 1) if said_mark else Mark(shown, 1, 1)
        message = "can't be read as YAML" if said_mark else str(error)
        raise unreadable([Pointed(mark, "", f"the theme's settings: {message}")]) from None


def _only_known(said: Mapping[str, object], known: Iterable[str]) -> None:
    for key in said:
        if key not in set(known):
            near = nearest_words(str(key), known)
            raise ValueError(f"unknown key {key}" + (f", did you mean {near[0]}?" if near else ""))


def _icon(layers: list[_Layer]) -> str:
    files = (layer.folder.path / ICON_FILE for layer in layers if not layer.folder.own)
    return next((file.read_text(encoding="utf-8") for file in files if file.is_file()), "")


def _laid_over(kind: Kind, layers: list[_Layer], project: Path, problems: list[Pointed]) -> dict[str, Source]:
    """Every file of a kind: the theme's over those of what it falls back to, the project's over all."""
    found: dict[str, Source] = {}
    for layer in reversed(layers):
        found |= _sources(layer.folder, kind, problems)
    over = _sources(_Folder(project / OVERLAY, OVERLAY, own=True), kind, problems)
    problems += _without_effect(over, found, kind)
    return found | over


def _sources(folder: _Folder, kind: Kind, problems: list[Pointed]) -> dict[str, Source]:
    above = folder.path / kind.folder
    if not above.is_dir():
        return {}
    if kind == STYLES:
        names = style_names(above, kind.ending)
    else:
        names = sorted(entry.name for entry in above.iterdir() if entry.name.endswith(kind.ending))
    found = {}
    for name in names:
        shown = f"{folder.shown}/{kind.folder}/{name}"
        text = _text(above / name, shown, folder, problems)
        if text is not None:
            found[name] = Source(shown, text, folder.own)
    return found


def _text(path: Path, shown: str, folder: _Folder, problems: list[Pointed]) -> str | None:
    wrong = ""
    try:
        if folder.own and not path.resolve().is_relative_to(folder.path.resolve()):
            wrong = "is a link out of its folder"
        elif path.stat().st_size > LARGEST_FILE:
            wrong = "is larger than a template, style or script can be (1 MB)"
        else:
            return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        wrong = "is not UTF-8 text"
    except OSError as error:
        wrong = f"can't be read: {error.strerror}"
    problems.append(Pointed(Mark(shown, 1, 1), "", wrong))
    return None


def _without_effect(over: Sources, under: Sources, kind: Kind) -> list[Pointed]:
    """Files of a project that stand in for nothing, most likely for a slip of the hand."""
    found = []
    known = {*under, *whole_names(under, kind.ending)}
    for name, source in over.items():
        if name not in known and not name.startswith(("own-", OWN_RULES)):
            message = f"the theme has no {kind.folder[:-1]} called {name}, so this file changes nothing"
            expected = f"the name of one of the theme's {kind.folder}, or a name that begins with own-"
            meant = nearest_words(name, sorted(known))
            found.append(Pointed(Mark(source.file, 1, 1), "", message, expected, meant))
    return found


def _whole_styles(styles: Sources) -> Sources:
    """Styles as the site has them: those of a folder joined to one."""
    flat = {name for name in styles if "/" not in name} | whole_names(styles, STYLES.ending)
    return {name: _whole(name, styles) for name in sorted(flat)}


def _whole(name: str, styles: Sources) -> Source:
    pieces = [styles[piece] for piece in pieces_of(name, styles, STYLES.ending)]
    text = "\n".join(piece.text for piece in pieces)
    return pieces[0] if len(pieces) == 1 else Source(name, text, any(piece.own for piece in pieces))


def _unasked_scripts(scripts: Sources) -> list[Pointed]:
    return [
        Pointed(
            Mark(source.file, 1, 1),
            source.text.split("\n", 1)[0],
            "a script of the project's own would run on every reader's device",
            "the word --with-scripts on the command line, if you know what this script does",
        )
        for source in scripts.values()
        if source.own
    ]
