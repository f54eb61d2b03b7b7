"""JSON-LD of a published site, held against schema.org's HowTo.

Sources: schema.org/HowTo, schema.org/HowToSection, schema.org/HowToStep, schema.org/HowToTool,
schema.org/HowToSupply (types and the properties each may have); Google's former HowTo page names `name`
and `step` as required, and `text` or `itemListElement` of each step. ISO 8601 for durations.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

from bs4 import BeautifulSoup

KNOWN = {
    "HowTo": [
        "name",
        "description",
        "step",
        "tool",
        "supply",
        "totalTime",
        "performTime",
        "prepTime",
        "image",
        "inLanguage",
        "estimatedCost",
        "yield",
        "about",
        "license",
        "version",
        "isBasedOn",
        "author",
        "url",
    ],
    "HowToSection": ["name", "itemListElement", "position", "description", "url", "numberOfItems"],
    "HowToStep": [
        "name",
        "text",
        "url",
        "image",
        "position",
        "itemListElement",
        "description",
        "timeRequired",
    ],
    "HowToTool": ["name", "requiredQuantity"],
    "HowToSupply": ["name", "requiredQuantity", "estimatedCost"],
    "ImageObject": ["url", "caption", "contentUrl"],
    "CreativeWork": ["name"],
}
"""The properties that may be used of each type."""
DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+S)?)?")


def documents(page: Path) -> list[dict[str, Any]]:
    soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
    return [json.loads(each.string or "") for each in soup.find_all("script", type="application/ld+json")]


def things(value: Any) -> list[dict[str, Any]]:
    if isinstance(value, list):
        return [found for entry in value for found in things(entry)]
    if not isinstance(value, dict):
        return []
    inner = [found for entry in value.values() for found in things(entry)]
    return [value, *inner] if "@type" in value else inner


def how_to(site: Path) -> dict[str, Any]:
    (document,) = documents(site / "index.html")
    return document


def test_the_piece_is_a_how_to(site: Path) -> None:
    document = how_to(site)
    assert document["@context"] == "https://schema.org"
    assert document["@type"] == "HowTo"
    assert document["name"]
    assert document["step"]


def test_only_types_and_properties_that_schema_org_has(site: Path) -> None:
    for thing in things(how_to(site)):
        assert thing["@type"] in KNOWN
        extra = {key for key in thing if not key.startswith("@")} - set(KNOWN[thing["@type"]])
        assert not extra, f"{thing['@type']} has no {extra}"


def test_sections_hold_steps_and_each_step_says_something(site: Path) -> None:
    document = how_to(site)
    plan = json.loads((site / "plan.json").read_text(encoding="utf-8"))
    steps = [thing for thing in things(document) if thing["@type"] == "HowToStep"]
    assert len(steps) == len(plan["steps"])
    for step in steps:
        assert step.get("text") or step.get("itemListElement")
        assert step["name"]
    sections = [thing for thing in things(document) if thing["@type"] == "HowToSection"]
    assert [section["name"] for section in sections] == [stage["title"]["text"] for stage in plan["stages"]]
    assert all(section["itemListElement"] for section in sections)


def test_tools_have_names(site: Path) -> None:
    tools = [thing for thing in things(how_to(site)) if thing["@type"] == "HowToTool"]
    assert tools
    assert all(tool["name"] for tool in tools)


def test_durations_are_iso_8601(site: Path) -> None:
    for thing in things(how_to(site)):
        for key in ("totalTime", "performTime", "prepTime", "timeRequired"):
            assert key not in thing or DURATION.fullmatch(thing[key]), thing
