"""The decision."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.maths.verdict import verdict_of


@pytest.mark.parametrize(
    ("probability", "confidence", "verdict"),
    [
        (1.0, 0.95, "within"),
        (0.95, 0.95, "within"),
        (0.9499, 0.95, "undecided"),
        (0.0501, 0.95, "undecided"),
        (0.05, 0.95, "outside"),
        (0.0, 0.95, "outside"),
        (0.5, 0.5, "within"),
        (0.49, 0.5, "outside"),
        (0.99, 0.999, "undecided"),
    ],
)
def test_verdict_of(probability: float, confidence: float, verdict: str) -> None:
    assert verdict_of(probability, confidence) == verdict


@given(st.floats(0.0, 1.0), st.floats(0.5, 0.9999))
def test_more_likely_is_never_worse(probability: float, confidence: float) -> None:
    order = ["outside", "undecided", "within"]
    here = order.index(verdict_of(probability, confidence))
    assert order.index(verdict_of(min(1.0, probability + 0.01), confidence)) >= here
