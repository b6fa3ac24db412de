"""Whether data have the shape of a job file: nothing in them that the form has no place for.

Values that a person can mend in the form may be wrong: a text where a number is due, a number out
of its range, too few readings. What the form could not hold is a fault: an unknown key, a list
where a group is due, more of a thing than there may be, a text that is too long or can't be shown.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from sweepsheet.form.typed_sweeps import MOST_WORDS
from sweepsheet.job.checklist import CODES
from sweepsheet.job.fields import FieldReader, shown
from sweepsheet.job.model import (
    ABOUT_KEYS,
    SECTIONS,
    Contact,
    EndFloat,
    Joint,
    Plunger,
    RotatingPartKind,
    Since,
)
from sweepsheet.job.photos import read_photos
from sweepsheet.job.read import JOB_KEYS, LONGEST_NAME, MOST_ROUNDS
from sweepsheet.job.settings import Setting, keys_of, settings_of
from sweepsheet.job.sweeps import MOST_SWEEPS
from sweepsheet.maths.units import SYSTEMS
from sweepsheet.words.messages import Message

LONGEST_TYPED = 10_000

# What is described nowhere but read by code of its own.
_HOLES = {"housing": ("bolts", "dowel_holes")}
_TESTS = {"indicator": ("sag",)}
_BORE = {"contact": get_args(Contact)}
_FACE = {"plunger": get_args(Plunger), "end_float": get_args(EndFloat)}
_PART = {"contact": get_args(Contact), "plunger": get_args(Plunger)}
_ROUND = {"since": get_args(Since)}
_SWEPT = ("positions_deg", "sweeps", "closing")


def check_shape(data: object) -> Mapping[str, Any]:
    """The data, if they have the shape of a job file; ``InputError`` with every fault if not.

    Format and version are the caller's business.
    """
    shape = _Shape()
    found = shape.job(data)
    shape.reader.raise_faults()
    return found


def _named(path: str) -> Message:
    return Message("got.value", {"value": path})


class _Shape:
    """Walks through the data and notes what is out of shape."""

    def __init__(self) -> None:
        self.reader = FieldReader()

    def job(self, data: object) -> Mapping[str, Any]:
        top = self.reader.section(data, "", JOB_KEYS)
        self.text(top.get("name", ""), "name", LONGEST_NAME)
        self.choices(top, "", {"units": tuple(SYSTEMS)})
        about = self.group(top, "about", ABOUT_KEYS)
        for key, text in about.items():
            if key in ABOUT_KEYS:
                self.text(text, f"about.{key}")
        for section, kind in SECTIONS.items():
            self.section(top, section, kind)
        self.chip(top)
        self.checklist(top.get("checklist"))
        self.companions(top.get("companions"))
        for n, each in enumerate(self.listing(top.get("rounds"), "rounds", 1, MOST_ROUNDS)):
            self.round(each, f"rounds.{n}")
        read_photos(self.reader, top)
        return top

    def section(self, top: Mapping[str, Any], section: str, kind: type) -> None:
        """A part of described settings, and of those that have code of their own."""
        part = self.group(top, section, keys_of(kind))
        for key, setting in settings_of(kind).items():
            if key in part:
                self.setting(part, section, key, setting)
        for key in _TESTS.get(section, ()):
            path, value = f"{section}.{key}", part.get(key)
            tries = self.listing(value, path, 0, MOST_WORDS) if isinstance(value, list) else [value]
            for item in tries:
                self.leaf(item, path)
        for key in _HOLES.get(section, ()):
            path = f"{section}.{key}"
            # Only the dowel holes may be given as not known.
            if key in part and not (key == "dowel_holes" and part[key] is None):
                for i, item in enumerate(self.listing(part[key], path, 0, MOST_WORDS)):
                    self.leaves(item, f"{path}.{i}", ("at_deg", "radius"))

    def setting(self, part: Mapping[str, Any], section: str, key: str, setting: Setting) -> None:
        path, value = f"{section}.{key}", part[key]
        match setting.kind:
            case "number":
                self.leaf(value, path)
            case "text":
                self.text(value, path)
            case "choice":
                if value is not None or not setting.nullable:
                    self.choices(part, section, {key: setting.choices})
            case _:  # sizes
                for i, item in enumerate(self.listing(value, path, 0, MOST_WORDS)):
                    self.leaf(item, f"{path}.{i}")

    def chip(self, top: Mapping[str, Any]) -> None:
        part = self.group(top, "chip", ("joint", "height", "at_deg", "radius"))
        for key in ("height", "at_deg", "radius"):
            self.leaf(part.get(key), f"chip.{key}")
        self.choices(part, "chip", {"joint": get_args(Joint)})

    def checklist(self, value: object) -> None:
        codes = [] if value is None else value
        for i, code in enumerate(self.listing(codes, "checklist", 0, len(CODES))):
            self.reader.choice(code, f"checklist.{i}", _named("checklist"), CODES)

    def companions(self, value: object) -> None:
        kinds = get_args(RotatingPartKind)
        parts = self.listing([] if value is None else value, "companions", 0, len(kinds))
        found = set()
        for i, each in enumerate(parts):
            path = f"companions.{i}"
            part = self.reader.section(each, path, ("kind", "limit", *_PART, *_SWEPT))
            kind = self.reader.choice(
                part.get("kind"), f"{path}.kind", _named(f"{path}.kind"), kinds
            )
            if kind in found:
                self.reader.fault(f"{path}.kind", "fault.part_twice", kind=kind)
            found.add(kind)
            self.leaf(part.get("limit"), f"{path}.limit")
            self.choices(part, path, _PART)
            self.swept(part, path)

    def round(self, value: object, path: str) -> None:
        part = self.reader.section(value, path, ("name", "dowels", "bore", "face", *_ROUND))
        self.choices(part, path, _ROUND)
        self.text(part.get("name", ""), f"{path}.name")
        if "dowels" in part:
            for i, dowel in enumerate(self.listing(part["dowels"], f"{path}.dowels", 2, 2)):
                self.leaves(dowel, f"{path}.dowels.{i}", ("offset", "aim_deg"))
        at = f"{path}.bore"
        bore = self.reader.section(part.get("bore"), at, (*_BORE, *_SWEPT))
        self.choices(bore, at, _BORE)
        self.swept(bore, at)
        if part.get("face") is not None:
            at = f"{path}.face"
            face = self.reader.section(part["face"], at, ("radius", "opposite", *_FACE, *_SWEPT))
            self.leaf(face.get("radius"), f"{at}.radius")
            self.choices(face, at, _FACE)
            self.swept(face, at)

    def swept(self, part: Mapping[str, Any], path: str) -> None:
        """Positions, and sweeps of no more readings than that."""
        positions = [0, 90, 180, 270]
        if "positions_deg" in part:
            at = f"{path}.positions_deg"
            positions = self.listing(part["positions_deg"], at, 0, MOST_WORDS)
            for i, position in enumerate(positions):
                self.leaf(position, f"{at}.{i}")
        rows = self.listing(part.get("sweeps"), f"{path}.sweeps", 1, MOST_SWEEPS)
        self.rows(rows, f"{path}.sweeps", len(positions))
        if part.get("opposite") is not None:
            at = f"{path}.opposite"
            self.rows(self.listing(part["opposite"], at, 0, len(rows)), at, len(positions))
        if part.get("closing") is not None:
            at = f"{path}.closing"
            for j, closing in enumerate(self.listing(part["closing"], at, 0, len(rows))):
                self.leaf(closing, f"{at}.{j}")

    def rows(self, rows: list[Any], path: str, most: int) -> None:
        for j, row in enumerate(rows):
            for i, reading in enumerate(self.listing(row, f"{path}.{j}", 0, most)):
                self.leaf(reading, f"{path}.{j}.{i}")

    # Values --------------------------------------------------------------------------------

    def group(self, top: Mapping[str, Any], key: str, keys: tuple[str, ...]) -> Mapping[str, Any]:
        """A group of fields; none where it is left out."""
        value = top.get(key)
        return {} if value is None else self.reader.section(value, key, keys)

    def listing(self, value: object, path: str, least: int, most: int) -> list[Any]:
        return list(self.reader.listing(value, path, _named(path), least, most))

    def leaves(self, value: object, path: str, keys: tuple[str, ...]) -> None:
        part = self.reader.section(value, path, keys)
        for key in keys:
            self.leaf(part.get(key), f"{path}.{key}")

    def leaf(self, value: object, path: str) -> None:
        """One value, which the form can show as it is."""
        if isinstance(value, str):
            self.text(value, path)
        elif value is not None and not isinstance(value, int | float):
            self.reader.fault(path, "fault.number", name=path, got=shown(value))

    def text(self, value: object, path: str, most: int = LONGEST_TYPED) -> None:
        self.reader.text(value, path, _named(path), most)

    def choices(
        self, part: Mapping[str, Any], path: str, choices: Mapping[str, tuple[str, ...]]
    ) -> None:
        for key, allowed in choices.items():
            if key in part:
                at = f"{path}.{key}" if path else key
                self.reader.choice(part[key], at, _named(at), allowed)
