"""What is sawn from what, for `plan.json`: what the shop reckons with, boards, test pieces, matches."""

from __future__ import annotations

from benchalong.plan.rough import Allowance, Board, Match, Price, Sawing, Strips, TestPiece
from benchalong.publishing.plain import Json, Plain, number_text


def price_json(price: Price | None) -> Json | None:
    return None if price is None else {"amount": number_text(price.amount), "per": price.per}


class RoughSays:
    """Each noun as plain data."""

    def __init__(self, plain: Plain) -> None:
        self.plain = plain

    def sawing(self, sawing: Sawing) -> Json:
        length, jointer, planer = self.plain.length, sawing.jointer, sawing.planer
        return {
            "kerf": length(sawing.kerf),
            "trim": length(sawing.trim),
            "turns": sawing.turns,
            "resaw": {"kerf": length(sawing.resaw_kerf), "clean_up": length(sawing.clean_up)},
            "jointer": {
                "width": length(jointer.width),
                "shortest": length(jointer.shortest),
                "narrowest": length(jointer.narrowest),
            },
            "planer": {
                "width": length(planer.width),
                "shortest": length(planer.shortest),
                "thinnest": length(planer.thinnest),
            },
            "car": self.plain.maybe(sawing.car),
            "allowances": [
                {"of": kind, "allowance": self.allowance(each)} for kind, each in sawing.allowances.items()
            ],
            "assumed": sorted(sawing.assumed),
        }

    def allowance(self, allowance: Allowance) -> Json:
        return {name: self.plain.maybe(getattr(allowance, name)) for name in ("length", "width", "thickness")}

    def strips(self, strips: Strips | None) -> Json | None:
        if strips is None:
            return None
        return {"is_glued": strips.is_glued, "most": self.plain.maybe(strips.most), "count": strips.count}

    def board(self, board: Board) -> Json:
        length = self.plain.length
        return {
            "stock": board.stock,
            "length": length(board.length),
            "width": length(board.width),
            "thickness": self.plain.maybe(board.thickness),
            "count": board.count,
            "defects": [
                {
                    "at": [length(defect.along), length(defect.across)],
                    "length": length(defect.length),
                    "width": length(defect.width),
                    "what": defect.what,
                }
                for defect in board.defects
            ],
            "sapwood": [{"edge": strip.edge, "width": length(strip.width)} for strip in board.sapwood],
            "price": price_json(board.price),
            "note": board.note,
        }

    def test_piece(self, piece: TestPiece) -> Json:
        return {
            "id": piece.id,
            "name": piece.name,
            "stock": piece.stock,
            "thickness": self.plain.length(piece.thickness),
            "width": self.plain.length(piece.width),
            "length": self.plain.length(piece.length),
            "count": piece.count,
            "for": piece.purpose,
        }

    def match(self, match: Match) -> Json:
        return {
            "id": match.id,
            "how": match.how,
            "parts": list(match.parts),
            "marks": list(match.marks),
            "show_side": match.show_side,
            "note": match.note,
        }
