"""The needle's line, and lines through points of which some are wrong."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest

from sweepsheet.picture import needle as module
from sweepsheet.picture.needle import find_needle, marks_of, unrolled
from sweepsheet.picture.outline import Grey
from sweepsheet.picture.straight import fit_straight
from sweepsheet.picture.ticks import Lie

SIDE = 240
LIE = Lie((90.0, 0.0, 120.0, 0.0, 90.0, 120.0, 0.0, 0.0), 1.0)


def drawn(angle: float, width: float, beside: float = 0.0, ink: int = 20, paper: int = 200) -> Grey:
    """A needle alone: pixels by how much of them lies on it."""
    pixels = []
    for y in range(SIDE):
        for x in range(SIDE):
            u, v = (x + 0.5 - 120.0) / 90.0, (y + 0.5 - 120.0) / 90.0
            along = u * math.sin(angle) - v * math.cos(angle)
            off = abs(u * math.cos(angle) + v * math.sin(angle) - beside)
            share = min(1.0, max(0.0, (width / 2.0 - off) * 90.0 + 0.5))
            pixels.append(round(paper + (ink - paper) * (share if 0.0 < along < 0.85 else 0.0)))
    return Grey(bytes(pixels), SIDE, SIDE)


@pytest.mark.parametrize("angle", [0.0, 0.3, 1.7, 3.0, 4.4, 6.2])
@pytest.mark.parametrize(
    ("width", "beside"), [(0.02, 0.0), (0.08, 0.0), (0.04, 0.05), (0.04, -0.03)]
)
def test_where_it_points(angle: float, width: float, beside: float) -> None:
    """To less than a tenth of a degree, though it passes beside the middle."""
    grey = drawn(angle, width, beside)
    needle = find_needle(grey, LIE, unrolled(grey, LIE, 100), 0.05)
    assert needle is not None
    assert math.degrees(math.remainder(needle.angle - angle, math.tau)) == pytest.approx(
        0.0, abs=0.1
    )
    assert needle.beside == pytest.approx(beside, abs=0.004)
    assert needle.sign == 1
    assert needle.seen > 0.9
    assert needle.lead > 0.3


def test_a_bright_needle_on_a_dark_face() -> None:
    grey = drawn(2.0, 0.05, ink=210, paper=30)
    needle = find_needle(grey, LIE, unrolled(grey, LIE, 100), 0.05)
    assert needle is not None
    assert needle.sign == -1
    assert needle.angle == pytest.approx(2.0, abs=0.002)


def test_no_needle_is_none() -> None:
    """Nothing at all; a bar too thick for one; a short piece of one."""
    blank = drawn(0.0, 0.0)
    assert find_needle(blank, LIE, unrolled(blank, LIE, 100), 0.05) is None
    thick = drawn(1.0, 0.3)
    assert find_needle(thick, LIE, unrolled(thick, LIE, 100), 0.05) is None


def test_a_needle_of_which_most_is_hidden_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    grey = drawn(1.0, 0.04)
    monkeypatch.setattr(module, "_FEWEST", 60)
    assert find_needle(grey, LIE, unrolled(grey, LIE, 100), 0.05) is None


def test_a_mark_that_runs_out_of_its_section_is_no_spot() -> None:
    """A number printed against the needle; nothing at all; the plain case."""
    spot = module._spot  # noqa: SLF001 - no drawing gets just one section to look so
    assert spot([0.0] * 8 + [90.0] * 13, 90.0) is None
    assert spot([0.0] * 21, 90.0) is None
    assert spot([0.0] * 9 + [90.0] * 3 + [0.0] * 9, 90.0) == (0.0, 3)


def test_a_line_that_strays_from_the_one_voted_for_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    grey = drawn(1.0, 0.04)
    monkeypatch.setattr(module, "fit_straight", lambda *_: (0.0, 0.05, 0.001))
    assert find_needle(grey, LIE, unrolled(grey, LIE, 100), 0.05) is None


def test_marks_are_darker_than_both_sides() -> None:
    ring = [100] * 50 + [200] * 50
    ring[75] = 120
    assert max(marks_of(ring, 0.5, 1)) == 80
    assert marks_of(ring, 0.5, 1).count(80) == 1
    assert max(marks_of(ring, 0.5, -1)) == 0


# Straight lines ---------------------------------------------------------------------------------


def test_a_line_through_good_points_is_that_of_least_squares() -> None:
    """numpy.polyfit is the outside; nothing is known of y at zero."""
    rng = random.Random(2)
    points = [(x / 40.0, 0.1 - 0.3 * x / 40.0 + rng.gauss(0.0, 0.01)) for x in range(60)]
    y_zero, slope, _ = fit_straight(points, 1e6)
    expected = np.polyfit([x for x, _ in points], [y for _, y in points], 1)
    assert (slope, y_zero) == pytest.approx(tuple(expected), abs=0.004)


def test_what_is_known_of_y_at_zero_counts() -> None:
    points = [(0.5 + x / 100.0, 0.02) for x in range(20)]
    assert fit_straight(points, 1e-5)[0] == pytest.approx(0.0, abs=1e-3)
    assert fit_straight(points, 10.0)[0] == pytest.approx(0.02, abs=1e-3)


def test_the_slope_s_uncertainty_holds() -> None:
    rng = random.Random(6)
    held = 0
    for _ in range(600):
        points = [(0.2 + x / 80.0, rng.gauss(0.0, 0.005)) for x in range(48)]
        _, slope, sigma = fit_straight(points, 10.0)
        held += abs(slope) <= 1.96 * sigma
    assert 0.90 <= held / 600 <= 0.99


def test_outliers_hardly_count() -> None:
    points = [(x / 50.0, 0.2 * x / 50.0) for x in range(50)]
    points[30:40] = [(x, 0.3) for x, _ in points[30:40]]
    assert fit_straight(points, 10.0)[1] == pytest.approx(0.2, abs=1e-3)
