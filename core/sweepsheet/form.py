"""From a filled-in form to a job file's data.

The form's fields are named by their place in the job (``rounds.0.bore.sweeps.0.3``) wherever they
have one there, and every value is text. What was begun and can't be fitted yet is left out and
named, so that an answer does not go away while more is being typed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, get_args

from sweepsheet.job import CompanionKind
from sweepsheet.positions import position_faults
from sweepsheet.read_job import FORMAT, MOST_BOLTS, MOST_ROUNDS, VERSION
from sweepsheet.read_sweeps import MOST_POSITIONS, MOST_SWEEPS
from sweepsheet.typed import Value, number_list, number_or_text, position_list, position_or_text
from sweepsheet.wording import Message

_TEXTS = (
    "units", "limits.source", "indicator.plus_when", "crank.axis", "stock.aim_for",
    "about.vehicle", "about.engine", "about.gearbox", "about.housing", "about.technician",
    "about.customer", "about.date", "about.notes",
)  # fmt: skip
_NUMBERS = (
    "limits.confidence", "indicator.step", "indicator.accuracy", "indicator.repeatability",
    "indicator.contact_angle_deg", "indicator.sag_allowance", "indicator.angle_setting_deg",
    "crank.lift", "stock.aim_setting_deg", "limits.face_radius", "limits.pilot_offset",
    "housing.depth", "housing.pilot_distance", "housing.tail_distance", "housing.bore_diameter",
    "housing.register_diameter", "housing.bolt_clearance", "housing.dowel_clearance",
)  # fmt: skip
# Blank means "not known" here, rather than the usual value.
_BLANK_IS_UNKNOWN = ("limits.bore_offset", "limits.face_runout", "indicator.sag")
_SWEEP_NAME = re.compile(r"(?P<at>.+)\.(?:sweeps|opposite|closing)\.(?P<sweep>\d{1,3})(?:\.|$)")
_LISTS = ("stock.dowel_offsets", "stock.shim_thicknesses")


@dataclass(frozen=True, slots=True)
class Typed:
    """What was typed, as job data, with what the page needs to know about it.

    ``names`` tells, for places of the job that the form calls otherwise, the form's name;
    ``fields``, for places that are one field of the form with all that is below them, which one.
    ``unfinished`` names what was begun and does not count yet.
    """

    job: dict[str, Any]
    names: dict[str, str] = field(default_factory=dict)
    fields: dict[str, str] = field(default_factory=dict)
    unfinished: list[Message] = field(default_factory=list)

    def form_name(self, place: str) -> str:
        """The form's name for a place of the job: the longest known beginning counts."""
        parts = place.split(".")
        for n in range(len(parts), 0, -1):
            beginning = ".".join(parts[:n])
            if beginning in self.fields:
                return self.fields[beginning]
            if beginning in self.names:
                return ".".join([self.names[beginning], *parts[n:]])
        return place


def job_of(form: Mapping[str, str]) -> Typed:
    """The job data in a filled-in form. Fields that are not there have their usual values."""
    typed = Typed({"format": FORMAT, "version": VERSION})
    for path in _TEXTS:
        if path in form:
            _put(typed.job, path, form[path])
    for path in _NUMBERS:
        value = number_or_text(form.get(path, ""))
        if value is not None:
            _put(typed.job, path, value)
    for path in _BLANK_IS_UNKNOWN:
        if path in form:
            _put(typed.job, path, number_or_text(form[path]))
    for path in _LISTS:
        if path in form:
            _put(typed.job, path, number_list(form[path]))
            # A list is one field of the form: a fault in it stands there.
            typed.fields[path] = f"{path}"
    _limit(typed, form)
    _holes(typed, form)
    if form.get("housing.pilot_bearing"):
        _put(typed.job, "housing.pilot_bearing", form["housing.pilot_bearing"])
    _chip(typed, form)
    _Sweeping(typed, form).fill()
    return typed


def _limit(typed: Typed, form: Mapping[str, str]) -> None:
    """A limit given as runout is twice the offset it allows."""
    limits = typed.job.get("limits", {})
    limit = limits.get("bore_offset")
    if form.get("limit_as") == "tir" and isinstance(limit, float):
        limits["bore_offset"] = limit / 2.0


