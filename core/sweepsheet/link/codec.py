"""A whole job in the fragment of a link, which browsers keep to themselves: no server sees it.

A fragment is ``2``, the version of this layout, and then base64url without padding (RFC 4648,
section 5: letters, digits, ``-`` and ``_``, which no messenger cuts) of a zlib stream (RFC 1950,
which carries its own checksum) of JSON in UTF-8: ``[job, figures]``.

``job`` is the data of a job file, format and version left out, and so is every key without which
``read_job`` gives the same job. Word number i of ``WORDS``, as a key or in a list, is written as
character number i of ``LETTERS``, and past these as number i of ``PAIRS``; one that is not among
them is written in full. ``figures`` are the lines of ``figures``. Version 1 differs in these alone:
it has them in English.
"""

from __future__ import annotations

import binascii
import json
import re
import zlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from sweepsheet.job.read import FORMAT, MOST_ROUNDS, VERSION, read_job
from sweepsheet.job.strict_json import load_json
from sweepsheet.words.faults import InputError, refused

LINK_VERSION = "3"
# The first layout has English figures; the first two come from releases that worked out doubt in
# another way.
FIRST_VERSION = "1"
OLDER_VERSIONS = ("1", "2")
# The most that sag was taken to be where such a link says nothing of it.
OLDER_SAG_ALLOWANCE = {"inch": 1.0, "metric": 0.025}
LONGEST_LINK = 8000
LONGEST_UNPACKED = 64_000
LONGEST_LINE = 200

# In this order for ever: links that are out there rest on it. New words come at the end.
WORDS = (
    "about", "limits", "source", "rounds", "vehicle", "engine", "gearbox", "housing", "technician",
    "customer", "date", "notes", "name", "units", "indicator", "crank", "stock", "chip",
    "companions", "bore_offset", "face_runout", "face_radius", "pilot_offset", "confidence", "step",
    "accuracy", "repeatability", "plus_when", "contact_angle_deg", "sag", "sag_allowance",
    "angle_setting_deg", "axis", "lift", "depth", "pilot_distance", "tail_distance",
    "pilot_bearing", "bore_diameter", "register_diameter", "dowel_holes", "bolts", "bolt_clearance",
    "dowel_clearance", "dowel_offsets", "aim_setting_deg", "aim_for", "shim_thicknesses", "at_deg",
    "radius", "joint", "height", "kind", "contact", "plunger", "limit", "positions_deg", "sweeps",
    "closing", "dowels", "offset", "aim_deg", "bore", "face", "end_float", "opposite", "checklist",
    "faces_clean", "nothing_proud", "parts_in_place", "bolts_even", "indicator_stiff",
    "car_safe", "dowels_secured", "bolts_torqued", "swept_again", "pilot_and_clutch", "slid_home",
    "crank_turns", "record_given", "tilt_from", "holder", "plate_thickness", "shop",
    "dial_out", "starter_and_release", "to_face", "to_pilot", "pilot_length", "to_bottom", "added",
    "to_tip", "journal_length", "to_hub_front", "to_hub_rear", "to_splines_front",
    "to_splines_rear", "disc_wear", "release", "to_fingers", "fingers_worn", "to_bearing",
    "bearing_stroke", "release_travel", "engagement_min", "tip_gap_min", "release_gap_min",
    "release_gap_max", "engine_pm", "gearbox_pm", "since", "reseated", "cleaned",
    "plate_turned", "swept_bore", "plate_concentricity", "photos", "at", "hash", "assembly", "rig",
    "sag_date", "sag_bar", "sag_reach", "reach", "hole_accuracy",
)  # fmt: skip
LETTERS = (
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789!#$%&()*+,-./:;<=>?@^_~'[]`{|}"
)
# When the letters are used up, pairs of them come, which all begin with the last.
PAIRS = tuple(LETTERS[-1] + letter for letter in LETTERS)
SHORT = dict(zip(WORDS, (*LETTERS, *PAIRS), strict=False))
LONG = {letter: key for key, letter in SHORT.items()}

_NEWER = "456789"
_TO_URL = bytes.maketrans(b"+/", b"-_")
_FROM_URL = bytes.maketrans(b"-_", b"+/")
_FRAGMENT = re.compile(r"[A-Za-z0-9_-]+")
# Numbers, clock positions, codes, units, and the words of the first links; nothing that could be
# more. Only a chance, such as >99%, is told to be over or under.
_LINE = re.compile(r"(?:[\w .,:%'’\u2212|-]|[<>](?=\d\d?%))*")


@dataclass(frozen=True, slots=True)
class Linked:
    """What a link carries: a job file's data, not yet checked, and the figures claimed for it."""

    data: dict[str, Any]
    figures: tuple[str, ...]
    version: str = LINK_VERSION


