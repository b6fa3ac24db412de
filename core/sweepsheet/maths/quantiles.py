"""Quantiles of chi-squared and of Student's t, for whole degrees of freedom.

The standard library has neither. For whole degrees of freedom both distributions are finite sums
(Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.4, 26.4.5, 26.7.3 and 26.7.4), and
a quantile is found by halving.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from sweepsheet.maths.halving import halved


def chi_squared_above(value: float, dof: int) -> float:
    """The probability that chi-squared with ``dof`` degrees of freedom lies above ``value``.

    ``sum of exp(-x/2) (x/2)^a / Gamma(a + 1)`` over ``a = dof/2 - 1, dof/2 - 2, ...`` down to 0 or
    1/2, and ``erfc(sqrt(x/2))`` more where ``dof`` is odd.

    >>> round(chi_squared_above(21.026, 12), 4), round(chi_squared_above(3.841, 1), 4)
    (0.05, 0.05)
    """
    if value <= 0.0:
        return 1.0
    half = value / 2.0
    odd = dof % 2
    powers = [i + odd / 2.0 for i in range((dof - odd) // 2)]
    terms = [math.exp(a * math.log(half) - half - math.lgamma(a + 1.0)) for a in powers]
    if odd:
        terms.append(math.erfc(math.sqrt(half)))
    return min(1.0, math.fsum(terms))


def chi_squared_quantile(probability: float, dof: int) -> float:
    """The value below which chi-squared with ``dof`` degrees of freedom lies with a probability.

    >>> round(chi_squared_quantile(0.975, 12), 3), round(chi_squared_quantile(0.025, 12), 3)
    (23.337, 4.404)
    """
    return _where(lambda value: 1.0 - chi_squared_above(value, dof), probability)


def student_within(value: float, dof: int) -> float:
    """The probability that Student's t with ``dof`` degrees of freedom lies within plus or minus.

    With ``tan w = t / sqrt(dof)``, a finite sum in sine and cosine of w.

    >>> round(student_within(3.182, 3), 3), round(student_within(2.776, 4), 3)
    (0.95, 0.95)
    """
    angle = math.atan2(value, math.sqrt(dof))
    cosine = math.cos(angle)
    odd = dof % 2
    # From cos w (1 where dof is even) upward, each term the one before it times cos^2 w i/(i + 1).
    term, terms = cosine if odd else 1.0, []
    for i in range(1 + odd, dof, 2):
        terms.append(term)
        term *= cosine**2 * i / (i + 1)
    total = math.sin(angle) * math.fsum(terms)
    return (angle + total) * 2.0 / math.pi if odd else total


def student_quantile(probability: float, dof: int) -> float:
    """The value within plus or minus which Student's t lies with a probability.

    >>> round(student_quantile(0.95, 3), 3), round(student_quantile(0.95, 8), 3)
    (3.182, 2.306)
    """
    return _where(lambda value: student_within(value, dof), probability)


def _where(rising: Callable[[float], float], wanted: float) -> float:
    """Where a rising function comes to a value: a bracket by doubling, then halving."""
    low, high = 0.0, 1.0
    while rising(high) < wanted:
        low, high = high, 2.0 * high
    low, high = halved(rising, wanted, low, high)
    return (low + high) / 2.0
