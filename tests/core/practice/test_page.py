"""What the practice page is shown: texts and angles, faults at their fields, the truth."""

from __future__ import annotations

import json
import re
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.page import handle_request
from sweepsheet.practice.housing import TURN

Form = dict[str, str]
FOUR = {"exercise.seed": "417", "exercise.level": "1", "exercise.positions": "4"}


def ask(form: Form) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(handle_request(json.dumps({"practice": form})))
    return found


def noted(form: Form) -> Form:
    """The form with the sweep noted that its dial shows: each mark, and back at the start."""
    practice = ask(form)["practice"]
    entries = [practice["turn"][stop] for stop in practice["stops"]]
    return form | {entry["field"]: entry["typed"] for entry in entries}


def test_a_whole_turn_is_shown_in_whole_degrees() -> None:
    practice = ask(FOUR)["practice"]
    assert practice["title"] == "Exercise 417, level 1"
    assert practice["stops"] == [0, 90, 180, 270, TURN]
    assert len(practice["turn"]) == TURN + 1
    assert practice["turn"][90]["crank"].startswith("rotate(90 ")
    assert practice["turn"][90]["field"] == "rounds.0.bore.sweeps.0.1"
    assert practice["turn"][TURN]["field"] == "rounds.0.bore.closing.0"
    assert "field" not in practice["turn"][45]
    assert practice["turn"][0]["needle"].startswith("rotate(0 ")


def test_turning_the_other_way_comes_to_nine_first() -> None:
    practice = ask(FOUR | {"turn": "anticlockwise"})["practice"]
    assert practice["positions"] == ["12", "9", "6", "3"]
    assert practice["turn"][90]["spoken"].startswith("9 o'clock: ")
    assert practice["sense"] == -1


@pytest.mark.parametrize("level", ["1", "2", "3"])
@pytest.mark.parametrize("part", ["bore", "face"])
@pytest.mark.parametrize("units", ["inch", "metric"])
def test_the_needle_points_at_what_is_noted(level: str, part: str, units: str) -> None:
    """A turn of it is 50 thou or 1 mm; the small hand goes a tenth of its round with it."""
    form = FOUR | {"exercise.level": level, "exercise.part": part, "units": units}
    practice = ask(form)["practice"]
    turn = 50.0 if units == "inch" else 1.0
    step = 0.5 if units == "inch" else 0.01
    for entry in practice["turn"]:
        if "typed" in entry:
            needle = float(entry["needle"].removeprefix("rotate(").split()[0])
            counter = float(entry["counter"].removeprefix("rotate(").split()[0])
            assert abs(needle / 360.0 * turn - float(entry["typed"])) <= step / 2 + turn / 3000
            assert counter == pytest.approx(180.0 + needle / 10.0, abs=0.1)


@pytest.mark.parametrize("contact", ["inside", "outside"])
@pytest.mark.parametrize("part", ["bore", "face"])
def test_the_drawings_can_be_read_by_an_xml_reader(contact: str, part: str) -> None:
    """... and hold the groups that the page turns."""
    form = FOUR | {
        "bore.contact": contact, "exercise.part": part, "exercise.rounds": "2",
        "rounds.1.dowels.0.offset": "7", "rounds.1.dowels.0.aim": "1:30",
    }  # fmt: skip
    practice = ask(form)["practice"]
    moving = {"dial": {"needle", "counter"}, "crank": {"crank"}}
    for name, wanted in moving.items():
        root = ET.fromstring(practice[name])  # noqa: S314 - our own text
        assert {each.get("data-turns") for each in root.iter()} - {None} == wanted
        for each in root.iter("{http://www.w3.org/2000/svg}circle"):
            x, y, r = (float(each.get(key, "0")) for key in ("cx", "cy", "r"))
            _, _, width, height = map(float, root.get("viewBox", "").split())
            assert r <= x <= width - r
            assert r <= y <= height - r


def test_what_was_noted_is_answered_as_on_the_main_page() -> None:
    form = noted(FOUR)
    shown = ask(form)["answer"]
    assert shown["state"] == "answer"
    assert shown["limit"] == "Limit: 5.0 thou offset (10.0 thou TIR)"
    texts = {name: text for name, text in form.items() if name.startswith("rounds.")}
    plain = handle_request(
        json.dumps({"form": {"positions": "12 3 6 9", "indicator.sag": "0", **texts}})
    )
    assert json.loads(plain)["sheet"]["headline"] == shown["sheet"]["headline"]


def test_nothing_is_told_of_the_truth_until_it_is_asked_for() -> None:
    assert ask(noted(FOUR))["practice"]["truth"] is None
    truth = ask(noted(FOUR) | {"exercise.truth": "1"})["practice"]["truth"]
    (as_found, face) = truth["rows"]
    assert as_found[0] == "As found"
    assert as_found[3].endswith("within the ± of the readings")
    assert face[2] == "not swept"


