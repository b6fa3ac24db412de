"""Jobs that have work for a machine shop."""

from __future__ import annotations

from tests.cases.jobs import (
    SEVEN_BOLTS,
    TWO_HOLES,
    Data,
    face_readings,
    make_job,
    readings_of,
    then,
    with_face,
)


def bore_order(**housing: object) -> Data:
    """A bore that is surely out, found again after it was seated anew; swept twice each time."""
    of = {"dowel_holes": TWO_HOLES, "bore_diameter": 4.685, **housing}
    rows = readings_of(9.0, -6.0)
    return then(*(with_face(make_job(rows, rows, housing=of)) for _ in range(2)))


def face_order(side: str, **housing: object) -> Data:
    """A face that is surely out and came back on a clean joint, by this side."""
    of = {"tilt_from": side, "dowel_holes": TWO_HOLES, "bolts": SEVEN_BOLTS, **housing}
    stock = {"shim_thicknesses": [1.0, 2.0, 5.0, 10.0]}
    rows = face_readings(2.5, -1.0)
    jobs = (make_job(readings_of(1.0, -1.0), housing=of, stock=stock) for _ in range(2))
    return then(*(with_face(job, rows, rows) for job in jobs))
