"""The result as data: the contract of version 1."""

from __future__ import annotations

import json
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sweepsheet import sheet, solve
from tests.cases.jobs import (
    EIGHTHS,
    Data,
    face_readings,
    make_job,
    readings_of,
    then,
    whole_job,
    with_dowels,
    with_face,
)
from tests.core.job.test_read import leaves, put
from tests.core.test_api import answer_or_faults

BORE_KEYS = {
    "center", "covariance", "offset", "direction_deg", "move_deg", "tir", "ellipse95", "residuals",
    "out_of_round", "pair_difference", "closing_error", "probability_within", "verdict",
}  # fmt: skip


FACE_KEYS = {
    "slope", "slope_covariance", "runout", "rearmost_deg", "probability_within", "verdict",
}  # fmt: skip
PILOT_KEYS = {
    "center", "covariance", "offset", "direction_deg", "probability_within", "verdict",
}  # fmt: skip
OPTION_KEYS = {"offset", "aim_deg", "expected_offset", "probability_within"}


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
    assert each["bore"].keys() >= BORE_KEYS
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


# A job with every part measured ------------------------------------------------------------


@pytest.fixture(scope="module")
def whole() -> Data:
    return solve(whole_job())


def test_promised_keys_of_a_whole_job(whole: Data) -> None:
    """Three rounds, bore, face and seven bolts: keys may be added, these keep their names."""
    assert whole.keys() >= {
        "format", "version", "units", "rounds", "dowel_options", "dowel_choice", "fine_options",
        "trim", "shims", "findings",
    }  # fmt: skip
    assert [each["name"] for each in whole["rounds"]] == ["as found", "dowels", "trim"]
    for each in whole["rounds"]:
        assert each["bore"].keys() >= BORE_KEYS
        assert each["face"].keys() >= FACE_KEYS
        assert each["pilot"].keys() >= PILOT_KEYS
    for option in [*whole["dowel_options"], whole["dowel_choice"]]:
        assert option.keys() >= OPTION_KEYS
    assert whole["trim"].keys() >= {"turn_deg", "aim_deg", "expected_offset"}
    assert len(whole["shims"]) == 7
    for shim in whole["shims"]:
        assert shim.keys() >= {"at_deg", "thickness"}
    assert whole["fine_options"]
    for pair in whole["fine_options"]:
        assert pair.keys() >= {"dowels", "expected_offset", "housing_turn_deg", "spacing_misfit"}
        assert [dowel.keys() for dowel in pair["dowels"]] == [{"offset", "aim_deg"}] * 2


def test_what_was_added_to_the_result(whole: Data) -> None:
    """Joint, chip, companions, squaring and what the dowels did."""
    assert whole["dowels_did"].keys() == {
        "offset", "offset_pm", "direction_deg", "direction_pm_deg", "agrees", "opposite",
        "mirrored", "gain", "lag_deg",
    }  # fmt: skip
    assert whole["squaring"].keys() == {
        "bore_after", "bore_if_crooked", "bore_if_tipped", "cause", "taper", "slope_left", "rock",
        "chip_that_explains",
    }  # fmt: skip
    assert whole["joint"].keys() == {"clearance", "probability_within", "verdict"}
    assert whole["chip"].keys() == {"slope", "bore", "nose", "tail"}
    assert [part["kind"] for part in whole["companions"]] == ["pilot_bore", "flywheel_face"]


def test_the_reach_of_the_drawer_is_in_the_result() -> None:
    """Fourteen low with room for 20 in the bolt holes; within, there is nothing to reach."""
    job = make_job(readings_of(0.0, -14.0), housing={"bolt_clearance": 20.0})
    reach = solve(job)["reach"]
    assert reach.keys() == {
        "kind", "offset", "expected_offset", "sure", "bolt_clearance", "fits_bolt_holes", "pair",
    }  # fmt: skip
    assert (reach["kind"], reach["offset"], reach["bolt_clearance"]) == ("tight", 14.0, 28.0)
    assert solve(make_job(readings_of(0.0, -1.0)))["reach"] is None


def test_nothing_is_chosen_while_something_else_comes_first() -> None:
    """Readings that can't be right, a face that is out, a move the wrong way, a tight fit."""
    off = readings_of(0.0, -7.0)
    assert solve(make_job(off))["dowel_choice"]["offset"] == 7.0
    leaning = with_face(make_job(off), face_readings(0.0, 3.0))
    foreign = make_job(
        [m + 8.0 * (i == 3) for i, m in enumerate(readings_of(0.0, -7.0, EIGHTHS))],
        positions=EIGHTHS,
    )
    tight = make_job(off, housing={"bore_diameter": 4.0, "register_diameter": 4.001})
    wrong = then(make_job(off), with_dowels(make_job(readings_of(0.0, -14.0)), (7.0, 0.0)))
    mirrored = then(
        make_job(readings_of(0.0, -10.0)),
        with_dowels(make_job(readings_of(-4.95, -5.05)), (7.0, 45.0)),
    )
    turning = make_job(off, companions=[{"kind": "pilot_bore", "sweeps": [off], "closing": [3.0]}])
    inches = make_job((0.0, -0.003, -0.007, -0.004))
    for job in (
        leaning,
        foreign,
        tight,
        wrong,
        mirrored,
        turning,
        inches,
        make_job(off, closing=[3.0]),
    ):
        result = solve(job)
        assert result["dowel_choice"] is None
        assert "stop" in [each["level"] for each in result["findings"]]
        assert not [line for line in sheet(job).splitlines() if line.startswith(">")]
        assert len(result["dowel_options"]) > 1  # what each would leave is still shown


