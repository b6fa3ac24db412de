"""When there is work for a machine shop, and what is missing where there is none."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from sweepsheet.findings.job import findings_for
from sweepsheet.findings.order import Order, order_for
from sweepsheet.job.read import read_job
from sweepsheet.report.order import order_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.jobs import (
    EIGHTHS,
    SEVEN_BOLTS,
    TWO_HOLES,
    Data,
    face_readings,
    make_job,
    readings_of,
    then,
    with_dowels,
    with_face,
)


def order_in(job: Data) -> Order | None:
    solution = work_out(read_job(job))
    return order_for(solution, findings_for(solution))


def bore_job(x: float = 9.0, y: float = -6.0, **sections: object) -> Data:
    """A bore that is out, swept twice."""
    job = with_face(make_job(readings_of(x, y), readings_of(x, y)))
    return job | {"housing": {"dowel_holes": TWO_HOLES}} | sections


def both(job: Data, again: Data | None = None) -> Data:
    """Seated anew and swept again."""
    return then(job, again or job)


def face_job(side: str | None, slope: float = 3.0, **housing: object) -> Data:
    """A face that is out, swept twice."""
    rows = (face_readings(0.0, slope), face_readings(0.0, slope))
    job = make_job(readings_of(0.0, -1.0), housing={"tilt_from": side, **housing})
    return with_face(job, *rows)


def changed(make: Callable[[], Data], change: Callable[[Data], object]) -> Data:
    """Two rounds, the latest changed."""
    last = make()
    change(last["rounds"][0])
    return both(make(), last)


# Offered ------------------------------------------------------------------------------------


def test_a_bore_that_is_surely_out_is_bored() -> None:
    order = order_in(both(bore_job()))
    assert order is not None
    assert order.offered
    assert order.bore is not None
    assert (order.cut, order.shims, order.lacks) == (None, (), ())


@pytest.mark.parametrize(
    ("side", "housing", "radius", "places"),
    [
        ("front", {"bolts": SEVEN_BOLTS}, 8.6, 7),
        ("front", {"dowel_holes": TWO_HOLES}, 7.0, 4),
        ("front", {}, 3.0, 4),
        ("rear", {"bolts": SEVEN_BOLTS, "dowel_holes": TWO_HOLES}, 3.0, 4),
    ],
)
def test_a_face_that_is_surely_out_is_cut(
    side: str, housing: Data, radius: float, places: int
) -> None:
    """The flange on its outermost hole, else where it was swept; the rear face where swept."""
    order = order_in(both(face_job(side, **housing)))
    assert order is not None
    assert order.cut is not None
    assert order.cut.side == side
    assert order.cut.radius == pytest.approx(radius)
    assert len(order.cut.places) == places
    assert len(order.shims) == (7 if side == "front" and "bolts" in housing else 0)
    assert order.bore is None


def test_a_face_without_bolts_is_cut_by_its_quarters() -> None:
    order = order_in(both(face_job("rear")))
    assert order is not None
    assert order.cut is not None
    at = [(place.at.at_deg % 360.0, place.at.radius) for place in order.cut.places]
    assert at == [(0.0, 3.0), (90.0, 3.0), (180.0, 3.0), (270.0, 3.0)]
    assert order.lacks == ()


def test_how_well_the_holes_were_measured_is_passed_on() -> None:
    job = bore_job()
    job["housing"]["hole_accuracy"] = 2.0
    order = order_in(both(job))
    assert order is not None
    assert order.bore is not None
    assert order.bore.center is not None
    without = order_in(both(bore_job()))
    assert without is not None
    assert without.bore is not None
    assert without.bore.center is None


def test_a_seat_that_scatters_is_in_the_doubt_of_a_move() -> None:
    """Seated again 1.5 off: far more than the clearance of its dowels leaves."""
    near: Data = {"dowel_holes": TWO_HOLES, "dowel_clearance": 0.1}
    steady = order_in(both(bore_job(housing=near)))
    assert steady is not None
    assert steady.bore is not None
    last = reseated(bore_job(9.0, -7.0, housing=near))
    loose = order_in(then(bore_job(housing=near), last))
    assert loose is not None
    assert loose.bore is not None
    assert loose.bore.along.pm > 1.5 * steady.bore.along.pm


def test_whatever_is_missing_there_are_no_shims() -> None:
    for job in (bore_job(), both(face_job(None)), both(bore_job(housing={}))):
        order = order_in(job)
        assert order is not None
        assert (order.cut, order.shims, order.bore) == (None, (), None)
        assert order.lacks


def test_the_face_comes_before_the_bore() -> None:
    job = face_job("rear")
    job["rounds"][0]["bore"] = bore_job()["rounds"][0]["bore"]
    order = order_in(both(job))
    assert order is not None
    assert order.cut is not None
    assert order.bore is None


# Not offered --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "job",
    [
        both(bore_job(0.5, -1.0)),  # within
        both(bore_job(3.0, -4.1)),  # too close to call
        both(bore_job(limits={"bore_offset": None})),  # no limit
    ],
)
def test_what_is_not_surely_out_gets_no_order(job: Data) -> None:
    assert order_in(job) is None
    solution = work_out(read_job(job))
    assert order_of(solution, findings_for(solution), ENGLISH) is None


def foreign(each: Data) -> None:
    rows = [[m + (9.0 if i == 3 else 0.0) for i, m in enumerate(readings_of(9, -6, EIGHTHS))]] * 2
    each["bore"] = {**each["bore"], "positions_deg": list(EIGHTHS), "sweeps": rows}


def hand_on(readings: float) -> Callable[[Data], None]:
    """The second sweep elsewhere by so much."""

    def change(each: Data) -> None:
        first = each["bore"]["sweeps"][0]
        each["bore"]["sweeps"][1] = [first[0], first[1] + readings, *first[2:]]

    return change


def reseated(job: Data) -> Data:
    """Only loosened and torqued again."""
    job["rounds"][0]["since"] = "reseated"
    return job


BAD_DIAL = {"sag": 0, "accuracy": 2.5}
WIDE_FACE = {"bore_offset": 2.0, "face_runout": 50.0}
LACKS = {
    "slipped": (changed(bore_job, lambda r: r["bore"].update(closing=[9.0, 9.0])), ["readings"]),
    "foreign": (changed(bore_job, foreign), ["readings"]),
    "register too large": (
        both(
            bore_job(
                housing={
                    "dowel_holes": TWO_HOLES, "bore_diameter": 4.68, "register_diameter": 4.69
                }
            )
        ),
        ["readings"],
    ),
    "no return": (
        changed(bore_job, lambda r: r["bore"].update(closing=[None, None])), ["return"],
    ),
    "face never swept": (changed(bore_job, lambda r: r.pop("face")), ["face"]),
    "end play": (changed(bore_job, lambda r: r["face"].update(end_float="free")), ["face"]),
    "face too close": (
        changed(bore_job, lambda r: r["face"].update(sweeps=[face_readings(0.0, 0.83)])),
        ["square"],
    ),
    "one sweep": (
        changed(
            bore_job,
            lambda r: r["bore"].update(sweeps=r["bore"]["sweeps"][:1], closing=[0.0]),
        ),
        ["twice-bore"],
    ),
    "sweeps differ": (changed(bore_job, hand_on(6.0)), ["steady"]),
    "offset dowels": (
        both(bore_job(), with_dowels(bore_job(9.0, 8.0), (14.0, 0.0))), ["stock"],
    ),
    "one round": (bore_job(), ["seated"]),
    "elsewhere before": (both(bore_job(9.0, 9.0), bore_job()), ["seated"]),
    "before on dowels": (both(with_dowels(bore_job(), (7.0, 0.0)), bore_job()), ["seated"]),
    "slipped before": (
        both(changed(bore_job, lambda r: r["bore"].update(closing=[9.0, 9.0])), bore_job()), [],
    ),
    "seat": (
        then(bore_job(), *(reseated(bore_job(x, y)) for x, y in ((20, 9), (-3, -14), (9, -6)))),
        ["seat"],
    ),
    "spigot": (
        changed(
            bore_job,
            lambda r: r["bore"].update(
                contact="outside", sweeps=[[-m for m in row] for row in r["bore"]["sweeps"]]
            ),
        ),
        ["spigot"],
    ),
    "plate": (
        both(
            bore_job(
                housing={
                    "dowel_holes": TWO_HOLES, "swept_bore": "plate", "plate_concentricity": 0.5
                }
            )
        ),
        ["plate"],
    ),
    "no holes": (both(bore_job(housing={})), ["holes"]),
    "direction": (
        both(bore_job(1.0, 0.5, indicator=BAD_DIAL, limits={**WIDE_FACE, "bore_offset": 0.2})),
        ["direction"],
    ),
    "coarse": (both(bore_job(indicator=BAD_DIAL, limits=WIDE_FACE)), ["coarse"]),
    "seen once": (face_job("rear"), ["again"]),
    "swept once": (
        changed(
            lambda: face_job("rear"),
            lambda r: r["face"].update(sweeps=r["face"]["sweeps"][:1], closing=[0.0]),
        ),
        ["twice"],
    ),
    "side not known": (both(face_job(None)), ["cause"]),
    "face coarse": (
        both(face_job("rear", 5.0) | {"limits": {"face_runout": 0.5}}), ["coarse"],
    ),
    "face slipped": (
        changed(lambda: face_job("rear"), lambda r: r["face"].update(closing=[9.0, 9.0])),
        ["readings"],
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", LACKS)
def test_what_is_missing_is_named(name: str) -> None:
    job, lacks = LACKS[name]
    order = order_in(job)
    assert order is not None
    assert list(order.lacks) == lacks
    assert order.offered == (not lacks)
    solution = work_out(read_job(job))
    told = order_of(solution, findings_for(solution), ENGLISH)
    assert told is not None
    assert len(told["lacks"]) == len(lacks)
    assert (told["sheet"] is None) == bool(lacks)
