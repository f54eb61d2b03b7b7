"""What every page has around what it shows: its kind, its way back to the site's root, its neighbours."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.shown import System


@dataclass(frozen=True)
class Link:
    """A way to a page. `path` counts from the site's root; a template puts the page's `root` before it."""

    path: str
    words: str | Markup


class Ways:
    """A row of links that stands on every page, as list items: written once for each way to the root."""

    def __init__(self, links: tuple[Link, ...]) -> None:
        self.links = links
        self._written: dict[str, str] = {}

    def __bool__(self) -> bool:
        return bool(self.links)

    def items(self, root: str, here: str) -> Markup:
        """The items as seen from a page that lies at `here`, which is marked where it is one of them."""
        written = self._written.get(root)
        if written is None:
            written = self._written[root] = "".join(_item(root, link) for link in self.links)
        return Markup(written.replace(f'"{root}{here}">', f'"{root}{here}" aria-current="page">', 1))


def _item(root: str, link: Link) -> str:
    return Markup('<li><a href="{}{}"><span>{}</span></a></li>\n').format(root, link.path, link.words)


@dataclass(frozen=True)
class Shell:
    kind: str
    """piece, stage, step, part, joint, check, cut-list, buy, boards, sizes, wood, questions, words, find,
    paper, setups, setup, sessions,
    marks; also `data-page`."""
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
        """What the template is given as `page`; made anew when asked for, which spares memory."""
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
    navigation: Ways
    stages: Ways
    """The stages in the order of work."""
    steps: int
    """How many there are."""
    faults: int
    """How many faults the plan check found; above 0 only on a site published in spite of them."""
