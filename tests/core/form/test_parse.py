"""What a person types, as numbers and positions."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.form.parse import number_list, number_or_text, position_list, position_or_text


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("5", 5.0), ("5.5", 5.5), ("5,5", 5.5), (".004", 0.004), (",5", 0.5), ("5.", 5.0),
        ("+3", 3.0), ("-5,5", -5.5), ("\N{MINUS SIGN}5", -5.0), ("\N{EN DASH}5", -5.0),
        (" 5 ", 5.0), ("- 5", -5.0), ("+ 5", 5.0), ("\N{NO-BREAK SPACE}5", 5.0), ("0", 0.0),
        ("", None), ("  ", None), ("-", None), ("+", None), ("\N{MINUS SIGN}", None),
    ],
)  # fmt: skip
def test_number_or_text(typed: str, value: float | None) -> None:
    assert number_or_text(typed) == value


@pytest.mark.parametrize(
    "typed",
    ["o", "5o", "1.2.3", "1,2,3", "--5", "5-", "1e5", "nan", "inf", "0x10", ".", "5 5", "½"],
)
def test_number_or_text_failure(typed: str) -> None:
    """What is no number stays as it was typed: its field then says what is wanted."""
    assert number_or_text(typed) == typed


def test_number_or_text_failure_too_long() -> None:
    """A number beyond all numbers is not let through as infinity."""
    assert number_or_text("9" * 400) == "9" * 400


@given(st.floats(-9999.0, 9999.0))
def test_a_number_comes_back(value: float) -> None:
    """To six decimals, with either mark and either minus sign."""
    text = f"{value:.6f}"
    for shown in (text, text.replace(".", ","), text.replace("-", "\N{MINUS SIGN}")):
        assert number_or_text(shown) == float(text)


@pytest.mark.parametrize(
    ("typed", "values"),
    [
        ("7, 14, 21", [7.0, 14.0, 21.0]), ("7 14 21", [7.0, 14.0, 21.0]),
        ("7;14;21", [7.0, 14.0, 21.0]), ("7,14,21", [7.0, 14.0, 21.0]),
        ("0,178 0,356", [0.178, 0.356]), ("0,178; 0,356", [0.178, 0.356]),
        ("7", [7.0]), ("7,5", [7.5]), ("", []), (" ", []), ("7, ", [7.0]),
        ("7, x, 21", [7.0, "x", 21.0]),
    ],
)  # fmt: skip
def test_number_list(typed: str, values: list[float | str]) -> None:
    assert number_list(typed) == values


@pytest.mark.parametrize(
    ("typed", "value"),
    [("3", 90.0), ("10:30", 315.0), ("45°", 45.0), (" 12 ", 0.0), ("noon", "noon"), ("", None)],
)
def test_position_or_text(typed: str, value: object) -> None:
    assert position_or_text(typed) == value


def test_position_list() -> None:
    assert position_list("12, 3 6;9", 12) == [0.0, 90.0, 180.0, 270.0]
    assert position_list("12 x 6", 12) == [0.0, "x", 180.0]


def test_position_list_stops_one_beyond_the_most() -> None:
    """So that whoever reads it sees that it is one too many, and no more work is done."""
    assert len(position_list("12 " * 5000, 36)) == 37
