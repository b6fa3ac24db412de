"""Pictures for the tests: as a camera writes them, with where they were taken, and bare ones."""

from __future__ import annotations

import io

from PIL import Image, ImageDraw

MAKER = "Invented Camera Works"
COMMENT = b"a comment of nobody"
# The needle of the drawn dial is red, and points up when the picture is the right way up.
UP = (220, 20, 20)


def dial_picture(*, turned: bool = False, large: bool = True) -> Image.Image:
    """A drawn dial, upright; ``turned``: as a sensor held sideways has it."""
    width, height = (1500, 2000) if large else (150, 200)
    picture = Image.new("RGB", (width, height), (120, 120, 110))
    pen = ImageDraw.Draw(picture)
    center, radius = (width // 2, height // 2), width // 3
    box = [center[0] - radius, center[1] - radius, center[0] + radius, center[1] + radius]
    pen.ellipse(box, fill="white", outline="black", width=width // 60)
    pen.line([center, (center[0], center[1] - radius)], fill=UP, width=width // 30)
    return picture.transpose(Image.Transpose.ROTATE_90) if turned else picture


def camera_file(*, large: bool = True) -> bytes:
    """A JPEG as a phone held upright writes it: lying on its side, with Exif, position and all."""
    exif = Image.Exif()
    exif[0x0112] = 6  # to be turned a quarter clockwise
    exif[0x010F] = MAKER
    place = exif.get_ifd(0x8825)
    place[1], place[2] = "N", (47.0, 22.0, 11.0)
    place[3], place[4] = "E", (8.0, 32.0, 33.0)
    made = io.BytesIO()
    picture = dial_picture(turned=True, large=large)
    picture.save(made, "JPEG", exif=exif, quality=90, comment=COMMENT)
    return made.getvalue()


def bare_file(shade: int = 0, size: tuple[int, int] = (64, 48)) -> bytes:
    """A small JPEG with nothing but what draws it."""
    made = io.BytesIO()
    Image.linear_gradient("L").resize(size).point(lambda v: (v + shade) % 256).save(made, "JPEG")
    return bare(made.getvalue())


def segments(jpeg: bytes) -> list[tuple[int, bytes]]:
    """Kind and content of each segment of a JPEG (ITU-T T.81, B.1.1), what is drawn left out.

    What stands behind the end of the picture is given as a segment of kind 0.
    """
    assert jpeg[:2] == b"\xff\xd8"
    found: list[tuple[int, bytes]] = []
    at = 2
    while True:
        assert jpeg[at] == 0xFF
        kind = jpeg[at + 1]
        if kind == 0xD9:
            rest = jpeg[at + 2 :]
            return [*found, (0, rest)] if rest else found
        length = int.from_bytes(jpeg[at + 2 : at + 4], "big")
        found.append((kind, jpeg[at + 4 : at + 2 + length]))
        at += 2 + length
        if kind == 0xDA:
            while jpeg[at] != 0xFF or jpeg[at + 1] in (0x00, *range(0xD0, 0xD8)):
                at += 1


def bare(jpeg: bytes) -> bytes:
    """A JPEG without its application segments and comments."""
    made, at = [jpeg[:2]], 2
    while jpeg[at + 1] != 0xDA:
        end = at + 2 + int.from_bytes(jpeg[at + 2 : at + 4], "big")
        if not 0xE0 <= jpeg[at + 1] <= 0xEF and jpeg[at + 1] != 0xFE:
            made.append(jpeg[at:end])
        at = end
    return b"".join([*made, jpeg[at:]])
