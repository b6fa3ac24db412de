"""Whether data have the shape of a job file: nothing in them that the form has no place for.

Values that a person can mend in the form may be wrong: a text where a number is due, a number out
of its range, too few readings. What the form could not hold is a fault: an unknown key, a list
where a group is due, more of a thing than there may be, a text that is too long or can't be shown.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from sweepsheet.form.sweeps import MOST_WORDS
from sweepsheet.job.checklist import CODES
from sweepsheet.job.fields import FieldReader, shown
from sweepsheet.job.model import (
    ABOUT_KEYS,
    Axis,
    BearingClass,
    CompanionKind,
    Contact,
    EndFloat,
    Joint,
    Plunger,
    PlusWhen,
    Target,
    TiltFrom,
)
from sweepsheet.job.read import JOB_KEYS, LONGEST_NAME, MOST_ROUNDS
from sweepsheet.job.sag import Holder
from sweepsheet.job.sweeps import MOST_SWEEPS
from sweepsheet.maths.units import SYSTEMS
from sweepsheet.words.messages import Message

LONGEST_TYPED = 10_000

# Keys whose values are numbers, by section.
_NUMBERS = {
    "limits": ("bore_offset", "face_runout", "face_radius", "pilot_offset", "confidence"),
    "indicator": (
        "step", "accuracy", "repeatability", "contact_angle_deg", "sag_allowance",
        "angle_setting_deg",
    ),
    "crank": ("lift",),
    "housing": (
        "depth", "pilot_distance", "tail_distance", "bore_diameter", "register_diameter",
        "bolt_clearance", "dowel_clearance",
    ),
    "stock": ("aim_setting_deg",),
    "chip": ("height", "at_deg", "radius"),
}  # fmt: skip
# Keys whose values are one of a few words.
_CHOICES: dict[str, dict[str, tuple[str, ...]]] = {
    "indicator": {"plus_when": get_args(PlusWhen)},
    "crank": {"axis": get_args(Axis)},
    "stock": {"aim_for": get_args(Target)},
    "chip": {"joint": get_args(Joint)},
}
# ... or nothing, where it is not known.
_CHOICES_OR_NULL = {
    "indicator": {"holder": get_args(Holder)},
    "housing": {"pilot_bearing": get_args(BearingClass), "tilt_from": get_args(TiltFrom)},
}
_LISTS = {"stock": ("dowel_offsets", "shim_thicknesses"), "housing": ("bolts", "dowel_holes")}
_BORE = {"contact": get_args(Contact)}
_FACE = {"plunger": get_args(Plunger), "end_float": get_args(EndFloat)}
_PART = {"contact": get_args(Contact), "plunger": get_args(Plunger)}
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
        for section in ("limits", "indicator", "crank", "housing", "stock", "chip"):
            self.settings(top, section)
        self.checklist(top.get("checklist"))
        self.companions(top.get("companions"))
        for n, each in enumerate(self.listing(top.get("rounds"), "rounds", 1, MOST_ROUNDS)):
            self.round(each, f"rounds.{n}")
        return top

    def settings(self, top: Mapping[str, Any], section: str) -> None:
        """A section of numbers, choices and lists."""
        numbers, choices = _NUMBERS[section], _CHOICES.get(section, {})
        lists = _LISTS.get(section, ())
        texts = ("source",) if section == "limits" else ()
        maybe = _CHOICES_OR_NULL.get(section, {})
        tests = ("sag",) if section == "indicator" else ()
        part = self.group(top, section, (*numbers, *choices, *lists, *texts, *maybe, *tests))
        for key in numbers:
            self.leaf(part.get(key), f"{section}.{key}")
        self.choices(part, section, choices)
        known = {key: allowed for key, allowed in maybe.items() if part.get(key) is not None}
        self.choices(part, section, known)
        self.text(part.get("source", ""), f"{section}.source")
        for key in tests:
            path, value = f"{section}.{key}", part.get(key)
            tries = self.listing(value, path, 0, MOST_WORDS) if isinstance(value, list) else [value]
            for item in tries:
                self.leaf(item, path)
        for key in lists:
            path = f"{section}.{key}"
            # Only the dowel holes may be given as not known.
            if key in part and not (key == "dowel_holes" and part[key] is None):
                for i, item in enumerate(self.listing(part[key], path, 0, MOST_WORDS)):
                    if section == "housing":
                        self.leaves(item, f"{path}.{i}", ("at_deg", "radius"))
                    else:
                        self.leaf(item, f"{path}.{i}")

    def checklist(self, value: object) -> None:
        codes = [] if value is None else value
        for i, code in enumerate(self.listing(codes, "checklist", 0, len(CODES))):
            self.reader.choice(code, f"checklist.{i}", _named("checklist"), CODES)

    def companions(self, value: object) -> None:
        kinds = get_args(CompanionKind)
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
        part = self.reader.section(value, path, ("name", "dowels", "bore", "face"))
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
