"""`plan.json` says all, and its schema promises exactly that."""

from __future__ import annotations

import dataclasses
import json
from fractions import Fraction
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from benchalong.ground.lengths import INCH
from benchalong.ground.marks import at
from benchalong.ground.problems import Finding
from benchalong.ground.shown import System
from benchalong.plan import model, rough
from benchalong.publishing.data_files import schema_text
from benchalong.publishing.plain import Plain
from benchalong.publishing.plan_json import plan_data, plan_json
from benchalong.workings.jobs import model as jobs
from pages.joined import cupboard
from publishing.shelf import shelf

SCHEMA = json.loads(schema_text())


def said(units: System = "inch") -> dict[str, Any]:
    travelled = shelf(units)
    text = plan_json(travelled.plan, travelled.worked, travelled.marks, edition=travelled.edition)
    document: dict[str, Any] = json.loads(text)
    return document


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"


@pytest.mark.parametrize("units", ["inch", "millimetre"])
def test_what_is_written_keeps_the_promise(units: System) -> None:
    assert [error.message for error in Draft202012Validator(SCHEMA).iter_errors(said(units))] == []


def test_a_finding_keeps_it_too() -> None:
    travelled = shelf()
    finding = Finding(
        "a-code", "doubt", at("project.yaml", "sizes", "thick"), "thick", "is odd", "", {"is": INCH}, ("a",)
    )
    worked = dataclasses.replace(travelled.worked, findings=(finding,))
    document = plan_data(travelled.plan, worked, travelled.marks, edition="ab12cd34")
    Draft202012Validator(SCHEMA).validate(document)
    (one,) = document["findings"]
    assert one["file"] == "project.yaml"
    assert one["line"] > 1
    assert one["numbers"]["is"]["exact"] == "127/5"


def test_joints_and_hands_are_said_and_keep_it_too() -> None:
    travelled = cupboard()
    document = plan_data(travelled.plan, travelled.worked, travelled.marks, edition=travelled.edition)
    Draft202012Validator(SCHEMA).validate(document)
    joints = {joint["id"]: joint for joint in document["joints"]}
    sizes = {size["name"]: size["value"]["exact"] for size in joints["frame"]["sizes"]}
    assert sizes["frame.depth"] == "889/80"
    assert joints["frame"]["play"]["end"][0]["exact"] == "127/160"
    assert joints["frame"]["meetings"][0]["takes"] == {"copy": "LD/T", "part": "door_rail", "on": ["end a"]}
    shapes = {shape["id"]: shape for shape in document["shapes"]}
    assert [(shapes[one]["hand"], shapes[one]["marks"]) for one in ("side", "side-2")] == [
        ("left", ["C/SL"]),
        ("right", ["C/SR"]),
    ]
    assert shapes["door_stile"]["turned"] == ["LD/M", "RD/H"]
    assert {cut["joint"] for cut in shapes["door_stile"]["cuts"]} == {"frame"}
    assert "Do any two pieces of wood lie in each other, and how deep?" in document["checked"]


def _tables(schema: Any) -> list[dict[str, Any]]:
    if isinstance(schema, list):
        return [found for entry in schema for found in _tables(entry)]
    if not isinstance(schema, dict):
        return []
    inner = [found for entry in schema.values() for found in _tables(entry)]
    return [schema, *inner] if "properties" in schema and "type" in schema else inner


def test_every_table_is_closed_and_whole() -> None:
    tables = _tables(SCHEMA)
    assert len(tables) > 20
    for table in tables:
        assert table["additionalProperties"] is False
        optional = {"part", "assembly"} & set(table["properties"]) if "turn" in table["properties"] else set()
        assert set(table["required"]) | optional == set(table["properties"])


def test_the_tables_that_were_promised_are_there() -> None:
    promised = [
        "piece",
        "sizes",
        "stock",
        "parts",
        "joints",
        "assemblies",
        "stages",
        "steps",
        "questions",
        "findings",
        "changes",
    ]
    assert set(promised) <= set(said())


@pytest.mark.parametrize(
    ("noun", "table", "elsewhere"),
    [
        (model.Size, "size", {"formula": "typed"}),
        (model.Stock, "stock", {}),
        (model.Part, "part", {"purpose": "for", "shows": "face"}),
        (rough.Sawing, "sawing", {"resaw_kerf": "resaw", "clean_up": "resaw"}),
        (rough.Allowance, "allowance", {}),
        (rough.Strips, "strips", {}),
        (rough.Board, "board", {}),
        (rough.TestPiece, "test_piece", {"purpose": "for"}),
        (rough.Match, "match", {}),
        (model.Shape, "shape", {}),
        (model.Joint, "joint", {}),
        (model.SideOf, "side", {"surfaces": "on"}),
        (model.Cut, "cut", {"kind": "cut", "surfaces": "on", "takes": "sizes", "index": "cut"}),
        (model.Assembly, "assembly", {"placed": "place"}),
        (model.Hardware, "hardware", {}),
        (model.Bore, "bore", {}),
        (model.Seated, "seated", {}),
        (model.Jig, "jig", {"purpose": "for"}),
        (model.Finish, "finish", {}),
        (model.Fitted, "fitted", {}),
        (model.Job, "job", {"kind": "job"}),
        (jobs.Task, "task", {"ways": "tools", "works": "sizes"}),
        (jobs.Setup, "setup", {}),
        (model.Change, "change", {}),
        (model.Stage, "stage", {}),
        (model.Step, "step", {"note_pictures": "note"}),
        (model.Question, "question", {}),
    ],
)
def test_no_field_of_a_noun_is_forgotten(noun: type, table: str, elsewhere: dict[str, str]) -> None:
    """A field added to the plan must be said, or named here with where it is said instead."""
    fields = {elsewhere.get(field.name, field.name) for field in dataclasses.fields(noun)}
    assert fields <= set(SCHEMA["$defs"][table]["properties"])


def test_a_length_is_said_exactly() -> None:
    plain = Plain("inch", shelf().plan.precision)
    assert plain.length(INCH) == {
        "mm": 25.4, "exact": "127/5", "shown": {"inch": "1 in", "millimetre": "25.4 mm"},
    }  # fmt: skip
    assert plain.length(INCH / 3)["exact"] == "127/15"
    assert Fraction(plain.length(INCH / 3)["exact"]) * 3 == INCH


def test_prose_is_said_as_text_as_html_and_with_its_sizes() -> None:
    (step,) = (step for step in said()["steps"] if step["id"] == "mill-and-cut")
    assert "The shelf is 5 5/8 in wide and 20 in long." in step["note"]["text"]
    assert '<a href="parts/rail.html">rail</a>' in step["note"]["html"]
    assert [entry["formula"] for entry in step["note"]["sizes"]][:2] == ["shelf.width", "shelf.length"]


def test_ids_lead_somewhere() -> None:
    document = said()
    ids = {
        table: {entry["id"] for entry in document[table]} for table in ("parts", "stages", "steps", "stock")
    }
    assert all(part["stock"] in ids["stock"] for part in document["parts"])
    assert all(
        step["stage"] in ids["stages"] and set(step["parts"]) <= ids["parts"] for step in document["steps"]
    )
    assert all(question["step"] in ids["steps"] for question in document["questions"])
    assert {row["part"] for group in document["cut_list"] for row in group["rows"]} == ids["parts"]
