"""Published face sweeps, lines of two shafts, droop of a bracket, and what bearings stand."""

from __future__ import annotations

import math

import pytest

from sweepsheet import solve
from sweepsheet.alignment.pilot import BEARING_ANGLES, PUBLISHED_ANGLES
from sweepsheet.job.model import BearingClass
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    QUARTERS,
    Data,
    apart,
    bore_of,
    codes_of,
    face_readings,
    make_job,
    readings_of,
    with_face,
)
from tests.published.record import check

TRUE_BORE = (0.0, 0.0, 0.0, 0.0)


def face_of(job: Data) -> Data:
    """What the latest round of a job says about the face."""
    face: Data = solve(job)["rounds"][-1]["face"]
    return face


# A face whose TIR is not its tilt ----------------------------------------------------------

# US Army TM 10-3930-664-24, p. 3-41: flywheel housing face at 12, 3, 6 and 9 o'clock, in thou.
WARPED = "US Army TM 10-3930-664-24, p. 3-41"
WARPED_FACE = (0.0, 3.0, -2.0, 3.0)
WARPED_LIMIT = 8.0


def warped(**limits: object) -> Data:
    """The published face, swept with a perfect dial at a radius of 7 in."""
    job = make_job(TRUE_BORE, indicator=PERFECT, limits={"face_runout": WARPED_LIMIT, **limits})
    return with_face(job, WARPED_FACE, radius=7.0)


def test_the_published_tir_of_a_face_passes_its_limit() -> None:
    """TM 10-3930-664-24, p. 3-41: TIR .005 in against .008 passes.

    Neither the dial's own TIR nor the tilt in it is called over the limit. That the tilt is surely
    within is not said: from four positions a warp of 4 can't be told from a wrong reading, and
    counts as doubt.
    """
    face = face_of(warped())
    check(WARPED, "TIR of the face, thou", 5.0, face["total_reading"], within=1e-12)
    assert face["runout"] < face["total_reading"] < face["limit"] == WARPED_LIMIT
    assert face["verdict"] == "undecided"
    assert not {"face-tir-over", "face-first"} & set(codes_of(warped()))


def test_half_the_tir_of_a_warped_face_is_not_its_tilt() -> None:
    """The tilt in the same readings is .001 in, high at 12; pair sums differ by -.008: warp."""
    face = face_of(warped())
    check(WARPED, "first harmonic, thou (re-computed)", 1.0, face["runout"] / 2.0, within=1e-12)
    assert face["slope"] == pytest.approx([0.0, 1.0 / 7000.0], abs=1e-15)
    assert math.hypot(*face["slope"]) < 0.5 * (5.0 / 2.0 / 7000.0)
    assert apart(face["rearmost_deg"], 0.0) < 1e-9
    sums = face["pair_difference"]
    check(WARPED, "(12 + 6) - (3 + 9), thou (re-computed)", -8.0, sums, within=1e-12)
    # What is left beside the tilt: -2, +2, -2, +2 about the mean.
    assert face["warp"] == pytest.approx(4.0, abs=1e-12)
    assert "face-warp" in codes_of(warped())


def test_the_published_tir_of_a_face_passes_its_limit_failure() -> None:
    """Held to a limit between its tilt and its TIR, the sheet says that the two differ."""
    job = warped(face_runout=4.0)
    assert "face-tir-over" in codes_of(job)
    assert "face-first" not in codes_of(job)


# Limits by radius --------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("radius", "allowed", "verdict"), [(12.0, 12.0, "within"), (10.0, 10.0, "outside")]
)
def test_a_face_limit_for_each_inch_of_radius(radius: float, allowed: float, verdict: str) -> None:
    """US Army TM 9-2815-202-34, p. 4-75: +.004 and -.007 are .011 TIR; .001 an inch of radius.

    At 12 in that allows .012 and passes; the same readings at 10 in do not.
    """
    job = make_job(TRUE_BORE, indicator=PERFECT, limits={"face_runout": 1.0, "face_radius": 1.0})
    face = face_of(with_face(job, (4.0, -1.5, -7.0, -1.5), radius=radius))
    source = "US Army TM 9-2815-202-34, p. 4-75"
    assert face["runout"] == pytest.approx(face["total_reading"], abs=1e-12)
    check(source, "TIR of +.004 and -.007, thou", 11.0, face["runout"], within=1e-12)
    check(source, f"allowed at {radius:g} in, thou", allowed, face["limit"], within=1e-12)
    assert face["verdict"] == verdict


