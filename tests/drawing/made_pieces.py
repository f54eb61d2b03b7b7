"""Pieces made by rule from the families of joints: cases, door frames and boxes of random sizes.

The same seed gives the same project, as an author would write it.
"""
# ruff: noqa: E501 - a place of a plan stands on one line

from __future__ import annotations

import random

HEAD = """\
title: {title} {seed}
units: {units}
nearest: {nearest}
piece: piece
stock: {{ash: {{kind: board, thickness: {thick} mm}}, ply: {{kind: sheet, thickness: 6 mm, sheet: 1220 mm x 2440 mm}}}}
stages: {{all: {{title: All of it}}}}
"""


def made_piece(seed: int) -> str:
    """The text of a project.yaml."""
    chance = random.Random(seed)
    make = (case, frame, box, table)[seed % 4]
    units, nearest = chance.choice((("millimetre", "0.5 mm"), ("inch", "1/32 in"), ("inch", "1/64 in")))
    thick = chance.choice((12, 15, 18, 19, 20, 22))
    head = HEAD.format(title=make.__name__.capitalize(), seed=seed, units=units, nearest=nearest, thick=thick)
    return head + make(chance, thick)


def case(chance: random.Random, thick: int) -> str:
    """Sides with shelves in dadoes, the top in a rabbet or dovetailed."""
    wide, tall, deep = _size(chance, 300, 1200), _size(chance, 300, 1400), _size(chance, 120, 400)
    shelves, stopped = chance.randint(1, 4), chance.choice(("", ", stopped: front edge"))
    corner = chance.choice(
        ("kind: rabbet", "kind: dovetail", "kind: box joint", "kind: mitre, spline_thickness: 4 mm")
    )
    reach = "corner.depth" if "rabbet" in corner else f"{thick} mm"
    places = "\n".join(
        f"  - {{part: shelf, mark: S{n + 1}, at: [{thick} mm - housing.reach, 0 mm, {tall * (n + 1) / (shelves + 1):.1f} mm],"
        " along: right, face: up}"
        for n in range(shelves)
    )
    return f"""\
parts:
  side: {{stock: ash, width: {deep} mm, length: {tall} mm}}
  top: {{stock: ash, width: {deep} mm, length: {wide - 2 * thick} mm + 2*{reach}}}
  shelf: {{stock: ash, width: {deep} mm, length: {wide - 2 * thick} mm + 2*housing.reach}}
joints:
  corner: {{{corner}, cut_in: [side top end{" inner face" if "rabbet" in corner else ""}], takes: [top both ends]}}
  housing: {{kind: dado, cut_in: [side inner face], takes: [shelf both ends]{stopped}}}
assemblies:
 piece:
  place:
  - {{part: side, mark: SL, at: [0 mm, 0 mm, 0 mm], along: up, face: left}}
  - {{part: side, mark: SR, at: [{wide - thick} mm, 0 mm, 0 mm], along: up, face: right, mirror: left to right}}
  - {{part: top, mark: T, at: [{thick} mm - {reach}, 0 mm, {tall - thick} mm], along: right, face: up}}
{places}
"""


def frame(chance: random.Random, _: int) -> str:
    """A door with a floating panel, once as drawn and once mirrored."""
    wide, tall, stile = _size(chance, 200, 600), _size(chance, 250, 1500), _size(chance, 35, 80)
    depth, hole = chance.choice((8, 10, 11, 12)), chance.choice((5, 8, 25))
    return f"""\
parts:
  door_stile: {{stock: ash, width: {stile} mm, length: {tall} mm,
    cuts: [{{cut: hole, on: face, diameter: {hole} mm, depth: through, at: {tall * 0.4:.1f} mm, across: centred}}]}}
  door_rail: {{stock: ash, width: {stile} mm, length: {wide - 2 * stile} mm + 2*frame.tongue_length}}
  door_panel: {{stock: ash, thickness: frame.width - 0.2 mm, width: fits frame, length: fits frame}}
joints:
  frame: {{kind: tongue and groove, cut_in: [door_stile inner edge, door_rail inner edge],
    takes: [door_rail both ends], floats: [door_panel], depth: {depth} mm}}
assemblies:
 door:
  place:
  - {{part: door_stile, mark: H, at: [0 mm, 0 mm, 0 mm], along: up, face: front}}
  - {{part: door_stile, mark: M, at: [{wide - stile} mm, 0 mm, 0 mm], along: up, face: front}}
  - {{part: door_rail, mark: T, at: [{stile} mm - frame.tongue_length, 0 mm, {tall - stile} mm], along: right, face: front}}
  - {{part: door_rail, mark: B, at: [{stile} mm - frame.tongue_length, 0 mm, 0 mm], along: right, face: front}}
  - {{part: door_panel, mark: P, along: up, face: front}}
 piece:
  place:
  - {{assembly: door, mark: LD, at: [0 mm, 0 mm, 0 mm]}}
  - {{assembly: door, mark: RD, at: [{wide + 3} mm, 0 mm, 0 mm], mirror: left to right}}
"""


