"""Quantities put into words."""

from __future__ import annotations

import pytest

from sweepsheet.maths.units import INCH, METRIC
from sweepsheet.words.english import ENGLISH
from sweepsheet.words.messages import (
    Angle,
    At,
    Chance,
    Degrees,
    Language,
    Message,
    Plain,
    Quantity,
    Size,
    Small,
    Toward,
)


@pytest.mark.parametrize(
    ("quantity", "text"),
    [
        (Small(5.5, INCH), "5.5 thou"),
        (Small(-0.1397, METRIC), "−0.140 mm"),
        (Plain(5.5, INCH), "5.5"),
        (At(270.0), "9 o'clock"),
        (At(315.0), "10:30"),
        (At(0.0), "12 o'clock"),
        (Toward(180.0), "6 o'clock"),
        (Toward(309.8), "10:20 (between 10 and 11 o'clock)"),
        (Degrees(309.8), "310°"),
        (Degrees(-0.2), "0°"),
        (Degrees(-10.0), "−10°"),
        (Degrees(359.7), "0°"),
        (Chance(0.954), "95%"),
        (Chance(0.9999), "over 99%"),
        (Chance(1.0), "over 99%"),
        (Chance(0.0), "under 1%"),
        (Chance(0.5), "50%"),
        (0.004, "0.004"),
        (12, "12"),
        ("as typed {x}", "as typed {x}"),
        ((), ""),
        ((At(0.0),), "12 o'clock"),
        ((At(0.0), At(90.0), At(180.0)), "12 o'clock, 3 o'clock and 6 o'clock"),
        (Message("sense.high"), "high"),
        (Message("sweep.numbered", {"n": 2, "what": Message("what.face")}), "face sweep 2"),
        (Size(0.178, METRIC), "0.178 mm"),
        (Size(7.0, INCH), "7 thou"),
        (Angle(0.00125, INCH), "1.25 thou an inch"),
        (Angle(0.00125, METRIC), "1.25 mm a metre"),
    ],
)
def test_word(quantity: Quantity, text: str) -> None:
    assert ENGLISH.word(quantity) == text


@pytest.mark.parametrize(
    ("angle", "side"),
    [
        (0, "up"), (44, "up and right"), (90, "right"), (135, "down and right"), (180, "down"),
        (225, "down and left"), (270, "left"), (315, "up and left"), (350, "up"), (338, "up"),
    ],
)  # fmt: skip
def test_side(angle: float, side: str) -> None:
    assert ENGLISH.side(angle) == side


def test_a_message_may_hold_messages() -> None:
    values: dict[str, Quantity] = {"measure": Message("settle.sweep"), "now": 1.5, "then": 1.0}
    said = ENGLISH.text(Message("settle.could", values))
    assert said == "To settle it, sweep once more: ± 1.5 becomes about ± 1."


def test_typed_braces_stay_braces() -> None:
    assert ENGLISH.say("sheet.round", n=1, name="{n} {0}") == "Round 1: {n} {0}"


def test_another_language_is_another_table() -> None:
    """Sentences and the decimal mark come from the table alone."""
    other = Language("xx", {"number.decimal_mark": ",", "unit.mm": "mm", "a": "[{x}]"})
    assert other.say("a", x=Small(-0.5, METRIC)) == "[−0,500 mm]"


def test_say_failure_unknown_key() -> None:
    with pytest.raises(KeyError, match="no such key"):
        ENGLISH.say("no such key")


def test_say_failure_missing_quantity() -> None:
    with pytest.raises(KeyError, match="pm"):
        ENGLISH.say("answer.pm")
