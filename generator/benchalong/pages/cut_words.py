"""What the sizes of a cut are called at the bench: `at` says nothing without the side it is measured from."""

from __future__ import annotations

from benchalong.plan.model import Cut

ENDS = ("end a", "end b")
BROAD = ("face", "back")
TARGETS = {"hole": "its centre", "tenon": "its near cheek", "tongue": "its near cheek"}


def size_words(cut: Cut, key: str) -> str:
    """`depth` is Depth, `at` is From end a to its near wall."""
    where = {
        "at": f"From {_run_starts(cut)} to {TARGETS.get(cut.kind, 'its near wall')}",
        "across": f"From {_across_starts(cut)} to {TARGETS.get(cut.kind, 'its near wall')}",
        "from": f"Starts, from {_length_starts(cut)}",
        "to": f"Ends, from {_length_starts(cut)}",
        "takes": "Takes off",
    }
    return where.get(key, key.capitalize())


def _run_starts(cut: Cut) -> str:
    return "edge a" if cut.surfaces and cut.surfaces[0] in ENDS else "end a"


def _across_starts(cut: Cut) -> str:
    return "edge a" if cut.surfaces and cut.surfaces[0] in BROAD else "the face"


def _length_starts(cut: Cut) -> str:
    """Where a cut's own length is measured from: a dado alone runs across the part."""
    return "edge a" if cut.kind == "dado" else _run_starts(cut)
