"""What the readings say about themselves."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.sweep.checks import (
    PairSums,
    disagreement,
    foreign_reading,
    mean_readings,
    out_of_round,
    pair_sums,
)
from sweepsheet.sweep.corrections import CorrectedReadings
from sweepsheet.sweep.harmonic import fit
from tests.cases.jobs import EIGHTHS, PERFECT, QUARTERS, apart, codes_of, make_job, readings_of

small = st.floats(-20.0, 20.0)


# Pair sums ---------------------------------------------------------------------------------


@given(small, small, small)
def test_pair_sums_of_a_round_bore_agree(x: float, y: float, zero: float) -> None:
    found = pair_sums(QUARTERS, tuple(readings_of(x, y, QUARTERS, zero)))
    assert found is not None
    assert found.difference == pytest.approx(0.0, abs=1e-9)


def test_pair_sums_find_their_places_in_any_order() -> None:
    assert pair_sums((270.0, 0.0, 180.0, 90.0), (4.0, 3.0, 0.0, -2.0)) == PairSums(0.0, 1.0)


def test_pair_sums_take_the_pairs_nearest_to_12() -> None:
    means = (0.0, 5.0, 1.0, 5.0, 2.0, 5.0, 3.0, 5.0)
    assert pair_sums(EIGHTHS, means) == PairSums(0.0, 0.0 + 2.0 - 1.0 - 3.0)
    # Where one of those is missing, the pairs between them.
    gaps = (None, *means[1:])
    assert pair_sums(EIGHTHS, gaps) == PairSums(45.0, 0.0)


@pytest.mark.parametrize(
    "positions", [(0.0, 120.0, 240.0), (0.0, 80.0, 180.0, 270.0), (0.0, 60.0, 120.0, 180.0, 240.0)]
)
def test_pair_sums_failure(positions: tuple[float, ...]) -> None:
    """Without two pairs at right angles there is nothing to compare."""
    assert pair_sums(positions, (0.0,) * len(positions)) is None


# Out-of-round ------------------------------------------------------------------------------


@given(small, small, st.floats(0.1, 5.0), st.floats(0.0, 179.9))
def test_an_oval_is_found_beside_the_offset(x: float, y: float, half: float, at: float) -> None:
    positions = (0.0, 50.0, 100.0, 170.0, 220.0, 290.0)
    means = tuple(
        m + half * math.cos(2.0 * math.radians(a - at))
        for m, a in zip(readings_of(x, y, positions), positions, strict=True)
    )
    found = out_of_round(positions, means)
    assert found is not None
    assert found.tir == pytest.approx(2.0 * half, abs=1e-8)
    assert apart(2.0 * found.at_deg, 2.0 * at) < 1e-4  # either end of the long axis will do


def test_out_of_round_failure_four_positions() -> None:
    assert out_of_round(QUARTERS, (0.0, 1.0, 0.0, 1.0)) is None


def test_out_of_round_failure_five_of_which_one_is_missing() -> None:
    assert out_of_round((0.0, 72.0, 144.0, 216.0, 288.0), (0.0, 1.0, None, 1.0, 0.0)) is None


# A reading that does not belong ------------------------------------------------------------


@pytest.mark.parametrize("place", range(8))
@pytest.mark.parametrize("wrong", [-5.0, 5.0])
def test_the_reading_that_does_not_belong_is_named(place: int, wrong: float) -> None:
    means = readings_of(3.0, -4.0, EIGHTHS)
    means[place] += wrong
    found = foreign_reading(EIGHTHS, tuple(means), noise=0.4)
    assert found is not None
    assert found.position_index == place
    assert found.position_deg == EIGHTHS[place]
    assert found.excess == pytest.approx(wrong, abs=1e-9)


def test_the_place_is_named_by_its_number_where_others_are_blocked() -> None:
    means: list[float | None] = [*readings_of(3.0, -4.0, EIGHTHS)]
    means[0] = None
    found = foreign_reading(EIGHTHS, (*means[:5], (means[5] or 0.0) + 6.0, *means[6:]), noise=0.4)
    assert found is not None
    assert (found.position_index, found.position_deg) == (5, 225.0)


def test_foreign_reading_failure_nothing_wrong() -> None:
    assert foreign_reading(EIGHTHS, tuple(readings_of(3.0, -4.0, EIGHTHS)), noise=0.4) is None


def test_foreign_reading_failure_two_wrong() -> None:
    """Two readings that are wrong alike can't be told apart from an oval: none is named."""
    means = readings_of(3.0, -4.0, EIGHTHS)
    means[1] += 5.0
    means[5] += 5.0
    assert foreign_reading(EIGHTHS, tuple(means), noise=0.4) is None


