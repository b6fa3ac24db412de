"""What a scatter in the plane is worth that was itself measured from a few tries."""

from __future__ import annotations

import math


def plane_factor(dof: int) -> float:
    """The radius that holds 95 % of a plane normal quantity, over its measured deviation s.

    s was pooled from ``dof`` squares, so that ``r^2 / (2 s^2)`` has the F distribution with 2 and
    ``dof`` degrees of freedom, whose tail is ``(1 + 2 f / dof) ** (-dof / 2)``::

        r / s = sqrt(dof (0.05 ** (-2 / dof) - 1))

    It falls to 2.4477, that of a known deviation (NIST/SEMATECH e-Handbook, 1.3.6.6.5, for F).

    >>> round(plane_factor(2), 4), round(plane_factor(20), 4), round(plane_factor(10**6), 4)
    (6.1644, 2.643, 2.4478)
    """
    return math.sqrt(dof * (0.05 ** (-2.0 / dof) - 1.0))