# Offset plus slope times distance ----------------------------------------------------------


@pytest.mark.parametrize("at_deg", QUARTERS)
def test_offset_plus_slope_times_distance(at_deg: float) -> None:
    """Bloch and Geitner, Machinery Component Maintenance and Repair, p. 203.

    (.012 - .007)(26/14) - .012 = -.0027 in: a face that differs by .005 over 14 in, a plane 26 in
    away, an offset of -.012. Turned to each quarter of the clock, since it holds for any.
    """
    up = (math.sin(math.radians(at_deg)), math.cos(math.radians(at_deg)))
    slope, offset = (12.0 - 7.0) / 14.0, -12.0
    job = make_job(
        readings_of(offset * up[0], offset * up[1]),
        indicator=PERFECT,
        housing={"pilot_distance": 26.0},
    )
    job = with_face(job, face_readings(slope * up[0], slope * up[1], radius=7.0), radius=7.0)
    pilot = solve(job)["rounds"][0]["pilot"]
    along = pilot["center"][0] * up[0] + pilot["center"][1] * up[1]
    source = "Bloch and Geitner, Machinery Component Maintenance and Repair, p. 203"
    check(source, f"offset + slope x distance toward {at_deg:g}, thou", -2.7, along, within=0.05)
    assert along == pytest.approx(5.0 * 26.0 / 14.0 - 12.0, abs=1e-9)
    assert pilot["offset"] == pytest.approx(abs(along), abs=1e-9)
    assert apart(pilot["direction_deg"], at_deg + 180.0) < 1e-6


# Droop -------------------------------------------------------------------------------------


def tip_load_droop(force: float, length: float, young: float, inertia: float) -> float:
    """``P L**3 / 3 E I``: a beam held at one end, loaded at the other (beam tables)."""
    return force * length**3 / (3.0 * young * inertia)


def own_weight_droop(load: float, length: float, young: float, inertia: float) -> float:
    """``w L**4 / 8 E I``: a beam held at one end, with ``load`` on each unit of its length."""
    return load * length**4 / (8.0 * young * inertia)


# A steel rod of 10 mm by 150 mm with 0.1 kg at its tip: E 207 GPa, density 7850 kg/m3.
YOUNG, DENSITY, GRAVITY = 207e9, 7850.0, 9.80665
DIAMETER, LENGTH, MASS = 0.010, 0.150, 0.1
INERTIA = math.pi * DIAMETER**4 / 64.0
ROD_LOAD = DENSITY * GRAVITY * math.pi * DIAMETER**2 / 4.0


def test_droop_of_a_rod() -> None:
    """Re-computed: 10.858 micrometres for the dial, 3.765 for the rod's own weight."""
    by_dial = tip_load_droop(MASS * GRAVITY, LENGTH, YOUNG, INERTIA)
    by_rod = own_weight_droop(ROD_LOAD, LENGTH, YOUNG, INERTIA)
    source = "beam tables, re-computed"
    check(source, "droop by 0.1 kg at the tip, um", 10.858, by_dial * 1e6, within=0.0005)
    check(source, "droop of the rod by its own weight, um", 3.765, by_rod * 1e6, within=0.0005)


def drooping(sag: float | None) -> Data:
    """A true bore swept with that rod: the tip hangs down by its droop wherever it stands.

    At 12 the plunger is let out by the droop, at 6 it is pushed in by it; zeroed at 12.
    """
    droop = droop_mm()
    shown = [-droop * math.cos(math.radians(a)) for a in EIGHTHS]
    return make_job(
        [m - shown[0] for m in shown], positions=EIGHTHS, units="metric",
        indicator={**PERFECT, "sag": sag, "sag_allowance": 2.0 * droop},
    )  # fmt: skip