def fragment_of(data: Mapping[str, Any], figures: tuple[str, ...]) -> str:
    """The fragment for a job file's data and its figures.

    Raises ``InputError`` where the data are no job, and where the link would be too long.
    """
    parts = [_short(minimal(data)), list(figures)]
    text = json.dumps(parts, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    fragment = LINK_VERSION + packed(text)
    if len(fragment) > LONGEST_LINK or len(text.encode("utf-8")) > LONGEST_UNPACKED:
        raise refused("link.too_long", got=len(fragment), high=LONGEST_LINK)
    return fragment


def packed(text: str) -> str:
    """A text as a payload: zlib, then base64url without padding.

    >>> unpacked(packed("m(a) = k"))
    'm(a) = k'
    """
    stream = binascii.b2a_base64(zlib.compress(text.encode("utf-8"), 9), newline=False)
    return stream.translate(_TO_URL).rstrip(b"=").decode("ascii")


def read_link(fragment: str) -> Linked:
    """What a fragment carries. Raises ``InputError`` where it is not a whole link of ours.

    >>> rounds = [{"bore": {"sweeps": [[0, 1, 2, 1]]}}]
    >>> job = {"format": FORMAT, "version": VERSION, "rounds": rounds}
    >>> read_link(fragment_of(job, ("thou", "1.0"))) == Linked(job, ("thou", "1.0"))
    True
    """
    if not fragment:
        raise refused("link.none")
    if len(fragment) > LONGEST_LINK:
        raise refused("link.longer", high=LONGEST_LINK)
    if fragment[0] not in (*OLDER_VERSIONS, LINK_VERSION):
        raise refused("link.newer" if fragment[0] in _NEWER else "link.foreign")
    try:
        parts = load_json(unpacked(fragment[1:]))
    except (InputError, ValueError, zlib.error):
        raise refused("link.cut") from None
    match parts:
        case [dict() as job, list() as lines]:
            data = {"format": FORMAT, "version": VERSION, **_long(job)}
            if fragment[0] in OLDER_VERSIONS:
                data = _with_older_defaults(data)
            return Linked(data, _figures(lines), fragment[0])
    raise refused("link.foreign")


def _with_older_defaults(data: dict[str, Any]) -> dict[str, Any]:
    """The data of an older link, with what it left out since it was usual then."""
    dial = data.get("indicator") or {}
    most = OLDER_SAG_ALLOWANCE.get(str(data.get("units", "inch")))
    if not isinstance(dial, dict) or most is None or {"sag", "sag_allowance"} & dial.keys():
        return data
    return {**data, "indicator": {**dial, "sag_allowance": most}}


def unpacked(payload: str) -> str:
    """The text in a payload. Raises ``ValueError`` or ``zlib.error`` where it is not whole."""
    if not _FRAGMENT.fullmatch(payload):
        raise ValueError(payload)
    # Padding to a multiple of four, which a link leaves out.
    padded = payload.encode("ascii").translate(_FROM_URL) + b"=" * (-len(payload) % 4)
    stream = zlib.decompressobj()
    raw = stream.decompress(binascii.a2b_base64(padded, strict_mode=True), LONGEST_UNPACKED)
    if not stream.eof or stream.unused_data:
        raise ValueError(payload)
    return raw.decode("utf-8")


def _figures(lines: list[Any]) -> tuple[str, ...]:
    """The claimed figures: a line for the job and one for each of its rounds."""
    for line in lines:
        if not isinstance(line, str) or len(line) > LONGEST_LINE or not _LINE.fullmatch(line):
            raise refused("link.figures")
    if not 2 <= len(lines) <= 1 + MOST_ROUNDS:
        raise refused("link.figures")
    return tuple(lines)


def minimal(data: Mapping[str, Any]) -> dict[str, Any]:
    """The data without format, version, and every key that changes nothing; whole numbers as such.

    Rounds are looked at one by one, each as if it were the first, or a long job would take long;
    so names of rounds stay, and what was done before them. Raises ``InputError`` where the data are
    no job.
    """
    read_job(data)
    rounds = data["rounds"]
    # Photos belong to the whole; of their pictures nothing goes out by a link.
    apart = ("format", "version", "photos", "pictures")
    head = {key: value for key, value in data.items() if key not in apart}
    photos = {"photos": list(data["photos"])} if data.get("photos") else {}
    shortest = _without_needless({**head, "rounds": rounds[:1]})
    units = {"units": data["units"]} if "units" in data else {}
    found = []
    for each in rounds:
        kept = {key: each[key] for key in ("name", "since") if each.get(key)}
        alone = {key: value for key, value in each.items() if key != "since"}
        found.append(_without_needless({**units, "rounds": [alone]})["rounds"][0] | kept)
    return {**shortest, "rounds": found, **photos}


def _without_needless(data: Mapping[str, Any]) -> dict[str, Any]:
    """The data without every key that can be taken away so that the job stays the same."""
    copy: dict[str, Any] = {"format": FORMAT, "version": VERSION, **_plain(data)}
    job = read_job(copy)

    def look_below(part: object) -> None:
        if isinstance(part, dict):
            for key in list(part):
                value = part.pop(key)
                if not is_same():
                    part[key] = value
                    look_below(value)
        elif isinstance(part, list):
            for item in part:
                look_below(item)

    def is_same() -> bool:
        try:
            return read_job(copy) == job
        except InputError:
            return False

    look_below(copy)
    return {key: value for key, value in copy.items() if key not in ("format", "version")}


def _plain(value: Any) -> Any:
    """A copy in which numbers are as short as they can be written: 5 for 5.0."""
    if isinstance(value, Mapping):
        return {key: _plain(each) for key, each in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(each) for each in value]
    if isinstance(value, float) and value.is_integer():
        return int(value)
    return value


def _short(value: Any) -> Any:
    """A copy with the short forms of keys, and of words in lists."""
    if isinstance(value, dict):
        return {SHORT.get(key, key): _short(each) for key, each in value.items()}
    return _listed(value, SHORT, _short)


def _long(value: Any) -> Any:
    """A copy with keys and words in full. A key that then stands twice is refused."""
    if isinstance(value, dict):
        found = {LONG.get(key, key): _long(each) for key, each in value.items()}
        if len(found) < len(value):
            raise refused("link.cut")
        return found
    return _listed(value, LONG, _long)


def _listed(value: Any, words: Mapping[str, str], deeper: Callable[[Any], Any]) -> Any:
    if not isinstance(value, list):
        return value
    return [words.get(each, each) if isinstance(each, str) else deeper(each) for each in value]
