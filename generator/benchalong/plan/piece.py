"""Which assembly is the whole piece, and whether everything stands in it."""

from __future__ import annotations

from benchalong.ground.marks import at
from benchalong.plan.circles import in_order
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rows import entries
from benchalong.plan.walk import copies_of
from benchalong.reading.written import PROJECT_FILE

MOST_COPIES = 10_000
"""Pieces of wood in one piece; beyond that something multiplies that wasn't meant to."""


def find_piece(draft: Draft) -> Draft:
    """Adds `piece`; None while nothing is placed, and when it can't be told."""
    sums = Reckoning(draft)
    piece = _named(sums) if draft.written.piece else _found(sums)
    if piece is not None and are_nested(draft):
        return sums.done(piece=piece if _all_stand_in(piece, sums) and _is_moderate(piece, sums) else None)
    return sums.done()


def _named(sums: Reckoning) -> str | None:
    piece = sums.draft.written.piece
    return (
        piece
        if sums.knows("assemblies", piece, (PROJECT_FILE, "piece"), among=sums.draft.assemblies)
        else None
    )


def _found(sums: Reckoning) -> str | None:
    """The one assembly that stands in no other."""
    assemblies = sums.draft.written.assemblies
    placed = {
        place.of for assembly in assemblies.values() for place in assembly.place if place.kind == "assembly"
    }
    tops = [name for name in assemblies if name not in placed]
    if len(tops) > 1 and not sums.draft.is_lost(PROJECT_FILE, "piece"):
        sums.say(
            at(PROJECT_FILE, "assemblies", tops[1]).key(),
            f"{' and '.join((', '.join(tops[:-1]), tops[-1]))} stand in no other assembly",
            "one that holds all the others, or piece: and its name",
        )
    return tops[0] if len(tops) == 1 else None


def are_nested(draft: Draft) -> bool:
    return not in_order(contents(draft)).circles


def contents(draft: Draft) -> dict[str, list[str]]:
    """What is placed in each assembly, as often as it is, as written."""
    return {
        name: [entry.place.of for entry in entries(assembly.place)]
        for name, assembly in draft.written.assemblies.items()
    }


def _all_stand_in(piece: str, sums: Reckoning) -> bool:
    """Says so where an assembly is not part of the piece."""
    written = sums.draft.written.assemblies
    reached, waiting = {piece}, [piece]
    while waiting:
        inner = {
            place.of for place in written[waiting.pop()].place if place.kind == "assembly"
        } & written.keys()
        waiting.extend(inner - reached)
        reached |= inner
    outside = [name for name in written if name not in reached]
    for name in outside:
        sums.say(
            at(PROJECT_FILE, "assemblies", name).key(),
            f"{name} stands nowhere in the piece {piece}",
            "a place for it, or no such assembly",
        )
    return not outside


def _is_moderate(piece: str, sums: Reckoning) -> bool:
    """Counted before anything is laid out copy by copy."""
    counts = copies_of(contents(sums.draft), piece)
    copies = sum(counts[part] for part in sums.draft.written.parts)
    if max(copies, sum(counts[assembly] for assembly in sums.draft.written.assemblies)) > MOST_COPIES:
        place = at(PROJECT_FILE, "assemblies", piece).key()
        sums.say(place, f"the piece comes to {copies} copies of parts", f"at most {MOST_COPIES}")
        return False
    return True
