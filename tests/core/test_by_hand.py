"""The equations of the computing modules at figures that were worked out on paper.

Other tests hold whole answers against the outside; these say for each small step what it gives, so
that a slip in one is seen there. The working stands beside each figure.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from sweepsheet.alignment.bore import measure_bore, needle_swing, vertical_covariance
from sweepsheet.alignment.face import Face, measure_face
from sweepsheet.alignment.pilot import PilotShift, pilot_shift
from sweepsheet.alignment.rotating_part import measure_rotating_part
from sweepsheet.alignment.rounds import measure_round
from sweepsheet.alignment.seat import seat_covariance
from sweepsheet.job.model import (
    BoreSweeps,
    Crank,
    Dowel,
    FaceSweeps,
    Hole,
    Indicator,
    RotatingPart,
    Sweeps,
)
from sweepsheet.job.read import read_job
from sweepsheet.job.sag import sag_test
from sweepsheet.maths.clock import clock_time, hour_at, turn_between
from sweepsheet.maths.eccentricity import Eccentricity
from sweepsheet.maths.normal import (
    K_95_LINE,
    K_95_PLANE,
    axis_in_region,
    direction_half_width,
    offset_half_width,
    probability_inside,
)
from sweepsheet.maths.units import INCH, METRIC
from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE, Sym2, Vec2
from sweepsheet.maths.verdict import NOT_JUDGED, judge
from sweepsheet.remedy.dowel_uncertainty import aim_covariance, play_covariance, unseen_covariance
from sweepsheet.remedy.dowels import Option, OptionEvaluator, options_for
from sweepsheet.remedy.history import history_of, refit_covariance
from sweepsheet.remedy.observed_move import observed_move_of
from sweepsheet.remedy.response import DowelResponse, RoundObservation
from sweepsheet.remedy.rigid import DowelLine
from sweepsheet.remedy.shims import shims_for
from sweepsheet.remedy.squaring import square
from sweepsheet.remedy.trim import trim_for
from sweepsheet.remedy.unequal_pairs import pairs_for
from sweepsheet.solution import Solution, work_out
from sweepsheet.sweep.analysis import examine
from sweepsheet.sweep.checks import (
    FOREIGN_CONTRAST,
    FOREIGN_SIGMAS,
    disagreement,
    foreign_reading,
    out_of_round,
    pair_sums,
)
from sweepsheet.sweep.corrections import (
    CorrectedReadings,
    corrected_face,
    corrected_rotating_part,
    vertical_shift,
)
from sweepsheet.sweep.harmonic import fit
from sweepsheet.sweep.uncertainty import uncertainty_of
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    QUARTERS,
    Data,
    face_readings,
    make_job,
    readings_of,
    then,
    whole_job,
    with_dowels,
    with_face,
)

SQRT3 = math.sqrt(3.0)
DIAL = Indicator(
    step=math.sqrt(12.0), accuracy=SQRT3, repeatability=1.0, plus_when="plunger_in",
    contact_angle_deg=0.0, holder=None, sag=None, sag_allowance=SQRT3, angle_setting_deg=0.0,
    rig="", sag_date="", sag_bar="", sag_reach=None, reach=None,
)  # fmt: skip
LYING, STANDING = Crank("horizontal", 0.0), Crank("vertical", 5.0)


def near(got: Sym2, xx: float, xy: float, yy: float) -> None:
    assert (got.xx, got.xy, got.yy) == pytest.approx((xx, xy, yy), rel=1e-12, abs=1e-15)


# Vectors and clock --------------------------------------------------------------------------


def test_vectors() -> None:
    near(Sym2(1.0, 2.0, 3.0) + Sym2(10.0, 20.0, 30.0), 11.0, 22.0, 33.0)
    assert Vec2(5e-324, 0.0).is_zero
    assert not Vec2(0.0, 1e-11).is_zero
    assert Vec2(1e-13, 0.0).unit() == Vec2(0.0, 1.0)
    assert Vec2(0.0, -2.0).unit() == Vec2(0.0, -1.0)


def test_half_a_turn_is_plus() -> None:
    assert turn_between(0.0, 180.0) == 180.0
    assert turn_between(0.0, 180.5) == -179.5
    assert turn_between(10.0, 190.0) == 180.0


def test_nearly_twelve() -> None:
    assert clock_time(359.0) == "12:00"
    assert hour_at(345.0) is None


# Chances ------------------------------------------------------------------------------------


def test_half_widths() -> None:
    """At (3, 4) with variances 4 and 9: along (.6, .8) 4 * .36 + 9 * .64 = 7.2; across 5.8."""
    spread = Sym2(4.0, 0.0, 9.0)
    assert offset_half_width(Vec2(3.0, 4.0), spread) == pytest.approx(K_95_LINE * math.sqrt(7.2))
    far = Vec2(30.0, 40.0)
    width = direction_half_width(far, spread)
    assert width == pytest.approx(math.degrees(math.asin(K_95_LINE * math.sqrt(5.8) / 50.0)))
    # In the middle the worst of all directions counts, and there is no direction.
    assert offset_half_width(ZERO, spread) == pytest.approx(3.0 * K_95_LINE)
    assert direction_half_width(ZERO, spread) is None
    assert offset_half_width(Vec2(5e-324, 0.0), spread) == pytest.approx(3.0 * K_95_LINE)


def test_the_half_width_of_a_direction_in_a_slanted_spread() -> None:
    """At (30, 40) across is (-.8, .6): 4 * .64 - 2 * .48 + 9 * .36 = 4.84."""
    width = direction_half_width(Vec2(30.0, 40.0), Sym2(4.0, 1.0, 9.0))
    assert width == pytest.approx(math.degrees(math.asin(K_95_LINE * 2.2 / 50.0)))


def test_a_direction_is_lost_where_the_ellipse_reaches_the_axis() -> None:
    """A round spread of 1 reaches 2.4477; a direction is known from just beyond."""
    unit = Sym2(1.0, 0.0, 1.0)
    assert direction_half_width(Vec2(K_95_PLANE - 1e-9, 0.0), unit) is None
    assert direction_half_width(Vec2(K_95_PLANE + 1e-9, 0.0), unit) is not None
    # Long across the direction: the line's own width reaches the axis before the ellipse does.
    assert direction_half_width(Vec2(0.0, 5.0), Sym2(9.0, 0.0, 1e-6)) is None
    assert axis_in_region(Vec2(0.0, 4.0), Sym2(1.0, 0.0, 4.0))  # 4/2 sigmas
    assert not axis_in_region(Vec2(4.0, 0.0), Sym2(1.0, 0.0, 4.0))  # 4/1 sigmas
    assert not axis_in_region(Vec2(0.0, 5.0), Sym2(1.0, 0.0, 4.0))  # 5/2 sigmas


def test_a_region_that_is_a_line_or_a_point() -> None:
    line = Sym2(0.0, 0.0, 4.0)
    assert axis_in_region(Vec2(0.0, 2.0 * K_95_PLANE - 1e-9), line)
    assert not axis_in_region(Vec2(0.0, 2.0 * K_95_PLANE + 1e-9), line)
    assert not axis_in_region(Vec2(0.5, 0.0), line)
    assert axis_in_region(ZERO, ZERO_COVARIANCE)
    assert probability_inside(Vec2(3.0, 0.0), line, 2.5) == 0.0
    # Up and down by 2 at x = 3 in a circle of 5: within 4, two sigmas each way.
    assert probability_inside(Vec2(3.0, 0.0), line, 5.0) == pytest.approx(math.erf(math.sqrt(2.0)))


def test_judgement() -> None:
    """On a line of sigma 1 through the middle, 2 either way hold .9545."""
    line = Sym2(0.0, 0.0, 1.0)
    share = math.erf(math.sqrt(2.0))
    within, undecided = judge(ZERO, line, 2.0, 0.95), judge(ZERO, line, 2.0, 0.96)
    assert within.probability == pytest.approx(share)
    assert within.verdict == "within"
    assert undecided.verdict == "undecided"
    assert judge(Vec2(0.0, 9.0), line, 2.0, 0.95).verdict == "outside"
    assert judge(ZERO, line, None, 0.95) is NOT_JUDGED


def test_what_is_off_axis() -> None:
    off = Eccentricity(Vec2(-3.0, 4.0), Sym2(0.01, 0.0, 0.01), NOT_JUDGED)
    assert (off.offset, off.tir) == (5.0, 10.0)
    assert off.offset_pm == pytest.approx(0.1 * K_95_LINE)
    assert off.direction_deg == pytest.approx(360.0 - math.degrees(math.atan2(3.0, 4.0)))
    assert off.direction_pm_deg == pytest.approx(math.degrees(math.asin(0.02 * K_95_LINE)))


# Fits and their doubt -----------------------------------------------------------------------


def test_weights_of_a_fit() -> None:
    """Four quarters, one sweep: h = (1/2) sum m u. Two sweeps: half of that for each reading."""
    one = fit(CorrectedReadings(QUARTERS, ((0.0, 0.0, 0.0, 0.0),)))
    assert one.positions_deg == QUARTERS
    assert [(w.x, w.y) for w in one.position_weights()] == [
        (0.0, 0.5), (0.5, 0.0), (0.0, -0.5), (-0.5, 0.0),
    ]  # fmt: skip
    two = fit(CorrectedReadings(QUARTERS, ((0.0, 0.0, 0.0, 0.0), (0.0, 0.0, 0.0, 0.0))))
    (first, *_), (second, *_) = two.weights
    assert first == second == Vec2(0.0, 0.25)
    assert [(w.x, w.y) for w in two.position_weights()] == [
        (0.0, 0.5), (0.5, 0.0), (0.0, -0.5), (-0.5, 0.0),
    ]  # fmt: skip


def test_doubt_of_a_fit_source_by_source() -> None:
    """Step and accuracy of variance 1 each, scatter 1, four quarters: (1 + 1 + 1)/2 each way."""
    fitted = fit(CorrectedReadings(QUARTERS, ((0.0, 0.0, 0.0, 0.0),)))
    doubt = uncertainty_of(fitted, DIAL, (None,))
    near(doubt.covariance, 1.5, 0.0, 1.5)
    assert doubt.dial == pytest.approx(math.sqrt(2.0))
    assert doubt.scatter == pytest.approx(1.0)
    assert doubt.noise == pytest.approx(SQRT3)
    assert doubt.setting == (0.0, 0.0, 0.0, 0.0)
    assert doubt.lack_of_fit == 0.0


def test_doubt_of_a_drift() -> None:
    """A drift of 4 jumped once: 16 f (1 - g) between fractions f <= g of the turn.

    h_x = (m_3 - m_9)/2 with f = 1/4 and 3/4: 4 (3/16 + 3/16 - 2/16) = 1; h_y = (m_12 - m_6)/2 with
    f = 0 and 1/2: 4 (1/4) = 1; between them -4 (1/8 - 1/8) = 0.
    """
    fitted = fit(CorrectedReadings(QUARTERS, ((0.0, 0.0, 0.0, 0.0),)))
    still = uncertainty_of(fitted, DIAL, (0.0,)).covariance
    drifted = uncertainty_of(fitted, DIAL, (4.0,)).covariance
    near(drifted + still.scaled(-1.0), 1.0, 0.0, 1.0)


def test_doubt_of_a_drift_slants_where_the_sweep_does() -> None:
    """12, 3 and 7:30: the weights are no longer square, and x and y go together.

    With n = 3 the fractions are 0, 1/3, 2/3; the first reading has no part in it.
    """
    positions = (0.0, 90.0, 225.0)
    fitted = fit(CorrectedReadings(positions, ((0.0, 0.0, 0.0),)))
    _, b, c = (w for w in fitted.weights[0] if w is not None)
    both, shared = 9.0 * (1.0 / 3.0) * (2.0 / 3.0), 9.0 * (1.0 / 3.0) * (1.0 / 3.0)
    expected = (
        both * (b.x**2 + c.x**2) + 2.0 * shared * b.x * c.x,
        both * (b.x * b.y + c.x * c.y) + shared * (b.x * c.y + c.x * b.y),
        both * (b.y**2 + c.y**2) + 2.0 * shared * b.y * c.y,
    )
    still = uncertainty_of(fitted, DIAL, (None,)).covariance
    drifted = uncertainty_of(fitted, DIAL, (3.0,)).covariance
    near(drifted + still.scaled(-1.0), *expected)
    assert abs(expected[1]) > 0.1


def test_a_blank_has_no_part_in_the_drift() -> None:
    row = (0.0, 0.0, None, 0.0, 0.0, 0.0, 0.0, 0.0)
    fitted = fit(CorrectedReadings(EIGHTHS, (row,)))
    assert (
        uncertainty_of(fitted, DIAL, (1.0,)).covariance.xx
        > uncertainty_of(fitted, DIAL, (0.0,)).covariance.xx
    )


def test_doubt_in_height() -> None:
    """Half of each total, so a quarter of its variance.

    Sag of 0 to sqrt(3) has the variance 3/12. Measured, it is two readings, each to a step (1 + 1)
    and scattered (1 + 1). A lift of 3 is as much again to a step, and +-3 rectangular, 9/3.
    """
    near(vertical_covariance(DIAL, LYING), 0.0, 0.0, 0.25 / 4.0)
    measured = replace(DIAL, sag=sag_test([3.0]))
    near(vertical_covariance(measured, LYING), 0.0, 0.0, 4.0 / 4.0)
    near(vertical_covariance(measured, Crank("horizontal", 3.0)), 0.0, 0.0, (4.0 + 2.0 + 3.0) / 4.0)


def test_tries_of_a_sag_test() -> None:
    """Four tries 2 1 3 2 scatter by 2/3 in variance: with 3 stated degrees of freedom of 2 in all.

    ``(3*2 + 3*2/3)/6 = 4/3`` a try, a quarter of that for their mean. Wild ones, 0 and 6, count as
    they are: variance 18 a try, 9 for their mean.
    """
    calm, wild = sag_test([2.0, 1.0, 3.0, 2.0]), sag_test([0.0, 6.0])
    assert (calm.mean, calm.tries) == (2.0, 4)
    assert calm.deviation == pytest.approx(math.sqrt(2.0 / 3.0))
    for test, variance in ((calm, 4.0 / 3.0 / 4.0), (wild, 9.0)):
        dial = replace(DIAL, sag=test)
        near(vertical_covariance(dial, LYING), 0.0, 0.0, (2.0 + variance) / 4.0)


def test_sag_that_was_not_measured_is_taken_out_by_half_of_what_it_may_be() -> None:
    """Zero to 4: 2 is taken out of the reading at 6, and the bore sits 1 lower than it reads."""
    dial = replace(DIAL, sag_allowance=4.0)
    assert vertical_shift(dial, LYING) == 2.0
    near(vertical_covariance(DIAL, STANDING), 0.0, 0.0, 0.0)


def test_how_far_the_needle_swings() -> None:
    """A true bore and 4 of sag taken out: half of 4 is what the bore sits too low, twice it swings.

    The readings 0 2 4 2 are those of a wave of 2 up and down. Slanted by 60 degrees the dial shows
    twice that, and half of what it shows is what the bore did.
    """
    sweeps = Sweeps(QUARTERS, ((0.0, 2.0, 4.0, 2.0),), (None,))
    for angle, shown in ((0.0, 4.0), (60.0, 4.0)):
        dial = replace(DIAL, sag=sag_test([4.0]), contact_angle_deg=angle)
        bore = measure_bore(BoreSweeps("inside", sweeps), dial, LYING, None, 0.95)
        assert needle_swing(bore, dial, LYING) == pytest.approx(shown)
    assert bore.tir == pytest.approx(2.0)


def test_height_joins_the_doubt_of_the_bore() -> None:
    sweeps = Sweeps(QUARTERS, ((0.0, 0.0, 0.0, 0.0),), (None,))
    bore = measure_bore(BoreSweeps("inside", sweeps), DIAL, LYING, None, 0.95)
    near(bore.covariance, 1.5, 0.0, 1.5 + 0.25 / 4.0)
    assert bore.ellipse.major == pytest.approx(K_95_PLANE * math.sqrt(1.5625))
    assert bore.judged is NOT_JUDGED


# Checks of readings -------------------------------------------------------------------------


def test_pairs_nearest_to_twelve_come_first() -> None:
    """Eight positions of a saddle: 12 + 6 are up by 2 over 3 + 9, and 45 + 225 level with 135."""
    saddle = (1.0, 0.0, -1.0, 0.0, 1.0, 0.0, -1.0, 0.0)
    order = (3, 0, 5, 1, 2, 4, 7, 6)
    mixed = pair_sums(tuple(EIGHTHS[i] for i in order), tuple(saddle[i] for i in order))
    assert mixed is not None
    assert (mixed.at_deg, mixed.difference) == (0.0, 4.0)
    turned = pair_sums((350.0, 80.0, 170.0, 260.0), (1.0, -1.0, 1.0, -1.0))
    assert turned is not None
    assert (turned.at_deg, turned.difference) == (350.0, 4.0)


def test_five_positions_are_enough_for_an_oval() -> None:
    positions = tuple(72.0 * i for i in range(5))
    oval = tuple(1.5 * math.cos(math.radians(2.0 * (a - 30.0))) for a in positions)
    found = out_of_round(positions, oval)
    assert found is not None
    assert (found.tir, found.at_deg) == pytest.approx((3.0, 30.0))
    # Even positions: sqrt(2/n) of what one reading is worth.
    assert found.spread == pytest.approx(math.sqrt(2.0 / 5.0))
    assert out_of_round(positions[:4], oval[:4]) is None


def test_an_oval_can_hardly_be_told_from_crowded_positions() -> None:
    """By numpy: the covariance of the two in 2a is the block of the inverse normal matrix."""
    positions = (0.0, 20.0, 40.0, 185.0, 250.0)
    a = np.radians(positions)
    design = np.column_stack([np.ones(5), np.sin(a), np.cos(a), np.sin(2 * a), np.cos(2 * a)])
    block = np.linalg.inv(design.T @ design)[3:, 3:]
    found = out_of_round(positions, (0.0, 0.0, 0.0, 0.0, 0.0))
    assert found is not None
    assert found.spread == pytest.approx(math.sqrt(np.linalg.eigvalsh(block).max()), rel=1e-9)
    assert found.spread > 5.0
    # Three at almost one place tell nothing of it.
    assert out_of_round((0.0, 1e-6, 2e-6, 120.0, 240.0), (0.0,) * 5) is None


def one_off(count: int, by: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """So many even positions, all readings nothing but the third."""
    positions = tuple(360.0 * i / count for i in range(count))
    return positions, tuple(by if i == 2 else 0.0 for i in range(count))


def test_when_a_reading_is_foreign() -> None:
    """One of five is off by d; its leverage is 3/5, and the other four miss it by d exactly.

    The standard deviation of that is noise / sqrt(2/5): it is named beyond 3.5 of them. Leaving a
    neighbour out would leave 0.4 d**2 - (0.2 + 0.4 cos 72)**2 d**2 / 0.4, which is enough more.
    """
    for factor, named in ((1.001, True), (0.999, False)):
        positions, means = one_off(5, factor * FOREIGN_SIGMAS / math.sqrt(0.4))
        found = foreign_reading(positions, means, 1.0)
        assert (found is not None) == named
    positions, means = one_off(5, 50.0)
    lone = foreign_reading(positions, means, 1.0)
    assert lone is not None
    assert (lone.position_index, lone.position_deg) == (2, 144.0)
    assert lone.excess == pytest.approx(50.0)


def test_a_reading_is_foreign_only_where_no_other_could_be() -> None:
    """One of eight: leaving a neighbour out leaves 5/8 - (1/8 + cos(45)/4)**2 / (5/8) of d**2.

    That must be more than four times what the four spare degrees of freedom are expected to leave.
    """
    left = 5.0 / 8.0 - (1.0 / 8.0 + math.cos(math.radians(45.0)) / 4.0) ** 2 / (5.0 / 8.0)
    threshold = math.sqrt(FOREIGN_CONTRAST * 4.0 / left)
    assert threshold > FOREIGN_SIGMAS * math.sqrt(8.0 / 5.0)
    for factor, named in ((1.001, True), (0.999, False)):
        positions, means = one_off(8, factor * threshold)
        assert (foreign_reading(positions, means, 1.0) is not None) == named


def test_no_reading_is_foreign_where_the_others_do_not_fix_the_bore() -> None:
    """Of four none can be named; nor where without one of them half a turn is open."""
    assert foreign_reading(*one_off(4, 50.0), 0.1) is None
    gap = (0.0, 40.0, 80.0, 120.0, 160.0, 260.0)
    assert foreign_reading(gap, (0.0, 0.0, 50.0, 0.0, 0.0, 0.0), 0.1) is None
    just = (0.0, 40.0, 80.0, 120.0, 180.0, 270.0)  # without 270 just half a turn
    assert foreign_reading(just, (0.0, 0.0, 50.0, 0.0, 0.0, 0.0), 0.1) is None


def test_when_sweeps_disagree() -> None:
    """Two sweeps that differ by s at one place of eight: beyond 3.5 sqrt(2) of the scatter.

    Each sweep's own zero and the common fit take nothing of the difference but its mean, s/8.
    """
    most = FOREIGN_SIGMAS * math.sqrt(2.0)
    for factor, seen in ((1.001, True), (0.999, False)):
        s = factor * most / (7.0 / 8.0)
        rows = ((0.0,) * 8, (0.0, 0.0, 0.0, s, 0.0, 0.0, 0.0, 0.0))
        found = disagreement(fit(CorrectedReadings(EIGHTHS, rows)), 1.0)
        assert (found is not None) == seen
        if found is not None:
            assert (found.position_deg, found.sweep) == (135.0, 1)
            assert found.span == pytest.approx(factor * most)


def test_an_examined_sweep_holds_its_checks() -> None:
    """Two sweeps, one of them wild at 3 o'clock: by the stated scatter, step and contact angle."""
    rows = ((0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0), (0.0, 0.0, 40.0, 0.0, 0.0, 0.0, 0.0, 0.0))
    slanted = replace(DIAL, contact_angle_deg=60.0)
    found = examine(CorrectedReadings(EIGHTHS, rows), Sweeps(EIGHTHS, rows, (None, -2.0)), slanted)
    assert found.disagreement is not None
    assert found.second is not None
    assert found.second.tir == pytest.approx(2.0 * 2.0 / 8.0 * 20.0)
    assert found.closing_error == -2.0
    assert found.uncertainty.dial == pytest.approx(math.sqrt(2.0) / 2.0)
    # Scatter sqrt(1 + 1) seen at 60 degrees is sqrt(2)/2; the span at 3 o'clock is 40 (7/8) = 35.
    for readings, seen in ((4.001, True), (3.998, False)):
        wild = tuple(readings if i == 2 else 0.0 for i in range(8))
        each = (rows[0], wild)
        found = examine(
            CorrectedReadings(EIGHTHS, each), Sweeps(EIGHTHS, each, (None, None)), slanted
        )
        assert (found.disagreement is not None) == seen
    alone = (rows[1],)
    lone = examine(CorrectedReadings(EIGHTHS, alone), Sweeps(EIGHTHS, alone, (None,)), DIAL)
    assert lone.foreign is not None
    assert lone.closing_error is None


