"""What is always said where a piece is hung, stood up, or given a lid. It stands before the work.

Standards are named only to say where tests are laid down; nothing here was tested by them (from memory: ASTM
F2057 and EN 14749 for what stands free, ASTM F963 and EN 71 for toy chests).
"""

from __future__ import annotations

from typing import Final

WALL: Final = (
    "Pipes and wires run in walls, mostly straight up, down and sideways from taps, sockets and "
    "switches. Look for them with a detector, and switch off the circuit, before you drill.",
    "Find the studs and try them with a thin drill where the piece will cover it. Wallboard by "
    "itself holds nothing.",
    "Two people hang it: one holds, one drives the screws.",
)
WALL_OF: Final = {
    "studs": "Brick, concrete, and thin walls without studs need other fixings than these.",
    "solid wall": "Which plug holds in this wall, its drill and its depth: the maker of the plug says. Old "
    "plaster holds nothing.",
    "other": "What holds in this wall, its maker or somebody licensed says.",
}
RAIL: Final = (
    "What it hangs by has straight grain and no knots, and sits tight in its joints: the whole "
    "piece hangs by it."
)
STANDS: Final = (
    "Where children are about, anything that stands free and opens is fixed to the wall, whatever "
    "the figures say: an angle or a strap at its top, into a stud or a plug that holds.",
    "Heavy things go into the lowest drawers. A thick carpet tips a piece forward.",
)
STOOD_ON: Final = (
    "Try it before anybody relies on it: load it low and level first, and look at every joint. Look"
    " it over each year."
)
LIDDED: Final = (
    "A lid falls on fingers and necks. A stay holds it where it is left; try that it does at every height.",
)
CLIMBED_INTO: Final = (
    "A child can climb in here. The air holes stay open whatever stands against it, and nothing on "
    "it catches by itself.",
)
NO_CERTIFICATE: Final = (
    "This was reckoned, not tested: it is no certificate. Local codes and licensed practice decide "
    "what may hang where, and who may fix it."
)
TESTS: Final = {
    "stands": "How such pieces are tested is laid down in ASTM F2057 (United States) and EN 14749 "
    "(Europe); this one wasn't.",
    "lid": "How chests for children are tested is laid down in ASTM F963 (United States) and EN 71 "
    "(Europe); this one wasn't.",
}
FIGURES: Final = (
    "Screws: half of what is usual. Pulled out, the design rule 2850 G² D pounds for each inch in "
    "spruce; across, common practice, no source."
)
