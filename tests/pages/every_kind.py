"""One project with a joint of every kind, each in a corner of its own, all of it mirrored beside itself."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from benchalong.road import Travelled, travel

Board = tuple[str, str, str, str]
"""Length x width x thickness, where its near corner is, along, face; in mm."""
SIDE: Board = ("400 x 200 x 20", "0, 0, 0", "up", "left")
STILE: Board = ("400 x 60 x 22", "0, 0, 0", "up", "front")

CORNERS: dict[str, tuple[str, dict[str, Board]]] = {
    "tongue": (
        "kind: tongue and groove, cut_in: [{0} edge b], takes: [{1} end a], depth: 10, end_play: 1",
        {"stile": STILE, "rail": ("300 x 60 x 22", "51, 0, 200", "right", "front")},
    ),
    "dado": (
        "kind: dado, cut_in: [{0} back], takes: [{1} end a], depth: 6, end_play: 1/2, stopped: front edge",
        {"side": SIDE, "shelf": ("300 x 200 x 18", "14.5, 0, 150", "right", "up")},
    ),
    "rabbet": (
        "kind: rabbet, cut_in: [{0} end b back], takes: [{1} end a], depth: 12",
        {"side": SIDE, "top": ("300 x 200 x 18", "8, 0, 382", "right", "up")},
    ),
    "stub": (
        "kind: mortise and tenon, cut_in: [{0} edge b], takes: [{1} end a], depth: 21.5, end_play: 1.5",
        {"stile": STILE, "rail": ("300 x 70 x 20", "40, 1, 200", "right", "front")},
    ),
    "haunched": (
        "kind: mortise and tenon, tenon: haunched, cut_in: [{0} edge b], takes: [{1} end a], depth: 40, "
        "end_play: 1, thickness: 7",
        {"stile": STILE, "rail": ("300 x 70 x 20", "21, 1, 330", "right", "front")},
    ),
    "through": (
        "kind: mortise and tenon, tenon: through, cut_in: [{0} edge b], takes: [{1} end a]",
        {"stile": STILE, "rail": ("300 x 70 x 20", "0, 1, 200", "right", "front")},
    ),
    "lap": (
        "kind: half lap, cut_in: [{1} face], takes: [{0} back], play: 1/8",
        {"post": STILE, "bar": ("300 x 70 x 22", "-100, 0, 200", "right", "front")},
    ),
    "mitre": (
        "kind: mitre, cut_in: [{0} end b], takes: [{1} end a], spline_thickness: 3, spline_depth: 6",
        {"side": SIDE, "top": ("300 x 200 x 20", "0, 0, 380", "right", "up")},
    ),
    "fingers": (
        "kind: box joint, cut_in: [{0} end b], takes: [{1} end a], finger: 12",
        {
            "side": ("200 x 100 x 12", "0, 0, 0", "up", "left"),
            "top": ("300 x 100 x 12", "0, 0, 188", "right", "up"),
        },
    ),
    "tails": (
        "kind: dovetail, dovetail: half-blind, cut_in: [{0} end b], takes: [{1} end a], tails: 3, lap: 5",
        {
            "front": ("400 x 120 x 20", "0, 0, 0", "right", "front"),
            "flank": ("300 x 120 x 12", "388, 5, 0", "back", "right"),
        },
    ),
    "screwed": (
        "kind: butt, cut_in: [{0} back], takes: [{1} end a], hardware: screw, count: 3",
        {"side": SIDE, "shelf": ("300 x 200 x 18", "20, 0, 100", "right", "up")},
    ),
    "dowelled": (
        "kind: butt, cut_in: [{0} back], takes: [{1} end a], dowel: 8, dowel_depth: 12, count: 3",
        {"side": SIDE, "shelf": ("300 x 200 x 18", "20, 0, 100", "right", "up")},
    ),
    "hung": (
        "kind: hinge, cut_in: [{0} back], takes: [{1} edge a], length: 50, width: 12, closed: 5, gap: 2, "
        "barrel: front, hardware: hinge",
        {
            "side": ("600 x 200 x 20", "0, 0, 0", "up", "left"),
            "door": ("500 x 300 x 18", "22, 0, 50", "up", "front"),
        },
    ),
    "pulled": (
        "kind: slide, cut_in: [{0} back], takes: [{1} back], travel: 150, hardware: runner",
        {"side": SIDE, "drawer": ("180 x 80 x 12", "20, 0, 100", "back", "right")},
    ),
    "held": (
        "kind: stay, cut_in: [{0} back], takes: [{1} end a], opens: 95 degrees",
        {"side": SIDE, "lid": ("300 x 200 x 18", "20, 0, 382", "right", "up")},
    ),
}


def project_text() -> str:
    parts, joints, assemblies, placed = [], [], [], []
    for number, (name, (joint, boards)) in enumerate(CORNERS.items()):
        ids = [f"{name}_{board}" for board in boards]
        joints.append(f"  {name}_joint: {{{joint.format(*ids)}}}")
        assemblies.append(f"  {name}:\n    place:")
        for part, (size, at, along, face) in zip(ids, boards.values(), strict=True):
            length, width, thickness = size.split(" x ")
            parts.append(
                f"  {part}: {{stock: oak, length: {length}, width: {width}, thickness: {thickness}}}"
            )
            mark = part.rpartition("_")[2]
            assemblies.append(
                f"      - {{part: {part}, mark: {mark}, at: [{at}], along: {along}, face: {face}}}"
            )
        placed.append(f"      - {{assembly: {name}, mark: L{number}, at: [0, 0, {number * 1000}]}}")
        mirrored = f"at: [5000, 0, {number * 1000}], mirror: left to right"
        placed.append(f"      - {{assembly: {name}, mark: R{number}, {mirrored}}}")
    return "\n".join(
        [
            "title: A corner of every kind",
            "units: millimetre",
            "piece: all",
            "stock: {oak: {kind: board, thickness: 20}}",
            "hardware: {screw: {name: Screw}, hinge: {name: Butt hinge}, runner: {name: Runner}}",
            "parts:",
            *parts,
            "joints:",
            *joints,
            "assemblies:",
            *assemblies,
            "  all:\n    place:",
            *placed,
            "stages: {one: {title: One}}",
            "",
        ]
    )


def corners() -> Travelled:
    with TemporaryDirectory() as folder:
        (Path(folder) / "project.yaml").write_text(project_text(), encoding="utf-8")
        return travel(Path(folder))
