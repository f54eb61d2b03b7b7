"""One name space, worked out in whatever order it was written; what is broken is said once."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.lengths import INCH
from benchalong.plan.circles import in_order
from benchalong.plan.resolve import resolve
from benchalong.reading.written import Size, Stock
from plan.by_hand import OAK, messages, part, plan_of, project, sizes


def test_sizes_are_worked_out_in_any_order() -> None:
    plan = plan_of(project(sizes=sizes(door="frame - 2*gap", frame="600", gap="3")))
    assert {name: size.value.value for name, size in plan.sizes.items()} == {
        "door": 594,
        "frame": 600,
        "gap": 3,
    }


def test_a_size_knows_what_it_follows_from() -> None:
    plan = plan_of(project(sizes=sizes(door="frame - 2*gap", frame="600 + rim", gap="3", rim="1")))
    assert plan.sizes["door"].follows == ("frame", "gap", "rim")
    assert plan.sizes["gap"].follows == ()


def test_sizes_reach_through_parts_and_stock() -> None:
    plan = plan_of(
        project(
            sizes=sizes(thick="18", inner="rail.length - 2*oak.thickness"),
            stock={"oak": Stock(kind="board", thickness="thick")},
            parts={"rail": part(length="500", count=1)},
        )
    )
    assert plan.sizes["inner"].value.value == 464
    assert plan.sizes["inner"].follows == ("thick",)
    assert plan.parts["rail"].follows["thickness"] == ("thick",)


def test_a_measured_thickness_wins() -> None:
    stock = {"ply": Stock(kind="sheet", thickness="6", measured="5.2", sheet=("1220", "2440"))}
    rail = replace(part(count=1), stock="ply")
    plan = plan_of(project(stock=stock, sizes=sizes(slot="ply.thickness + 0.1"), parts={"rail": rail}))
    assert plan.sizes["slot"].value.value == Fraction("0.1") + Fraction("5.2")
    assert plan.stock["ply"].thickness == Fraction("5.2")
    assert plan.stock["ply"].nominal == 6
    assert plan.parts["rail"].thickness == Fraction("5.2")


def test_bare_numbers_are_lengths_in_the_projects_units_where_one_is_needed() -> None:
    in_inches = project(
        units="inch", stock=OAK, sizes=sizes(two="2"), parts={"rail": part("two", "12", count=1)}
    )
    assert plan_of(in_inches).parts["rail"].width == 2 * INCH
    assert plan_of(in_inches).sizes["two"].value.dimension == 0


def test_a_broken_size_is_said_once() -> None:
    written = project(
        sizes=sizes(a="nobody", b="a + 1", c="b*b + a"),
        parts={"rail": part("c", "b", count=1)},
    )
    assert messages(written) == ["there is no size called nobody"]


def test_a_circle_is_said_once_and_printed() -> None:
    written = project(sizes=sizes(z="c", a="b + 1", b="c", c="a", d="a + nobody"))
    assert messages(written) == ["a follows from itself: a -> b -> c -> a", "there is no size called nobody"]


def test_circles_run_through_parts_and_stock() -> None:
    written = project(
        sizes=sizes(thick="rail.width / 3"),
        stock={"oak": Stock(kind="board", thickness="thick")},
        parts={"rail": part(width="rail.thickness*3", count=1)},
    )
    assert messages(written) == [
        "thick follows from itself: thick -> rail.width -> rail.thickness -> oak.thickness -> thick"
    ]


def test_nothing_is_said_about_what_could_not_be_read() -> None:
    written = project(
        sizes=sizes(a="b + 1", b="", c="other + 1"), parts={"rail": part("pine.thickness", count=1)}
    )
    lost = frozenset(
        [
            ("project.yaml", "sizes", "b"),
            ("project.yaml", "sizes", "other"),
            ("project.yaml", "stock", "pine"),
        ]
    )
    assert messages(written, lost) == []
    assert resolve(written, lost).plan is None


def test_a_whole_section_may_be_lost() -> None:
    assert (
        messages(project(parts={"rail": part("stile", count=1)}), frozenset([("project.yaml", "sizes")]))
        == []
    )
    assert messages(project(parts={"rail": part("stile", count=1)}), frozenset([("project.yaml",)])) == []


@pytest.mark.parametrize("count", [2000, 2999])
def test_long_chains_are_no_trouble(count: int) -> None:
    chain = {f"s{i}": Size(f"s{i + 1} + 1") for i in range(count)} | {f"s{count}": Size("1")}
    assert plan_of(project(sizes=chain)).sizes["s0"].value.value == count + 1


def test_too_many_sizes_are_refused() -> None:
    assert messages(project(sizes={f"s{i}": Size(f"s{i} + no") for i in range(3001)})) == [
        "there are 3001 sizes"
    ]


def test_two_slips_in_one_formula_are_both_said() -> None:
    assert messages(project(sizes=sizes(a="bee + cee*2"))) == [
        "there is no size called bee",
        "there is no size called cee",
    ]


def test_long_circles_are_shortened() -> None:
    chain = {f"s{i}": Size(f"s{(i + 1) % 3000}") for i in range(3000)}
    assert messages(project(sizes=chain)) == [
        "s0 follows from itself: s0 -> s1 -> s2 -> s3 -> s4 -> s5 -> … 2993 more … -> s2999 -> s0"
    ]


graphs = st.dictionaries(
    st.sampled_from("abcdefgh"), st.lists(st.sampled_from("abcdefghxy"), max_size=4), max_size=8
)


@settings(max_examples=200)
@given(graphs)
def test_everything_comes_after_what_it_hangs_on(graph: dict[str, list[str]]) -> None:
    ordered = in_order(graph)
    assert sorted(ordered.order) == sorted(graph)
    circling = {name for circle in ordered.circles for name in circle}
    for circle in ordered.circles:
        for name, following in zip(circle, (*circle[1:], circle[0]), strict=True):
            assert following in graph[name]
    rank = {name: number for number, name in enumerate(ordered.order)}
    for name, others in graph.items():
        for other in others:
            assert other not in graph or rank[other] < rank[name] or {name, other} <= circling


def test_used_sizes() -> None:
    plan = plan_of(
        project(sizes=sizes(wide="60", spare="3", half="wide/2"), parts={"rail": part("wide", count=1)})
    )
    assert set(plan.used_sizes) == {"wide"}
