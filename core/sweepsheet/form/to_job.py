"""From a filled-in form to a job file's data.

The form's fields are named by their place in the job (``rounds.0.bore.sweeps.0.3``) wherever they
have one there, and every value is text. What was begun and can't be fitted yet is left out and
named, so that an answer does not go away while more is being typed. ``from_job`` is the way back.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import zip_longest
from typing import Any

from sweepsheet.form.dial import dial_of
from sweepsheet.form.form_job import FormJob
from sweepsheet.form.marks import marks_of
from sweepsheet.form.parse import number_list, number_or_text, position_list, position_or_text
from sweepsheet.form.photos import put_photos
from sweepsheet.form.sweeps import SweepFiller
from sweepsheet.form.typed_sweeps import MOST_WORDS
from sweepsheet.job.checklist import CODES
from sweepsheet.job.model import ABOUT_KEYS, SETTINGS
from sweepsheet.job.read import FORMAT, MOST_BOLTS, VERSION
from sweepsheet.job.settings import Setting


def _paths(wanted: Callable[[Setting], bool]) -> tuple[str, ...]:
    """The settings of which this holds, by their places in the job."""
    return tuple(path for path, setting in SETTINGS.items() if wanted(setting))


TEXTS = (
    "units",
    *_paths(lambda s: s.kind == "text" or (s.kind == "choice" and not s.nullable)),
    *(f"about.{key}" for key in ABOUT_KEYS),
)
NUMBERS = _paths(lambda s: s.kind == "number" and not s.blank_is_unknown)
# Blank means "not known" here, rather than the usual value.
BLANK_IS_UNKNOWN = _paths(lambda s: s.blank_is_unknown)
# A choice that may be left blank: not known.
CHOICES_OR_BLANK = _paths(lambda s: s.kind == "choice" and s.nullable)
LISTS = _paths(lambda s: s.kind == "sizes")


def job_of(form: Mapping[str, str]) -> FormJob:
    """The job data in a filled-in form. Fields that are not there have their usual values."""
    return _typed(form, whole=False)


def draft_of(form: Mapping[str, str]) -> dict[str, Any]:
    """The job data of a form with all that was begun, which ``read_job`` may still refuse.

    A field that holds no number where one is due stays as the text it is.

    >>> draft_of({"rounds.0.bore.sweeps.0.0": "4 or 5"})["rounds"][0]["bore"]["sweeps"]
    [['4 or 5', None, None, None]]
    """
    return _typed(form, whole=True).job


def _typed(form: Mapping[str, str], *, whole: bool) -> FormJob:
    typed = FormJob(
        {"format": FORMAT, "version": VERSION}, dial=dial_of(form), marks=marks_of(form)
    )
    _head(typed, form)
    for path in TEXTS:
        if path in form:
            _put(typed.job, path, form[path])
    for path in NUMBERS:
        value = number_or_text(form.get(path, ""))
        if value is not None:
            _put(typed.job, path, value)
    for path in BLANK_IS_UNKNOWN:
        if path in form:
            _put(typed.job, path, number_or_text(form[path]))
    for path in LISTS:
        if path in form:
            _put(typed.job, path, number_list(form[path]))
            # A list is one field of the form: a fault in it stands there.
            typed.fields[path] = f"{path}"
    _choices(typed, form)
    _sag(typed, form)
    _limit(typed, form, whole=whole)
    _holes(typed, form, whole=whole)
    _chip(typed, form, whole=whole)
    SweepFiller(typed, form, whole=whole).fill()
    put_photos(typed, form)
    return typed


def _head(typed: FormJob, form: Mapping[str, str]) -> None:
    """The name of the job and what was ticked, where there is any."""
    name = form.get("name", "").strip()
    ticked = [code for code in CODES if form.get(f"checklist.{code}") == "yes"]
    typed.job.update({"name": name} if name else {})
    typed.job.update({"checklist": ticked} if ticked else {})


def _choices(typed: FormJob, form: Mapping[str, str]) -> None:
    """The choices that were made; a blank one is left out."""
    for path in CHOICES_OR_BLANK:
        if form.get(path):
            _put(typed.job, path, form[path])


def _sag(typed: FormJob, form: Mapping[str, str]) -> None:
    """The sag test: blank is not measured; several numbers are its tries."""
    path = "indicator.sag"
    if path not in form:
        return
    tries = number_list(form[path])
    several = len(tries) > 1 and all(isinstance(each, float) for each in tries)
    _put(typed.job, path, tries if several else number_or_text(form[path]))
    typed.fields[path] = path


def _limit(typed: FormJob, form: Mapping[str, str], *, whole: bool) -> None:
    """A limit given as runout is twice the offset it allows."""
    limits = typed.job.get("limits", {})
    limit = limits.get("bore_offset")
    if form.get("limit_as") != "tir":
        return
    if isinstance(limit, float):
        limits["bore_offset"] = limit / 2.0
    elif whole and limit and "TIR" not in limit:
        # It will be an offset when it is mended elsewhere: say that it was none.
        limits["bore_offset"] = f"{limit} TIR"


def _holes(typed: FormJob, form: Mapping[str, str], *, whole: bool) -> None:
    """Bolts and dowel holes: a list of positions and one radius, or a radius for each."""
    for key, most in (("bolts", MOST_BOLTS), ("dowel_holes", 2)):
        at = position_list(form.get(f"{key}.at", ""), MOST_WORDS if whole else most)
        radii = number_list(form.get(f"{key}.radius", ""))
        if not (at or radii) or not (whole or (at and radii)):
            continue
        each = radii * len(at) if len(radii) == 1 and at else radii
        if not whole:
            each = each[: len(at)]
        place = f"housing.{key}"
        _put(typed.job, place, [{"at_deg": a, "radius": r} for a, r in zip_longest(at, each)])
        typed.fields[place] = f"{key}.at"
        for i in range(len(at)):
            typed.fields[f"{place}.{i}.radius"] = f"{key}.radius"


def _chip(typed: FormJob, form: Mapping[str, str], *, whole: bool) -> None:
    """The chip that is supposed, once it has a height."""
    height = number_or_text(form.get("chip.height", ""))
    begun = any(form.get(f"chip.{key}", "").strip() for key in ("height", "at", "radius"))
    if height is not None or (whole and (begun or form.get("chip.joint", "front") != "front")):
        typed.job["chip"] = {
            "joint": form.get("chip.joint", "front"),
            "height": height,
            "at_deg": position_or_text(form.get("chip.at", "")),
            "radius": number_or_text(form.get("chip.radius", "")),
        }
        typed.fields["chip.at_deg"] = "chip.at"


def _put(job: dict[str, Any], path: str, value: object) -> None:
    section, _, key = path.rpartition(".")
    (job.setdefault(section, {}) if section else job)[key] = value
