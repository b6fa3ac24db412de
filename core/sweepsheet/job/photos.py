"""Photos beside readings, as far as a job knows them: which reading has one, and what it is called.

A photo is called by the first 16 hexadecimal digits of the SHA-256 (FIPS 180-4) of its file's
bytes. That is enough to find the file again among any that people have; who makes two
pictures of one name on purpose can, with much computing, so it proves nothing against its maker.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

from sweepsheet.job.fields import FieldReader
from sweepsheet.job.model import Photo
from sweepsheet.job.values import name_of

MOST_PHOTOS = 60
LONGEST_PLACE = 60
NAME = re.compile(r"[0-9a-f]{16}")
_NUMBER = r"(?:0|[1-9][0-9]?)"
_PLACE = re.compile(
    rf"(?:rounds\.{_NUMBER}\.(?:bore|face)|companions\.{_NUMBER})"
    rf"\.(?:(?:sweeps|opposite)\.{_NUMBER}\.{_NUMBER}|closing\.{_NUMBER})"
)


def read_photos(reader: FieldReader, top: Mapping[str, Any]) -> tuple[Photo, ...]:
    """The photos of a job's data, in the order of the places; each place has one at most."""
    given = [] if top.get("photos") is None else top["photos"]
    found: dict[str, Photo] = {}
    for i, item in enumerate(reader.listing(given, "photos", name_of("photos"), 0, MOST_PHOTOS)):
        path = f"photos.{i}"
        part = reader.section(item, path, ("at", "hash"))
        at = reader.text(part.get("at"), f"{path}.at", name_of("photo.at"), LONGEST_PLACE)
        name = reader.text(part.get("hash"), f"{path}.hash", name_of("photo.hash"), LONGEST_PLACE)
        if not is_reading(top, at):
            reader.fault(f"{path}.at", "fault.photo_at", at=at)
        elif at in found:
            reader.fault(f"{path}.at", "fault.photo_twice", at=at)
        if not NAME.fullmatch(name):
            reader.fault(f"{path}.hash", "fault.photo_hash")
        found[at] = Photo(at, name)
    return tuple(found[at] for at in readings_of(top) if at in found)


def is_reading(data: Mapping[str, Any], at: str) -> bool:
    """Whether the data have a reading, or room for one, at a place such as this.

    >>> data = {"rounds": [{"bore": {"sweeps": [[0, None, 2]]}}]}
    >>> [is_reading(data, f"rounds.0.bore.{at}") for at in ("sweeps.0.1", "closing.0", "name")]
    [True, True, False]
    """
    if not _PLACE.fullmatch(at):
        return False
    # A sweep may have come back where it began, whether that was noted or not.
    part: Any = data
    for step in at.replace(".closing.", ".sweeps.").split("."):
        if isinstance(part, Mapping) and step in part:
            part = part[step]
        elif isinstance(part, list | tuple) and step.isdigit() and int(step) < len(part):
            part = part[int(step)]
        else:
            return False
    return True


def readings_of(data: Mapping[str, Any]) -> Iterator[str]:
    """The place of every reading, and of every return to zero, in the order of the record."""
    for n, each in enumerate(_list(data.get("rounds"))):
        for part in ("bore", "face"):
            if isinstance(each, Mapping):
                yield from _readings_in(each.get(part), f"rounds.{n}.{part}")
    for k, part in enumerate(_list(data.get("companions"))):
        yield from _readings_in(part, f"companions.{k}")


def _readings_in(part: object, at: str) -> Iterator[str]:
    if not isinstance(part, Mapping):
        return
    for key in ("sweeps", "opposite"):
        for j, row in enumerate(_list(part.get(key))):
            yield from (f"{at}.{key}.{j}.{i}" for i, _ in enumerate(_list(row)))
    yield from (f"{at}.closing.{j}" for j, _ in enumerate(_list(part.get("sweeps"))))


def _list(value: object) -> list[Any] | tuple[Any, ...]:
    return value if isinstance(value, list | tuple) else []
