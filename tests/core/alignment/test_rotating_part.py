"""Companion sweeps: a dial that stands still, and a part that turns with the crank."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import sheet, solve
from tests.cases.jobs import (
    PERFECT,
    QUARTERS,
    Data,
    apart,
    bore_of,
    codes_of,
    make_job,
    readings_of,
)

FIVES = (10.0, 70.0, 155.0, 215.0, 300.0)


def companion_of(row: list[float], indicator: Data = PERFECT, **keys: object) -> Data:
    """What is said of one companion sweep, of the pilot bore where nothing else is said."""
    part = {"kind": "pilot_bore", "sweeps": [row], "closing": [0.0], **keys}
    (found,) = solve(make_job((0, 0, 0, 0), indicator=indicator, companions=[part]))["companions"]
    return dict(found)


@pytest.mark.parametrize(
    ("keys", "plus_when", "direction"),
    [
        # Inside: pushed in most where the wall is nearest, opposite to where the bore lies.
        ({"kind": "pilot_bore"}, "plunger_in", 180.0),
        ({"kind": "pilot_bore"}, "plunger_out", 0.0),
        ({"kind": "crank_flange", "contact": "outside"}, "plunger_in", 0.0),
        ({"kind": "crank_flange", "contact": "outside"}, "plunger_out", 180.0),
        ({"kind": "flywheel_face"}, "plunger_in", 0.0),
        ({"kind": "flywheel_face", "plunger": "rearward"}, "plunger_in", 180.0),
        ({"kind": "flywheel_face", "plunger": "rearward"}, "plunger_out", 0.0),
    ],
)
def test_where_it_points(keys: Data, plus_when: str, direction: float) -> None:
    found = companion_of([3.0, 0.0, -3.0, 0.0], {**PERFECT, "plus_when": plus_when}, **keys)
    assert apart(found["direction_deg"], direction) < 1e-9
    assert (found["tir"], found["offset"]) == pytest.approx((6.0, 3.0), abs=1e-12)


@given(st.floats(-9.0, 9.0), st.floats(-9.0, 9.0), st.floats(-50.0, 50.0), st.floats(0.0, 300.0))
def test_zero_and_turn_change_nothing_but_the_mark(
    x: float, y: float, zero: float, turn: float
) -> None:
    first = companion_of(readings_of(x, y, FIVES), positions_deg=FIVES)
    turned = [(a + turn) % 360.0 for a in FIVES]
    second = companion_of([m + zero for m in readings_of(x, y, FIVES)], positions_deg=turned)
    assert second["tir"] == pytest.approx(first["tir"], abs=1e-9)
    if math.hypot(x, y) > 1e-3:
        assert apart(second["direction_deg"], first["direction_deg"] + turn) < 1e-6


def test_a_dial_that_stands_still_does_not_droop() -> None:
    """... nor does the crank's lift matter: the same at every reading."""
    plain = companion_of([3.0, 1.0, -3.0, -1.0])
    drooping = companion_of([3.0, 1.0, -3.0, -1.0], {**PERFECT, "sag": 4.0})
    assert (drooping["tir"], drooping["offset_pm"]) == (plain["tir"], plain["offset_pm"])
    unknown = companion_of([3.0, 1, -3, -1], {**PERFECT, "sag": None, "sag_allowance": 9.0})
    assert unknown["offset_pm"] == plain["offset_pm"]


@pytest.mark.parametrize(("tir", "verdict"), [(2.99, "within"), (3.01, "outside")])
def test_its_own_limit_is_a_tir(tir: float, verdict: str) -> None:
    """The commonest slip, a TIR held against an offset, would pass both."""
    half = tir / 2.0
    assert companion_of([half, 0.0, -half, 0.0], limit=3.0)["verdict"] == verdict


def test_without_a_limit_it_is_told_and_not_judged() -> None:
    found = companion_of([3.0, 0.0, -3.0, 0.0])
    assert found["verdict"] is found["probability_within"] is None
    assert found["tir"] == pytest.approx(6.0)


def test_warp_of_a_flywheel_face_is_not_its_runout() -> None:
    found = companion_of([2.0, 0.0, 2.0, 0.0], kind="flywheel_face")
    assert found["tir"] == pytest.approx(0.0, abs=1e-12)
    assert found["total_reading"] == pytest.approx(2.0, abs=1e-12)


def test_it_changes_nothing_of_the_bore() -> None:
    part = {"kind": "pilot_bore", "limit": 1.0, "sweeps": [readings_of(5.0, 0.0)]}
    alone = make_job(readings_of(0.0, -7.0))
    beside = {**alone, "companions": [part]}
    assert bore_of(beside) == bore_of(alone)
    assert solve(beside)["dowel_options"] == solve(alone)["dowel_options"]
    assert "companion-outside" in codes_of(beside)


def test_the_sheet_says_that_dowels_do_not_cure_it() -> None:
    part = {"kind": "crank_flange", "contact": "outside", "sweeps": [readings_of(1.0, 0.0)]}
    text = sheet(make_job((0, 0, 0, 0), companions=[part, {**part, "kind": "flywheel_face"}]))
    assert "Turning with the crank: crank flange" in text
    assert text.count("moving the housing does not change it") == 2


def test_positions_of_its_own() -> None:
    found = companion_of(readings_of(1.0, 2.0, FIVES), positions_deg=FIVES)
    assert found["tir"] == pytest.approx(2.0 * math.hypot(1.0, 2.0), abs=1e-9)
    assert len(found["residuals"][0]) == len(FIVES) != len(QUARTERS)
