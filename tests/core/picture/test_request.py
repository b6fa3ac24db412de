"""What the page asks of a photo: readings as they are typed, and bad requests refused."""

from __future__ import annotations

import json
import random
from base64 import b64encode
from dataclasses import replace
from typing import Any

import pytest

from sweepsheet.form.dial import dial_of
from sweepsheet.page import handle_request
from sweepsheet.picture.request import answer_dial
from sweepsheet.words.en.core import ENGLISH, TABLE
from sweepsheet.words.faults import InputError
from tests.cases.dial_pictures import SIDE, any_view, photo_of
from tests.cases.dial_styles import any_style

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
        "state": "read", "reading": 25.0, "pm": 0.8, "turn": 100.0, "typed": "25", "shown": "25",
        "text": "Reading 25, give or take 0.8.",
        "turns": [
            {"typed": "-175", "shown": "\N{MINUS SIGN}175", "text": "\N{MINUS SIGN}175"},
            {"typed": "-75", "shown": "\N{MINUS SIGN}75", "text": "\N{MINUS SIGN}75"},
            {"typed": "25", "shown": "25", "text": "25, as read"},
            {"typed": "125", "shown": "125", "text": "125"},
            {"typed": "225", "shown": "225", "text": "225"},
        ],
        "note": "The photo does not show whole turns. Add those of the small hand.",
    }  # fmt: skip


def test_a_reading_is_typed_with_a_tenth_of_a_division() -> None:
    taps = TAPS | {"tip": [20, 99]}
    assert asked({"scale": SCALE, "taps": taps})["typed"] == "-24.8"
    fine = SCALE | {"step": 0.01}
    shown = asked({"scale": fine, "taps": taps}, "es")
    assert (shown["typed"], shown["shown"], shown["pm"]) == ("-0.248", "−0,248", 0.008)
    assert shown["text"] == "Lectura −0,248, con un margen de 0,008."
    assert asked({"scale": SCALE | {"step": 10}, "taps": taps})["typed"] == "-248"
    assert asked({"scale": SCALE, "taps": TAPS | {"tip": [100, 30]}})["typed"] == "0"


# A dial of 0 to 100, all round. Common practice, no source: 93.5 on it is 6.5 short of zero.
FORM = {"indicator.shows": "all_round", "indicator.turn": "100"}


@pytest.mark.parametrize(("divisions", "step"), [(100, 1), (40, 2.5), (50, 0.02), (2, 1000)])
@pytest.mark.parametrize("tip", [[180, 100], [20, 99], [100, 30], [97, 180], [101, 20]])
@pytest.mark.parametrize("shows", ["signed", "all_round"])
def test_what_is_typed_is_read_by_the_field_as_what_was_seen(
    divisions: int, step: float, tip: list[int], shows: str
) -> None:
    """Whole turns more and less, and whatever the dial shows: the field takes each as it is."""
    form = {"indicator.shows": shows, "indicator.turn": str(divisions * step)}
    scale = {"divisions": divisions, "step": step, "clockwise": True}
    shown = asked({"scale": scale, "taps": TAPS | {"tip": tip}, "form": form})
    dial = dial_of(form)
    assert dial.reading(shown["typed"]) == shown["reading"]
    read = [dial.reading(each["typed"]) for each in shown["turns"]]
    turn = divisions * step
    assert read == [pytest.approx(shown["reading"] + i * turn) for i in (-2, -1, 0, 1, 2)]


def test_a_dial_numbered_all_round_is_told_as_it_shows() -> None:
    shown = asked({"scale": SCALE, "taps": TAPS | {"tip": [20, 99]}, "form": FORM})
    assert shown["typed"] == "-24.8"
    text = "Reading \N{MINUS SIGN}24.8, give or take 0.8. On the dial: 75.2."
    assert shown["text"] == text
    shown = asked({"scale": SCALE, "taps": TAPS, "form": FORM})
    assert (shown["typed"], shown["shown"]) == ("+25", "+25")
    assert shown["text"] == "Reading 25, give or take 0.8."
    typed = [each["typed"] for each in shown["turns"]]
    assert typed == ["-175", "-75", "+25", "+125", "+225"]


@pytest.mark.parametrize("turn", ["50", "", "x", "0", "1"])
def test_a_turn_that_is_not_the_job_s_is_refused(turn: str) -> None:
    """One of both is wrong, and with it every reading."""
    dial = {"scale": SCALE, "taps": TAPS, "form": FORM | {"indicator.turn": turn}}
    assert asked(dial)["code"] == "turn"
    assert asked(dial | {"form": {"indicator.turn": turn}})["state"] == "read"


@pytest.mark.parametrize("form", ["", [], {"indicator.shows": 1}, {"x": None}])
def test_what_is_no_form_is_refused(form: object) -> None:
    with pytest.raises(InputError):
        asked({"scale": SCALE, "taps": TAPS, "form": form})
    with pytest.raises(InputError):
        answer_dial({"scale": SCALE, "taps": TAPS, "all_round": "yes"}, ENGLISH)


def test_a_refusal_says_what_to_do() -> None:
    shown = asked({"scale": SCALE, "taps": TAPS | {"tip": [101, 100]}})
    assert (shown["state"], shown["code"]) == ("refused", "taps")
    assert shown["text"] == "Two taps are too close. Tap the middle, the zero, then the tip."


