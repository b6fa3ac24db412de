"""The two doors: nothing but a result or bad input comes out, whatever goes in."""

from __future__ import annotations

import copy
import json
import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sweepsheet import Fault, InputError, sheet, solve
from sweepsheet.words.en.core import TABLE
from sweepsheet.words.messages import Language
from tests.cases.jobs import Data, make_job, readings_of
from tests.core.job.test_read import FULL, leaves, put

json_like = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.text(max_size=12) | st.sampled_from(sorted(FULL)), inner, max_size=4)
    ),
    max_leaves=20,
)
LEAVES = sorted({path for path, _ in leaves(FULL)})
# Every place in the job: the single values, and all that holds them.
PLACES = sorted({
    path.rsplit(".", up)[0] for path in LEAVES for up in range(path.count(".") + 1)
})  # fmt: skip
sensible = st.sampled_from([
    0, 1, -1, 0.5, 1e-9, 5, 45, 90, 180, 359.5, 360, 500, 1e300, None, "", "inside", "metric",
])  # fmt: skip


def numbers_in(part: object) -> list[float]:
    found: list[float] = []
    if isinstance(part, dict):
        for value in part.values():
            found += numbers_in(value)
    elif isinstance(part, list):
        for value in part:
            found += numbers_in(value)
    elif isinstance(part, int | float) and not isinstance(part, bool):
        found.append(part)
    return found


def answer_or_faults(job: Any) -> Data | None:
    """The result, checked for what every result promises; ``None`` for bad input."""
    before = copy.deepcopy(job)
    faults: tuple[Fault, ...] = ()
    result = None
    try:
        result = solve(job)
    except InputError as error:
        faults = error.faults
    assert repr(job) == repr(before)
    if result is None:
        assert faults
        assert all(fault.text() for fault in faults)
        with pytest.raises(InputError):
            sheet(job)
        return None
    assert all(math.isfinite(number) for number in numbers_in(result))
    assert json.loads(json.dumps(result, allow_nan=False)) == result
    assert solve(job) == result
    assert sheet(job).endswith("\n")
    return result


@pytest.mark.slow
@given(json_like)
def test_any_data_is_a_job_or_bad_input(data: object) -> None:
    assert answer_or_faults(data) is None  # none of it is a job by chance


@pytest.mark.slow
@settings(max_examples=1500)
@given(st.sampled_from(PLACES), json_like | sensible)
def test_a_good_job_with_any_field_changed(path: str, value: object) -> None:
    job = put(FULL, path, value)
    result = answer_or_faults(job)
    assert result is None or result["version"] == 1


@pytest.mark.slow
@settings(max_examples=300)
@given(
    st.lists(st.floats(0.0, 360.0), min_size=3, max_size=8),
    st.data(),
)
def test_any_positions_and_readings(positions: list[float], data: st.DataObject) -> None:
    """Nearly singular positions and wild readings included: finite figures or bad input."""
    reading = st.none() | st.floats(-500.0, 500.0) | st.sampled_from([0.0, 500.0, -500.0, 5e-324])
    row = st.lists(reading, min_size=len(positions), max_size=len(positions))
    rows = data.draw(st.lists(row, min_size=1, max_size=3))
    small = st.sampled_from([0.0, 5e-324, 1e-9, 0.5, 500.0])
    job = make_job(
        *rows,
        positions=positions,
        closing=data.draw(st.lists(small | st.none(), max_size=len(rows))),
        limits={"bore_offset": data.draw(st.sampled_from([None, 0.1, 5.0, 500.0]))},
        indicator={
            "step": data.draw(small), "accuracy": data.draw(small),
            "repeatability": data.draw(small), "sag": data.draw(st.none() | small),
            "sag_allowance": data.draw(small),
            "angle_setting_deg": data.draw(st.sampled_from([0.0, 5.0, 45.0])),
        },
        stock={"dowel_offsets": data.draw(st.lists(small, max_size=4))},
    )  # fmt: skip
    result = answer_or_faults(job)
    if result is not None:
        bore = result["rounds"][0]["bore"]
        assert 0.0 <= bore["direction_deg"] < 360.0
        assert 0.0 <= bore["move_deg"] < 360.0
        assert bore["probability_within"] is None or 0.0 <= bore["probability_within"] <= 1.0


@pytest.mark.parametrize(
    "positions",
    [(0.0, 2.5, 181.0), (0.0, 2.6, 182.5), (0.0, 178.0, 181.0, 357.5), (10.0, 12.5, 192.0)],
)
def test_nearly_all_in_one_line_is_much_doubt_and_no_breakdown(
    positions: tuple[float, ...],
) -> None:
    result = answer_or_faults(make_job(readings_of(1.0, 2.0, positions), positions=positions))
    assert result is not None
    assert result["rounds"][0]["bore"]["ellipse95"]["semi_axes"][0] > 20.0


def test_the_full_job_is_answered() -> None:
    assert answer_or_faults(FULL) is not None


@pytest.mark.parametrize("door", [solve, sheet])
def test_bad_input_failure(door: Callable[[Any], object]) -> None:
    with pytest.raises(InputError):
        door({})


def test_another_language_changes_words_and_no_figures() -> None:
    job = make_job(readings_of(0.0, -7.0))
    other = Language(
        "xx", {**TABLE, "number.decimal_mark": ",", "answer.verdict.outside": "draussen"}
    )
    english, foreign = solve(job), solve(job, other)
    assert [f["code"] for f in english["findings"]] == [f["code"] for f in foreign["findings"]]
    assert english["rounds"] == foreign["rounds"]
    assert english["dowel_options"] == foreign["dowel_options"]
    assert "draussen. 7,0 thou off" in sheet(job, other)
