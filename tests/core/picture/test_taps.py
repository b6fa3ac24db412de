"""Three taps: signs by hand, and an uncertainty that holds in photos taken aslant."""

from __future__ import annotations

import math
import random

import pytest

from sweepsheet.picture.scale import DialReading, Refusal, Scale
from sweepsheet.picture.taps import Taps, read_taps, slant_sigma_deg, tap_sigma_deg

UP = Scale(100, 1.0, clockwise=True)


def read(taps: Taps, scale: Scale = UP) -> DialReading:
    found = read_taps(taps, scale)
    assert isinstance(found, DialReading)
    return found


@pytest.mark.parametrize(
    ("tip", "clockwise", "reading"),
    [
        ((150.0, 100.0), True, 25.0),
        ((150.0, 100.0), False, -25.0),
        ((50.0, 100.0), True, -25.0),
        ((100.0, 150.0), True, -50.0),
        ((100.0, 50.0), False, 0.0),
        ((135.3553, 64.6447), True, 12.5),
    ],
)
def test_a_needle_a_quarter_round_to_the_right(
    tip: tuple[float, float], *, clockwise: bool, reading: float
) -> None:
    """Zero is up; a picture's y points down. Worked out by hand."""
    taps = Taps((100.0, 100.0), (100.0, 20.0), tip, 1.0, 0.0)
    assert read(taps, Scale(100, 1.0, clockwise)).value == pytest.approx(reading, abs=1e-4)


def test_only_the_angle_between_the_two_counts() -> None:
    """A photo taken upside down, by a phone held however."""
    rng = random.Random(4)
    for _ in range(50):
        a, b, turn = rng.uniform(0, 7), rng.uniform(-1.5, 1.5), rng.uniform(0, 7)
        points = [(60 + r * math.sin(w + turn), 70 - r * math.cos(w + turn))
                  for r, w in ((80.0, a), (55.0, a + b))]  # fmt: skip
        value = read(Taps((60.0, 70.0), points[0], points[1], 1.0, 0.0)).value
        assert value == pytest.approx(100 * b / math.tau, abs=1e-9)


def test_metric_dials_and_those_with_few_divisions() -> None:
    taps = Taps((0.0, 0.0), (0.0, -50.0), (50.0, 0.0), 1.0, 0.0)
    assert read(taps, Scale(100, 0.01, clockwise=True)).value == 0.25
    assert read(taps, Scale(40, 0.5, clockwise=False)).value == -5.0


def test_taps_too_close_are_refused() -> None:
    for zero, tip in (((107.0, 100.0), (180.0, 100.0)), ((180.0, 100.0), (100.0, 92.1))):
        assert read_taps(Taps((100.0, 100.0), zero, tip, 1.0, 0.0), UP) == Refusal("taps")
    assert read(Taps((100.0, 100.0), (108.1, 100.0), (180.0, 100.0), 1.0, 0.0)).pm > 5.0


def photo_of_taps(rng: random.Random, sigma: float, most_deg: float) -> tuple[Taps, float]:
    """Taps on a disc in space, through a pinhole, and the true turn of the needle in degrees."""
    slant, way = math.radians(rng.uniform(0.0, most_deg)), rng.uniform(0.0, math.tau)
    distance = 90.0 * rng.uniform(3.5, 7.0)
    zero, needle = rng.uniform(0.0, math.tau), rng.uniform(0.0, math.tau)

    def tapped(radius: float, angle: float) -> tuple[float, float]:
        x, y = radius * math.sin(angle), -radius * math.cos(angle)
        u, v = x * math.cos(way) + y * math.sin(way), y * math.cos(way) - x * math.sin(way)
        near = distance / (distance + u * math.sin(slant))
        u, v = u * math.cos(slant) * near, v * near
        x, y = u * math.cos(way) - v * math.sin(way), u * math.sin(way) + v * math.cos(way)
        return 120.0 + x + rng.gauss(0.0, sigma), 120.0 + y + rng.gauss(0.0, sigma)

    taps = Taps(tapped(0.0, 0.0), tapped(80.0, zero), tapped(70.0, needle), sigma, most_deg)
    return taps, math.degrees(needle - zero)


@pytest.mark.parametrize("sigma", [0.5, 1.5, 3.0])
@pytest.mark.parametrize("most_deg", [5.0, 20.0, 35.0])
def test_the_half_width_holds_nineteen_of_twenty(sigma: float, most_deg: float) -> None:
    rng = random.Random(f"taps {sigma} {most_deg}")
    held, trials = 0, 3000
    for _ in range(trials):
        taps, true_deg = photo_of_taps(rng, sigma, most_deg)
        found = read(taps)
        held += abs(UP.within_a_turn(found.value - true_deg / 3.6)) <= found.pm
    assert 0.93 <= held / trials <= 0.99


def test_the_parts_of_the_uncertainty() -> None:
    """A short arrow is worth less; the middle's share goes where both arrows are one."""
    far, near = (0.0, -80.0), (0.0, -20.0)
    assert tap_sigma_deg(far, near, 1.0) == pytest.approx(
        math.degrees(math.sqrt(1 / 80**2 + 1 / 20**2 + (1 / 20 - 1 / 80) ** 2))
    )
    assert tap_sigma_deg(far, (0.0, 80.0), 2.0) == pytest.approx(
        2.0 * math.degrees(math.sqrt(2 / 80**2 + (2 / 80) ** 2))
    )
    assert slant_sigma_deg(-90.0, 35.0) == slant_sigma_deg(90.0, 35.0) > slant_sigma_deg(30.0, 35.0)
