"""Stock in words."""

from __future__ import annotations

from benchalong.plan.model import Stock


def stock_words(stock: Stock) -> str:
    """What to take from the rack, in a few words: `Black cherry, flat sawn, 4/4`."""
    said = [stock.name, stock.species if stock.species.lower() != stock.name.lower() else ""]
    said += [f"{stock.sawn} sawn" if stock.sawn else "", f"bought as {stock.buy}" if stock.buy else ""]
    return ", ".join(word for word in said if word)