def test_what_is_not_known_is_null_or_empty(result: Data) -> None:
    """A bore alone: nothing is assumed in place of what was not measured."""
    for key in ("trim", "dowels_did", "squaring", "joint", "chip"):
        assert result[key] is None
    for key in ("fine_options", "shims", "companions"):
        assert result[key] == []
    (each,) = result["rounds"]
    assert each["face"] is each["pilot"] is None


def test_a_whole_job_goes_through_json_and_back(whole: Data) -> None:
    assert json.loads(json.dumps(whole, allow_nan=False)) == whole
    assert all(math.isfinite(v) for _, v in leaves(whole) if isinstance(v, float))


def test_figures_of_face_and_pilot_belong_together(whole: Data) -> None:
    """Runout is 2 r g; the pilot line is the bore and L times the slope, in thou."""
    for each in whole["rounds"]:
        slope = each["face"]["slope"]
        assert each["face"]["runout"] == pytest.approx(2.0 * 3000.0 * math.hypot(*slope))
        expected = [c + 7000.0 * g for c, g in zip(each["bore"]["center"], slope, strict=True)]
        assert each["pilot"]["center"] == pytest.approx(expected, abs=1e-9)
        assert each["pilot"]["offset"] == pytest.approx(math.hypot(*expected))
        assert each["face"]["limit"] == pytest.approx(3.0)  # one for each inch, swept at 3


def test_the_dowels_of_a_whole_job_are_seen_at_work(whole: Data) -> None:
    """Told 14; they did nine tenths of it, and the turn that was made helped."""
    assert whole["dowels_did"]["gain"] == pytest.approx(0.9, abs=0.05)
    offsets = [each["bore"]["offset"] for each in whole["rounds"]]
    assert offsets == sorted(offsets, reverse=True)


WHOLE = whole_job()


def places_of(job: Data) -> set[str]:
    """Every place in a job: the single values, and all that holds them."""
    return {path.rsplit(".", up)[0] for path, _ in leaves(job) for up in range(path.count(".") + 1)}


PLACES = sorted(places_of(WHOLE))
values = st.one_of(
    st.none(), st.booleans(), st.floats(), st.integers(-720, 720), st.text(max_size=6),
    st.lists(st.floats(-30.0, 30.0), max_size=8), st.just({}),
    st.sampled_from([0.0, 1e-9, -1e-9, 1e300, "free", "outside", "pilot", "metric", "rear"]),
)  # fmt: skip


@pytest.mark.slow
@settings(max_examples=600)
@given(st.lists(st.tuples(st.sampled_from(PLACES), values), min_size=1, max_size=3))
def test_a_whole_job_changed_anywhere_is_answered_or_refused(
    changes: list[tuple[str, object]],
) -> None:
    """Finite figures, the same for the same job, or ``InputError``; nothing else is raised."""
    job = WHOLE
    for path, value in changes:
        # What an earlier change took away can't be changed any more.
        if path in places_of(job):
            job = put(job, path, value)
    result = answer_or_faults(job)
    assert result is None or result["format"] == "sweepsheet-result"


small = st.sampled_from([0.0, 5e-324, 1e-9, 0.25, 7.0, 500.0])
reading = st.floats(-500.0, 500.0) | st.sampled_from([0.0, 500.0, -500.0, 5e-324])


@pytest.mark.slow
@settings(max_examples=300)
@given(st.data())
def test_wild_but_allowed_figures_are_answered(data: st.DataObject) -> None:
    """Every figure somewhere in its range, its ends included, over three rounds."""
    job = whole_job()
    for each in job["rounds"]:
        for part in (each["bore"], each["face"]):
            part["sweeps"] = [
                data.draw(st.lists(reading, min_size=8, max_size=8)) for _ in part["sweeps"]
            ]
        offset, aim = data.draw(small), data.draw(st.floats(0.0, 360.0))
        pair = {"offset": offset, "aim_deg": aim}
        each["dowels"] = [pair, pair if data.draw(st.booleans()) else {"offset": 7.0, "aim_deg": 0}]
    job["indicator"] = {
        key: data.draw(small)
        for key in ("step", "accuracy", "repeatability", "sag", "sag_allowance")
    }
    job["indicator"]["angle_setting_deg"] = data.draw(st.sampled_from([0.0, 5.0, 45.0]))
    job["housing"]["dowel_clearance"] = data.draw(small)
    job["stock"] = {
        "dowel_offsets": data.draw(st.lists(small, max_size=3)),
        "aim_setting_deg": data.draw(st.sampled_from([0.0, 5.0])),
        "aim_for": data.draw(st.sampled_from(["bore", "pilot"])),
        "shim_thicknesses": data.draw(st.lists(small, max_size=3)),
    }
    assert answer_or_faults(job) is not None
