"""An author's own words for tools, and the tools this knows.

Tool lists are free text: one line may name several tools, or a tool and its cutter (`router with a straight
bit`). Longer names are found first, so that a router table is no router held in the hand. What isn't found is
told as not known, with the nearest word; it is kept as text and takes no part in the reckoning.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.words import nearest_words
from benchalong.trade.ways.model import TOOLS, Tool

NAMES: Mapping[Tool, tuple[str, ...]] = {
    "table saw with a stacked cutter": (
        "table saw with a stacked cutter",
        "table saw with stacked cutter",
        "table saw with a dado stack",
        "table saw with dado stack",
        "table saw and dado stack",
        "stacked cutter",
        "dado stack",
        "dado set",
        "dado head",
        "stack dado",
        "grooving head",
    ),
    "table saw": (
        "table saw with one blade",
        "table saw",
        "tablesaw",
        "cabinet saw",
        "contractor saw",
        "saw bench",
        "bench saw",
        "circular saw bench",
        "sliding table saw",
        "panel saw machine",
    ),
    "router table": ("router table", "table router", "table mounted router", "router in a table"),
    "router": (
        "hand held router",
        "handheld router",
        "plunge router",
        "trim router",
        "palm router",
        "router",
    ),
    "hand tools": (
        "hand tools",
        "hand saw",
        "handsaw",
        "tenon saw",
        "back saw",
        "dovetail saw",
        "pull saw",
        "panel saw",
        "chisel",
        "bench plane",
        "block plane",
        "jack plane",
        "jointer plane",
        "smoothing plane",
        "shoulder plane",
        "router plane",
        "plough plane",
        "plow plane",
        "rabbet plane",
        "rebate plane",
        "hand plane",
        "spokeshave",
        "drawknife",
        "coping saw",
        "fret saw",
        "rasp",
        "card scraper",
    ),
    "track saw": ("track saw", "tracksaw", "plunge saw", "circular saw", "rail saw"),
    "band saw": ("band saw", "bandsaw"),
    "mitre saw": ("mitre saw", "miter saw", "chop saw", "compound saw", "sliding mitre saw", "drop saw"),
    "jointer": ("jointer", "jointer planer", "surface planer", "overhand planer", "surfacer"),
    "planer": ("thickness planer", "planer thicknesser", "jointer planer", "thicknesser", "planer"),
    "drill press": ("drill press", "pillar drill", "bench drill", "hollow chisel mortiser", "mortiser"),
    "drill": (
        "cordless drill",
        "hand drill",
        "power drill",
        "drill driver",
        "electric drill",
        "brace and bit",
        "drill",
    ),
    "jigsaw": ("jigsaw", "jig saw", "sabre saw"),
    "bench": (
        "bench",
        "workbench",
        "clamp",
        "bar clamp",
        "pipe clamp",
        "caul",
        "sander",
        "random orbit sander",
        "belt sander",
        "sanding block",
        "sandpaper",
        "abrasive paper",
        "paper",
        "vice",
        "vise",
        "rule",
        "square",
        "tape measure",
        "tape",
        "calliper",
        "caliper",
        "pencil",
        "marking knife",
        "marking gauge",
        "straightedge",
        "compass",
        "mallet",
        "hammer",
        "screwdriver",
        "brush",
        "glue",
        "mask",
        "batten",
        "push stick",
        "push block",
        "moisture meter",
        "winding sticks",
        "straight bit",
        "router bit",
        "drill bit",
        "bit",
        "countersink",
        "hole saw",
        "file",
        "hygrometer",
        "featherboard",
        "rag",
        "knife",
    ),
}
"""What shops call each tool, in lower case and one of it. A name may stand for two machines in one."""

WITH: Mapping[Tool, tuple[Tool, ...]] = {"table saw with a stacked cutter": ("table saw",)}
"""What comes with a tool: a saw that takes a stack takes one blade."""
ALWAYS: tuple[Tool, ...] = ("bench",)

NOT_A_LETTER = re.compile(r"[^a-z]+")
LISTED = re.compile(r"[,;]")


@dataclass(frozen=True)
class Unknown:
    """A part of a line, between commas, in which no tool was found."""

    text: str
    nearest: tuple[str, ...]
    """Known names within reach of a slip of the hand."""


@dataclass(frozen=True)
class AtHand:
    """A tool list, read."""

    tools: tuple[Tool, ...]
    """In the order of `TOOLS`; the bench always."""
    unknown: tuple[Unknown, ...]


_BY_LENGTH: tuple[tuple[str, tuple[Tool, ...]], ...] = tuple(
    (name, tuple(tool for tool in TOOLS if name in NAMES[tool]))
    for name in sorted({name for names in NAMES.values() for name in names}, key=lambda n: (-len(n), n))
)


def at_hand(texts: Iterable[str]) -> AtHand:
    """The tools that an author's or builder's list names."""
    found, unknown = set[Tool](), list[Unknown]()
    for text in (part for line in texts for part in LISTED.split(line)):
        named = set(named_tools(text))
        if not named:
            unknown += [Unknown(text.strip(), _near(text))] if text.strip() else []
        found |= named
    return AtHand(with_all(found), tuple(unknown))


def with_all(tools: Iterable[Tool]) -> tuple[Tool, ...]:
    """With what comes with them and what every shop has, in the order of `TOOLS`."""
    given = set(tools)
    given |= {other for tool in given for other in WITH.get(tool, ())} | set(ALWAYS)
    return tuple(tool for tool in TOOLS if tool in given)


def named_tools(text: str) -> Iterator[Tool]:
    """Every tool that a line names."""
    left = f" {NOT_A_LETTER.sub(' ', text.lower())} "
    for name, tools in _BY_LENGTH:
        for form in (name, f"{name}s"):
            if f" {form} " in left:
                left = left.replace(f" {form} ", " . ")
                yield from tools


def _near(text: str) -> tuple[str, ...]:
    words = NOT_A_LETTER.sub(" ", text.lower()).strip()
    return nearest_words(words, (name for name, _ in _BY_LENGTH))
