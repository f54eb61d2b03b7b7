"""What every page has around what it shows: its kind, its way back to the site's root, its neighbours."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.shown import System


@dataclass(frozen=True)
class Link:
    """A way to a page. `path` counts from the site's root; a template puts the page's own `root` before it."""

    path: str
    words: str | Markup


@dataclass(frozen=True)
class Shell:
    kind: str
    """piece, stage, step, part, cut-list, sizes, questions, words, find, paper: also `data-page`."""
    path: str
    """From the site's root: `steps/mill-all.html`."""
    title: str
    """Plain text, for the browser's own title."""

    @property
    def root(self) -> str:
        """From this page back to the site's root: empty, or `../`."""
        return "../" * self.path.count("/")


@dataclass(frozen=True)
class Page:
    """One file of the site."""

    path: str
    template: str
    """The name of a template of the theme; empty for data that is its own text."""
    make: Callable[[], object]

    @property
    def record(self) -> object:
        """What the template is given as `page`; made when asked for, so that a large site needs little memory."""
        return self.make()


@dataclass(frozen=True)
class Site:
    """What every page knows of the whole: a template is given it as `site`."""

    id: str
    title: str
    """Plain text."""
    language: str
    units: System
    inch_step: str
    """How finely inches are shown, in mm, as a fraction: `127/160`."""
    millimetre_step: str
    edition: str
    """Eight hexadecimal digits: changes with whatever the plan means."""
    edition_name: str
    """The author's name for this edition of the plan; may be empty."""
    accent: str
    paper: str
    """The project's own colours, as written; empty where the theme's hold."""
    navigation: tuple[Link, ...]
    stages: tuple[Link, ...]
    """The stages in the order of work."""
    steps: int
    """How many there are."""
