"""What the page asks of a photo: readings as they are typed, and bad requests refused."""

from __future__ import annotations

import json
from typing import Any

import pytest

from sweepsheet.page import handle_request
from sweepsheet.words.faults import InputError

SCALE: dict[str, Any] = {"divisions": 100, "step": 1, "clockwise": True}
TAPS: dict[str, Any] = {
    "middle": [100, 100], "zero": [100, 20], "tip": [180, 100], "sigma": 1, "slant": 0,
}  # fmt: skip


def asked(dial: dict[str, Any], language: str = "en") -> dict[str, Any]:
    shown: dict[str, Any] = json.loads(
        handle_request(json.dumps({"dial": dial, "language": language}))
    )
    return shown


def test_three_taps_come_to_a_reading() -> None:
    shown = asked({"scale": SCALE, "taps": TAPS})
    assert shown == {
        "state": "read", "reading": 25.0, "pm": 0.8, "turn": 100.0, "typed": "25",
        "text": "Reading 25, give or take 0.8.",
        "turns": "The photo does not show whole turns. Add those of the small hand.",
    }  # fmt: skip


def test_a_reading_is_typed_with_a_tenth_of_a_division() -> None:
    taps = TAPS | {"tip": [20, 99]}
    assert asked({"scale": SCALE, "taps": taps})["typed"] == "-24.8"
    fine = SCALE | {"step": 0.01}
    shown = asked({"scale": fine, "taps": taps}, "es")
    assert (shown["typed"], shown["pm"]) == ("-0.248", 0.008)
    assert shown["text"] == "Lectura −0,248, con un margen de 0,008."
    assert asked({"scale": SCALE | {"step": 10}, "taps": taps})["typed"] == "-248"
    assert asked({"scale": SCALE, "taps": TAPS | {"tip": [100, 30]}})["typed"] == "0"


def test_a_refusal_says_what_to_do() -> None:
    shown = asked({"scale": SCALE, "taps": TAPS | {"tip": [101, 100]}})
    assert (shown["state"], shown["code"]) == ("refused", "taps")
    assert shown["text"] == "Two taps are too close. Tap the middle, the zero, then the tip."


@pytest.mark.parametrize(
    ("part", "name", "value"),
    [
        ("scale", "divisions", 1), ("scale", "divisions", 10.5), ("scale", "divisions", "100"),
        ("scale", "divisions", True), ("scale", "divisions", 100_000), ("scale", "step", 0),
        ("scale", "step", None), ("scale", "clockwise", "yes"), ("scale", "clockwise", 1),
        ("taps", "middle", [1]), ("taps", "middle", "12"), ("taps", "zero", [1, None]),
        ("taps", "tip", [1, 1e9]), ("taps", "sigma", 0), ("taps", "sigma", -1),
        ("taps", "slant", 90), ("taps", "slant", None),
    ],
)  # fmt: skip
def test_what_is_no_request_is_refused(part: str, name: str, value: object) -> None:
    dial = {"scale": dict(SCALE), "taps": dict(TAPS)}
    dial[part][name] = value
    with pytest.raises(InputError):
        asked(dial)


@pytest.mark.parametrize(
    "dial", [{}, {"scale": SCALE}, {"scale": SCALE, "taps": []}, {"taps": TAPS}]
)
def test_half_a_request_is_refused(dial: dict[str, Any]) -> None:
    with pytest.raises(InputError):
        asked(dial)
