"""Where the parts are, held against solids that are put together."""

from __future__ import annotations

import random

import pytest

from sweepsheet.alignment.depth import gaps_of
from sweepsheet.alignment.places import places_of
from sweepsheet.job.read import read_job
from tests.cases.gearbox import Fit, any_fit, depth_job


@pytest.mark.parametrize("seed", range(20))
def test_each_part_is_where_the_solids_have_it(seed: int) -> None:
    fit = any_fit(random.Random(seed))
    job = read_job(depth_job(fit))
    places, engine, gearbox = places_of(job.depth), fit.engine, fit.gearbox
    by = engine.face + engine.between
    expected = {
        "face": by, "pilot_rear": engine.pilot.rear, "pilot_front": engine.pilot.front,
        "bottom": engine.bottom, "tip": gearbox.shaft.front + by,
        "journal_rear": gearbox.journal.rear + by, "hub_front": engine.hub.front,
        "hub_rear": engine.hub.rear, "splines_front": gearbox.splines.front + by,
        "splines_rear": gearbox.splines.rear + by, "fingers": engine.fingers,
        "bearing": gearbox.release_bearing + by,
    }  # fmt: skip
    found = {name: getattr(places, name) for name in expected}
    assert found == pytest.approx(expected, abs=1e-12)
    assert sorted(places.known) == pytest.approx(sorted([0.0, *expected.values()]), abs=1e-12)
    # The ends that a gap has on the drawing are as far apart as the gap is wide.
    for gap in gaps_of(job):
        ends = places.ends_of(gap.name)
        if gap.name in ("hub_front_worn", "release_worn", "stroke"):
            assert ends is None
        else:
            assert ends is not None
            assert ends[1] - ends[0] == pytest.approx(gap.size, abs=1e-12), gap.name


def test_what_is_not_known_has_no_place() -> None:
    for key, gone in (
        ("to_face", {"face", "tip", "journal_rear", "splines_front", "splines_rear", "bearing"}),
        ("to_tip", {"tip", "journal_rear"}),
        ("journal_length", {"journal_rear"}),
        ("pilot_length", {"pilot_front"}),
        ("to_bottom", {"bottom"}),
        ("to_fingers", {"fingers"}),
    ):
        places = places_of(read_job(depth_job(Fit(), **{key: None})).depth)
        assert {name for name in places.__slots__ if getattr(places, name) is None} == gone


def test_an_overlap_is_bounded_by_what_is_known() -> None:
    """Bearing or journal of unknown length: from the tip to the bearing's rear end."""
    job = depth_job(Fit(), pilot_length=None, journal_length=None)
    places = places_of(read_job(job).depth)
    assert places.ends_of("engagement") == pytest.approx((-0.6, -0.1))
