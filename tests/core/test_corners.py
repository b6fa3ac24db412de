"""Ways through the core that are seldom taken, each by a job that takes it."""

from __future__ import annotations

import io
import json
import math
import random
import sys
from pathlib import Path

import pytest

from sweepsheet import InputError, sheet, solve
from sweepsheet.__main__ import main
from sweepsheet.drawing.housing import drawing_of
from sweepsheet.drawing.marks import arrow
from sweepsheet.drawing.side_view import side_view_of
from sweepsheet.files.readings_csv import COLUMNS, data_of_csv
from sweepsheet.form.from_job import form_of
from sweepsheet.form.to_job import draft_of
from sweepsheet.job.read import read_job
from sweepsheet.maths.vector import Vec2
from sweepsheet.page import handle_request
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    Data,
    codes_of,
    face_readings,
    make_job,
    readings_of,
    then,
    with_dowels,
    with_face,
)

NO_LIMIT = {"bore_offset": None}
HOLES = [{"at_deg": 270.0, "radius": 7.0}, {"at_deg": 90.0, "radius": 7.0}]


def drawn(job: Data) -> str:
    return drawing_of(work_out(read_job(job)), ENGLISH)


def rounds(*later: tuple[float, float], aim_deg: float = 0.0, limits: Data | None = None) -> Data:
    """Found 7 low, then swept on dowels of 7 aimed at 12."""
    first = make_job(readings_of(0.0, -7.0, EIGHTHS), positions=EIGHTHS, limits=limits)
    swept = (make_job(readings_of(x, y, EIGHTHS), positions=EIGHTHS) for x, y in later)
    return then(first, *(with_dowels(each, (7.0, aim_deg)) for each in swept))


def test_a_trim_without_a_limit_has_no_chance() -> None:
    text = sheet(rounds((1.0, -2.0), limits=NO_LIMIT))
    assert "Chance" not in text
    assert solve(rounds((1.0, -2.0), limits=NO_LIMIT))["trim"]["probability_within"] is None


def test_a_job_of_which_there_is_nothing_to_remark() -> None:
    job = with_face(
        make_job(
            readings_of(0.1, 0.1, EIGHTHS), positions=EIGHTHS, indicator={**PERFECT, "step": 0.1},
            limits={"pilot_offset": 5.0, "source": "the maker's manual"},
            housing={
                "pilot_distance": 7.0, "pilot_bearing": "ball", "bore_diameter": 4.7,
                "register_diameter": 4.699, "dowel_holes": HOLES, "bolt_clearance": 60.0,
            },
        ),
        face_readings(0.01, 0.0, EIGHTHS), positions=EIGHTHS,
    )  # fmt: skip
    assert codes_of(job) == []
    assert "Findings" not in sheet(job)


def test_nothing_in_stock_is_better_than_an_offset_that_is_outside() -> None:
    """Aimed for the pilot bearing, which is well; the bore is not, and no dowel mends it."""
    job = with_face(
        make_job(
            readings_of(0.0, -12.0, EIGHTHS), positions=EIGHTHS, limits={"pilot_offset": 5.0},
            housing={"pilot_distance": 7.0}, stock={"aim_for": "pilot", "dowel_offsets": [400.0]},
        ),
        face_readings(0.0, 12.0 / 7.0, EIGHTHS), positions=EIGHTHS,
    )  # fmt: skip
    job["limits"]["face_runout"] = 100.0
    assert solve(job)["dowel_choice"]["leave"]
    assert "No pair in the drawer is sure to leave less than there is now." in sheet(job)


def test_back_to_standard_dowels() -> None:
    """Good as found, spoilt by a pair of 7: the pair comes out again."""
    first = make_job(readings_of(0.0, 0.5, EIGHTHS), positions=EIGHTHS, indicator={"sag": 0})
    job = then(first, with_dowels(make_job(readings_of(0.0, 7.5, EIGHTHS), positions=EIGHTHS),
                                  (7.0, 0.0)))  # fmt: skip
    choice = solve(job)["dowel_choice"]
    assert (choice["leave"], choice["offset"]) == (False, 0.0)
    assert "stock dowels" in sheet(job)


def test_drawings_of_what_is_seldom_seen() -> None:
    """No limit, thirty-six positions, a foreign reading, a peg that points elsewhere now."""
    plain = drawn(make_job(readings_of(0.0, -7.0, EIGHTHS), positions=EIGHTHS))
    assert 'class="readings"' in plain
    many = tuple(5.0 * i for i in range(72))
    assert 'class="readings"' not in drawn(make_job(readings_of(0.0, -7.0, many), positions=many))
    unlimited = make_job(readings_of(0.0, -7.0, EIGHTHS), positions=EIGHTHS, limits=NO_LIMIT)
    assert len(drawn(unlimited)) < len(plain)
    wild = readings_of(0.0, -7.0, EIGHTHS)
    wild[2] += 40.0
    assert "foreign-reading" in codes_of(make_job(wild, positions=EIGHTHS))
    assert "<rect" in drawn(make_job(wild, positions=EIGHTHS))
    turned = rounds((6.0, -4.0), aim_deg=80.0)
    assert 'stroke-dasharray="3 2"' in drawn(turned)
    assert 'stroke-dasharray="3 2"' not in plain


def test_an_arrow_of_no_length_is_no_arrow() -> None:
    assert arrow(Vec2(3.0, 4.0), Vec2(3.0, 4.0)) == ""


def test_a_side_view_without_the_depth_has_no_shell() -> None:
    def seen(**housing: float) -> str:
        job = make_job(readings_of(0.0, -7.0), housing={"pilot_distance": 7.0, **housing})
        return side_view_of(work_out(read_job(with_face(job, face_readings(0.3, 0.4)))), ENGLISH)

    assert len(seen(depth=6.5)) > len(seen()) > 100


