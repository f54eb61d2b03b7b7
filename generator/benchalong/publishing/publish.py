"""The whole site onto the disk, or nothing.

The same project gives the same bytes: nothing here asks the time, and whatever is listed is listed in
an order of its own. Pages are made, filled and written one by one, so that a thousand of them need the
memory of one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from benchalong.drawing.drawings import Drawings
from benchalong.ground.garbage import seldom_collected
from benchalong.ground.marks import Mark
from benchalong.ground.problems import Finding, Unreadable
from benchalong.ground.report import in_order
from benchalong.ground.shown import SYSTEMS
from benchalong.ground.store import MemoryStore, Store
from benchalong.pages.data import Data
from benchalong.pages.site import all_pages, site_of
from benchalong.publishing.colours import colour_problems, colours_css
from benchalong.publishing.cut_list_csv import csv_name, cut_list_csv
from benchalong.publishing.destination import MARKER, Destination, marker_text
from benchalong.publishing.glb import GLB_FILE, piece_glb
from benchalong.publishing.looked_at import Strict, page_problems
from benchalong.publishing.pictures import NotAPicture, ready_picture
from benchalong.publishing.plan_json import SCHEMA_FILE, plan_json, schema_text
from benchalong.publishing.pointing import Pointed, unreadable, where_named
from benchalong.publishing.progress import Progress, no_progress
from benchalong.publishing.purchases_csv import PURCHASES_FILE, purchases_csv
from benchalong.publishing.site_files import SiteFiles
from benchalong.publishing.templates import Templates
from benchalong.publishing.theme import ICON_FILE, Chosen, Theme, chosen_in, load_theme
from benchalong.road import Travelled
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.purchases.purchases import PURCHASES

COLOURS_FILE = "colours.css"


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
        _write_data(site, travelled)
        strict = Strict(with_scripts=with_scripts) if dressed.is_own else None
        pages = _write_pages(site, travelled, dressed, kept, progress, strict)
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


def _write_data(site: SiteFiles, travelled: Travelled) -> None:
    plan, worked = travelled.plan, travelled.worked
    site.write("plan.json", plan_json(plan, worked, travelled.marks, edition=travelled.edition))
    site.write(SCHEMA_FILE, schema_text())
    if model := piece_glb(plan, worked):
        site.write(GLB_FILE, model)
    for system in SYSTEMS:
        site.write(csv_name(system), cut_list_csv(plan, worked[CUT_LIST], system))
    site.write(PURCHASES_FILE, purchases_csv(plan, worked[PURCHASES]()))


def _write_pages(
    site: SiteFiles,
    travelled: Travelled,
    theme: Theme,
    store: Store,
    progress: Progress,
    strict: Strict | None,
) -> int:
    templates = Templates(theme.templates, {"site": site_of(travelled)}, theme=theme.name)
    count = 0
    for path, template, text in _filled(travelled, templates, store, progress):
        if strict and template and (problems := page_problems(text, path, theme.templates[template], strict)):
            raise unreadable(problems)
        site.write(path, text)
        count += bool(template)
    return count


def _filled(
    travelled: Travelled, templates: Templates, store: Store, progress: Progress
) -> Iterator[tuple[str, str, str]]:
    """Each page's path, its template (none for data), its text."""
    pages = all_pages(travelled, Drawings(travelled.plan, travelled.worked, store))
    for done, page in enumerate(pages):
        progress("pages", done, len(pages))
        record = page.record
        if isinstance(record, Data):
            yield page.path, "", str(record.text)
        else:
            yield page.path, page.template, templates.fill(page.template, record)
    progress("pages", len(pages), len(pages))
