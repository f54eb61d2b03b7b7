"""A project's own few colours, and whether they can be read.

The contrast ratio is that of WCAG 2.2, "contrast ratio" and "relative luminance" in its definitions:
(L1 + 0.05) / (L2 + 0.05), with the lighter first.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from benchalong.ground.marks import at
from benchalong.ground.problems import Problem

NEEDED = 4.5
"""Success criterion 1.4.3: text against what it stands on."""

_COLOUR = re.compile(r"#(?:[0-9a-fA-F]{3}|[0-9a-fA-F]{6})")


@dataclass(frozen=True)
class ThemeColours:
    """What a theme sets its text with in light mode; a project's colours must be read with these."""

    text: str = "#1a1a1a"
    """Text that stands on the paper."""
    quiet: str = "#1a1a1a"
    """The faintest text that stands on the paper."""
    paper: str = "#ffffff"
    """The paper where a project sets none; links in the accent stand on it."""
    on_accent: str = "#ffffff"
    """Text that stands on the accent."""


def is_colour(text: str) -> bool:
    """Whether it is `#rgb` or `#rrggbb`."""
    return _COLOUR.fullmatch(text) is not None


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, from 1 to 21."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def luminance(colour: str) -> float:
    """Relative luminance, 0 for black to 1 for white."""
    red, green, blue = (_linear(channel / 255) for channel in _channels(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def colour_problems(accent: str, paper: str, theme: ThemeColours) -> tuple[Problem, ...]:
    """What is wrong with a project's colours: not written as colours, or too near to the text on them."""
    wrong = [
        _not_a_colour(key, value)
        for key, value in (("accent", accent), ("paper", paper))
        if value and not is_colour(value)
    ]
    return tuple(wrong) if wrong else tuple(_hard_to_read(accent, paper, theme))


def colours_css(accent: str, paper: str) -> str:
    """The style sheet that sets a project's colours over the theme's, in light mode and on screens only."""
    lines = [
        f"    --{name}: {value.lower()};\n" for name, value in (("accent", accent), ("paper", paper)) if value
    ]
    if not lines:
        return "/* This project sets no colours of its own. */\n"
    return "@media screen and (prefers-color-scheme: light) {\n  :root {\n" + "".join(lines) + "  }\n}\n"


def _channels(colour: str) -> tuple[int, int, int]:
    digits = colour.lstrip("#")
    if len(digits) == 3:
        digits = "".join(digit * 2 for digit in digits)
    return int(digits[0:2], 16), int(digits[2:4], 16), int(digits[4:6], 16)


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)


def _not_a_colour(key: str, value: str) -> Problem:
    place = at("project.yaml", "look", key)
    return Problem(place, f"{value!r} is not a colour", 'red, green and blue as in "#7a3b1e", in quotes')


def _hard_to_read(accent: str, paper: str, theme: ThemeColours) -> list[Problem]:
    """The first of each colour's neighbours that it can't be told from."""
    ground = paper or theme.paper
    beside = {
        "paper": ((theme.text, "text on it"), (theme.quiet, "quiet text on it")) if paper else (),
        "accent": ((ground, "the paper"), (theme.on_accent, "text on it")) if accent else (),
    }
    written = {"paper": ground, "accent": accent}
    found = ([_too_near(key, written[key], *pair) for pair in pairs] for key, pairs in beside.items())
    firsts = (next(filter(None, problems), None) for problems in found)
    return [problem for problem in firsts if problem]


def _too_near(key: str, one: str, other: str, beside: str) -> Problem | None:
    ratio = contrast(one, other)
    if ratio >= NEEDED:
        return None
    message = f"{one} and {beside} ({other}) are too near to read: the contrast is {ratio:.2f} to 1"
    return Problem(at("project.yaml", "look", key), message, f"a contrast of at least {NEEDED} to 1")
