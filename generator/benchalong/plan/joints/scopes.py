"""In which assembly a joint is worked out: the smallest that holds both its sides, before it is turned."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchalong.plan.draft import Draft
from benchalong.plan.joints.member import Member
from benchalong.plan.model import Assembly
from benchalong.plan.walk import walk


def members_of(assembly: str, draft: Draft) -> tuple[Member, ...]:
    """Every copy in an assembly, nested ones too, in the assembly's own directions."""
    return tuple(
        Member(
            standing.of,
            standing.mark,
            standing.assemblies[-1],
            draft.boxes[standing.of],
            standing.turn,
            standing.at,
            standing.tilt,
        )
        for standing in walk(draft.assemblies, assembly)
        if standing.is_part and standing.of in draft.boxes
    )


def is_called(member: Member, who: str, scope: str) -> bool:
    """Whether a part's name, a mark (`LD/H`) or an assembly and mark (`door/H`) means this copy."""
    if "/" not in who:
        return who in (member.part, member.mark)
    own_mark = member.mark.rpartition("/")[2]
    return who in (member.mark, f"{scope}/{member.mark}", f"{member.directly_in}/{own_mark}")


def smallest(holds: Mapping[str, bool], assemblies: Mapping[str, Assembly]) -> Iterator[str]:
    """The assemblies that hold what is asked, less those with such a one inside them."""
    for name, does_hold in holds.items():
        inner = {standing.of for standing in walk(assemblies, name) if not standing.is_part} - {name}
        if does_hold and not any(holds.get(other) for other in inner):
            yield name
