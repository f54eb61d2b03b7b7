"""Is something fitted only when there is no way in for it any more?

What is measured on an assembly after its glue-up goes in last. That is asked of the table that taking apart
is worked out on, with all that is glued drawn together to one body.
"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.clashes import Clashes
from benchalong.workings.closing import drawn_together, joined
from benchalong.workings.jobs.bonds import Bonds, Gluing
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.taking_apart import take_apart
from benchalong.workings.ways_out import Taking


def fitted_too_late(facts: Facts, clashes: Clashes) -> Iterator[Finding]:
    for bonds in facts.bonds.values():
        later = [member for member in bonds.members if member.of in facts.later.get(bonds.assembly, ())]
        glued = [gluing for gluing in bonds.gluings if not gluing.onto]
        apart = facts.apart.get(bonds.assembly)
        if later and glued and apart is not None and not apart.locked:
            shut_out = _shut_out(facts, bonds, glued, clashes)
            for name in dict.fromkeys(member.of for member in later if member.mark in shut_out):
                yield _finding(facts.plan, name, bonds)


def _shut_out(facts: Facts, bonds: Bonds, glued: list[Gluing], clashes: Clashes) -> frozenset[str]:
    """Own marks of the members that can't come out when the rest is glued."""
    taking = Taking.of(
        facts.placed, frozenset((clash.one.number, clash.other.number) for clash in clashes.clashes)
    )
    numbers: dict[str, tuple[int, ...]] = {}
    for member in bonds.members:
        first = [copy.mark for copy in member.copies if _is_first(bonds, copy.mark)]
        inside = [facts.placed.by_mark.get(mark) for mark in first]
        numbers[member.mark] = tuple(lying.number for lying in inside if lying is not None)
    held = {mark: own for mark, own in numbers.items() if own}
    marks = list(held)
    groups = [{marks.index(m.mark) for m in gluing.members if m.mark in held} for gluing in glued]
    bound = [set(group) for group in joined([{n} for n in range(len(marks))] + [g for g in groups if g])]
    ordered = sorted((frozenset(group) for group in bound), key=min)
    locked = take_apart(drawn_together(taking.assembled(held).table, ordered)).locked
    return frozenset(marks[n] for group in locked for number in group for n in ordered[number])


def _is_first(bonds: Bonds, mark: str) -> bool:
    """Whether a copy stands in the first of the assembly's places."""
    return not bonds.places[0] or mark.startswith(f"{bonds.places[0]}/")


def _finding(plan: Plan, name: str, bonds: Bonds) -> Finding:
    part = plan.parts.get(name)
    called = part.name if part else plan.assemblies[name].name
    whole = plan.assemblies[bonds.assembly].name
    return Finding(
        "fitted-too-late",
        "fault",
        Place((PROJECT_FILE, "parts" if part else "assemblies", name, "cut_when")),
        name,
        f"{called} is fitted after {whole} is glued up, and then there is no way in for it",
        f"measure it on the dry assembly: after: dry-assemble {bonds.assembly}",
        {},
        plan.fitted[name].follows,
    )
