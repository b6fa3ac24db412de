"""Worked examples of real housings and shafts, as the documents print them."""

from __future__ import annotations

import math

import pytest

from sweepsheet import solve
from tests.cases.jobs import PERFECT, apart, bore_of, make_job
from tests.published.record import check

# US Army TM 9-4940-568-34, pp. 5-62 and 5-63: worksheet for the bore of a flywheel housing. The
# readings are printed in inches; a job takes thou. The order is the one of the worksheet.
WORKSHEET = "US Army TM 9-4940-568-34, pp. 5-62 and 5-63"
WORKSHEET_POSITIONS = (180.0, 270.0, 0.0, 90.0)
WORKSHEET_READINGS = (0.0, 4.0, 3.0, -2.0)
WORKSHEET_CLEARANCE = 2.0


def worksheet(lift: float) -> dict[str, object]:
    return make_job(
        WORKSHEET_READINGS,
        positions=WORKSHEET_POSITIONS,
        indicator=PERFECT,
        crank={"axis": "horizontal", "lift": lift},
    )


def test_bore_worksheet_with_bearing_clearance() -> None:
    """TM 9-4940-568-34, p. 5-63: .00781 in TIR, .003905 in offset, largest reading at 309.8."""
    bore = bore_of(worksheet(WORKSHEET_CLEARANCE))
    # Horizontal total .006, vertical total .005: the root of the sum of squares is the TIR.
    assert bore["tir"] == pytest.approx(math.hypot(6.0, 5.0), abs=1e-12)
    check(WORKSHEET, "TIR, thou", 7.81, bore["tir"], within=0.005)
    check(WORKSHEET, "offset, thou", 3.905, bore["offset"], within=0.0005)
    check(WORKSHEET, "largest reading at, degrees", 309.8, bore["move_deg"], within=0.05)
    assert apart(bore["direction_deg"], 129.8) < 0.05


def test_bore_worksheet_totals_are_twice_the_centre() -> None:
    """TM 9-4940-568-34, p. 5-62: horizontal total .006 in, vertical total .005 in."""
    x, y = bore_of(worksheet(WORKSHEET_CLEARANCE))["center"]
    totals = [2 * x, -2 * y]
    check(WORKSHEET, "totals across and up, thou", [6.0, 5.0], totals, within=1e-12)


def test_bore_worksheet_without_the_clearance() -> None:
    """The same readings with no lift, re-computed: .003354 in at 296.57, pairs off by +.001."""
    bore = bore_of(worksheet(0.0))
    source = f"{WORKSHEET}, without the clearance, re-computed"
    check(source, "offset, thou", 3.354, bore["offset"], within=0.0005)
    check(source, "largest reading at, degrees", 296.57, bore["move_deg"], within=0.005)
    check(source, "(12 + 6) - (9 + 3), thou", 1.0, bore["pair_difference"], within=1e-12)


def test_plumb_runout_worksheet() -> None:
    """US Bureau of Reclamation FIST 2-1, figure 16, position 0: N .0060 in, W .00075 in.

    What the fourth set of readings has over the first is swept like a dial round the compass
    (north up, east right); the centre is half of each opposed difference.
    """
    first = {"N": 344.5, "S": 150.5, "E": 171.0, "W": 298.5}
    fourth = {"N": 347.0, "S": 165.0, "E": 180.5, "W": 306.5}
    change = [fourth[side] - first[side] for side in "NESW"]
    bore = bore_of(make_job(change, indicator=PERFECT))
    x, y = bore["center"]
    source = "US Bureau of Reclamation FIST 2-1, fig. 16, position 0"
    check(source, "runout north and west, thou", [6.0, 0.75], [y, -x], within=1e-9)
    # The document's rule for readings that can be believed: the sums N+S and E+W agree
    # within .002 in. Here they grew by .0170 and .0175 in.
    assert bore["pair_difference"] == pytest.approx(17.0 - 17.5, abs=1e-9)
    assert abs(bore["pair_difference"]) < 2.0


def test_limit_that_grows_with_the_swept_radius() -> None:
    """US Army TM 9-2815-202-34, p. 4-75: +.004 and -.007 in are .011 TIR and pass .012 at 12 in."""
    allowed_tir = 1.0 * 12.0  # .001 in for each inch of radius
    job = make_job(
        (4.0, -1.5, -7.0, -1.5), indicator=PERFECT, limits={"bore_offset": allowed_tir / 2}
    )
    bore = bore_of(job)
    check(
        "US Army TM 9-2815-202-34, p. 4-75", "TIR of a bore, thou", 11.0, bore["tir"], within=1e-12
    )
    assert bore["verdict"] == "within"


def test_limit_that_grows_with_the_swept_radius_failure() -> None:
    """The same readings at 10 in radius, where .010 is allowed, do not pass."""
    job = make_job((4.0, -1.5, -7.0, -1.5), indicator=PERFECT, limits={"bore_offset": 10.0 / 2})
    assert bore_of(job)["verdict"] == "outside"


@pytest.mark.parametrize(
    "allowed_tir",
    [
        pytest.param(8.0, id="bores of about 16 and 17.6 in"),
        pytest.param(10.0, id="bores of 23 and 25.5 in"),
        pytest.param(12.0, id="bores of 31 in"),
    ],
)
def test_limits_by_size_are_tir_and_the_move_is_half(allowed_tir: float) -> None:
    """US Army TM 10-4320-307-24, p. 3-140: move the housing by half the TIR.

    The document's limits (.008 to .012 in with the bore's size) are TIR: a bore at exactly the
    limit has half of it as its offset, and a pair of dowels of that offset brings it true.
    """
    half = allowed_tir / 2
    job = make_job(
        (0.0, -half, -allowed_tir, -half),
        indicator=PERFECT,
        limits={"bore_offset": half - 0.01},
        stock={"dowel_offsets": [half], "aim_setting_deg": 0},
    )
    result = solve(job)
    assert result["rounds"][0]["bore"]["tir"] == pytest.approx(allowed_tir, abs=1e-12)
    assert result["rounds"][0]["bore"]["verdict"] == "outside"
    move = result["dowel_choice"]["offset"]
    source = "US Army TM 10-4320-307-24, p. 3-140"
    check(source, f"move for a TIR of {allowed_tir:g}, thou", half, move, within=0.0)
    assert result["dowel_choice"]["aim_deg"] == 0.0  # toward the highest reading
    assert result["dowel_choice"]["expected_offset"] == pytest.approx(0.0, abs=1e-12)


def test_rim_readings_with_bar_sag() -> None:
    """Rim readings 10 and 5 with a bar that sags 3 mil: bottom 16, sides 8, offset 8.

    US Bureau of Reclamation FIST 4-1A enters twice the bar's sag at the bottom; the figures are
    from a pump handbook whose title was not found. The dial rides on a rim, so the contact
    is outside; ``sag`` is the top-to-bottom difference, twice the bar's.
    """
    bar_sag = 3.0
    job = make_job(
        (0.0, 5.0, 10.0, 5.0), contact="outside", indicator={**PERFECT, "sag": 2 * bar_sag}
    )
    bore = bore_of(job)
    source = "FIST 4-1A; a pump handbook whose title was not found"
    found = [bore["tir"], bore["offset"]]
    check(source, "bottom and offset with 3 mil of sag, mil", [16.0, 8.0], found, within=1e-12)
    assert bore["direction_deg"] == pytest.approx(180.0, abs=1e-9)
    assert bore["residuals"][0] == pytest.approx([0.0] * 4, abs=1e-12)  # sides 8: halfway
