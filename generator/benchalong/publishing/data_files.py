"""The files beside the pages that follow from the whole plan: what each says, as text.

What makes them is loaded only where one has to be made: with it come all workings.
"""

from __future__ import annotations

from base64 import b64decode, b64encode
from importlib import resources

from benchalong.ground.shown import System
from benchalong.pages.later import THE_EDITION
from benchalong.publishing.file_names import SCHEMA_FILE
from benchalong.road import Travelled

NO_MODEL = "-"


def plan_text(travelled: Travelled) -> str:
    """`plan.json`, with holes for the edition and for the steps."""
    from benchalong.publishing.plan_json import plan_json

    bare, worked, marks = travelled.bare, travelled.worked, travelled.marks
    return plan_json(bare, worked, marks, edition=THE_EDITION, put_off_steps=True)


def schema_text() -> str:
    """The JSON Schema (2020-12) of `plan.json`."""
    return resources.files("benchalong.publishing").joinpath(SCHEMA_FILE).read_text(encoding="utf-8")


def model_text(travelled: Travelled) -> str:
    """The model of the piece in letters."""
    from benchalong.publishing.glb import piece_glb

    model = piece_glb(travelled.bare, travelled.worked)
    return NO_MODEL if model is None else b64encode(model).decode()


def model_of(text: str) -> bytes | None:
    """The model that such a text stands for."""
    return None if text == NO_MODEL else b64decode(text)


def cut_list_text(travelled: Travelled, system: System) -> str:
    from benchalong.publishing.cut_list_csv import cut_list_csv
    from benchalong.workings.cut_list import CUT_LIST

    return cut_list_csv(travelled.bare, travelled.worked[CUT_LIST], system)


def purchases_text(travelled: Travelled) -> str:
    from benchalong.publishing.purchases_csv import purchases_csv
    from benchalong.workings.purchases.purchases import PURCHASES

    return purchases_csv(travelled.bare, travelled.worked[PURCHASES]())