def _holes(typed: Typed, form: Mapping[str, str]) -> None:
    """Bolts and dowel holes: a list of positions and one radius, or a radius for each."""
    for key, most in (("bolts", MOST_BOLTS), ("dowel_holes", 2)):
        at = position_list(form.get(f"{key}.at", ""), most)
        radii = number_list(form.get(f"{key}.radius", ""))
        if not at or not radii:
            continue
        each = radii * len(at) if len(radii) == 1 else radii
        each += [None] * (len(at) - len(each))
        place = f"housing.{key}"
        _put(
            typed.job,
            place,
            [{"at_deg": a, "radius": r} for a, r in zip(at, each, strict=False)],
        )
        typed.fields[place] = f"{key}.at"
        for i in range(len(at)):
            typed.fields[f"{place}.{i}.radius"] = f"{key}.radius"


def _chip(typed: Typed, form: Mapping[str, str]) -> None:
    """The chip that is supposed, once it has a height."""
    height = number_or_text(form.get("chip.height", ""))
    if height is not None:
        typed.job["chip"] = {
            "joint": form.get("chip.joint", "front"),
            "height": height,
            "at_deg": position_or_text(form.get("chip.at", "")),
            "radius": number_or_text(form.get("chip.radius", "")),
        }
        typed.fields["chip.at_deg"] = "chip.at"


@dataclass(frozen=True, slots=True)
class _Sweep:
    """One sweep of the form: its number there, its readings and its return to zero."""

    number: int
    readings: tuple[Value, ...]
    second: tuple[Value, ...]
    closing: Value

    @property
    def begun(self) -> bool:
        """Whether anything was typed."""
        return any(value is not None for value in (*self.readings, *self.second, self.closing))

    def unfinished(self, positions: list[Value]) -> bool:
        """Whether nothing typed is wrong, but it is too little to be fitted."""
        angles = [a for a in positions if isinstance(a, float)]
        rows = [row for row in (self.readings, self.second) if row]
        if len(angles) < len(positions) or any(isinstance(m, str) for row in rows for m in row):
            return False
        both = [None if None in column else 0.0 for column in zip(*rows, strict=True)]
        return any(True for _ in position_faults(angles, [both]))