# Faces and companions -----------------------------------------------------------------------


def test_positions_go_through_the_corrections() -> None:
    sweeps = Sweeps(QUARTERS, ((1.0, 2.0, 3.0, 4.0),), (None,))
    two = FaceSweeps(3.0, "forward", "free", ((0.0, 0.0, 0.0, 0.0),), sweeps)
    found = corrected_face(two, DIAL)
    assert (found.positions_deg, found.readings) == (QUARTERS, ((0.5, 1.0, 1.5, 2.0),))
    part = RotatingPart("pilot_bore", "outside", "forward", None, sweeps)
    turned = corrected_rotating_part(part, DIAL)
    assert (turned.positions_deg, turned.readings) == (QUARTERS, ((-1.0, -2.0, -3.0, -4.0),))


def test_a_face_and_a_companion_hold_their_limits() -> None:
    """Half a runout against half its limit; a direction from beyond its doubt."""
    rows = ((0.0, 30.0, 0.0, -30.0),)
    face = FaceSweeps(3.0, "forward", "held", None, Sweeps(QUARTERS, rows, (None,)))
    found = measure_face(face, DIAL, 1000.0, 40.0, 0.95)
    assert (found.runout, found.limit) == (60.0, 40.0)
    assert found.judged.verdict == "outside"
    expected = math.degrees(math.asin(K_95_LINE * math.sqrt(1.5) / 30.0))
    assert found.direction_pm_deg == pytest.approx(expected)
    part = RotatingPart("crank_flange", "inside", "forward", 40.0, Sweeps(QUARTERS, rows, (None,)))
    runout = measure_rotating_part(part, DIAL, 0.95)
    assert (runout.tir, runout.limit, runout.judged.verdict) == (60.0, 40.0, "outside")


