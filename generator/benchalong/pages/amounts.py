"""How amounts are reckoned, in words that more than one page says."""

from __future__ import annotations

from markupsafe import Markup

from benchalong.ground.amounts import weight_text
from benchalong.ground.lengths import FOOT
from benchalong.ground.shown import decimal
from benchalong.pages.shown import either
from benchalong.trade.amounts import Rates

SQUARE_FOOT = (FOOT / 1000) ** 2
"""In square metres."""


def glue_rate(rates: Rates) -> Markup:
    """As the project says it, or as is usual: `180 g a square metre of joint, and 33 % on top …`."""
    kilograms, usual = rates.glue / 1000, Rates()
    is_usual = (rates.glue, rates.squeezed_out) == (usual.glue, usual.squeezed_out)
    said = either(
        f"{weight_text(kilograms * SQUARE_FOOT, 'inch')} a square foot",
        f"{weight_text(kilograms, 'millimetre')} a square metre",
    )
    return Markup("{} of joint, and {} % on top for what comes out{}").format(
        said, decimal(rates.squeezed_out * 100, 0), " (common practice, no source)" if is_usual else ""
    )