def test_foreign_reading_failure_four_positions() -> None:
    assert foreign_reading(QUARTERS, (9.0, 0.0, 0.0, 0.0), noise=0.1) is None


def test_foreign_reading_failure_one_that_carries_the_fit() -> None:
    """Where leaving one out leaves half a turn, nothing contradicts that one."""
    positions = (0.0, 40.0, 80.0, 120.0, 240.0)
    assert foreign_reading(positions, (0.0, 0.0, 0.0, 0.0, 50.0), noise=0.4) is None


def test_foreign_readings_are_seldom_seen_where_there_are_none() -> None:
    """At most one false alarm in a hundred sweeps of eight positions with normal scatter.

    The threshold promises about one in two hundred; 2 000 sweeps tell that to 0.2 in a hundred.
    """
    rng = random.Random(17)
    alarms = sum(
        foreign_reading(EIGHTHS, tuple(rng.gauss(0.0, 0.4) for _ in EIGHTHS), noise=0.4) is not None
        for _ in range(2000)
    )
    assert alarms <= 20


@pytest.mark.slow
def test_a_perfect_dial_finds_nothing_in_its_own_rounding() -> None:
    """A dial without any doubt and readings that fit exactly: no finding may come of 1e-16."""
    rng = random.Random(1)
    found: set[str] = set()
    for _ in range(200):
        # Five positions, each somewhere in its own fifth of the turn.
        positions = [72.0 * i + 5.0 * rng.randrange(8) for i in range(5)]
        x, y, zero = (rng.uniform(-9.0, 9.0) for _ in range(3))
        for places in (positions, QUARTERS):
            readings = readings_of(x, y, places, zero)
            found |= set(codes_of(make_job(readings, positions=places, indicator=PERFECT)))
    assert not found & {"foreign-reading", "out-of-round", "pair-sums", "sweeps-disagree"}


# Repeats -----------------------------------------------------------------------------------


def fitted_rows(*rows: list[float]) -> CorrectedReadings:
    return CorrectedReadings(EIGHTHS, tuple(tuple(row) for row in rows))


def test_means_are_freed_of_each_sweep_s_zero() -> None:
    row = readings_of(3.0, -4.0, EIGHTHS)
    data = fitted_rows(row, [m + 7.0 for m in row])
    assert mean_readings(data, fit(data)) == pytest.approx(row, abs=1e-12)


def test_the_place_where_sweeps_differ_is_named() -> None:
    first = readings_of(3.0, -4.0, EIGHTHS)
    second = [*first]
    second[6] += 4.0
    found = disagreement(fit(fitted_rows(first, second)), scatter=0.3)
    assert found is not None
    assert found.position_deg == 270.0
    # An eighth of it went into the zero of the second sweep.
    assert found.span == pytest.approx(4.0 - 4.0 / 8.0, abs=1e-12)
    assert found.sweep == 1


def test_disagreement_failure_they_agree() -> None:
    row = readings_of(3.0, -4.0, EIGHTHS)
    assert disagreement(fit(fitted_rows(row, row)), scatter=0.3) is None


def test_disagreement_failure_only_the_zero_differs() -> None:
    row = readings_of(3.0, -4.0, EIGHTHS)
    assert disagreement(fit(fitted_rows(row, [m + 9.0 for m in row])), scatter=0.3) is None


def test_disagreement_failure_one_sweep() -> None:
    assert disagreement(fit(fitted_rows([0.0, 9.0] * 4)), scatter=0.3) is None


@pytest.mark.slow
@pytest.mark.parametrize(
    "positions", [(0.0, 20.0, 40.0, 185.0, 250.0), (0.0, 40.0, 80.0, 120.0, 160.0, 260.0), EIGHTHS]
)
def test_a_round_bore_is_seldom_called_oval(positions: tuple[float, ...]) -> None:
    """Two in a hundred at most, wherever the positions are; 300 seeded sweeps of a usual dial."""
    rng = random.Random(3)
    called = 0
    for _ in range(300):
        true = readings_of(rng.uniform(-5.0, 5.0), rng.uniform(-5.0, 5.0), positions)
        shown = [m + rng.gauss(0.0, 0.25) + rng.uniform(-0.5, 0.5) for m in true]
        codes = codes_of(make_job([round(2.0 * m) / 2.0 for m in shown], positions=positions))
        called += "out-of-round" in codes
    assert called <= 6
