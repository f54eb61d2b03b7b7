"""`builders/HANDLE.yaml`: one builder's edition, read and checked; nothing is laid over the plan yet."""

from __future__ import annotations

from benchalong.reading import language, wood
from benchalong.reading.language import Kind
from benchalong.reading.sawing import board
from benchalong.reading.sawing_language import BOARD
from benchalong.reading.tally import Tally
from benchalong.reading.whole_file import whole_file
from benchalong.reading.written import Air, Builder


def builder(file: str, text: str, tally: Tally) -> Builder:
    """The edition in a file; the handle is the file's name."""
    handle = file.rpartition("/")[2].removesuffix(".yaml")
    entry = whole_file(file, text, language.BUILDER, tally)
    if entry is None:
        return Builder(handle=handle, file=file)
    return Builder(
        handle=handle,
        file=file,
        name=entry.text("name"),
        sizes=entry.texts_by_name("sizes", Kind.FORMULAS),
        stock=entry.texts_by_name("stock", Kind.SWAPS),
        boards=entry.list_of("boards", board, BOARD),
        tools=entry.texts("tools"),
        humidity=entry.text("humidity"),
        house=entry.one("house", wood.house, language.HOUSE) or Air(),
        measured=entry.texts_by_name("measured", Kind.FORMULAS),
        note=entry.text("note"),
    )
