"""Directions on the clock."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.maths.clock import (
    clock_time,
    direction_of,
    hour_at,
    normalise,
    parse_position,
    turn_between,
    unit_vector,
)
from sweepsheet.maths.vector import ZERO, Vec2
from tests.cases.jobs import apart

angles = st.floats(-1e4, 1e4)


@pytest.mark.parametrize(
    ("angle", "expected"),
    [(0, 0), (360, 0), (-90, 270), (725, 5), (-1e-20, 0), (-0.0, 0), (359.5, 359.5)],
)
def test_normalise(angle: float, expected: float) -> None:
    assert normalise(angle) == expected
    assert math.copysign(1.0, normalise(angle)) == 1.0  # never minus zero


@given(angles)
def test_normalise_stays_on_the_clock(angle: float) -> None:
    assert 0.0 <= normalise(angle) < 360.0
    assert apart(normalise(angle), angle) < 1e-9


@given(angles, angles)
def test_turn_is_the_shortest_and_arrives(a: float, b: float) -> None:
    turn = turn_between(a, b)
    assert -180.0 < turn <= 180.0
    assert apart(a + turn, b) < 1e-9


@pytest.mark.parametrize(
    ("angle", "expected"),
    [(0, (0, 1)), (90, (1, 0)), (180, (0, -1)), (270, (-1, 0)), (450, (1, 0)), (-90, (-1, 0))],
)
def test_quarter_turns_are_exact(angle: float, expected: tuple[float, float]) -> None:
    """12 is up, 3 is right, seen from behind."""
    assert unit_vector(angle) == Vec2(*expected)


@given(angles)
def test_direction_undoes_the_unit_vector(angle: float) -> None:
    u = unit_vector(angle)
    assert u.length == pytest.approx(1.0, abs=1e-15)
    assert apart(direction_of(u), angle) < 1e-9
    assert apart(direction_of(-u), angle + 180.0) < 1e-9


def test_direction_of_nothing_is_12() -> None:
    assert direction_of(ZERO) == 0.0
    assert direction_of(Vec2(-0.0, -0.0)) in (0.0, 180.0)


@pytest.mark.parametrize(
    ("angle", "expected"),
    [
        (0, "12:00"), (30, "1:00"), (309.8, "10:20"), (359, "12:00"), (358, "11:55"),
        (1.2, "12:00"), (1.3, "12:05"), (-15, "11:30"),
    ],
)  # fmt: skip
def test_clock_time(angle: float, expected: str) -> None:
    assert clock_time(angle) == expected


@pytest.mark.parametrize(
    ("angle", "expected"),
    [
        (0, 12), (5, 12), (355, 12), (5.1, None), (354.9, None), (345, None), (15, None), (30, 1),
        (309.8, None), (180, 6),
    ],
)  # fmt: skip
def test_hour_at(angle: float, expected: int | None) -> None:
    assert hour_at(angle) == expected


@given(st.floats(0, 360))
def test_an_hour_is_within_five_degrees_or_there_is_none(angle: float) -> None:
    hour = hour_at(angle)
    if hour is None:
        assert all(apart(angle, 30.0 * each) > 5.0 - 1e-9 for each in range(12))
    else:
        assert 1 <= hour <= 12
        assert apart(angle, 30.0 * hour) <= 5.0 + 1e-9


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("12", 0), ("3", 90), ("6 o'clock", 180), ("6 o’clock", 180), ("10:30", 315),
        (" 9h ", 270), ("12:59", 29.5), ("45°", 45), ("45 deg", 45), ("-90 degrees", 270),
        ("22,5°", 22.5), ("360 deg", 0), ("0°", 0),
    ],
)  # fmt: skip
def test_parse_position(text: str, expected: float) -> None:
    assert parse_position(text) == expected


@pytest.mark.parametrize(
    "text",
    ["", " ", "0", "13", "45", "3:60", "3:5", "3:", ":30", "-3", "3.5", "361 deg", "noon", "3 3",
     "1e2 deg", "nan", "inf°", "3\n4"],
)  # fmt: skip
def test_parse_position_failure(text: str) -> None:
    """A bare number beyond 12 is not an hour, and degrees must be marked."""
    assert parse_position(text) is None


@given(st.text(max_size=20))
def test_parse_position_of_anything_is_an_angle_or_none(text: str) -> None:
    found = parse_position(text)
    assert found is None or 0.0 <= found < 360.0


@given(st.integers(0, 143))
def test_a_shown_time_is_understood_again(fives: int) -> None:
    assert parse_position(clock_time(fives * 2.5)) == fives * 2.5
