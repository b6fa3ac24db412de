"""Facts of the trade: common practice, no source.

The maker's figure always rules over them; they are what is filled in where none is given, and
the sums that mechanics do in their heads.
"""

from __future__ import annotations

import pytest

from sweepsheet import solve
from tests.cases.jobs import EIGHTHS, PERFECT, bore_of, make_job, readings_of
from tests.published.record import check

SOURCE = "common practice, no source"


def limit_in_force(units: str) -> float:
    """The limit a job without one is held to, found from where a perfect dial's verdict turns."""
    low, high = 0.0, 10.0
    for _ in range(40):
        middle = (low + high) / 2
        job = make_job(readings_of(0.0, middle), units=units, indicator=PERFECT)
        if bore_of(job)["verdict"] == "within":
            low = middle
        else:
            high = middle
    return low


def test_usual_limit() -> None:
    """Bore within .005 in offset, .010 in TIR, where the maker gives nothing."""
    check(SOURCE, "usual limit, thou", 5.0, limit_in_force("inch"), within=1e-9)
    check(SOURCE, "usual limit, mm", 0.127, limit_in_force("metric"), within=1e-9)


def test_usual_dowels() -> None:
    """Offset dowels come mostly as .007, .014 and .021 in."""
    options = solve(make_job((0, -6, -12, -6)))["dowel_options"]
    sizes = sorted(option["offset"] for option in options)
    check(SOURCE, "usual dowels, thou", [0.0, 7.0, 14.0, 21.0], sizes, within=0.0)


def test_twelve_and_a_half_total_takes_the_seven_dowel() -> None:
    """A total of .0125 in is .00625 offset and takes the .007 dowel, which leaves under .001."""
    result = solve(make_job((0.0, -6.25, -12.5, -6.25)))
    bore = result["rounds"][0]["bore"]
    check(
        SOURCE,
        "TIR and offset of .0125 total",
        [12.5, 6.25],
        [bore["tir"], bore["offset"]],
        within=1e-12,
    )
    choice = result["dowel_choice"]
    found = [choice["offset"], choice["expected_offset"]]
    check(SOURCE, "dowel for .0125 total, and what it leaves", [7.0, 0.75], found, within=1e-12)
    assert choice["expected_offset"] < 1.0


@pytest.mark.parametrize("zero_deg", EIGHTHS)
def test_move_toward_the_zero_when_it_is_the_highest(zero_deg: float) -> None:
    """Zeroed at its highest, minus at the other side: move the housing toward the zero mark."""
    positions = [(zero_deg + step) % 360.0 for step in (0.0, 90.0, 180.0, 270.0)]
    job = make_job((0.0, -5.0, -10.0, -5.0), positions=positions, indicator=PERFECT)
    assert bore_of(job)["move_deg"] == pytest.approx(zero_deg, abs=1e-9)


def test_recheck_of_five_total_is_good() -> None:
    """A recheck of .005 in TIR is .0025 in offset, and good with the usual dial and limit."""
    bore = bore_of(make_job((0.0, -2.5, -5.0, -2.5)))
    check(SOURCE, "offset of a recheck of .005 total", 2.5, bore["offset"], within=1e-12)
    assert bore["verdict"] == "within"


def test_recheck_of_five_total_failure() -> None:
    """Taken for an offset, the same figure stands at the limit and can't be called good."""
    assert bore_of(make_job((0.0, -5.0, -10.0, -5.0)))["verdict"] == "undecided"