def droop_mm() -> float:
    """The whole droop of the rod with its dial, in mm."""
    by_dial = tip_load_droop(MASS * GRAVITY, LENGTH, YOUNG, INERTIA)
    return 1000.0 * (by_dial + own_weight_droop(ROD_LOAD, LENGTH, YOUNG, INERTIA))


def test_twice_the_droop_taken_out_leaves_a_true_bore_true() -> None:
    """The sag of the job is the total from top to bottom, twice the droop of the bracket."""
    assert bore_of(drooping(2.0 * droop_mm()))["offset"] == pytest.approx(0.0, abs=1e-12)


def test_twice_the_droop_taken_out_leaves_a_true_bore_true_failure() -> None:
    """With the droop once, half of it is blamed on the housing; with none, all of it."""
    half, whole = bore_of(drooping(droop_mm())), bore_of(drooping(0.0))
    assert half["center"] == pytest.approx([0.0, droop_mm() / 2.0], abs=1e-12)
    assert whole["center"] == pytest.approx([0.0, droop_mm()], abs=1e-12)


def test_droop_that_was_not_measured_is_one_sided() -> None:
    """It makes the bore read high: with an allowance of the true total, half of it is taken out.

    What is left, half the droop in height, is the edge of the rectangle that is counted as doubt.
    """
    bore = bore_of(drooping(None))
    half = droop_mm() / 2.0
    assert bore["center"] == pytest.approx([0.0, half], abs=1e-12)
    assert bore["covariance"][1][1] == pytest.approx(half**2 / 3.0, rel=1e-9)


# What bearings stand -----------------------------------------------------------------------

# Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., table 7-2, in radians.
SHIGLEY = {
    "ball": (0.001, 0.003),
    "cylindrical_roller": (0.0008, 0.0012),
    "tapered_roller": (0.0005, 0.0012),
}


def test_the_table_of_bearings_is_the_published_one() -> None:
    assert PUBLISHED_ANGLES.keys() == SHIGLEY.keys()
    for kind, angles in PUBLISHED_ANGLES.items():
        what = f"angle a {kind.replace('_', ' ')} bearing tolerates, rad"
        check("Shigley, 9th ed., table 7-2", what, SHIGLEY[kind], angles, within=0.0)


def test_bearings_that_are_not_in_the_table() -> None:
    """Common practice, no source: bushing and needle, the usual pilot bearings.

    A shaft in a bushing touches at both ends from an angle of its running clearance over the
    length: 1 to 3 thou on the diameter over an inch. Needles bear along a line, and are held no
    more generous than the rollers of the table.
    """
    assert BEARING_ANGLES.keys() == SHIGLEY.keys() | {"bronze_bushing", "needle"}
    assert BEARING_ANGLES["bronze_bushing"] == (0.001 / 1.0, 0.003 / 1.0)
    careful, generous = BEARING_ANGLES["needle"]
    assert careful <= SHIGLEY["cylindrical_roller"][0]
    assert generous <= SHIGLEY["cylindrical_roller"][1]


@pytest.mark.parametrize("bearing", BEARING_ANGLES)
@pytest.mark.parametrize(
    ("which", "factor", "codes"),
    [
        (0, 0.99, set()), (0, 1.01, {"angle-near"}),
        (1, 0.99, {"angle-near"}), (1, 1.01, {"angle-beyond"}),
    ],
)  # fmt: skip
def test_an_angle_is_held_against_the_published_range(
    bearing: BearingClass, which: int, factor: float, codes: set[str]
) -> None:
    """A perfect dial: just below and just above either end of what the bearing class stands."""
    slope = 1000.0 * factor * BEARING_ANGLES[bearing][which]  # thou per inch
    job = make_job(
        TRUE_BORE, indicator=PERFECT, housing={"pilot_distance": 7.0, "pilot_bearing": bearing}
    )
    job = with_face(job, face_readings(slope * 0.6, slope * 0.8))
    assert solve(job)["rounds"][0]["pilot"]["angle"] == pytest.approx(slope / 1000.0, abs=1e-15)
    assert set(codes_of(job)) & {"angle-near", "angle-beyond"} == codes