class _Sweeping:
    """Fills in the rounds and companion sweeps of a job."""

    def __init__(self, typed: Typed, form: Mapping[str, str]) -> None:
        self.typed = typed
        self.form = form
        self.positions = position_list(form.get("positions", "12 3 6 9"), MOST_POSITIONS)
        # Which sweeps the form has at each place, so that no more is looked for.
        self.numbers: dict[str, set[int]] = {}
        for name in form:
            found = _SWEEP_NAME.match(name)
            if found and int(found["sweep"]) < MOST_SWEEPS:
                self.numbers.setdefault(found["at"], set()).add(int(found["sweep"]))

    def fill(self) -> None:
        """The first round always, later ones once their bore can be fitted; then companions."""
        first = self.round(0, 0)
        rounds = [first or {"bore": self.data([self.blank()], "rounds.0.bore", "rounds.0.bore")}]
        for n in range(1, MOST_ROUNDS):
            found = self.round(n, len(rounds))
            if found is not None:
                rounds.append(found)
        self.typed.job["rounds"] = rounds
        companions: list[dict[str, Any]] = []
        for kind in get_args(CompanionKind):
            at = f"companions.{kind}"
            counted = self.counted(at, Message(f"what.{kind}"), always=False)
            if counted:
                place = f"companions.{len(companions)}"
                part = self.data(counted, at, place) | {"kind": kind}
                part["limit"] = number_or_text(self.form.get(f"{at}.limit", ""))
                for key in ("contact", "plunger"):
                    if f"{at}.{key}" in self.form:
                        part[key] = self.form[f"{at}.{key}"]
                self.typed.names[place] = at
                companions.append(part)
        self.typed.job["companions"] = companions

    def round(self, n: int, index: int) -> dict[str, Any] | None:
        """Round n of the form as round ``index`` of the job; ``None`` where it does not count."""
        at, place = f"rounds.{n}", f"rounds.{index}"
        bore = self.counted(f"{at}.bore", _what("bore", n), always=n == 0)
        face = self.counted(f"{at}.face", _what("face", n), always=False)
        if not bore:
            return None
        self.typed.names[place] = at
        found: dict[str, Any] = {"bore": self.data(bore, f"{at}.bore", f"{place}.bore")}
        if "bore.contact" in self.form:
            found["bore"]["contact"] = self.form["bore.contact"]
        if face:
            found["face"] = self.face(face, f"{at}.face", f"{place}.face")
        if n:
            found["dowels"] = self.dowels(at, place)
        name = self.form.get(f"{at}.name", "")
        return found | {"name": name} if name else found

    def face(self, counted: list[_Sweep], at: str, place: str) -> dict[str, Any]:
        """A face sweep, with the second dial's readings where there is one."""
        end_float = self.form.get("face.end_float", "free")
        data = self.data(counted, at, place)
        data["radius"] = number_or_text(self.form.get("face.radius", ""))
        data["plunger"] = self.form.get("face.plunger", "forward")
        self.typed.names[f"{place}.radius"] = "face.radius"
        if end_float == "second":
            data["opposite"] = [list(sweep.second) for sweep in counted]
            for k, sweep in enumerate(counted):
                self.typed.names[f"{place}.opposite.{k}"] = f"{at}.opposite.{sweep.number}"
        else:
            data["end_float"] = end_float
        return data

    def dowels(self, at: str, place: str) -> list[dict[str, Any]]:
        """The dowels that are in for a round: the second is as the first unless told otherwise."""
        dowels = []
        for i in range(2):
            source = 0 if self.form.get(f"{at}.alike", "yes") == "yes" else i
            self.typed.names[f"{place}.dowels.{i}"] = f"{at}.dowels.{source}"
            self.typed.fields[f"{place}.dowels.{i}.aim_deg"] = f"{at}.dowels.{source}.aim"
            offset = number_or_text(self.form.get(f"{at}.dowels.{source}.offset", ""))
            aim = position_or_text(self.form.get(f"{at}.dowels.{source}.aim", ""))
            dowel: dict[str, Any] = {"offset": offset, "aim_deg": aim}
            # A blank is a standard dowel, whose aim is nothing.
            dowels.append({key: 0.0 if value is None else value for key, value in dowel.items()})
        return dowels

    def counted(self, at: str, what: Message, *, always: bool) -> list[_Sweep]:
        """The sweeps that count: the finished ones, else (``always``) whatever was begun."""
        begun = [sweep for sweep in self.sweeps(at) if sweep.begun]
        finished = [sweep for sweep in begun if not sweep.unfinished(self.positions)]
        if not finished and always:
            return begun
        for sweep in begun:
            if sweep not in finished:
                message = Message("page.unfinished", {"what": what, "n": sweep.number + 1})
                self.typed.unfinished.append(message)
        return finished

    def sweeps(self, at: str) -> list[_Sweep]:
        """Every sweep that the form may hold at a place."""
        count = len(self.positions)
        second = at.endswith(".face") and self.form.get("face.end_float") == "second"
        return [
            _Sweep(
                j,
                self.row(f"{at}.sweeps.{j}", count),
                self.row(f"{at}.opposite.{j}", count) if second else (),
                number_or_text(self.form.get(f"{at}.closing.{j}", "")),
            )
            for j in sorted(self.numbers.get(at, ()))
        ]

    def row(self, at: str, count: int) -> tuple[Value, ...]:
        """The readings of one sweep."""
        return tuple(number_or_text(self.form.get(f"{at}.{i}", "")) for i in range(count))

    def blank(self) -> _Sweep:
        """A sweep in which nothing was typed."""
        return _Sweep(0, (None,) * len(self.positions), (), None)

    def data(self, counted: list[_Sweep], at: str, place: str) -> dict[str, Any]:
        """Sweeps as job data, with the form's names for them."""
        self.typed.fields[f"{place}.positions_deg"] = "positions"
        for k, sweep in enumerate(counted):
            self.typed.names[f"{place}.sweeps.{k}"] = f"{at}.sweeps.{sweep.number}"
            self.typed.names[f"{place}.closing.{k}"] = f"{at}.closing.{sweep.number}"
        return {
            "positions_deg": self.positions,
            "sweeps": [list(sweep.readings) for sweep in counted],
            "closing": [sweep.closing for sweep in counted],
        }


def _what(part: str, n: int) -> Message:
    """The name of a sweep of round n, for what is unfinished."""
    what = Message(f"what.{part}")
    return Message("what.of_round", {"what": what, "n": n + 1}) if n else what


def _put(job: dict[str, Any], path: str, value: object) -> None:
    section, _, key = path.rpartition(".")
    (job.setdefault(section, {}) if section else job)[key] = value
