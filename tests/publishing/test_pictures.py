"""Pictures go out clean: no place, no owner, turned as meant, no larger than needed."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image, PngImagePlugin

from benchalong.ground.store import MemoryStore
from benchalong.publishing import pictures
from benchalong.publishing.pictures import NotAPicture, ready_picture


def photo(size: tuple[int, int] = (60, 40), mode: str = "RGB") -> Image.Image:
    image = Image.new(mode, size, "white")
    image.paste("red", (0, 0, size[0] // 2, size[1] // 2))
    return image


def located() -> Image.Exif:
    exif = Image.Exif()
    exif[0x0112] = 6
    exif[0x010F] = "A camera"
    exif.get_ifd(0x8825)[1] = "N"
    return exif


def opened(data: bytes) -> Image.Image:
    return Image.open(io.BytesIO(data))


def test_a_jpeg_loses_its_place_and_is_turned(tmp_path: Path) -> None:
    photo().save(tmp_path / "a.jpg", exif=located(), comment=b"mine")
    data = ready_picture(tmp_path, "a.jpg", MemoryStore()).data
    image = opened(data)
    assert image.size == (40, 60)
    assert dict(image.getexif()) == {}
    assert b"A camera" not in data
    assert b"mine" not in data
    corner = image.convert("RGB").getpixel((35, 3))
    assert isinstance(corner, tuple)
    assert corner[0] > 200 > 100 > corner[1], "orientation 6: the first corner comes to the top right"


def test_a_png_loses_its_texts(tmp_path: Path) -> None:
    info = PngImagePlugin.PngInfo()
    info.add_text("Author", "somebody")
    photo(mode="RGBA").save(tmp_path / "a.png", pnginfo=info)
    data = ready_picture(tmp_path, "a.png", MemoryStore()).data
    assert b"somebody" not in data
    assert opened(data).mode == "RGBA"


def test_a_webp_stays_one(tmp_path: Path) -> None:
    photo().save(tmp_path / "a.webp", exif=located())
    image = opened(ready_picture(tmp_path, "a.webp", MemoryStore()).data)
    assert image.format == "WEBP"
    assert "exif" not in image.info


def test_a_gif_stands_still_and_keeps_no_comment(tmp_path: Path) -> None:
    photo().save(tmp_path / "a.gif", save_all=True, append_images=[photo().rotate(90)], comment=b"mine")
    data = ready_picture(tmp_path, "a.gif", MemoryStore()).data
    assert opened(data).format == "GIF"
    assert getattr(opened(data), "n_frames", 1) == 1
    assert b"mine" not in data


def test_what_is_large_is_made_smaller(tmp_path: Path) -> None:
    photo((3200, 1000)).save(tmp_path / "a.jpg")
    assert opened(ready_picture(tmp_path, "a.jpg", MemoryStore()).data).size == (1600, 500)


def test_twice_gives_the_same_bytes_from_the_store_too(tmp_path: Path) -> None:
    photo().save(tmp_path / "a.jpg")
    store = MemoryStore()
    first = ready_picture(tmp_path, "a.jpg", store)
    assert ready_picture(tmp_path, "a.jpg", store) == first
    assert ready_picture(tmp_path, "a.jpg", MemoryStore()) == first


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        ("a.tif", b"II*", "is not a PNG, JPEG, WebP or GIF file by its ending"),
        ("a.svg", b"<svg/>", "is not a PNG, JPEG, WebP or GIF file by its ending"),
        ("a.png", b"<svg xmlns='http://www.w3.org/2000/svg'/>", "is not a PNG, JPEG, WebP or GIF picture"),
        ("a.jpg", b"", "is not a PNG, JPEG, WebP or GIF picture"),
        ("a.jpg", b"II*" + b"\0" * 50, "is not a PNG, JPEG, WebP or GIF picture"),
    ],
)
def test_refused(tmp_path: Path, name: str, data: bytes, said: str) -> None:
    (tmp_path / name).write_bytes(data)
    with pytest.raises(NotAPicture, match=said):
        ready_picture(tmp_path, name, MemoryStore())


def test_a_damaged_picture_is_refused(tmp_path: Path) -> None:
    photo().save(tmp_path / "a.png")
    whole = (tmp_path / "a.png").read_bytes()
    (tmp_path / "a.png").write_bytes(whole[: len(whole) // 2])
    with pytest.raises(NotAPicture, match="is damaged"):
        ready_picture(tmp_path, "a.png", MemoryStore())


def test_too_many_pixels_are_never_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    photo((100, 100)).save(tmp_path / "a.png")
    monkeypatch.setattr(pictures, "MOST_PIXELS", 9999)
    with pytest.raises(NotAPicture, match="more than 60 million"):
        ready_picture(tmp_path, "a.png", MemoryStore())


def test_a_link_out_of_the_project_is_refused(tmp_path: Path) -> None:
    (tmp_path / "project").mkdir()
    photo().save(tmp_path / "secret.png")
    (tmp_path / "project" / "a.png").symlink_to(tmp_path / "secret.png")
    with pytest.raises(NotAPicture, match="lies outside the project"):
        ready_picture(tmp_path / "project", "a.png", MemoryStore())


def test_a_missing_file_is_said_plainly(tmp_path: Path) -> None:
    with pytest.raises(NotAPicture, match="can't be read: No such file"):
        ready_picture(tmp_path, "a.png", MemoryStore())
