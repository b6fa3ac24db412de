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

from sweepsheet.maths.clock import normalise, parse_position
from sweepsheet.page import handle_request
from sweepsheet.words.faults import InputError

Form = dict[str, str]
ROTATE = re.compile(r"rotate\((-?[\d.]+) (\d+) (\d+)\)")
ORDERS = [
    "12 3 6 9", "12 9 6 3", "12 1:30 3 4:30 6 7:30 9 10:30", "12 10:30 9 7:30 6 4:30 3 1:30",
    "3 6 9 12", "12 4 8", "9:30 6:30 3:30 12:30",
]  # fmt: skip


def ask(form: Form, at: str = "rounds.0.bore", language: str = "en") -> dict[str, Any]:
    request = {"guide": {"form": form, "at": at}, "language": language}
    found: dict[str, Any] = json.loads(handle_request(json.dumps(request)))
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
    turn = "Turn the crank clockwise to 3 o'clock. For the helper at the front: counterclockwise."
    assert steps[2]["turn"] == turn
    assert steps[2]["spoken"] == f"{turn} Read the dial."
    assert "Bring the dial to 12 o'clock; zero it." in steps[0]["watch"][0]


@pytest.mark.parametrize(
    ("order", "behind", "front"),
    [
        ("12 9 6 3", "counterclockwise", "clockwise"),
        ("12 3 6 9", "clockwise", "counterclockwise"),
    ],
)
def test_the_helper_at_the_front_is_told_what_he_sees(order: str, behind: str, front: str) -> None:
    """He looks at the crank from its other end. Most engines run clockwise there.

    Common practice, no source.
    """
    steps = ask({"positions": order})["steps"]
    assert f"turn slowly, {front} as seen from there" in words_of(steps[0])
    for step in steps[2:-1]:
        assert f"Turn the crank {behind} to" in step["turn"]
        assert f"For the helper at the front: {front}." in step["turn"]


def test_nobody_is_told_to_turn_back() -> None:
    """It can undo the bolt the bar is on, or upset a tensioner: round again, or as is allowed."""
    steps = ask({})["steps"]
    for step in steps[2:-1]:
        assert "Go round again to it." in words_of(step)
        assert "only where the manufacturer allows it" in words_of(step)
    assert "only in its tightening direction" in words_of(steps[0])
    said = " ".join(words_of(step) for step in steps)
    assert "go back" not in said


@pytest.mark.parametrize(("plus_when", "sign"), [("plunger_in", "plus"), ("plunger_out", "minus")])
def test_the_sense_of_the_dial_is_tried_before_the_sweep(plus_when: str, sign: str) -> None:
    """A wrong sense turns every aim round."""
    ready = words_of(ask({"indicator.plus_when": plus_when})["steps"][0])
    assert f"the dial must go to {sign}." in ready


@pytest.mark.parametrize(
    ("form", "most"),
    [
        ({}, "1.0 thou"),
        ({"indicator.step": "0.1"}, "0.2 thou"),
        ({"indicator.step": "x"}, "1.0 thou"),
        ({"units": "metric"}, "0.020 mm"),
        ({"units": "metric", "indicator.step": "0,002"}, "0.004 mm"),
    ],
)
def test_back_at_the_start_says_how_far_off_may_pass(form: Form, most: str) -> None:
    """As many steps of the dial as the answer lets pass."""
    assert f"More than {most} off: something slipped." in words_of(ask(form)["steps"][-1])


def test_the_dial_is_upside_down_at_the_bottom_alone() -> None:
    steps = ask({"positions": "12 10:30 9 7:30 6 4:30 3 1:30"})["steps"]
    below = [step["label"] for step in steps if "upside down" in words_of(step)]
    assert below == ["7:30", "6 o'clock", "4:30"]


@pytest.mark.parametrize("at", ["rounds.0.bore", "rounds.0.face"])
def test_no_stop_says_more_than_can_be_read(at: str) -> None:
    """In very large type: at most three short sentences of what to do, ten lines to make ready."""
    steps = ask({"face.end_float": "held"}, at)["steps"]
    assert len(steps[0]["watch"]) <= 10
    for step in steps[1:]:
        assert len(re.findall(r"[.?](?= |$)", step["turn"])) <= 3
        assert len(step["watch"]) <= 4


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
    way = "clockwise" if turns[0] > 0 else "counterclockwise"
    assert all(step["turn"].startswith(f"Turn the crank {way}") for step in steps[2:])


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
    assert all("End play goes straight" in words_of(step) for step in shown["steps"][:-1])
    bore = ask(form)
    assert not any("End play" in words_of(step) for step in bore["steps"])


def test_a_held_crank_is_pushed_at_every_stop() -> None:
    for end_float in ("held", "second_held"):
        steps = ask({"face.end_float": end_float}, "rounds.0.face")["steps"]
        assert "choose one way" in words_of(steps[0])
        push = "Push the crank to its stop the chosen way, then let go."
        assert all(push in words_of(step) for step in steps[1:])
        assert not any("Hands off" in words_of(step) for step in steps)
        assert all("Push the crank" in step["spoken"] for step in steps[1:])


def test_a_second_dial_is_drawn_and_read() -> None:
    one = ask({"face.end_float": "held"}, "rounds.0.face")
    two = ask({"face.end_float": "second"}, "rounds.0.face")
    assert two["picture"].count('r="12"') == one["picture"].count('r="12"') + 1
    assert "Zero both" in words_of(two["steps"][0])
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
        ("12 25 6", "position 2: enter a position"),
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
    turn = (
        "Gire el cigüeñal en sentido antihorario hasta las 9. Para el ayudante, delante: en sentido"
    )
    assert steps[2]["turn"] == f"{turn} horario."
