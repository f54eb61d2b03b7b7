"""The hundred orders are what they say they are, and every tenth can be sawn as laid out."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchalong.workings.layout.lay_out import lay_out
from workings.layout.checker import faults
from workings.layout.shop_orders import AT_LEAST, AT_MOST, ShopOrder, shop_orders

ORDERS = shop_orders()


def test_the_same_seed_makes_the_same_orders() -> None:
    assert shop_orders() == ORDERS
    assert shop_orders(seed=2) != ORDERS


def test_they_have_10_to_60_pieces_and_no_two_orders_are_alike() -> None:
    assert len({shop.order for shop in ORDERS}) == len(ORDERS) == 100
    for shop in ORDERS:
        assert AT_LEAST <= sum(piece.number for piece in shop.order.pieces) <= AT_MOST


def test_thirty_or_more_combine_match_sets_defects_and_several_sizes() -> None:
    combined = [shop.order for shop in ORDERS if shop.combines_all]
    assert len(combined) >= 30
    for order in combined:
        assert order.match_sets
        assert any(board.defects for board in order.boards)
        assert len({(board.length, board.width) for board in order.boards}) > 1


@pytest.mark.parametrize("shop", ORDERS[::10], ids=lambda shop: shop.name)
def test_they_can_be_sawn(shop: ShopOrder) -> None:
    order = replace(shop.order, rules=replace(shop.order.rules, effort=1_000_000))
    assert faults(order, lay_out(order)) == []
