"""What leads through the lengths: their order, their words, one length in each picture."""

from __future__ import annotations

import json
import re
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from sweepsheet.drawing.depth_measures import (
    ENGINE,
    GEARBOX,
    LETTERS,
    engine_measures,
    gearbox_measures,
)
from sweepsheet.page import handle_request
from sweepsheet.words.en.core import ENGLISH

ENDS = r'd="M([\d.]+) 98V[\d.]+M([\d.]+) 98'
SVG = "{http://www.w3.org/2000/svg}"


def ask(language: str = "en") -> dict[str, Any]:
    request = {"guide": {"form": {}, "at": "depth"}, "language": language}
    found: dict[str, Any] = json.loads(handle_request(json.dumps(request)))
    return found


def words_of(step: dict[str, Any]) -> str:
    return " ".join([step["turn"], *step["watch"]])


def test_each_length_in_the_order_of_the_form() -> None:
    found = ask()
    assert found["state"] == "guide"
    ready, *steps = found["steps"]
    assert ready["label"] == "Get ready"
    assert "jack made for it" in words_of(ready)
    assert [step["label"] for step in steps] == list("ABCDEFGHIJKL")
    assert [step["field"] for step in steps] == [f"depth.{name}" for name in LETTERS]
    for step in steps:
        assert step["spoken"] == f"{step['label']}. {step['turn']}"


def test_what_is_watched_for_is_what_can_spoil_it() -> None:
    """The crank's end play counts on the engine alone; the length of a part is from no place."""
    steps = {step["field"].removeprefix("depth."): step for step in ask()["steps"]}
    for name in (*ENGINE, *GEARBOX):
        told = words_of(steps[name])
        is_part = name in ("pilot_length", "journal_length")
        assert ("Push the crank" in told) == (name in ENGINE and not is_part)
        assert ("thickness" in told) == (not is_part)
        assert "three places" in told
        assert ("crank flange" in told) == (name in ENGINE and not is_part)
        assert ("gearbox's face" in told) == (name in GEARBOX and not is_part)


@pytest.mark.parametrize("name", LETTERS)
def test_the_picture_has_that_length_alone(name: str) -> None:
    """From the place to the place that it has in the picture of all of them."""
    step = next(s for s in ask()["steps"] if s["field"] == f"depth.{name}")
    drawing = ET.fromstring(step["picture"])  # noqa: S314 - our own
    letters = [t.text for t in drawing.iter(f"{SVG}text") if t.text in LETTERS.values()]
    assert letters == [LETTERS[name]]
    (ends,) = re.findall(ENDS, step["picture"])
    names, whole = (
        (ENGINE, engine_measures("")) if name in ENGINE else (GEARBOX, gearbox_measures(""))
    )
    assert ends == re.findall(ENDS, whole)[names.index(name)]


def test_it_is_said_in_spanish() -> None:
    steps = ask("es")["steps"]
    assert steps[0]["label"] == "Preparar"
    assert "brida del cigüeñal" in words_of(steps[1])
    assert ENGLISH.say("guide.lengths.places") not in words_of(steps[1])
