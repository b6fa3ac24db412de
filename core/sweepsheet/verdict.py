"""The decision: inside the limit, outside, or too close to call.

As in ISO 14253-1 and JCGM 106 (section 7): the probability that the true offset is inside the
limit decides, not the measured figure alone. From ``confidence`` up it is *within*, from one less
``confidence`` down *outside*, and between the two nobody knows.
"""

from __future__ import annotations

from typing import Literal

Verdict = Literal["within", "outside", "undecided"]


def verdict_of(probability: float, confidence: float) -> Verdict:
    """The verdict for a probability of being inside.

    >>> verdict_of(0.97, 0.95), verdict_of(0.6, 0.95), verdict_of(0.04, 0.95)
    ('within', 'undecided', 'outside')
    """
    if probability >= confidence:
        return "within"
    # Compared on the same side of 1 as the confidence, so that 0.05 and 1 - 0.95 meet.
    if 1.0 - probability >= confidence:
        return "outside"
    return "undecided"
