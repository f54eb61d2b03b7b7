"""Every page of the site, and what each knows of the whole; what makes their records is in `records.py`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cached_property, partial
from typing import TYPE_CHECKING

from benchalong.pages.prose import Fills
from benchalong.pages.shell import Link, Page, Site, Ways
from benchalong.pages.shown import Shows
from benchalong.plan.model import Plan, Stage

if TYPE_CHECKING:
    from benchalong.pages.makings import Drawn, Travelled
    from benchalong.pages.records import Records

SINGLE: Mapping[str, str] = {
    "index.html": "piece.html",
    "cut-list.html": "cut-list.html",
    "boards.html": "boards.html",
    "setups.html": "setups.html",
    "sessions.html": "sessions.html",
    "marks.html": "marks.html",
    "buy.html": "buy.html",
    "sizes.html": "sizes.html",
    "wood.html": "wood-page.html",
    "check.html": "check.html",
    "questions.html": "questions.html",
    "words.html": "words.html",
    "find.html": "find.html",
    "paper.html": "paper.html",
}
"""Pages there is one of: path and template."""
DATA = ("data/edition.js", "data/checks.js", "data/search.js")
"""What the pages' own scripts need of the whole site."""

NAVIGATION = (
    Link("index.html", "The piece"),
    Link("cut-list.html", "Cut list"),
    Link("boards.html", "Boards"),
    Link("setups.html", "Order of work"),
    Link("sessions.html", "Sessions"),
    Link("marks.html", "Marks to cut out"),
    Link("buy.html", "What to buy"),
    Link("sizes.html", "Sizes"),
    Link("wood.html", "Wood"),
    Link("check.html", "Plan check"),
    Link("questions.html", "Questions"),
    Link("words.html", "Words"),
    Link("paper.html", "On paper"),
    Link("find.html", "Find"),
)


class Pages:
    """Every page and the scripts' data. A record is made when it is asked for."""

    def __init__(self, travelled: Travelled, drawn: Callable[[], Drawn]) -> None:
        """`drawn` is asked for pictures once some page has to be made."""
        self._travelled = travelled
        self._drawn = drawn

    @cached_property
    def _records(self) -> Records:
        from benchalong.pages import records

        return records.Records(self._travelled, self._drawn())

    def setup_paths(self) -> tuple[str, ...]:
        """Of the setups' pages. Takes an order of work."""
        return self._records.setup_paths()

    def all(self, setup_paths: tuple[str, ...]) -> tuple[Page, ...]:
        return (
            *(Page(path, template, self._single(path)) for path, template in SINGLE.items()),
            *(Page(path, "", self._single(path)) for path in DATA),
            *(
                Page(path, template, partial(self._about, template, name))
                for path, template, name in _about_something(self._travelled.plan)
            ),
            *(Page(path, "setup.html", partial(self._setup, path)) for path in setup_paths),
        )

    def _single(self, path: str) -> Callable[[], object]:
        return lambda: self._records.single(path)

    def _about(self, template: str, name: str) -> object:
        return self._records.about(template, name)

    def _setup(self, path: str) -> object:
        return self._records.setup(path)


def all_pages(travelled: Travelled, drawings: Drawn) -> tuple[Page, ...]:
    """Every page and the scripts' data."""
    pages = Pages(travelled, lambda: drawings)
    return pages.all(pages.setup_paths())


def _about_something(plan: Plan) -> tuple[tuple[str, str, str], ...]:
    """Path, template and what it is about, by its id."""
    kinds = (("stage", plan.stages), ("step", plan.steps), ("part", plan.parts), ("joint", plan.joints))
    return tuple((f"{kind}s/{name}.html", f"{kind}.html", name) for kind, found in kinds for name in found)


def _stage_link(fills: Fills, stage: Stage) -> Link:
    return Link(f"stages/{stage.id}.html", fills.title(stage.title))


def site_of(travelled: Travelled) -> Site:
    """What every page knows of the whole site."""
    plan = travelled.plan
    fills = Fills(Shows(plan.units, plan.precision), "")
    return Site(
        id=plan.id,
        title=fills.plain(plan.title),
        language=plan.look.language or "en",
        units=plan.units,
        inch_step=str(plan.precision.inch),
        millimetre_step=str(plan.precision.millimetre),
        edition=travelled.edition,
        edition_name=plan.edition,
        accent=plan.look.accent,
        paper=plan.look.paper,
        navigation=Ways(NAVIGATION),
        stages=Ways(tuple(_stage_link(fills, each) for each in plan.stages.values())),
        steps=len(plan.steps),
        faults=sum(finding.level == "fault" for finding in travelled.worked.findings),
    )
