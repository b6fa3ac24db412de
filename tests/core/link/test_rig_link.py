"""A rig as a file and in a link: there and back, and nothing foreign comes in."""

from __future__ import annotations

import json
from typing import Any

import pytest

from sweepsheet.files.rig_file import LONGEST_RIG, RIG_FIELDS
from sweepsheet.link.codec import LONGEST_LINK, packed
from sweepsheet.link.rig_link import PREFIX, hand_on, open_rig
from sweepsheet.page import handle_request
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.es.core import SPANISH

Data = dict[str, Any]
FORM = {
    "units": "inch", "indicator.rig": "Long arm", "indicator.plus_when": "plunger_out",
    "indicator.shows": "all_round", "indicator.turn": "100", "indicator.holder": "jointed_arm",
    "indicator.sag": "2 2.5 2", "indicator.sag_allowance": "", "indicator.sag_date": "May 2",
    "indicator.sag_bar": "a 2 in bar", "indicator.sag_reach": "8",
    "indicator.contact_angle_deg": "12", "indicator.step": "0.5", "indicator.accuracy": "0.5",
    "indicator.repeatability": "0.31", "rounds.0.bore.sweeps.0.0": "7", "indicator.reach": "9",
}  # fmt: skip
METRIC = {
    "units": "metric", "indicator.rig": "Fein", "indicator.step": "0.01", "indicator.sag": "",
    "indicator.shows": "signed", "indicator.turn": "1",
}  # fmt: skip


def handed(form: Data) -> Any:
    shown = hand_on(form, ENGLISH)
    assert shown["state"] == "file", shown
    return shown


def opened(text: str) -> Any:
    return open_rig(text, ENGLISH)


@pytest.mark.parametrize("way", ["text", "fragment"])
def test_there_and_back(way: str) -> None:
    found = opened(handed(FORM)[way])
    assert (found["state"], found["name"]) == ("rig", "Long arm")
    assert found["fields"] == {path: FORM[path] for path in (*RIG_FIELDS, "indicator.rig")}
    assert found["text"] == "Long arm comes from outside. Keep it on this phone?"
    assert "Rig: Long arm" in found["lines"]
    assert "Sag test at a reach of 8 in" in found["lines"]
    # And once more, from what came.
    assert handed(found["fields"])[way] == handed(FORM)[way]


def test_every_field_is_there_with_what_is_usual() -> None:
    """So that nothing of another rig stays in the form under it."""
    found = opened(handed(METRIC)["text"])["fields"]
    assert set(found) == {*RIG_FIELDS, "indicator.rig"}
    assert found["indicator.accuracy"] == "0.01"
    assert (found["indicator.sag"], found["indicator.turn"]) == ("", "")
    assert handed(METRIC)["name"] == "sweepsheet-fein-rig.json"


def test_a_rig_that_is_not_right_is_not_handed_on() -> None:
    for change, said in (
        ({"indicator.rig": " "}, "name: a rig needs a name"),
        ({"indicator.step": "1o"}, "indicator.step: smallest step of the dial: enter"),
        ({"indicator.turn": "none"}, "turn: a whole turn of the needle"),
        ({"indicator.sag": "-2"}, "indicator.sag"),
    ):
        shown = hand_on({**FORM, **change}, ENGLISH)
        assert shown["state"] == "refused"
        assert str(shown["text"]).startswith(said), shown


RIG = {"format": "sweepsheet-rig", "version": 1, "name": "A", "units": "inch", "indicator": {}}
HOSTILE: list[tuple[Any, str]] = [
    ([], "This is no rig"), ({}, "This is no rig"), ({**RIG, "format": "x"}, "This is no rig"),
    ({**RIG, "version": 2}, "This rig is from a newer release: version 2"),
    ({**RIG, "version": True}, "This file has no version"),
    ({**RIG, "version": "1"}, "This file has no version"),
    ({**RIG, "name": ""}, "name: a rig needs a name"), ({**RIG, "name": 5}, "name: a rig needs"),
    ({**RIG, "name": "x" * 121}, "name: a rig needs"),
    ({**RIG, "name": "a\u202eb"}, "indicator.rig: "),
    ({**RIG, "more": 1}, "more: "), ({**RIG, "indicator": []}, "indicator: "),
    ({**RIG, "indicator": {"reach": 5}}, "indicator.reach: "),
    ({**RIG, "indicator": {"rig": "B"}}, "indicator.rig: "),
    ({**RIG, "indicator": {"step": "<b>"}}, "indicator.step: "),
    ({**RIG, "indicator": {"step": 1e99}}, "indicator.step: "),
    ({**RIG, "indicator": {"holder": "crane"}}, "indicator.holder: "),
    ({**RIG, "indicator": {"sag": [1] * 13}}, "indicator.sag: "),
    ({**RIG, "units": "furlong"}, "units: "), ({**RIG, "units": {}}, "units: "),
    ({**RIG, "turn": "100"}, "turn: "), ({**RIG, "turn": True}, "turn: "),
    ({**RIG, "turn": 0}, "turn: "), ({**RIG, "turn": 1e9}, "turn: "),
    ({**RIG, "turn": []}, "turn: "),
]  # fmt: skip


@pytest.mark.parametrize(("data", "said"), HOSTILE)
def test_what_is_hostile_is_refused_at_its_place(data: Any, said: str) -> None:
    text = json.dumps(data)
    for way in (text, PREFIX + packed(text)):
        found = opened(way)
        assert found["state"] == "refused", found
        assert found["text"].startswith(said), found
    assert open_rig(text, SPANISH)["state"] == "refused"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "This is no rig"), ("[1", "This is no rig"), ("{", "This is no rig"),
        ('{"a":' * 50, "This is no rig"), ("{" + " " * LONGEST_RIG + "}", "This is no rig"),
        ("rig-", "This link to a rig is not whole"), ("rig-!!!", "This link to a rig"),
        ("rig-abc", "This link to a rig"), ("rig-" + "a" * LONGEST_LINK, "This link to a rig"),
        (PREFIX + packed(" " * 90_000), "This link to a rig"),
    ],
)  # fmt: skip
def test_what_is_no_rig_is_refused(text: str, said: str) -> None:
    found = opened(text)
    assert (found["state"], found["text"][: len(said)]) == ("refused", said)


def test_a_link_that_was_cut_is_refused() -> None:
    fragment = handed(FORM)["fragment"]
    assert len(fragment) < 600
    for short in (fragment[:-1], fragment[:-9], fragment[:40]):
        assert opened(short)["state"] == "refused"


def test_the_page_asks_for_both() -> None:
    shown = json.loads(handle_request(json.dumps({"rig_out": FORM})))
    found = json.loads(handle_request(json.dumps({"rig_in": shown["fragment"]})))
    assert found["name"] == "Long arm"