# Dowels -------------------------------------------------------------------------------------


def test_play_aim_and_what_was_not_seen() -> None:
    """Play of 6: +-3, variance 3. Aim +-a across the move: (7 a)**2/3. Unseen: 8 % of it."""
    near(play_covariance(6.0), 3.0, 0.0, 3.0)
    a = math.radians(5.0)
    near(aim_covariance(Vec2(0.0, 7.0), 5.0), 49.0 * a * a / 3.0, 0.0, 0.0)
    near(
        aim_covariance(Vec2(2.0, 3.0), 5.0),
        9.0 * a * a / 3.0,
        -6.0 * a * a / 3.0,
        4.0 * a * a / 3.0,
    )
    near(unseen_covariance(Vec2(3.0, 4.0)), 0.0064 * 25.0, 0.0, 0.0064 * 25.0)
    near(seat_covariance(0.5), 0.015625, 0.0, 0.015625)
    near(seat_covariance(0.0), 0.0, 0.0, 0.0)


def test_what_dowels_did() -> None:
    """From (0, -6) to (0.5, 1): moved by 7.02 toward 4.1 degrees, told 7 toward 0."""
    spread = Sym2(0.04, 0.0, 0.01)
    seen = (
        RoundObservation(Vec2(0.0, -6.0), spread, (0.0, 0.0), ZERO),
        RoundObservation(Vec2(0.5, 1.0), spread, (7.0, 7.0), Vec2(0.0, 7.0)),
    )
    did = observed_move_of(seen)
    assert did is not None
    assert did.size == pytest.approx(math.hypot(0.5, 7.0))
    assert did.direction_deg == pytest.approx(math.degrees(math.atan2(0.5, 7.0)))
    ux, uy = 0.5 / did.size, 7.0 / did.size
    across = math.sqrt(0.08 * uy * uy + 0.02 * ux * ux)
    assert did.direction_pm_deg == pytest.approx(
        math.degrees(math.asin(K_95_LINE * across / did.size))
    )
    along = math.sqrt(0.08 * ux * ux + 0.02 * uy * uy)
    assert did.size_pm == pytest.approx(K_95_LINE * along)
    assert did.agrees  # 0.5**2/0.08 = 3.1 of 5.99
    assert not did.opposite


