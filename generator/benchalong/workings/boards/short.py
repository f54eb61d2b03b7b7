"""Boards that don't suffice: what is left, and what to buy."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.words import counted, in_sentence
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.boards.model import Boards, Group
from benchalong.workings.telling import Telling


def too_little(plan: Plan, blanks: Blanks, boards: Boards) -> tuple[Finding, ...]:
    return tuple(
        _Short(plan, blanks, group).finding() for group in boards.groups if group.is_own and group.left_out
    )


class _Short:
    """One group whose boards don't suffice."""

    def __init__(self, plan: Plan, blanks: Blanks, group: Group) -> None:
        self._plan, self._blanks, self._group = plan, blanks, group
        self._shown = Telling(plan).shown
        self._word = "sheet" if plan.stock[group.stock].kind == "sheet" else "board"

    def finding(self) -> Finding:
        group = self._group
        called = ", ".join(filter(None, (self._plan.stock[group.stock].name, group.called)))
        what = ", ".join(so_many(self._blanks.by_id[blank], count) for blank, count in group.left_out)
        return Finding(
            "boards-too-few",
            "doubt",
            Place((PROJECT_FILE, "stock", group.stock)),
            group.stock,
            f"{called}: the {self._word}s under boards: don't suffice; no room is left for {what}",
            "; ".join(self._remedies()),
            sizes=self._sizes(),
        )

    def _sizes(self) -> tuple[str, ...]:
        """The named sizes of all that is cut from this stock: any of them may be what is too large."""
        parts = {part for blank in self._blanks.of_stock(self._group.stock) for part in blank.parts}
        follows = (names for part in parts for names in self._plan.parts[part].follows.values())
        return tuple(sorted({name for names in follows for name in names}))

    def _remedies(self) -> Iterator[str]:
        if self._group.more:
            yield f"buy {self._to_buy()}, or name larger ones"
        else:
            yield f"name more {self._word}s, or larger ones"
        if self._group.more and self._group.on_none:
            what = ", ".join(
                so_many(self._blanks.by_id[blank], count) for blank, count in self._group.on_none
            )
            yield f"no {self._word} that is sold is large enough for {what}"
        if not self._group.are_all_tried:
            yield "there are ways to share these boards among the thicknesses that weren't tried"

    def _to_buy(self) -> str:
        """`2 boards of 96 in × 6 in`"""
        counts: dict[str, int] = {}
        for board in self._group.more:
            size = f"{self._shown(board.length)} × {self._shown(board.width)}"
            counts[size] = counts.get(size, 0) + 1
        return " and ".join(f"{counted(count, self._word)} of {size}" for size, count in counts.items())


def so_many(blank: Blank, count: int) -> str:
    """`2 of door rail`, `3 strips of top`"""
    names = " and ".join(dict.fromkeys(in_sentence(each.name) for each in blank.gives)) or blank.id
    are_strips = all(each.strips > 1 for each in blank.gives)
    return f"{counted(count, 'strip') if are_strips else count} of {names}"
