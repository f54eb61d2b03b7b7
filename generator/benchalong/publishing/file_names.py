"""What the files beside the pages are called."""

from __future__ import annotations

from benchalong.ground.shown import System

PLAN_FILE = "plan.json"
SCHEMA_FILE = "plan.schema.json"
"""Beside the site's `plan.json`, and beside this module."""
GLB_FILE = "piece.glb"
PURCHASES_FILE = "purchases.csv"
COLOURS_FILE = "colours.css"
"""Among the assets."""


def csv_name(system: System) -> str:
    """The cut list's."""
    return f"cut-list-{system}.csv"
