"""The seat: by hand, and against housings that come to rest by chance."""

from __future__ import annotations

import math
import random

import pytest

from sweepsheet import sheet
from sweepsheet.alignment.rounds import measure_round
from sweepsheet.job.read import read_job
from sweepsheet.maths.normal import K_95_PLANE
from sweepsheet.maths.pooled import plane_factor
from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE, Sym2, Vec2
from sweepsheet.remedy.history import history_of
from sweepsheet.remedy.seating import Seating, chains_of, play_of, seating_of
from sweepsheet.solution import work_out
from sweepsheet.words.faults import InputError
from tests.cases.jobs import PERFECT, Data, make_job, readings_of, then, with_dowels

PLAY = 1.0
SCATTER = 0.25


def seated(*centers: Vec2 | None, since: str = "reseated", **sections: object) -> Data:
    """A job of these centres, exactly swept; ``None``: the joint was cleaned."""
    given: Data = {"indicator": PERFECT, "housing": {"dowel_clearance": PLAY}, **sections}
    job = then(*(make_job(readings_of(c.x, c.y), **given) for c in centers if c is not None))
    for each in job["rounds"][1:]:
        each["since"] = since
    return job


def seating_in(job: Data) -> Seating:
    found = work_out(read_job(job)).seating
    assert found is not None
    return found


def test_two_seats_two_apart() -> None:
    """Two squares are free: ``s^2 = (1 + 1) / 2``; all by hand, g(m) = (r / K)^2."""
    found = seating_in(seated(Vec2(0.0, -3.0), Vec2(0.0, -5.0)))
    assert (found.times, found.beyond_dial) == (1, True)
    assert found.radius == pytest.approx(math.sqrt(2.0 * 19.0))
    assert found.dial_radius < 1e-12
    # The seat seen alone counts for more than with the play of the fit.
    assert found.play.xx == pytest.approx(2.0 * 19.0 / K_95_PLANE**2)
    assert (found.play.yy, found.play.xy) == (found.play.xx, 0.0)


def test_the_sheet_says_how_well_it_seats() -> None:
    told = sheet(seated(Vec2(0.0, -3.0), Vec2(0.0, -5.0)))
    assert "Seated again, times: 1. Lands within 6.2 thou of its place (95%)." in told
    assert "Once tells little." in told
    thrice = sheet(seated(Vec2(0.0, -3.0), Vec2(0.0, -5.0), Vec2(0.0, -4.0)))
    assert "times: 2." in thrice
    assert "Once tells little." not in thrice


def test_a_seat_seen_often_and_better_than_its_play_is_weighed_with_it() -> None:
    """Ten seats 0.02 apart on dowels with a clearance of 3: (6 * 0.75 + 18 * s^2) / 24."""
    centers = [Vec2(0.01 * (-1) ** i, -3.0) for i in range(10)]
    found = seating_in(seated(*centers, housing={"dowel_clearance": 3.0}))
    pooled = (6 * 0.75 + 18 * (10 * 0.0001 / 18)) / 24
    assert found.play.xx == pytest.approx(pooled * (plane_factor(24) / K_95_PLANE) ** 2)


def test_chains_are_pooled_and_each_has_its_own_mean() -> None:
    """On dowels it sits elsewhere; within each it moved by 1: ``s^2 = (0.5 + 0.5) / 4``."""
    job = seated(Vec2(0.0, -7.0), Vec2(0.0, -8.0))
    later = with_dowels(seated(Vec2(0.0, 0.0)), (7.0, 0.0))
    again = seated(Vec2(1.0, 0.0))
    again["rounds"][0]["since"] = "reseated"
    found = seating_in(then(job, later, again))
    assert found.times == 2
    assert found.radius == pytest.approx(plane_factor(4) * 0.5)


def test_what_the_dial_does_by_hand() -> None:
    """Two chains, of three seats and of two: m = 4 + 2. Four readings of scatter s: s^2/2 a centre.

    All of that is new in each sweep, and taken off what was seen; more is left than play makes.
    """
    job = seated(Vec2(0.0, -7.0), Vec2(0.0, -8.0), Vec2(0.0, -9.0))
    later = with_dowels(seated(Vec2(0.0, 0.0)), (7.0, 0.0))
    again = seated(Vec2(1.0, 0.0))
    again["rounds"][0]["since"] = "reseated"
    data = then(job, later, again)
    found = seating_in({**data, "indicator": PERFECT | {"repeatability": SCATTER}})
    squares, each = 2.0 + 0.5, SCATTER**2 / 2.0
    assert found.times == 3
    assert isinstance(found.times, int)
    assert found.dial_radius == pytest.approx(K_95_PLANE * math.sqrt(each))
    assert found.radius == pytest.approx(plane_factor(6) * math.sqrt(squares / 6.0))
    own = squares / 6.0 * (plane_factor(6) / K_95_PLANE) ** 2 - each
    assert found.play.xx == pytest.approx(own)
    assert found.beyond_dial
    assert play_of(read_job(data), found) == found.play


@pytest.mark.parametrize(("apart", "blamed"), [(1.0, False), (2.2, True)])
def test_the_seat_is_blamed_where_the_dial_alone_would_do_so_once_in_100(
    apart: float, *, blamed: bool
) -> None:
    """Two seats d apart, each centre with the variance v = s^2/2: chi^2 = d^2 / (2 v), 2 free.

    Its 99 % point is 9.21 (a table's; -2 ln 0.01), so d = 3.035 s.
    """
    job = seated(Vec2(0.0, -3.0), Vec2(0.0, -3.0 - apart * 3.035 * SCATTER / 1.5))
    found = seating_in({**job, "indicator": PERFECT | {"repeatability": SCATTER}})
    assert found.beyond_dial == blamed


