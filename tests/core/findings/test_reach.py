"""How far the drawer reaches: the sizes 7, 14 and 21, a limit of 5 and a usual dial."""

from __future__ import annotations

import pytest

from sweepsheet import solve
from sweepsheet.findings.reach import Reach, reach_of
from sweepsheet.job.read import read_job
from sweepsheet.solution import work_out
from tests.cases.jobs import (
    SEVEN_BOLTS,
    TWO_HOLES,
    Data,
    face_readings,
    make_job,
    readings_of,
    with_dowels,
    with_face,
)

GOOD_DIAL: Data = {"sag": 0.0}


def reach(low: float, **sections: object) -> Reach | None:
    """The reach for a bore that is so much low."""
    job = make_job(readings_of(0.0, -low)) | {"indicator": GOOD_DIAL} | sections
    return reach_of(work_out(read_job(job)))


def known(low: float, **sections: object) -> Reach:
    found = reach(low, **sections)
    assert found is not None
    return found


def reach_in(job: Data) -> Reach:
    """The reach in a job that has one."""
    found = reach_of(work_out(read_job(job)))
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("low", "sections", "kind", "size", "left", "sure"),
    [
        (8.0, {}, "stock", 7.0, 1.0, True),
        (14.0, {}, "stock", 14.0, 0.0, True),
        # The largest goes in, and nothing is sure: 21 leaves 4.6 of 25.6.
        (25.6, {}, "stock", 21.0, 4.6, False),
        (11.6, {"stock": {"dowel_offsets": [7.0]}}, "stock", 7.0, 4.6, False),
        (14.0, {"housing": {"bolt_clearance": 27.9}}, "tight", 14.0, 0.0, True),
        (14.0, {"housing": {"bolt_clearance": 28.0}}, "stock", 14.0, 0.0, True),
        (10.5, {"limits": {"bore_offset": 3.0}}, "between", 10.5, 3.5, False),
        # Below the smallest as well, where leaving it is the nearest.
        (7.0, {"limits": {"bore_offset": 4.0}, "stock": {"dowel_offsets": [14.0]}},
         "between", 7.0, 7.0, False),
        (8.0, {"stock": {"dowel_offsets": []}}, "between", 8.0, 8.0, False),
        (28.0, {}, "beyond", 28.0, 7.0, False),
        (40.0, {}, "beyond", 40.0, 19.0, False),
    ],
)  # fmt: skip
def test_what_the_drawer_can_do(
    low: float, sections: Data, kind: str, size: float, left: float, *, sure: bool
) -> None:
    found = known(low, **sections)
    assert (found.kind, found.sure) == (kind, sure)
    assert (found.size, found.left) == pytest.approx((size, left), abs=1e-9)
    assert found.clearance == pytest.approx(2.0 * size)


def test_what_is_expected_to_stay_outside_is_not_chosen() -> None:
    """10.5 with 7 and 14 and a limit of 3: each leaves 3.5, so near that none is surely out."""
    job = make_job(readings_of(0.0, -10.5), limits={"bore_offset": 3.0})
    best, *_ = solve(job)["dowel_options"]
    assert (best["expected_offset"], best["verdict"]) == (pytest.approx(3.5), "undecided")
    assert solve(job)["dowel_choice"] is None
    assert (solve(job)["reach"]["kind"], solve(job)["reach"]["offset"]) == ("between", 10.5)


@pytest.mark.parametrize(("clearance", "fits"), [(None, None), (20.9, False), (21.0, True)])
def test_whether_the_size_that_is_needed_goes_in(clearance: float | None, fits: object) -> None:
    """10.5 off needs 21 on the diameter: bolts go either way by half their clearance."""
    housing = {"bolt_clearance": clearance}
    assert known(10.5, limits={"bore_offset": 3.0}, housing=housing).fits is fits


@pytest.mark.parametrize("low", [0.0, 3.0])
def test_within_there_is_nothing_to_reach(low: float) -> None:
    assert reach(low) is None


def test_what_is_not_known_has_no_reach_failure() -> None:
    """No limit; or two unlike dowels in place, whose holes nobody measured."""
    assert reach(9.0, limits={"bore_offset": None}) is None
    unlike = with_dowels(make_job(readings_of(0.0, -9.0)), (7.0, 0.0), (14.0, 0.0))
    assert solve(unlike)["reach"] is None


