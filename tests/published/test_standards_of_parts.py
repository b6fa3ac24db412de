"""What standards allow to the parts of the job: dials, dowels and their holes, housings by size."""

from __future__ import annotations

import math

import pytest

from sweepsheet.alignment.face import limit_at
from sweepsheet.alignment.seat import clearance_of
from sweepsheet.job.model import Housing, Job
from sweepsheet.job.read import read_job
from sweepsheet.maths.units import INCH, METRIC
from tests.cases.jobs import make_job
from tests.published.record import check

# Dials ------------------------------------------------------------------------------------

# JIS B 7503:2011 (seen), dial gauges graduated in 0.01 mm with a range of 5 to 10 mm, um.
JIS = {"repeatability": 3, "tenth of a turn": 5, "half a turn": 9, "a turn": 10, "whole range": 15}


def test_the_usual_dial_is_no_better_than_the_standard_asks() -> None:
    """A job that says nothing of its dial must not trust it more than one that just passes.

    The standard's figures are spans: half of them is a "plus or minus". A sweep of a housing moves
    the dial by a turn at most, and its usual accuracy covers the whole range.
    """
    source = "JIS B 7503:2011, 0.01 mm dial"
    spans = sorted(JIS.values())
    assert JIS["a turn"] <= JIS["whole range"] == spans[-1]
    assert METRIC.accuracy * 1000.0 >= JIS["whole range"] / 2.0
    assert METRIC.repeatability * 1000.0 >= JIS["repeatability"]
    check(source, "usual accuracy of a job is the span of a turn, um", JIS["a turn"],
          METRIC.accuracy * 1000.0, within=1e-9)  # fmt: skip
    # In thou the usual dial is read to half a thou and is as good.
    assert INCH.to_mm(INCH.accuracy) * 1000.0 >= JIS["whole range"] / 2.0
    assert INCH.to_mm(INCH.repeatability) * 1000.0 >= JIS["repeatability"]


# Dowels and registers -----------------------------------------------------------------------


def tolerance_unit(low: float, high: float) -> float:
    """ISO 286-1: ``i = 0.45 D**(1/3) + 0.001 D`` in um, D the geometric mean of the range in mm."""
    d = math.sqrt(low * high)
    return 0.45 * math.cbrt(d) + 0.001 * d


# Ranges in mm with IT6 and IT7 in um, as the tables of ISO 286 print them (from memory).
IT = {(10, 18): (11, 18), (18, 30): (13, 21)}


@pytest.mark.parametrize("between", IT)
def test_tolerance_grades(between: tuple[int, int]) -> None:
    """IT6 is 10 i and IT7 16 i; the tables round them to whole micrometres."""
    source = "ISO 286; from memory"
    for grade, factor, printed in zip((6, 7), (10, 16), IT[between], strict=True):
        found = factor * tolerance_unit(*between)
        check(source, f"IT{grade}, {between[0]} to {between[1]} mm, um", printed, found, within=1.0)


# m6 shafts (dowel pins of ISO 8734, and of ISO 2338 in m6) in um, from memory.
M6 = {(10, 18): (7, 18), (18, 30): (8, 21)}


@pytest.mark.parametrize("between", M6)
def test_the_usual_play_of_dowels_covers_a_standard_pin_in_a_standard_hole(
    between: tuple[int, int],
) -> None:
    """An m6 pin in an H7 hole: at most IT7 - 7 of play; a worn hole has more, so 25 um count."""
    least, most = M6[between]
    it6, it7 = IT[between]
    source = "ISO 286, m6; from memory"
    check(
        source, f"m6 {between[0]} to {between[1]} mm is IT6 wide, um", it6, most - least, within=0
    )
    play = it7 - least
    assert METRIC.dowel_clearance * 1000.0 > play
    assert INCH.to_mm(INCH.dowel_clearance) * 1000.0 > play


def job_with(housing: dict[str, float]) -> Job:
    return read_job(make_job((0, 0, 0, 0), units="metric", housing=housing))


def test_play_of_a_register_in_its_bore() -> None:
    """ISO 286: 120 H7 is 0 to +35 um and 120 g6 -12 to -34 um: a play of 12 to 69 (from memory)."""
    source = "ISO 286, 120 H7/g6; from memory"
    for what, bore, register, play in (
        ("least", 120.0, 119.988, 12.0), ("most", 120.035, 119.966, 69.0),
    ):  # fmt: skip
        job = job_with({"bore_diameter": bore, "register_diameter": register})
        assert isinstance(job.housing, Housing)
        found = clearance_of(job)
        assert found is not None
        check(source, f"{what} play of a register, um", play, found * 1000.0, within=1e-6)


# Housings by size ---------------------------------------------------------------------------

# A generator maker's installation manual (seen, page 10): runout of the flywheel end at most .0005
# in for each inch of radius, and a table of it by the bore of the housing, cut to whole thou.
BY_BORE = {
    10.5: 2, 12.375: 3, 14.25: 3, 16.125: 4, 17.625: 4, 20.125: 5, 23.0: 5, 25.5: 6, 31.0: 7,
}  # fmt: skip


@pytest.mark.parametrize("bore", BY_BORE)
def test_runout_for_each_inch_of_radius(bore: float) -> None:
    """The rule and the table of the same page agree: the table cuts off what is beyond a thou."""
    allowed = limit_at(0.5, 1.0, bore / 2.0)
    assert allowed is not None
    source = "a generator maker's installation manual, p. 10"
    what = f"allowed runout, bore {bore} in, whole thou"
    check(source, what, BY_BORE[bore], math.floor(allowed), within=0)


# An engine maker's manual (seen): bores of housings in both units, and the runout of the face in
# thou and mm.
BORES = {
    31.0: 787.40, 25.5: 647.70, 23.0: 584.20, 20.125: 511.18, 17.625: 447.68, 16.125: 409.58,
}  # fmt: skip
RUNOUTS = {12.0: 0.30, 10.0: 0.25, 8.0: 0.20}


def test_sizes_and_limits_in_both_units() -> None:
    """Printed to a hundredth of a mm; 20.125 in is 511.175 mm, printed as 511.18."""
    source = "an engine maker's manual, housing bores"
    for inch, mm in BORES.items():
        check(source, f"{inch} in, mm", mm, INCH.to_mm(inch * INCH.small_per_long), within=0.0051)
    for thou, mm in RUNOUTS.items():
        check(source, f"runout of {thou:g} thou, mm", mm, INCH.to_mm(thou), within=0.0051)
