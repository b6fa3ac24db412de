"""The two unit systems."""

from __future__ import annotations

from dataclasses import fields

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.maths.units import INCH, METRIC, SYSTEMS, UnitSystem


def test_systems_are_known_by_name() -> None:
    assert {"inch": INCH, "metric": METRIC} == SYSTEMS


def test_a_long_unit_is_25_4_mm_or_1_mm() -> None:
    assert INCH.mm * INCH.small_per_long == pytest.approx(25.4, rel=1e-15)
    assert METRIC.mm * METRIC.small_per_long == 1.0


@pytest.mark.parametrize(
    ("units", "value", "text"),
    [
        (INCH, 5.5, "5.5"), (INCH, -5.46, "-5.5"), (INCH, -0.04, "0.0"), (INCH, -0.0, "0.0"),
        (METRIC, 0.0004, "0.000"), (METRIC, -0.0004, "0.000"), (METRIC, -0.1397, "-0.140"),
    ],
)  # fmt: skip
def test_show(units: UnitSystem, value: float, text: str) -> None:
    assert units.show(value) == text


@given(st.floats(-1e6, 1e6))
def test_show_is_within_half_a_last_digit(value: float) -> None:
    for units in SYSTEMS.values():
        assert float(units.show(value)) == pytest.approx(value, abs=0.5001 * 10**-units.decimals)
        assert not units.show(value).startswith("-0.0000")


def test_usual_values_of_both_systems_are_of_one_size() -> None:
    """What is filled in in mm is what is filled in in thou, rounded to a round figure.

    Steps and the like are rounded to what dials have, so by up to a third; the rest to 0.001 mm.
    """
    loose = {"step", "accuracy", "repeatability", "engine_pm", "gearbox_pm"}
    long = {"engine_pm", "gearbox_pm"}
    names = [f.name for f in fields(UnitSystem) if isinstance(getattr(INCH, f.name), float)]
    for name in names:
        if name in ("mm", "small_per_long", "decimals"):
            continue
        inch, metric = (
            units.to_mm(getattr(units, name) * (units.small_per_long if name in long else 1.0))
            for units in (INCH, METRIC)
        )
        room = 0.34 * inch if name in loose else 0.0005 + 1e-12
        if name == "largest_reading":
            room = 1e-9
        assert metric == pytest.approx(inch, abs=room), name
    for first, second in zip(INCH.dowel_offsets, METRIC.dowel_offsets, strict=True):
        assert second == pytest.approx(INCH.to_mm(first), abs=0.0005)
