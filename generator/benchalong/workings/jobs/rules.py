"""The rules: what must be done before what, each with its reason.

One function a rule. Each is common practice of the trade or follows from what wood and glue allow; none has a
published source. `must` is kept for what can't be done the other way round or spoils the work.
"""

from __future__ import annotations

from collections.abc import Callable

from benchalong.workings.jobs.index import Found, Index
from benchalong.workings.jobs.rules_fitting import fitted, hang, hardware
from benchalong.workings.jobs.rules_open import sawn_open_first
from benchalong.workings.jobs.rules_together import dry, glue, surfaces
from benchalong.workings.jobs.rules_wood import fit, size, test, wood

RULES: tuple[Callable[[Index], Found], ...] = (
    wood, sawn_open_first, size, fit, test, fitted, dry, glue, surfaces, hardware, hang,
)  # fmt: skip
