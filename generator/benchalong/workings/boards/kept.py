"""Layouts kept in the store: a search of seconds is done once for the same question and the same code."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from benchalong.ground.store import Store, code_digest
from benchalong.workings.layout import model
from benchalong.workings.layout.lay_out import lay_out


def laid_out(order: model.Order, store: Store | None) -> model.Layout:
    key = f"layout-{sha256(f'{_code()} {order!r}'.encode()).hexdigest()}"
    text = store.get(key) if store is not None else None
    if text is not None:
        return _layout(json.loads(text))
    layout = lay_out(order)
    if store is not None:
        store.put(key, json.dumps(asdict(layout), default=lambda way: way.value, sort_keys=True))
    return layout


@cache
def _code() -> str:
    """A digest of what lays out, so that a better search is not hidden by an old answer."""
    return code_digest(sorted(Path(model.__file__).parent.glob("*.py")))


def _layout(kept: Mapping[str, Any]) -> model.Layout:
    boards = tuple(_board(board) for board in kept["boards"])
    left_out = tuple((name, number) for name, number in kept["left_out"])
    return model.Layout(**{**kept, "boards": boards, "left_out": left_out})


def _board(kept: Mapping[str, Any]) -> model.CutBoard:
    placed = tuple(
        model.Placed(**{**placed, "at": model.Rectangle(**placed["at"])}) for placed in kept["placed"]
    )
    cuts = tuple(
        model.Cut(**{**cut, "way": model.Way(cut["way"]), "of": model.Rectangle(**cut["of"])})
        for cut in kept["cuts"]
    )
    left_over = tuple(model.Rectangle(**spot) for spot in kept["left_over"])
    return model.CutBoard(**{**kept, "placed": placed, "cuts": cuts, "left_over": left_over})
