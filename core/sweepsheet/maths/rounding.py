"""Rounding by what a figure is worth: never finer than a tenth of its doubt.

A figure goes to the nearest multiple of a step of 1, 2 or 5 in some decimal place, the smallest
that is not below a tenth of the half width (95 %). So rounding adds at most an eighth of the half
width, and no digit is shown that means nothing.
"""

from __future__ import annotations

import math

# A step that misses its bound by less than this share meets it: what floating point makes of it.
_SLACK = 1e-9
# By this much a half width may be shown too small.
_SHORT = 0.95


def step_for(half_width: float, finest: float) -> float:
    """The step for a figure of this half width: 1, 2 or 5 times a power of ten.

    Not below ``half_width / 10``, and not below ``finest``, the least that anybody can use.

    >>> step_for(0.6, 0.1), step_for(1.1, 0.1), step_for(0.0, 0.001), step_for(45.0, 1.0)
    (0.1, 0.2, 0.001, 5.0)
    """
    least = max(half_width / 10.0, finest) * (1.0 - _SLACK)
    power = 10.0 ** math.floor(math.log10(least))
    return next(n * power for n in (2.0, 5.0, 10.0) if n * power >= least)


def to_step(value: float, step: float) -> str:
    """A figure as text, to the nearest multiple of a step, never as minus zero.

    >>> to_step(10.83, 0.2), to_step(-0.04, 0.1), to_step(313.0, 5.0)
    ('10.8', '0.0', '315')
    """
    return f"{round(value / step) * step:.{_decimals(step)}f}"


def up_to_step(half_width: float, step: float) -> str:
    """A half width as text, with as many decimals as its figure: to the nearest, or else up.

    Up where the nearest is more than a twentieth too small. So a half width of 95 % holds 93.7 to
    97.2 % as it is shown, where always rounding up would make it 98.

    >>> up_to_step(1.06, 0.2), up_to_step(2.0, 0.2), up_to_step(5.2, 1.0), up_to_step(5.3, 1.0)
    ('1.1', '2.0', '5', '6')
    """
    scaled = half_width * 10.0 ** _decimals(step)
    nearest = round(scaled)
    if nearest < _SHORT * scaled:
        nearest = math.ceil(scaled)
    return f"{nearest / 10.0 ** _decimals(step):.{_decimals(step)}f}"


def _decimals(step: float) -> int:
    """How many decimals a step has."""
    return max(0, -math.floor(math.log10(step) + _SLACK))
