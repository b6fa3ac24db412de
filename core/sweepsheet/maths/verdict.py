"""The decision: inside the limit, outside, or too close to call.

As in ISO 14253-1 and JCGM 106 (section 7): the probability that the true offset is inside the
limit decides, not the measured figure alone. From ``confidence`` up it is *within*, from one less
``confidence`` down *outside*, and between the two nobody knows.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sweepsheet.maths.normal import probability_inside
from sweepsheet.maths.vector import Sym2, Vec2

Verdict = Literal["within", "outside", "undecided"]


@dataclass(frozen=True, slots=True)
class Judged:
    """The probability of being inside the limit, and the verdict; both ``None`` without a limit."""

    probability: float | None
    verdict: Verdict | None


NOT_JUDGED = Judged(None, None)


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


def judge(center: Vec2, covariance: Sym2, limit: float | None, confidence: float) -> Judged:
    """The judgement on a plane normal quantity that should lie within ``limit`` of the origin.

    ``center`` (mean) and ``limit`` are in one unit, ``covariance`` in its square; the probability
    is ``probability_inside``. ``NOT_JUDGED`` where there is no limit.

    >>> judged = judge(Vec2(2.0, 0.0), Sym2(1.0, 0.0, 1.0), 6.0, 0.95)
    >>> round(judged.probability, 6), judged.verdict
    (0.999944, 'within')
    >>> judge(Vec2(2.0, 0.0), Sym2(1.0, 0.0, 1.0), None, 0.95)
    Judged(probability=None, verdict=None)
    """
    if limit is None:
        return NOT_JUDGED
    probability = probability_inside(center, covariance, limit)
    return Judged(probability, verdict_of(probability, confidence))
