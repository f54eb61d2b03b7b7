"""What holds for every piece, and what holds wherever a certain tool is used.

These never stand in for the manual of the tool at hand, for local codes, or for someone licensed to do
the work; they say so themselves. A step's own cautions are the author's and come on top of these.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

NOT_A_WORD = re.compile(r"[^a-z]+")

ALWAYS: tuple[str, ...] = (
    "Read the manual of each machine you use, and follow it where it says otherwise than this plan.",
    "Wear eye protection at every machine, and hearing protection where it is loud. Fine dust harms the "
    "lungs: draw it off, and wear a mask while sanding.",
    "No gloves, loose sleeves, rings or long hair near anything that turns.",
    "Unplug a machine before you change its cutter or reach near it.",
    "Don't run a machine tired, hurried or alone in the building if you can help it.",
    "What is fixed to a wall, carries people, or meets wiring, gas or water falls under local codes. "
    "Where those ask for someone licensed, have it done by them.",
)

BY_TOOL: tuple[tuple[tuple[str, ...], str], ...] = (
    (
        ("table saw",),
        "Table saw: riving knife and guard on for every cut they allow. Stand to the side of the blade's "
        "line, use a push stick for narrow work, and never use the fence and the mitre gauge together on "
        "a cut that goes through.",
    ),
    (
        (
            "mitre saw",
            "miter saw",
            "chop saw",
        ),
        "Mitre saw: hold the work against the fence, keep hands well clear of the blade's path, and let "
        "the blade stop before you lift it.",
    ),
    (
        (
            "jointer",
            "surface planer",
        ),
        "Jointer: use push blocks, keep hands from passing over the cutter, and put no board on it "
        "shorter or thinner than its manual allows.",
    ),
    (
        (
            "planer",
            "thicknesser",
        ),
        "Planer: put nothing through it shorter than its manual allows, stand out of the line of the "
        "board, and never reach in after a piece.",
    ),
    (
        ("router table",),
        "Router table: feed against the turn of the cutter, with the guard and a push block. Never trap "
        "the work between cutter and fence.",
    ),
    (
        (
            "router",
            "trim router",
            "hand router",
        ),
        "Router: clamp the work, feed so that the cutter pulls towards its guide, take depth in several "
        "passes, and let it stop before you set it down.",
    ),
    (
        (
            "band saw",
            "bandsaw",
        ),
        "Band saw: set the guard just above the work, keep fingers out of the blade's line, and give "
        "round stock a cradle.",
    ),
    (
        (
            "drill press",
            "pillar drill",
        ),
        "Drill press: clamp the work or hold it against a stop, and take the key out of the chuck before "
        "you start.",
    ),
    (
        (
            "chisel",
            "chisels",
            "block plane",
            "hand plane",
            "plane",
            "knife",
            "spokeshave",
            "drawknife",
        ),
        "Edge tools: keep both hands behind the edge, and clamp the work. A dull tool slips more than a "
        "sharp one.",
    ),
    (
        (
            "clamp",
            "clamps",
            "bar clamps",
        ),
        "Clamps: fingers out before you tighten. A long clamp falls: lay it down or have someone hold it.",
    ),
)
"""Words for a tool, and what is said where one of them is named."""


def cautions_for(tools: Iterable[str]) -> tuple[str, ...]:
    """What holds where these tools are used, each once, in the order of the table."""
    said = {caution for tool in tools for caution in _of(tool)}
    return tuple(caution for _, caution in BY_TOOL if caution in said)


def _of(tool: str) -> Iterator[str]:
    """A tool's own cautions; one line of a tool list may name several tools."""
    left = f" {NOT_A_WORD.sub(' ', tool.lower())} "
    for words, caution in BY_TOOL:
        named = [word for word in words if f" {word} " in left]
        for word in named:
            # A router table is no router held in the hand.
            left = left.replace(f" {word} ", " , ")
        if named:
            yield caution
