"""The project's photographs, made ready to publish.

Every picture is decoded and encoded again: what a camera wrote beside the picture (the place, the
owner, the time) stays at home, and a file that only looks like a picture goes no further. Pictures
are turned as the camera meant them and made no larger than a page can use. What moves stands still: only
the first picture of a GIF or WebP goes out.
"""

from __future__ import annotations

import base64
import hashlib
import io
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from benchalong.ground.store import Store

if TYPE_CHECKING:
    from PIL.Image import Image

FORMATS = {".png": "PNG", ".jpg": "JPEG", ".jpeg": "JPEG", ".webp": "WEBP", ".gif": "GIF"}
"""What a picture is written as, by its ending."""
LARGEST_FILE = 40 * 1024 * 1024
MOST_PIXELS = 60_000_000
"""A larger picture isn't opened: decoding would take more memory than the whole publish."""
LONGEST_SIDE = 1600
"""In pixels, of what is published."""
QUALITY = 82


class NotAPicture(Exception):
    """The file can't be published as a picture; the message says why, to follow the file's name."""


@dataclass(frozen=True)
class Photo:
    """A picture made ready."""

    data: bytes


def ready_picture(project: Path, file: str, store: Store) -> Photo:
    """The picture, clean. Raises NotAPicture for what isn't a PNG, JPEG, WebP or GIF inside the project."""
    path = project / file
    kind = FORMATS.get(path.suffix.lower())
    if kind is None:
        raise NotAPicture("is not a PNG, JPEG, WebP or GIF file by its ending")
    if not path.resolve().is_relative_to(project.resolve()):
        raise NotAPicture("lies outside the project")
    raw = _read(path)
    key = f"picture {_version()} {kind} {LONGEST_SIDE} {QUALITY} {hashlib.sha256(raw).hexdigest()}"
    if (kept := store.get(key)) is not None:
        return Photo(base64.b64decode(kept))
    data = _encoded(raw, kind)
    store.put(key, base64.b64encode(data).decode("ascii"))
    return Photo(data)


def _read(path: Path) -> bytes:
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise NotAPicture("is larger than 40 MB")
        return path.read_bytes()
    except OSError as error:
        raise NotAPicture(f"can't be read: {error.strerror}") from None


def _version() -> str:
    import PIL

    return PIL.__version__


def _encoded(raw: bytes, kind: str) -> bytes:
    # Loaded here: most projects publish without opening a single new picture.
    from PIL import Image, ImageOps, UnidentifiedImageError

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)
            with Image.open(io.BytesIO(raw), formats=tuple(set(FORMATS.values()))) as opened:
                if opened.width * opened.height > MOST_PIXELS:
                    raise NotAPicture("has more than 60 million pixels")
                opened.draft("RGB", (LONGEST_SIDE, LONGEST_SIDE))
                turned = ImageOps.exif_transpose(opened)
                turned = _in_plain_colours(turned)
    except UnidentifiedImageError:
        raise NotAPicture("is not a PNG, JPEG, WebP or GIF picture") from None
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        raise NotAPicture("is damaged") from None
    return _written(_small_enough(turned), kind)


def _in_plain_colours(image: Image) -> Image:
    """In RGB, or RGBA where something shows through; a camera's own colour space turned into sRGB."""
    has_alpha = "A" in image.getbands() or "transparency" in image.info
    profile = image.info.get("icc_profile")
    plain = image.convert("RGBA" if has_alpha else "RGB")
    return _in_srgb(plain, profile) if profile and image.mode in ("RGB", "RGBA") else plain


def _in_srgb(image: Image, profile: bytes) -> Image:
    from PIL import ImageCms

    try:
        from_profile = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        turned = ImageCms.profileToProfile(image, from_profile, ImageCms.createProfile("sRGB"))
    except (ImageCms.PyCMSError, OSError):
        return image
    return image if turned is None else turned


def _small_enough(image: Image) -> Image:
    from PIL import Image as images

    longest = max(image.size)
    if longest <= LONGEST_SIDE:
        return image
    size = tuple(max(1, round(side * LONGEST_SIDE / longest)) for side in image.size)
    return image.resize((size[0], size[1]), images.Resampling.LANCZOS)


def _written(image: Image, kind: str) -> bytes:
    """Encoded from the pixels alone: a new image carries nothing else along."""
    from PIL import Image as images

    if kind == "JPEG" and image.mode == "RGBA":
        ground = images.new("RGBA", image.size, "white")
        image = images.alpha_composite(ground, image).convert("RGB")
    clean = images.new(image.mode, image.size)
    clean.paste(image)
    out = io.BytesIO()
    clean.save(out, kind, **({"quality": QUALITY} if kind in ("JPEG", "WEBP") else {"optimize": True}))
    return out.getvalue()
