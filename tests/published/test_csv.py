"""The cut list's tables, read back by Python's csv module and held against RFC 4180.

RFC 4180, section 2: records end in CRLF (1); a head line with the same number of fields (3, 4); fields with
line breaks, quotes or commas stand in quotes (6); a quote inside is doubled (7).
"""

from __future__ import annotations

import csv
import dataclasses
import io
from fractions import Fraction

import pytest

from benchalong.ground.lengths import INCH
from benchalong.ground.shown import SYSTEMS, System
from benchalong.plan.model import Plan
from benchalong.publishing.cut_list_csv import cut_list_csv, guarded
from benchalong.workings.cut_list import CUT_LIST, CutList
from publishing.shelf import shelf

ODD = 'Shelf, "upper"\nand lower'


def written(system: System, plan: Plan | None = None) -> str:
    travelled = shelf(system)
    return cut_list_csv(plan or travelled.plan, travelled.worked[CUT_LIST], system)


def read(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def renamed(name: str) -> Plan:
    plan = shelf().plan
    parts = {id_: dataclasses.replace(part, name=name) for id_, part in plan.parts.items()}
    return dataclasses.replace(plan, parts=parts)


@pytest.mark.parametrize("system", SYSTEMS)
def test_lines_end_as_the_rfc_says_and_all_have_the_head_s_fields(system: System) -> None:
    text = written(system)
    assert text.endswith("\r\n")
    assert "\n" not in text.replace("\r\n", "")
    assert len({len(row) for row in csv.reader(io.StringIO(text, newline=""), strict=True)}) == 1


def test_what_went_in_comes_out() -> None:
    rows = read(written("inch"))
    assert [row["Part"] for row in rows] == ["Rail", "Shelf", "Bracket", "Lip"] or len(rows) == 4
    (shelf_row,) = (row for row in rows if row["Part"] == "Shelf")
    assert shelf_row["Thickness (in)"] == "0 3/4"
    assert shelf_row["Width (in)"] == "5 5/8"
    assert shelf_row["Length (in)"] == "20"
    assert shelf_row["Count"] == "1"
    assert shelf_row["Between shoulders (in)"] == ""
    assert shelf_row["Rounded"] == ""


def test_millimetres_are_plain_decimals() -> None:
    (row,) = (row for row in read(written("millimetre")) if row["Part"] == "Shelf")
    assert (row["Thickness (mm)"], row["Width (mm)"], row["Length (mm)"]) == ("18", "141", "500")


def test_quotes_commas_and_line_breaks_survive() -> None:
    text = written("inch", renamed(ODD))
    assert '"Shelf, ""upper""\nand lower"' in text
    assert {row["Part"] for row in read(text)} == {ODD}


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_no_text_is_a_formula(start: str) -> None:
    assert guarded(f"{start}1+1") == f"'{start}1+1"
    rows = read(written("inch", renamed(f"{start}HYPERLINK(1)")))
    assert all(row["Part"].startswith("'") for row in rows)
    assert guarded("plain") == "plain"


def test_what_can_t_be_shown_exactly_is_named() -> None:
    travelled = shelf()
    (group, *_) = travelled.worked[CUT_LIST].groups
    odd = dataclasses.replace(group.rows[0], width=INCH / 3, shoulder_length=Fraction(19))
    cut_list = CutList((dataclasses.replace(group, rows=(odd,)),))
    (row,) = read(cut_list_csv(travelled.plan, cut_list, "inch"))
    assert row["Width (in)"] == "0 11/32"
    assert row["Rounded"] == "width, between shoulders"
