"""Photos between the form and a job file: the form has the name of each beside its reading.

The field ``rounds.0.bore.sweeps.0.1.photo`` goes wherever the reading goes. What stands in it may
also be what the page puts there until a photo is ready, which is no name, and is passed over.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sweepsheet.form.form_job import FormJob
from sweepsheet.job.photos import NAME, readings_of

SUFFIX = ".photo"


def named_in(form: Mapping[str, str]) -> dict[str, str]:
    """The names of photos, by the form's names of their readings."""
    return {
        name.removesuffix(SUFFIX): text
        for name, text in form.items()
        if name.endswith(SUFFIX) and NAME.fullmatch(text)
    }


def put_photos(typed: FormJob, form: Mapping[str, str]) -> None:
    """Put the photos of the readings that count into a job, once its sweeps are in it."""
    names = named_in(form)
    if not names:
        return
    places = ((at, typed.form_name(at)) for at in readings_of(typed.job))
    found = [{"at": at, "hash": names[field]} for at, field in places if field in names]
    if found:
        typed.job["photos"] = found


def photo_fields(data: Mapping[str, Any]) -> dict[str, str]:
    """The form's fields for the photos of a job.

    >>> photo = {"at": "companions.0.sweeps.0.1", "hash": "0123456789abcdef"}
    >>> photo_fields({"companions": [{"kind": "pilot_bore"}], "photos": [photo]})
    {'companions.pilot_bore.sweeps.0.1.photo': '0123456789abcdef'}
    """
    kinds = [part["kind"] for part in data.get("companions") or ()]
    return {
        f"{_field(photo['at'], kinds)}{SUFFIX}": photo["hash"] for photo in data.get("photos") or ()
    }


def _field(at: str, kinds: list[str]) -> str:
    top, n, rest = at.split(".", 2)
    return f"companions.{kinds[int(n)]}.{rest}" if top == "companions" else at
