"""Where a rising function comes to a value, by halving."""

from __future__ import annotations

from collections.abc import Callable


def halved(
    rising: Callable[[float], float], wanted: float, low: float, high: float, times: int = 60
) -> tuple[float, float]:
    """Bounds of where a rising function comes to a value, ``(high - low) / 2**times`` apart.

    At the lower the function is below ``wanted``, or it is ``low`` as given; at the upper it is
    not, or it is ``high`` as given.

    >>> halved(lambda x: x * x, 2.0, 0.0, 2.0, 10)
    (1.4140625, 1.416015625)
    """
    for _ in range(times):
        middle = (low + high) / 2.0
        if rising(middle) < wanted:
            low = middle
        else:
            high = middle
    return low, high