def test_the_truth_names_a_sign_that_was_turned_round() -> None:
    """The right sizes, every sign wrong."""
    form = noted(FOUR)
    turned = {n: str(-float(t)) for n, t in form.items() if n.startswith("rounds.")}
    truth = ask(form | turned | {"exercise.truth": "1"})["practice"]["truth"]
    assert truth["rows"][0][3] == "the opposite way: a sign is reversed"


def test_a_round_without_readings_does_not_take_the_place_of_the_next() -> None:
    """Fitted twice, and only then swept again."""
    fits = {
        "exercise.rounds": "3",
        "rounds.1.dowels.0.offset": "7", "rounds.1.dowels.0.aim": "3",
        "rounds.2.dowels.0.offset": "7", "rounds.2.dowels.0.aim": "9",
    }  # fmt: skip
    form = noted(noted(FOUR) | fits)
    assert "rounds.2.bore.sweeps.0.0" in form
    truth = ask(form | {"exercise.truth": "1"})["practice"]["truth"]
    assert [row[2] == "not swept" for row in truth["rows"]] == [False, True, False, True]
    assert truth["rows"][2][0] == "Recheck 2: 7 thou dowels, aimed at 9 o'clock"
    assert truth["rows"][2][3].endswith("within the ± of the readings")


def test_a_second_sweep_is_noted_beside_the_first() -> None:
    form = FOUR | {"exercise.level": "2"}
    second = noted(noted(form) | {"rounds.0.bore.sweeps.1.0": ""})
    assert {f"rounds.0.bore.sweeps.1.{i}" for i in range(4)} <= second.keys()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("exercise.seed", "0"), ("exercise.seed", "1000000"), ("exercise.seed", "1.5"),
        ("exercise.seed", "<img src=x>"), ("exercise.seed", "9" * 5000), ("exercise.seed", ""),
        ("exercise.level", "8"), ("exercise.level", "0"),
        ("exercise.level", "two"), ("exercise.positions", "5"),
        ("exercise.part", "flywheel"), ("exercise.rounds", "21"), ("exercise.rounds", "-1"),
        ("units", "furlong"), ("bore.contact", "both"), ("indicator.plus_when", ""),
        ("face.plunger", "up"), ("turn", "back"),
    ],
)  # fmt: skip
def test_a_wrong_exercise_is_a_fault_at_its_field(name: str, text: str) -> None:
    shown = ask(FOUR | {name: text})
    assert shown["answer"] is None
    assert [fault["field"] for fault in shown["practice"]["faults"]] == [name]
    assert len(shown["practice"]["faults"][0]["text"]) < 200


@pytest.mark.parametrize(
    ("offset", "aim", "field"),
    [
        ("seven", "3", "rounds.1.dowels.0.offset"), ("-7", "3", "rounds.1.dowels.0.offset"),
        ("1e9", "3", "rounds.1.dowels.0.offset"), ("43", "3", "rounds.1.dowels.0.offset"),
        ("7", "25", "rounds.1.dowels.0.aim"), ("7", "", "rounds.1.dowels.0.aim"),
        ("7", "<b>", "rounds.1.dowels.0.aim"),
    ],
)  # fmt: skip
def test_dowels_that_cannot_be_fitted_are_a_fault(offset: str, aim: str, field: str) -> None:
    form = FOUR | {
        "exercise.rounds": "2", "rounds.1.dowels.0.offset": offset, "rounds.1.dowels.0.aim": aim,
    }  # fmt: skip
    assert [fault["field"] for fault in ask(form)["practice"]["faults"]] == [field]


NAMES = st.sampled_from(
    ["exercise.seed", "exercise.level", "exercise.rounds", "exercise.part", "exercise.truth",
     "units", "turn", "rounds.0.bore.sweeps.0.0", "rounds.0.bore.sweeps.99.0",
     "rounds.1.dowels.0.offset", "rounds.1.dowels.0.aim", "rounds.0.face.closing.0"]
)  # fmt: skip


@given(st.dictionaries(NAMES, st.text(max_size=12) | st.integers(-9, 99).map(str)))
def test_anything_typed_is_answered(form: Form) -> None:
    """Faults or a turn, never a breakdown, and no markup of what was typed."""
    shown = ask(form)["practice"]
    assert shown["state"] in ("faults", "ready")
    if shown["state"] == "ready":
        assert not re.search(r"<script|onload", shown["crank"] + shown["dial"])


@pytest.mark.parametrize(
    "request_", ['{"practice": 1}', '{"practice": {"a": 1}}', '{"practice": null}']
)
def test_what_is_no_form_is_refused(request_: str) -> None:
    with pytest.raises(ValueError, match="filled-in form"):
        handle_request(request_)
