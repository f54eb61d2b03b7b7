"""A small wall cupboard put together by hand: a case with two shelves and a back, two framed doors."""

from __future__ import annotations

from fractions import Fraction

from benchalong.plan.model import Part
from benchalong.workings.solids import Solid, solid_of
from drawing.shop import PlacedCopy, part, put, slot

WIDTH, HEIGHT, DEPTH, THICK = 760, 660, 228, 19
STILE, GROOVE, GAP = 60, 10, 2
DOOR_HEIGHT, DOOR_WIDTH = HEIGHT - 2 * THICK - 2 * GAP, (WIDTH - 2 * THICK - 3 * GAP) // 2
PANEL = Fraction(8)
CHEEK = (THICK - PANEL) / 2
SHELVES = (220, 430)
CASE, DOOR = ("cupboard", "case"), ("cupboard", "door")


def parts() -> dict[str, Part]:
    rail = DOOR_WIDTH - 2 * STILE + 2 * GROOVE
    tongues = [
        slot("across", ends, cheek, 0, STILE)
        for ends in ((0, GROOVE), (rail - GROOVE, rail))
        for cheek in ((0, CHEEK), (CHEEK + PANEL, THICK))
    ]
    groove = ((STILE - GROOVE, STILE), (CHEEK, CHEEK + PANEL))
    made = (
        part(
            "side",
            HEIGHT,
            DEPTH,
            THICK,
            *(slot("across", (z, z + THICK), (13, THICK), 25, DEPTH) for z in SHELVES),
        ),
        part("case_end", WIDTH - 2 * THICK, DEPTH, THICK),
        part("shelf", WIDTH - 2 * THICK + 12, DEPTH - 50, THICK),
        part("back", HEIGHT - 24, WIDTH - 24, Fraction(26, 5)),
        part("stile", DOOR_HEIGHT, STILE, THICK, slot("along", *groove, 0, DOOR_HEIGHT)),
        part("rail", rail, STILE, THICK, slot("along", *groove, 0, rail), *tongues),
        part("panel", DOOR_HEIGHT - 2 * STILE + 2 * GROOVE, rail, PANEL),
    )
    return {one.id: one for one in made}


def solids() -> dict[str, Solid]:
    return {name: solid_of(one) for name, one in parts().items()}


def case() -> list[PlacedCopy]:
    p = parts()
    shelves = [
        put(p["shelf"], f"C/S{i}", (THICK - 6, 30, z), "right", "up", within=CASE)
        for i, z in enumerate(SHELVES, 1)
    ]
    return [
        put(p["side"], "C/L", (0, 0, 0), "up", "left", within=CASE),
        put(p["side"], "C/R", (WIDTH - THICK, 0, 0), "up", "right", within=CASE, mirrored=True),
        put(p["case_end"], "C/B", (THICK, 0, 0), "right", "down", within=CASE),
        put(p["case_end"], "C/T", (THICK, 0, HEIGHT - THICK), "right", "up", within=CASE),
        *shelves,
        put(p["back"], "C/K", (12, DEPTH - 6, 12), "up", "front", within=CASE),
    ]


def door(mark: str, left: int) -> list[PlacedCopy]:
    p, foot, shoulder = parts(), THICK + GAP, left + STILE - GROOVE
    return [
        put(p["stile"], f"{mark}/H", (left, 0, foot), "up", "front", within=DOOR),
        put(p["stile"], f"{mark}/M", (left + DOOR_WIDTH - STILE, 0, foot), "down", "front", within=DOOR),
        put(p["rail"], f"{mark}/T", (shoulder, 0, foot + DOOR_HEIGHT - STILE), "left", "front", within=DOOR),
        put(p["rail"], f"{mark}/B", (shoulder, 0, foot), "right", "front", within=DOOR),
        put(p["panel"], f"{mark}/P", (shoulder, CHEEK, foot + STILE - GROOVE), "up", "front", within=DOOR),
    ]


def cupboard() -> list[PlacedCopy]:
    left = THICK + GAP
    return [*case(), *door("LD", left), *door("RD", left + DOOR_WIDTH + GAP)]
