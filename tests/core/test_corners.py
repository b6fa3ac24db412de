"""Ways through the core that are seldom taken, each by a job that takes it."""

from __future__ import annotations

import math

from sweepsheet import sheet, solve
from sweepsheet.drawing import drawing_of
from sweepsheet.english import ENGLISH
from sweepsheet.marks import arrow
from sweepsheet.read_job import read_job
from sweepsheet.side_view import side_view_of
from sweepsheet.solution import work_out
from sweepsheet.vector import Vec2
from tests.core.jobs import (
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
    assert "Nothing in stock" in sheet(job) or "nothing" in sheet(job).lower()


def test_back_to_standard_dowels() -> None:
    """Good as found, spoilt by a pair of 7: the pair comes out again."""
    first = make_job(readings_of(0.0, 0.5, EIGHTHS), positions=EIGHTHS, indicator={"sag": 0})
    job = then(first, with_dowels(make_job(readings_of(0.0, 7.5, EIGHTHS), positions=EIGHTHS),
                                  (7.0, 0.0)))  # fmt: skip
    choice = solve(job)["dowel_choice"]
    assert (choice["leave"], choice["offset"]) == (False, 0.0)
    assert "standard dowels" in sheet(job)


def test_drawings_of_what_is_seldom_seen() -> None:
    """No limit, thirty-six positions, a foreign reading, a peg that points elsewhere now."""
    plain = drawn(make_job(readings_of(0.0, -7.0, EIGHTHS), positions=EIGHTHS))
    assert 'class="readings"' in plain
    many = tuple(10.0 * i for i in range(36))
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
