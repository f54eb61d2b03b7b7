"""What is sawn from what, for `plan.json`: what the shop reckons with, boards, matches, blanks, purchases."""

from __future__ import annotations

from benchalong.plan.rough import Allowance, Board, Match, Price, Sawing, Strips, TestPiece
from benchalong.publishing.plain import Json, Plain, maybe_number, number_text
from benchalong.workings.blanks.model import Blank, Blanks, Gives
from benchalong.workings.purchases.model import Lumber, Purchases, Sheets, Thing


def price_json(price: Price | None) -> Json | None:
    return None if price is None else {"amount": number_text(price.amount), "per": price.per}


def allowance_json(allowance: Allowance, plain: Plain) -> Json:
    return {name: plain.maybe(getattr(allowance, name)) for name in ("length", "width", "thickness")}


def strips_json(strips: Strips | None, plain: Plain) -> Json | None:
    if strips is None:
        return None
    return {"is_glued": strips.is_glued, "most": plain.maybe(strips.most), "count": strips.count}


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
                {"of": kind, "allowance": allowance_json(each, self.plain)}
                for kind, each in sawing.allowances.items()
            ],
            "assumed": sorted(sawing.assumed),
        }

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

    def blanks(self, blanks: Blanks) -> Json:
        return {
            "blanks": [self.blank(blank) for blank in blanks.blanks],
            "matched": [
                {
                    "match": each.id,
                    "how": each.how,
                    "blanks": list(each.blanks),
                    "parted": each.parted,
                }
                for each in blanks.matched
            ],
        }

    def blank(self, blank: Blank) -> Json:
        length = self.plain.length
        return {
            "id": blank.id,
            "stock": blank.stock,
            "length": length(blank.length),
            "width": length(blank.width),
            "thickness": length(blank.thickness),
            "called": blank.called,
            "count": blank.count,
            "gives": [self.gives(each) for each in blank.gives],
            "why": [
                {"words": reason.words, "lengths": self.plain.lengths(reason.lengths)} for reason in blank.why
            ],
            "grain": blank.grain,
            "lie": blank.lie,
            "pieces": blank.pieces,
            "leaves": blank.leaves,
            "match": blank.match,
        }

    def gives(self, gives: Gives) -> Json:
        return {
            "part": gives.part,
            "name": gives.name,
            "count": gives.count,
            "marks": list(gives.marks),
            "spares": gives.spares,
            "strips": gives.strips,
            "test_piece": gives.test_piece,
        }

    def purchases(self, bought: Purchases) -> Json:
        return {
            "lumber": [self.lumber(line) for line in bought.lumber],
            "sheets": [self.sheets(line) for line in bought.sheets],
            "things": [self.thing(line) for line in bought.things],
            "total": {"amount": float(bought.total), "currency": bought.currency},
            "unpriced": list(bought.unpriced),
        }

    def lumber(self, line: Lumber) -> Json:
        length = self.plain.length
        return {
            "stock": line.stock,
            "name": line.name,
            "called": line.called,
            "thickness": length(line.thickness),
            "board_feet": float(line.board_feet),
            "there_board_feet": float(line.there_board_feet),
            "there_boards": line.there_boards,
            "rack": line.rack,
            "waste": float(line.waste.added),
            "waste_why": line.waste.why,
            "anew_board_feet": line.anew_board_feet,
            "anew_cubic_metres": float(line.anew_cubic_metres),
            "to_buy": [
                {
                    "count": each.count,
                    "length": length(each.length),
                    "width": length(each.width),
                    "cut_to": self.plain.maybe(each.cut_to),
                }
                for each in line.to_buy
            ],
            "for_waste": line.for_waste,
            "buy_board_feet": line.buy_board_feet,
            "buy_cubic_metres": float(line.buy_cubic_metres),
            "longest": length(line.longest),
            "widest": length(line.widest),
            "must_match": list(line.must_match),
            "price": price_json(line.price),
            "cost": maybe_number(line.cost),
        }

    def sheets(self, line: Sheets) -> Json:
        return {
            "stock": line.stock,
            "name": line.name,
            "thickness": self.plain.maybe(line.thickness),
            "called": self.plain.maybe(line.called),
            "square_metres": float(line.area / 1_000_000),
            "there_square_metres": float(line.there_area / 1_000_000),
            "there_pieces": line.there_pieces,
            "rack": line.rack,
            "waste": float(line.waste.added),
            "count": line.count,
            "by": line.by,
            "price": price_json(line.price),
            "cost": maybe_number(line.cost),
        }

    def thing(self, thing: Thing) -> Json:
        return {
            "kind": thing.kind,
            "id": thing.id,
            "name": thing.name,
            "size": thing.size,
            "count": thing.count,
            "there": thing.there,
            "to_buy": thing.to_buy,
            "amount": maybe_number(thing.amount),
            "price": price_json(thing.price),
            "cost": maybe_number(thing.cost),
            "note": thing.note,
        }
