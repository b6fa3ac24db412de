"""Which positions can be fitted."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.job.positions import largest_gap, position_faults
from tests.cases.jobs import QUARTERS, Reading


def faults_of(positions: list[float], *sweeps: list[Reading]) -> list[tuple[str, str]]:
    found = position_faults(positions, sweeps or ([0.0] * len(positions),))
    return [(fault.key, fault.where) for fault in found]


@pytest.mark.parametrize(
    ("positions", "gap"),
    [
        (QUARTERS, 90.0), ((0.0, 120.0, 240.0), 120.0), ((350.0, 10.0, 180.0), 170.0),
        ((5.0,), 360.0), ((270.0, 0.0, 90.0), 180.0),
    ],
)  # fmt: skip
def test_largest_gap(positions: tuple[float, ...], gap: float) -> None:
    assert largest_gap(positions) == gap


@given(st.lists(st.floats(0.0, 359.0), min_size=1, max_size=12))
def test_largest_gap_does_not_ask_for_order(positions: list[float]) -> None:
    assert largest_gap(positions) == largest_gap(sorted(positions, reverse=True))


@pytest.mark.parametrize(
    "positions",
    [[0.0, 90.0, 180.0, 270.0], [0.0, 100.0, 200.0], [0.0, 2.5, 90.0, 181.0], [240.0, 0.0, 120.0]],
)
def test_positions_that_will_do(positions: list[float]) -> None:
    assert faults_of(positions) == []


def test_a_blocked_position_will_do() -> None:
    assert faults_of([0.0, 90.0, 180.0, 270.0], [0.0, None, 1.0, 2.0]) == [
        ("fault.half_turn", "sweeps.0")
    ]
    assert faults_of([0.0, 60.0, 120.0, 180.0, 270.0], [0.0, None, 1.0, 2.0, 3.0]) == []


@pytest.mark.parametrize(
    ("positions", "where"),
    [
        ([0.0, 90.0, 90.0, 270.0], "positions_deg.2"),
        ([0.0, 120.0, 240.0, 359.5], "positions_deg.3"),
        ([90.0, 180.9, 180.0, 300.0], "positions_deg.2"),
        ([0.0, 2.4, 120.0, 240.0], "positions_deg.1"),
    ],
)
def test_position_faults_failure_the_same_place_twice(positions: list[float], where: str) -> None:
    assert faults_of(positions) == [("fault.same_position", where)]


@pytest.mark.parametrize(
    "positions",
    [[0.0, 90.0, 180.0], [0.0, 60.0, 120.0], [300.0, 0.0, 60.0, 100.0], [10.0, 100.0, 190.0]],
)
def test_position_faults_failure_all_in_half_a_turn(positions: list[float]) -> None:
    assert faults_of(positions) == [("fault.half_turn", "sweeps.0")]


def test_position_faults_failure_too_few_readings() -> None:
    assert faults_of(list(QUARTERS), [0.0, None, 1.0, None], [0.0, 1.0, 2.0, 3.0]) == [
        ("fault.few_readings", "sweeps.0")
    ]


def test_every_sweep_must_stand_by_itself() -> None:
    """Two halves of a turn do not make a whole one, since each has a zero of its own."""
    first: list[Reading] = [0.0, 1.0, 2.0, None, None, None]
    second: list[Reading] = [None, None, None, 0.0, 1.0, 2.0]
    assert [
        key for key, _ in faults_of([0.0, 60.0, 120.0, 180.0, 240.0, 300.0], first, second)
    ] == ["fault.half_turn"] * 2
