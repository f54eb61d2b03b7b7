"""Plans for the workings' tests, resolved from what an author would write."""

from __future__ import annotations

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading import written
from benchalong.workings.cut_check import check_cuts
from benchalong.workings.working import Worked
from plan.by_hand import assembly, nested, part, placed, plan_of, project, sizes

NOTHING = Worked()


def cut(kind: str, *on: str, **sizes_of_cut: str) -> written.Cut:
    """`from_` stands for `from`, which is a word of Python's."""
    return written.Cut(kind, on, {key.rstrip("_"): size for key, size in sizes_of_cut.items()})


def cut_findings(*cuts: written.Cut, **named: str) -> list[Finding]:
    """Findings on one part, `rail`, of 400 x 60 x 20 mm, the sizes `tall`, `wide`, `thick` its own."""
    own = {"tall": "400", "wide": "60", "thick": "20"} | named
    stock = {"oak": written.Stock(kind="board", thickness="thick")}
    rail = part("wide", "tall", count=1, cuts=cuts, name="Rail")
    plan = plan_of(project(stock=stock, sizes=sizes(**own), parts={"rail": rail}))
    return list(check_cuts(plan, NOTHING)[1])


def two_doors() -> Plan:
    """A piece of two doors, the right one mirrored, each of two stiles and a rail with tongues."""
    tongues = tuple(cut("tongue", end, thickness="6", length="10") for end in ("end a", "end b"))
    return plan_of(
        project(
            stock={
                "oak": written.Stock(kind="board", thickness="20"),
                "ply": written.Stock(kind="sheet", thickness="6", sheet=("1220", "2440")),
            },
            parts={
                "panel": written.Part(stock="ply", width="200", length="300", count=2),
                "rail": part("50", "220", cuts=tongues),
                "stile": part("50", "400"),
                "ledge": part("50", "600", thickness="25", count=1),
            },
            assemblies={
                "door": assembly(
                    placed("stile", mark="H"),
                    placed("stile", ("250", "0", "0"), mark="M", along="down"),
                    placed("rail", ("40", "0", "0"), mark="B", along="right"),
                ),
                "pair": assembly(
                    nested("door", mark="L"),
                    nested("door", ("302", "0", "0"), mark="R", mirror="left to right"),
                ),
            },
        )
    )
