"""The boards and sheets that are there already: in the project, and with each builder."""

from __future__ import annotations

import re

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.ground.words import nearest_words
from benchalong.plan.draft import Draft
from benchalong.plan.price import price
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rough import Board, Defect, Edge, Sapwood
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

SAWN = ("board", "sheet")
_SAPWOOD = re.compile(r"(?P<edge>edge a|edge b|both edges) (?P<width>.+)")
_EDGES: dict[str, tuple[Edge, ...]] = {
    "edge a": ("edge a",),
    "edge b": ("edge b",),
    "both edges": ("edge a", "edge b"),
}


def take_boards(draft: Draft) -> Draft:
    """Adds `boards`."""
    sums = Reckoning(draft)
    found = [
        board_of(board, (PROJECT_FILE, "boards", index), sums)
        for index, board in enumerate(draft.written.boards)
    ]
    return sums.done(boards=tuple(board for board in found if board is not None))


def board_of(board: written.Board, path: Path, sums: Reckoning) -> Board | None:
    """The board meant; None when it can't be understood, which is reported."""
    is_known = sums.knows("stock", board.stock, (*path, "stock"), among=sums.draft.written.stock)
    is_known = is_known and _is_sawn(board.stock, (*path, "stock"), sums)
    length = _size(board.length, (*path, "length"), sums)
    width = _size(board.width, (*path, "width"), sums)
    thickness = _size(board.thickness, (*path, "thickness"), sums)
    cost = price(board.price, (*path, "price"), sums)
    sapwood = _sapwood(board.sapwood, (*path, "sapwood"), width, sums)
    box = None if length is None or width is None else (length, width)
    defects = [_defect(each, (*path, "defects", n), box, sums) for n, each in enumerate(board.defects)]
    if not is_known or box is None:
        return None
    kept = tuple(each for each in defects if each is not None)
    return Board(board.stock, *box, thickness, board.count, kept, sapwood, cost, board.note)


def _is_sawn(stock: str, path: Path, sums: Reckoning) -> bool:
    """Whether parts are cut from boards or sheets of it."""
    entries = sums.draft.written.stock
    kind = entries[stock].kind
    if kind in ("", *SAWN):
        return True
    sawn = tuple(name for name, entry in entries.items() if entry.kind in SAWN)
    expected = (
        f"a stock of kind board or sheet: {', '.join(sawn)}" if sawn else "a stock of kind board or sheet"
    )
    sums.say(path, f"{stock} is {kind}, and nothing is sawn from it", expected, nearest_words(stock, sawn))
    return False


def _size(text: str | None, path: Path, sums: Reckoning) -> Length | None:
    return None if text is None else sums.size_of_wood(text, path, f"the {path[-1]}")


def _sapwood(text: str, path: Path, width: Length | None, sums: Reckoning) -> tuple[Sapwood, ...]:
    if not text:
        return ()
    found = _SAPWOOD.fullmatch(" ".join(text.split()))
    if found is None:
        sums.say(
            path, f"this does not say where the sapwood is: {text}", "`edge a 1 in` or `both edges 1 in`"
        )
        return ()
    strip = sums.size_of_wood(found["width"], path, "the sapwood")
    edges = _EDGES[found["edge"]]
    if strip is not None and width is not None and strip * len(edges) >= width:
        sums.say(path, f"the board is {sums.shown(width)} wide, and all of it sapwood", "less than its width")
        return ()
    return () if strip is None else tuple(Sapwood(edge, strip) for edge in edges)


def _defect(
    defect: written.Defect, path: Path, box: tuple[Length, Length] | None, sums: Reckoning
) -> Defect | None:
    at = [sums.length(text, (*path, "at", n)) for n, text in enumerate(defect.at or ())]
    length, width = _size(defect.length, (*path, "length"), sums), _size(defect.width, (*path, "width"), sums)
    if length is None or width is None or len(at) != 2 or at[0] is None or at[1] is None:
        return None
    for corner, side, whole, word in ((at[0], length, 0, "length"), (at[1], width, 1, "width")):
        if box is not None and (corner < 0 or corner + side > box[whole]):
            message = f"this defect reaches from {sums.shown(corner)} to {sums.shown(corner + side)}"
            sums.say(path, message, f"inside the board's {word} of {sums.shown(box[whole])}")
            return None
    return Defect(at[0], at[1], length, width, defect.what)
