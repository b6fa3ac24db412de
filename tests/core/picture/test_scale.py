"""A dial's scale, by hand."""

from __future__ import annotations

import pytest

from sweepsheet.picture.scale import Scale, turned

TEN = Scale(100, 0.1, clockwise=True)


@pytest.mark.parametrize(
    ("reading", "within"),
    [(0.0, 0.0), (4.9, 4.9), (5.0, -5.0), (5.1, -4.9), (-5.0, -5.0), (-5.1, 4.9), (12.0, 2.0)],
)
def test_a_reading_is_told_within_half_a_turn(reading: float, within: float) -> None:
    assert TEN.within_a_turn(reading) == pytest.approx(within)


@pytest.mark.parametrize(
    ("angle", "to"), [(0, 0), (179, 179), (180, -180), (-181, 179), (540, -180)]
)
def test_an_angle_is_told_within_half_a_turn(angle: float, to: float) -> None:
    assert turned(angle) == to


@pytest.mark.parametrize(
    ("angle", "reading"), [(0.0, 0.0), (90.0, 2.5), (-90.0, -2.5), (270.0, -2.5), (180.0, -5.0)]
)
def test_a_needle_points_to_its_reading(angle: float, reading: float) -> None:
    """100 divisions of 0.1: ten a turn; the other way round where the scale is."""
    assert TEN.reading_at(angle) == pytest.approx(reading)
    other = Scale(100, 0.1, clockwise=False).reading_at(angle)
    assert other == pytest.approx(reading if abs(reading) == 5.0 else -reading)
    assert TEN.turn == pytest.approx(10.0)


def test_a_width_is_worth_its_share_of_a_turn() -> None:
    assert TEN.width_of(36.0) == pytest.approx(1.0)
    assert Scale(100, 0.1, clockwise=False).width_of(360.0) == pytest.approx(10.0)


def test_a_needle_that_went_round_more_often_reads_whole_turns_more() -> None:
    assert TEN.turns_to(-4.3, 2) == pytest.approx((-24.3, -14.3, -4.3, 5.7, 15.7))
    assert TEN.turns_to(0.0, 0) == (0.0,)
