"""What is drawn, what is only fetched, and what a picture's key hears of."""

from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from benchalong.drawing.drawings import Drawings
from benchalong.drawing.picture import Picture, PiecePicture
from benchalong.ground.shown import Precision
from benchalong.ground.store import MemoryStore
from benchalong.plan.model import (
    Assembly,
    Change,
    HandOver,
    Look,
    Origin,
    Part,
    Plan,
    Price,
    Shop,
    Stage,
    Step,
    Stock,
)
from benchalong.trade.ways.table import ways
from benchalong.workings.copies import COPIES, Copy
from benchalong.workings.solids import SOLIDS, Solid, Solids
from benchalong.workings.triangles import TRIANGLES
from benchalong.workings.working import Worked
from drawing import cabinet
from drawing.shop import part, slot
from trade.ways.works import WORKS

STEPS = {
    "everything": ("side", "case_end", "shelf", "back", "stile", "rail", "panel"),
    "shelves": ("shelf",),
    "frames": ("stile", "rail"),
    "door": ("stile", "rail", "panel"),
    "unplaced": ("spare",),
    "reading": (),
    "panel and shelf": ("panel", "shelf"),
}


def plan_of(parts: Mapping[str, Part]) -> Plan:
    return Plan(
        id="cupboard",
        title=("Cupboard",),
        about=(),
        edition="",
        units="millimetre",
        precision=Precision(),
        projection="third angle",
        currency="",
        origin=Origin(),
        shop=Shop(),
        sizes={},
        stock={"oak": Stock("oak", "board", "Oak"), "ply": Stock("ply", "sheet", "Plywood")},
        parts=parts,
        assemblies={
            "cupboard": Assembly("cupboard", "Cupboard", ()),
            "case": Assembly("case", "Case", ()),
            "door": Assembly("door", "Door", ()),
            "loose": Assembly("loose", "Loose", ()),
        },
        piece="cupboard",
        joints={},
        shapes={},
        copies=(),
        hardware={},
        jigs={},
        finish={},
        changes=(),
        cautions=(),
        words={},
        ask=HandOver(),
        look=Look("bench", "en"),
        stages={"all": Stage("all", ("All",), (), tuple(STEPS))},
        steps={name: Step(name, "all", (name,), parts=parts) for name, parts in STEPS.items()},
        questions={},
        pictures=(),
    )


PARTS = {**cabinet.parts(), "spare": part("spare", 100, 20, 10)}
PLAN = plan_of(PARTS)
PLACED = tuple(Copy(c.part, c.part, c.mark, c.assemblies, c.turn, c.at) for c in cabinet.cupboard())


class Counted(MemoryStore):
    """A store that counts what is put into it."""

    def __init__(self) -> None:
        super().__init__()
        self.made: list[str] = []

    def put(self, key: str, text: str) -> None:
        self.made.append(key)
        super().put(key, text)


class NoSolids(Solids):
    """Solids that must not be asked for."""

    def __getitem__(self, part: str) -> Solid:
        raise AssertionError(f"asked for the solid of {part}")


def drawings(
    store: MemoryStore, plan: Plan = PLAN, copies: tuple[Copy, ...] = PLACED, solids: Solids | None = None
) -> Drawings:
    results = {COPIES.name: copies, SOLIDS.name: solids or Solids(plan.parts), TRIANGLES.name: ()}
    return Drawings(plan, Worked(results), store)


def piece_of(picture: PiecePicture | None) -> PiecePicture:
    assert picture is not None
    return picture


def test_each_kind_of_picture_is_there() -> None:
    all_of_it = drawings(MemoryStore())
    assert 'class="drawing part' in getattr(all_of_it.part("stile"), "svg", "")
    assert 'class="drawing small' in getattr(all_of_it.small("stile"), "svg", "")
    assert piece_of(all_of_it.piece()).alt.startswith("Cupboard, seen from")
    assert piece_of(all_of_it.assembly("door")).alt.startswith("Door, seen from")
    assert all_of_it.small("spare") is not None


def test_where_there_is_nothing_to_see_there_is_no_picture() -> None:
    gone = part("gone", 50, 20, 20, slot("along", (0, 20), (0, 20), 0, 50))
    plan = plan_of({**PARTS, "gone": gone})
    some = drawings(MemoryStore(), plan)
    assert some.part("gone") is None
    assert some.small("gone") is None
    assert some.assembly("loose") is None
    assert some.step("unplaced") is None
    assert some.step("reading") is None
    assert drawings(MemoryStore(), replace(plan, piece=None), ()).piece() is None


@pytest.mark.parametrize(
    ("step", "title", "standing_out"),
    [
        ("everything", "Cupboard", ""),
        ("shelves", "Case", "Shelf"),
        ("frames", "Door", "Stile, Rail"),
        ("door", "Door", ""),
        ("panel and shelf", "Cupboard", "Shelf, Panel"),
    ],
)
def test_a_step_shows_the_smallest_assembly_that_holds_what_it_touches(
    step: str, title: str, standing_out: str
) -> None:
    alt = piece_of(drawings(MemoryStore()).step(step)).alt
    assert alt.startswith(f"{title}, seen from")
    assert (f"Standing out: {standing_out}." in alt) if standing_out else ("Standing out" not in alt)


