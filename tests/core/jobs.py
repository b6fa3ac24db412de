"""Job files for the tests: plain data, and one place to change a part of it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from sweepsheet import solve

Data = dict[str, Any]
Reading = float | None

QUARTERS = (0.0, 90.0, 180.0, 270.0)
EIGHTHS = (0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0)

# An indicator without any doubt: what is computed is then the readings and nothing else.
PERFECT: Data = {
    "step": 0, "accuracy": 0, "repeatability": 0, "sag": 0, "sag_allowance": 0,
    "angle_setting_deg": 0,
}  # fmt: skip


def bore_round(
    *sweeps: Sequence[Reading],
    positions: Sequence[float] = QUARTERS,
    contact: str = "inside",
    closing: Sequence[Reading] | None = None,
) -> Data:
    """One round of a job; every sweep closes on its zero where nothing else is said."""
    return {
        "bore": {
            "contact": contact,
            "positions_deg": list(positions),
            "sweeps": [list(sweep) for sweep in sweeps],
            "closing": [0.0] * len(sweeps) if closing is None else list(closing),
        }
    }


def make_job(
    *sweeps: Sequence[Reading],
    positions: Sequence[float] = QUARTERS,
    contact: str = "inside",
    closing: Sequence[Reading] | None = None,
    **sections: object,
) -> Data:
    """A job of one round; ``sections`` are the other parts of the job file."""
    round_ = bore_round(*sweeps, positions=positions, contact=contact, closing=closing)
    return {"format": "sweepsheet-job", "version": 1, **sections, "rounds": [round_]}


def bore_of(job: Data) -> Data:
    """What the latest round of a job says about the bore."""
    bore: Data = solve(job)["rounds"][-1]["bore"]
    return bore


def codes_of(job: Data) -> list[str]:
    """The codes of the findings, in their order."""
    return [finding["code"] for finding in solve(job)["findings"]]


def finding_of(job: Data, code: str) -> Data:
    """The one finding with this code."""
    (found,) = [finding for finding in solve(job)["findings"] if finding["code"] == code]
    return dict(found)


def readings_of(
    x: float, y: float, positions: Sequence[float] = QUARTERS, zero: float = 0.0
) -> list[float]:
    """What a dial inside a bore centred at (x, y) shows, to the first order in the offset."""
    return [zero - x * math.sin(math.radians(a)) - y * math.cos(math.radians(a)) for a in positions]


def apart(first_deg: float, second_deg: float) -> float:
    """How far two directions are apart, 0 to 180 degrees."""
    return abs((first_deg - second_deg + 180.0) % 360.0 - 180.0)