def test_what_dowels_did_in_a_slanted_spread() -> None:
    """Moved by (6, 8), with 2 x [[.02, .005], [.005, .04]]: across (-.8, .6) that is .0448."""
    spread = Sym2(0.02, 0.005, 0.04)
    seen = (
        RoundObservation(Vec2(0.0, -8.0), spread, (0.0, 0.0), ZERO),
        RoundObservation(Vec2(6.0, 0.0), spread, (10.0, 10.0), Vec2(6.0, 8.0)),
    )
    did = observed_move_of(seen)
    assert did is not None
    across = math.sqrt(2.0 * (0.02 * 0.64 - 2.0 * 0.005 * 0.48 + 0.04 * 0.36))
    assert did.direction_pm_deg == pytest.approx(math.degrees(math.asin(K_95_LINE * across / 10.0)))


def test_when_dowels_went_the_other_way() -> None:
    """Beyond noise and beyond half of what they were told: 7, so from 3.5."""
    spread = Sym2(1e-4, 0.0, 1e-4)
    for back, opposite in ((3.4, False), (3.6, True)):
        seen = (
            RoundObservation(ZERO, spread, (0.0, 0.0), ZERO),
            RoundObservation(Vec2(0.0, -back), spread, (7.0, 7.0), Vec2(0.0, 7.0)),
        )
        did = observed_move_of(seen)
        assert did is not None
        assert did.opposite == opposite
        assert not did.agrees


