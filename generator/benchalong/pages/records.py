"""What makes each page's record. Loaded only where some page has to be made: with it come all workings."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from markupsafe import Markup

from benchalong.pages.boards import boards_page
from benchalong.pages.buy import buy_page
from benchalong.pages.check import check_page
from benchalong.pages.cut_list import cut_list_page
from benchalong.pages.data import Data, checks_script, edition_script
from benchalong.pages.find import find_page, search_script
from benchalong.pages.joint import joint_page
from benchalong.pages.makings import Drawn, Makings, Travelled
from benchalong.pages.marks import marks_page
from benchalong.pages.paper import paper_page
from benchalong.pages.part import part_page
from benchalong.pages.piece import piece_page
from benchalong.pages.questions import questions_page
from benchalong.pages.sessions import sessions_page
from benchalong.pages.setup import setup_page, setup_path, setups_of
from benchalong.pages.setups import setups_page
from benchalong.pages.sizes import sizes_page
from benchalong.pages.stage import stage_page
from benchalong.pages.step import step_page
from benchalong.pages.wood_page import wood_page
from benchalong.pages.words import words_page
from benchalong.plan.model import Plan

SINGLE: Mapping[str, Callable[[Makings], object]] = {
    "index.html": piece_page,
    "cut-list.html": cut_list_page,
    "boards.html": boards_page,
    "setups.html": setups_page,
    "sessions.html": sessions_page,
    "marks.html": marks_page,
    "buy.html": buy_page,
    "sizes.html": sizes_page,
    "wood.html": wood_page,
    "check.html": check_page,
    "questions.html": questions_page,
    "words.html": words_page,
    "find.html": find_page,
    "paper.html": paper_page,
    "data/edition.js": lambda makings: Data(Markup(edition_script(makings))),
    "data/checks.js": lambda makings: Data(Markup(checks_script(makings))),
    "data/search.js": lambda makings: Data(Markup(search_script(makings))),
}
"""By path, what there is one of."""
OF_SOMETHING: Mapping[str, tuple[Callable[[Plan], Mapping[str, object]], Callable[..., object]]] = {
    "stage.html": (lambda plan: plan.stages, stage_page),
    "step.html": (lambda plan: plan.steps, step_page),
    "part.html": (lambda plan: plan.parts, part_page),
    "joint.html": (lambda plan: plan.joints, joint_page),
}
"""By template: where in the plan to find what a page is about, and what makes its record."""


class Records:
    """Makes records, sharing what several pages show."""

    def __init__(self, travelled: Travelled, drawings: Drawn) -> None:
        self._makings = Makings(travelled, drawings)

    def single(self, path: str) -> object:
        return SINGLE[path](self._makings)

    def about(self, template: str, name: str) -> object:
        """By the template, and the id of what the page is about."""
        among, make = OF_SOMETHING[template]
        return make(self._makings, among(self._makings.plan)[name])

    def setup(self, path: str) -> object:
        """Of the setup whose page lies there."""
        makings = self._makings
        setups = makings.once("setups by path", "", lambda: {setup_path(of): of for of in setups_of(makings)})
        return setup_page(makings, setups[path])

    def setup_paths(self) -> tuple[str, ...]:
        """Of every setup's page, in the order in which they are first made."""
        return tuple(map(setup_path, setups_of(self._makings)))
