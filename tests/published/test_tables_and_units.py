"""Published tables and definitions: contact angles, and the inch."""

from __future__ import annotations

import math
from typing import Any

import pint
import pytest

from sweepsheet import solve
from sweepsheet.maths.units import INCH
from tests.cases.jobs import EIGHTHS, PERFECT, Data, bore_of, make_job
from tests.published.record import check

# Correction factors of lever indicators, as such tables print them (an instrument guide;
# common practice). The tables cut off after two digits, so they may be up to .01 low; the
# largest miss, at 40 and 20 degrees, is below .007.
CONTACT_ANGLES = [(10, 0.98), (20, 0.94), (30, 0.87), (40, 0.77), (50, 0.64), (60, 0.50)]
TABLE_TOLERANCE = 0.007


@pytest.mark.parametrize(("angle_deg", "factor"), CONTACT_ANGLES)
@pytest.mark.parametrize("side", [1, -1])
def test_contact_angle_table(angle_deg: int, factor: float, side: int) -> None:
    """A dial of TIR 100 at that contact angle has seen the table's factor times 100."""
    job = make_job(
        (0.0, -50.0, -100.0, -50.0),
        indicator={**PERFECT, "contact_angle_deg": side * angle_deg},
    )
    what = f"contact angle {side * angle_deg} degrees"
    source = "lever-indicator tables (instrument guide; common practice)"
    check(source, what, factor, bore_of(job)["tir"] / 100.0, within=TABLE_TOLERANCE)
    assert bore_of(job)["tir"] / 100.0 == pytest.approx(
        math.cos(math.radians(angle_deg)), abs=1e-12
    )


INCH_JOB: Data = make_job(
    (0.0, -2.5, -7.0, -11.5, -13.0, -11.0, -6.0, -1.5),
    (0.5, -2.0, -7.5, -11.0, -12.5, -11.0, -6.0, -1.0),
    positions=EIGHTHS,
    closing=(0.5, 0.0),
    units="inch",
    limits={"bore_offset": 5.0, "source": "test"},
    indicator={
        "step": 0.5, "accuracy": 0.5, "repeatability": 0.25, "contact_angle_deg": 10,
        "sag": None, "sag_allowance": 1.0, "angle_setting_deg": 5,
    },
    crank={"axis": "horizontal", "lift": 1.0},
    housing={"dowel_clearance": 1.0},
    stock={"dowel_offsets": [7.0, 14.0, 21.0], "aim_setting_deg": 5},
)  # fmt: skip


def thou_in_mm() -> float:
    """One thousandth of an inch in millimetres, as pint has it."""
    registry: pint.UnitRegistry[Any] = pint.UnitRegistry()
    return float(registry.Quantity(1.0, "thou").to("mm").magnitude)


def in_millimetres(job: Data) -> Data:
    """The same job with every small distance turned from thou into mm."""
    k = thou_in_mm()
    (round_,) = job["rounds"]
    bore = round_["bore"]
    small = ("step", "accuracy", "repeatability", "sag_allowance")
    return {
        **job,
        "units": "metric",
        "limits": {**job["limits"], "bore_offset": job["limits"]["bore_offset"] * k},
        "indicator": {**job["indicator"], **{key: job["indicator"][key] * k for key in small}},
        "crank": {**job["crank"], "lift": job["crank"]["lift"] * k},
        "housing": {"dowel_clearance": job["housing"]["dowel_clearance"] * k},
        "stock": {
            **job["stock"], "dowel_offsets": [d * k for d in job["stock"]["dowel_offsets"]]
        },
        "rounds": [
            {
                **round_,
                "bore": {
                    **bore,
                    "sweeps": [[m * k for m in sweep] for sweep in bore["sweeps"]],
                    "closing": [c * k for c in bore["closing"]],
                },
            }
        ],
    }  # fmt: skip


def test_inch_is_25_4_mm() -> None:
    """1 in = 25.4 mm exactly (international yard and pound agreement, 1959)."""
    source = "international yard and pound agreement, 1959"
    check(source, "1 thou in mm, by pint", 0.0254, thou_in_mm(), within=1e-17)
    check(source, "1 thou in mm, in the core", 0.0254, INCH.to_mm(1.0), within=1e-17)


def test_a_job_in_inches_and_the_same_in_mm_say_the_same() -> None:
    """Lengths differ by 0.0254 mm a thou, angles and chances not at all.

    The tolerance of 1e-9 is some thousand roundings of a double.
    """
    k = thou_in_mm()
    inch, metric = solve(INCH_JOB), solve(in_millimetres(INCH_JOB))
    a, b = inch["rounds"][0]["bore"], metric["rounds"][0]["bore"]
    for key in ("offset", "offset_pm", "tir", "out_of_round", "pair_difference", "repeatability"):
        assert b[key] == pytest.approx(a[key] * k, rel=1e-9), key
    for key in ("direction_deg", "direction_pm_deg", "move_deg", "probability_within"):
        assert b[key] == pytest.approx(a[key], rel=1e-9), key
    for row_a, row_b in zip(a["covariance"], b["covariance"], strict=True):
        assert row_b == pytest.approx([v * k * k for v in row_a], rel=1e-9)
    assert a["verdict"] == b["verdict"]
    for first, second in zip(inch["dowel_options"], metric["dowel_options"], strict=True):
        assert second["expected_offset"] == pytest.approx(first["expected_offset"] * k, rel=1e-9)
        assert second["aim_deg"] == pytest.approx(first["aim_deg"], rel=1e-9)
        assert second["probability_within"] == pytest.approx(first["probability_within"], abs=1e-9)
    assert [f["code"] for f in inch["findings"]] == [f["code"] for f in metric["findings"]]


@pytest.mark.parametrize(
    ("metric", "thou"), [(0.178, 7.0), (0.356, 14.0), (0.533, 21.0), (0.127, 5.0)]
)
def test_usual_metric_values_are_the_inch_ones_rounded(metric: float, thou: float) -> None:
    """The usual values in mm are those in thou, rounded to a micrometre."""
    job = make_job((0, 0, 0, 0), units="metric")
    result = solve(job)
    known = [option["offset"] for option in result["dowel_options"]] + [0.127]
    assert metric in known
    assert metric == pytest.approx(thou * thou_in_mm(), abs=0.0005)
