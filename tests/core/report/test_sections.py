"""The parts of the sheet beside the bore: each there where what it needs was measured."""

from __future__ import annotations

import pytest

from sweepsheet import sheet
from sweepsheet.job.read import read_job
from sweepsheet.report.sections import Section, sections_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.jobs import (
    EIGHTHS,
    SEVEN_BOLTS,
    TWO_HOLES,
    Data,
    face_readings,
    make_job,
    readings_of,
    then,
    whole_job,
    with_dowels,
    with_face,
)

OFF = readings_of(0.0, -7.0)


def sections(job: Data) -> dict[str, Section]:
    return {each.name: each for each in sections_of(work_out(read_job(job)), ENGLISH)}


def test_a_whole_job_has_every_section_in_the_order_of_the_work() -> None:
    assert list(sections(whole_job())) == [
        "face", "pilot", "seat", "trim", "chip", "companion-0", "companion-1",
    ]  # fmt: skip


def test_a_bore_alone_has_none() -> None:
    assert sections(make_job(OFF)) == {}


@pytest.mark.parametrize(
    ("job", "name", "phrases"),
    [
        (
            with_face(make_job(OFF), face_readings(0.0, 1.0)), "face",
            ["Runout (TIR) 6.0 thou", "Slope 1.00 thou per inch", "toward 12 o'clock",
             "Limit: runout (TIR) 5.0 thou", "TIR on the dial 6.0 thou; left over 0.0 thou"],
        ),
        (
            with_face(make_job(OFF, housing={"depth": 6.0}), face_readings(0.0, 2.0)), "squaring",
            ["Machine the front flange 2.00 thou per inch, deepest toward 12 o'clock",
             "Bore expected after: offset 5.0 thou toward 12 o'clock. Sweep it again."],
        ),
        (
            with_face(make_job(OFF, housing={"pilot_distance": 7.0}), face_readings(0.0, 2.0)),
            "pilot", ["Gearbox axis off by 7.0 thou", "Out of line by 2.00 thou per inch"],
        ),
        (
            make_job(OFF, housing={"bore_diameter": 4.002, "register_diameter": 4.0}), "seat",
            ["Clearance 2.0 thou: the gearbox may sit up to 1.0 thou off"],
        ),
        (
            then(make_job(OFF), with_dowels(make_job(readings_of(2.0, -6.0)), (7.0, 90.0))),
            "trim",
            ["The dowels moved the bore 2.2 thou", "Turn both dowels"],
        ),
        (
            then(make_job(OFF), with_dowels(make_job(readings_of(0.0, -0.5)), (7.0, 0.0))),
            "trim", ["Matches their marked size", "The bore is within: stop here."],
        ),
        (
            make_job(OFF, housing={"dowel_holes": TWO_HOLES}, stock={"dowel_offsets": [5.0]}),
            "pairs", ["Advanced: each dowel", "The housing turns by up to"],
        ),
        (
            make_job(OFF, chip={"joint": "rear", "height": 4.0, "at_deg": 90, "radius": 8.0}),
            "chip",
            ["A chip of 4.0 thou at 3 o'clock on the rear face tilts by up to 0.25 thou per inch.",
             "The bore stays where it is.", "The nose of the shaft: enter the dimensions"],
        ),
        (
            make_job(OFF, companions=[{"kind": "pilot_bore", "limit": 3.0, "sweeps": [OFF]}]),
            "companion-0", ["TIR 14.0 thou", "Limit: TIR 3.0 thou", "It turns with the crank"],
        ),
    ],
)  # fmt: skip
def test_what_a_section_says(job: Data, name: str, phrases: list[str]) -> None:
    said = sections(job)[name]
    text = "\n".join(said.lines)
    for phrase in phrases:
        assert phrase in text
    # ... and the sheet in words holds it all.
    whole = sheet(job)
    assert said.title in whole
    assert all(line in whole for line in said.lines)


@pytest.mark.parametrize(
    ("job", "name"),
    [
        # Squaring a face that is within is nobody's business.
        (with_face(make_job(OFF, housing={"bolts": SEVEN_BOLTS, "depth": 6.0})), "squaring"),
        (with_face(make_job(OFF)), "pilot"),
        (make_job(OFF, housing={"bore_diameter": 4.0, "register_diameter": 4.001}), "seat"),
        (make_job(OFF, housing={"bore_diameter": 4.0}), "seat"),
        (make_job(readings_of(0.0, -1.0), housing={"dowel_holes": TWO_HOLES}), "pairs"),
        (make_job(OFF), "trim"),
    ],
)  # fmt: skip
def test_a_section_that_is_not_there_failure(job: Data, name: str) -> None:
    assert name not in sections(job)


def test_shims_are_a_table_with_what_rounding_leaves() -> None:
    housing = {"bolts": [{"at_deg": a, "radius": 8.0} for a in (0, 90, 180)]}
    stock = {"shim_thicknesses": [1.0, 2.0, 5.0]}
    job = make_job(OFF, housing=housing, stock=stock)
    part = sections(with_face(job, face_readings(0.0, -1.0)))["squaring"]
    assert part.head == ("Bolt at", "Shim", "Ideal")
    assert part.rows == (
        ("12 o'clock", "5 thou + 5 thou + 5 thou = 15.0 thou (short)", "16.0 thou"),
        ("3 o'clock", "5 thou + 2 thou + 1 thou = 8.0 thou", "8.0 thou"),
        ("6 o'clock", "none", "0.0 thou"),
    )
    assert any(line.startswith("Shims in stock leave runout") for line in part.lines)
    assert any("leave the flange hanging between them" in line for line in part.lines)


def test_a_stack_that_reaches_is_not_called_short_failure() -> None:
    """Three pieces that are not all the thickest could be thicker: rounding, no lack."""
    housing = {"bolts": [{"at_deg": a, "radius": 8.0} for a in (0, 90, 180)]}
    job = make_job(OFF, housing=housing, stock={"shim_thicknesses": [1.0, 2.0, 6.0]})
    part = sections(with_face(job, face_readings(0.0, -1.0)))["squaring"]
    assert "short" not in "".join("".join(row) for row in part.rows)


@pytest.mark.parametrize(
    ("slope", "verdict", "word"),
    [
        (0.1, "within", "Within the limit"), (0.833, "undecided", "Too close to call"),
        (2.0, "outside", "Outside the limit"),
    ],
)  # fmt: skip
def test_a_verdict_stands_beside_the_title(slope: float, verdict: str, word: str) -> None:
    job = with_face(make_job(OFF), face_readings(0.0, slope, EIGHTHS), positions=EIGHTHS)
    part = sections(job)["face"]
    assert (part.verdict, part.verdict_text) == (verdict, word)
    assert f"Face: {word}" in sheet(job)


def test_a_face_without_tilt_has_no_rearmost_side() -> None:
    assert not [
        line for line in sections(with_face(make_job(OFF)))["face"].lines if "toward" in line
    ]


@pytest.mark.parametrize(("aim", "way"), [(30.0, "counterclockwise"), (330.0, "clockwise")])
def test_the_trim_says_which_way_to_turn(aim: float, way: str) -> None:
    """Aimed past 12, they are turned back to it: the shortest way."""
    x = 7.0 if aim < 180.0 else -7.0
    job = then(
        make_job(readings_of(0.0, -9.0)),
        with_dowels(make_job(readings_of(x / 2.0, -9.0 + 6.06)), (7.0, aim)),
    )
    (line,) = [line for line in sections(job)["trim"].lines if line.startswith("Turn both")]
    assert line.startswith(f"Turn both dowels 30° {way}, ")
    assert "New aim: 12 o'clock" in line
