"""The middle of some values; the standard library's is slow to import in a page."""

from __future__ import annotations

from collections.abc import Iterable


def median(values: Iterable[float]) -> float:
    """The middle of some values: as many are above it as below.

    >>> median([3.0, 1.0, 9.0]), median([1.0, 2.0])
    (3.0, 1.5)
    """
    ordered = sorted(values)
    half = len(ordered) // 2
    return (ordered[half] + ordered[~half]) / 2.0
