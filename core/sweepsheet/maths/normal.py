"""Regions and chances of a plane normal distribution: the ellipse, and being inside a circle."""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.halving import halved
from sweepsheet.maths.vector import ZERO, Sym2, Vec2

# The square root of the 95 % point of chi-squared with two degrees of freedom,
# sqrt(-2 ln 0.05): the half axes of the 95 % ellipse in standard deviations (JCGM 102, 6.5.2).
K_95_PLANE = math.sqrt(-2.0 * math.log(0.05))
K_99_PLANE = math.sqrt(-2.0 * math.log(0.01))
# Two-sided 95 % of one normal quantity: what "plus or minus" means in all we say.
K_95_LINE = 1.959963984540054
K_99_LINE = 2.5758

# One-sided 95 % of one normal quantity (ISO 14253-1's guard band).
K_95_ONE_SIDE = 1.6448536269514722

_SIGMAS = 9.0
# Intervals of Simpson's rule: enough down to a spread of a thirtieth of the radius, and more below.
_INTERVALS, _MOST_INTERVALS = 120, 4000


@dataclass(frozen=True, slots=True)
class Ellipse:
    """The 95 % region: half axes, major first, and the clock angle of the major (0 to 180)."""

    major: float
    minor: float
    at_deg: float


def ellipse95(covariance: Sym2) -> Ellipse:
    """The ellipse that holds a plane normal quantity with probability 0.95.

    >>> e = ellipse95(Sym2(1.0, 0.0, 4.0))
    >>> round(e.major, 4), round(e.minor, 4), e.at_deg
    (4.8955, 2.4477, 0.0)
    """
    axes = covariance.principal()
    return Ellipse(
        K_95_PLANE * math.sqrt(axes.major),
        K_95_PLANE * math.sqrt(axes.minor),
        direction_of(axes.axis) % 180.0,
    )


def probability_inside(center: Vec2, covariance: Sym2, radius: float) -> float:
    """The probability that a plane normal quantity lies within ``radius`` of the origin.

    ``center`` is its mean. Along the minor principal axis the normal density is integrated by
    Simpson's rule over nine standard deviations each way; across it the exact normal
    probability of the chord is taken. With ``x = radius sin t`` the ends of the chord do
    no harm. The error stays below 1e-9 (tests compare with the Rice and the non-central
    chi-squared distribution). Where the covariance is nothing, the answer is 0 or 1.

    >>> round(probability_inside(Vec2(2.0, 0.0), Sym2(1.0, 0.0, 1.0), 3.0), 7)
    0.7856379
    """
    axes = covariance.principal()
    along, across = math.sqrt(axes.minor), math.sqrt(axes.major)
    mu_along, mu_across = center.dot(axes.cross_axis), center.dot(axes.axis)
    if across == 0.0:
        return 1.0 if center.length <= radius else 0.0
    # A minor axis that is nothing beside the major is a line.
    if along < 1e-6 * across:
        if abs(mu_along) > radius:
            return 0.0
        return _chord(mu_across, across * math.sqrt(2.0), math.sqrt(radius**2 - mu_along**2))

    low = max(-radius, mu_along - _SIGMAS * along)
    high = min(radius, mu_along + _SIGMAS * along)
    if low >= high:
        return 0.0
    start, stop = math.asin(low / radius), math.asin(high / radius)
    # Where the centre lies at an end of the axis, the chord grows from nothing past its own spread
    # within ``across / radius`` of an interval of about ``6 sqrt(along / radius)``.
    wanted = 2 * math.ceil(11.0 * math.sqrt(radius / across))
    intervals = min(_MOST_INTERVALS, max(_INTERVALS, wanted))
    width = (stop - start) / intervals
    peak, scale = along * math.sqrt(2.0 * math.pi), across * math.sqrt(2.0)
    terms = []
    for i in range(intervals + 1):
        t = start + i * width
        half_chord = radius * math.cos(t)
        z = (radius * math.sin(t) - mu_along) / along
        density = math.exp(-z * z / 2.0) / peak
        simpson = 1.0 if i in (0, intervals) else 4.0 if i % 2 else 2.0
        terms.append(simpson * density * half_chord * _chord(mu_across, scale, half_chord))
    return min(1.0, max(0.0, math.fsum(terms) * width / 3.0))


