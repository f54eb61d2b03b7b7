"""The tables of what is sawn from what: allowances, machines, boards, matches, test pieces."""

from __future__ import annotations

from benchalong.reading.language import Key, Kind, Table
from benchalong.reading.written import SURFACES

HOWS = ("book match", "end to end", "side by side", "same board", "show side")
"""How parts match."""

_MORE = (
    Key("length", Kind.FORMULA, "how much longer; 1 in or 25 mm unless said"),
    Key("width", Kind.FORMULA, "how much wider; 1/4 in or 6 mm, under 3 in half of it, unless said"),
    Key("thickness", Kind.FORMULA, "how much thicker; 1/4 in or 6 mm unless said"),
)

ALLOWANCE = Table(
    "an allowance",
    _MORE,
    where="`board:`, `sheet:`, `turned:` or `glued_up:` in `allowances:`; and `allowances:` of a stock",
)

ALLOWANCES = Table(
    "a table of allowances",
    (
        *_MORE,
        Key("board", Kind.TABLE, "the same for boards"),
        Key("sheet", Kind.TABLE, "the same for sheets; nothing unless said"),
        Key("turned", Kind.TABLE, "the same for what is turned"),
        Key("glued_up", Kind.TABLE, "the same for what is glued up from strips, of the whole"),
    ),
    where="`allowances:` of the shop",
)

RESAW = Table(
    "a resaw",
    (
        Key("kerf", Kind.FORMULA, "how wide the bandsaw cuts; 1/16 in or 1.6 mm unless said"),
        Key(
            "clean_up",
            Kind.FORMULA,
            "what flattening takes off each face of a leaf; 3/32 in or 2.5 mm unless said",
        ),
    ),
    where="`resaw:` of the shop",
)

JOINTER = Table(
    "a jointer",
    (
        Key("width", Kind.FORMULA, "the widest it takes; 6 in or 150 mm unless said"),
        Key("shortest", Kind.FORMULA, "the shortest piece; 12 in or 300 mm unless said"),
        Key("narrowest", Kind.FORMULA, "the narrowest piece; 3/4 in or 19 mm unless said"),
    ),
    where="`jointer:` of the shop; the machine's manual goes before",
)

PLANER = Table(
    "a planer",
    (
        Key("width", Kind.FORMULA, "the widest it takes; 12 in or 300 mm unless said"),
        Key("shortest", Kind.FORMULA, "the shortest piece; 12 in or 300 mm unless said"),
        Key("thinnest", Kind.FORMULA, "the thinnest without a carrier board; 1/4 in or 6 mm unless said"),
    ),
    where="`planer:` of the shop; the machine's manual goes before",
)

TEST_PIECE = Table(
    "a test piece",
    (
        Key("stock", Kind.NAME, "the stock it is milled from", required=True),
        Key("thickness", Kind.FORMULA, "as the parts it stands in for; otherwise the stock's thickness"),
        Key("width", Kind.FORMULA, "how wide", required=True),
        Key("length", Kind.FORMULA, "how long", required=True),
        Key("count", Kind.COUNT, "how many; one unless said"),
        Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
        Key("for", Kind.TEXT, "what is tried on it"),
    ),
    where="each name under `test_pieces:`",
)

MATCH = Table(
    "a match",
    (
        Key(
            "parts",
            Kind.NAMES,
            "the parts, or the marks of copies, in their order: `[LD/P, RD/P]`",
            required=True,
        ),
        Key("how", Kind.WORD, "how they match", required=True, words=HOWS),
        Key("show_side", Kind.WORD, "which side is to be seen", words=SURFACES),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `matches:`",
)

DEFECT = Table(
    "a defect",
    (
        Key(
            "at",
            Kind.POINT,
            "its corner nearest to end a and edge a: [from end a, from edge a]",
            required=True,
        ),
        Key("length", Kind.FORMULA, "along the grain", required=True),
        Key("width", Kind.FORMULA, "across the grain", required=True),
        Key("what", Kind.TEXT, "what it is: a knot, a check"),
    ),
    where="each of a board's `defects:`",
)

BOARD = Table(
    "a board",
    (
        Key("stock", Kind.NAME, "the stock it is", required=True),
        Key("length", Kind.FORMULA, "along the grain", required=True),
        Key("width", Kind.FORMULA, "across the grain", required=True),
        Key("thickness", Kind.FORMULA, "as it measures"),
        Key("count", Kind.COUNT, "how many of them; one unless said"),
        Key("defects", Kind.TABLES, "where no part may lie"),
        Key("sapwood", Kind.TEXT, "the pale strip along an edge: `edge a 1 in`, `both edges 1 in`"),
        Key("price", Kind.TEXT, "what it cost or costs: `38 each`"),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each of `boards:` in project.yaml and in a builder's file",
)
