"""A plate's error apart from the housing's: by hand, and against plates drawn by chance."""

from __future__ import annotations

import math
import random

import pytest

from sweepsheet import sheet
from sweepsheet.alignment.plate import turns_of
from sweepsheet.alignment.rounds import measure_round
from sweepsheet.job.model import Job
from sweepsheet.job.read import read_job
from sweepsheet.maths.normal import K_95_PLANE
from sweepsheet.maths.vector import Vec2
from sweepsheet.maths.verdict import NOT_JUDGED
from sweepsheet.solution import work_out
from tests.cases.jobs import PERFECT, Data, make_job, readings_of, then, with_dowels, with_face

SCATTER = 0.3


def swept(*centers: Vec2, **housing: object) -> Data:
    """A job of these centres, exactly swept in a plate that is turned before each round after."""
    sections: Data = {"indicator": PERFECT, "housing": {"swept_bore": "plate", **housing}}
    job = then(*(make_job(readings_of(c.x, c.y), **sections) for c in centers))
    for each in job["rounds"][1:]:
        each["since"] = "plate_turned"
    return job


def test_housing_and_plate_by_hand() -> None:
    """M = (2, -3), m' = (0, -5): c is their mean, (1, -4), and e half their difference, (1, 1)."""
    solution = work_out(read_job(swept(Vec2(2.0, -3.0), Vec2(0.0, -5.0))))
    assert solution.plate is not None
    assert solution.plate.error is not None
    error = solution.plate.error.center
    assert (error.x, error.y) == pytest.approx((1.0, 1.0))
    for each in solution.measured:
        assert (each.bore.center.x, each.bore.center.y) == pytest.approx((1.0, -4.0))


def test_it_stays_turned_until_it_is_turned_back() -> None:
    """Dowels of 4 up bring c to (1, 0); the plate is still turned, so the sweep shows (0, -1)."""
    job = swept(Vec2(2.0, -3.0), Vec2(0.0, -5.0))
    job = then(job, with_dowels(make_job(readings_of(0.0, -1.0)), (4.0, 0.0)))
    read = read_job(job)
    assert turns_of(read.rounds) == [1, -1, -1]
    solution = work_out(read)
    center = solution.latest.bore.center
    assert (center.x, center.y) == pytest.approx((1.0, 0.0), abs=1e-9)
    # And back again: m = c + e.
    back = make_job(readings_of(2.0, 1.0))["rounds"][0] | {"since": "plate_turned"}
    solution = work_out(read_job({**job, "rounds": [*job["rounds"], back]}))
    center = solution.latest.bore.center
    assert (center.x, center.y) == pytest.approx((1.0, 0.0), abs=1e-9)
    assert solution.plate is not None
    assert solution.plate.error is not None
    assert solution.plate.error.center.y == pytest.approx(1.0)


def noisy(*centers: Vec2, **housing: object) -> Job:
    """The same with scatter, sag not measured, and a limit."""
    dial = PERFECT | {"repeatability": SCATTER, "sag": None, "sag_allowance": 6.0}
    job = swept(*centers, **housing)
    return read_job({**job, "indicator": dial, "limits": {"bore_offset": 9.0}})


def test_the_doubt_of_housing_and_plate_by_hand() -> None:
    """Four readings of scatter s: each centre s sqrt(1/2); a quarter of both is for c and for e.

    What sag leaves in doubt is common to all sweeps: it is in c as it was, and not in e.
    """
    job = noisy(Vec2(2.0, -3.0), Vec2(0.0, -5.0), plate_concentricity=2.5)
    solution = work_out(job)
    each = SCATTER**2 / 2.0
    plate = solution.plate
    assert plate is not None
    assert plate.error is not None
    assert plate.within == 2.5
    assert plate.error.covariance.xx == pytest.approx(each / 2.0)
    assert plate.error.covariance.yy == pytest.approx(each / 2.0)
    assert plate.error.judged == NOT_JUDGED
    raw = measure_round(job, job.rounds[0]).bore
    for measured in solution.measured:
        bore = measured.bore
        assert bore.noise.xx == pytest.approx(each / 2.0)
        assert bore.fresh.xx == pytest.approx(raw.fresh.xx / 2.0)
        assert bore.covariance.xx == pytest.approx(each / 2.0)
        assert bore.covariance.yy - each / 2.0 == pytest.approx(raw.covariance.yy - raw.noise.yy)
        assert bore.judged.verdict == "within"


def test_the_doubt_of_a_plate_turned_twice_by_hand() -> None:
    """Two turns share the sweep between them; each counts half: (N + N) (1/4)^2, twice."""
    job = noisy(Vec2(2.0, -3.0), Vec2(0.0, -5.0), Vec2(2.0, -3.0))
    plate = work_out(job).plate
    assert plate is not None
    assert plate.error is not None
    assert plate.error.covariance.xx == pytest.approx(4.0 * SCATTER**2 / 2.0 / 16.0)


