"""How large is each piece first cut out, and which come out of one?"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from itertools import zip_longest

from benchalong.ground.problems import Finding
from benchalong.plan.model import PartId, Plan
from benchalong.plan.rough import Match
from benchalong.workings.blanks.checks import look_at_blanks
from benchalong.workings.blanks.cuttings import (
    Cutting,
    alone,
    is_too_short,
    rough_sizes,
    short_ones,
    together,
)
from benchalong.workings.blanks.model import Blank, Blanks, Gives, Matched, Reason
from benchalong.workings.blanks.reckoning import Reckoned
from benchalong.workings.blanks.stacks import SPARE, Piece, Stack, stacks_of, test_stacks
from benchalong.workings.working import Worked, Working

PARTED = {"end to end": "across", "side by side": "along"}
ONE_BOARD = ("end to end", "side by side", "same board")
"""Matches that ask for one board."""


def cut_out(plan: Plan, _: Worked) -> tuple[Blanks, tuple[Finding, ...]]:
    reckoned = Reckoned(plan)
    stacks = {part.id: stacks_of(reckoned, part, _book(plan, part.id)) for part in plan.parts.values()
              if plan.stock[part.stock].kind != "bought"}  # fmt: skip
    cuttings = list(_cuttings(reckoned, stacks))
    for piece in plan.test_pieces.values():
        cuttings += short_ones(reckoned, test_stacks(reckoned, piece))
    blanks = _blanks(reckoned, cuttings)
    return blanks, tuple(look_at_blanks(reckoned, blanks, stacks))


def _book(plan: Plan, part: PartId) -> list[str]:
    """The marks of its copies that are opened like a book."""
    found = [match for match in plan.matches.values() if match.how == "book match" and part in match.parts]
    return list(
        dict.fromkeys(mark for match in found for mark in match.marks if mark in plan.parts[part].marks)
    )


def _cuttings(reckoned: Reckoned, stacks: dict[PartId, list[Stack]]) -> Iterator[Cutting]:
    """What matches first, then what is kept together, then the rest: short pieces together, others alone."""
    left = {part: list(some) for part, some in stacks.items()}
    for match in reckoned.plan.matches.values():
        if match.how in ONE_BOARD:
            yield from _matched(reckoned, match, left)
    for leader, some in _kept_together(reckoned, left).items():
        called = reckoned.plan.parts[leader].name.lower()
        yield from together(reckoned, some, Reason(f"in one piece with {called} until both are milled"))
    yield from short_ones(reckoned, [stack for some in left.values() for stack in some])


def _matched(reckoned: Reckoned, match: Match, left: dict[PartId, list[Stack]]) -> Iterator[Cutting]:
    """Takes them out of what is left, in the order of the match."""
    found = sorted(
        (stack for part in dict.fromkeys(match.parts) for stack in left[part] if _is_in(stack, match)),
        key=lambda stack: _place(stack, match),
    )
    for part in match.parts:
        left[part] = [stack for stack in left[part] if stack not in found]
    is_short = any(is_too_short(reckoned, stack) for stack in found)
    if match.how == "end to end" and is_short:
        why = Reason("in one piece, so that the grain runs on from one to the next")
        yield from together(reckoned, found, why, match.id)
    else:
        yield from alone(found, match.id)


def _is_in(stack: Stack, match: Match) -> bool:
    marks = {piece.mark for piece in stack.pieces}
    return bool(marks.intersection(match.marks)) or (marks == {""} and stack.pieces[0].part in match.parts)


def _place(stack: Stack, match: Match) -> int:
    marks = [match.marks.index(piece.mark) for piece in stack.pieces if piece.mark in match.marks]
    return min(marks, default=len(match.marks))


def _kept_together(reckoned: Reckoned, left: dict[PartId, list[Stack]]) -> dict[PartId, list[Stack]]:
    """By the part the others stay with, one of each in turn; takes them out of what is left."""
    groups: defaultdict[PartId, list[PartId]] = defaultdict(list)
    for part in left:
        if leader := reckoned.plan.parts[part].rough_with:
            groups[leader].append(part)
    found = {}
    for leader, parts in groups.items():
        in_turn = zip_longest(*(left.get(part, []) for part in (leader, *parts)))
        found[leader] = [stack for some in in_turn for stack in some if stack is not None]
        left.update({part: [] for part in (leader, *parts)})
    return found


# cuttings as blanks


def _blanks(reckoned: Reckoned, cuttings: Iterable[Cutting]) -> Blanks:
    alike: defaultdict[object, list[Cutting]] = defaultdict(list)
    for cutting in cuttings:
        alike[_key(reckoned, cutting)].append(cutting)
    taken: set[str] = set()
    made = [(_blank(reckoned, same, taken), same) for same in alike.values()]
    rank = {stock: number for number, stock in enumerate(reckoned.plan.stock)}
    blanks = sorted(
        (blank for blank, _ in made),
        key=lambda blank: (rank[blank.stock], -blank.thickness, -blank.length, -blank.width, blank.id),
    )
    return Blanks(tuple(blanks), tuple(_in_one_board(reckoned.plan, made)), _rough_of(blanks))


def _key(reckoned: Reckoned, cutting: Cutting) -> tuple[object, ...]:
    first = cutting.stacks[0]
    length, width, _ = rough_sizes(reckoned, cutting)
    held = tuple(sorted((piece.part, piece.test_piece) for piece in _pieces(cutting)))
    return (
        first.stock.id,
        first.rough.size,
        first.rough.leaves,
        length,
        width,
        cutting.lie,
        cutting.match,
        held,
    )


def _pieces(cutting: Cutting) -> Iterator[Piece]:
    return (piece for stack in cutting.stacks for piece in stack.pieces)


def _blank(reckoned: Reckoned, same: list[Cutting], taken: set[str]) -> Blank:
    cutting, first = same[0], same[0].stacks[0]
    length, width, larger = rough_sizes(reckoned, cutting)
    rough = max((stack.rough for stack in cutting.stacks), key=lambda each: each.size.thickness)
    pieces = [piece for each in same for piece in _pieces(each)]
    why = dict.fromkeys(
        (*cutting.why, *(reason for stack in cutting.stacks for reason in stack.why), *larger)
    )
    return Blank(
        id=_free(pieces[0].part or pieces[0].test_piece, taken),
        stock=first.stock.id,
        length=length,
        width=width,
        thickness=rough.size.thickness,
        called=rough.size.called,
        quarters=rough.size.quarters,
        count=len(same),
        gives=tuple(_gives(reckoned.plan, pieces)),
        why=tuple(why),
        grain=first.grain,
        lie=cutting.lie,
        pieces=len(cutting.stacks),
        leaves=rough.leaves,
        match=cutting.match,
    )


def _free(name: str, taken: set[str]) -> str:
    found, number = name, 1
    while found in taken:
        number += 1
        found = f"{name}-{number}"
    taken.add(found)
    return found


def _gives(plan: Plan, pieces: list[Piece]) -> Iterator[Gives]:
    of: defaultdict[tuple[str, str], list[Piece]] = defaultdict(list)
    for piece in pieces:
        of[piece.part, piece.test_piece].append(piece)
    for (part, test_piece), some in of.items():
        marks = dict.fromkeys(piece.mark for piece in some if piece.mark not in ("", SPARE))
        yield Gives(
            part,
            plan.parts[part].name if part else plan.test_pieces[test_piece].name,
            len(some),
            tuple(marks),
            sum(piece.mark == SPARE for piece in some),
            some[0].strips,
            test_piece,
        )


def _in_one_board(plan: Plan, made: list[tuple[Blank, list[Cutting]]]) -> Iterator[Matched]:
    for match in plan.matches.values():
        found = [
            (_place(cutting.stacks[0], match), blank.id, cutting.stacks[0].pieces[0].strips)
            for blank, same in made
            for cutting in same
            if cutting.match == match.id
        ]
        for ids in _strip_by_strip(sorted(found, key=lambda each: each[0])):
            if len(ids) > 1:
                yield Matched(match.id, match.how, ids, PARTED.get(match.how, ""))  # type: ignore[arg-type]


def _strip_by_strip(found: list[tuple[int, str, int]]) -> Iterator[tuple[str, ...]]:
    """By place, id and number of strips. Of copies that are glued up, the first strip of each comes from one
    board, then the second of each."""
    boards: defaultdict[int, list[str]] = defaultdict(list)
    seen: Counter[int] = Counter()
    for place, name, strips in found:
        boards[seen[place] % strips].append(name)
        seen[place] += 1
    return (tuple(names) for names in boards.values())


def _rough_of(blanks: list[Blank]) -> dict[PartId, tuple[str, ...]]:
    found: defaultdict[PartId, list[str]] = defaultdict(list)
    for blank in blanks:
        for part in blank.parts:
            found[part].append(blank.id)
    return {part: tuple(ids) for part, ids in found.items()}


BLANKS: Working[Blanks] = Working("blanks", "How large is each piece first cut out?", cut_out)
