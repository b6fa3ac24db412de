"""One round: bore, face and pilot line, each there where what it needs was measured."""

from __future__ import annotations

import pytest

from sweepsheet.alignment.rounds import RoundResult, measure_round
from sweepsheet.job.read import read_job
from tests.cases.jobs import Data, make_job, readings_of, with_face


def measured(job: Data) -> RoundResult:
    read = read_job(job)
    return measure_round(read, read.rounds[-1])


@pytest.mark.parametrize("swept", [True, False])
@pytest.mark.parametrize("distance", [7.0, None])
def test_what_a_round_gives(swept: bool, distance: float | None) -> None:  # noqa: FBT001 - a column of the table
    job = make_job(readings_of(1.0, 2.0), housing={"pilot_distance": distance})
    found = measured(with_face(job) if swept else job)
    assert found.bore.offset > 0.0
    assert (found.face is not None) is swept
    assert (found.pilot is not None) is (swept and distance is not None)


@pytest.mark.parametrize(
    ("units", "radius", "distance"), [("inch", 3.0, 7.0), ("metric", 75.0, 180.0)]
)
def test_lengths_are_in_the_long_unit(units: str, radius: float, distance: float) -> None:
    """A face one small unit up over its radius leans the axis by distance over radius."""
    job = make_job((0, 0, 0, 0), units=units, housing={"pilot_distance": distance})
    found = measured(with_face(job, [1.0, 0.0, -1.0, 0.0], radius=radius))
    assert found.pilot is not None
    assert found.pilot.offset == pytest.approx(distance / radius, rel=1e-12)


def test_the_face_limit_is_turned_to_the_swept_radius() -> None:
    limits = {"face_runout": 4.0, "face_radius": 6.0}
    found = measured(with_face(make_job((0, 0, 0, 0), limits=limits), radius=3.0))
    assert found.face is not None
    assert found.face.limit == 2.0
