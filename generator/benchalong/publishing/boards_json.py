"""Layouts for programs: what is cut from each board, in which order."""

from __future__ import annotations

from benchalong.publishing.plain import Json, Plain
from benchalong.workings.blanks.model import Blanks
from benchalong.workings.boards.model import Boards, Group, SawCut, Sawn, Spot, Unused


def layouts_json(boards: Boards, blanks: Blanks, plain: Plain) -> list[Json]:
    says = _Says(blanks, plain)
    return [says.group(group) for group in boards.groups]


class _Says:
    def __init__(self, blanks: Blanks, plain: Plain) -> None:
        self._blanks, self._plain = blanks, plain

    def group(self, group: Group) -> Json:
        return {
            "id": group.id,
            "stock": group.stock,
            "called": group.called,
            "thickness": self._plain.length(group.thickness),
            "boards": [self._board(board) for board in group.boards],
            "counts": group.counts,
            "reached": group.reached,
            "lower_bound": group.least,
            "proven": group.is_proven,
            "turns": group.turns,
            "by_area": group.by_area,
            "ended_early": group.ended_early,
            "left_out": [{"blank": blank, "count": count} for blank, count in group.left_out],
            "too_large": list(group.too_large),
            "own": group.is_own,
            "all_tried": group.are_all_tried,
            "to_buy": [self._board(board) for board in group.more],
            "unused": [self._unused(each) for each in group.unused],
        }

    def _board(self, board: Sawn) -> Json:
        return {
            "number": board.number,
            "length": self._plain.length(board.length),
            "width": self._plain.length(board.width),
            "there": board.is_there,
            "note": board.note,
            "cut_from": self._plain.maybe(board.cut_from),
            "parts": [
                {
                    "blank": laid.blank,
                    "parts": list(self._blanks.by_id[laid.blank].parts),
                    "match": laid.match,
                    "turned": laid.is_turned,
                    **self._spot(laid.at),
                }
                for laid in board.laid
            ],
            "cuts": [self._cut(cut) for cut in board.cuts],
            "left_over": [self._spot(spot) for spot in board.left_over],
            "keep_clear": [self._spot(spot) for spot in board.keep_clear],
        }

    def _unused(self, unused: Unused) -> Json:
        return {
            "length": self._plain.length(unused.length),
            "width": self._plain.length(unused.width),
            "thickness": self._plain.maybe(unused.thickness),
            "count": unused.count,
            "note": unused.note,
        }

    def _cut(self, cut: SawCut) -> Json:
        return {
            "number": cut.number,
            "way": cut.way,
            "at": self._plain.length(cut.at),
            "of": self._spot(cut.of),
            "frees": list(cut.frees),
            "trims": cut.is_trim,
        }

    def _spot(self, spot: Spot) -> Json:
        length = self._plain.length
        return {
            "x": length(spot.x),
            "y": length(spot.y),
            "length": length(spot.length),
            "width": length(spot.width),
        }