def box(chance: random.Random, thick: int) -> str:
    """Four sides and a bottom that is screwed on."""
    wide, deep, tall = _size(chance, 150, 700), _size(chance, 120, 500), _size(chance, 60, 240)
    corner = chance.choice(
        ("kind: box joint", "kind: dovetail, dovetail: through", "kind: dovetail, slope: 1/6")
    )
    return f"""\
hardware: {{screw: {{name: Screw, size: 3.5 mm x 25 mm}}}}
parts:
  front: {{stock: ash, width: {tall} mm, length: {wide} mm}}
  flank: {{stock: ash, width: {tall} mm, length: {deep} mm}}
  bottom: {{stock: ply, width: {deep} mm, length: {wide} mm}}
joints:
  corner: {{{corner}, cut_in: [front both ends], takes: [flank both ends]}}
  screwed: {{kind: butt, cut_in: [bottom face], takes: [front bottom edge], hardware: screw,
    pilot_depth: 15 mm, pilot: 2 mm, clearance: 4 mm, from_end: {_size(chance, 25, 40)} mm, every: {_size(chance, 80, 200)} mm}}
assemblies:
 piece:
  place:
  - {{part: front, mark: F, at: [0 mm, 0 mm, 0 mm], along: right, face: front}}
  - {{part: front, mark: B, at: [0 mm, {deep - thick} mm, 0 mm], along: right, face: back, mirror: front to back}}
  - {{part: flank, mark: L, at: [0 mm, 0 mm, 0 mm], along: back, face: left, mirror: left to right}}
  - {{part: flank, mark: R, at: [{wide - thick} mm, 0 mm, 0 mm], along: back, face: right}}
  - {{part: bottom, mark: U, at: [0 mm, 0 mm, -6 mm], along: right, face: up}}
"""


def table(chance: random.Random, thick: int) -> str:
    """Two legs, an apron between them, tenoned, and a beam lapped across."""
    wide, tall, leg = _size(chance, 250, 1400), _size(chance, 200, 900), thick + chance.randint(12, 40)
    apron, tenon = _size(chance, 40, 120), chance.choice(("stub", "through", "haunched"))
    at = tall - apron if tenon == "haunched" else tall - apron - 20
    return f"""\
parts:
  leg_post: {{stock: ash, thickness: {leg} mm, width: {leg} mm, length: {tall} mm}}
  apron: {{stock: ash, width: {apron} mm, length: {wide - 2 * leg} mm + 2*tenons.tenon_length}}
  beam: {{stock: ash, thickness: {leg} mm, width: {leg} mm, length: {wide} mm}}
joints:
  tenons: {{kind: mortise and tenon, tenon: {tenon}, cut_in: [leg_post inner edge], takes: [apron both ends]}}
  lap: {{kind: half lap, cut_in: [leg_post face], takes: [beam back]}}
assemblies:
 piece:
  place:
  - {{part: leg_post, mark: L, at: [0 mm, 0 mm, 0 mm], along: up, face: front}}
  - {{part: leg_post, mark: R, at: [{wide - leg} mm, 0 mm, 0 mm], along: up, face: front}}
  - {{part: apron, mark: A, at: [{leg} mm - tenons.tenon_length, {(leg - thick) / 2} mm, {at} mm], along: right, face: front}}
  - {{part: beam, mark: X, at: [0 mm, 0 mm, {tall * 0.2:.1f} mm], along: right, face: front}}
"""


def _size(chance: random.Random, least: int, most: int) -> int:
    return chance.randint(least, most)
