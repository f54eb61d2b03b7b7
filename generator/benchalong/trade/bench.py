"""Minutes for work that no machine does: marking, dry assembly, glue-ups, fitting, hardware. Common practice,
no source; a beginner takes half as long again."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

AT_ONCE: Mapping[str, int] = {
    "choose and mark": 5,
    "rough cut": 0,
    "rest": 10,
    "test piece": 0,
    "dry-assemble": 15,
    "glue up": 15,
    "flush": 5,
    "measure and fit": 10,
    "sand": 10,
    "fit hardware": 10,
    "finish": 10,
    "hang": 45,
    "make jig": 45,
}
"""By job word: to begin and to clear up."""
FOR_EACH: Mapping[str, int] = {
    "choose and mark": 2,
    "rest": 1,
    "dry-assemble": 2,
    "glue up": 3,
    "flush": 5,
    "measure and fit": 20,
    "fit hardware": 6,
    "drive": 1,
    "sand": 2,
    "finish": 4,
}
"""`drive` is one screw, nail or peg. For each copy it is done to, or each member that is put together; of a
finish each coat on each copy. A test piece takes its time with the setup it is for."""


def minutes_at_bench(job: str, *, count: int) -> Fraction:
    return Fraction(AT_ONCE.get(job, 5) + FOR_EACH.get(job, 0) * max(1, count))
