"""The plan of sessions: how many, what is done in each, what sets overnight and what is done meanwhile."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from markupsafe import Markup

from benchalong.pages.makings import Makings, duration
from benchalong.pages.milled_beside import beside, rests_of
from benchalong.pages.setup import order_of, setup_path, setup_title
from benchalong.pages.setups import work_in_lines
from benchalong.pages.shell import Link, Shell
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.sessions.model import Doing, Session
from benchalong.workings.sessions.sessions import SESSIONS


@dataclass(frozen=True)
class DoneLine:
    """Work at one setting, or of one kind."""

    setup: Link | None
    lines: tuple[str, ...]
    minutes: str
    meanwhile: str
    """What sets while this is done; empty where it comes in its turn."""
    goes_on: bool
    beside: str = ""
    """Spares and test pieces that go with it."""
    rests: tuple[Markup, ...] = ()
    """How long the wood lies after it."""


@dataclass(frozen=True)
class SessionShown:
    number: int
    minutes: str
    done: tuple[DoneLine, ...]
    sets: tuple[str, ...]
    """What still sets or dries when it ends."""


@dataclass(frozen=True)
class SessionsPage:
    shell: Shell
    length: str
    is_said: bool
    """Whether the author says how long a session is."""
    pace: str
    """How many times as long work takes here; empty for as long as it is reckoned."""
    minutes: str
    days: int
    sessions: tuple[SessionShown, ...]


def sessions_page(makings: Makings) -> SessionsPage:
    found, shop = makings.worked[SESSIONS](), makings.plan.shop
    return SessionsPage(
        Shell("sessions", "sessions.html", "Sessions"),
        _time(found.length),
        bool(shop.session),
        "" if shop.pace == 1 else f"{float(shop.pace):g}",
        _time(found.minutes),
        found.days,
        tuple(_session(makings, session) for session in found.sessions),
    )


def _session(makings: Makings, session: Session) -> SessionShown:
    by_id = makings.worked[JOBS].by_id
    return SessionShown(
        session.number,
        _time(session.minutes),
        tuple(_lines(makings, session)),
        tuple(by_id[one].title for one in session.sets),
    )


def _lines(makings: Makings, session: Session) -> Iterator[DoneLine]:
    by_id, run_of = makings.worked[JOBS].by_id, order_of(makings).run_of

    def alike(doing: Doing) -> tuple[str, str, bool]:
        run = run_of.get(doing.tasks[0])
        return (str(run.number) if run else by_id[doing.tasks[0]].kind), doing.meanwhile, doing.goes_on

    for (_, meanwhile, goes_on), group in groupby(session.doings, alike):
        doings = tuple(group)
        tasks = tuple(by_id[one] for doing in doings for one in doing.tasks)
        run = run_of.get(tasks[0].id)
        yield DoneLine(
            Link(setup_path(run.setup), f"Setup {run.number}: {setup_title(run.setup)}") if run else None,
            work_in_lines(makings, tasks),
            _time(sum((doing.minutes for doing in doings), Fraction(0))),
            by_id[meanwhile].title if meanwhile else "",
            goes_on,
            beside(makings, tasks),
            rests_of(makings, tasks),
        )


def _time(minutes: Fraction) -> str:
    """To five minutes: nobody works to the minute; never nothing."""
    return duration(max(5, 5 * round(minutes / 5)))
