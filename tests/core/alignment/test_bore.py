"""A bore sweep, from readings to a centre: signs, doubt, and what must not change the answer."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sweepsheet.maths.normal import K_95_LINE, direction_half_width, offset_half_width
from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE, Sym2, Vec2
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    QUARTERS,
    Data,
    apart,
    bore_of,
    make_job,
    readings_of,
)

# Doubles with some hundred operations between readings and answer.
SAME = 1e-9
FIVES = (10.0, 70.0, 155.0, 215.0, 300.0)
KNOWN_DROOP: Data = {"sag": 0.0, "step": 0.5, "accuracy": 0.5, "repeatability": 0.25}
# ... and without what the measurement of the droop leaves in the height.
ROUND_DOUBT: Data = {"sag": 0.0, "step": 0.0, "accuracy": 0.5, "repeatability": 0.0}

rows = st.lists(st.floats(-20.0, 20.0), min_size=5, max_size=5)


def cov(bore: Data) -> np.ndarray:
    return np.array(bore["covariance"])


def same(first: Data, second: Data) -> None:
    """Both say the same, figure by figure."""
    assert second["center"] == pytest.approx(first["center"], abs=SAME)
    assert cov(second) == pytest.approx(cov(first), abs=SAME)
    assert second["tir"] == pytest.approx(first["tir"], abs=SAME)
    assert second["probability_within"] == pytest.approx(first["probability_within"], abs=1e-6)


# Signs -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("readings", "center", "direction", "move"),
    [
        # Pushed in most at 12: the wall is nearest there, the bore hangs low, move it up.
        ((5.0, 0.0, -5.0, 0.0), (0.0, -5.0), 180.0, 0.0),
        ((0.0, 5.0, 0.0, -5.0), (-5.0, 0.0), 270.0, 90.0),
        ((-5.0, 0.0, 5.0, 0.0), (0.0, 5.0), 0.0, 180.0),
        ((0.0, -5.0, 0.0, 5.0), (5.0, 0.0), 90.0, 270.0),
    ],
)
def test_the_housing_moves_toward_the_highest_reading(
    readings: Sequence[float], center: tuple[float, float], direction: float, move: float
) -> None:
    bore = bore_of(make_job(readings))
    assert bore["center"] == pytest.approx(center, abs=1e-12)
    assert bore["direction_deg"] == pytest.approx(direction, abs=SAME)
    assert bore["move_deg"] == pytest.approx(move, abs=SAME)
    assert bore["offset"] == pytest.approx(5.0, abs=1e-12)
    assert bore["tir"] == pytest.approx(10.0, abs=1e-12)


def test_a_spigot_from_outside_turns_every_sign() -> None:
    inside = bore_of(make_job((5.0, 1.0, -5.0, -1.0)))
    outside = bore_of(make_job((5.0, 1.0, -5.0, -1.0), contact="outside"))
    assert outside["center"] == pytest.approx([-v for v in inside["center"]], abs=1e-12)
    assert apart(outside["move_deg"], inside["move_deg"]) == pytest.approx(180.0)


def test_a_steady_dial_means_no_offset() -> None:
    bore = bore_of(make_job((2.0, 2.0, 2.0, 2.0)))
    assert (bore["offset"], bore["tir"]) == (0.0, 0.0)
    assert bore["direction_pm_deg"] is None
    assert bore["verdict"] == "within"


# What must not change the answer -----------------------------------------------------------


@given(rows, st.floats(-100.0, 100.0))
def test_another_zero_changes_nothing(row: list[float], zero: float) -> None:
    same(
        bore_of(make_job(row, positions=FIVES)),
        bore_of(make_job([m + zero for m in row], positions=FIVES)),
    )


@given(rows, st.randoms(use_true_random=False))
def test_the_order_of_the_positions_changes_nothing(row: list[float], rng: random.Random) -> None:
    """Where the dial comes back to its zero."""
    pairs = list(zip(FIVES, row, strict=True))
    rng.shuffle(pairs)
    mixed = make_job([m for _, m in pairs], positions=[a for a, _ in pairs])
    same(bore_of(make_job(row, positions=FIVES)), bore_of(mixed))


@given(rows, st.floats(0.0, 360.0))
def test_turning_all_positions_turns_the_answer(row: list[float], turn: float) -> None:
    """Where droop is known to be nothing, no direction is better than another."""
    turned = [a + turn - (360.0 if a + turn > 360.0 else 0.0) for a in FIVES]
    first = bore_of(make_job(row, positions=FIVES, indicator=ROUND_DOUBT))
    second = bore_of(make_job(row, positions=turned, indicator=ROUND_DOUBT))
    t = math.radians(turn)
    rotation = np.array([[math.cos(t), math.sin(t)], [-math.sin(t), math.cos(t)]])  # clockwise
    assert second["center"] == pytest.approx(list(rotation @ first["center"]), abs=SAME)
    assert cov(second) == pytest.approx(rotation @ cov(first) @ rotation.T, abs=SAME)
    assert second["tir"] == pytest.approx(first["tir"], abs=SAME)
    assert second["probability_within"] == pytest.approx(first["probability_within"], abs=1e-6)


@given(rows)
def test_mirroring_the_positions_mirrors_the_answer(row: list[float]) -> None:
    """Seen from the front instead: left and right change, up and down do not."""
    first = bore_of(make_job(row, positions=FIVES))
    second = bore_of(make_job(row, positions=[360.0 - a for a in FIVES]))
    flip = np.diag([-1.0, 1.0])
    assert second["center"] == pytest.approx(list(flip @ first["center"]), abs=SAME)
    assert cov(second) == pytest.approx(flip @ cov(first) @ flip, abs=SAME)


@given(rows, st.sampled_from([-1.0, 0.5, 2.0, 3.0]))
def test_twice_the_readings_are_twice_the_offset(row: list[float], factor: float) -> None:
    first = bore_of(make_job(row, positions=FIVES))
    second = bore_of(make_job([factor * m for m in row], positions=FIVES))
    assert second["center"] == pytest.approx([factor * v for v in first["center"]], abs=SAME)


@given(rows)
def test_two_equal_sweeps_keep_the_centre_and_do_not_widen_the_doubt(row: list[float]) -> None:
    once = bore_of(make_job(row, positions=FIVES, indicator=KNOWN_DROOP))
    twice = bore_of(make_job(row, row, positions=FIVES, indicator=KNOWN_DROOP))
    assert twice["center"] == pytest.approx(once["center"], abs=SAME)
    # Lack of fit may take up what scatter leaves, but the sum is not more.
    assert np.trace(cov(twice)) <= np.trace(cov(once)) + SAME


@given(rows, rows)
def test_two_sweeps_give_the_mean_of_their_centres(first: list[float], second: list[float]) -> None:
    centres = [bore_of(make_job(row, positions=FIVES))["center"] for row in (first, second)]
    both = bore_of(make_job(first, second, positions=FIVES))["center"]
    assert both == pytest.approx([(a + b) / 2 for a, b in zip(*centres, strict=True)], abs=SAME)


@given(rows)
def test_a_position_that_was_never_reached_is_as_if_not_there(row: list[float]) -> None:
    same(
        bore_of(make_job(row, positions=FIVES)),
        bore_of(make_job([*row[:2], None, *row[2:]], positions=[*FIVES[:2], 100.0, *FIVES[2:]])),
    )


@given(rows)
def test_a_full_turn_more_is_the_same_position(row: list[float]) -> None:
    same(
        bore_of(make_job(row, positions=FIVES)),
        bore_of(make_job(row, positions=[a - 360.0 for a in FIVES])),
    )


# Doubt, direction, closing -----------------------------------------------------------------


def test_half_width_of_the_offset() -> None:
    spread = Sym2(1.0, 0.0, 4.0)
    assert offset_half_width(Vec2(5.0, 0.0), spread) == pytest.approx(K_95_LINE)
    assert offset_half_width(Vec2(0.0, -5.0), spread) == pytest.approx(2.0 * K_95_LINE)
    assert offset_half_width(ZERO, spread) == pytest.approx(2.0 * K_95_LINE)


def test_half_width_of_the_direction() -> None:
    spread = Sym2(1.0, 0.0, 4.0)
    expected = math.degrees(math.asin(K_95_LINE * 2.0 / 50.0))
    assert direction_half_width(Vec2(50.0, 0.0), spread) == pytest.approx(expected)
    assert direction_half_width(Vec2(0.0, 1.0), ZERO_COVARIANCE) == 0.0


@pytest.mark.parametrize("center", [ZERO, Vec2(1.0, 0.0), Vec2(0.0, 3.0), Vec2(3.0, 0.0)])
def test_half_width_of_the_direction_failure(center: Vec2) -> None:
    """So near to the axis the direction is not known."""
    assert direction_half_width(center, Sym2(1.0, 0.0, 4.0)) is None


@given(st.floats(-9.0, 9.0), st.floats(-9.0, 9.0))
def test_the_direction_is_known_only_where_the_95_region_leaves_out_the_axis(
    x: float, y: float
) -> None:
    """... as its description says."""
    assume(math.hypot(x, y) > 1e-6)
    bore = bore_of(make_job(readings_of(x, y)))
    inverse = np.linalg.inv(cov(bore))
    center = np.array(bore["center"])
    reaches_axis = float(center @ inverse @ center) <= -2.0 * math.log(0.05)
    if reaches_axis:
        assert bore["direction_pm_deg"] is None


@pytest.mark.parametrize(
    ("closing", "expected"),
    [([0.5], 0.5), ([None], None), ([0.25, -0.5], -0.5), ([None, 0.5], 0.5), ([], None)],
)
def test_the_largest_closing_error_is_told(
    closing: list[float | None], expected: float | None
) -> None:
    sweeps = [readings_of(1.0, 2.0)] * max(1, len(closing))
    assert bore_of(make_job(*sweeps, closing=closing))["closing_error"] == expected


def test_without_a_limit_nothing_is_judged() -> None:
    bore = bore_of(make_job(readings_of(1.0, 2.0), limits={"bore_offset": None}))
    assert bore["verdict"] is bore["probability_within"] is None


@pytest.mark.parametrize(
    ("confidence", "verdict"), [(0.5, "within"), (0.95, "undecided"), (0.9999, "undecided")]
)
def test_the_verdict_asks_for_the_confidence_of_the_job(confidence: float, verdict: str) -> None:
    job = make_job(readings_of(0.0, 4.6), limits={"bore_offset": 5.0, "confidence": confidence})
    assert bore_of(job)["verdict"] == verdict


def test_out_of_round_and_pairs_are_told_where_they_can_be() -> None:
    four = bore_of(make_job((0.0, 1.0, 0.0, 1.0)))
    assert four["out_of_round"] is None
    assert four["pair_difference"] == pytest.approx(-2.0)
    eight = bore_of(make_job([0.0, 1.0] * 4, positions=EIGHTHS))
    assert eight["out_of_round"] == pytest.approx(0.0, abs=1e-12)  # that is a fourth harmonic
    three = bore_of(make_job((0.0, 1.0, 2.0), positions=(0.0, 120.0, 240.0)))
    assert three["out_of_round"] is three["pair_difference"] is None


def test_residuals_stand_where_the_readings_stand() -> None:
    bore = bore_of(make_job((1.0, None, 3.0, 0.0, 2.0), positions=FIVES))
    assert [r is None for r in bore["residuals"][0]] == [False, True, False, False, False]


def test_a_perfect_dial_judges_by_the_figure_alone() -> None:
    for offset, verdict in ((4.999, "within"), (5.001, "outside")):
        job = make_job(readings_of(0.0, offset), indicator=PERFECT)
        assert bore_of(job)["verdict"] == verdict


def test_positions_of_a_clock_need_no_order() -> None:
    backward = make_job(readings_of(1.0, 2.0, QUARTERS[::-1]), positions=QUARTERS[::-1])
    assert bore_of(backward)["center"] == pytest.approx([1.0, 2.0], abs=1e-12)


# Sag at another reach ------------------------------------------------------------------------


def height_variance(**dial: object) -> float:
    return float(cov(bore_of(make_job([0.0] * 4, indicator={**PERFECT, **dial})))[1, 1])


def test_sag_tested_at_another_reach_is_in_doubt_over_its_range() -> None:
    """From 2 to 2 x 1.5^4: rectangular of half width 4.0625, halved in height."""
    perfect = height_variance(sag=2.0, sag_reach=8.0, reach=8.0)
    assert perfect == pytest.approx(0.0, abs=1e-20)
    wide = height_variance(sag=2.0, sag_reach=8.0, reach=12.0)
    assert wide == pytest.approx(4.0625**2 / 3.0 / 4.0, abs=1e-12)


def test_the_doubt_of_the_test_grows_with_what_is_taken_out() -> None:
    """A step of 1: a test is the difference of two readings, its middle 3.03 times as large."""
    near = height_variance(sag=2.0, sag_reach=8.0, reach=8.0, step=1.0)
    far = height_variance(sag=2.0, sag_reach=8.0, reach=12.0, step=1.0)
    grown = (1.0 + 1.5**4) / 2.0
    assert far - near == pytest.approx(
        4.0625**2 / 12.0 + (grown**2 - 1.0) * 2.0 / 12.0 / 4.0, abs=1e-12
    )
    nothing = height_variance(sag=0.0, sag_reach=8.0, reach=12.0, step=1.0)
    assert nothing == pytest.approx(near, abs=1e-12)


def test_the_range_of_a_sag_at_another_reach_holds_what_is_there() -> None:
    """Brackets of any kind, whose sag grows with some power of the reach from 0 to 4."""
    rng, held, times = random.Random(61), 0, 400
    for _ in range(times):
        sag, ratio, power = rng.uniform(0.5, 4.0), rng.uniform(0.5, 1.7), rng.uniform(0.0, 4.0)
        here = sag * ratio**power
        tries = [sag + rng.gauss(0.0, 0.25 * math.sqrt(2.0)) for _ in range(3)]
        readings = [
            -3.0 * math.cos(math.radians(a))
            + here * (1.0 - math.cos(math.radians(a))) / 2.0
            + rng.gauss(0.0, 0.25)
            for a in EIGHTHS
        ]
        dial = {
            "sag": [max(0.0, each) for each in tries], "sag_reach": 8.0, "reach": 8.0 * ratio,
            "step": 0.0, "accuracy": 0.0, "repeatability": 0.25, "angle_setting_deg": 0.0,
        }  # fmt: skip
        bore = bore_of(make_job(readings, positions=EIGHTHS, indicator=dial))
        held += abs(bore["center"][1] - 3.0) <= K_95_LINE * math.sqrt(cov(bore)[1, 1])
    assert held / times >= 0.93
