"""The choice among leaving it and the dowels in stock."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import solve
from sweepsheet.dowels import aim_doubt, without_dowels
from sweepsheet.job import Dowel
from sweepsheet.vector import Vec2
from tests.core.jobs import PERFECT, Data, apart, make_job, readings_of

STANDARD = Dowel(0.0, 0.0)


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
    assert [o["offset"] for o in found] == [7.0, 0.0, 14.0, 21.0]
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


def test_without_dowels() -> None:
    assert without_dowels(Vec2(1.0, 2.0), (STANDARD, STANDARD)) == Vec2(1.0, 2.0)
    pair = (Dowel(7.0, 90.0), Dowel(7.0, 90.0))
    assert without_dowels(Vec2(1.0, 2.0), pair) == Vec2(-6.0, 2.0)


def test_standard_dowels_have_no_aim() -> None:
    assert without_dowels(Vec2(1.0, 2.0), (Dowel(0.0, 10.0), Dowel(0.0, 200.0))) == Vec2(1.0, 2.0)


@pytest.mark.parametrize(
    "pair",
    [
        (Dowel(7.0, 90.0), Dowel(14.0, 90.0)),
        (Dowel(7.0, 90.0), Dowel(7.0, 95.0)),
        (STANDARD, Dowel(7.0, 0.0)),
    ],
)
def test_without_dowels_failure(pair: tuple[Dowel, Dowel]) -> None:
    """What a pair that differs does depends on where its holes are."""
    assert without_dowels(Vec2(1.0, 2.0), pair) is None


@given(st.floats(0.0, 359.0), st.sampled_from([7.0, 14.0, 21.0]))
def test_dowels_now_in_place_are_reckoned_out(aim: float, offset: float) -> None:
    """On standard dowels the bore was 6 low; a pair has moved it since; the advice is the same."""
    x, y = offset * math.sin(math.radians(aim)), -6.0 + offset * math.cos(math.radians(aim))
    result = solve(fitted(make_job(readings_of(x, y), indicator=PERFECT), offset, aim))
    fresh = [o for o in result["dowel_options"] if not o["leave"]]
    assert {o["offset"] for o in fresh} == {7.0, 14.0, 21.0}
    for option in fresh:
        assert apart(option["aim_deg"], 0.0) < 1e-6
        assert option["expected_offset"] == pytest.approx(option["offset"] - 6.0, abs=1e-9)


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
    doubt = aim_doubt(7.0, 90.0, 5.0)
    assert math.sqrt(doubt.yy) == pytest.approx(0.3527, abs=5e-5)
    assert doubt.xx == pytest.approx(0.0, abs=1e-15)


def test_a_careless_aim_makes_the_dowels_less_sure() -> None:
    chances = []
    for setting in (0.0, 10.0, 45.0):
        stock = {"dowel_offsets": [21.0], "aim_setting_deg": setting}
        (option,) = [
            o for o in options(make_job(readings_of(0, -19), stock=stock)) if not o["leave"]
        ]
        chances.append(option["probability_within"])
    assert chances[0] > chances[1] > chances[2]
