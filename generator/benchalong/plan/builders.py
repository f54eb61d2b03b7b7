"""Builders' editions: only looked over here, so that a slip in one is said at once."""

from __future__ import annotations

from benchalong.ground.marks import Path
from benchalong.plan.boards import board_of
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.reading import written


def look_over_builders(draft: Draft) -> Draft:
    """Adds nothing but problems."""
    sums = Reckoning(draft)
    for builder in draft.written.builders:
        _sizes(builder, sums)
        _stock(builder, sums)
        for index, board in enumerate(builder.boards):
            board_of(board, (builder.file, "boards", index), sums)
    return sums.done()


def _sizes(builder: written.Builder, sums: Reckoning) -> None:
    project = sums.draft.written
    for name, formula in builder.sizes.items():
        path: Path = (builder.file, "sizes", name)
        sums.knows("sizes", name, path, among=project.sizes, on="key")
        sums.length(formula, path)
    for name, formula in builder.measured.items():
        path = (builder.file, "measured", name)
        if "." in name:
            sums.knows_dotted(name, path)
        else:
            sums.knows("sizes", name, path, among=project.sizes, on="key")
        sums.length(formula, path)


def _stock(builder: written.Builder, sums: Reckoning) -> None:
    project = sums.draft.written
    for part, stock in builder.stock.items():
        path: Path = (builder.file, "stock", part)
        sums.knows("parts", part, path, among=project.parts, on="key")
        sums.knows("stock", stock, path, among=project.stock)
