"""Photos are drawn anew: nothing but the picture is kept."""

from io import BytesIO
from pathlib import Path
from uuid import uuid4, uuid5

import pytest
from PIL import Image

from combwright.records.store.book_handle import Book
from combwright.services.book.notes import NoteError
from combwright.services.book.photos import LARGEST, LONGEST_SIDE, Photos, plain_picture

GPS, MAKE, TURNED = 0x8825, 0x010F, 0x0112  # of the Exif standard


def picture(size: tuple[int, int] = (200, 100), kind: str = "JPEG") -> bytes:
    """Give a photo that knows where and by what it was taken, held upright by a quarter turn."""
    exif = Image.Exif()
    exif[MAKE] = "Snapper 9"
    exif[TURNED] = 6
    exif.get_ifd(GPS)[2] = (51.0, 53.0, 54.0)
    file = BytesIO()
    Image.new("RGB", size, "orange").save(file, kind, exif=exif, comment=b"at home")
    return file.getvalue() + b"<script>after the picture</script>"


def blank(size: tuple[int, int]) -> bytes:
    file = BytesIO()
    Image.new("1", size).save(file, "PNG")
    return file.getvalue()


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_what_a_photo_knows_of_place_and_camera_is_gone(kind: str) -> None:
    sent = picture(kind=kind)
    assert b"Snapper" in sent
    kept = plain_picture(sent)
    for told in (b"Snapper", b"at home", b"script", b"Exif"):
        assert told not in kept
    with Image.open(BytesIO(kept)) as drawn:
        assert drawn.size == (100, 200)
        assert not drawn.getexif()
        red, _, blue = drawn.convert("RGB").getpixel((50, 100))  # type: ignore[misc]
        assert red > 200
        assert blue < 100


def test_a_large_photo_is_made_smaller() -> None:
    with Image.open(BytesIO(plain_picture(picture((4000, 3000))))) as drawn:
        assert max(drawn.size) == LONGEST_SIDE


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\xff\xd8\xff\xe0 no photo",
        picture()[:200],
        b"GIF89a" + bytes(40),
        blank((9000, 9000)),  # of little weight, but 81 million pixels
        bytes(LARGEST + 1),
    ],
)
def test_what_is_no_photo_is_refused(content: bytes) -> None:
    with pytest.raises(NoteError) as caught:
        plain_picture(content)
    assert caught.value.problems[0].field == "photo"


def test_photos_are_for_their_owner_alone(tmp_path: Path) -> None:
    note = uuid4()
    photos = Photos(Book(tmp_path / "a.book"))
    photos.keep(note, picture())
    folder = tmp_path / "a.book.photos"
    assert folder.stat().st_mode & 0o077 == 0
    assert all(each.stat().st_mode & 0o077 == 0 for each in folder.iterdir())
    assert photos.of(uuid5(note, "visit"))[1] == "image/jpeg"
