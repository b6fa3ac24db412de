"""Figures are shown as fine as they are known, and no finer."""

from __future__ import annotations

import math
import random

import pytest

from sweepsheet.maths.rounding import step_for, to_step, up_to_step


def test_a_step_is_one_two_or_five_and_never_finer_than_a_tenth() -> None:
    rng = random.Random(7)
    for _ in range(2000):
        half_width = 10.0 ** rng.uniform(-5, 3)
        step = step_for(half_width, 1e-9)
        assert half_width / 10.0 * (1 - 1e-9) <= step <= half_width / 4.0 * (1 + 1e-9)
        lead = step / 10.0 ** math.floor(math.log10(step) + 1e-9)
        assert min(abs(lead - n) for n in (1.0, 2.0, 5.0)) < 1e-9


@pytest.mark.parametrize(
    ("half_width", "finest", "step"),
    [
        (0.0, 0.001, 0.001), (0.01, 0.001, 0.001), (0.0101, 0.001, 0.002), (0.02, 0.001, 0.002),
        (0.021, 0.001, 0.005), (0.05, 0.001, 0.005), (0.051, 0.001, 0.01), (20.0, 0.1, 2.0),
        (0.0, 0.3, 0.5),
    ],
)  # fmt: skip
def test_a_step_by_hand(half_width: float, finest: float, step: float) -> None:
    assert step_for(half_width, finest) == pytest.approx(step)


@pytest.mark.parametrize(
    ("value", "step", "text"),
    [
        (0.2286, 0.005, "0.230"), (-0.2286, 0.005, "-0.230"), (0.2286, 0.001, "0.229"),
        (-0.0004, 0.001, "0.000"), (112.2, 0.5, "112.0"), (112.3, 5.0, "110"), (7.4, 10.0, "10"),
    ],
)  # fmt: skip
def test_a_figure_goes_to_the_nearest_step(value: float, step: float, text: str) -> None:
    assert to_step(value, step) == text


def test_a_half_width_is_shown_no_more_than_a_twentieth_too_small() -> None:
    rng = random.Random(8)
    for _ in range(2000):
        half_width = 10.0 ** rng.uniform(-3, 2)
        step = step_for(half_width, 1e-9)
        shown = float(up_to_step(half_width, step))
        assert 0.95 * half_width <= shown * (1 + 1e-9)
        assert shown <= 1.19 * half_width
    assert up_to_step(0.0, 0.001) == "0.000"