def everything(some: Drawings) -> str:
    shown: list[Picture | None] = [some.piece(), some.assembly("case"), some.assembly("door")]
    shown += [some.step(step) for step in STEPS]
    shown += [picture for one in PARTS for picture in (some.part(one), some.small(one))]
    return json.dumps([picture and [picture.svg, picture.alt, picture.height] for picture in shown])


def test_what_is_stored_is_not_drawn_again_and_is_the_same() -> None:
    store = Counted()
    first = everything(drawings(store))
    made = len(store.made)
    assert made > 15
    assert everything(drawings(store, solids=NoSolids(PARTS))) == first
    assert len(store.made) == made
    assert piece_of(drawings(store).piece()) == piece_of(drawings(MemoryStore()).piece())


def test_what_is_stored_is_plain_json() -> None:
    store = MemoryStore()
    key_of = Counted()
    drawings(key_of).piece()
    drawings(store).piece()
    text = store.get(key_of.made[0])
    assert text is not None
    assert sorted(json.loads(text)) == ["alt", "height", "not_shown", "shared", "svg", "width"]


def keys(plan: Plan, copies: tuple[Copy, ...] = PLACED) -> list[str]:
    store = Counted()
    everything(drawings(store, plan, copies))
    return store.made


@cache
def keys_before() -> tuple[str, ...]:
    return tuple(keys(PLAN))


def with_part(one: str, /, **changed: object) -> Plan:
    return replace(PLAN, parts={**PARTS, one: replace(PARTS[one], **changed)})  # type: ignore[arg-type]


def test_notes_prices_and_counts_change_no_key() -> None:
    other = with_part("stile", note="from one board", count=9, marks=("X",), purpose="the doors")
    oak = replace(PLAN.stock["oak"], price=Price(Fraction(9), "board foot"))
    stock = {**PLAN.stock, "oak": oak}
    other = replace(other, stock=stock, changes=(Change("size", "stile", "", ""),), edition="second")
    assert tuple(keys(other)) == keys_before()


@pytest.mark.parametrize(
    ("what", "changed"),
    [
        ("a width", with_part("stile", width=Fraction(61))),
        ("a name", with_part("stile", name="Upright")),
        ("a cut", with_part("stile", cuts=())),
        ("a wood", with_part("stile", stock="ply")),
        ("the units", replace(PLAN, units="inch")),
        ("the precision", replace(PLAN, precision=Precision(millimetre=Fraction(1)))),
        ("the projection", replace(PLAN, projection="first angle")),
    ],
)
def test_what_shows_changes_the_key(what: str, changed: Plan) -> None:
    before, store = set(keys_before()), Counted()
    some = drawings(store, changed)
    some.part("stile")
    some.small("stile")
    some.assembly("door")
    new = [key.split("-")[0] for key in store.made if key not in before]
    expected = {
        "a wood": ["small", "piece"],
        "the units": ["part"],
        "the precision": ["part"],
        "the projection": ["part"],
    }
    assert set(new) >= set(expected.get(what, ["part", "small", "piece"]))


def test_a_mark_and_a_place_change_the_piece_but_no_part() -> None:
    moved = (Fraction(1), Fraction(0), Fraction(0))
    for copy in (replace(PLACED[0], mark="C/LEFT"), replace(PLACED[0], at=moved)):
        new = set(keys(PLAN, (copy, *PLACED[1:]))) - set(keys_before())
        assert {key.split("-")[0] for key in new} == {"piece"}


def test_a_changed_rule_of_drawing_changes_every_key(monkeypatch: pytest.MonkeyPatch) -> None:
    before = set(keys_before())
    monkeypatch.setattr("benchalong.drawing.drawings.drawing_code", lambda: "other rules")
    assert not before & set(keys(PLAN))


def test_a_setup_is_drawn_once_for_all_pieces_that_share_it() -> None:
    store, work = Counted(), WORKS["groove"]
    some, way = drawings(store), ways(work).ways[0]
    first = some.setup(work, way)
    assert first == some.setup(replace(work, count=9), replace(way, for_all=Fraction(60)))
    assert [key.split("-")[0] for key in store.made] == ["setup"]
    other = replace(work, depth=work.depth / 2)
    assert some.setup(other, ways(other).ways[0]) != first
    assert some.setup(WORKS["sand"], ways(WORKS["sand"]).ways[0]) is None


def test_the_same_bytes_whatever_the_hash_seed() -> None:
    script = (
        "from drawing.test_drawings import *\n"
        "store = Counted()\n"
        "said = everything(drawings(store)) + repr(store.made)\n"
        "print(hashlib.sha256(said.encode()).hexdigest())"
    )
    root = Path(__file__).parents[2]
    path = os.pathsep.join([str(root / "generator"), str(root / "tests")])
    said = {
        subprocess.run(
            [sys.executable, "-c", script],
            env={**os.environ, "PYTHONPATH": path, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "77")
    }
    assert len(said) == 1
    assert len(next(iter(said)).strip()) == len(hashlib.sha256(b"").hexdigest())