def test_a_trim_holds_its_move_and_doubt() -> None:
    """E = i (a quarter turn counter-clockwise): aimed a quarter turn clockwise of where to go."""
    spread = tuple(tuple(float(i == j) for j in range(4)) for i in range(4))
    response = DowelResponse(Vec2(0.0, -7.0), 0.0, 1.0, spread)
    assert (response.gain, response.lag_deg) == (1.0, -90.0)
    trim = trim_for(response, 7.0, 0.0)
    assert (trim.aim_deg, trim.turn_deg) == (90.0, 90.0)
    assert (trim.move.x, trim.move.y) == (7.0, 0.0)
    assert trim.expected_offset == pytest.approx(0.0, abs=1e-12)
    # The design is (1, 0, 7, 0) and (0, 1, 0, 7): 1 + 49 each way.
    near(trim.covariance, 50.0, 0.0, 50.0)
    slanted = (spread[0], (0.5, 1.0, 0.0, 0.0), spread[2], spread[3])
    assert DowelResponse(ZERO, 1.0, 0.0, slanted).covariance_after(ZERO).xy in (0.0, 0.5)


def weigher(aim_for: str, **limits: float) -> OptionEvaluator:
    """A bore 10 low, and a face that takes the pilot line 6 to the right."""
    job = read_job(
        make_job(
            readings_of(0.0, -10.0), indicator=PERFECT, limits={"bore_offset": 5.0, **limits},
            stock={"dowel_offsets": [7.0, 14.0], "aim_for": aim_for, "aim_setting_deg": 0.0},
            housing={"dowel_clearance": 0.0},
        )
    )  # fmt: skip
    bore = measure_round(job, job.rounds[0]).bore
    return OptionEvaluator(
        job, bore, PilotShift(Vec2(6.0, 0.0), ZERO_COVARIANCE, ZERO_COVARIANCE), ZERO_COVARIANCE
    )


STANDARD = (Dowel(0.0, 0.0), Dowel(0.0, 0.0))
KNOWN = tuple(tuple(0.0 for _ in range(4)) for _ in range(4))


def by_size(options: tuple[Option, ...]) -> dict[float, Option]:
    return {option.offset: option for option in options if not option.leave}


