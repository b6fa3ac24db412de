"""From text to data: JSON, and no more of it than a job needs."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import Fault, InputError
from sweepsheet.job.strict_json import DEEPEST_JOB, LONGEST_JOB, load_json
from tests.cases.jobs import make_job


def test_a_job_is_loaded() -> None:
    job = make_job((0.0, 1.0, 2.0, 1.0), about={"notes": 'a "quoted" [bracket] \\'})
    assert load_json(json.dumps(job)) == job


def test_brackets_in_text_are_not_nesting() -> None:
    assert load_json(json.dumps("[" * 100 + '\\"{')) == "[" * 100 + '\\"{'


def test_a_byte_order_mark_is_no_part_of_the_job() -> None:
    """Some editors put one in front."""
    assert load_json("\ufeff" + '{"a": 1}') == {"a": 1}


@pytest.mark.parametrize("text", ['{"a": 1, "a": 1}', '{"b": [{"a": 1, "a": 2}]}'])
def test_a_key_that_stands_twice_failure(text: str) -> None:
    """Nobody could tell which of the two counts, not even where they say the same."""
    with pytest.raises(InputError, match="a key stands twice in one object"):
        load_json(text)


def test_the_same_key_in_two_objects_is_no_fault() -> None:
    assert load_json('[{"a": 1}, {"a": 2}]') == [{"a": 1}, {"a": 2}]


def test_the_deepest_job_is_loaded() -> None:
    text = "[" * DEEPEST_JOB + "]" * DEEPEST_JOB
    assert load_json(text) == json.loads(text)


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        ("", "This is not a job file"),
        ("{", "This is not a job file"),
        ("not json", "This is not a job file"),
        ('{"a": 1,}', "This is not a job file"),
        ("NaN", "NaN is not a number"),
        ('{"a": [Infinity]}', "Infinity is not a number"),
        ("[-Infinity]", "-Infinity is not a number"),
        ("9" * 5000, "This is not a job file"),
        ("[" * (DEEPEST_JOB + 1) + "]" * (DEEPEST_JOB + 1), "nested more deeply"),
        ("[" * 100_000, "nested more deeply"),
        ('{"a":' * 30_000, "nested more deeply"),
        (" " * (LONGEST_JOB + 1), "larger than any job"),
    ],
    ids=lambda value: value[:20],
)
def test_load_json_failure(text: str, phrase: str) -> None:
    with pytest.raises(InputError) as caught:
        load_json(text)
    (fault,) = caught.value.faults
    assert fault.field == ""
    assert phrase in fault.text()


@pytest.mark.parametrize(
    "text",
    [
        '{"limits": 1, "limits": 2}',
        '{"a": {"bore_offset": 50, "bore_offset": 5}}',
        '[{"a": 1, "a": 1}]',
    ],
)
def test_load_json_failure_a_key_twice(text: str) -> None:
    """Of two limits one would be passed over in silence: refused, like a key that is unknown."""
    with pytest.raises(InputError):
        load_json(text)


scalars = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text()
)


@given(scalars | st.lists(scalars) | st.dictionaries(st.text(), scalars))
def test_what_was_written_is_read_again(data: object) -> None:
    assert load_json(json.dumps(data)) == data


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused_with_a_reason(text: str) -> None:
    faults: tuple[Fault, ...] = ()
    loaded = False
    try:
        load_json(text)
        loaded = True
    except InputError as error:
        faults = error.faults
    assert loaded == (not faults)
