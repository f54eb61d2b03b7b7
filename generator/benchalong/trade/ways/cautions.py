"""What can hurt, from the machine, the cut and the size of the piece; said before the instruction.

In our own words. The limits are common practice. Each set ends by deferring to the tool maker's manual, local
codes and licensed practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchalong.trade.cautions import cautions_for
from benchalong.trade.ways.model import Family, Tool, Words, Work
from benchalong.trade.ways.practice import (
    HANDS,
    HEAVY_DEEP,
    JOINTER_PASS,
    LONG_PIECE,
    MITRE_SAW_CLAMPED,
    MITRE_SAW_SHORTEST,
    NARROW_STRIP,
    PLANER_SHORTEST,
    PUSH_STICK,
    TABLE_PUSHED,
    WHOLE_SHEET,
)
from benchalong.trade.ways.said import worded

DEFERS: Words = (
    "These are common practice. The machine's manual, local codes and licensed practice go before them.",
)

SPOKEN: Mapping[Tool, str] = {
    "table saw with a stacked cutter": "table saw",
    "table saw": "table saw",
    "router table": "router table",
    "router": "router",
    "hand tools": "chisel",
    "track saw": "",
    "band saw": "band saw",
    "mitre saw": "mitre saw",
    "jointer": "jointer",
    "planer": "planer",
    "drill press": "drill press",
    "drill": "",
    "jigsaw": "",
    "bench": "clamps",
}
"""The word by which the general cautions know each tool."""

OWN: Mapping[Tool, str] = {
    "track saw": "Track saw: support the wood on both sides of the cut so that nothing drops or pinches, "
    "clamp the track, and let the blade stop before you lift the saw.",
    "drill": "Drill: clamp the work, keep the other hand out of the bit's line, and ease off as it breaks "
    "through.",
    "jigsaw": "Jigsaw: look under the work for what the blade would meet, clamp the work, and let the "
    "blade stop before you lift it out.",
}
"""What the general cautions don't have."""

THROUGH_AT_THE_FENCE: tuple[Family, ...] = ("rip", "taper", "straight outline")
BURIED_CUTS: tuple[Family, ...] = ("rabbet", "tongue", "tenon")
"""Made with a cutter wider than the cut."""
FED: tuple[Tool, ...] = (
    "table saw",
    "table saw with a stacked cutter",
    "router table",
    "band saw",
    "jointer",
    "planer",
    "mitre saw",
)
SAWS: tuple[Tool, ...] = ("table saw", "table saw with a stacked cutter")


def cautions(work: Work, tool: Tool) -> tuple[Words, ...]:
    """The tool's own first, then the cut's and the piece's, then whom to believe."""
    return (*_general(tool), *_of_cut(work, tool), *_of_size(work, tool), DEFERS)


def _general(tool: Tool) -> Iterator[Words]:
    for said in cautions_for([SPOKEN[tool]]) if SPOKEN[tool] else (OWN[tool],):
        yield (said,)


def _of_cut(work: Work, tool: Tool) -> Iterator[Words]:
    if tool == "table saw with a stacked cutter":
        yield (
            "A stacked cutter runs without the usual guard and riving knife. Use it only where the saw's "
            "manual and the rules of your country allow it; else take the router table.",
        )
    if tool in SAWS and work.family not in THROUGH_AT_THE_FENCE and not work.through:
        yield (
            "The cutter is hidden under the wood: know where it comes out, and use hold-downs and push "
            "blocks so that no hand passes over it.",
        )
    if tool in SAWS and work.family == "rip":
        yield (
            "Saw only wood that has one flat face and one straight edge: a board that rocks binds and is "
            "thrown.",
        )
    if tool == "band saw" and work.family == "resaw":
        yield (
            "Saw only a board with one flat face, held to a tall fence, and one straight edge on the table: "
            "one that rocks is caught and snatched down.",
        )
    if tool in ("router table", "router"):
        yield (
            "Feed against the turn of the cutter. Never cut with it, and never deepen a cut on the way back.",
        )
    if tool == "router table" and work.is_stopped:
        yield (
            "To begin a stopped cut, hold the wood to the fence and against the rear stop, and lower it "
            "slowly onto the running cutter; at the other stop switch off and wait before you lift it.",
        )
    if tool == "band saw" and work.family == "curved outline":
        yield ("Turn no tighter than the blade's width allows; back out of a cut only with the saw at rest.",)
    if tool == "router table" and work.family in BURIED_CUTS:
        yield ("A wide cutter turns slower: its maker says how fast.",)
    if work.family == "sand":
        yield ("Draw the dust off and wear a mask: fine dust of many woods harms lungs or skin.",)


def _of_size(work: Work, tool: Tool) -> Iterator[Words]:
    piece = work.piece
    if tool in FED and piece.length > LONG_PIECE.most:
        yield worded(
            "Longer than {}: have it carried level where it comes out, by stands or a second person.",
            LONG_PIECE,
        )
    if tool in FED and piece.wood == "sheet" and min(piece.length, piece.width) >= WHOLE_SHEET.least:
        yield ("A whole sheet is too much for one person at a machine: have help, or cut it down first.",)
    if tool in (*SAWS, "router table", "band saw") and piece.width < PUSH_STICK.least:
        yield worded(
            "This piece is {} wide, less than {}: a push stick or push block goes where a hand would.",
            piece.width,
            PUSH_STICK,
        )
    if tool == "table saw" and work.family == "rip" and work.width < NARROW_STRIP.least:
        yield worded("Never pinch a strip narrower than {} between fence and blade.", NARROW_STRIP)
    if tool == "router table" and work.is_along_grain and piece.length < TABLE_PUSHED.least:
        yield worded(
            "This piece is shorter than {}: feed it with a push block, between featherboards, or cut it "
            "while it is part of a longer one.",
            TABLE_PUSHED,
        )
    if tool == "mitre saw":
        yield from _of_size_at_a_mitre_saw(work)
    if tool == "planer":
        yield worded(
            "Nothing shorter than {}, or than the rollers are apart with a little over, goes through it.",
            PLANER_SHORTEST,
        )
    if tool == "jointer":
        yield worded("Take no more than {} in one pass.", JOINTER_PASS)
    if tool == "table saw with a stacked cutter" and work.depth > HEAVY_DEEP.least:
        yield worded("Cuts deeper than {} are made in two passes or more.", HEAVY_DEEP)


def _of_size_at_a_mitre_saw(work: Work) -> Iterator[Words]:
    if work.piece.length < MITRE_SAW_CLAMPED.least:
        yield worded(
            "Clamp this piece to the saw, don't hold it: it is shorter than {}.",
            MITRE_SAW_CLAMPED,
        )
    if 0 < work.length < MITRE_SAW_SHORTEST.least:
        yield ("The piece at the stop is short: take the stop away before the cut, or clamp that piece too.",)
    yield worded("Hands stay {} from the blade's line.", HANDS)
