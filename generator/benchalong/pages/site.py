"""Every page of the site."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from markupsafe import Markup

from benchalong.pages.boards import boards_page
from benchalong.pages.buy import buy_page
from benchalong.pages.check import check_page
from benchalong.pages.cut_list import cut_list_page
from benchalong.pages.data import Data, checks_script
from benchalong.pages.find import find_page, search_script
from benchalong.pages.joint import joint_page
from benchalong.pages.makings import Drawn, Makings, Travelled
from benchalong.pages.marks import marks_page
from benchalong.pages.paper import paper_page
from benchalong.pages.part import part_page
from benchalong.pages.piece import piece_page
from benchalong.pages.prose import Fills
from benchalong.pages.questions import questions_page
from benchalong.pages.sessions import sessions_page
from benchalong.pages.setup import setup_page, setup_path, setups_of
from benchalong.pages.setups import setups_page
from benchalong.pages.shell import Link, Page, Site, Ways
from benchalong.pages.shown import Shows
from benchalong.pages.sizes import sizes_page
from benchalong.pages.stage import stage_page
from benchalong.pages.step import step_page
from benchalong.pages.wood_page import wood_page
from benchalong.pages.words import words_page
from benchalong.plan.model import Stage

SINGLE: tuple[tuple[str, str, Callable[[Makings], object]], ...] = (
    ("index.html", "piece.html", piece_page),
    ("cut-list.html", "cut-list.html", cut_list_page),
    ("boards.html", "boards.html", boards_page),
    ("setups.html", "setups.html", setups_page),
    ("sessions.html", "sessions.html", sessions_page),
    ("marks.html", "marks.html", marks_page),
    ("buy.html", "buy.html", buy_page),
    ("sizes.html", "sizes.html", sizes_page),
    ("wood.html", "wood-page.html", wood_page),
    ("check.html", "check.html", check_page),
    ("questions.html", "questions.html", questions_page),
    ("words.html", "words.html", words_page),
    ("find.html", "find.html", find_page),
    ("paper.html", "paper.html", paper_page),
)
"""Pages there is one of: path, template, what makes the record."""

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


def all_pages(travelled: Travelled, drawings: Drawn) -> tuple[Page, ...]:
    """Every page and the scripts' data. Records are made when asked for."""
    makings = Makings(travelled, drawings)
    plan = makings.plan
    pages = [Page(path, template, partial(make, makings)) for path, template, make in SINGLE]
    stages = plan.stages.values()
    pages += [_inner(f"stages/{each.id}.html", "stage.html", stage_page, makings, each) for each in stages]
    pages += [
        _inner(f"steps/{each.id}.html", "step.html", step_page, makings, each) for each in makings.order
    ]
    pages += [
        _inner(f"parts/{each.id}.html", "part.html", part_page, makings, each) for each in plan.parts.values()
    ]
    joints = plan.joints.values()
    pages += [_inner(f"joints/{each.id}.html", "joint.html", joint_page, makings, each) for each in joints]
    setups = setups_of(makings)
    pages += [_inner(setup_path(each), "setup.html", setup_page, makings, each) for each in setups]
    pages += [
        _data("data/checks.js", checks_script, makings),
        _data("data/search.js", search_script, makings),
    ]
    return tuple(pages)


def _inner(path: str, template: str, make: Callable[..., object], makings: Makings, of: object) -> Page:
    return Page(path, template, partial(make, makings, of))


def _data(path: str, script: Callable[[Makings], str], makings: Makings) -> Page:
    return Page(path, "", lambda: Data(Markup(script(makings))))


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
