"""Reading single values from outside."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import InputError
from sweepsheet.job.fields import LONGEST_TEXT, FieldReader, is_harmful, shown
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.messages import Message

NAME = Message("name.rounds")


def faults_of(reader: FieldReader) -> list[tuple[str, str]]:
    """Field and words of the faults that were noted."""
    with pytest.raises(InputError) as caught:
        reader.raise_faults()
    return [(fault.field, fault.text()) for fault in caught.value.faults]


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (None, "nothing"), ("", "nothing"), ("  ", "nothing"), (True, "true"), (False, "false"),
        ("o", "'o'"), ("x" * 30, "'" + "x" * 24 + "…'"), ("a\x00b", "'a�b'"), ("\ud800", "'�'"),
        (5, "5"), (0.004, "0.004"), (10**12, "a far larger number"),
        (-(10**400), "a far larger number"),
        (math.inf, "inf"), ([], "a list"), ((1,), "a list"), ({}, "a group of fields"),
        ({1, 2}, "something else"),
    ],
)  # fmt: skip
def test_shown(value: object, text: str) -> None:
    assert ENGLISH.text(shown(value)) == text


@pytest.mark.parametrize("value", ["a\nb", "a\rb", "a\tb", "a\u2028b", "a\u0085b"])
def test_shown_stays_on_one_line(value: str) -> None:
    """A fault is one line, whatever was typed."""
    assert len(ENGLISH.text(shown(value)).splitlines()) == 1


@pytest.mark.parametrize(
    "character", ["\x00", "\x1b", "\x7f", "\x85", "\ud800", "\u202e", "\u2066"]
)
def test_is_harmful(character: str) -> None:
    assert is_harmful(character)


@pytest.mark.parametrize("character", ["a", "é", "\n", "\t", "中", "🔧", "'", "<"])
def test_is_harmful_failure(character: str) -> None:
    assert not is_harmful(character)


def test_no_faults_raise_nothing() -> None:
    reader = FieldReader()
    reader.raise_faults()
    assert reader.count == 0


@pytest.mark.parametrize("value", [0, 1, -1, 0.5, 1.0])
def test_number(value: float) -> None:
    reader = FieldReader()
    found = reader.number(value, "at", NAME, -1.0, 1.0)
    assert found == value
    assert isinstance(found, float)
    assert reader.count == 0


@pytest.mark.parametrize(
    ("value", "phrase"),
    [
        (None, "enter a number, not nothing"),
        ("", "enter a number, not nothing"),
        ("5", "enter a number, not '5'"),
        (True, "enter a number, not true"),
        ([1], "enter a number, not a list"),
        (math.nan, "enter a number, not nan"),
        (math.inf, "enter -1 to 1, not inf"),
        (1.5, "enter -1 to 1, not 1.5"),
        (10**400, "enter -1 to 1, not a far larger number"),
    ],
)
def test_number_failure(value: object, phrase: str) -> None:
    reader = FieldReader()
    assert reader.number(value, "at", NAME, -1.0, 1.0) is None
    ((field, text),) = faults_of(reader)
    assert field == "at"
    assert text == f"rounds: {phrase}".replace("-1", "−1")


@given(st.floats() | st.integers())
def test_number_lets_nothing_through_that_is_not_in_range(value: float) -> None:
    found = FieldReader().number(value, "at", NAME, -5.0, 5.0)
    assert found is None or -5.0 <= found <= 5.0


def test_section_and_listing() -> None:
    reader = FieldReader()
    assert reader.section({"a": 1}, "at", ("a", "b")) == {"a": 1}
    assert reader.listing([1, 2], "at", NAME, 1, 2) == (1, 2)
    assert reader.listing((1,), "at", NAME, 1, 2) == (1,)
    assert reader.count == 0


def test_section_failure() -> None:
    reader = FieldReader()
    assert reader.section([1], "at", ("a",)) == {}
    reader.section({"a": 1, "oops": 2}, "at", ("a",))
    reader.section({"oops": 2}, "", ("a",))
    assert [field for field, _ in faults_of(reader)] == ["at", "at.oops", "oops"]


@pytest.mark.parametrize("value", [None, "ab", {"a": 1}, 5, [], [1, 2, 3]])
def test_listing_failure(value: object) -> None:
    reader = FieldReader()
    assert reader.listing(value, "at", NAME, 1, 2) == ()
    assert reader.count == 1


def test_choice() -> None:
    reader = FieldReader()
    assert reader.choice("b", "at", NAME, ("a", "b")) == "b"
    assert reader.count == 0


@pytest.mark.parametrize("value", [None, "c", "A", 1, ["a"], {}])
def test_choice_failure(value: object) -> None:
    reader = FieldReader()
    assert reader.choice(value, "at", NAME, ("a", "b")) == "a"
    ((_, text),) = faults_of(reader)
    assert "enter one of a and b" in text


def test_text() -> None:
    reader = FieldReader()
    typed = "Né <b>\n'" + "x" * 50
    assert reader.text(typed, "at", NAME) == typed
    assert reader.count == 0


@pytest.mark.parametrize(
    ("value", "phrase"),
    [
        (None, "enter text, not nothing"),
        (5, "enter text, not 5"),
        ("x" * (LONGEST_TEXT + 1), "at most 2000 characters, not 2001"),
        ("a\x00", "characters that can't be shown"),
        ("\u202eabc", "characters that can't be shown"),
    ],
)
def test_text_failure(value: object, phrase: str) -> None:
    reader = FieldReader()
    assert reader.text(value, "at", NAME) == ""
    ((_, text),) = faults_of(reader)
    assert phrase in text
