"""Contrast against the numbers that W3C publishes.

Sources: WCAG 2.2, definitions of "relative luminance" and "contrast ratio"; Understanding WCAG 2.2,
success criterion 1.4.3 (black on white is 21:1; #777777 on white is the well-known near miss, 4.48:1,
and #767676 the lightest grey that passes, 4.54:1); technique G18 names the same formula.
"""

from __future__ import annotations

import pytest

from benchalong.publishing.colours import contrast, luminance


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        ("#777777", "#ffffff", 4.48),
        ("#767676", "#ffffff", 4.54),
        ("#ff0000", "#ffffff", 4.00),
        ("#0000ff", "#ffffff", 8.59),
        ("#00ff00", "#ffffff", 1.37),
    ],
)
def test_ratios(one: str, other: str, ratio: float) -> None:
    assert round(contrast(one, other), 2) == ratio
    assert contrast(one, other) == contrast(other, one)


@pytest.mark.parametrize(("colour", "share"), [("#ff0000", 0.2126), ("#00ff00", 0.7152), ("#0000ff", 0.0722)])
def test_each_channel_has_its_share(colour: str, share: float) -> None:
    assert luminance(colour) == pytest.approx(share)


def test_both_sides_of_the_bend_meet() -> None:
    """0.04045 is where the two halves of the formula meet; #0a0a0a lies below it, #0b0b0b above."""
    assert luminance("#0a0a0a") == pytest.approx(10 / 255 / 12.92)
    assert luminance("#0b0b0b") == pytest.approx(((11 / 255 + 0.055) / 1.055) ** 2.4)