def test_unlike_dowels_reach_between_the_sizes() -> None:
    """7 and 14 up at holes left and right move the middle by 10.5; none of it is left."""
    found = known(10.5, limits={"bore_offset": 3.0}, housing={"dowel_holes": TWO_HOLES})
    assert (found.kind, found.sure) == ("unlike", True)
    assert found.size == pytest.approx(10.5)
    assert found.pair is not None
    assert found.pair.judged.verdict == "within"
    assert found.left == found.pair.expected_offset < 0.5


def test_an_unlike_pair_that_does_not_go_in_is_none_failure() -> None:
    """It moves the bore by 10.5 and turns the housing, so that some bolt goes further than that."""
    limits = {"bore_offset": 3.0}
    for clearance, bolts, kind in (
        (20.0, [], "between"), (22.0, [], "unlike"), (22.0, SEVEN_BOLTS, "between"),
        (40.0, SEVEN_BOLTS, "unlike"),
    ):  # fmt: skip
        housing = {"dowel_holes": TWO_HOLES, "bolt_clearance": clearance, "bolts": bolts}
        assert known(10.5, limits=limits, housing=housing).kind == kind


def test_the_pilot_bearing_has_its_own_reach() -> None:
    """Bore 1 low, face 2 thou per inch, 6 in: 11 off at the bearing, where 5 is allowed."""
    for size, kind in ((12.0, "stock"), (3.0, "beyond"), (21.0, "between")):
        job = make_job(
            readings_of(0.0, -1.0), housing={"pilot_distance": 6.0}, indicator=GOOD_DIAL,
            limits={"pilot_offset": 5.0, "face_runout": 20.0},
            stock={"aim_for": "pilot", "dowel_offsets": [size]},
        )  # fmt: skip
        found = reach_in(with_face(job, face_readings(0.0, 2.0)))
        assert found.kind == kind
        assert found.pair is None
        assert kind == "stock" or found.size == pytest.approx(11.0)


def leaning(low: float, **sections: object) -> Data:
    """A bore that is so much low, before a face that brings the pilot bearing 10 lower still."""
    job = make_job(
        readings_of(0.0, -low), housing={"pilot_distance": 5.0}, indicator=GOOD_DIAL,
        limits={"bore_offset": 5.0, "pilot_offset": 5.0, "face_runout": 30.0},
    )  # fmt: skip
    for name, section in sections.items():
        job[name] = job.get(name, {}) | section
    return with_face(job, face_readings(0.0, -2.0))


def test_what_is_aimed_for_the_bore_is_reckoned_at_the_bore() -> None:
    """Whatever the pilot line: 8 low wants 7; 18 low at the bearing would want 21."""
    found = reach_in(leaning(8.0, limits={"pilot_offset": None}))
    assert found.kind == "stock"
    assert (found.size, found.left) == pytest.approx((7.0, 1.0))


@pytest.mark.parametrize(
    ("low", "sections", "kind", "size", "left"),
    [
        (3.0, {}, "stock", 14.0, 1.0),
        (3.0, {"housing": {"bolt_clearance": 20.0}}, "tight", 14.0, 1.0),
        (0.5, {"limits": {"pilot_offset": 3.0}, "stock": {"dowel_offsets": [7.0]}},
         "beyond", 10.5, 3.5),
        # Unlike dowels are reckoned for the bore alone.
        (0.5, {"limits": {"pilot_offset": 3.0}, "housing": {"dowel_holes": TWO_HOLES}},
         "between", 10.5, 3.5),
    ],
)  # fmt: skip
def test_what_is_aimed_for_the_pilot_bearing_is_reckoned_there(
    low: float, sections: Data, kind: str, size: float, left: float
) -> None:
    stock = {"aim_for": "pilot"} | sections.get("stock", {})
    found = reach_in(leaning(low, **sections | {"stock": stock}))
    assert (found.kind, found.pair) == (kind, None)
    assert (found.size, found.left) == pytest.approx((size, left), abs=0.02)


def test_as_far_as_dowel_and_limit_together_is_not_beyond() -> None:
    """21 and 5 reach 26: there it is as near as can be to the limit, and not past it."""
    assert known(26.0).kind != "beyond"
    assert known(26.2).kind == "beyond"
