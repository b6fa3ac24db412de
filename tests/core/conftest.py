"""Hypothesis searches the same examples in every run, and a slow machine fails no test."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

settings.register_profile(
    "repeatable",
    derandomize=True,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],  # it measures time, not the test
)
settings.load_profile("repeatable")
