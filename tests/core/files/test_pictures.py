"""Pictures in a job's file: out and back, and nothing but small bare JPEGs of the right sum."""

from __future__ import annotations

import base64
import copy
import hashlib
import io
import json
import random
from typing import Any

import pytest
from PIL import Image

from sweepsheet import solve
from sweepsheet.__main__ import main
from sweepsheet.files.exchange import LONGEST_FILE, LONGEST_JOBS, export_file, import_file
from sweepsheet.files.pictures import LARGEST_PICTURE, LONGEST_PICTURES, is_bare_jpeg
from sweepsheet.job.photos import MOST_PHOTOS
from sweepsheet.page import handle_request
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.faults import InputError
from tests.cases.pictures import bare, bare_file, camera_file

Data = dict[str, Any]
READINGS = {f"rounds.0.bore.sweeps.0.{i}": text for i, text in enumerate(("0", "-5", "-11", "-6"))}


def as_text(jpeg: bytes) -> str:
    return base64.b64encode(jpeg).decode()


def name_of(jpeg: bytes) -> str:
    return hashlib.sha256(jpeg).hexdigest()[:16]


def form_with(*jpegs: bytes) -> dict[str, str]:
    """A form whose first readings have these photos."""
    names = {f"rounds.0.bore.sweeps.0.{i}.photo": name_of(jpeg) for i, jpeg in enumerate(jpegs)}
    return READINGS | names


def saved(*jpegs: bytes, jobs: int = 1) -> Data:
    found: Data = export_file([form_with(*jpegs)] * jobs, ENGLISH, [as_text(j) for j in jpegs])
    assert found["state"] == "file", found
    return found


def data_with(picture: bytes = b"", /, **keys: object) -> Data:
    data: Data = json.loads(saved(bare_file())["text"])
    if picture:
        sum_ = hashlib.sha256(picture).hexdigest()
        data["pictures"] = [{"jpeg": as_text(picture), "sha256": sum_}]
    data["pictures"][0] |= keys
    return data


def refusal(data: object) -> str:
    found = import_file(json.dumps(data), ENGLISH)
    assert found["state"] == "refused", found
    return str(found["text"])


@pytest.mark.parametrize("jobs", [1, 3])
def test_pictures_go_out_and_come_back(jobs: int) -> None:
    jpegs = bare_file(1), bare_file(80)
    shown = saved(*jpegs, jobs=jobs)
    assert "Pictures in it: 2." in shown["told"]
    assert "not on this phone" not in shown["told"]
    back = import_file(shown["text"], ENGLISH)
    assert back["pictures"] == [as_text(jpeg) for jpeg in jpegs]
    assert len(back["jobs"]) == jobs
    assert form_with(*jpegs).items() <= back["jobs"][-1].items()


def test_a_photo_whose_picture_is_elsewhere_is_named_all_the_same() -> None:
    jpegs = bare_file(1), bare_file(80)
    shown = export_file([form_with(*jpegs)], ENGLISH, [as_text(jpegs[0])])
    assert "Pictures in it: 1. Pictures not on this phone: 1." in shown["told"]
    back = import_file(shown["text"], ENGLISH)
    assert form_with(*jpegs).items() <= back["jobs"][0].items()


def test_the_page_asks_for_it() -> None:
    jpeg = bare_file()
    asked = {"forms": [form_with(jpeg)], "pictures": [as_text(jpeg)]}
    text = json.loads(handle_request(json.dumps({"export": asked})))["text"]
    back = json.loads(handle_request(json.dumps({"import": {"text": text, "here": []}})))
    assert back["pictures"] == [as_text(jpeg)]


@pytest.mark.parametrize(
    "asked", [{"forms": []}, {"forms": [{}], "pictures": [1]}, {"forms": 1, "pictures": []}, []]
)
def test_a_question_that_is_none_is_refused(asked: object) -> None:
    with pytest.raises(InputError):
        handle_request(json.dumps({"export": asked}))


def test_a_file_with_pictures_is_a_job_file(
    tmp_path: Any, capsys: pytest.CaptureFixture[str]
) -> None:
    """For programs, too: as long as it may be, and the pictures change nothing."""
    jpegs = [noise(i) for i in range(4)]
    text = saved(*jpegs)["text"]
    assert len(text) > 200_000
    file = tmp_path / "job.json"
    file.write_text(text, encoding="utf-8")
    assert main([str(file)]) == 0
    assert json.loads(capsys.readouterr().out) == solve(without_pictures(json.loads(text)))


def without_pictures(data: Data) -> Data:
    return {key: value for key, value in data.items() if key != "pictures"}


def noise(seed: int) -> bytes:
    """A picture that does not get small."""
    pixels = random.Random(seed).randbytes(300 * 220 * 3)
    made = io.BytesIO()
    Image.frombytes("RGB", (300, 220), pixels).save(made, "JPEG", quality=80)
    found = bare(made.getvalue())
    assert 40_000 < len(found) < LARGEST_PICTURE
    return found


# Hostile -----------------------------------------------------------------------------------


def test_a_picture_that_was_changed_is_refused() -> None:
    assert "pictures.0: This picture was changed" in refusal(data_with(sha256="0" * 64))
    assert "was changed" in refusal(data_with(sha256=None))


