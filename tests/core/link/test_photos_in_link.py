"""Photos in a link: it names them, so that a file can be matched; it carries none of them."""

from __future__ import annotations

import hashlib
import json
from typing import Any

from sweepsheet.job.read import read_job
from sweepsheet.link.codec import LONGEST_LINK, read_link
from sweepsheet.link.share import open_link
from sweepsheet.report.photos import Caption, captions_of
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.languages import language_of
from tests.cases.jobs import QUARTERS, make_job, then, with_face
from tests.cases.links import link_of, ordinary_job, packed, unpacked
from tests.cases.pictures import bare_file

NAMES = [f"{n:x}{'5a' * 7}f" for n in range(6)]
Data = dict[str, Any]


def job_with_photos() -> Data:
    """Two rounds, a face under two dials, a part that turns: a photo of each kind of reading."""
    first = with_face(
        make_job((0, 10, 22, 11), closing=[0.5]),
        (0, 1, 2, 1),
        opposite=[[2, 1, 0, 1]],
        end_float="free",
    )
    job = then(first, make_job((0, 1, 2, 1), (0, 1, 2.5, 1)))
    part = {"kind": "crank_flange", "sweeps": [[0, 0.5, 0, -0.5]], "positions_deg": list(QUARTERS)}
    ats = (
        "rounds.0.bore.sweeps.0.2", "rounds.0.bore.closing.0", "rounds.0.face.sweeps.0.1",
        "rounds.0.face.opposite.0.3", "rounds.1.bore.sweeps.1.2", "companions.0.sweeps.0.1",
    )  # fmt: skip
    photos = [{"at": at, "hash": name} for at, name in zip(ats, NAMES, strict=True)]
    return job | {"companions": [part], "photos": photos}


def test_each_photo_is_named_with_its_place_and_its_reading() -> None:
    data = job_with_photos()
    # As in the record: a face comes after all of its bore, a return after its sweep.
    assert [caption.text for caption in captions_of(read_job(data), ENGLISH)] == [
        "As found, bore, sweep 1, 6 o'clock: +22",
        "As found, bore, sweep 1, Return: +0.5",
        "As found, face, sweep 1, 3 o'clock: +1",
        "As found, face, second dial, sweep 1, 9 o'clock: +1",
        "Recheck 1, bore, sweep 2, 6 o'clock: +2.5",
        "crank flange, sweep 1, 3 o'clock: +0.5",
    ]
    spanish = next(captions_of(read_job(data), language_of("es")))
    assert spanish == Caption(NAMES[0], "Como se encontró, el alojamiento, barrido 1, las 6: +22")


def test_a_link_names_them_and_carries_no_picture() -> None:
    data = job_with_photos()
    pictures = [{"sha256": "0" * 64, "jpeg": bare_file().hex()}]
    link = link_of(data | {"pictures": pictures})
    assert "jpeg" not in unpacked(link)
    assert "pictures" not in json.dumps(read_link(link).data)
    assert read_link(link).data["photos"] == data["photos"]
    opened = open_link(link, ENGLISH)
    assert opened["agrees"] is True
    assert [photo["name"] for photo in opened["photos"]] == NAMES
    assert read_job(read_link(link).data) == read_job(data)


def test_each_costs_a_few_letters() -> None:
    job = ordinary_job(QUARTERS)
    parts = [f"rounds.{n}.{part}" for n in (0, 1) for part in ("bore", "face")]
    ats = [f"{part}.sweeps.0.{i}" for part in parts for i in range(4)]
    hashes = [hashlib.sha256(at.encode()).hexdigest()[:16] for at in ats]
    photos = [{"at": at, "hash": name} for at, name in zip(ats, hashes, strict=True)]
    without, with_all = (len(link_of(job | more)) for more in ({}, {"photos": photos}))
    assert with_all - without < 25 * len(photos)
    assert with_all < LONGEST_LINK / 8


def test_a_link_with_a_photo_of_no_reading_is_refused() -> None:
    inside = unpacked(link_of(job_with_photos()))
    assert open_link(packed(inside), ENGLISH)["state"] == "link"
    spoiled = inside.replace("rounds.1.bore.sweeps.1.2", "rounds.9.bore.sweeps.1.2")
    assert open_link(packed(spoiled), ENGLISH)["state"] == "refused"
