"""The outline of a dial: ellipses of known shape, and points that are wrong."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest

from sweepsheet.picture.outline import Grey, Oval, find_outline, fit_oval


def on(oval: Oval, n: int = 64) -> list[tuple[float, float]]:
    ways = [math.tau * i / n for i in range(n)]
    return [(oval.x + oval.a * math.cos(w) + oval.b * math.sin(w),
             oval.y + oval.b * math.cos(w) + oval.c * math.sin(w)) for w in ways]  # fmt: skip


def parts(oval: Oval | None) -> tuple[float, ...]:
    assert oval is not None
    return oval.x, oval.y, oval.a, oval.b, oval.c


@pytest.mark.parametrize("seed", range(8))
def test_an_ellipse_is_found_from_its_points(seed: int) -> None:
    rng = random.Random(seed)
    oval = Oval(rng.uniform(-9, 9), rng.uniform(-9, 9), rng.uniform(60, 90), rng.uniform(-9, 9),
                rng.uniform(60, 90))  # fmt: skip
    assert parts(fit_oval(on(oval))) == pytest.approx(parts(oval), abs=1e-6)
    moved = fit_oval(on(oval), (120.0, 110.0))
    assert parts(moved)[:2] == pytest.approx((oval.x + 120.0, oval.y + 110.0), abs=1e-6)


def test_its_axes_are_those_of_the_matrix() -> None:
    oval = Oval(0.0, 0.0, 70.0, 12.0, 85.0)
    assert oval.axes == pytest.approx(np.linalg.eigvalsh([[70.0, 12.0], [12.0, 85.0]])[::-1])


def test_a_few_wrong_points_hardly_count() -> None:
    oval = Oval(4.0, -3.0, 80.0, 5.0, 66.0)
    points = on(oval)
    points[10:18] = [(1.15 * x, 1.15 * y) for x, y in points[10:18]]
    assert parts(fit_oval(points)) == pytest.approx(parts(oval), abs=0.6)


def test_what_is_no_ellipse_is_none() -> None:
    assert fit_oval([(3.0, 4.0)] * 9) is None
    hyperbola = [
        (s * math.cosh(t / 4.0), math.sinh(t / 4.0)) for t in range(-8, 9) for s in (1, -1)
    ]
    assert fit_oval(hyperbola) is None


@pytest.mark.parametrize("every", [1, 2])
@pytest.mark.parametrize(("width", "height"), [(240, 240), (260, 220)])
def test_the_outline_of_a_disc_in_noise(width: int, height: int, every: int) -> None:
    """A dark disc with a bright spot in it, 80 by 64 pixels, off the middle of the picture."""
    rng = random.Random(width)
    pixels = bytearray()
    for y in range(height):
        for x in range(width):
            inside = ((x - width / 2 - 6.0) / 80.0) ** 2 + (
                (y - height / 2 + 5.0) / 64.0
            ) ** 2 < 1.0
            spot = math.hypot(x - width / 2 - 30.0, y - height / 2) < 8.0
            level = 250 if spot else 60 if inside else 170
            pixels.append(min(255, level + rng.randrange(12)))
    found = find_outline(Grey(bytes(pixels), width, height), every)
    assert found is not None
    assert (found.x, found.y) == pytest.approx((width / 2 + 6.0, height / 2 - 5.0), abs=1.5)
    assert found.axes == pytest.approx((80.0, 64.0), abs=2.5)
