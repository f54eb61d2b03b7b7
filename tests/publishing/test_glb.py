"""The model of the piece, read back by hand as the standard lays it out."""

from __future__ import annotations

import json
import struct
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from benchalong.publishing.glb import piece_glb
from benchalong.road import Travelled, travel
from benchalong.workings.solids import SOLIDS

CONTENT = Path(__file__).parents[2] / "content"
EXAMPLES = ("seed-cupboard", "step-stool")
TYPES = {5126: "<f4", 5123: "<u2", 5125: "<u4"}
WIDTHS = {"VEC3": 3, "SCALAR": 1}


@cache
def project(name: str) -> Travelled:
    return travel(CONTENT / name)


def model(name: str) -> bytes:
    data = piece_glb(project(name).plan, project(name).worked)
    assert data is not None
    return data


def opened(data: bytes) -> tuple[dict[str, Any], bytes]:
    magic, version, length = struct.unpack("<4sII", data[:12])
    assert (magic, version, length) == (b"glTF", 2, len(data))
    size, kind = struct.unpack("<I4s", data[12:20])
    assert (kind, size % 4) == (b"JSON", 0)
    rest = data[20 + size :]
    (binary,) = struct.unpack("<I", rest[:4])
    assert (rest[4:8], binary % 4, len(rest)) == (b"BIN\0", 0, binary + 8)
    return json.loads(data[20 : 20 + size]), rest[8:]


def numbers(document: dict[str, Any], binary: bytes, accessor: int) -> Any:
    told = document["accessors"][accessor]
    view = document["bufferViews"][told["bufferView"]]
    assert view["byteOffset"] % 4 == 0
    raw = binary[view["byteOffset"] : view["byteOffset"] + view["byteLength"]]
    found = np.frombuffer(raw, TYPES[told["componentType"]]).reshape(-1, WIDTHS[told["type"]])
    assert len(found) == told["count"]
    return found.astype(float) if told["componentType"] == 5126 else found.ravel().astype(int)


def triangles(name: str) -> dict[str, Any]:
    """Each copy's triangles in the scene, (n, 3, 3) metres, by the name of its node."""
    document, binary = opened(model(name))
    found: dict[str, Any] = {}

    def go(number: int, above: Any) -> None:
        node = document["nodes"][number]
        here = above @ np.array(node.get("matrix", np.eye(4).T.ravel())).reshape(4, 4).T
        if "mesh" in node:
            (primitive,) = document["meshes"][node["mesh"]]["primitives"]
            points = numbers(document, binary, primitive["attributes"]["POSITION"])
            normals = numbers(document, binary, primitive["attributes"]["NORMAL"])
            rows = numbers(document, binary, primitive["indices"]).reshape(-1, 3)
            corners = points[rows]
            square = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
            assert ((square * normals[rows[:, 0]]).sum(axis=1) > 0).all()
            assert node["name"] not in found
            found[node["name"]] = corners @ here[:3, :3].T + here[:3, 3]
        for child in node.get("children", ()):
            go(child, here)

    (root,) = document["scenes"][0]["nodes"]
    go(root, np.eye(4))
    return found


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_copy_is_there_with_its_volume(name: str) -> None:
    plan, solids, found = project(name).plan, project(name).worked[SOLIDS], triangles(name)
    assert list(found) == [copy.mark for copy in plan.copies]
    for copy in plan.copies:
        corners = found[copy.mark]
        volume = np.einsum("ni,ni->n", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])).sum() / 6
        assert volume * 1e9 == pytest.approx(solids[copy.shape].volume, rel=1e-4)


@pytest.mark.parametrize("name", EXAMPLES)
def test_it_stands_in_metres_with_y_up_and_its_front_to_the_viewer(name: str) -> None:
    plan, found = project(name).plan, triangles(name)
    for copy in plan.copies:
        solid = project(name).worked[SOLIDS][copy.shape]
        room = solid.vertices @ np.array(copy.turn, dtype=float).T + [float(value) for value in copy.at]
        right, back, up = room.T / 1000
        low, high = found[copy.mark].min(axis=(0, 1)), found[copy.mark].max(axis=(0, 1))
        assert low == pytest.approx([right.min(), up.min(), -back.max()], abs=1e-6)
        assert high == pytest.approx([right.max(), up.max(), -back.min()], abs=1e-6)


def test_nodes_follow_the_assemblies() -> None:
    document, _ = opened(model("seed-cupboard"))
    nodes = document["nodes"]
    assert nodes[0]["name"] == "Seed cupboard"
    assert [nodes[child]["name"] for child in nodes[0]["children"]] == ["C", "LD", "RD"]
    left = next(node for node in nodes if node["name"] == "LD")
    assert [nodes[child]["name"] for child in left["children"]] == ["LD/H", "LD/M", "LD/T", "LD/B", "LD/P"]
    assert len(document["meshes"]) == len({copy.shape for copy in project("seed-cupboard").plan.copies})


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_least_and_greatest_are_told_of_every_mesh(name: str) -> None:
    document, binary = opened(model(name))
    for mesh in document["meshes"]:
        told = document["accessors"][mesh["primitives"][0]["attributes"]["POSITION"]]
        points = numbers(document, binary, mesh["primitives"][0]["attributes"]["POSITION"])
        assert points.min(axis=0).tolist() == told["min"]
        assert points.max(axis=0).tolist() == told["max"]


def test_the_same_plan_gives_the_same_bytes() -> None:
    again = travel(CONTENT / "step-stool")
    assert piece_glb(again.plan, again.worked) == model("step-stool")
