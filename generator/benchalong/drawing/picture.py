"""A finished picture."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Picture:
    svg: str
    """One `<svg>` element with a viewBox and no width or height of its own; no styles inside (the theme's
    sheet has them), sizes as live text: `<text class="size bare" data-mm="1524/25">2 3/8</text>`."""
    alt: str
    """What it shows, in a sentence without numbers. Also the svg's `<title>`."""
    width: float
    """Of the viewBox, in CSS pixels at the size it is meant to be seen on a phone."""
    height: float


@dataclass(frozen=True)
class PiecePicture(Picture):
    """A picture of the piece, or of some of its copies where they stand."""

    not_shown: tuple[str, ...] = ()
    """Marks, as shortened in this picture, of the copies this view can't show. The picture says so too."""
    shared: tuple[tuple[str, ...], ...] = ()
    """Marks of equal parts that share one label, the labelled one first."""
