"""What stands now while a site is open: the last good site, and the problems since."""

from __future__ import annotations

import threading
from dataclasses import dataclass, replace
from pathlib import Path


@dataclass(frozen=True)
class State:
    number: int = 0
    """Grows with each change."""
    site: Path | None = None
    """The folder of the last good site; None until there is one."""
    problems: str = ""
    """As text for a person; empty while all is well."""


class Standing:
    """The state, shared between the one who publishes and those who read."""

    def __init__(self) -> None:
        self._state = State()
        self._changed = threading.Condition()

    def now(self) -> State:
        with self._changed:
            return self._state

    def good(self, site: Path) -> None:
        """A new site stands."""
        with self._changed:
            self._state = State(self._state.number + 1, site)
            self._changed.notify_all()

    def bad(self, problems: str) -> None:
        """The last site goes on standing, with these problems shown."""
        with self._changed:
            self._state = replace(self._state, number=self._state.number + 1, problems=problems)
            self._changed.notify_all()

    def wait_for_news(self, since: int, seconds: float) -> int:
        """The number of the state, as soon as it isn't `since` any more or the time is up."""
        with self._changed:
            self._changed.wait_for(lambda: self._state.number != since, timeout=seconds)
            return self._state.number
