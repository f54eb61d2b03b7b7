"""`piece.glb`: the whole piece as a model that other programs open (glTF 2.0, ISO/IEC 12113).

Written by hand: one mesh for each shape, one node for each copy under those of its assemblies, each named by
its mark. glTF counts in metres with y up and z towards the viewer; the room's directions become those at the
root. Equal plans give equal bytes.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

import numpy as np

from benchalong.drawing.woods import WOODS, woods_of
from benchalong.ground.lengths import METRE, Point3
from benchalong.plan.model import Copy, Plan, Rows, Turn
from benchalong.plan.tilts import as_rows, tilted, times
from benchalong.workings.copies import COPIES
from benchalong.workings.solids import SOLIDS, Solid
from benchalong.workings.working import Worked

FLOAT, SHORT, INT = 5126, 5123, 5125
"""Component types of glTF: 32-bit floating numbers, 16-bit and 32-bit whole ones."""
VERTICES, INDICES = 34962, 34963
"""What a stretch of the buffer is for."""
UP: Turn = ((1, 0, 0), (0, 0, 1), (0, -1, 0))
"""From x right, y back, z up to x right, y up, z front."""
COLOURS: Mapping[str, tuple[float, float, float, float]] = {
    "wood-a": (0.80, 0.62, 0.38, 1.0),
    "wood-b": (0.70, 0.66, 0.56, 1.0),
    "wood-c": (0.62, 0.38, 0.25, 1.0),
}
"""Linear red, green, blue, as the drawings' woods."""


def piece_glb(plan: Plan, worked: Worked) -> bytes | None:
    """None while nothing is placed, or when cuts leave nothing of it."""
    solids = worked[SOLIDS]
    copies = [copy for copy in worked[COPIES] if not solids[copy.shape].is_empty]
    if plan.piece is None or not copies:
        return None
    shapes = sorted({copy.shape for copy in copies})
    buffer = _Buffer()
    woods = woods_of(plan)
    meshes = [_mesh(plan, shape, solids[shape], woods, buffer) for shape in shapes]
    document = {
        "asset": {"version": "2.0", "generator": "benchalong"},
        "scene": 0,
        "scenes": [{"name": plan.id, "nodes": [0]}],
        "nodes": _nodes(plan, copies, {shape: number for number, shape in enumerate(shapes)}),
        "meshes": meshes,
        "materials": [_material(wood) for wood in WOODS],
        "accessors": buffer.accessors,
        "bufferViews": buffer.views,
        "buffers": [{"byteLength": len(buffer.data)}],
    }
    return _packed(document, bytes(buffer.data))


# Nodes


def _nodes(plan: Plan, copies: Sequence[Copy], meshes: Mapping[str, int]) -> list[dict[str, Any]]:
    """The piece first, then assemblies and copies in the order of the piece."""
    assert plan.piece is not None
    zero = (METRE * 0,) * 3
    nodes: list[dict[str, Any]] = [
        {"name": plan.assemblies[plan.piece].name, "matrix": _matrix(UP, zero), "children": []}
    ]
    known = {"": 0}
    for copy in copies:
        marks = copy.mark.split("/")
        for depth in range(1, len(marks)):
            mark = "/".join(marks[:depth])
            if mark not in known:
                name = plan.assemblies[copy.assemblies[depth]].name
                group = {"name": mark, "extras": {"name": name}, "children": []}
                known[mark] = _add(nodes, known[_above(mark)], group)
        node = {
            "name": copy.mark,
            "mesh": meshes[copy.shape],
            "matrix": _matrix(*_standing(copy)),
            "extras": {"name": plan.parts[copy.part].name, "part": copy.part},
        }
        _add(nodes, known[_above(copy.mark)], node)
    return nodes


def _standing(copy: Copy) -> tuple[Turn | Rows, Point3]:
    if copy.tilt is None:
        return copy.turn, copy.at
    turn = tuple(zip(*(times(copy.tilt.turn, column) for column in _columns(copy.turn)), strict=True))
    return as_rows(turn), tilted(copy.at, copy.tilt)


