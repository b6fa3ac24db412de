"""Photos between form and job: each stays with its reading, whatever is left out on the way."""

from __future__ import annotations

from typing import Any

import pytest

from sweepsheet.form.from_job import form_of
from sweepsheet.form.to_job import draft_of, job_of
from sweepsheet.job.model import Photo
from sweepsheet.job.photos import is_reading, readings_of
from sweepsheet.job.read import read_job
from sweepsheet.page import answer

NAMES = [f"{n:016x}" for n in range(10)]


def sweep(at: str, *texts: str) -> dict[str, str]:
    return {f"{at}.{i}": text for i, text in enumerate(texts)}


def photos(data: dict[str, Any]) -> dict[str, str]:
    return {photo["at"]: photo["hash"] for photo in data.get("photos", ())}


FORM = {
    **sweep("rounds.0.bore.sweeps.0", "0"),  # begun, not finished
    **sweep("rounds.0.bore.sweeps.1", "0", "1", "2", "1"),
    **sweep("rounds.2.bore.sweeps.0", "0", "1", "2", "1"),
    **sweep("rounds.2.face.sweeps.0", "0", "1", "2", "1"),
    **sweep("rounds.2.face.opposite.0", "0", "1", "2", "1"),
    "face.radius": "3", "face.end_float": "second",
    **sweep("companions.crank_flange.sweeps.0", "0", "1", "2", "1"),
    "rounds.0.bore.closing.1": "0",
    "rounds.0.bore.sweeps.0.0.photo": NAMES[0],
    "rounds.0.bore.sweeps.1.3.photo": NAMES[1],
    "rounds.0.bore.closing.1.photo": NAMES[2],
    "rounds.1.bore.sweeps.0.2.photo": NAMES[3],  # nothing was typed there yet
    "rounds.2.face.opposite.0.1.photo": NAMES[4],
    "companions.crank_flange.sweeps.0.1.photo": NAMES[5],
    "rounds.2.bore.sweeps.0.0.photo": "new-1234-5678",  # not ready yet
    "rounds.2.bore.sweeps.0.1.photo": "",
    "rounds.7.bore.sweeps.0.1.photo.photo": NAMES[6],
}  # fmt: skip


def test_photos_stand_at_the_readings_that_count() -> None:
    assert photos(job_of(FORM).job) == {
        "rounds.0.bore.sweeps.0.3": NAMES[1],
        "rounds.0.bore.closing.0": NAMES[2],
        "rounds.1.face.opposite.0.1": NAMES[4],
        "companions.0.sweeps.0.1": NAMES[5],
    }


def test_a_draft_keeps_each_at_its_own_reading() -> None:
    """What was begun, and a sweep that has a photo and no reading yet."""
    draft = draft_of(FORM)
    assert photos(draft) == {
        "rounds.0.bore.sweeps.0.0": NAMES[0],
        "rounds.0.bore.sweeps.1.3": NAMES[1],
        "rounds.0.bore.closing.1": NAMES[2],
        "rounds.1.bore.sweeps.0.2": NAMES[3],
        "rounds.2.face.opposite.0.1": NAMES[4],
        "companions.0.sweeps.0.1": NAMES[5],
    }
    back = form_of(draft)
    assert {k: v for k, v in back.items() if k.endswith(".photo")} == {
        k: v for k, v in FORM.items() if v in NAMES[:6]
    }
    assert photos(draft_of(back)) == photos(draft)


def test_a_photo_changes_no_answer() -> None:
    without = {name: text for name, text in FORM.items() if not name.endswith(".photo")}
    assert answer(FORM) == answer(without)
    assert answer({"rounds.0.bore.sweeps.0.1.photo": NAMES[0]}) == answer({})
    assert "photos" not in job_of({"rounds.3.bore.sweeps.0.1.photo": NAMES[0]}).job


def test_they_are_read_in_the_order_of_the_record() -> None:
    data = job_of(FORM).job
    data["photos"].reverse()
    found = read_job(data).photos
    assert found[0] == Photo("rounds.0.bore.sweeps.0.3", NAMES[1])
    assert [photo.at for photo in found] == [*photos(job_of(FORM).job)]
    assert read_job(data | {"photos": None}).photos == ()


@pytest.mark.parametrize(
    "data", [{}, {"rounds": 1}, {"rounds": [1], "companions": [1]}, {"rounds": [{"bore": 1}]}]
)
def test_data_of_any_shape_have_no_reading(data: dict[str, Any]) -> None:
    assert list(readings_of(data)) == []
    for at in ("rounds.0.bore.sweeps.0.0", "companions.0.closing.0", "rounds.0.bore.sweeps.00.0"):
        assert not is_reading(data, at)
