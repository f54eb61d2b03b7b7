"""Steps, texts with live sizes, questions, builders: names led to what they mean."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from benchalong.ground.marks import Place, at
from benchalong.ground.prose import Address, Hole, LiveNumber, LiveSize, PartName
from benchalong.plan.model import DoneTo, Job, Price
from benchalong.plan.resolve import resolve
from benchalong.reading import written
from benchalong.reading.written import Project
from plan.by_hand import ONE_STAGE, assembly, messages, nested, part, placed, plan_of, project, sizes, step

NOTE = ("steps/01-cut.md", "note")


def hole(kind: str, text: str, start: int = 5, wide: int | None = None) -> Hole:
    """As reading hands it over: the place is that of the whole `(=…)`."""
    extra = 3 if kind == "size" else 8
    return Hole(kind, text, Place(NOTE, start=start, end=start + (wide or len(text) + extra)))  # type: ignore[arg-type]


def with_step(**given: object) -> Project:
    return project(
        sizes=sizes(gap="3", ratio="3/4"),
        parts={"rail": part(name="Door rail"), "lid": part(count=1)},
        assemblies={"box": assembly(nested("door")), "door": assembly(placed("rail"), placed("rail"))},
        hardware={"hinge": written.Hardware(name="Hinge")},
        jigs={"fence": written.Jig(name="Fence")},
        stages=ONE_STAGE,
        pictures=("pictures/a.png",),
        steps=(step(**given), step(id="glue", file="steps/02-glue.md", number=2)),
        questions=(written.Question("wet", "questions/wet.md", step="cut"),),
    )


def test_holes_are_filled() -> None:
    note = (
        "<p>", hole("size", "gap*2"), hole("size", "ratio"), hole("part", "rail"), hole("name", "lid"),
        hole("link", "step:glue"), hole("link", "part:lid"), hole("link", "question:wet"),
        hole("picture", "pictures/a.png"), "</p>",
    )  # fmt: skip
    assert plan_of(with_step(note=note)).steps["cut"].note == (
        "<p>",
        LiveNumber("gap*2", "6"),
        LiveNumber("ratio", "0.75"),
        PartName("rail", "Door rail"),
        PartName("lid", "Lid", leads=False),
        Address("step", "glue"),
        Address("part", "lid"),
        Address("question", "wet"),
        Address("picture", "pictures/a.png"),
        "</p>",
    )


def test_lengths_are_live_in_either_system() -> None:
    plan = plan_of(with_step(note=(hole("size", "rail.width"), hole("size", "1 3/4 in"))))
    assert plan.steps["cut"].note == (
        LiveSize("rail.width", Fraction(60)),
        LiveSize("1 3/4 in", Fraction(889, 20)),
    )


@pytest.mark.parametrize(
    ("kind", "text", "message"),
    [
        ("size", "gpa", "there is no size called gpa"),
        ("size", "gap +", "nothing follows the +"),
        ("size", "(1 in)*(1 in)", "this comes to an area"),
        ("size", "1/0", "this divides by zero"),
        ("part", "rial", "there is no part called rial"),
        ("part", "door", "door is an assembly, not a part"),
        ("name", "rial", "there is no part called rial"),
        ("link", "step:glu", "there is no step called glu"),
        ("link", "part:rial", "there is no part called rial"),
        ("link", "question:dry", "there is no question called dry"),
        ("picture", "pictures/b.png", "there is no picture called pictures/b.png"),
    ],
)
def test_holes_that_lead_nowhere(kind: str, text: str, message: str) -> None:
    assert messages(with_step(note=(hole(kind, text),))) == [message]


def test_the_stretch_at_fault_is_marked_inside_the_hole() -> None:
    (problem,) = resolve(with_step(note=(hole("size", "2*gpa", start=10),))).problems
    assert (problem.place.start, problem.place.end) == (14, 17)
    (problem,) = resolve(with_step(note=(hole("size", "2*gpa", start=10, wide=11),))).problems
    assert problem.place.path == NOTE


TEXTS = [
    ("title", ("steps/01-cut.md", "title")), ("why", ("steps/01-cut.md", "why")),
    ("cautions", ("steps/01-cut.md", "cautions", 0)), ("checks", ("steps/01-cut.md", "checks", 0)),
    ("ask", ("steps/01-cut.md", "ask", 0)),
]  # fmt: skip


@pytest.mark.parametrize(("key", "path"), TEXTS)
def test_every_text_of_a_step_is_looked_at(key: str, path: tuple[str | int, ...]) -> None:
    text = (Hole("size", "gpa", at(*path)),)
    given = text if key in ("title", "why") else (text,)
    (problem,) = resolve(with_step(**{key: given})).problems
    assert problem.place.path == path


def test_jobs_are_led_to_what_they_are_done_to() -> None:
    does = (
        written.Does("mill", ("rail", "lid")),
        written.Does("glue up", ("door",)),
        written.Does("drill", ("hinge", "fence")),
    )
    made = plan_of(with_step(does=does)).steps["cut"]
    assert made.does == (
        Job("mill", ("rail", "lid"), to=(DoneTo(("rail",)), DoneTo(("lid",)))),
        Job("glue up", (), ("door",), to=(DoneTo(assemblies=("door",)),)),
        Job(
            "drill",
            hardware=("hinge",),
            jigs=("fence",),
            to=(DoneTo(hardware=("hinge",)), DoneTo(jigs=("fence",))),
        ),
    )
    assert (made.hardware, made.jigs) == (("hinge",), ("fence",))


@pytest.mark.parametrize(
    ("typed", "means"),
    [
        ("rail", DoneTo(parts=("rail",))),
        ("*i*", DoneTo(parts=("rail", "lid"))),
        ("d*r", DoneTo(assemblies=("door",))),
        ("hin*", DoneTo(hardware=("hinge",))),
        ("rail groove", DoneTo(parts=("rail",), cuts=("groove",))),
        ("groove", DoneTo(cuts=("groove",))),
    ],
)
def test_words_of_a_job_are_names_patterns_and_kinds_of_cut(typed: str, means: DoneTo) -> None:
    (job,) = plan_of(with_step(does=(written.Does("cut", (typed,)),))).steps["cut"].does
    assert job.to == (means,)
    assert job.parts == means.parts


def test_a_step_touches_what_it_does_names_and_lists_each_once() -> None:
    made = plan_of(
        with_step(
            does=(written.Does("glue up", ("box",)),),
            parts=("rail",),
            note=(hole("part", "lid"), hole("name", "rail")),
        )
    )
    assert made.steps["cut"].parts == ("rail", "lid")


@pytest.mark.parametrize(
    ("given", "message"),
    [
        ({"stage": "al"}, "there is no stage called al"),
        (
            {"does": (written.Does("mill", ("rial",)),)},
            "there is no part, assembly, piece of hardware, jig or joint called rial",
        ),
        ({"parts": ("rial",)}, "there is no part called rial"),
        ({"parts": ("hinge",)}, "hinge is a piece of hardware, not a part"),
        ({"jigs": ("fance",)}, "there is no jig called fance"),
        ({"hardware": ("hing",)}, "there is no piece of hardware called hing"),
        (
            {"pictures": (written.Picture("pictures/c.png", "c"),)},
            "there is no picture called pictures/c.png",
        ),
    ],
)
def test_names_in_steps_that_lead_nowhere(given: dict[str, object], message: str) -> None:
    assert messages(with_step(**given)) == [message]


def test_stages_hold_their_steps_in_order() -> None:
    assert plan_of(with_step()).stages["all"].steps == ("cut", "glue")


def checks(*sources: str) -> list[str]:
    texts = tuple((source,) for source in sources)
    return [
        check.key for check in plan_of(with_step(checks=texts, check_sources=sources)).steps["cut"].checks
    ]


def test_keys_of_checks_stay_while_the_words_stay() -> None:
    one, other = checks("Is it flat?", "Is it square?")
    assert checks("Is it square?", "Is it flat?") == [other, one]
    assert one != other


def test_the_same_words_twice_get_a_number() -> None:
    one, other = checks("Is it flat?", "Is it flat?")
    assert other == f"{one}-2"


def test_a_size_in_a_check_is_no_part_of_its_key() -> None:
    def key(formula: str) -> str:
        text = ("It is ", Hole("size", formula, at(*NOTE)), " wide")
        made = plan_of(with_step(checks=(text,), check_sources=(f"It is (={formula}) wide",)))
        return made.steps["cut"].checks[0].key

    assert key("gap") == key("gap*2 + 1 mm")


def test_questions_belong_to_a_step() -> None:
    assert plan_of(with_step()).questions["wet"].step == "cut"
    lost = replace(with_step(), questions=(written.Question("wet", "questions/wet.md", step="cutt"),))
    assert messages(lost) == ["there is no step called cutt"]


def test_nothing_is_said_about_steps_whose_file_could_not_be_read() -> None:
    lost = replace(with_step(), questions=(written.Question("wet", "questions/wet.md", step="flatten"),))
    assert messages(lost, frozenset([("steps/03-flatten.md",)])) == []


def builder(**given: object) -> list[str]:
    made = written.Builder("robin", "builders/robin.yaml", **given)  # type: ignore[arg-type]
    return messages(replace(with_step(), builders=(made,)))


def test_builders_are_looked_over() -> None:
    good = {
        "sizes": {"gap": "4"},
        "stock": {"rail": "oak"},
        "measured": {"gap": "4.1", "oak.thickness": "19.8"},
    }
    assert builder(**good, boards=(written.Board("oak", "2000", "150"),)) == []
    assert builder(sizes={"gpa": "4"}) == ["there is no size called gpa"]
    assert builder(sizes={"gap": "4 +"}) == ["nothing follows the +"]
    assert builder(stock={"rial": "oak", "lid": "elm"}) == [
        "there is no part called rial",
        "there is no stock called elm",
    ]
    assert builder(measured={"oak.thick": "4"}) == ["a stock has no thick"]
    assert builder(boards=(written.Board("elm", "2 m", "0"),)) == [
        "there is no stock called elm",
        "the width comes to 0 mm",
    ]


def test_changes_lead_to_what_was_changed() -> None:
    change = written.Change("part", "rial", "oak", "lighter")
    assert messages(replace(with_step(), changes=(change,))) == ["there is no part called rial"]
    joint = written.Change("joint", "corner", "dovetail", "simpler")
    assert plan_of(replace(with_step(), changes=(joint,))).changes[0].of == "corner"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("9.80 per board foot", Price(Fraction("9.8"), "board foot")),
        ("42 per sheet", Price(Fraction(42), "sheet")),
        ("6 each", Price(Fraction(6), "each")),
        ("1250 per  cubic metre", Price(Fraction(1250), "cubic metre")),
        ("", None),
    ],
)
def test_prices(text: str, expected: Price | None) -> None:
    plan = plan_of(project(hardware={"hinge": written.Hardware(price=text)}))
    assert plan.hardware["hinge"].price == expected


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("free", "a price begins with its amount"),
        ("-3 each", "a price can't be below nothing"),
        ("9.80", "this price does not say what it is for: 9.80"),
        ("9,80 each", "this price does not say what it is for: 9,80 each"),
        ("9.80 per bord", "this price does not say what it is for: 9.80 per bord"),
        ("9.80 sheet", "this price does not say what it is for: 9.80 sheet"),
    ],
)
def test_prices_that_say_too_little(text: str, message: str) -> None:
    assert messages(project(hardware={"hinge": written.Hardware(price=text)})) == [message]


@pytest.mark.parametrize(
    ("given", "message"),
    [
        ({"units": "inch", "nearest": "1/10 in"}, "lengths can't be shown to the nearest 1/10 in"),
        ({"units": "millimetre", "nearest": "0.2 mm"}, "lengths can't be shown to the nearest 0.2 mm"),
        ({"units": "inch", "nearest_other": "2 mm"}, "lengths can't be shown to the nearest 2 mm"),
        ({"nearest": "0"}, "lengths can't be shown to the nearest 0"),
    ],
)
def test_steps_that_lengths_can_not_be_shown_to(given: dict[str, object], message: str) -> None:
    assert messages(project(**given)) == [message]


def test_how_finely_lengths_are_shown() -> None:
    inches = plan_of(project(units="inch")).precision
    assert (inches.inch, inches.millimetre) == (Fraction(127, 160), Fraction(1, 10))
    millimetres = plan_of(project(units="millimetre")).precision
    assert (millimetres.inch, millimetres.millimetre) == (Fraction(127, 160), Fraction(1, 2))
    finer = plan_of(project(units="inch", nearest="1/64 in", nearest_other="1 mm")).precision
    assert (finer.inch, finer.millimetre) == (Fraction(127, 320), Fraction(1))


@pytest.mark.parametrize(
    ("given", "along", "message"),
    [
        ({"grain": ""}, 2440, ""),
        ({"grain": "along 1220 mm"}, 1220, ""),
        ({"grain": "none"}, None, ""),
        ({"grain": "along 4 ft"}, None, "the sheet has no side of ≈ 1219 mm"),
        ({"grain": "across"}, None, "the grain can't run across"),
    ],
)
def test_grain_of_a_sheet(given: dict[str, Any], along: int | None, message: str) -> None:
    sheet = project(
        stock={"ply": written.Stock(kind="sheet", thickness="6", sheet=("1220", "2440"), **given)}
    )
    assert messages(sheet) == ([message] if message else [])
    if not message:
        assert plan_of(sheet).stock["ply"].grain_along == along
