"""A straight line through points of which some are wrong."""

from __future__ import annotations

import math
from collections.abc import Sequence

from sweepsheet.maths.median import median

# Below this no point is better than another, in radii.
_LEAST = 0.001
# The standard deviation of a normal quantity over the median of its size.
_MAD = 1.4826
# A point farther off than this many standard deviations hardly counts.
_OFF = 2.5


def fit_straight(
    points: Sequence[tuple[float, float]], sigma_zero: float
) -> tuple[float, float, float]:
    """``y`` at zero, slope, and the slope's standard uncertainty, of a line through points.

    Least squares with weights ``1 / (1 + (d / 2.5 s)^4)`` of the distances d, ``s = 1.4826
    median(d)``, found again and again (Holland and Welsch, Communications in Statistics A6, 1977).
    What is known beforehand of y at zero, ``0 +- sigma_zero``, counts as one more point.

    >>> points = [(x / 10.0, 0.5 + 0.2 * x / 10.0) for x in range(10)] + [(0.5, 3.0)]
    >>> y, slope, sigma = fit_straight(points, 100.0)
    >>> round(y, 3), round(slope, 3)
    (0.5, 0.2)
    """
    weights = [1.0] * len(points)
    y_zero = slope = 0.0
    noise, variance = 0.01, 1.0
    for _ in range(6):
        sw = (noise / sigma_zero) ** 2 + sum(weights)
        sx = sum(w * x for w, (x, _) in zip(weights, points, strict=True))
        sxx = sum(w * x * x for w, (x, _) in zip(weights, points, strict=True))
        sy = sum(w * y for w, (_, y) in zip(weights, points, strict=True))
        sxy = sum(w * x * y for w, (x, y) in zip(weights, points, strict=True))
        determinant = sw * sxx - sx * sx
        slope = (sw * sxy - sx * sy) / determinant
        y_zero = (sxx * sy - sx * sxy) / determinant
        off = [abs(y - y_zero - slope * x) for x, y in points]
        noise = max(_LEAST, _MAD * median(off))
        weights = [1.0 / (1.0 + (d / (_OFF * noise)) ** 4) for d in off]
        variance = sw / determinant
    return y_zero, slope, noise * math.sqrt(variance)
