"""Every kind of joint has its page, and every size of it its name; nothing speaks the code's words."""

from __future__ import annotations

import json
from functools import cache

import pytest
from bs4 import BeautifulSoup
from jsonschema import Draft202012Validator

from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.publishing.data_files import schema_text
from benchalong.publishing.plan_json import plan_data
from benchalong.reading.joint_language import GLUE as GLUE_WORDS
from benchalong.reading.joint_language import JOINT_KINDS
from benchalong.road import Travelled
from benchalong.trade.joints import FACTS, GLUE, GLUED, KINDS, NEEDED
from benchalong.trade.words import WORDS
from pages.every_kind import CORNERS, corners
from pages.test_site import filled, words


@cache
def travelled() -> Travelled:
    return corners()


@cache
def site() -> dict[str, str]:
    return filled("bench", travelled())


def soup(path: str) -> BeautifulSoup:
    return BeautifulSoup(site()[path], "html.parser")


def test_every_kind_is_among_the_corners_and_explained() -> None:
    assert {joint.kind for joint in travelled().plan.joints.values()} == set(JOINT_KINDS) == set(KINDS)
    assert set(GLUE) == set(GLUED) == set(GLUE_WORDS)
    assert {*KINDS, "butt joint"} - {"butt"} <= set(WORDS), "the page of words explains every kind"


@pytest.mark.parametrize("kind", JOINT_KINDS)
def test_every_size_of_a_kind_has_its_name(kind: str) -> None:
    assert set(KINDS[kind].sizes) == set(JOINT_SIZES[kind])
    assert set(KINDS[kind].first) <= set(KINDS[kind].sizes)


def test_what_others_need_is_there_to_be_needed() -> None:
    sizes = {key for known in JOINT_SIZES.values() for key in known}
    assert {key.partition(" of ")[0] for key in NEEDED} <= sizes
    assert {one for needed in NEEDED.values() for one in needed} <= sizes | set(FACTS) | {"floats"}


@pytest.mark.parametrize("corner", CORNERS)
def test_a_joint_has_its_page(corner: str) -> None:
    page = soup(f"joints/{corner}_joint.html")
    for hidden in page.select("svg, code, .code"):
        hidden.decompose()
    said = words(page.find("main"))
    assert len(page.find_all("h1")) == 1
    assert "What it joins" in said
    assert "Common practice" in said
    assert f"L{list(CORNERS).index(corner)}/" in said
    assert "_" not in said, "names of the code or the plan stand only where formulas need them"


def spoken(corner: str, part: str = "main") -> str:
    found = soup(f"joints/{corner}_joint.html").select_one(part)
    return " ".join(found.get_text(" ").split()) if found else ""


def test_words_that_depend_on_the_joint() -> None:
    assert "Mortise and tenon, haunched" in spoken("haunched")
    assert "Mitre, splined" in spoken("mitre")
    assert "Held with Screw" in spoken("screwed")
    assert "Opens 95 degrees" in spoken("held")
    assert "Slope tails_ joint. slope 1 in 8" in spoken("tails"), "a long name may break where it has parts"
    assert "Gain × 2 in the back" in spoken("hung")
    assert "Dowel, diameter" in spoken("dowelled")
    assert "Pilot hole" not in spoken("dowelled"), "a dowel has none"
    assert "Glue" in spoken("dowelled", ".facts")
    assert "Glue" not in spoken("hung", ".facts"), "nobody would"


def test_plan_json_says_them_all_as_promised() -> None:
    whole = travelled()
    document = plan_data(whole.plan, whole.worked, whole.marks, edition=whole.edition)
    Draft202012Validator(json.loads(schema_text())).validate(document)
    assert len(document["joints"]) == len(CORNERS)
    (slope,) = (
        size["value"]
        for joint in document["joints"]
        for size in joint["sizes"]
        if size["name"] == "tails_joint.slope"
    )
    assert slope == {"number": 0.125, "exact": "1/8", "dimension": 0}
    moves = [one["how"] for joint in document["joints"] for one in joint["moves"]]
    assert set(moves) == {"turns", "slides", "is held"}
