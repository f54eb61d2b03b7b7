"""The whole site onto the disk, or nothing.

The same project gives the same bytes: nothing here asks the time, and whatever is listed is listed in
an order of its own. Pages are made, filled and written one by one, so that a thousand of them need the
memory of one.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from functools import cached_property, partial
from pathlib import Path
from typing import TYPE_CHECKING

from benchalong.ground.garbage import seldom_collected
from benchalong.ground.marks import Mark
from benchalong.ground.problems import Finding, Unreadable
from benchalong.ground.report import in_order
from benchalong.ground.shown import SYSTEMS
from benchalong.ground.store import MemoryStore, Store
from benchalong.pages.later import THE_EDITION, PutIn
from benchalong.pages.shell import Page
from benchalong.pages.site import Pages, site_of
from benchalong.publishing.colours import colour_problems, colours_css
from benchalong.publishing.data_files import (
    cut_list_text,
    model_of,
    model_text,
    plan_text,
    purchases_text,
    schema_text,
)
from benchalong.publishing.destination import MARKER, Destination, marker_text
from benchalong.publishing.file_names import (
    COLOURS_FILE,
    GLB_FILE,
    PLAN_FILE,
    PURCHASES_FILE,
    SCHEMA_FILE,
    csv_name,
)
from benchalong.publishing.kept_texts import KeptTexts, texts_of
from benchalong.publishing.looked_at import Strict, page_problems
from benchalong.publishing.pictures import NotAPicture, ready_picture
from benchalong.publishing.pointing import Pointed, unreadable, where_named
from benchalong.publishing.progress import Progress, no_progress
from benchalong.publishing.site_files import SiteFiles
from benchalong.publishing.steps_json import with_steps
from benchalong.publishing.theme import ICON_FILE, Chosen, Theme, chosen_in, load_theme
from benchalong.road import Travelled

if TYPE_CHECKING:
    from benchalong.pages.makings import Drawn
    from benchalong.publishing.templates import Templates


class Faulty(Exception):
    """The plan has faults and nobody said to publish in spite of them; the old site stays."""

    def __init__(self, faults: tuple[Finding, ...]) -> None:
        super().__init__(f"{len(faults)} fault(s)")
        self.faults = faults


@dataclass(frozen=True)
class Published:
    """What stands on the disk now."""

    folder: Path
    pages: int
    pictures: int


@seldom_collected()
def publish(
    travelled: Travelled,
    into: Path,
    *,
    project: Path,
    with_faults: bool = False,
    with_scripts: bool = False,
    theme: Chosen | None = None,
    store: Store | None = None,
    before: Path | None = None,
    progress: Progress = no_progress,
) -> Published:
    """Write the site of a project into a folder, all of it or nothing.

    `project` is the folder it was read from: its pictures and its look are there. `theme` stands in for
    the one the project names. `before` is a site on the same disk whose files are taken over where they
    would be the same; the site that is replaced where none is given. Raises Refused for a folder that can't
    be published into, Faulty, and Unreadable for faults in pictures, styles, colours, templates; the old
    site stays as it was.
    """
    destination = Destination(into, project=project)
    faults = tuple(finding for finding in travelled.worked.findings if finding.level == "fault")
    if faults and not with_faults:
        raise Faulty(faults)
    kept = store or MemoryStore()
    looked = theme or chosen_in(travelled.plan.look.theme, travelled.marks)
    dressed = load_theme(looked, project, with_scripts=with_scripts)
    _check_colours(travelled, dressed)
    with destination.new_site() as folder:
        site = SiteFiles(folder, before=before or destination.folder)
        pictures = _write_pictures(site, travelled, project, kept, progress)
        _write_assets(site, travelled, dressed)
        texts = texts_of(travelled, dressed, project, kept)
        put_in = PutIn(travelled.plan, travelled.edition)
        _write_data(site, travelled, texts, put_in)
        strict = Strict(with_scripts=with_scripts) if dressed.is_own else None
        making = _Making(travelled, dressed, kept)
        pages = _write_pages(site, making, texts, put_in, progress, strict)
        texts.put_back()
        site.write(MARKER, marker_text(travelled.plan.id, travelled.edition, site.top))
    return Published(destination.shown, pages, pictures)


def _check_colours(travelled: Travelled, theme: Theme) -> None:
    look = travelled.plan.look
    if problems := colour_problems(look.accent, look.paper, theme.colours):
        raise Unreadable(problems, travelled.marks)


def _write_pictures(
    site: SiteFiles, travelled: Travelled, project: Path, store: Store, progress: Progress
) -> int:
    files = travelled.plan.pictures
    wrong: list[Pointed] = []
    for done, file in enumerate(files):
        progress("pictures", done, len(files))
        try:
            site.write(file, ready_picture(project, file, store).data)
        except NotAPicture as why:
            mark, line = where_named(travelled.marks, file) or (Mark(file, 1, 1), "")
            wrong.append(
                Pointed(mark, line, f"{file} {why}", "a photograph or drawing as PNG, JPEG, WebP or GIF")
            )
    if wrong:
        found = unreadable(wrong, travelled.marks)
        raise Unreadable(in_order(found.problems, found.marks), found.marks)
    return len(files)


def _write_assets(site: SiteFiles, travelled: Travelled, theme: Theme) -> None:
    for sources in (theme.styles, theme.scripts):
        for name, source in sorted(sources.items()):
            site.write(f"assets/{name}", source.text)
    if theme.icon:
        site.write(f"assets/{ICON_FILE}", theme.icon)
    look = travelled.plan.look
    site.write(f"assets/{COLOURS_FILE}", colours_css(look.accent, look.paper) + theme.own_rules)


def _write_data(site: SiteFiles, travelled: Travelled, kept: KeptTexts, put_in: PutIn) -> None:
    plan = kept.text(PLAN_FILE, lambda: plan_text(travelled))
    site.write(PLAN_FILE, put_in(with_steps(plan, travelled.plan)))
    site.write(SCHEMA_FILE, schema_text())
    if model := model_of(kept.text(GLB_FILE, lambda: model_text(travelled))):
        site.write(GLB_FILE, model)
    for system in SYSTEMS:
        name = csv_name(system)
        site.write(name, kept.text(name, partial(cut_list_text, travelled, system)))
    site.write(PURCHASES_FILE, kept.text(PURCHASES_FILE, lambda: purchases_text(travelled)))


def _write_pages(
    site: SiteFiles,
    making: _Making,
    kept: KeptTexts,
    put_in: PutIn,
    progress: Progress,
    strict: Strict | None,
) -> int:
    paths = kept.text("setups", lambda: json.dumps(making.pages.setup_paths()))
    every = making.pages.all(tuple(json.loads(paths)))
    for done, page in enumerate(every):
        progress("pages", done, len(every))
        text = put_in(kept.text(page.path, partial(making.text, page)))
        if strict and page.template and (problems := making.problems(page, text, strict)):
            raise unreadable(problems)
        site.write(page.path, text)
    progress("pages", len(every), len(every))
    return sum(bool(page.template) for page in every)


class _Making:
    """Makes the texts of pages, with holes for the words of steps and for the edition."""

    def __init__(self, travelled: Travelled, theme: Theme, store: Store) -> None:
        self._bare = replace(travelled, plan=travelled.bare, edition=THE_EDITION)
        self._theme = theme
        self._store = store
        self.pages = Pages(self._bare, self._drawings)

    def text(self, page: Page) -> str:
        record = page.record
        return self._templates.fill(page.template, record) if page.template else str(record)

    def problems(self, page: Page, text: str, strict: Strict) -> list[Pointed]:
        """What a template of the project's own made of a page that no page may have."""
        return page_problems(text, page.path, self._theme.templates[page.template], strict)

    def _drawings(self) -> Drawn:
        from benchalong.drawing import drawings

        return drawings.Drawings(self._bare.plan, self._bare.worked, self._store)

    @cached_property
    def _templates(self) -> Templates:
        from benchalong.publishing import templates

        site = {"site": site_of(self._bare)}
        return templates.Templates(self._theme.templates, site, theme=self._theme.name)
