"""The box of each part: length along the grain, width, thickness."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path, Place
from benchalong.plan.draft import Box, Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.reading.written import PROJECT_FILE, Part


def measure_boxes(draft: Draft) -> Draft:
    """Adds `boxes`."""
    sums = Reckoning(draft)
    boxes: dict[str, Box] = {}
    for name, part in draft.written.parts.items():
        sums.knows("stock", part.stock, (PROJECT_FILE, "parts", name, "stock"), among=draft.written.stock)
        length, width, thickness = (_size(name, part, key, sums) for key in ("length", "width", "thickness"))
        if length is not None and width is not None and thickness is not None:
            boxes[name] = (length, width, thickness)
    return sums.done(boxes=boxes)


def _size(name: str, part: Part, key: str, sums: Reckoning) -> Length | None:
    path: Path = (PROJECT_FILE, "parts", name, key)
    text: str | None = getattr(part, key)
    if key == "thickness" and text is None and not sums.draft.is_lost(*path):
        return _thickness_of_stock(part, path, sums)
    value = sums.draft.names[f"{name}.{key}"].value
    if value is None or text is None:
        return None
    return value.value if sums.is_size_of_wood(value.value, text, path, f"the {key}") else None


def _thickness_of_stock(part: Part, path: Path, sums: Reckoning) -> Length | None:
    stock = sums.draft.written.stock.get(part.stock)
    if stock is None:
        return None
    lost = any(
        sums.draft.is_lost(PROJECT_FILE, "stock", part.stock, key) for key in ("thickness", "measured")
    )
    if stock.thickness is None and stock.measured is None and not lost:
        sums.say(
            Place(path[:-1]).key(),
            f"this part has no thickness, and its stock {part.stock} has none to give it",
            "a thickness",
        )
    made = sums.draft.stock.get(part.stock)
    return made.thickness if made else None