def _chord(mean: float, scale: float, half: float) -> float:
    """The probability that a normal quantity lies within plus or minus ``half``.

    ``scale`` is its standard deviation times the square root of two.
    """
    return (math.erf((half - mean) / scale) + math.erf((half + mean) / scale)) / 2.0


def radius95(covariance: Sym2) -> float:
    """The radius of the circle about its mean that holds a plane normal quantity with 0.95.

    By halving, below the larger half axis of the 95 % ellipse, which never holds less.

    >>> round(radius95(Sym2(1.0, 0.0, 1.0)), 4), round(radius95(Sym2(0.0, 0.0, 1.0)), 4)
    (2.4477, 1.96)
    """
    most = K_95_PLANE * math.sqrt(covariance.principal().major)
    return halved(lambda r: probability_inside(ZERO, covariance, r), 0.95, 0.0, most, times=40)[1]


def probability_at_least(mean: float, sigma: float, least: float) -> float:
    """The probability that one normal quantity is not below ``least``; 0 or 1 where it is sure.

    >>> round(probability_at_least(1.0, 1.0, 0.0), 6)
    0.841345
    >>> probability_at_least(1.0, 0.0, 1.0)
    1.0
    """
    if sigma == 0.0:
        return 1.0 if mean >= least else 0.0
    return math.erfc((least - mean) / (sigma * math.sqrt(2.0))) / 2.0


def one_sided_factor(probability: float) -> float:
    """The standard deviations that a normal quantity stays above with this probability.

    The inverse of the distribution function, by halving, for 0.5 and above and short of 1.

    >>> round(one_sided_factor(0.95), 6), one_sided_factor(0.5)
    (1.644854, 0.0)
    """
    return halved(lambda k: probability_at_least(k, 1.0, 0.0), probability, 0.0, _SIGMAS)[0]


def offset_half_width(center: Vec2, covariance: Sym2) -> float:
    """The 95 % half width of the offset, along the direction of the centre.

    At the very centre, where no direction is better than another, along the worst one.

    >>> round(offset_half_width(Vec2(0.0, 5.0), Sym2(4.0, 0.0, 1.0)), 4)
    1.96
    """
    if center.is_zero:
        return K_95_LINE * math.sqrt(covariance.principal().major)
    return K_95_LINE * math.sqrt(covariance.along(center.unit()))


def direction_half_width(center: Vec2, covariance: Sym2) -> float | None:
    """The 95 % half width of the direction in degrees, or ``None`` where it is not known.

    From the standard deviation across the direction over the offset; not known where that
    spread reaches the crank axis.

    >>> round(direction_half_width(Vec2(0.0, 19.6), Sym2(1.0, 0.0, 1.0)), 2)
    5.74
    >>> direction_half_width(Vec2(0.0, 2.0), Sym2(1.0, 0.0, 1.0)) is None
    True
    """
    if center.is_zero:
        return None
    across = Vec2(-center.y, center.x).unit()
    spread = K_95_LINE * math.sqrt(covariance.along(across))
    if spread >= center.length or axis_in_region(center, covariance):
        return None
    return math.degrees(math.asin(spread / center.length))


def axis_in_region(center: Vec2, covariance: Sym2) -> bool:
    """Whether the 95 % ellipse about a centre reaches the crank axis.

    >>> axis_in_region(Vec2(2.0, 0.0), Sym2(1.0, 0.0, 1.0))
    True
    >>> axis_in_region(Vec2(3.0, 0.0), Sym2(1.0, 0.0, 1.0))
    False
    """
    axes = covariance.principal()
    along, across = center.dot(axes.axis), center.dot(axes.cross_axis)
    if axes.minor > 0:
        # By the axes, and not by the inverse: the determinant of a tiny covariance is nothing.
        return along * along / axes.major + across * across / axes.minor <= K_95_PLANE**2
    # A region that is a line, or a point.
    if abs(across) > 0:
        return False
    return center.length <= K_95_PLANE * math.sqrt(axes.major)