def test_a_later_round_has_the_doubt_of_the_plate_in_it() -> None:
    data = swept(Vec2(2.0, -3.0), Vec2(0.0, -5.0))
    data = then(data, with_dowels(make_job(readings_of(0.0, -1.0)), (4.0, 0.0)))
    solution = work_out(read_job({**data, "indicator": PERFECT | {"repeatability": SCATTER}}))
    assert solution.plate is not None
    assert solution.plate.error is not None
    assert solution.latest.bore.fixed == solution.plate.error.covariance
    assert solution.latest.bore.covariance.xx == pytest.approx(SCATTER**2 / 2.0 * 1.5)


def test_a_bound_is_doubt_and_moves_nothing() -> None:
    """Anywhere in a circle of 2: a variance of 1 along any line, in every round and in common."""
    known = work_out(read_job(swept(Vec2(0.0, -3.0), plate_concentricity=2.0))).latest.bore
    assert known.center.y == pytest.approx(-3.0)
    assert known.fixed.xx == pytest.approx(1.0)
    assert known.covariance.yy == pytest.approx(1.0, abs=1e-6)
    alone = swept(Vec2(0.0, -3.0), swept_bore="housing", plate_concentricity=2.0)
    assert work_out(read_job(alone)).plate is None


def test_the_sheet_says_what_is_known_of_the_plate() -> None:
    found = sheet(swept(Vec2(2.0, -3.0), Vec2(0.0, -5.0)))
    assert "1.4 thou ± 0.0 thou off its pins, toward 1:30 as first mounted" in found
    # As good as true: no direction is sure.
    assert "no direction sure" in sheet(swept(Vec2(0.0, -3.0), Vec2(0.0, -3.0)))
    bounded = sheet(swept(Vec2(0.0, -3.0), plate_concentricity=2.0))
    assert "Its bore may be 2.0 thou off its pins: that is in every ±" in bounded
    assert "The plate that was swept" not in sheet(swept(Vec2(0.0, -3.0)))


def test_a_sweep_that_is_not_believed_tells_nothing_of_the_plate() -> None:
    job = swept(Vec2(2.0, -3.0), Vec2(0.0, -5.0))
    job["rounds"][0]["bore"]["closing"] = [9.0]
    solution = work_out(read_job(job))
    assert solution.plate_unknown
    assert solution.latest.bore.judged.verdict is None


def test_the_face_is_that_of_the_round_before() -> None:
    """The housing was not touched; its readings are written down once."""
    first = with_face(swept(Vec2(2.0, -3.0)))
    job = then(first, swept(Vec2(0.0, -5.0)))
    job["rounds"][1]["since"] = "plate_turned"
    read = read_job(job)
    assert read.rounds[1].face == read.rounds[0].face
    assert sheet(job).count("Face ") == sheet(first).count("Face ")


@pytest.mark.slow
@pytest.mark.parametrize("turned", [True, False])
def test_95_of_100_regions_hold_the_housing(*, turned: bool) -> None:
    """By reversal, or with a bound: the bore of the housing lies in the region that is told.

    As found, and on dowels after it, the plate left as it was last. A bound has hard ends: nothing
    lies beyond it, and the region, made as if it had none, holds all.
    """
    rng, tries = random.Random(11), 1500
    held = [0, 0]
    for _ in range(tries):
        at, size = rng.uniform(0.0, 2.0 * math.pi), 4.0 * math.sqrt(rng.random())
        plate = Vec2(size * math.sin(at), size * math.cos(at))
        place, moved = Vec2(rng.gauss(0.0, 5.0), -7.0), Vec2(0.0, rng.uniform(6.0, 8.0))
        mounted = [place + plate, place - plate] if turned else [place + plate]
        after = place + moved + (-plate if turned else plate)
        rounds = []
        for i, center in enumerate([*mounted, after]):
            row = [m + rng.gauss(0.0, SCATTER) for m in readings_of(center.x, center.y)]
            rounds.append(make_job(row)["rounds"][0])
            if turned and i == 1:
                rounds[1]["since"] = "plate_turned"
        with_dowels({"rounds": rounds[-1:]}, (7.0, 0.0))
        job = swept(Vec2(0.0, 0.0), plate_concentricity=4.0)
        dial = PERFECT | {"repeatability": SCATTER}
        solution = work_out(read_job({**job, "indicator": dial, "rounds": rounds}))
        for k, (bore, true) in enumerate(
            ((solution.measured[0].bore, place), (solution.latest.bore, place + moved))
        ):
            miss = bore.center - true
            held[k] += bore.covariance.inverse().along(miss) <= K_95_PLANE**2
    most = 0.99 if turned else 1.0
    assert all(0.93 <= each / tries <= most for each in held), held
