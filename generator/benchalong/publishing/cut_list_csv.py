"""The cut list as a table for spreadsheets: RFC 4180, one file for inches and one for millimetres.

Spreadsheets read cells their own way, so two guards stand here. A text that begins like a formula gets
an apostrophe in front, or a stranger's project could run one. A fraction below one inch is written
`0 3/8`: a spreadsheet takes a bare `3/8` for the third of August.
"""

from __future__ import annotations

import csv
import io

from benchalong.ground.lengths import Length
from benchalong.ground.shown import Precision, Shown, System, shown
from benchalong.plan.model import Plan
from benchalong.workings.cut_list import CutList

UNITS: dict[System, str] = {"inch": "in", "millimetre": "mm"}
FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
MEASURES = ("thickness", "width", "length", "shoulder_length")
TITLES = ("Thickness", "Width", "Length", "Between shoulders")


def cut_list_csv(plan: Plan, cut_list: CutList, system: System) -> str:
    """The whole table with a head line; sizes are numbers in the unit the head names."""
    out = io.StringIO(newline="")
    table = csv.writer(out, lineterminator="\r\n")
    table.writerow(
        [
            "Stock",
            "Part",
            "Marks",
            "Count",
            "Spares",
            *(f"{title} ({UNITS[system]})" for title in TITLES),
            "Rounded",
        ]
    )
    for group in cut_list.groups:
        for row in group.rows:
            part = plan.parts[row.part]
            texts = [plan.stock[group.stock].name, part.name, " ".join(row.marks)]
            lengths = [getattr(row, measure) for measure in MEASURES]
            table.writerow(
                [*map(guarded, texts), row.count, row.spares, *_sizes(lengths, system, plan.precision)]
            )
    return out.getvalue()


def guarded(text: str) -> str:
    """The text so that no spreadsheet takes it for a formula."""
    return f"'{text}" if text.startswith(FORMULA_STARTS) else text


def _sizes(lengths: list[Length | None], system: System, precision: Precision) -> list[str]:
    """The sizes, then the names of those that the shown precision can't carry."""
    seen = [None if length is None else shown(length, system, precision) for length in lengths]
    rounded = [title.lower() for title, one in zip(TITLES, seen, strict=True) if one and one.is_rounded]
    return [*(_number(one) for one in seen), ", ".join(rounded)]


def _number(seen: Shown | None) -> str:
    if seen is None:
        return ""
    return f"0 {seen.number}" if "/" in seen.number and " " not in seen.number else seen.number
