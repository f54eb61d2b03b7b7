"""Of what is sawn from what: the shop's allowances and machines, boards, test pieces, matches."""

from __future__ import annotations

from benchalong.ground.words import counted
from benchalong.reading import sawing_language as language
from benchalong.reading.shape import Entry
from benchalong.reading.written import (
    Allowance,
    Board,
    Defect,
    Jointer,
    Match,
    Planer,
    Resaw,
    Sawing,
    TestPiece,
)

KINDS = ("board", "sheet", "turned", "glued_up")
"""What has allowances of its own."""


def sawing(entry: Entry) -> Sawing:
    """Out of the shop's own table."""
    return Sawing(
        kerf=entry.formula("kerf"),
        trim=entry.formula("trim"),
        turns=entry.count("turns"),
        allowances=entry.one("allowances", allowances, language.ALLOWANCES) or {},
        resaw=entry.one("resaw", resaw, language.RESAW) or Resaw(),
        jointer=entry.one("jointer", jointer, language.JOINTER) or Jointer(),
        planer=entry.one("planer", planer, language.PLANER) or Planer(),
        car=entry.formula("car"),
    )


def allowances(entry: Entry) -> dict[str, Allowance]:
    own = {kind: entry.one(kind, allowance, language.ALLOWANCE) for kind in KINDS}
    return {"all": allowance(entry)} | {kind: more for kind, more in own.items() if more is not None}


def allowance(entry: Entry) -> Allowance:
    return Allowance(entry.formula("length"), entry.formula("width"), entry.formula("thickness"))


def resaw(entry: Entry) -> Resaw:
    return Resaw(entry.formula("kerf"), entry.formula("clean_up"))


def jointer(entry: Entry) -> Jointer:
    return Jointer(entry.formula("width"), entry.formula("shortest"), entry.formula("narrowest"))


def planer(entry: Entry) -> Planer:
    return Planer(entry.formula("width"), entry.formula("shortest"), entry.formula("thinnest"))


def test_piece(entry: Entry) -> TestPiece:
    return TestPiece(
        stock=entry.name("stock"),
        thickness=entry.formula("thickness"),
        width=entry.formula("width"),
        length=entry.formula("length"),
        count=entry.count("count") or 1,
        name=entry.text("name"),
        purpose=entry.text("for"),
    )


def match(entry: Entry) -> Match:
    return Match(
        parts=entry.names("parts"),
        how=entry.word("how"),
        show_side=entry.word("show_side"),
        note=entry.text("note"),
    )


def board(entry: Entry) -> Board:
    return Board(
        stock=entry.name("stock"),
        length=entry.formula("length"),
        width=entry.formula("width"),
        thickness=entry.formula("thickness"),
        count=entry.count("count") or 1,
        defects=entry.list_of("defects", defect, language.DEFECT),
        sapwood=entry.text("sapwood"),
        price=entry.text("price"),
        note=entry.text("note"),
    )


def defect(entry: Entry) -> Defect:
    return Defect(
        at=_corner(entry),
        length=entry.formula("length"),
        width=entry.formula("width"),
        what=entry.text("what"),
    )


def _corner(entry: Entry) -> tuple[str, str] | None:
    sizes = entry.point("at")
    if sizes is None or len(sizes) == 2:
        return None if sizes is None else (sizes[0], sizes[1])
    found = f"{counted(len(sizes), 'size')} here, and a corner takes 2"
    entry.complain("at", found, "[from end a, from edge a]")
    return None
