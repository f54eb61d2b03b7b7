"""Spares, test pieces, and what must match: each name led to its parts and copies."""

from __future__ import annotations

from typing import cast

from benchalong.ground.marks import Path
from benchalong.ground.words import nearest_words
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rough import How, Match, TestPiece
from benchalong.plan.stock import in_words
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE


def take_matches(draft: Draft) -> Draft:
    """Adds `test_pieces` and `matches`; spares and what is chosen at the bench are only looked over."""
    sums = Reckoning(draft)
    project = draft.written
    for name in project.spares:
        sums.knows("parts", name, (PROJECT_FILE, "spares", name), among=project.parts, on="key")
    for index, name in enumerate(project.chosen_at_the_bench):
        sums.knows("parts", name, (PROJECT_FILE, "chosen_at_the_bench", index), among=project.parts)
    pieces = {name: _test_piece(name, piece, sums) for name, piece in project.test_pieces.items()}
    matches = {name: _match(name, match, sums) for name, match in project.matches.items()}
    return sums.done(
        test_pieces={name: piece for name, piece in pieces.items() if piece is not None},
        matches={name: match for name, match in matches.items() if match is not None},
    )


def _test_piece(name: str, piece: written.TestPiece, sums: Reckoning) -> TestPiece | None:
    path: Path = (PROJECT_FILE, "test_pieces", name)
    is_known = sums.knows("stock", piece.stock, (*path, "stock"), among=sums.draft.written.stock)
    sizes = {
        key: None if text is None else sums.size_of_wood(text, (*path, key), f"the {key}")
        for key, text in (("thickness", piece.thickness), ("width", piece.width), ("length", piece.length))
    }
    stock = sums.draft.stock.get(piece.stock)
    thickness = sizes["thickness"] if piece.thickness is not None else stock.thickness if stock else None
    if is_known and stock and stock.thickness is None and piece.thickness is None:
        message = f"{name} has no thickness, and neither has {piece.stock}"
        sums.say(path, message, "thickness: as the parts it stands in for")
    width, length = sizes["width"], sizes["length"]
    if not is_known or thickness is None or width is None or length is None:
        return None
    called = piece.name or in_words(name)
    return TestPiece(name, called, piece.stock, thickness, width, length, piece.count, piece.purpose)


def _match(name: str, match: written.Match, sums: Reckoning) -> Match | None:
    path: Path = (PROJECT_FILE, "matches", name)
    parts: list[str] = []
    marks: list[str] = []
    for index, word in enumerate(match.parts):
        found = _copies(word, (*path, "parts", index), sums)
        if found is None:
            return None
        parts.append(found[0])
        marks.extend(found[1])
    stocks = dict.fromkeys(sums.draft.parts[part].stock for part in parts if part in sums.draft.parts)
    if len(stocks) > 1:
        message = f"these come from {' and '.join(stocks)}"
        sums.say((*path, "parts"), message, "parts from one stock")
        return None
    if len(parts) < len(match.parts) or not match.how:
        return None
    return Match(name, cast(How, match.how), tuple(parts), tuple(marks), match.show_side, match.note)


def _copies(word: str, path: Path, sums: Reckoning) -> tuple[str, tuple[str, ...]] | None:
    """The part and its copies that a word names: a part means all of them, a mark one."""
    draft = sums.draft
    if word in draft.written.parts:
        return (word, draft.parts[word].marks) if word in draft.parts else None
    by_mark = {mark: part.id for part in draft.parts.values() for mark in part.marks}
    if word in by_mark:
        return by_mark[word], (word,)
    if draft.problems or sums.found:
        return None  # marks may be lacking for another reason, which has been said
    among = (*draft.written.parts, *by_mark)
    sums.say(
        path,
        f"there is no part and no mark called {word}",
        "a part, or the mark of a copy: LD/P",
        nearest_words(word, among),
    )
    return None
