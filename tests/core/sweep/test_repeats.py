"""The scatter of a dial from repeated sweeps, pooled over jobs, and how well it is known."""

from __future__ import annotations

import math
import random

import pytest

from sweepsheet.sweep.corrections import CorrectedReadings
from sweepsheet.sweep.harmonic import fit
from sweepsheet.sweep.repeats import (
    Scatter,
    observed_scatter,
    pooled,
    range95,
    weighed,
)
from tests.cases.jobs import EIGHTHS, QUARTERS


def test_one_sweep_shows_no_scatter() -> None:
    one = CorrectedReadings(QUARTERS, ((0.0, 3.0, 1.0, 2.0),))
    assert observed_scatter(fit(one)) is None


def test_sweeps_that_share_too_few_places_show_none() -> None:
    """Two sweeps over six places with no place in common: no degree of freedom."""
    sixths = tuple(60.0 * i for i in range(6))
    rows = ((0.0, None, 1.0, None, 2.0, None), (None, 1.0, None, 0.0, None, 1.0))
    assert observed_scatter(fit(CorrectedReadings(sixths, rows))) is None


def test_scatter_is_free_of_the_zero_of_each_sweep_and_of_the_offset() -> None:
    rows = ((0.0, -5.0, -10.0, -5.0), (7.0, 2.0, -3.0, 2.0), (1.0, -4.0, -9.0, -4.0))
    shown = observed_scatter(fit(CorrectedReadings(QUARTERS, rows)))
    assert shown is not None
    assert shown.dof == 12 - 4 - 3 + 1
    assert shown.variance == pytest.approx(0.0, abs=1e-25)


def test_pooling_by_hand() -> None:
    both = pooled([Scatter(0.04, 3), Scatter(0.09, 12), Scatter(0.25, 5)])
    assert both is not None
    assert both.dof == 20
    assert both.variance == pytest.approx((3 * 0.04 + 12 * 0.09 + 5 * 0.25) / 20, abs=1e-15)
    assert both.deviation == pytest.approx(math.sqrt(both.variance), abs=1e-15)
    assert pooled([]) is None


def test_pooling_tells_what_went_in_apart_from_order_and_parts() -> None:
    parts = [Scatter(0.1, 3), Scatter(0.3, 6), Scatter(0.2, 9)]
    whole = pooled(parts)
    first = pooled(parts[:2])
    assert whole is not None
    assert first is not None
    in_steps = pooled([parts[2], first])
    assert in_steps is not None
    assert in_steps.dof == whole.dof
    assert in_steps.variance == pytest.approx(whole.variance)


def test_few_sweeps_that_agree_do_not_make_a_perfect_dial() -> None:
    assert weighed(Scatter(0.0, 3), 0.4) == pytest.approx(0.08, abs=1e-15)
    assert weighed(Scatter(0.0, 300), 0.4) == pytest.approx(0.48 / 303, abs=1e-15)
    assert weighed(Scatter(1.0, 3), 0.4) == 1.0


@pytest.mark.parametrize(
    ("sweeps", "positions"), [(2, QUARTERS), (3, QUARTERS), (5, QUARTERS), (5, EIGHTHS)]
)
def test_the_range_holds_what_it_says(sweeps: int, positions: tuple[float, ...]) -> None:
    """Simulated sweeps of a bore that is off, each with its own zero: 93 to 99 %."""
    rng, held, times = random.Random(51), 0, 1000
    for _ in range(times):
        sigma = rng.uniform(0.05, 2.0)
        rows = tuple(
            tuple(
                zero + 6.0 * math.cos(math.radians(a - 40.0)) + rng.gauss(0.0, sigma)
                for a in positions
            )
            for zero in (rng.uniform(-5.0, 5.0) for _ in range(sweeps))
        )
        shown = observed_scatter(fit(CorrectedReadings(positions, rows)))
        assert shown is not None
        low, high = range95(shown)
        held += low <= sigma <= high
    assert 0.93 <= held / times <= 0.99


def test_the_range_of_a_pool_holds_what_it_says() -> None:
    """A rig in many jobs of differing size, and no repeated sweep in some."""
    rng, held, times = random.Random(52), 0, 600
    for _ in range(times):
        sigma = rng.uniform(0.1, 1.0)
        found = []
        for _job in range(rng.randrange(1, 7)):
            places = rng.choice((QUARTERS, EIGHTHS))
            rows = tuple(
                tuple(rng.gauss(0.0, sigma) for _ in places) for _ in range(rng.randrange(2, 4))
            )
            each = observed_scatter(fit(CorrectedReadings(places, rows)))
            assert each is not None
            found.append(each)
        whole = pooled(found)
        assert whole is not None
        low, high = range95(whole)
        held += low <= sigma <= high
    assert 0.93 <= held / times <= 0.99
