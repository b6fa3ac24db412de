"""The result as data: the contract of version 1."""

from __future__ import annotations

import json
import math

import pytest

from sweepsheet import solve
from tests.core.jobs import Data, make_job, readings_of

ROUND_KEYS = {
    "center", "covariance", "offset", "direction_deg", "move_deg", "tir", "ellipse95", "residuals",
    "out_of_round", "pair_difference", "closing_error", "probability_within", "verdict",
}  # fmt: skip


@pytest.fixture
def result() -> Data:
    return solve(make_job(readings_of(3.0, -6.0), units="inch"))


def test_head(result: Data) -> None:
    assert (result["format"], result["version"]) == ("sweepsheet-result", 1)
    assert result["units"] == "inch"


def test_promised_keys(result: Data) -> None:
    """Keys may be added; these keep their names."""
    assert {"rounds", "dowel_options", "dowel_choice", "findings"} <= result.keys()
    (each,) = result["rounds"]
    assert each["name"] == "as found"
    assert each["bore"].keys() >= ROUND_KEYS
    assert each["bore"]["ellipse95"].keys() == {"semi_axes", "at_deg"}
    for option in result["dowel_options"]:
        assert option.keys() >= {"offset", "aim_deg", "expected_offset", "probability_within"}
    for finding in result["findings"]:
        assert finding.keys() == {"code", "level", "field", "text"}


def test_figures_of_a_bore_belong_together(result: Data) -> None:
    bore = result["rounds"][0]["bore"]
    assert bore["offset"] == pytest.approx(math.hypot(*bore["center"]), rel=1e-15)
    assert bore["tir"] == 2.0 * bore["offset"]
    assert (bore["direction_deg"] + 180.0) % 360.0 == pytest.approx(bore["move_deg"], abs=1e-9)
    major, minor = bore["ellipse95"]["semi_axes"]
    (xx, xy), (yx, yy) = bore["covariance"]
    assert xy == yx
    # Area and trace of the ellipse are those of the covariance.
    k2 = -2.0 * math.log(0.05)
    assert major * minor == pytest.approx(k2 * math.sqrt(xx * yy - xy * xy), rel=1e-12)
    assert major**2 + minor**2 == pytest.approx(k2 * (xx + yy), rel=1e-12)


def test_the_choice_is_one_of_the_options(result: Data) -> None:
    assert result["dowel_choice"] in result["dowel_options"]


def test_it_goes_through_json_and_back(result: Data) -> None:
    assert json.loads(json.dumps(result, allow_nan=False)) == result


def test_no_minus_zero_in_centre_and_covariance() -> None:
    bore = solve(make_job((0.0, 0.0, 0.0, 0.0)))["rounds"][0]["bore"]
    figures = [*bore["center"], *bore["covariance"][0], *bore["covariance"][1]]
    assert all(math.copysign(1.0, v) == 1.0 for v in figures)


def test_every_round_is_there_and_the_dowels_are_for_the_latest() -> None:
    job = make_job(readings_of(0.0, -7.0))
    job["rounds"].append({**make_job(readings_of(0.0, -1.0))["rounds"][0], "name": "after dowels"})
    result = solve(job)
    assert [each["name"] for each in result["rounds"]] == ["as found", "after dowels"]
    assert [each["bore"]["verdict"] for each in result["rounds"]] == ["outside", "within"]
    assert result["dowel_choice"]["leave"] is True
