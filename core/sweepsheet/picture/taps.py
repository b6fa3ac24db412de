"""A reading from three taps: the middle of the dial, the zero of its scale, the needle's tip.

It needs nothing of the picture but that a person sees these three in it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.maths.normal import K_95_LINE
from sweepsheet.picture.scale import DialReading, Refusal, Scale, seen_angle, turned

# Nearer to the middle than this many standard uncertainties of a tap, an angle means nothing.
_TOO_CLOSE = 8.0
# The 95 % point of slant's error over its standard uncertainty: a square of what is even, times the
# cosine of what is even, has no normal distribution's tails.
_K_95_SLANT = 2.3


@dataclass(frozen=True, slots=True)
class Taps:
    """Where was tapped, as (x, y) in pixels, and how well.

    ``sigma``: the standard uncertainty of each coordinate of a tap, in pixels; ``slant_deg``: the
    most by which the photo may have been taken aslant.
    """

    middle: tuple[float, float]
    zero: tuple[float, float]
    tip: tuple[float, float]
    sigma: float
    slant_deg: float


def read_taps(taps: Taps, scale: Scale) -> DialReading | Refusal:
    """The reading that three taps come to, or a refusal where two of them are too close.

    ``angle = seen(tip - middle) - seen(zero - middle)``; see ``Scale.reading_at`` for the reading,
    ``tap_sigma_deg`` and ``slant_sigma_deg`` for its uncertainty. The half width is 1.96 of the one
    and 2.3 of the other, added as squares (JCGM 100, 5.1.2).

    >>> taps = Taps((100.0, 100.0), (100.0, 20.0), (180.0, 100.0), 1.0, 0.0)
    >>> read = read_taps(taps, Scale(100, 1.0, True))
    >>> read.value, round(read.pm, 2)
    (25.0, 0.78)
    >>> read_taps(Taps((100.0, 100.0), (100.0, 20.0), (103.0, 100.0), 1.0, 0.0),
    ...           Scale(100, 1.0, True))
    Refusal(code='taps')
    """
    (mx, my), (zx, zy), (tx, ty) = taps.middle, taps.zero, taps.tip
    zero, tip = (zx - mx, zy - my), (tx - mx, ty - my)
    if min(math.hypot(*zero), math.hypot(*tip)) <= _TOO_CLOSE * taps.sigma:
        return Refusal("taps")
    angle = turned(seen_angle(*tip) - seen_angle(*zero))
    half = math.hypot(
        K_95_LINE * tap_sigma_deg(zero, tip, taps.sigma),
        _K_95_SLANT * slant_sigma_deg(angle, taps.slant_deg),
    )
    return DialReading(scale.reading_at(angle), scale.width_of(half))


def tap_sigma_deg(zero: tuple[float, float], tip: tuple[float, float], sigma: float) -> float:
    """The standard uncertainty, in degrees, of the angle between two arrows from one middle.

    With unit normals ``n`` of the arrows and their lengths ``l``: ``u^2 = sigma^2 (1/l_zero^2 +
    1/l_tip^2 + |n_tip/l_tip - n_zero/l_zero|^2)``; the last term is the middle's, which both
    share (JCGM 100, 5.2).

    >>> round(tap_sigma_deg((0.0, -80.0), (80.0, 0.0), 1.0), 3)
    1.432
    >>> round(tap_sigma_deg((0.0, -80.0), (0.0, -80.0), 1.0), 3)
    1.013
    """
    per_zero, per_tip = zero[0] ** 2 + zero[1] ** 2, tip[0] ** 2 + tip[1] ** 2
    shared = (tip[0] / per_tip - zero[0] / per_zero) ** 2
    shared += (tip[1] / per_tip - zero[1] / per_zero) ** 2
    return math.degrees(sigma * math.sqrt(1.0 / per_zero + 1.0 / per_tip + shared))


def slant_sigma_deg(angle_deg: float, most_deg: float) -> float:
    """The standard uncertainty, in degrees, of an angle on a dial that is seen aslant.

    A dial seen from s off its axis is narrower by ``cos s`` one way. That moves a direction by
    ``e sin 2(a - x)``, ``e = tan^2(s/2)``, so the angle D between two by ``2 e sin D cos y``, where
    every y is as likely as another. With every s up to the most as likely as another the mean
    square of e is ``tan^4(most/2) / 5``. Derived from orthographic projection; simulated in the
    tests.

    >>> round(slant_sigma_deg(90.0, 20.0), 3), slant_sigma_deg(0.0, 20.0)
    (1.127, 0.0)
    """
    e = math.tan(math.radians(most_deg) / 2.0) ** 2 / math.sqrt(5.0)
    return math.degrees(math.sqrt(2.0) * e * abs(math.sin(math.radians(angle_deg))))
