"""A bound by branching over whole boards never rules out a layout there is."""

from __future__ import annotations

from hypothesis import HealthCheck, assume, given, settings

from benchalong.workings.layout.bounds import lower_bound
from benchalong.workings.layout.branching import raise_bound_by_branching
from benchalong.workings.layout.inner import inner_order
from benchalong.workings.layout.lay_out import lay_out
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.model import Order
from benchalong.workings.layout.search import Search
from workings.layout.orders import orders

FEW = settings(max_examples=20, suppress_health_check=[HealthCheck.filter_too_much])
"""Most orders have boards of one kind, or too few of them."""


@given(orders())
@settings(FEW)
def test_a_layout_there_is_costs_at_least_the_bound(order: Order) -> None:
    layout = lay_out(order)
    assume(not layout.left_out and len(order.boards) > 1)
    inner = inner_order(order)
    search = Search(inner, Work(3_000_000), lambda: False, lower_bound(inner), missing=inner.demand)
    for dearer in (search.step, 3 * search.step):
        search.rank = (0.0, float(layout.cost + dearer))
        raise_bound_by_branching(search, share=2)
        assert search.bound <= layout.cost


@given(orders())
@settings(FEW)
def test_it_ends_when_the_effort_is_nearly_spent(order: Order) -> None:
    """What is left may be less than its share; it then has what is left."""
    layout = lay_out(order)
    assume(not layout.left_out and len(order.boards) > 1)
    inner = inner_order(order)
    for left in (0, 1, 400_000):
        work = Work(left, spent=3_000_000)
        search = Search(inner, work, lambda: False, lower_bound(inner), missing=inner.demand)
        search.rank = (0.0, float(layout.cost + search.step))
        raise_bound_by_branching(search, share=2)
        assert search.bound <= layout.cost
