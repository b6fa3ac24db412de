"""The choice among leaving it and the dowels in stock."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import solve
from sweepsheet.maths.vector import Vec2
from sweepsheet.remedy.dowel_uncertainty import aim_covariance, play_covariance
from tests.cases.jobs import (
    PERFECT,
    Data,
    apart,
    bore_of,
    face_readings,
    make_job,
    readings_of,
    with_face,
)


def fitted(job: Data, offset: float, aim_deg: float) -> Data:
    """The same job with this pair of dowels in place."""
    pair = [{"offset": offset, "aim_deg": aim_deg}] * 2
    job["rounds"][-1]["dowels"] = pair
    return job


def options(job: Data) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = solve(job)["dowel_options"]
    return found


def test_leave_it_and_each_size_are_offered() -> None:
    found = options(make_job(readings_of(0.0, -6.0), stock={"dowel_offsets": [14, 7, 0, 7]}))
    assert sorted((o["leave"], o["offset"]) for o in found) == [
        (False, 7.0), (False, 14.0), (True, 0.0),
    ]  # fmt: skip


def test_best_first() -> None:
    found = options(make_job(readings_of(0.0, -6.0)))
    assert [o["offset"] for o in found] == [7.0, 14.0, 0.0, 21.0]
    chances = [round(o["probability_within"], 3) for o in found]
    assert chances == sorted(chances, reverse=True)


@pytest.mark.parametrize(
    ("offset", "size"), [(5.9, 7.0), (8.0, 7.0), (13.0, 14.0), (15.0, 14.0), (20.0, 21.0)]
)
def test_the_size_nearest_to_the_offset_is_chosen(offset: float, size: float) -> None:
    choice = solve(make_job(readings_of(offset, 0.0)))["dowel_choice"]
    assert choice["offset"] == size
    assert choice["expected_offset"] == pytest.approx(abs(offset - size), abs=1e-9)


@given(st.floats(0.0, 359.0), st.floats(6.0, 20.0))
def test_dowels_aim_where_the_housing_must_go(toward: float, offset: float) -> None:
    x, y = offset * math.sin(math.radians(toward)), offset * math.cos(math.radians(toward))
    result = solve(make_job(readings_of(x, y)))
    for option in result["dowel_options"]:
        if not option["leave"]:
            assert apart(option["aim_deg"], toward + 180.0) < 1e-6
            assert option["expected_offset"] == pytest.approx(abs(offset - option["offset"]))


def test_within_is_left_alone_even_where_dowels_would_do_better() -> None:
    result = solve(make_job(readings_of(0.0, -3.0), stock={"dowel_offsets": [3.0]}))
    assert result["rounds"][0]["bore"]["verdict"] == "within"
    assert result["dowel_choice"]["leave"] is True


def test_outside_is_not_left_where_dowels_help() -> None:
    choice = solve(make_job(readings_of(0.0, -7.0)))["dowel_choice"]
    assert (choice["leave"], choice["offset"], choice["verdict"]) == (False, 7.0, "within")


def test_nothing_is_chosen_failure() -> None:
    """Where even the largest pair leaves it surely outside."""
    result = solve(make_job(readings_of(0.0, -40.0)))
    assert result["dowel_choice"] is None
    assert all(option["verdict"] == "outside" for option in result["dowel_options"])


def test_nothing_in_stock_failure() -> None:
    result = solve(make_job(readings_of(0.0, -8.0), stock={"dowel_offsets": []}))
    assert result["dowel_choice"] is None
    assert [option["leave"] for option in result["dowel_options"]] == [True]


def test_without_a_limit_the_smallest_offset_left_comes_first() -> None:
    found = options(make_job(readings_of(0.0, -8.0), limits={"bore_offset": None}))
    assert [o["offset"] for o in found] == [7.0, 14.0, 0.0, 21.0]
    assert {o["probability_within"] for o in found} == {None}


# With dowels in place ----------------------------------------------------------------------


@given(st.floats(0.0, 359.0), st.sampled_from([7.0, 14.0, 21.0]))
def test_dowels_now_in_place_are_reckoned_out(aim: float, offset: float) -> None:
    """On standard dowels the bore was 6 low; a pair has moved it since; the advice is the same."""
    x, y = offset * math.sin(math.radians(aim)), -6.0 + offset * math.cos(math.radians(aim))
    result = solve(fitted(make_job(readings_of(x, y), indicator=PERFECT), offset, aim))
    fresh = [o for o in result["dowel_options"] if not o["leave"]]
    assert {o["offset"] for o in fresh} == {0.0, 7.0, 14.0, 21.0}
    for option in fresh:
        assert apart(option["aim_deg"], 0.0) < 1e-6
        assert option["expected_offset"] == pytest.approx(abs(option["offset"] - 6.0), abs=1e-9)


def test_standard_dowels_are_an_option_only_where_others_are_fitted() -> None:
    offered = [
        sorted(o["offset"] for o in options(job) if not o["leave"])
        for job in (make_job(readings_of(0.0, 1.0)), fitted(make_job(readings_of(0, 1)), 7.0, 30.0))
    ]
    assert offered == [[7.0, 14.0, 21.0], [0.0, 7.0, 14.0, 21.0]]


def test_going_back_to_standard_dowels_undoes_what_they_did() -> None:
    """A bore that was 1 low was moved by 7 up, and so it is 6 high: best without them."""
    job = fitted(make_job(readings_of(0.0, 6.0), stock={"dowel_offsets": [7.0]}), 7.0, 0.0)
    best, *_ = options(job)
    assert (best["leave"], best["offset"], best["aim_deg"]) == (False, 0.0, 0.0)
    assert best["expected_offset"] == pytest.approx(1.0, abs=1e-9)


def test_leaving_keeps_the_dowels_in_place() -> None:
    job = fitted(make_job(readings_of(0.0, 1.0)), 7.0, 30.0)
    (leave,) = [o for o in options(job) if o["leave"]]
    assert leave["expected_offset"] == pytest.approx(1.0)
    assert leave["aim_deg"] == 30.0


def test_a_pair_that_differs_leaves_only_leaving() -> None:
    job = make_job(readings_of(0.0, -6.0))
    job["rounds"][0]["dowels"] = [{"offset": 7, "aim_deg": 0}, {"offset": 7, "aim_deg": 40}]
    assert [o["leave"] for o in options(job)] == [True]


# Doubt of the aim --------------------------------------------------------------------------


def test_a_dowel_off_its_aim_moves_across() -> None:
    """Seven thou five degrees off, rectangular: 7 x .0873 / 1.732 = .353 across."""
    doubt = aim_covariance(Vec2(7.0, 0.0), 5.0)
    assert math.sqrt(doubt.yy) == pytest.approx(0.3527, abs=5e-5)
    assert doubt.xx == pytest.approx(0.0, abs=1e-15)


def test_every_refitting_carries_the_play_of_the_fit() -> None:
    """... and leaving it does not: nothing is taken apart."""
    chances = {}
    for clearance in (0.0, 6.0):
        job = make_job(
            readings_of(0.0, -7.0), housing={"dowel_clearance": clearance},
            stock={"dowel_offsets": [3.0], "aim_setting_deg": 0.0},
        )  # fmt: skip
        chances[clearance] = {o["leave"]: o["probability_within"] for o in options(job)}
    assert chances[0.0][True] == chances[6.0][True]
    assert chances[0.0][False] > chances[6.0][False] + 0.01


def test_the_play_is_half_the_clearance_either_way() -> None:
    """Three thou on the diameter: plus or minus 1.5, rectangular, in any direction alike."""
    doubt = play_covariance(3.0)
    assert (doubt.xx, doubt.xy, doubt.yy) == pytest.approx((0.75, 0.0, 0.75), abs=1e-12)


# What dowels can't do, and what they are aimed for -----------------------------------------


@pytest.mark.parametrize(("clearance", "fits"), [(None, None), (13.9, False), (14.0, True)])
def test_the_bolt_holes_allow_half_their_clearance(clearance: float | None, fits: object) -> None:
    """Clearances are on the diameter: a pair of 7 wants 14."""
    stock = {"dowel_offsets": [7.0]}
    job = make_job(readings_of(0.0, -7.0), stock=stock, housing={"bolt_clearance": clearance})
    told = {o["leave"]: o["fits_bolt_holes"] for o in options(job)}
    assert told[False] is fits
    assert told[True] is (None if clearance is None else True)


def test_what_does_not_fit_the_bolt_holes_is_not_chosen() -> None:
    job = make_job(
        readings_of(0.0, -9.0),
        housing={"bolt_clearance": 15.0},
        stock={"dowel_offsets": [7.0, 9.0]},
    )
    result = solve(job)
    assert result["dowel_options"][0]["offset"] == 9.0
    assert result["dowel_choice"]["offset"] == 7.0


def aimed_for(target: str) -> Data:
    """A bore 1 low, and a face that leans back at 12 by 2 thou per inch, 6 in behind the pilot."""
    job = make_job(
        readings_of(0.0, -1.0),
        housing={"pilot_distance": 6.0},
        limits={"pilot_offset": 5.0, "face_runout": 20.0},
        stock={"aim_for": target},
    )
    return with_face(job, face_readings(0.0, 2.0))


def test_dowels_may_be_aimed_for_the_bore_or_for_the_pilot_bearing() -> None:
    """Bore 1 low, face 2 thou per inch: the axis meets the pilot bearing 11 high.

    For the bore it is left; for the pilot bearing it must go down. Both figures are shown.
    """
    for target, aim in (("bore", 0.0), ("pilot", 180.0)):
        found = options(aimed_for(target))
        (seven,) = [o for o in found if o["offset"] == 7.0]
        way = 1.0 if aim == 0.0 else -1.0
        assert apart(seven["aim_deg"], aim) < 1e-9
        assert seven["expected_offset"] == pytest.approx(abs(-1.0 + way * 7.0), abs=1e-9)
        assert seven["expected_pilot_offset"] == pytest.approx(abs(11.0 + way * 7.0), abs=1e-9)
    assert solve(aimed_for("bore"))["dowel_choice"]["leave"] is True
    choice = solve(aimed_for("pilot"))["dowel_choice"]
    assert (choice["offset"], choice["leave"]) == (14.0, False)


def test_without_a_pilot_line_dowels_are_aimed_for_the_bore() -> None:
    """... whatever is asked for: nothing is assumed in place of the missing distance."""
    job = make_job(readings_of(0.0, -7.0), stock={"aim_for": "pilot"})
    for option in options(job):
        assert option["expected_pilot_offset"] is option["pilot_probability_within"] is None
        assert option["leave"] or apart(option["aim_deg"], 0.0) < 1e-9
    assert bore_of(job)["verdict"] == "outside"


def test_a_careless_aim_makes_the_dowels_less_sure() -> None:
    chances = []
    for setting in (0.0, 10.0, 45.0):
        stock = {"dowel_offsets": [21.0], "aim_setting_deg": setting}
        (option,) = [
            o for o in options(make_job(readings_of(0, -19), stock=stock)) if not o["leave"]
        ]
        chances.append(option["probability_within"])
    assert chances[0] > chances[1] > chances[2]
