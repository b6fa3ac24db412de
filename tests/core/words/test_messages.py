"""Quantities put into words."""

from __future__ import annotations

import pytest

from sweepsheet.maths.units import INCH, METRIC
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.messages import (
    Angle,
    BareDistance,
    ClockPosition,
    Degrees,
    Direction,
    Distance,
    Language,
    Message,
    Probability,
    Quantity,
    StockSize,
)


@pytest.mark.parametrize(
    ("quantity", "text"),
    [
        (Distance(5.5, INCH), "5.5 thou"),
        (Distance(-0.1397, METRIC), "−0.140 mm"),
        (BareDistance(5.5, INCH), "5.5"),
        (ClockPosition(270.0), "9 o'clock"),
        (ClockPosition(315.0), "10:30"),
        (ClockPosition(0.0), "12 o'clock"),
        (Direction(180.0), "6 o'clock"),
        (Direction(309.8), "10:20"),
        (Degrees(309.8), "310°"),
        (Degrees(-0.2), "0°"),
        (Degrees(-10.0), "−10°"),
        (Degrees(359.7), "0°"),
        (Probability(0.954), "95%"),
        (Probability(0.9999), "over 99%"),
        (Probability(1.0), "over 99%"),
        (Probability(0.0), "under 1%"),
        (Probability(0.5), "50%"),
        (0.004, "0.004"),
        (12, "12"),
        ("as typed {x}", "as typed {x}"),
        ((), ""),
        ((ClockPosition(0.0),), "12 o'clock"),
        (
            (ClockPosition(0.0), ClockPosition(90.0), ClockPosition(180.0)),
            "12 o'clock, 3 o'clock and 6 o'clock",
        ),
        (Message("sense.high"), "high"),
        (Message("sweep.numbered", {"n": 2, "what": Message("what.face")}), "face sweep 2"),
        (StockSize(0.178, METRIC), "0.178 mm"),
        (StockSize(7.0, INCH), "7 thou"),
        (Angle(0.00125, INCH), "1.25 thou per inch"),
        (Angle(0.00125, METRIC), "1.25 mm per meter"),
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
    assert ENGLISH.say("usual.named", usual="As found", name="{n} {0}") == "As found: {n} {0}"


def test_another_language_is_another_table() -> None:
    """Sentences and the decimal mark come from the table alone."""
    other = Language("xx", {"number.decimal_mark": ",", "unit.mm": "mm", "a": "[{x}]"})
    assert other.say("a", x=Distance(-0.5, METRIC)) == "[−0,500 mm]"


def test_say_failure_unknown_key() -> None:
    with pytest.raises(KeyError, match="no such key"):
        ENGLISH.say("no such key")


def test_say_failure_missing_quantity() -> None:
    with pytest.raises(KeyError, match="pm"):
        ENGLISH.say("answer.pm")