@pytest.mark.parametrize("sent", [None, 7, "", "é", "AAAA=", "<script>", as_text(b"GIF89a"), []])
def test_what_is_no_picture_is_refused(sent: object) -> None:
    assert "pictures.0: This is not a picture" in refusal(data_with(jpeg=sent))


def test_what_is_out_of_shape_is_refused() -> None:
    data = data_with()
    assert "onload" in refusal(data_with(onload="x"))
    assert refusal(data | {"pictures": {"a": 1}})
    assert refusal(data | {"pictures": [1]})
    assert refusal(data | {"pictures": data["pictures"] * 201})
    # Each job has its pictures in the file's list, not its own.
    many = {"format": "sweepsheet-jobs", "version": 1, "jobs": [data]}
    assert "pictures" in refusal(many)


def test_too_many_characters_of_pictures_are_refused_both_ways() -> None:
    jpeg = noise(0)
    count = LONGEST_PICTURES // len(as_text(jpeg)) + 1
    assert count < 200
    shown = export_file([READINGS], ENGLISH, [as_text(jpeg)] * count)
    assert "Too many pictures for one file" in shown["text"]
    assert "larger than any of ours" in refusal({"pictures": "x" * LONGEST_FILE})
    # The jobs themselves are no longer than they may be without pictures.
    data = data_with() | {"about": {"notes": "x" * LONGEST_JOBS}}
    assert "larger than any of ours" in refusal(data)


def test_a_photo_belongs_to_one_reading_that_is_there() -> None:
    data = data_with()
    (first,) = data["photos"]
    for at in (
        "rounds.0.bore.sweeps.0.4",
        "rounds.0.face.sweeps.0.0",
        "name",
        "",
        None,
        7,
        "x" * 99,
    ):
        assert "photos.0.at" in refusal(data | {"photos": [first | {"at": at}]}), at
    assert "photos.1.at: Two photos" in refusal(data | {"photos": [first, first]})
    for name in ("0123", "0123456789ABCDEF", "x" * 99, None):
        assert "photos.0.hash" in refusal(data | {"photos": [first | {"hash": name}]}), name
    assert "photos" in refusal(data | {"photos": [first] * (MOST_PHOTOS + 1)})
    assert "photos" in refusal(data | {"photos": "x"})


# Bare JPEG ----------------------------------------------------------------------------------


def test_a_bare_jpeg_is_one() -> None:
    assert is_bare_jpeg(bare_file())
    assert is_bare_jpeg(noise(1))
    made = io.BytesIO()
    Image.new("L", (2048, 8)).save(made, "JPEG", progressive=True, restart_marker_blocks=4)
    assert is_bare_jpeg(bare(made.getvalue()))


def test_what_carries_more_than_pixels_is_none() -> None:
    jpeg = bare_file()
    hidden = b"hidden"
    segment = (len(hidden) + 2).to_bytes(2, "big") + hidden
    for kind in (0xE0, 0xE1, 0xE2, 0xED, 0xEE, 0xFE, 0xDC, 0x01):
        assert not is_bare_jpeg(jpeg[:2] + bytes((0xFF, kind)) + segment + jpeg[2:]), hex(kind)
    assert not is_bare_jpeg(camera_file(large=False))
    told = refusal(data_with(camera_file(large=False)))
    assert "not a picture of Sweepsheet" in told
    assert not is_bare_jpeg(jpeg + hidden)
    assert not is_bare_jpeg(jpeg[:-2] + segment + jpeg[-2:] + jpeg)
    assert not is_bare_jpeg(jpeg + jpeg)


def test_what_is_not_whole_or_too_large_is_none() -> None:
    jpeg = bare_file()
    assert not any(is_bare_jpeg(jpeg[:n]) for n in range(len(jpeg)))
    for size in ((2049, 8), (8, 2049)):
        made = io.BytesIO()
        Image.new("L", size).save(made, "JPEG")
        assert not is_bare_jpeg(bare(made.getvalue()))
    frame = jpeg.index(b"\xff\xc0")
    end = frame + 2 + int.from_bytes(jpeg[frame + 2 : frame + 4], "big")
    assert not is_bare_jpeg(jpeg[:frame] + jpeg[end:])
    assert not is_bare_jpeg(jpeg[:end] + jpeg[frame:end] + jpeg[end:])
    assert not is_bare_jpeg(jpeg[: frame + 5] + b"\0\0" + jpeg[frame + 7 :])
    assert not is_bare_jpeg(jpeg[: frame + 2] + b"\0\1" + jpeg[frame + 4 :])
    assert not is_bare_jpeg(jpeg[:end] + b"\xff\xd9")
    scan = jpeg.index(b"\xff\xda")
    padded = jpeg[: scan + 12] + b"\0" * LARGEST_PICTURE + jpeg[-2:]
    assert not is_bare_jpeg(padded)


def test_bytes_by_chance_are_none_and_end_nothing() -> None:
    chance = random.Random(7)
    jpeg = bare_file()
    for _ in range(2000):
        spoiled = bytearray(copy.copy(jpeg))
        for _ in range(chance.randint(1, 4)):
            spoiled[chance.randrange(len(spoiled))] = chance.randrange(256)
        is_bare_jpeg(bytes(spoiled))
        assert not is_bare_jpeg(bytes(chance.randbytes(60)))
