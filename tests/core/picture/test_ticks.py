"""The ticks tell how a face lies: faces of ticks alone, under known projections."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from sweepsheet.picture import ticks as module
from sweepsheet.picture.outline import Grey, Oval, fit_oval
from sweepsheet.picture.ticks import Lie, find_ticks

SIDE = 240
STRAIGHT = (95.0, 0.0, 120.0, 0.0, 95.0, 120.0, 0.0, 0.0)
ASLANT = (84.0, 3.0, 124.0, 1.0, 92.0, 117.0, 0.06, -0.04)


def ticks(h: tuple[float, ...], divisions: int) -> Grey:
    """Dark ticks from 0.95 to 1.05 of the radius, and nothing else."""
    back = np.linalg.inv(np.array([*h, 1.0]).reshape(3, 3))
    ys, xs = np.mgrid[0:SIDE, 0:SIDE] + 0.5
    u, v, w = np.tensordot(back, np.array([xs, ys, np.ones_like(xs)]), axes=1)
    u, v = u / w, v / w
    wave = 0.5 + 0.5 * np.cos(divisions * np.arctan2(u, -v))
    radius = np.hypot(u, v)
    dark = 150.0 * wave * ((radius > 0.95) & (radius < 1.05))
    return Grey((200.0 - dark).astype(np.uint8).tobytes(), SIDE, SIDE)


@pytest.mark.parametrize("divisions", [40, 60, 100])
@pytest.mark.parametrize("h", [STRAIGHT, ASLANT])
def test_the_projection_is_found(h: tuple[float, ...], divisions: int) -> None:
    """From an outline that is only nearly right; to a twentieth of a division everywhere."""
    places = [Lie(h, 1.0).at(math.sin(w / 5.0), math.cos(w / 5.0)) for w in range(32)]
    around = fit_oval([(x - 120.0, y - 120.0) for x, y in places], (122.0, 119.0))
    assert around is not None
    lie = find_ticks(ticks(h, divisions), replace(around, a=around.a * 1.03), divisions)
    assert lie is not None
    assert lie.agreement > 0.95
    true = Lie(h, 1.0)
    turns = []
    for i in range(24):
        way = math.tau * i / 24
        x, y = true.at(0.6 * math.sin(way), -0.6 * math.cos(way))
        back = np.linalg.inv(np.array([*lie.h, 1.0]).reshape(3, 3)) @ (x, y, 1.0)
        turns.append(math.atan2(back[0], -back[1]) - way)
    middle = math.atan2(sum(map(math.sin, turns)), sum(map(math.cos, turns)))
    off = [math.remainder(turn - middle, math.tau) * divisions / math.tau for turn in turns]
    assert max(map(abs, off)) < 0.05
    # A tick or the middle between two lies at the top of either.
    assert math.remainder(middle * divisions / math.tau, 0.5) == pytest.approx(0.0, abs=0.06)
    assert lie.flatness == pytest.approx(true.flatness, abs=0.02)


def test_a_wrong_number_of_divisions_has_no_agreement() -> None:
    grey = ticks(STRAIGHT, 100)
    for divisions in (50, 80, 99, 120):
        lie = find_ticks(grey, Oval(120.0, 120.0, 95.0, 0.0, 95.0), divisions)
        assert lie is None or lie.agreement < 0.85


def test_flatness_is_the_cosine_of_the_slant() -> None:
    for slant in (0.0, 20.0, 60.0):
        c = math.cos(math.radians(slant))
        assert Lie((80.0, 0.0, 9.0, 0.0, 80.0 * c, 9.0, 0.0, 0.0), 1.0).flatness == pytest.approx(c)


def test_too_little_of_it_in_the_picture() -> None:
    assert find_ticks(ticks(STRAIGHT, 100), Oval(60.0, 120.0, 95.0, 0.0, 95.0), 100) is None
    assert not Lie((90.0, 0.0, 120.0, 0.0, 90.0, 120.0, 0.9, 0.9), 1.0).within(
        Grey(b"", SIDE, SIDE)
    )


def test_no_radius_is_no_projection() -> None:
    assert module._projection(Oval(0.0, 0.0, 1.0, 0.0, 1.0), [0.0] * 5, [0.0] * 5, 40) is None  # noqa: SLF001 - can't be reached by a picture
