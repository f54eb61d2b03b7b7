"""Copies, extent, cut list, what touches what, and what is never used."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from benchalong.ground.marks import at
from benchalong.plan.turns import UNTURNED
from benchalong.reading import written
from benchalong.workings.copies import place_copies
from benchalong.workings.cut_list import list_cuts
from benchalong.workings.extent import Sides, measure_extent
from benchalong.workings.never_used import find_unused
from benchalong.workings.touched import follow_touches
from plan.by_hand import ONE_STAGE, part, plan_of, project, sizes, step
from workings.plans import NOTHING, two_doors


def mm(*lengths: int) -> tuple[Fraction, ...]:
    return tuple(Fraction(length) for length in lengths)


def test_every_copy_in_the_order_written() -> None:
    copies, findings = place_copies(two_doors(), NOTHING)
    assert [copy.mark for copy in copies] == ["L/H", "L/M", "L/B", "R/H", "R/M", "R/B"]
    assert {copy.assemblies for copy in copies} == {("pair", "door")}
    assert findings == ()


def test_a_copy_is_turned_and_moved() -> None:
    copies = {copy.mark: copy for copy in place_copies(two_doors(), NOTHING)[0]}
    left, right = copies["L/H"], copies["R/H"]
    assert left.turn == ((0, 1, 0), (0, 0, 1), (1, 0, 0))
    assert left.at == mm(0, 0, 0)
    assert right.turn == left.turn, "a plain board and its mirror image are the same piece of wood"
    assert right.at == mm(602 - 50, 0, 0)


def test_no_copies_while_nothing_is_placed() -> None:
    plan = plan_of(project(parts={"rail": part(count=2)}))
    assert place_copies(plan, NOTHING) == ((), ())
    assert measure_extent(plan, NOTHING) == (None, ())


def test_how_large_it_is() -> None:
    extent, _ = measure_extent(two_doors(), NOTHING)
    assert extent is not None
    assert extent.piece == Sides(*mm(602, 20, 400))
    assert extent.assemblies["door"] == Sides(*mm(300, 20, 400))
    assert UNTURNED == ((1, 0, 0), (0, 1, 0), (0, 0, 1))


def test_the_cut_list_goes_by_stock_and_thickness_the_thickest_first() -> None:
    groups = list_cuts(two_doors(), NOTHING)[0].groups
    assert [(group.stock, int(group.thickness), [row.part for row in group.rows]) for group in groups] == [
        ("oak", 25, ["ledge"]),
        ("oak", 20, ["stile", "rail"]),
        ("ply", 6, ["panel"]),
    ]


def test_the_cut_list_counts_marks_and_measures_shoulders() -> None:
    rows = {row.part: row for group in list_cuts(two_doors(), NOTHING)[0].groups for row in group.rows}
    assert (rows["rail"].count, rows["rail"].marks) == (2, ("L/B", "R/B"))
    assert rows["rail"].shoulder_length == Fraction(200)
    assert rows["rail"].length == Fraction(220)
    assert (rows["stile"].count, rows["stile"].shoulder_length) == (4, None)
    assert (rows["panel"].count, rows["panel"].marks) == (2, ())


def test_no_part_is_lost_in_the_cut_list() -> None:
    plan = two_doors()
    rows = [row for group in list_cuts(plan, NOTHING)[0].groups for row in group.rows]
    assert sorted(row.part for row in rows) == sorted(plan.parts)
    assert sum(row.count for row in rows) == sum(part.count for part in plan.parts.values())


def asked(name: str, when: str, status: str = "answered") -> written.Question:
    return written.Question(name, f"questions/{name}.md", step="cut", when=when, status=status)


def test_what_touches_what() -> None:
    plan = plan_of(
        project(
            parts={"rail": part(count=1), "lid": part(count=1)},
            stages=ONE_STAGE,
            steps=(
                step(does=(written.Does("cut", ("rail", "lid")),)),
                step(id="sand", file="steps/02-sand.md", number=2, parts=("rail",)),
            ),
            questions=(asked("a", "2026-01-01"), asked("b", "2026-03-01"), asked("c", "2026-02-01", "open")),
        )
    )
    touched, _ = follow_touches(plan, NOTHING)
    assert touched.steps == {"rail": ("cut", "sand"), "lid": ("cut",)}
    assert touched.questions == {"cut": ("c", "b", "a")}
    assert follow_touches(two_doors(), NOTHING)[0].assemblies == {"stile": ("door",), "rail": ("door",)}


def unused(plan_project: written.Project) -> list[tuple[str, str, str]]:
    findings = find_unused(plan_of(plan_project), NOTHING)[1]
    assert {finding.code for finding in findings} <= {"never-used"}
    return [(finding.level, finding.subject, finding.message) for finding in findings]


def full() -> written.Project:
    return project(
        sizes=sizes(wide="60", spare="3"),
        stock={"oak": written.Stock(kind="board", thickness="20"), "elm": written.Stock(kind="board")},
        parts={"rail": part("wide", count=1)},
        hardware={"hinge": written.Hardware(), "knob": written.Hardware()},
        jigs={"fence": written.Jig(), "block": written.Jig()},
        stages={**ONE_STAGE, "later": written.Stage(("Later",))},
        steps=(step(does=(written.Does("fit hardware", ("hinge",)),), jigs=("fence",)),),
    )


def test_what_is_named_and_never_used() -> None:
    assert unused(full()) == [
        ("doubt", "spare", "the size spare is used nowhere"),
        ("doubt", "elm", "no part is made from the stock elm"),
        ("doubt", "knob", "no step uses the hardware knob"),
        ("doubt", "block", "no step uses the jig block"),
        ("doubt", "later", "no step belongs to the stage later"),
    ]


def test_a_size_that_only_a_text_shows_is_used() -> None:
    from benchalong.ground.prose import Hole

    shown = replace(full(), about=("It is ", Hole("size", "spare", at("project.yaml", "about"))))
    assert "spare" not in {subject for _, subject, _ in unused(shown)}


def test_hardware_and_jigs_may_wait_for_the_first_step() -> None:
    assert {subject for _, subject, _ in unused(replace(full(), steps=()))} == {"spare", "elm"}


def test_what_follows_from_an_unused_size_is_no_use_of_it_by_itself() -> None:
    chain = replace(full(), sizes=sizes(wide="60", a="3", b="a + 1"))
    assert {subject for _, subject, _ in unused(chain)} >= {"b"}
