"""Orders of work: they can be carried out, with the fewest settings, the same each time."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.workings.sequence.model import Circle, ToDo, runs_of
from benchalong.workings.sequence.put_in_order import put_in_order
from workings.sequence.checker import amiss, settings_made, walks_made
from workings.sequence.plans import fewest_by_trying, made_at_random
from workings.sequence.whole_numbers import fewest_by_programme

LOOKS = 150


@pytest.mark.parametrize("seed", range(160))
def test_the_fewest_settings_of_short_orders_are_found_and_proven(seed: int) -> None:
    todos = made_at_random(seed, setups=2 + seed % 6, todos=9 + seed % 4, machines=1 + seed % 3)
    found = put_in_order(todos, looks=LOOKS)
    assert amiss(todos, found.order) == []
    assert found.settings == settings_made(todos, found.order) == found.least == fewest_by_trying(todos)


@pytest.mark.parametrize("seed", range(40))
def test_the_fewest_of_up_to_fourteen_setups_agree_with_a_programme(seed: int) -> None:
    todos = made_at_random(seed, setups=8 + seed % 7, todos=14 + seed % 4, machines=2 + seed % 3, ties=0.1)
    found = put_in_order(todos, looks=LOOKS)
    assert amiss(todos, found.order) == []
    assert found.settings == settings_made(todos, found.order) == found.least == fewest_by_programme(todos)


@given(st.integers(0, 10**6), st.integers(1, 30), st.integers(20, 90))
@settings(max_examples=25, deadline=None)
def test_longer_orders_can_be_carried_out_and_the_bound_holds(seed: int, setups: int, count: int) -> None:
    todos = made_at_random(seed, setups=setups, todos=count, ties=0.03)
    found = put_in_order(todos, states=300, looks=LOOKS)
    assert amiss(todos, found.order) == []
    assert found.least <= found.settings == settings_made(todos, found.order)


@given(st.integers(0, 10**6))
@settings(max_examples=10, deadline=None)
def test_the_order_they_are_given_in_changes_nothing(seed: int) -> None:
    todos = made_at_random(seed, setups=6, todos=25)
    other = list(todos)
    random.Random(seed + 1).shuffle(other)
    assert put_in_order(todos, looks=LOOKS) == put_in_order(other, looks=LOOKS)


def test_a_setting_stands_while_other_machines_are_set() -> None:
    """The saw is not set again because the router was used meanwhile."""
    todos = [
        ToDo("saw one", machine="saw", setup="dado"),
        ToDo("rout", frozenset({"saw one"}), "router", "groove"),
        ToDo("saw two", frozenset({"rout"}), "saw", "dado"),
    ]
    assert put_in_order(todos).settings == 2


def test_where_a_setting_is_made_twice_the_chain_says_why() -> None:
    todos = [
        ToDo("groove the stiles", machine="saw", setup="groove"),
        ToDo("tongue the rails", frozenset({"groove the stiles"}), "saw", "tongue"),
        ToDo("groove the assembled frame", frozenset({"tongue the rails"}), "saw", "groove"),
    ]
    found = put_in_order(todos)
    assert (found.settings, found.least) == (3, 3)
    (again,) = found.again
    assert again.because == ("groove the stiles", "tongue the rails", "groove the assembled frame")


def test_of_two_that_hold_each_other_up_one_is_made_twice_and_no_chain_is_named() -> None:
    a, b = ("saw", "a"), ("saw", "b")
    todos = [
        ToDo("a1", frozenset(), *a),
        ToDo("b1", frozenset({"a1"}), *b),
        ToDo("b2", frozenset(), *b),
        ToDo("a2", frozenset({"b2"}), *a),
    ]
    found = put_in_order(todos)
    assert (found.settings, found.least) == (3, 3)
    assert [each.because for each in found.again] == [()]


def test_with_the_fewest_settings_there_is_the_least_walking() -> None:
    """Three at the saw and three at the bench, nothing between them: one walk."""
    todos = [ToDo(f"saw {n}", machine="saw", setup="rip", rank=n) for n in range(3)]
    todos += [ToDo(f"plane {n}", rank=n) for n in range(3)]
    found = put_in_order(todos)
    assert walks_made(todos, found.order) == 1


def test_what_nothing_else_orders_keeps_the_authors_order() -> None:
    todos = [ToDo(name, rank=rank) for name, rank in (("c", 2), ("a", 0), ("b", 1), ("d", 3))]
    assert put_in_order(todos).order == ("a", "b", "c", "d")


def test_a_circle_is_said_with_those_in_it() -> None:
    with pytest.raises(Circle) as caught:
        put_in_order([ToDo("a", frozenset({"b"})), ToDo("b", frozenset({"a"})), ToDo("c")])
    assert set(caught.value.ids) == {"a", "b"}


def test_nothing_to_do_is_an_order() -> None:
    assert put_in_order([]).order == ()


def test_runs_are_in_the_order_in_which_machines_are_set() -> None:
    todos = [
        ToDo("a", machine="saw", setup="x"),
        ToDo("b", machine="router", setup="y"),
        ToDo("c", machine="saw", setup="x"),
    ]
    assert [(run.machine, run.does) for run in runs_of(todos)] == [("saw", ("a", "c")), ("router", ("b",))]