def _columns(turn: Turn) -> Iterator[Point3]:
    for x, y, z in zip(*turn, strict=True):
        yield Fraction(x), Fraction(y), Fraction(z)


def _above(mark: str) -> str:
    return mark.rpartition("/")[0]


def _add(nodes: list[dict[str, Any]], parent: int, node: dict[str, Any]) -> int:
    nodes.append(node)
    nodes[parent]["children"].append(len(nodes) - 1)
    return len(nodes) - 1


def _matrix(turn: Turn | Rows, at: Sequence[Any]) -> list[float]:
    """Column by column, in metres."""
    columns = [[float(turn[row][column]) for row in range(3)] + [0.0] for column in range(3)]
    return [*(value for column in columns for value in column), *(float(x / METRE) for x in at), 1.0]


# Meshes


@dataclass
class _Buffer:
    """All numbers of the model, one stretch after another."""

    data: bytearray = field(default_factory=bytearray)
    views: list[dict[str, Any]] = field(default_factory=list)
    accessors: list[dict[str, Any]] = field(default_factory=list)

    def add(self, values: Any, kind: str, component: int, target: int, **more: Any) -> int:
        """The number of its accessor."""
        self.data += b"\0" * (-len(self.data) % 4)
        raw = values.tobytes()
        self.views.append(
            {"buffer": 0, "byteOffset": len(self.data), "byteLength": len(raw), "target": target}
        )
        self.data += raw
        self.accessors.append(
            {
                "bufferView": len(self.views) - 1,
                "componentType": component,
                "count": len(values),
                "type": kind,
                **more,
            }
        )
        return len(self.accessors) - 1


def _mesh(plan: Plan, shape: str, solid: Solid, woods: Mapping[str, str], buffer: _Buffer) -> dict[str, Any]:
    """Each flat face has corners of its own, so that arrises stay sharp."""
    part = plan.shapes[shape].part
    corner = np.column_stack([solid.triangles.ravel(), np.repeat(solid.faces, 3)])
    kept, first, index = np.unique(corner, axis=0, return_index=True, return_inverse=True)
    points = (solid.vertices[kept[:, 0]] / float(METRE)).astype("<f4")
    normals = np.repeat(solid.normals, 3, axis=0)[first].astype("<f4")
    wide = len(points) > 0xFFFF
    low, high = points.min(axis=0).astype(float), points.max(axis=0).astype(float)
    position = buffer.add(points, "VEC3", FLOAT, VERTICES, min=low.tolist(), max=high.tolist())
    normal = buffer.add(normals, "VEC3", FLOAT, VERTICES)
    numbers = index.ravel().astype("<u4" if wide else "<u2")
    indices = buffer.add(numbers, "SCALAR", INT if wide else SHORT, INDICES)
    primitive = {
        "attributes": {"POSITION": position, "NORMAL": normal},
        "indices": indices,
        "material": WOODS.index(woods[part]),
        "mode": 4,
    }
    hand = f", {plan.shapes[shape].hand} hand" if plan.shapes[shape].hand else ""
    return {"name": f"{plan.parts[part].name}{hand}", "primitives": [primitive], "extras": {"shape": shape}}


def _material(wood: str) -> dict[str, Any]:
    return {
        "name": wood,
        "pbrMetallicRoughness": {
            "baseColorFactor": list(COLOURS[wood]),
            "metallicFactor": 0.0,
            "roughnessFactor": 0.8,
        },
    }


# The file


def _packed(document: Mapping[str, Any], data: bytes) -> bytes:
    """A header of 12 bytes and two chunks, each filled up to four bytes: JSON with spaces, numbers with 0."""
    said = json.dumps(document, ensure_ascii=False, separators=(",", ":")).encode()
    said += b" " * (-len(said) % 4)
    data += b"\0" * (-len(data) % 4)
    chunks = _chunk(b"JSON", said) + _chunk(b"BIN\0", data)
    return struct.pack("<4sII", b"glTF", 2, 12 + len(chunks)) + chunks


def _chunk(kind: bytes, content: bytes) -> bytes:
    return struct.pack("<I4s", len(content), kind) + content