def test_options_for_the_bore_and_for_the_pilot_line() -> None:
    """Bore (0, -10), pilot line (6, -10): aimed at 12, or at 329 degrees."""
    response = DowelResponse(Vec2(0.0, -10.0), 1.0, 0.0, KNOWN)
    bore = by_size(options_for(weigher("bore"), response, STANDARD))[7.0]
    assert (bore.aim_deg, bore.expected_offset) == pytest.approx((0.0, 3.0))
    assert bore.expected_pilot == pytest.approx(math.hypot(6.0, 3.0))
    assert bore.target_offset("bore") == bore.expected_offset
    assert bore.target_offset("pilot") == bore.expected_pilot
    assert bore.pilot_judged is NOT_JUDGED
    there = weigher("pilot", pilot_offset=6.0)
    pilot = by_size(options_for(there, response, STANDARD))[7.0]
    assert pilot.aim_deg == pytest.approx(360.0 - math.degrees(math.atan2(6.0, 10.0)))
    assert pilot.expected_pilot == pytest.approx(math.hypot(6.0, 10.0) - 7.0)
    assert pilot.pilot_judged.probability is not None
    assert pilot.target_judged("pilot") is pilot.pilot_judged
    assert pilot.target_judged("bore") is pilot.judged


def test_options_in_order_without_a_limit() -> None:
    """Without a chance to go by, what is left of the target decides: 14 leaves 4, 7 leaves 3."""
    job = weigher("bore")
    response = DowelResponse(Vec2(0.0, -10.0), 1.0, 0.0, KNOWN)
    bare = read_job(
        make_job(
            readings_of(0.0, -10.0), indicator=PERFECT, limits={"bore_offset": None},
            stock={"dowel_offsets": [7.0, 14.0]},
        )
    )  # fmt: skip
    options = options_for(
        OptionEvaluator(bare, job.latest, None, ZERO_COVARIANCE), response, STANDARD
    )
    assert [(o.leave, o.offset) for o in options] == [(False, 7.0), (False, 14.0), (True, 0.0)]


def test_the_pair_in_place_does_again_what_it_was_seen_to_do() -> None:
    """Gain 1/2 and lag 90 (E = -i/2): 14 turned to 270 moves up by 7; 7 is taken at its word."""
    response = DowelResponse(Vec2(0.0, -10.0), 0.0, -0.5, KNOWN)
    fitted = (Dowel(14.0, 30.0), Dowel(14.0, 30.0))
    options = options_for(weigher("bore"), response, fitted)
    same, other, standard = (by_size(options)[size] for size in (14.0, 7.0, 0.0))
    assert same.aim_deg == pytest.approx(270.0)
    assert same.expected_offset == pytest.approx(3.0)
    assert (other.aim_deg, other.expected_offset) == pytest.approx((0.0, 3.0))
    assert (standard.aim_deg, standard.expected_offset) == pytest.approx((0.0, 10.0))
    # What was seen is sure here, and what was not may do 8 % more or less.
    assert same.judged.probability == pytest.approx(1.0)
    assert other.judged.probability is not None
    assert other.judged.probability < 1.0
    (left,) = (o for o in options if o.leave)
    assert (left.offset, left.aim_deg) == (0.0, 30.0)


def test_unlike_dowels_in_place_are_not_the_pair_of_their_size() -> None:
    response = DowelResponse(Vec2(0.0, -10.0), 0.0, -0.5, KNOWN)
    for fitted in (
        (Dowel(14.0, 30.0), Dowel(7.0, 30.0)), (Dowel(7.0, 0.0), Dowel(14.0, 0.0)),
        (Dowel(0.0, 0.0), Dowel(14.0, 0.0)),
    ):  # fmt: skip
        options = by_size(options_for(weigher("bore"), response, fitted))
        assert set(options) == {0.0, 7.0, 14.0}
        assert options[14.0].aim_deg == 0.0
        assert options[14.0].expected_offset == pytest.approx(4.0)


def test_from_bore_to_pilot_bearing() -> None:
    """Slope .001 toward 3 over 7000: 7 to the right; its doubt times 7000 squared, and the seat."""
    sweeps = Sweeps(QUARTERS, ((0.0, 3.0, 0.0, -3.0),), (None,))
    face: Face = measure_face(
        FaceSweeps(3.0, "forward", "held", None, sweeps), DIAL, 1000.0, None, 0.95
    )
    shift = pilot_shift(face, 7000.0, Sym2(1.0, 0.0, 2.0))
    assert (shift.shift.x, shift.shift.y) == pytest.approx((7.0, 0.0))
    grown = 1.5 * (7.0 / 3.0) ** 2
    near(shift.covariance, grown + 1.0, 0.0, grown + 2.0)


def rounds_of(second: tuple[float, float], aim_deg: float = 0.0) -> Data:
    """Found 7 low, then a pair of 7 aimed at 12, and the bore then at ``second``."""
    first = make_job(readings_of(0.0, -7.0, EIGHTHS), positions=EIGHTHS, indicator={"sag": 0})
    after = make_job(readings_of(*second, EIGHTHS), positions=EIGHTHS)
    return then(first, with_dowels(after, (7.0, aim_deg)))


def test_what_is_believed_of_the_dowels() -> None:
    """Seen to do nearly what they say, they are believed; seen to do half, what was seen counts."""
    believed = read_job(rounds_of((0.3, 0.2)))
    measured = tuple(measure_round(believed, each) for each in believed.rounds)
    history = history_of(believed, measured, None, ZERO_COVARIANCE)
    assert history.observed is not None
    assert history.observed.agrees
    assert history.response is not None
    assert abs(history.response.gain - 1.0) < 0.02
    found = read_job(rounds_of((0.0, -3.5)))
    measured = tuple(measure_round(found, each) for each in found.rounds)
    history = history_of(found, measured, None, ZERO_COVARIANCE)
    assert history.observed is not None
    assert not history.observed.agrees
    assert history.response is not None
    assert history.response.gain == pytest.approx(0.5, abs=0.02)


def test_rounds_that_contradict_their_dowels_tell_only_of_standard_ones() -> None:
    job = read_job(rounds_of((0.0, -14.0)))
    measured = tuple(measure_round(job, each) for each in job.rounds)
    history = history_of(job, measured, None, ZERO_COVARIANCE)
    assert history.observed is not None
    assert history.observed.opposite
    assert history.trim is None
    assert history.response is not None
    assert (history.response.bare.x, history.response.bare.y) == pytest.approx((0.0, -7.0))
    play = refit_covariance(job, Vec2(0.0, 7.0))
    near(play, 1.0 / 12.0 + 49.0 * math.radians(5.0) ** 2 / 3.0, 0.0, 1.0 / 12.0)


