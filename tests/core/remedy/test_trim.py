"""What dowels have been seen to do, and how to turn them."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from sweepsheet.maths.clock import unit_vector
from sweepsheet.maths.vector import ZERO, Sym2, Vec2
from sweepsheet.remedy.dowel_uncertainty import PRIOR_SPREAD
from sweepsheet.remedy.observed_move import mirrored, observed_move_of
from sweepsheet.remedy.response import LOOSE_SPREAD, DowelResponse, RoundObservation, response_of
from sweepsheet.remedy.trim import trim_for
from tests.cases.jobs import apart

Array = NDArray[np.float64]

STANDARD = (0.0, 0.0)
SURE = Sym2(1e-8, 0.0, 1e-8)

gains = st.floats(0.7, 1.3)
lags = st.floats(-20.0, 20.0)
angles = st.floats(0.0, 359.0)


def truly(bare: Vec2, gain: float, lag_deg: float, offset: float, aim_deg: float) -> Vec2:
    """Where a bore goes whose dowels move it by ``gain`` times their offset, ``lag_deg`` off."""
    return bare + unit_vector(aim_deg + lag_deg).scaled(gain * offset)


def seen_on(
    bare: Vec2, gain: float, lag_deg: float, offset: float, aim_deg: float, spread: Sym2 = SURE
) -> RoundObservation:
    """A round without error on a pair of this offset and aim; an offset of 0 is standard dowels."""
    center = truly(bare, gain, lag_deg, offset, aim_deg)
    return RoundObservation(center, spread, (offset, offset), unit_vector(aim_deg).scaled(offset))


# Gain and lag ------------------------------------------------------------------------------


@given(gains, lags, st.sampled_from([7.0, 14.0, 21.0]), angles)
def test_gain_and_lag_are_found_again(gain: float, lag: float, offset: float, aim: float) -> None:
    """From two rounds swept next to perfectly, whatever was believed before.

    The belief weighs with 1/0.15**2 against (7/1e-4)**2 for the rounds: 1e-8 of what it would pull.
    """
    bare = Vec2(-3.0, -9.0)
    rounds = [seen_on(bare, gain, lag, 0.0, 0.0), seen_on(bare, gain, lag, offset, aim)]
    found = response_of(rounds)
    assert found.gain == pytest.approx(gain, abs=1e-6)
    assert apart(found.lag_deg, lag) < 1e-4
    assert (found.bare.x, found.bare.y) == pytest.approx((bare.x, bare.y), abs=1e-4)


@given(gains, lags, angles, st.floats(20.0, 160.0))
def test_gain_and_lag_are_found_from_two_aims_alone(
    gain: float, lag: float, aim: float, turn: float
) -> None:
    """The bore need not have been swept on standard dowels."""
    bare = Vec2(2.0, -12.0)
    rounds = [seen_on(bare, gain, lag, 14.0, a) for a in (aim, aim + turn)]
    found = response_of(rounds)
    assert found.gain == pytest.approx(gain, abs=1e-4)
    assert (found.bare.x, found.bare.y) == pytest.approx((bare.x, bare.y), abs=1e-3)


def batch(rounds: Sequence[RoundObservation], prior: float) -> tuple[Array, Array]:
    """The four unknowns and their covariance by numpy, all rounds at once (normal equations)."""
    information = np.diag([0.0, 0.0, prior**-2, prior**-2])
    moments = np.array([0.0, 0.0, prior**-2, 0.0])
    for seen in rounds:
        move, cov = seen.move, seen.covariance
        design = np.array([[1.0, 0.0, move.x, -move.y], [0.0, 1.0, move.y, move.x]])
        weight = np.linalg.inv(np.array([[cov.xx, cov.xy], [cov.xy, cov.yy]]))
        information += design.T @ weight @ design
        moments += design.T @ weight @ [seen.center.x, seen.center.y]
    return np.linalg.solve(information, moments), np.linalg.inv(information)


def random_rounds(rng: random.Random, count: int) -> list[RoundObservation]:
    """Rounds on standard dowels and on pairs of 7 with errors of half a thou."""
    rounds = []
    for _ in range(count):
        a, b, c = (rng.uniform(0.2, 0.6) for _ in range(3))
        offset = rng.choice([0.0, 7.0])
        move = unit_vector(rng.uniform(0.0, 360.0)).scaled(offset)
        center = Vec2(rng.gauss(0, 5), rng.gauss(0, 5))
        rounds.append(
            RoundObservation(center, Sym2(a * a, a * b, b * b + c * c), (offset, offset), move)
        )
    latest = unit_vector(rng.uniform(0.0, 360.0)).scaled(7.0)
    rounds.append(RoundObservation(Vec2(1.0, 2.0), Sym2(0.2, 0.05, 0.3), (7.0, 7.0), latest))
    return rounds


@pytest.mark.parametrize("count", range(5))
@pytest.mark.parametrize("prior", [PRIOR_SPREAD, LOOSE_SPREAD])
def test_one_round_at_a_time_is_the_same_as_all_at_once(count: int, prior: float) -> None:
    rng = random.Random(count)
    for _ in range(20):
        rounds = random_rounds(rng, count)
        found = response_of(rounds, prior)
        state, spread = batch(rounds, prior)
        assert [found.bare.x, found.bare.y, found.gain_x, found.gain_y] == pytest.approx(
            list(state), abs=1e-9
        )
        assert np.array(found.spread) == pytest.approx(spread, abs=1e-9)


def test_the_order_of_the_rounds_before_the_latest_changes_nothing() -> None:
    rounds = random_rounds(random.Random(9), 3)
    one, other = response_of(rounds), response_of([*rounds[-2::-1], rounds[-1]])
    assert (other.bare.x, other.bare.y) == pytest.approx((one.bare.x, one.bare.y), abs=1e-9)
    assert other.gain == pytest.approx(one.gain, abs=1e-9)


def test_every_round_shrinks_the_doubt() -> None:
    """Of all four unknowns, and of where a trim would bring the bore."""
    spread = Sym2(0.2, 0.0, 0.3)
    bare = Vec2(0.0, -10.0)
    rounds = [seen_on(bare, 0.9, 5.0, 0.0, 0.0, spread)]
    rounds += [seen_on(bare, 0.9, 5.0, 7.0, aim, spread) for aim in (0.0, 20.0, -10.0, 5.0)]
    estimates = [response_of(rounds[:n]) for n in range(2, len(rounds) + 1)]
    of_gain = [each.spread[2][2] + each.spread[3][3] for each in estimates]
    of_bare = [each.spread[0][0] + each.spread[1][1] for each in estimates]
    trimmed = [each.covariance_after(unit_vector(-5.0).scaled(7.0)) for each in estimates]
    after = [doubt.xx + doubt.yy for doubt in trimmed]
    for values in (of_gain, of_bare, after):
        assert all(later < before for before, later in pairwise(values))
    # Three more rounds of the same worth bring where a trim leads near a quarter of its variance.
    assert after[-1] < after[0] / 2.0


def test_before_they_were_seen_dowels_do_what_is_written_on_them() -> None:
    """One round on standard dowels: the gain is what was believed, and as doubtful."""
    found = response_of([RoundObservation(Vec2(1.0, 2.0), SURE, STANDARD, ZERO)])
    assert (found.bare, found.gain, found.lag_deg) == (Vec2(1.0, 2.0), 1.0, 0.0)
    assert found.spread[2][2] == found.spread[3][3] == PRIOR_SPREAD**2


def test_a_round_with_another_size_says_nothing_of_this_one() -> None:
    """It counts with its nominal move, and a doubt of ``PRIOR_SPREAD`` of it."""
    other = RoundObservation(Vec2(0.0, 4.0), SURE, (14.0, 14.0), Vec2(0.0, 14.0))
    latest = RoundObservation(Vec2(0.0, -3.0), SURE, (7.0, 7.0), Vec2(0.0, 7.0))
    found = response_of([other, latest])
    # Both say that the bare bore is at -10; one by its gain of 1, one by its nominal move.
    assert (found.bare.x, found.bare.y) == pytest.approx((0.0, -10.0), abs=1e-9)
    assert found.gain == pytest.approx(1.0, abs=1e-9)
    # Two estimates of the bare bore, worth (0.08 x 14)**2 and (0.08 x 7)**2: the dial is perfect.
    both = 1.0 / (1.0 / (PRIOR_SPREAD * 14.0) ** 2 + 1.0 / (PRIOR_SPREAD * 7.0) ** 2)
    assert found.spread[1][1] == pytest.approx(both, rel=1e-3)


@pytest.mark.parametrize("thin", [1e-12, 1e-9, 1.0])
@pytest.mark.parametrize("offset", [0.0, 7.0, 500.0])
def test_a_sweep_that_is_next_to_perfect_breaks_nothing(thin: float, offset: float) -> None:
    """One round alone, known far better one way than the other."""
    move = unit_vector(30.0).scaled(offset)
    for covariance in (Sym2(1.0, 0.0, thin), Sym2(thin, 0.0, thin)):
        found = response_of([RoundObservation(Vec2(1.0, 2.0), covariance, (offset, offset), move)])
        figures = [found.bare.x, found.bare.y, found.gain, *np.ravel(found.spread)]
        assert np.isfinite(figures).all()
        assert (found.bare + move - Vec2(1.0, 2.0)).length < 1e-9


# What they did -----------------------------------------------------------------------------


def noisy(rng: random.Random, center: Vec2, sigma: float) -> Vec2:
    return center + Vec2(rng.gauss(0.0, sigma), rng.gauss(0.0, sigma))


def two_rounds(first: Vec2, second: Vec2, sigma: float, move: Vec2) -> list[RoundObservation]:
    spread = Sym2(sigma**2, 0.0, sigma**2)
    size = move.length
    return [
        RoundObservation(first, spread, STANDARD, ZERO),
        RoundObservation(second, spread, (size, size), move),
    ]


def test_noise_is_told_from_what_dowels_do() -> None:
    """Dowels that do what is written on them agree in 95 of 100 jobs.

    2 000 jobs tell that to half a percent, one standard error; three are allowed.
    """
    rng = random.Random(3)
    move, agreed = Vec2(0.0, 7.0), 0
    for _ in range(2000):
        bare = Vec2(1.0, -9.0)
        rounds = two_rounds(noisy(rng, bare, 0.4), noisy(rng, bare + move, 0.4), 0.4, move)
        observed = observed_move_of(rounds)
        assert observed is not None
        agreed += observed.agrees
        assert not observed.opposite
    assert agreed / 2000 == pytest.approx(0.95, abs=0.015)


@pytest.mark.parametrize(
    ("moved", "agrees", "opposite"),
    [
        (Vec2(0.0, 7.0), True, False),
        (Vec2(0.0, 6.0), True, False),
        (Vec2(0.0, 3.0), False, False),
        (Vec2(4.0, 5.0), False, False),
        (Vec2(7.0, 0.0), False, False),
        (Vec2(0.0, -1.0), False, False),
        (Vec2(0.0, -7.0), False, True),
        (Vec2(2.0, -6.0), False, True),
    ],
)
def test_what_the_dowels_did(moved: Vec2, agrees: bool, opposite: bool) -> None:  # noqa: FBT001 - columns of the table
    """Told 7 toward 12, each sweep worth 0.4."""
    bare = Vec2(1.0, -9.0)
    observed = observed_move_of(two_rounds(bare, bare + moved, 0.4, Vec2(0.0, 7.0)))
    assert observed is not None
    assert (observed.agrees, observed.opposite) == (agrees, opposite)
    assert observed.size == pytest.approx(moved.length, abs=1e-9)
    assert observed.size_pm == pytest.approx(1.96 * 0.4 * math.sqrt(2.0), rel=1e-4)


def test_a_move_lost_in_the_noise_is_not_called_opposite() -> None:
    """Seven thou told, nothing done, sweeps worth 4: chance alone may show a move back."""
    observed = observed_move_of(two_rounds(ZERO, Vec2(0.0, -5.0), 4.0, Vec2(0.0, 7.0)))
    assert observed is not None
    assert not observed.opposite
    assert observed.direction_pm_deg is None


def test_all_sweeps_on_standard_dowels_count() -> None:
    """Two of them, worth the same: their mean, and half the variance."""
    first, second = (Vec2(0.0, -9.0), Vec2(0.0, -10.0))
    rounds = two_rounds(first, Vec2(0.0, -2.5), 0.4, Vec2(0.0, 7.0))
    observed = observed_move_of(
        [RoundObservation(second, Sym2(0.16, 0.0, 0.16), STANDARD, ZERO), *rounds]
    )
    assert observed is not None
    assert observed.size == pytest.approx(7.0, abs=1e-9)
    assert observed.size_pm == pytest.approx(1.96 * 0.4 * math.sqrt(1.5), rel=1e-4)


@pytest.mark.parametrize(
    "rounds",
    [
        [RoundObservation(ZERO, SURE, STANDARD, ZERO)],
        [
            RoundObservation(ZERO, SURE, (7.0, 7.0), Vec2(0.0, 7.0))
        ],  # never swept on standard dowels
        [
            RoundObservation(ZERO, SURE, (7.0, 7.0), Vec2(0.0, 7.0)),
            RoundObservation(ZERO, SURE, STANDARD, ZERO),
        ],
        [
            RoundObservation(ZERO, SURE, STANDARD, ZERO),
            RoundObservation(ZERO, SURE, (7.0, 7.0), ZERO),
        ],
    ],
)
def test_observed_move_of_failure(rounds: list[RoundObservation]) -> None:
    """There is nothing to compare, or nothing that should have been done."""
    assert observed_move_of(rounds) is None


# The trim ----------------------------------------------------------------------------------


@given(gains, lags, st.floats(3.0, 25.0), angles, angles)
def test_the_trim_is_the_best_turn_there_is(
    gain: float, lag: float, off: float, toward: float, aim: float
) -> None:
    """Against every aim in steps of half a degree: none leaves less."""
    bare = unit_vector(toward).scaled(off)
    turned = math.radians(-lag)  # clockwise plus is the other way round in the plane of x and y
    response = DowelResponse(
        bare, gain * math.cos(turned), gain * math.sin(turned), ((0.0,) * 4,) * 4
    )
    trim = trim_for(response, 7.0, aim)
    every = (truly(bare, gain, lag, 7.0, 0.5 * i).length for i in range(720))
    assert trim.expected_offset <= min(every) + 1e-9
    assert trim.expected_offset == pytest.approx(abs(off - 7.0 * gain), abs=1e-6)
    assert apart(trim.aim_deg, aim + trim.turn_deg) < 1e-6
    assert -180.0 < trim.turn_deg <= 180.0
    assert truly(bare, gain, lag, 7.0, trim.aim_deg).length == pytest.approx(
        trim.expected_offset, abs=1e-6
    )


@pytest.mark.parametrize(
    ("aim", "turn"), [(10.0, -10.0), (350.0, 10.0), (180.0, 180.0), (0.0, 0.0)]
)
def test_the_turn_is_clockwise_plus(aim: float, turn: float) -> None:
    """A bore that lies low wants its dowels at 12, and these do what is written on them."""
    response = DowelResponse(Vec2(0.0, -7.0), 1.0, 0.0, ((0.0,) * 4,) * 4)
    trim = trim_for(response, 7.0, aim)
    assert trim.turn_deg == pytest.approx(turn, abs=1e-9)
    assert apart(trim.aim_deg, 0.0) < 1e-9


# The mirror image -----------------------------------------------------------------------------


def turned(v: Vec2, gain: float, lag_deg: float) -> Vec2:
    """A move made larger and turned clockwise."""
    s, c = math.sin(math.radians(lag_deg)), math.cos(math.radians(lag_deg))
    return Vec2(gain * (c * v.x + s * v.y), gain * (c * v.y - s * v.x))


def test_honest_dowels_are_never_taken_for_mirrored() -> None:
    """Gains and lags as believed, and dowels that turned by up to 25 degrees while fitted."""
    rng, spread = random.Random(7), Sym2(0.15, 0.0, 0.2)
    for _ in range(3000):
        told = unit_vector(rng.uniform(0.0, 360.0)).scaled(rng.choice((7.0, 14.0, 21.0)))
        lag = rng.choice((rng.gauss(0.0, 5.0), rng.uniform(-25.0, 25.0)))
        moved = turned(told, rng.gauss(1.0, 0.08), lag)
        seen = moved + Vec2(rng.gauss(0.0, 0.39), rng.gauss(0.0, 0.45))
        assert not mirrored(seen, told, spread), (told, lag)


def test_a_swapped_side_is_seen_where_it_differs() -> None:
    """From 30 degrees off 12 and 6; nearer to them it makes no difference to speak of."""
    rng, spread = random.Random(8), Sym2(0.15, 0.0, 0.2)
    found = 0
    for n in range(1000):
        aim = 31.0 + 118.0 * n / 1000.0
        told = unit_vector(aim).scaled(7.0)
        seen = Vec2(-told.x + rng.gauss(0.0, 0.39), told.y + rng.gauss(0.0, 0.45))
        found += mirrored(seen, told, spread)
        assert not mirrored(Vec2(-told.x, told.y), unit_vector(20.0).scaled(7.0), spread)
    assert found >= 930  # 95 in 100 lie in the region


@pytest.mark.parametrize("aim", [0.0, 29.0, 151.0, 180.0, 209.0, 331.0])
def test_near_12_and_6_nothing_is_called_mirrored_failure(aim: float) -> None:
    told = unit_vector(aim).scaled(21.0)
    assert not mirrored(Vec2(-told.x, told.y), told, Sym2(0.01, 0.0, 0.01))
