"""From what the dial showed to what the bore did."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.job.model import (
    BoreSweeps,
    Contact,
    Crank,
    FaceSweeps,
    Indicator,
    Plunger,
    RotatingPart,
    RotatingPartKind,
    Sweeps,
)
from sweepsheet.job.sag import sag_test
from sweepsheet.sweep.corrections import (
    contact_factor,
    corrected_bore,
    corrected_face,
    corrected_rotating_part,
    droop_at,
    vertical_shift,
    without_drift,
)
from tests.cases.jobs import QUARTERS, apart, bore_of, make_job

PLAIN = Indicator(
    step=0.5, accuracy=0.5, repeatability=0.25, plus_when="plunger_in", contact_angle_deg=0.0,
    holder=None, sag=sag_test([0.0]), sag_allowance=1.0, angle_setting_deg=5.0,
    rig="", sag_date="", sag_bar="", sag_reach=None, reach=None,
)  # fmt: skip
LYING = Crank("horizontal", 0.0)
INSIDE = BoreSweeps("inside", Sweeps(QUARTERS, ((0.0, -5.0, -11.0, -6.0),), (0.0,)))


def corrected(bore: BoreSweeps, indicator: Indicator, crank: Crank = LYING) -> list[float | None]:
    (row,) = corrected_bore(bore, indicator, crank).readings
    return list(row)


def test_plain_readings_stay_as_they_are() -> None:
    assert corrected(INSIDE, PLAIN) == [0.0, -5.0, -11.0, -6.0]


def test_a_dial_that_reads_the_other_way_is_turned_round() -> None:
    assert corrected(INSIDE, replace(PLAIN, plus_when="plunger_out")) == [0.0, 5.0, 11.0, 6.0]


def test_outside_contact_is_turned_round() -> None:
    assert corrected(replace(INSIDE, contact="outside"), PLAIN) == [0.0, 5.0, 11.0, 6.0]


def test_contact_angle_shrinks_every_reading() -> None:
    half = corrected(INSIDE, replace(PLAIN, contact_angle_deg=60.0))
    assert half == pytest.approx([0.0, -2.5, -5.5, -3.0], abs=1e-12)
    assert contact_factor(-60.0) == contact_factor(60.0) == pytest.approx(0.5)


def test_sag_is_nothing_at_12_and_whole_at_6() -> None:
    assert corrected(INSIDE, replace(PLAIN, sag=sag_test([2.0]))) == pytest.approx(
        [0.0, -6.0, -13.0, -7.0]
    )


def test_a_bracket_that_droops_in_a_true_bore_shows_no_offset() -> None:
    """The plunger is pushed in by the whole droop at the bottom: readings 0, 1, 2, 1."""
    job = make_job((0.0, 1.0, 2.0, 1.0), indicator={"sag": 2.0})
    assert bore_of(job)["offset"] == pytest.approx(0.0, abs=1e-12)


def test_a_drooping_bracket_on_a_true_spigot_shows_no_offset() -> None:
    """Outside, the same droop lets the plunger out at the bottom."""
    job = make_job((0.0, -1.0, -2.0, -1.0), contact="outside", indicator={"sag": 2.0})
    assert bore_of(job)["offset"] == pytest.approx(0.0, abs=1e-12)


def test_sag_that_was_not_measured_makes_the_bore_read_high() -> None:
    """It is anything from nothing to the allowance: half of that total is a quarter in height."""
    guess = make_job((0.0, -5.0, -11.0, -6.0), indicator={"sag": None, "sag_allowance": 4.0})
    plain = make_job((0.0, -5.0, -11.0, -6.0), indicator={"sag": 0.0})
    assert bore_of(guess)["center"][0] == bore_of(plain)["center"][0]
    assert bore_of(guess)["center"][1] == pytest.approx(bore_of(plain)["center"][1] - 1.0)


def test_lift_acts_like_sag() -> None:
    by_lift = corrected(INSIDE, PLAIN, Crank("horizontal", 2.0))
    assert by_lift == corrected(INSIDE, replace(PLAIN, sag=sag_test([2.0])))
    assert vertical_shift(replace(PLAIN, sag=sag_test([1.5])), Crank("horizontal", 2.0)) == 3.5


def test_a_crank_on_end_has_neither_droop_nor_lift() -> None:
    standing = Crank("vertical", 2.0)
    assert vertical_shift(replace(PLAIN, sag=sag_test([1.5])), standing) == 0.0
    assert corrected(INSIDE, replace(PLAIN, sag=sag_test([1.5])), standing) == [
        0.0,
        -5.0,
        -11.0,
        -6.0,
    ]


@given(st.floats(-360.0, 360.0), st.floats(0.0, 50.0))
def test_droop_is_a_first_harmonic_about_its_half(angle: float, total: float) -> None:
    opposite = droop_at(angle, total) + droop_at(angle + 180.0, total)
    assert opposite == pytest.approx(total, abs=1e-9)
    assert -1e-12 <= droop_at(angle, total) <= total + 1e-12


def test_drift_is_spread_over_the_sweep() -> None:
    assert without_drift((0.0, 1.0, 2.0, 3.0), 4.0) == (0.0, 0.0, 0.0, 0.0)
    assert without_drift((0.0, None, 2.0, 3.0), 4.0) == (0.0, None, 0.0, 0.0)


def test_drift_that_is_not_known_is_left() -> None:
    assert without_drift((0.0, 1.0), None) == (0.0, 1.0)


def test_drift_goes_by_the_order_in_which_readings_were_taken() -> None:
    """The last reading of the sweep has most of the drift, wherever on the clock it is."""
    clockwise = make_job((0.0, -4.0, -10.0, -3.0), closing=[2.0])
    other_way = make_job((0.0, -3.0, -10.0, -4.0), positions=(0, 270, 180, 90), closing=[2.0])
    assert bore_of(clockwise)["center"] != bore_of(other_way)["center"]


@given(
    st.floats(0.0, 360.0), st.floats(0.0, 10.0), st.floats(0.0, 6.0), st.floats(0.0, 6.0),
    st.floats(-50.0, 50.0), st.floats(-3.0, 3.0), st.sampled_from(["inside", "outside"]),
    st.sampled_from(["plunger_in", "plunger_out"]),
)  # fmt: skip
def test_every_known_effect_is_taken_out_again(
    toward: float, offset: float, sag: float, lift: float, angle: float, drift: float,
    contact: str, plus_when: str,
) -> None:  # fmt: skip
    """Whatever dial is used on a known bore, the same centre comes out.

    The readings are made here in the order of the causes: wall, droop, contact, dial.
    """
    x, y = offset * math.sin(math.radians(toward)), offset * math.cos(math.radians(toward))
    positions = (30.0, 80.0, 160.0, 200.0, 270.0)
    sweep = []
    for i, a in enumerate(positions):
        u = (math.sin(math.radians(a)), math.cos(math.radians(a)))
        pushed = -(x * u[0] + y * u[1]) + (sag + lift) * (1.0 - u[1]) / 2.0
        pushed *= 1.0 if contact == "inside" else -1.0
        shown = pushed / math.cos(math.radians(angle)) + drift * i / len(positions)
        sweep.append(shown if plus_when == "plunger_in" else -shown)
    job = make_job(
        sweep, positions=positions, contact=contact,
        closing=[drift if plus_when == "plunger_in" else -drift],
        indicator={"sag": sag, "plus_when": plus_when, "contact_angle_deg": angle},
        crank={"lift": lift},
    )  # fmt: skip
    bore = bore_of(job)
    assert bore["center"] == pytest.approx([x, y], abs=1e-9)
    if offset > 1e-3:
        assert apart(bore["direction_deg"], toward) < 1e-3
        assert apart(bore["move_deg"], toward + 180.0) < 1e-3


# Faces and companions ----------------------------------------------------------------------

ROW = (0.0, 2.0, 6.0, None)
FACE = FaceSweeps(3.0, "forward", "free", None, Sweeps(QUARTERS, (ROW,), (None,)))


@pytest.mark.parametrize(
    ("plunger", "plus_when", "sense"),
    [
        ("forward", "plunger_in", 1.0), ("rearward", "plunger_in", -1.0),
        ("forward", "plunger_out", -1.0), ("rearward", "plunger_out", 1.0),
    ],
)  # fmt: skip
def test_a_face_is_plus_where_it_stands_rearward(
    plunger: Plunger, plus_when: str, sense: float
) -> None:
    dial = replace(PLAIN, plus_when=plus_when, contact_angle_deg=60.0)  # type: ignore[arg-type]  # a text from a table of them
    (row,) = corrected_face(replace(FACE, plunger=plunger), dial).readings
    assert row == pytest.approx((0.0, sense * 1.0, sense * 3.0, None), abs=1e-12)


def test_droop_and_lift_do_nothing_to_a_face() -> None:
    (row,) = corrected_face(FACE, replace(PLAIN, sag=sag_test([5.0]))).readings
    assert row == ROW


def test_two_dials_give_half_their_difference() -> None:
    """Where both were read; a return to zero belongs to the first dial alone."""
    both = replace(FACE, opposite=((0.0, -2.0, None, 1.0),))
    (row,) = corrected_face(both, PLAIN).readings
    assert row == (0.0, 2.0, None, None)
    drifting = replace(both, sweeps=Sweeps(QUARTERS, (ROW,), (4.0,)))
    (row,) = corrected_face(drifting, PLAIN).readings
    assert row == (0.0, 1.5, None, None)  # a quarter of the drift taken out at the second reading


@pytest.mark.parametrize(
    ("kind", "contact", "plunger", "sense"),
    [
        ("pilot_bore", "inside", "rearward", 1.0), ("crank_flange", "outside", "forward", -1.0),
        ("flywheel_face", "outside", "forward", 1.0), ("flywheel_face", "inside", "rearward", -1.0),
    ],
)  # fmt: skip
def test_a_companion_is_read_by_what_was_swept(
    kind: RotatingPartKind, contact: Contact, plunger: Plunger, sense: float
) -> None:
    """Inside or outside counts for a bore, forward or rearward for a face; droop for neither."""
    part = RotatingPart(kind, contact, plunger, None, Sweeps(QUARTERS, (ROW,), (None,)))
    (row,) = corrected_rotating_part(part, replace(PLAIN, sag=sag_test([5.0]))).readings
    assert row == pytest.approx((0.0, sense * 2.0, sense * 6.0, None), abs=1e-12)


# Sag at another reach ------------------------------------------------------------------------

TESTED = replace(PLAIN, sag=sag_test([2.0]), sag_reach=8.0)


def test_sag_holds_for_the_reach_of_its_test() -> None:
    for reach in (None, 8.0):
        known = replace(TESTED, reach=reach)
        assert known.sag_range == (2.0, 2.0)
        assert vertical_shift(known, LYING) == 2.0
    assert replace(PLAIN, sag=sag_test([2.0]), reach=5.0).sag_range == (2.0, 2.0)


def test_the_middle_is_taken_out_at_another_reach() -> None:
    """Twice 1.5^4 = 10.125 at the longer reach, 2/16 at half of it."""
    assert vertical_shift(replace(TESTED, reach=12.0), LYING) == pytest.approx(6.0625, abs=1e-12)
    assert vertical_shift(replace(TESTED, reach=4.0), LYING) == pytest.approx(1.0625, abs=1e-12)


@pytest.mark.parametrize("power", [0, 2, 3, 4])
@pytest.mark.parametrize("ratio", [0.4, 0.9, 1.1, 1.9])
def test_whatever_gives_in_a_bracket_lies_in_the_range(power: int, ratio: float) -> None:
    low, high = replace(TESTED, reach=8.0 * ratio).sag_range
    assert low - 1e-12 <= 2.0 * ratio**power <= high + 1e-12


def test_a_test_of_no_sag_is_none_at_any_reach() -> None:
    assert replace(TESTED, sag=sag_test([0.0]), reach=12.0).sag_range == (0.0, 0.0)