# Shims, chips and the whole -------------------------------------------------------------------


def test_shims_keep_their_places_and_take_the_fewest_pieces() -> None:
    """Low by .001 at 6 over bolts at 7 in: 14 at 12 o'clock, 7 at 3 and 9, none at 6."""
    bolts = [Hole(a, 7.0) for a in QUARTERS]
    found = shims_for(Vec2(0.0, -0.001), bolts, 1000.0, (14.0, 7.0))
    assert found is not None
    assert [shim.at_deg for shim in found.shims] == list(QUARTERS)
    assert [shim.pieces for shim in found.shims] == [(14.0,), (7.0,), (), (7.0,)]
    stacked = shims_for(Vec2(0.0, -0.001), bolts, 1000.0, (4.0, 10.0))
    assert stacked is not None
    assert [shim.pieces for shim in stacked.shims] == [(10.0, 4.0), (4.0, 4.0), (), (4.0, 4.0)]


def test_the_chip_that_explains_a_face() -> None:
    """Slope .001 with the rim at 8 in on both sides: a chip of 16 thou."""
    bolts = [{"at_deg": a, "radius": 8.0} for a in QUARTERS]
    job = read_job(
        with_face(
            make_job((0, 0, 0, 0), indicator=PERFECT, housing={"bolts": bolts}),
            face_readings(0.0, 1.0),
        )
    )
    measured = measure_round(job, job.rounds[0])
    assert measured.face is not None
    assert square(job, measured.bore, measured.face).chip == pytest.approx(16.0)


def test_a_whole_job_is_worked_out_from_its_latest_round() -> None:
    job = read_job(whole_job())
    found: Solution = work_out(job)
    assert len(found.measured) == 3
    assert found.latest is found.measured[2]
    assert found.latest.pilot is not None
    assert found.squaring is not None
    assert found.seat is not None
    assert found.seat.clearance == pytest.approx(1.5)
    assert found.chip is not None
    # 4 thou at 8 in, the far rim at 8.6 in, where the outermost bolt is.
    assert found.chip.slope.length == pytest.approx(4.0 / 16600.0)
    assert found.chip.bore is not None
    assert found.chip.bore.length == pytest.approx(6500.0 * 4.0 / 16600.0)
    assert found.chip.nose is not None
    assert found.chip.nose.length == pytest.approx(500.0 * 4.0 / 16600.0)
    assert found.chip.tail is not None
    assert found.chip.tail.length == pytest.approx(26500.0 * 4.0 / 16600.0)
    assert [runout.kind for runout in found.companions] == ["pilot_bore", "flywheel_face"]
    assert found.job is job
    (left,) = (option for option in found.options if option.leave)
    # Where the pilot line is now is where it is expected when all is left alone.
    assert left.expected_pilot == pytest.approx(found.latest.pilot.offset)
    assert left.pilot_judged == found.latest.pilot.judged
    assert found.choice is not None
    assert found.choice.leave
    assert found.planned is None
    assert not found.wrong_way
    assert not found.face_first


def test_a_chip_in_the_rear_joint_and_dimensions_that_are_not_known() -> None:
    """Under the gearbox the bore stays; without a depth, what is under the housing is not told."""
    chip = {"joint": "rear", "height": 4.0, "at_deg": 0.0, "radius": 0.5}
    job = make_job((0, 0, 0, 0), chip=chip, housing={"pilot_distance": 7.0})
    found = work_out(read_job(job)).chip
    assert found is not None
    # Nothing else was measured: the far rim is as far out as the chip, half an inch.
    assert found.slope.y == pytest.approx(4.0 / 1000.0)
    assert found.bore == ZERO
    assert found.nose is not None
    assert found.nose.y == pytest.approx(28.0)
    assert found.tail is None
    under = work_out(read_job(job | {"chip": chip | {"joint": "front"}})).chip
    assert under is not None
    assert under.bore is under.nose is under.tail is None


def test_unlike_dowels_in_place_count_with_their_holes() -> None:
    """7 and 14 up at holes 7 in left and right: the middle goes up by 10.5, once they are known."""
    holes = [{"at_deg": 270.0, "radius": 7.0}, {"at_deg": 90.0, "radius": 7.0}]
    job = make_job(readings_of(0.0, 0.5, EIGHTHS), positions=EIGHTHS)
    fitted = with_dowels(job, (7.0, 0.0), (14.0, 0.0))
    assert work_out(read_job(fitted)).history.response is None
    known = work_out(read_job(fitted | {"housing": {"dowel_holes": holes}})).history.response
    assert known is not None
    assert (known.bare.x, known.bare.y) == pytest.approx((0.0, -10.0))


def test_what_is_chosen_is_chosen_for_the_target() -> None:
    """The bore is good and the pilot line is not: only aimed for the bore it is left alone."""
    job = with_face(
        make_job(
            readings_of(0.0, -1.0, EIGHTHS), positions=EIGHTHS, indicator={"sag": 0.0},
            limits={"pilot_offset": 5.0, "face_runout": 50.0}, housing={"pilot_distance": 7.0},
        ),
        face_readings(2.0, 0.0, EIGHTHS), positions=EIGHTHS,
    )  # fmt: skip
    bore, pilot = (
        work_out(read_job(job | {"stock": {"aim_for": aim}})) for aim in ("bore", "pilot")
    )
    assert bore.choice is not None
    assert bore.choice.leave
    assert pilot.choice is not None
    assert not pilot.choice.leave
    assert (pilot.choice.offset, pilot.planned) == (14.0, pilot.choice)


def test_what_comes_before_the_dowels() -> None:
    """A face outside its limit, dowels that went the other way, a register that does not go in."""
    off = make_job(readings_of(0.0, -12.0, EIGHTHS), positions=EIGHTHS, indicator={"sag": 0})
    plain = work_out(read_job(off))
    assert plain.planned is plain.choice
    assert plain.planned is not None
    leaning = with_face(dict(off, rounds=[dict(off["rounds"][0])]), face_readings(5.0, 0.0))
    face = work_out(read_job(leaning))
    assert face.face_first
    assert face.planned is None
    wrong = work_out(read_job(rounds_of((0.0, -14.0))))
    assert wrong.wrong_way
    assert wrong.planned is None
    tight = off | {"housing": {"bore_diameter": 4.0, "register_diameter": 4.001}}
    seat = work_out(read_job(tight))
    assert seat.seat is not None
    assert seat.seat.clearance == pytest.approx(-1.0)
    assert seat.seat.judged is NOT_JUDGED
    assert seat.planned is None


