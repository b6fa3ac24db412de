"""From what a person typed into the form to a job file's data.

The form's fields are named by their place in the job (``rounds.0.bore.sweeps.0.3``), and every
value is text. What looks like a number becomes one; what does not is passed on as it is, so that
``read_job`` can say at that very field what is wanted. Nothing is refused here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from sweepsheet.clock import parse_position
from sweepsheet.positions import position_faults
from sweepsheet.read_job import FORMAT, VERSION
from sweepsheet.read_sweeps import MOST_POSITIONS, MOST_SWEEPS

# Text fields whose blank means "not known" rather than "the usual value".
_BLANK_IS_UNKNOWN = ("limits.bore_offset", "indicator.sag")
_TEXTS = ("units", "limits.source", "indicator.plus_when", "crank.axis")
_NUMBERS = (
    "limits.confidence", "indicator.step", "indicator.accuracy", "indicator.repeatability",
    "indicator.contact_angle_deg", "indicator.sag_allowance", "indicator.angle_setting_deg",
    "crank.lift", "stock.aim_setting_deg",
)  # fmt: skip

_NUMBER = re.compile(r"[+-]?(?:\d{1,12}(?:\.\d{0,12})?|\.\d{1,12})")
_SIGNS = str.maketrans({"\N{MINUS SIGN}": "-", "\N{EN DASH}": "-", "\N{NO-BREAK SPACE}": " "})


@dataclass(frozen=True, slots=True)
class Typed:
    """What was typed, as job data, with what the page needs to know about it.

    ``sweeps[k]`` is the number, in the form, of the sweep that is number k in the job: one in
    which nothing was typed yet is left out, and so are those in ``unfinished``, which beside a
    finished sweep do not count before they can be fitted.
    """

    job: dict[str, Any]
    sweeps: tuple[int, ...]
    unfinished: tuple[int, ...]


def number_or_text(typed: str) -> float | str | None:
    """A typed number, the text itself where it is none, ``None`` where nothing was typed.

    A decimal comma will do, and so will any minus sign a phone may set.

    >>> number_or_text(" -5,5 "), number_or_text(".004"), number_or_text("o"), number_or_text(" ")
    (-5.5, 0.004, 'o', None)
    """
    text = typed.translate(_SIGNS).strip()
    if not text:
        return None
    if text in ("+", "-"):
        return None  # the sign of a reading that is still being typed
    plain = text.replace(",", ".").replace("- ", "-").replace("+ ", "+")
    return float(plain) if _NUMBER.fullmatch(plain) else text


def number_list(typed: str) -> list[float | str | None]:
    """Typed numbers parted by spaces, semicolons, or commas that are followed by a space.

    >>> number_list("7, 14, 21"), number_list("0,178 0,356"), number_list("7,14,21")
    ([7.0, 14.0, 21.0], [0.178, 0.356], [7.0, 14.0, 21.0])
    """
    parts = [part.strip(",") for part in re.split(r"[;\s]+", typed.strip())]
    if len(parts) == 1 and parts[0].count(",") > 1:
        parts = parts[0].split(",")
    return [number_or_text(part) for part in parts if part]


def job_of(form: Mapping[str, str]) -> Typed:
    """The job data in a filled-in form. Fields that are not there have their usual values."""
    job: dict[str, Any] = {"format": FORMAT, "version": VERSION}
    for path in _TEXTS:
        if path in form:
            _put(job, path, form[path])
    for path in _NUMBERS:
        value = number_or_text(form.get(path, ""))
        if value is not None:
            _put(job, path, value)
    for path in _BLANK_IS_UNKNOWN:
        if path in form:
            _put(job, path, number_or_text(form[path]))
    limit = job.get("limits", {}).get("bore_offset")
    if form.get("limit_as") == "tir" and isinstance(limit, float):
        # A limit given as runout is twice the offset it allows.
        job["limits"]["bore_offset"] = limit / 2.0
    if "stock.dowel_offsets" in form:
        _put(job, "stock.dowel_offsets", number_list(form["stock.dowel_offsets"]))
    at = "rounds.0.bore"
    positions = _positions_of(form.get(f"{at}.positions", "12 3 6 9"))
    begun = [sweep for sweep in _sweeps_of(form, at, len(positions)) if sweep.begun]
    finished = [sweep for sweep in begun if not sweep.unfinished(positions)]
    counted = finished or begun or [_Sweep(0, (None,) * len(positions), None)]
    bore = {
        "contact": form.get(f"{at}.contact", "inside"),
        "positions_deg": positions,
        "sweeps": [list(sweep.readings) for sweep in counted],
        "closing": [sweep.closing for sweep in counted],
    }
    job["rounds"] = [{"bore": bore}]
    return Typed(
        job,
        sweeps=tuple(sweep.number for sweep in counted),
        unfinished=tuple(sweep.number for sweep in begun if sweep not in counted),
    )


@dataclass(frozen=True, slots=True)
class _Sweep:
    """One sweep of the form: its number there, its readings and its return to zero."""

    number: int
    readings: tuple[float | str | None, ...]
    closing: float | str | None

    @property
    def begun(self) -> bool:
        """Whether anything was typed."""
        return any(value is not None for value in (*self.readings, self.closing))

    def unfinished(self, positions: list[float | str]) -> bool:
        """Whether nothing typed is wrong, but it is too little to be fitted."""
        angles = [a for a in positions if not isinstance(a, str)]
        numbers = [m for m in self.readings if not isinstance(m, str)]
        if len(angles) < len(positions) or len(numbers) < len(self.readings):
            return False
        return any(True for _ in position_faults(angles, [numbers]))


def _positions_of(typed: str) -> list[float | str]:
    """The positions in degrees; one that can't be understood stays as it was typed."""
    words = [word for word in re.split(r"[;,\s]+", typed.strip()) if word]
    parsed = [(word, parse_position(word)) for word in words[: MOST_POSITIONS + 1]]
    return [word if angle is None else angle for word, angle in parsed]


def _sweeps_of(form: Mapping[str, str], at: str, positions: int) -> Iterator[_Sweep]:
    """Every sweep that the form may hold."""
    for j in range(MOST_SWEEPS):
        typed = [form.get(f"{at}.sweeps.{j}.{i}", "") for i in range(positions)]
        closing = number_or_text(form.get(f"{at}.closing.{j}", ""))
        yield _Sweep(j, tuple(number_or_text(text) for text in typed), closing)


def _put(job: dict[str, Any], path: str, value: object) -> None:
    section, _, key = path.rpartition(".")
    (job.setdefault(section, {}) if section else job)[key] = value
