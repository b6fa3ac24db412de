"""What leads through a sweep: the order of the stops, the way of turning, the words, the picture.

That 3 o'clock is to the right seen from behind, a quarter turn clockwise from 12, and that a dial
is set to zero at the first position, is common practice, no source.
"""

from __future__ import annotations

import json
import re
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from sweepsheet.clock import normalise, parse_position
from sweepsheet.errors import InputError
from sweepsheet.page import answer_text

Form = dict[str, str]
ROTATE = re.compile(r"rotate\((-?[\d.]+) (\d+) (\d+)\)")
ORDERS = [
    "12 3 6 9", "12 9 6 3", "12 1:30 3 4:30 6 7:30 9 10:30", "12 10:30 9 7:30 6 4:30 3 1:30",
    "3 6 9 12", "12 4 8", "9:30 6:30 3:30 12:30",
]  # fmt: skip


def ask(form: Form, at: str = "rounds.0.bore", language: str = "en") -> dict[str, Any]:
    request = {"guide": {"form": form, "at": at}, "language": language}
    found: dict[str, Any] = json.loads(answer_text(json.dumps(request)))
    return found


def crank_of(step: dict[str, Any]) -> float:
    found = ROTATE.fullmatch(step["crank"])
    assert found, step
    return float(found[1])


def words_of(step: dict[str, Any]) -> str:
    return " ".join([step["turn"], *step["watch"]])


def test_four_stops_clockwise_and_back() -> None:
    steps = ask({"positions": "12 3 6 9"})["steps"]
    assert [step["label"] for step in steps] == [
        "Get ready", "12 o'clock", "3 o'clock", "6 o'clock", "9 o'clock", "Back at the start",
    ]  # fmt: skip
    assert [crank_of(step) for step in steps] == [0, 0, 90, 180, 270, 360]
    assert steps[2]["turn"] == "Turn the crank clockwise to 3 o'clock."
    assert steps[2]["spoken"] == "Turn the crank clockwise to 3 o'clock. Read the dial."
    assert "Stand the dial at 12 o'clock and set it to zero." in steps[0]["watch"]


@pytest.mark.parametrize("order", ORDERS)
def test_the_crank_stands_at_each_position_and_never_turns_back(order: str) -> None:
    """The angles are those of ``clock``; one whole turn is made, in one way."""
    steps = ask({"positions": order})["steps"]
    angles = [crank_of(step) for step in steps[1:]]
    wanted = [parse_position(word) for word in order.split()]
    assert [normalise(angle) for angle in angles[:-1]] == wanted
    turns = [b - a for a, b in pairwise(angles)]
    assert abs(sum(turns)) == 360
    assert all(turn > 0 for turn in turns) or all(turn < 0 for turn in turns)
    way = "clockwise" if turns[0] > 0 else "anticlockwise"
    assert all(f" {way} " in step["turn"] or f" {way}," in step["turn"] for step in steps[2:])


def test_three_o_clock_is_drawn_to_the_right() -> None:
    """The dial is drawn at 12, above the middle; a quarter turn clockwise brings it right."""
    shown = ask({"positions": "12 3 6 9"})
    found = ROTATE.fullmatch(shown["steps"][2]["crank"])
    assert found
    middle_x, middle_y = float(found[2]), float(found[3])
    root = ET.fromstring(shown["picture"])  # noqa: S314 - our own drawing
    crank = next(part for part in root.iter() if part.get("data-turns") == "crank")
    svg = "{http://www.w3.org/2000/svg}"
    dial = next(part for part in crank.iter(f"{svg}circle") if part.get("r") == "12")
    assert float(dial.get("cx", "")) == middle_x
    assert float(dial.get("cy", "")) < middle_y
    three = next(text for text in root.iter(f"{svg}text") if text.text == "3")
    assert float(three.get("x", "")) > middle_x  # and SVG turns plus clockwise on the screen


def test_positions_out_of_order_have_no_arrow_and_say_so() -> None:
    shown = ask({"positions": "12 6 3 9"})
    angles = [crank_of(step) for step in shown["steps"][1:]]
    assert angles == sorted(angles)
    assert "always the same way" in shown["steps"][2]["turn"]
    assert shown["picture"].count("pencil-fill") < ask({})["picture"].count("pencil-fill")


@pytest.mark.parametrize("form", [{}, {"face.end_float": "free"}])
def test_a_face_with_end_float_is_warned_of(form: Form) -> None:
    shown = ask(form, "rounds.0.face")
    assert all("End float goes straight" in words_of(step) for step in shown["steps"][:-1])
    bore = ask(form)
    assert not any("End float" in words_of(step) for step in bore["steps"])


def test_a_held_crank_is_pushed_at_every_stop() -> None:
    for end_float in ("held", "second_held"):
        steps = ask({"face.end_float": end_float}, "rounds.0.face")["steps"]
        assert "choose one way" in words_of(steps[0])
        assert all("Push the crank the chosen way." in words_of(step) for step in steps[1:])
        assert all("Push the crank" in step["spoken"] for step in steps[1:])


def test_a_second_dial_is_drawn_and_read() -> None:
    one = ask({"face.end_float": "held"}, "rounds.0.face")
    two = ask({"face.end_float": "second"}, "rounds.0.face")
    assert two["picture"].count('r="12"') == one["picture"].count('r="12"') + 1
    assert "set both to zero" in words_of(two["steps"][0])
    assert all("Read both dials" in step["spoken"] for step in two["steps"][1:-1])
    own = {"face.end_float": "held", "rounds.1.face.end_float": "second"}
    assert "both" in words_of(ask(own, "rounds.1.face")["steps"][0])


def test_a_sweep_with_positions_of_its_own() -> None:
    form = {"positions": "12 3 6 9", "rounds.1.bore.positions": "12 8 4"}
    assert len(ask(form)["steps"]) == 6
    steps = ask(form, "rounds.1.bore")["steps"]
    assert [crank_of(step) for step in steps[1:]] == [0, -120, -240, -360]


def test_a_single_position_is_led_to_and_back() -> None:
    assert [crank_of(step) for step in ask({"positions": "6"})["steps"]] == [180, 180, 540]


@pytest.mark.parametrize(
    ("positions", "told"),
    [
        ("12 25 6", "position 2: a clock position"),
        ("12 <b> 6", "'<b>'"),
        (" ".join(["3"] * 99), ""),
    ],
)
def test_positions_that_cannot_be_read(positions: str, told: str) -> None:
    shown = ask({"positions": positions})
    assert shown["state"] == "faults"
    assert shown["text"].startswith("No picture, since the positions can't be read.")
    assert told in shown["text"]


@pytest.mark.parametrize(
    "at", ["", "rounds.0", "companions.pilot_bore", "rounds.x.bore", "rounds.0.bore\n"]
)
def test_what_is_no_sweep_is_refused(at: str) -> None:
    with pytest.raises(InputError):
        ask({}, at)


def test_in_spanish() -> None:
    steps = ask({"positions": "12 9 6 3"}, language="es")["steps"]
    assert steps[2]["turn"] == "Gire el cigüeñal en sentido antihorario hasta las 9."