def test_unlike_pairs_take_the_play_into_account() -> None:
    """Only where the holes are known; what is left is within what the play allows."""
    holes = [{"at_deg": 270.0, "radius": 7.0}, {"at_deg": 90.0, "radius": 7.0}]
    job = make_job(readings_of(0.0, -10.0, EIGHTHS), positions=EIGHTHS)
    assert work_out(read_job(job)).pairs == ()
    known = work_out(read_job(job | {"housing": {"dowel_holes": holes, "dowel_clearance": 1.0}}))
    assert len(known.pairs) == 5
    line = DowelLine.of((Hole(270.0, 7.0), Hole(90.0, 7.0)), 1000.0)
    assert line.spacing == 14000.0
    for pair in known.pairs:
        assert abs(pair.moved.misfit) <= 1.0 + 1e-9
    assert known.pairs[0].expected_offset < 1.0


def test_pairs_in_mm_are_those_in_thou() -> None:
    """The same housing in both units: the same dowels in the same order."""
    found = []
    for units, k, inch in (("inch", 1.0, 1.0), ("metric", 0.0254, 25.4)):
        holes = [{"at_deg": 265.0, "radius": 7.0 * inch}, {"at_deg": 90.0, "radius": 6.5 * inch}]
        job = make_job(
            [k * m for m in readings_of(4.0, -9.0, EIGHTHS)], positions=EIGHTHS, units=units,
            limits={"bore_offset": 5.0 * k}, stock={"dowel_offsets": [7.0 * k, 14.0 * k, 21.0 * k]},
            housing={"dowel_holes": holes, "dowel_clearance": 1.0 * k},
            indicator={"step": 0.5 * k, "accuracy": 0.5 * k, "repeatability": 0.25 * k, "sag": 0.0},
        )  # fmt: skip
        pairs = work_out(read_job(job)).pairs
        found.append([
            [v for d in pair.dowels for v in (d.offset / k, d.aim_deg)] for pair in pairs
        ])  # fmt: skip
    assert len(found[0]) == 5
    for thou, mm in zip(*found, strict=True):
        assert mm == pytest.approx(thou, rel=1e-6, abs=1e-6)


def test_a_hair_is_a_hundredth_of_a_thou() -> None:
    assert (INCH.hair, METRIC.hair) == pytest.approx((0.01, 0.000254))


def test_the_chance_of_a_pair_counts_each_aim_by_itself() -> None:
    """Each dowel misses its mark by +-5 degrees by itself, and may do 8 % more or less."""
    holes = [{"at_deg": 250.0, "radius": 7.0}, {"at_deg": 95.0, "radius": 6.0}]
    job = read_job(
        make_job(
            readings_of(3.0, -9.0, EIGHTHS), positions=EIGHTHS, indicator=PERFECT,
            limits={"bore_offset": 1.0}, housing={"dowel_holes": holes, "dowel_clearance": 0.5},
            stock={"aim_setting_deg": 5.0},
        )
    )  # fmt: skip
    line = DowelLine.of((Hole(250.0, 7.0), Hole(95.0, 6.0)), 1000.0)
    bare, known = Vec2(3.0, -9.0), Sym2(0.02, 0.01, 0.05)
    found = pairs_for(bare, known, line, 0.5, job)
    assert found
    for pair in found:
        spread = known
        for i, dowel in enumerate(pair.dowels):
            across = Vec2(
                dowel.offset * math.cos(math.radians(dowel.aim_deg)),
                -dowel.offset * math.sin(math.radians(dowel.aim_deg)),
            )
            miss = line.moved(*((across, ZERO) if i == 0 else (ZERO, across))).move
            spread = spread + aim_covariance(Vec2(-miss.y, miss.x), 5.0) + unseen_covariance(miss)
        expected = probability_inside(pair.center, spread, 1.0)
        assert pair.judged.probability == pytest.approx(expected, abs=1e-9)
        assert all(d.offset in (0.0, 7.0, 14.0, 21.0) for d in pair.dowels)
        assert all(d.aim_deg == 0.0 for d in pair.dowels if d.offset == 0.0)
    assert any(d.offset == 0.0 for pair in found for d in pair.dowels)
    assert any(0.05 < (pair.judged.probability or 0.0) < 0.95 for pair in found)


def test_a_foreign_reading_of_an_uneven_sweep_against_leaving_each_out() -> None:
    """By numpy: the fit without each reading in turn, and what that reading is off by."""
    positions = (0.0, 35.0, 80.0, 140.0, 170.0, 215.0, 290.0, 330.0)
    means = (0.2, -0.1, 0.3, 9.0, -0.2, 0.1, 0.0, -0.3)
    a = np.radians(positions)
    design = np.column_stack([np.ones(8), np.sin(a), np.cos(a)])
    left, excess = [], []
    for i in range(8):
        others = [k for k in range(8) if k != i]
        solved = np.linalg.lstsq(design[others], np.array(means)[others], rcond=None)[0]
        left.append(float(np.sum((np.array(means)[others] - design[others] @ solved) ** 2)))
        excess.append(float(means[i] - design[i] @ solved))
    found = foreign_reading(positions, means, 0.5)
    assert found is not None
    assert found.position_index == int(np.argmin(left)) == 3
    assert found.excess == pytest.approx(excess[3], rel=1e-9)
    # The spare degrees of freedom leave less than the noise here, which is what counts.
    assert left[3] / 4.0 < 0.25
    contrast = sorted(left)[1] / (4.0 * 0.25)
    assert contrast > FOREIGN_CONTRAST
    # With as much noise as makes the contrast too small, nothing is named.
    enough = math.sqrt(sorted(left)[1] / (4.0 * FOREIGN_CONTRAST))
    assert foreign_reading(positions, means, 0.999 * enough) is not None
    assert foreign_reading(positions, means, 1.001 * enough) is None
