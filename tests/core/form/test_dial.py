"""Readings as the face of a dial shows them."""

from __future__ import annotations

import json
from typing import Any

import pytest

from sweepsheet.form.dial import Dial, dial_of
from sweepsheet.form.to_job import draft_of, job_of
from sweepsheet.page import answer, handle_request
from tests.cases import forms

ALL_ROUND = {"indicator.shows": "all_round", "indicator.turn": "100"}
SIGNED = forms.sweep("rounds.0.bore.sweeps.0", "0", "-6.5", "-20", "-13.5")
AS_SHOWN = forms.sweep("rounds.0.bore.sweeps.0", "0", "93.5", "80", "86.5")


# Common practice, no source: on a dial of 0 to 100 a pointer at 93.5 is 6.5 short of zero.
@pytest.mark.parametrize(
    ("typed", "signed"),
    [("93.5", -6.5), ("6.5", 6.5), ("0", 0.0), ("49.5", 49.5), ("50,5", -49.5), ("99.9", -0.1)],
)
def test_a_dial_of_a_hundred_is_read_past_half_a_turn_as_minus(typed: str, signed: float) -> None:
    assert Dial(100.0).reading(typed) == signed


def test_a_metric_dial_of_one_turn_a_millimetre() -> None:
    assert Dial(1.0).reading("0.935") == -0.065
    assert Dial(1.0).reading("0,02") == 0.02


def test_what_has_a_sign_is_taken_as_it_stands() -> None:
    for typed, signed in (("-6.5", -6.5), ("\N{MINUS SIGN}93.5", -93.5), ("+93.5", 93.5)):
        assert Dial(100.0).reading(typed) == signed


@pytest.mark.parametrize("typed", ["50", "100", "100.5", "250"])
def test_what_cannot_be_told_is_refused_at_its_field(typed: str) -> None:
    form = ALL_ROUND | SIGNED | {"rounds.0.bore.sweeps.0.1": typed}
    shown = answer(form)
    assert shown["state"] == "faults"
    (fault,) = shown["faults"]
    assert fault["field"] == "rounds.0.bore.sweeps.0.1"
    assert "0 to below 100" in fault["text"]
    assert f"'{typed}'" in fault["text"]


@pytest.mark.parametrize("typed", ["", "x", "0", "-100", "1e9"])
def test_a_turn_that_is_none_is_refused_at_its_field(typed: str) -> None:
    shown = answer(ALL_ROUND | AS_SHOWN | {"indicator.turn": typed})
    assert [fault["field"] for fault in shown["faults"]] == ["indicator.turn"]


def sheet_of(form: forms.Form) -> Any:
    return json.loads(handle_request(json.dumps({"form": form})))["sheet"]


def test_bore_face_second_dial_parts_and_return_are_all_read_so() -> None:
    closing = "rounds.0.bore.closing.0"
    rest = {"face.radius": "3", "face.end_float": "second"}
    signed = (
        SIGNED
        | rest
        | {closing: "-0.5"}
        | forms.sweep("rounds.0.face.sweeps.0", "0", "3", "-4", "3")
        | forms.sweep("rounds.0.face.opposite.0", "0", "3", "-2", "3")
        | forms.sweep("companions.pilot_bore.sweeps.0", "0", "1", "-1", "-2")
    )
    readings = ("sweeps", "opposite", "closing")
    shown = {
        name: f"{100 + float(text):g}" if text.startswith("-") else text
        for name, text in signed.items()
        if any(part in name for part in readings)
    }
    shown = signed | shown
    assert shown[closing] == "99.5"
    assert shown != signed
    assert sheet_of(shown | ALL_ROUND) == sheet_of(signed)


def test_a_job_and_what_is_handed_on_have_signed_readings() -> None:
    form = ALL_ROUND | AS_SHOWN
    sweeps = [[0.0, -6.5, -20.0, -13.5]]
    assert job_of(form).job["rounds"][0]["bore"]["sweeps"] == sweeps
    assert draft_of(form)["rounds"][0]["bore"]["sweeps"] == sweeps
    assert "indicator.shows" not in json.dumps(draft_of(form))
    links = [
        json.loads(handle_request(json.dumps({"share": each})))["fragment"]
        for each in (form, SIGNED)
    ]
    assert links[0] == links[1]


def test_what_cannot_be_told_is_no_number_in_a_file() -> None:
    """Or the next phone would take it for one that has its sign."""
    unclear = ALL_ROUND | AS_SHOWN | {"rounds.0.bore.sweeps.0.1": "50"}
    assert draft_of(unclear)["rounds"][0]["bore"]["sweeps"][0][1] == "50 ?"
    without = AS_SHOWN | ALL_ROUND | {"indicator.turn": ""}
    assert draft_of(without)["rounds"][0]["bore"]["sweeps"][0] == [
        "0 ?", "93.5 ?", "80 ?", "86.5 ?",
    ]  # fmt: skip


def test_a_dial_is_signed_unless_the_form_says_otherwise() -> None:
    assert dial_of({"indicator.turn": "100"}).turn is None
    assert dial_of({"indicator.shows": "signed", "indicator.turn": "x"}).fault is None
