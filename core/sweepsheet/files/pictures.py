"""The pictures in a file of jobs: small JPEGs of pixels alone, each beside its SHA-256.

What comes from outside is taken whole or refused in words. A picture has those segments alone
without which nobody can draw it (ITU-T T.81, annex B): no Exif, no place where it was taken, no
comment, no second picture, nothing behind its end.
"""

from __future__ import annotations

import binascii
import hashlib
import re
from collections.abc import Sequence
from typing import Any

from sweepsheet.job.fields import FieldReader
from sweepsheet.words.faults import refused
from sweepsheet.words.messages import Message

KEY = "pictures"
LARGEST_PICTURE = 120_000
MOST_PICTURES = 200
# Characters of base64, of all pictures of a file.
LONGEST_PICTURES = 8_000_000
_LONGEST = (LARGEST_PICTURE + 2) // 3 * 4
_MOST_PIXELS = 2048

_START, _END, _SCAN = b"\xff\xd8", b"\xff\xd9", 0xDA
# Frames, Huffman tables, quantization tables, restart interval.
_FRAMES = (0xC0, 0xC1, 0xC2)
_NEEDED = (*_FRAMES, 0xC4, 0xDB, 0xDD)
# What is drawn: any byte, but a marker is none unless it is a stuffed FF or a restart.
_DRAWN = re.compile(rb"(?:[^\xff]++|\xff[\x00\xd0-\xd7])*+")


def put_pictures(data: dict[str, Any], pictures: Sequence[str]) -> None:
    """Put pictures, as base64, into the data of a file. Raises ``InputError`` as reading does."""
    if not pictures:
        return
    listed = [{"sha256": _sum(_decoded(each)), "jpeg": each} for each in pictures]
    data[KEY] = listed
    taken_pictures({KEY: listed})


def taken_pictures(data: dict[str, Any]) -> list[str]:
    """Take the pictures out of the data of a file: each as base64, as it came.

    Raises ``InputError`` where there are too many, where one is too large or no bare JPEG, and
    where its bytes are not those of its SHA-256.
    """
    reader = FieldReader()
    items = data.pop(KEY, None)
    name = Message("got.value", {"value": KEY})
    found = []
    given = [] if items is None else items
    for i, item in enumerate(reader.listing(given, KEY, name, 0, MOST_PICTURES)):
        part = reader.section(item, f"{KEY}.{i}", ("sha256", "jpeg"))
        text = part.get("jpeg")
        jpeg = _decoded(text)
        if not is_bare_jpeg(jpeg):
            reader.fault(f"{KEY}.{i}", "file.picture")
        elif part.get("sha256") != _sum(jpeg):
            reader.fault(f"{KEY}.{i}", "file.picture_sum")
        found.append(text)
    reader.raise_faults()
    texts = [str(text) for text in found]
    if sum(map(len, texts)) > LONGEST_PICTURES:
        raise refused("file.pictures_large")
    return texts


def _decoded(text: object) -> bytes:
    """The bytes in base64; none where it is not that, or too much."""
    if not isinstance(text, str) or len(text) > _LONGEST or not text.isascii():
        return b""
    try:
        return binascii.a2b_base64(text.encode(), strict_mode=True)
    except ValueError:
        return b""


def _sum(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def is_bare_jpeg(data: bytes) -> bool:
    """Whether this is a whole JPEG of a size that we make, with no segment but what draws it."""
    if not data.startswith(_START) or len(data) > LARGEST_PICTURE:
        return False
    at, frames, scans = 2, 0, 0
    while data[at:] != _END:
        head = data[at : at + 4]
        if len(head) < 4 or head[0] != 0xFF:
            return False
        kind, length = head[1], int.from_bytes(head[2:], "big")
        end = at + 2 + length
        if length < 2 or end > len(data):
            return False
        if kind in _FRAMES:
            frames += 1
            sides = data[at + 5 : at + 7], data[at + 7 : at + 9]
            if not all(1 <= int.from_bytes(side, "big") <= _MOST_PIXELS for side in sides):
                return False
        if kind == _SCAN:
            scans += 1
            drawn = _DRAWN.match(data, end)
            end = drawn.end() if drawn else end
        elif kind not in _NEEDED:
            return False
        at = end
    return frames == 1 and scans > 0