def test_a_chain_that_tells_nothing_does_not_end_the_others() -> None:
    """The first pair of dowels was swept once; the second seated again."""
    data = then(seated(Vec2(0.0, -7.0)), seated(Vec2(0.0, -3.0), Vec2(0.0, -5.0)))
    for each in data["rounds"][1:]:
        with_dowels({"rounds": [each]}, (7.0, 0.0))
    data["rounds"][2]["since"] = "reseated"
    assert seating_in(data).times == 1


def test_a_joint_that_was_mended_has_a_seat_of_its_own() -> None:
    job = seated(Vec2(0.0, -3.0), Vec2(0.0, -9.0), Vec2(0.0, -5.0))
    job["rounds"][2]["since"] = "cleaned"
    assert chains_of(read_job(job).rounds) == [[0, 1], [2]]
    assert work_out(read_job(job)).seating is None
    again = seated(Vec2(0.0, -5.5))["rounds"][0] | {"since": "reseated"}
    found = seating_in({**job, "rounds": [*job["rounds"], again]})
    assert found.times == 1
    assert found.radius == pytest.approx(0.25 * math.sqrt(38.0))


def test_a_sweep_that_is_not_believed_says_nothing_of_the_seat() -> None:
    job = seated(Vec2(0.0, -3.0), Vec2(0.0, -9.0))
    job["rounds"][1]["bore"]["closing"] = [9.0]
    assert work_out(read_job(job)).seating is None


def test_seats_are_one_fit_seen_often() -> None:
    """On standard dowels they tell of the mean; the pair is then chosen for that."""
    job = seated(Vec2(0.0, -6.0), Vec2(0.0, -8.0))
    solution = work_out(read_job(job | {"limits": {"bore_offset": 20.0}}))
    response = solution.history.response
    assert response is not None
    assert response.bare.y == pytest.approx(-7.0)
    assert solution.latest.bore.center.y == pytest.approx(-8.0)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"since": "reseated"}, "rounds.0.since"),
        ({"since": "dropped"}, "rounds.0.since"),
        ({"since": 3}, "rounds.0.since"),
    ],
)
def test_what_the_first_round_can_not_have(change: Data, field: str) -> None:
    job = make_job(readings_of(0.0, -3.0))
    job["rounds"][0] |= change
    with pytest.raises(InputError) as caught:
        read_job(job)
    assert [fault.field for fault in caught.value.faults] == [field]


def test_dowels_that_differ_were_changed() -> None:
    job = seated(Vec2(0.0, -3.0), Vec2(0.0, -3.0))
    with_dowels(job, (7.0, 0.0))
    with pytest.raises(InputError) as caught:
        read_job(job)
    assert [fault.field for fault in caught.value.faults] == ["rounds.1.since"]
    same = seated(Vec2(0.0, -3.0), Vec2(0.0, -3.0))
    with_dowels(same, (0.0, 0.0))
    assert read_job(same) == read_job(seated(Vec2(0.0, -3.0), Vec2(0.0, -3.0)))


# Housings that come to rest by chance -------------------------------------------------------------


def swept(rng: random.Random, at: Vec2) -> list[float]:
    """Readings of a bore there, each with its scatter."""
    return [m + rng.gauss(0.0, SCATTER) for m in readings_of(at.x, at.y)]


def solved(rng: random.Random, place: Vec2, seat: float, times: int) -> tuple[Seating, Vec2, Sym2]:
    """A housing swept as found and seated again so often; ``seat`` is a standard deviation.

    What is known of the seat, where the bore is on the average, and how well that is known.
    """
    rounds = []
    for i in range(times + 1):
        at = place + Vec2(rng.gauss(0.0, seat), rng.gauss(0.0, seat))
        each: Data = make_job(swept(rng, at))["rounds"][0]
        rounds.append(each | {"since": "reseated"} if i else each)
    indicator = PERFECT | {"repeatability": SCATTER}
    sections: Data = {"indicator": indicator, "housing": {"dowel_clearance": PLAY}}
    job = read_job(make_job(**sections) | {"rounds": rounds})
    measured = tuple(measure_round(job, each) for each in job.rounds)
    seating = seating_of(job, measured)
    response = history_of(job, measured, None, ZERO_COVARIANCE, seating).response
    assert seating is not None
    assert response is not None
    return seating, response.bare, response.covariance_after(ZERO)


@pytest.mark.slow
@pytest.mark.parametrize("times", [1, 2, 4])
@pytest.mark.parametrize("seat", [0.5, 1.0, 3.0])
def test_radius_and_promise_hold(seat: float, times: int) -> None:
    """The next sweep lies within the radius; a pair that does its move ends where it is told."""
    rng, near, kept, tries = random.Random(10 * times), 0, 0, 1000
    place = Vec2(0.0, -7.0)
    for _ in range(tries):
        seating, bare, known = solved(rng, place, seat, times)
        rests = Vec2(rng.gauss(0.0, seat), rng.gauss(0.0, seat))
        noise = Vec2(*(rng.gauss(0.0, SCATTER * math.sqrt(0.5)) for _ in "xy"))
        near += (rests + noise).length <= seating.radius
        spread = known + seating.play
        kept += spread.inverse().along(place + rests - bare) <= K_95_PLANE**2
    assert 0.93 <= near / tries <= 0.99
    assert 0.93 <= kept / tries <= 0.99


@pytest.mark.slow
@pytest.mark.parametrize("times", [1, 2, 5])
def test_a_seat_that_does_nothing_is_blamed_once_in_a_hundred(times: int) -> None:
    rng, tries = random.Random(5), 1000
    blamed = sum(solved(rng, Vec2(0.0, -7.0), 0.0, times)[0].beyond_dial for _ in range(tries))
    assert blamed / tries <= 0.02
