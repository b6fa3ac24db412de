"""What housings of one kind show: the region against scipy's F, and against housings by chance."""

from __future__ import annotations

import math
import random
from typing import Any

import pytest
from scipy import stats

from sweepsheet.job.read import read_job
from sweepsheet.maths.clock import unit_vector
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.memory.usual import Case, Region, case_of, region_of, spread_of, usual_of
from sweepsheet.solution import work_out
from tests.cases.jobs import Data, make_job, readings_of, then, with_dowels, with_face

THOU = 0.0254


def places(rng: random.Random, n: int) -> list[Vec2]:
    """Places of a kind that is off by 6 at 4 o'clock, more this way than that."""
    return [Vec2(5.0 + rng.gauss(0.0, 2.0), -3.0 + rng.gauss(0.0, 0.7)) for _ in range(n)]


def case(place: Vec2) -> Case:
    return Case(place, None, None, None)


def solved_case(job: Data) -> Case:
    return case_of(work_out(read_job(job)))


@pytest.mark.parametrize("n", [4, 5, 9, 30])
def test_the_region_is_that_of_hotelling(n: int) -> None:
    """``p (n - 1) / (n - p) F(p, n - p)`` with p = 2, times ``1 + 1/n``: by scipy's F."""
    found = places(random.Random(n), n)
    region = region_of(found)
    assert region is not None
    x, y = [v.x for v in found], [v.y for v in found]
    widen = (1.0 + 1.0 / n) * 2.0 * (n - 1) / (n - 2) * stats.f.ppf(0.95, 2, n - 2)
    assert region.spread.xx == pytest.approx(widen * float(stats.tvar(x)))
    assert region.spread.yy == pytest.approx(widen * float(stats.tvar(y)))
    assert region.middle.x == pytest.approx(math.fsum(x) / n)


def test_what_cases_show_by_hand() -> None:
    """Five on a ring and what three of them tell beside: as it is, in its order or sorted."""
    ring = [unit_vector(72.0 * i) + Vec2(9.0, 0.0) for i in range(5)]
    told: list[tuple[Any, Any, Any]] = [(0.003, 0.9, 4.0), (0.001, None, None), (0.002, 1.1, -3.0)]
    told += [(None, None, None)] * 2
    cases = [Case(place, *more) for place, more in zip(ring, told, strict=True)]
    usual = usual_of(cases)
    assert usual.places == tuple(ring)
    assert usual.runouts == (0.001, 0.002, 0.003)
    assert (usual.gains, usual.lags_deg) == ((0.9, 1.1), (4.0, -3.0))
    assert usual.region is not None
    assert usual.region.middle.x == pytest.approx(9.0)
    assert usual.held == 5
    assert usual_of(cases[:4]).region is None
    assert usual_of(cases[:4]).held == 0


def test_a_region_holds_what_is_near_its_middle_and_no_other() -> None:
    """Half axes of 2 and 1 about (9, 0): by hand."""
    region = Region(Vec2(9.0, 0.0), Sym2(4.0, 0.0, 1.0))
    assert [region.holds(Vec2(x, y)) for x, y in ((10.9, 0.0), (11.1, 0.0), (9.0, 0.99))] == [
        True, False, True,
    ]  # fmt: skip
    assert not region.holds(Vec2(9.0, 1.2))
    assert not region.holds(Vec2(-9.0, 0.0))


def test_one_far_off_is_not_held_by_the_others() -> None:
    ring = [unit_vector(60.0 * i) for i in range(6)]
    usual = usual_of([case(place) for place in [*ring, Vec2(40.0, 0.0)]])
    assert usual.held == 6


def test_a_spread_of_one_part_in_a_thousand_is_no_line() -> None:
    """Flat places count as long as they are no line: whatever their unit."""
    for size in (1e-3, 1.0, 1e3):
        flat = [Vec2(size * x, size * 1e-3 * x * x) for x in (-2.0, -1.0, 0.0, 1.0, 2.0)]
        assert spread_of(flat) is not None
        line = [Vec2(size * x, size * 1e-6 * x * x) for x in (-2.0, -1.0, 0.0, 1.0, 2.0)]
        assert spread_of(line) is None


@pytest.mark.slow
@pytest.mark.parametrize("n", [5, 8, 20])
def test_the_next_housing_lies_in_it_95_times_in_100(n: int) -> None:
    rng, tries, held, one_by_one = random.Random(1), 1500, 0, 0
    for _ in range(tries):
        *others, following = places(rng, n + 1)
        usual = usual_of([case(place) for place in others])
        assert usual.region is not None
        held += usual.region.holds(following)
        one_by_one += usual.held
    assert 0.93 <= held / tries <= 0.97
    assert 0.93 <= one_by_one / (tries * n) <= 0.97


def test_one_job_typed_many_times_makes_no_region() -> None:
    usual = usual_of([case(Vec2(3.0, 4.0))] * 9)
    assert (usual.region, usual.held, len(usual.places)) == (None, 0, 9)
    on_a_line = usual_of([case(Vec2(float(i), 2.0 * i)) for i in range(9)])
    assert on_a_line.region is None
    few = [Vec2(1.0 * i, 1.0 * i * i) for i in range(3)]
    assert usual_of([case(place) for place in few]).region is None
    assert region_of(few) is None


def test_a_place_is_where_the_bore_was_on_stock_dowels() -> None:
    """In mm, of the first round; not one on offset dowels, nor one that is not believed."""
    job = make_job(readings_of(3.0, -4.0))
    place = solved_case(job).place
    assert place is not None
    assert (place.x, place.y) == pytest.approx((3.0 * THOU, -4.0 * THOU))
    assert solved_case(with_dowels(job, (7.0, 0.0))).place is None
    one = with_dowels(make_job(readings_of(3.0, -4.0)), (7.0, 0.0))
    one["rounds"][0]["dowels"][1] = {"offset": 0.0, "aim_deg": 0.0}
    assert solved_case(one).place is None
    slipped = make_job(readings_of(3.0, -4.0), closing=[9.0])
    assert solved_case(slipped).place is None
    unknown = make_job(readings_of(3.0, -4.0), housing={"swept_bore": "plate"})
    assert solved_case(unknown).place is None
    metric = make_job([m * THOU for m in readings_of(3.0, -4.0)], units="metric")
    found = solved_case(metric).place
    assert found is not None
    assert found.y == pytest.approx(place.y)


def test_a_face_counts_by_its_slope() -> None:
    """4 thou of runout at 3 in: 4 thou in 3 in of radius."""
    job = with_face(make_job(readings_of(0.0, -4.0)), [2.0, 0.0, -2.0, 0.0])
    assert solved_case(job).runout == pytest.approx(0.004 / 3.0)
    job["rounds"][0]["face"]["end_float"] = "free"
    assert solved_case(job).runout is None


def test_what_dowels_did_counts_unless_it_contradicts() -> None:
    """7 toward 12 told; it went 6 toward 1 o'clock: 86 %, 30 degrees clockwise."""
    begun = make_job(readings_of(0.0, -7.0))
    at = math.radians(30.0)
    moved = make_job(readings_of(6.0 * math.sin(at), -7.0 + 6.0 * math.cos(at)))
    found = solved_case(then(begun, with_dowels(moved, (7.0, 0.0))))
    assert found.gain == pytest.approx(6.0 / 7.0)
    assert found.lag_deg == pytest.approx(30.0)
    wrong = make_job(readings_of(0.0, -14.0))
    assert solved_case(then(begun, with_dowels(wrong, (7.0, 0.0)))).gain is None
    assert solved_case(begun).gain is None
