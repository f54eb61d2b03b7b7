"""A small cupboard with joints: two doors that mirror each other, sides that are a left and a right hand, a
panel that lies loose, and a batten that nobody placed."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from benchalong.road import Travelled, travel

PROJECT = """\
title: Wall cupboard
units: inch
piece: cupboard
sizes:
  width: 24 in
  height: 20 in
  depth: 8 in
  thick: 3/4 in
  stile: 2 in
  door_width: width / 2 - 1/16 in
  rail_length: door_width - 2*stile + 2*frame.tongue_length
stock:
  cherry: {kind: board, name: Cherry, thickness: thick}
parts:
  side: {name: Side, stock: cherry, width: depth, length: height}
  shelf: {name: Shelf, stock: cherry, width: depth - 1/2 in, length: width - 2*thick + 2*housing.reach}
  door_stile: {name: Door stile, stock: cherry, width: stile, length: height}
  door_rail: {name: Door rail, stock: cherry, width: stile, length: rail_length}
  door_panel: {name: Door panel, stock: cherry, thickness: 1/4 in,
    width: rail_length - 1/8 in, length: height - 2*stile + 2*frame.tongue_length - 1/8 in}
  batten: {name: Batten, stock: cherry, width: 1 in, length: 10 in, count: 2}
joints:
  housing: {kind: dado, name: Dado for the shelf, cut_in: [side inner face], takes: [shelf both ends],
    stopped: front edge, note: No hole shows in front.}
  frame: {kind: tongue and groove, name: Frame of the door, width: 5/16 in, depth: 7/16 in,
    floats: [door_panel], cut_in: [door_stile inner edge, door_rail inner edge], takes: [door_rail both ends]}
assemblies:
  case:
    name: Case
    place:
      - {part: side, mark: SL, at: [0, 0, 0], along: up, face: left}
      - {part: side, mark: SR, at: [width - thick, 0, 0], along: up, face: right}
      - {part: shelf, mark: S, at: [thick - housing.reach, 0, 9 in], along: right, face: up}
  door:
    name: Door
    place:
      - {part: door_stile, mark: H, at: [0, 0, 0], along: up, face: front}
      - {part: door_stile, mark: M, at: [door_width - stile, 0, 0], along: up, face: front}
      - {part: door_rail, mark: T, along: right, face: front,
         at: [stile - frame.tongue_length, 0, height - stile]}
      - {part: door_rail, mark: B, along: right, face: front, at: [stile - frame.tongue_length, 0, 0]}
      - {part: door_panel, mark: P, along: up, face: front,
         at: [stile - frame.tongue_length + 1/16 in, 1/4 in, stile - frame.tongue_length + 1/16 in]}
  cupboard:
    name: Cupboard
    place:
      - {assembly: case, mark: C, at: [0, thick, 0]}
      - {assembly: door, mark: LD, at: [0, 0, 0]}
      - {assembly: door, mark: RD, at: [width / 2 + 1/16 in, 0, 0], mirror: left to right}
stages: {all: {title: All of it}}
"""
STEPS = {
    "01-mill.md": """\
---
stage: all
title: Mill all of it
does: [{mill: [side, door_stile]}]
---
Flat.
""",
    "03-cut.md": """\
---
stage: all
title: Cut the dadoes
does: [{cut: [side, shelf, door_stile]}]
---
Set the bit to (=housing.depth).
""",
    "02-glue.md": """\
---
stage: all
title: Glue the doors
does: [{glue up: [door_stile, door_rail, door_panel]}]
---
Square.
""",
}


@cache
def cupboard(project: str = PROJECT) -> Travelled:
    with TemporaryDirectory() as folder:
        (Path(folder) / "steps").mkdir()
        (Path(folder) / "project.yaml").write_text(project, encoding="utf-8")
        for name, text in STEPS.items():
            (Path(folder) / "steps" / name).write_text(text, encoding="utf-8")
        return travel(Path(folder))
