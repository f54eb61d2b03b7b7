"""What holds of every plan: nothing is smaller than it ends up, too small
for the machines, or lost."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.plan.model import Plan
from benchalong.reading import written
from benchalong.workings.blanks.blanks import cut_out
from benchalong.workings.blanks.model import Blank
from benchalong.workings.working import Worked
from plan.by_hand import plan_of, project

LENGTHS = st.sampled_from(["31", "80", "140", "299", "305", "620", "1190", "1400", "2150"])
WIDTHS = st.sampled_from(["7", "18", "40", "74", "75", "143", "160", "290", "455"])
THICK = st.sampled_from(["4", "7", "12", "20", "22", "35", "44"])
GLUED = st.sampled_from(["", "true", "no", "two boards", "strips of at most 60 mm"])
STOCKS = {
    "oak": written.Stock(kind="board", thickness="20"),
    "ash": written.Stock(kind="board", thickness="20", buy="27 mm", restless="yes", board_width="200"),
    "pine": written.Stock(kind="board", thickness="18", buy="1x6", sold_in=("2.4 m", "3 m")),
    "ply": written.Stock(kind="sheet", thickness="12", sheet=("1220", "2440")),
}
PARTS = st.builds(
    written.Part,
    stock=st.sampled_from(sorted(STOCKS)),
    thickness=THICK,
    width=WIDTHS,
    length=LENGTHS,
    count=st.integers(1, 5),
    glued_up=GLUED,
    resaw=st.sampled_from([None, 2, 3]),
    mark=st.sampled_from(["", "P"]),
)
HOWS = st.sampled_from(["book match", "end to end", "side by side", "same board", "show side"])


@st.composite
def projects(draw: st.DrawFn) -> dict[str, object]:
    parts = {f"p{number}": part for number, part in enumerate(draw(st.lists(PARTS, min_size=1, max_size=6)))}
    for name, part in list(parts.items())[1:]:
        if part.stock == parts["p0"].stock and draw(st.booleans()):
            parts[name] = written.Part(**{**vars(part), "rough_with": "p0"})
    of = draw(st.sampled_from(sorted(parts)))
    return {
        "parts": parts,
        "spares": {of: draw(st.integers(1, 3))},
        "matches": {"m": written.Match((draw(st.sampled_from(sorted(parts))),), draw(HOWS))},
        "test_pieces": {"stick": written.TestPiece("oak", "20", "30", draw(LENGTHS), 2)},
    }


@settings(max_examples=150, deadline=None)
@given(projects())
def test_what_holds_of_every_plan(written_as: dict[str, object]) -> None:
    plan = plan_of(project(stock=STOCKS, **written_as))
    blanks = cut_out(plan, Worked())[0]
    for blank in blanks.blanks:
        _never_smaller(plan, blank)
        _fit_for_machines(plan, blank)
    _nothing_lost(plan, blanks.blanks)
    assert len({blank.id for blank in blanks.blanks}) == len(blanks.blanks)
    taken = Counter(name for matched in blanks.matched for name in matched.blanks)
    assert all(number <= blanks.by_id[name].count for name, number in taken.items())


def _never_smaller(plan: Plan, blank: Blank) -> None:
    kerf = plan.shop.sawing.kerf
    for gives in blank.gives:
        if gives.part:
            part = plan.parts[gives.part]
            assert blank.length >= part.length
            assert blank.width * gives.strips >= part.width
    inside = [plan.parts[each.part] for each in blank.gives if each.part]
    if blank.lie == "end to end" and inside:
        least = min(part.length for part in inside)
        assert blank.length >= blank.pieces * least + (blank.pieces - 1) * kerf
    if blank.lie == "side by side" and inside:
        least = min(part.width / each.strips for part, each in zip(inside, blank.gives, strict=True))
        assert blank.width >= blank.pieces * least + (blank.pieces - 1) * kerf
    if plan.stock[blank.stock].kind == "board" and blank.called != "1x6":
        sawn = (blank.leaves - 1) * plan.shop.sawing.resaw_kerf
        thickest = max((part.thickness for part in inside), default=blank.thickness)
        assert blank.thickness >= blank.leaves * thickest + sawn


def _fit_for_machines(plan: Plan, blank: Blank) -> None:
    if plan.stock[blank.stock].kind == "board":
        assert blank.length >= plan.shop.sawing.shortest
        assert blank.width >= plan.shop.sawing.jointer.narrowest


def _nothing_lost(plan: Plan, blanks: tuple[Blank, ...]) -> None:
    given_out: Counter[str] = Counter()
    for blank in blanks:
        for gives in blank.gives:
            if gives.part:
                assert gives.count % gives.strips == 0 or blank.count > 0
                given_out[gives.part] += gives.count
        assert sum(gives.count for gives in blank.gives) <= blank.count * blank.pieces * blank.leaves
    strips = {gives.part: gives.strips for blank in blanks for gives in blank.gives}
    for part in plan.parts.values():
        assert given_out[part.id] == (part.count + plan.spares.get(part.id, 0)) * strips[part.id]
