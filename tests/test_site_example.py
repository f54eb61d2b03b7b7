"""`site_example/` is the first example as it is published today. `tests/refresh.py` makes it anew.

Pictures are compared by what they show: an encoder may change between releases of the library.
"""

from __future__ import annotations

import io
from pathlib import Path

from PIL import Image, ImageChops, ImageStat

from refresh import EXAMPLE, SITE

PICTURES = (".png", ".jpg", ".jpeg", ".webp", ".gif")


def files(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def is_same(name: str, kept: bytes, made: bytes) -> bool:
    if kept == made or not name.endswith(PICTURES):
        return kept == made
    one, other = (Image.open(io.BytesIO(data)).convert("RGB") for data in (kept, made))
    return one.size == other.size and max(ImageStat.Stat(ImageChops.difference(one, other)).mean) < 2


def test_the_kept_site_is_the_one_that_is_published(sites: dict[str, Path]) -> None:
    kept, made = files(SITE), files(sites[EXAMPLE.name])
    assert sorted(kept) == sorted(made), "run tests/refresh.py"
    changed = [name for name in kept if not is_same(name, kept[name], made[name])]
    assert changed == [], "run tests/refresh.py"
