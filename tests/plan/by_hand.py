"""Small projects for the plan's tests, as reading would hand them over."""

from __future__ import annotations

from benchalong.ground.marks import Path
from benchalong.plan.model import Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.written import Assembly, Cut, Part, Place, Project, Size, Stage, Step, Stock

OAK = {"oak": Stock(kind="board", thickness="3/4 in")}


def project(**given: object) -> Project:
    """A project in millimetres with one stock, `oak`, 20 mm thick."""
    standing: dict[str, object] = {
        "title": ("Box",),
        "id": "box",
        "units": "millimetre",
        "stock": {"oak": Stock(kind="board", thickness="20")},
    }
    return Project(**(standing | given))  # type: ignore[arg-type]


def sizes(**formulas: str) -> dict[str, Size]:
    return {name: Size(formula) for name, formula in formulas.items()}


def part(width: str = "60", length: str = "400", **given: object) -> Part:
    return Part(stock="oak", width=width, length=length, **given)  # type: ignore[arg-type]


def with_cuts(*cuts: Cut, width: str = "60", length: str = "400") -> Project:
    """One part, `rail`, of 400 x 60 x 20 mm, with cuts."""
    return project(parts={"rail": part(width, length, count=1, cuts=cuts)})


def placed(of: str, at: tuple[str, str, str] = ("0", "0", "0"), **given: object) -> Place:
    """A part with its length pointing up and its face to the front, unless told otherwise."""
    told = {"along": "up", "face": "front", "mark": "", "mirror": ""} | given
    return Place("part", of, at=at, **told)  # type: ignore[arg-type]


def nested(of: str, at: tuple[str, str, str] = ("0", "0", "0"), **given: object) -> Place:
    return Place("assembly", of, at=at, **given)  # type: ignore[arg-type]


def assembly(*place: Place) -> Assembly:
    return Assembly(place=place)


def plan_of(written: Project) -> Plan:
    """The plan; the test fails when there is none."""
    resolved = resolve(written)
    assert resolved.problems == ()
    assert resolved.plan is not None
    return resolved.plan


def messages(written: Project, unreadable: frozenset[Path] = frozenset()) -> list[str]:
    return [problem.message for problem in resolve(written, unreadable).problems]


ONE_STAGE = {"all": Stage(("All",))}


def step(**given: object) -> Step:
    standing: dict[str, object] = {
        "id": "cut",
        "file": "steps/01-cut.md",
        "number": 1,
        "stage": "all",
        "title": ("Cut",),
    }
    return Step(**(standing | given))  # type: ignore[arg-type]