@pytest.mark.parametrize(
    ("part", "name", "value"),
    [
        ("scale", "divisions", 1), ("scale", "divisions", 10.5), ("scale", "divisions", [100]),
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


def test_what_was_typed_is_read_as_typed() -> None:
    typed = {"divisions": " 100 ", "step": "0,5", "clockwise": True}
    assert asked({"scale": typed, "taps": TAPS})["turn"] == 50.0


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("divisions", ""), ("divisions", "1"), ("divisions", "10.5"), ("divisions", "<b>"),
        ("step", "0"), ("step", "-1"), ("step", "1e9"), ("step", "x"),
    ],
)  # fmt: skip
def test_what_was_typed_wrongly_is_refused_in_words(name: str, text: str) -> None:
    shown = asked({"scale": SCALE | {name: text}, "taps": TAPS})
    assert (shown["state"], shown["code"]) == ("refused", "scale")
    first = {"reference": {"face": None, "reading": "o"}}
    assert asked({"scale": SCALE, "picture": {}} | first)["code"] == "scale"


@pytest.mark.parametrize(
    "dial", [{}, {"scale": SCALE}, {"scale": SCALE, "taps": []}, {"taps": TAPS}]
)
def test_half_a_request_is_refused(dial: dict[str, Any]) -> None:
    with pytest.raises(InputError):
        asked(dial)


# Pictures ---------------------------------------------------------------------------------------


def picture(grey: bytes, side: int = SIDE) -> dict[str, Any]:
    return {"width": side, "height": side, "grey": b64encode(grey).decode("ascii")}


def test_a_photo_is_read_by_the_face_of_the_first() -> None:
    """The first photo's face goes out as text and comes back with the second photo."""
    rng = random.Random(12)
    style = replace(any_style("tuning", rng), divisions=100, every=10, paper=220, ink=20,
                    needle_ink=20)  # fmt: skip
    view = replace(any_view(rng, held=False), slant=12.0, blur=0.2, noise=2.0, glare=0.0, dirt=0)
    first = asked({"scale": SCALE, "picture": picture(photo_of(style, view, 0.0))})
    assert first["state"] == "face"
    now = picture(photo_of(style, replace(view, roll=77.0), 93.5))
    dial = {"scale": SCALE, "picture": now, "reference": {"face": first["face"], "reading": 0}}
    shown = asked(dial)
    assert shown["state"] == "read"
    assert shown["reading"] == pytest.approx(-6.5, abs=0.25)
    assert 0.0 < shown["pm"] <= 0.3
    # The first reading is what an all-round dial shows: 20, or 6.5 short of zero.
    for typed, reading in (("20", 13.5), ("93.5", -13.0), ("+20", 13.5), ("-6.5", -13.0)):
        reference = {"face": first["face"], "reading": typed}
        found = asked(dial | {"reference": reference, "form": FORM})
        assert found["reading"] == pytest.approx(reading, abs=0.25)
    for typed in ("50", "100", "250"):
        reference = {"face": first["face"], "reading": typed}
        assert asked(dial | {"reference": reference, "form": FORM})["code"] == "first"
    short = {**first["face"], "prints": first["face"]["prints"][:-8]}
    for face in (None, short, first["face"] | {"sigma": -1}, first["face"] | {"angle": "1"}):
        with pytest.raises(InputError):
            asked(dial | {"reference": {"face": face, "reading": 0}})
    with pytest.raises(InputError):
        asked(dial | {"reference": {"face": first["face"]}})


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_photo_of_nothing_is_refused_in_words(language: str) -> None:
    shown = asked({"scale": SCALE, "picture": picture(bytes(SIDE * SIDE))}, language)
    assert (shown["state"], shown["code"]) == ("refused", "outline")
    assert (shown["text"] == TABLE["picture.refused.outline"]) == (language == "en")


@pytest.mark.parametrize(("width", "height"), [(159, 159), (240, 159), (159, 240), (1, 1)])
def test_a_small_picture_is_refused_in_words(width: int, height: int) -> None:
    small = picture(bytes(width * height)) | {"width": width, "height": height}
    shown = asked({"scale": SCALE, "picture": small})
    assert (shown["state"], shown["code"]) == ("refused", "small")
    assert "too small to be read by itself" in shown["text"]
    assert asked({"scale": SCALE, "picture": picture(bytes(160 * 160), 160)})["code"] == "outline"


@pytest.mark.parametrize(
    "wrong",
    [
        [], {}, picture(b"", 0), picture(bytes(100), 160), picture(bytes(400 * 400), 400),
        picture(bytes(SIDE)), picture(bytes(3 * SIDE * SIDE)),
        picture(bytes(SIDE * SIDE)) | {"grey": "?" * (SIDE * SIDE)},
        picture(bytes(SIDE * SIDE)) | {"grey": "\u00e9" * (SIDE * SIDE)},
        picture(bytes(SIDE * SIDE)) | {"grey": 7},
        picture(bytes(SIDE * SIDE)) | {"width": 240.5},
    ],
)  # fmt: skip
def test_what_is_no_picture_is_refused(wrong: object) -> None:
    with pytest.raises(InputError):
        asked({"scale": SCALE, "picture": wrong})