def test_pairs_for_a_bore_in_the_very_middle() -> None:
    """Nothing is wanted of either dowel; those that pull against each other leave it there."""
    job = make_job(
        (0.0, 0.0, 0.0, 0.0), indicator=PERFECT, limits={"bore_offset": 0.5},
        housing={"dowel_holes": HOLES},
    )  # fmt: skip
    found = work_out(read_job(job)).pairs
    assert found
    assert all(math.isfinite(pair.expected_offset) for pair in found)


def test_streams_that_have_no_code_page_are_left_as_they_are(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    file = tmp_path / "job.json"
    file.write_text(json.dumps(make_job(readings_of(0.0, -7.0))), "utf-8")
    shown = io.StringIO()
    monkeypatch.setattr(sys, "stdout", shown)
    assert main([str(file)]) == 0
    assert json.loads(shown.getvalue())["version"] == 1


def asked(**request: object) -> Data:
    answer: Data = json.loads(handle_request(json.dumps(request)))
    return answer


def test_readings_that_can_not_be_a_file() -> None:
    form = {"rounds.0.bore.sweeps.0.0": "0", "about.notes": "n" * 20_000}
    assert asked(csv=form)["state"] == "refused"
    assert asked(export={"forms": [], "pictures": []})["state"] == "refused"
    # Eight texts of nine thousand letters of three bytes each, in ten jobs.
    keys = ("vehicle", "engine", "gearbox", "housing", "technician", "customer", "date", "notes")
    long = {f"about.{key}": "\u20ac" * 9000 for key in keys}
    assert asked(export={"forms": [long] * 10, "pictures": []})["state"] == "refused"
    twice = {"nonsense": 1, "format": "sweepsheet-job", "version": 1, "about": {"other": 1}}
    many = twice | {"limits": [], "indicator": [], "crank": [], "housing": [], "stock": []}
    opened = {"text": json.dumps(many), "here": []}
    assert "more" in asked(**{"import": opened})["text"]
    opened = {"text": ",".join(COLUMNS) + '\n"' + "9" * 200_000 + '",1\n', "here": []}
    shown = asked(**{"import": opened})
    assert shown["state"] == "refused"
    with pytest.raises(InputError):
        data_of_csv("a,b,c\n1,2,3\n")


def test_a_runout_that_says_itself_that_it_is_one() -> None:
    """A blank limit stays blank, and a text that names the TIR keeps its words."""
    for limit, kept in (("", None), ("ten TIR", "ten TIR"), ("ten", "ten TIR"), ("10", 5.0)):
        typed = draft_of({"limit_as": "tir", "limits.bore_offset": limit})
        assert typed.get("limits", {}).get("bore_offset") == kept


def test_a_job_too_long_for_a_link_still_has_its_sheet() -> None:
    rng = random.Random(4)
    many = [5.0 * i for i in range(72)]
    jobs = [
        make_job(*([round(rng.uniform(-9.0, 9.0), 6) for _ in many] for _ in range(4)),
                 positions=many)
        for _ in range(20)
    ]  # fmt: skip
    shown = asked(share=form_of(then(*jobs)))
    assert (shown["state"], shown["fragment"]) == ("share", "")
    assert shown["trouble"]
    assert shown["paper"]


def test_paper_of_what_is_seldom_measured() -> None:
    """A crank on end, no limit for the face, unlike dowels in place."""
    job = with_face(
        make_job(
            readings_of(0.0, -7.0), crank={"axis": "vertical"}, limits={"face_runout": None},
        ),
        face_readings(0.1, 0.1),
    )  # fmt: skip
    shown = asked(share=form_of(with_dowels(job, (7.0, 0.0), (14.0, 90.0))))
    assert shown["state"] == "share"
    assert "14.0 thou" in json.dumps(shown["paper"]) or "14 thou" in json.dumps(shown["paper"])
    assert "roop" not in json.dumps(shown["paper"])
    assert "no-face-limit" in codes_of(job)
    assert "Limit: runout" not in sheet(job)


def test_a_part_that_is_there_twice_is_a_fault() -> None:
    part = {"kind": "pilot_bore", "sweeps": [[0.0, 1.0, 2.0, 1.0]]}
    with pytest.raises(InputError, match="twice"):
        solve(make_job(readings_of(0.0, -7.0), companions=[part, part]))


def test_a_practice_housing_swept_with_its_face_and_put_back_on_standard_dowels() -> None:
    """The face's row of the truth; the rounds by their names; twelve positions; a dial behind."""
    form = {"exercise.seed": "417", "exercise.level": "1", "exercise.positions": "4"}
    face = {"exercise.part": "face"}
    swept = swept_as_shown(swept_as_shown(form) | face)
    shown = asked(practice=swept | {"exercise.shown": "yes", "exercise.truth": "yes"})
    assert shown["practice"]
    back = {
        "exercise.rounds": "2", "rounds.1.dowels.0.offset": "0", "rounds.1.dowels.1.offset": "0",
    }  # fmt: skip
    assert asked(practice=form | back)["practice"]
    assert asked(practice=form | face | {"exercise.positions": "12"})["practice"]
    rearward = face | {"face.plunger": "rearward", "rounds.0.face.plunger": "rearward"}
    assert asked(practice=form | rearward)["practice"]


def swept_as_shown(form: dict[str, str]) -> dict[str, str]:
    """The form with the sweep noted that its dial shows: each mark, and back at the start."""
    practice = asked(practice=form)["practice"]
    entries = [practice["turn"][stop] for stop in practice["stops"]]
    return form | {entry["field"]: entry["typed"] for entry in entries}
