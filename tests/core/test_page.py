"""What the page asks: the answer to a filled-in form, in every state of its being filled in."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.page import answer, handle_request
from sweepsheet.words.faults import InputError

SWEEP = "rounds.0.bore.sweeps.0"


def sweep_form(*readings: str, at: str = SWEEP, **others: str) -> dict[str, str]:
    """A form with one sweep typed, and whatever else is given."""
    return {f"{at}.{i}": text for i, text in enumerate(readings)} | others


def codes(shown: dict[str, Any]) -> list[str]:
    return [remark["code"] for remark in shown["sheet"]["remarks"]]


def test_an_empty_form_says_what_is_wanted() -> None:
    shown = answer({})
    assert shown["state"] == "waiting"
    assert shown["text"] == (
        "Needed: the reading at 12 o'clock, 3 o'clock, 6 o'clock and 9 o'clock."
    )


def test_half_a_sweep_says_which_readings_are_still_wanted() -> None:
    """Three readings within half a turn are no mistake while the fourth is being typed."""
    shown = answer(sweep_form("0", "-5", "-11"))
    assert shown["state"] == "waiting"
    assert shown["text"] == "Needed: the reading at 9 o'clock."


def test_a_lone_sign_is_not_yet_a_reading() -> None:
    assert answer(sweep_form("0", "-5", "-11", "-"))["state"] == "waiting"


def test_a_whole_sweep_is_answered() -> None:
    shown = answer(sweep_form("0", "-5.5", "-11", "-5.5"))
    assert shown["state"] == "answer"
    assert shown["sheet"]["headline"] == "6.2 thou off, toward 6 o'clock (TIR 12.5 thou)"
    assert shown["drawing"].startswith("<svg ")
    assert shown["side_view"] == ""


def test_wrong_readings_are_faults_at_the_form_s_own_names() -> None:
    """The second sweep of the form stays the second, though the first is blank."""
    at = "rounds.0.bore.sweeps.1"
    shown = answer(sweep_form("0", "o", "1", "2", at=at))
    assert shown["faults"] == [
        {"field": f"{at}.1", "text": "3 o'clock reading: enter a number, not 'o'"}
    ]


@pytest.mark.parametrize(
    ("field", "typed", "told_at", "told"),
    [
        ("positions", "12 3 6 25", "positions", "enter a position like 3, 10:30"),
        ("positions", "12 3 3 9", "positions", "3 o'clock is there twice"),
        ("stock.dowel_offsets", "7 x", "stock.dowel_offsets", "enter a number, not 'x'"),
        ("limits.bore_offset", "1e9", "limits.bore_offset", "enter a number, not '1e9'"),
        ("limits.bore_offset", "999", "limits.bore_offset", "enter 0.1 to 500"),
        ("units", "furlong", "units", "enter one of inch and metric"),
        ("housing.depth", "deep", "housing.depth", "enter a number, not 'deep'"),
        ("housing.pilot_bearing", "bush", "housing.pilot_bearing", "one of bronze_bushing"),
    ],
)
def test_each_fault_is_told_at_its_field(field: str, typed: str, told_at: str, told: str) -> None:
    shown = answer(sweep_form("0", "1", "2", "3") | {field: typed})
    assert shown["state"] == "faults"
    assert [fault["field"] for fault in shown["faults"]] == [told_at]
    assert told in shown["faults"][0]["text"]


def test_bolts_and_dowel_holes_take_one_radius_for_all_or_one_for_each() -> None:
    good = sweep_form("0", "1", "2", "1") | {"dowel_holes.at": "9 3", "dowel_holes.radius": "7 7.1"}
    assert answer(good)["state"] == "answer"
    short = good | {"bolts.at": "12 3 6", "bolts.radius": "7 7"}
    shown = answer(short)
    assert shown["faults"][0]["field"] == "bolts.radius"
    assert "hole 3, distance from the crank axis" in shown["faults"][0]["text"]
    unclear = good | {"dowel_holes.at": "9 left"}
    assert answer(unclear)["faults"][0]["field"] == "dowel_holes.at"


def test_limit_is_shown_as_offset_and_tir_whichever_was_typed() -> None:
    """Half of a TIR is the offset; both stand there even while the sweep is wrong."""
    as_offset = answer({"limits.bore_offset": "5", "limit_as": "offset"})
    as_tir = answer({"limits.bore_offset": "10", "limit_as": "tir", f"{SWEEP}.0": "o"})
    assert as_offset["limit"] == "Limit: 5.0 thou offset (10.0 thou TIR)"
    assert as_tir["limit"] == as_offset["limit"]
    assert answer({"limits.bore_offset": ""})["limit"] == "No limit"
    assert answer({"limits.bore_offset": "five"})["limit"] == ""


def test_a_second_sweep_does_not_take_the_answer_away_while_it_is_typed() -> None:
    whole = sweep_form("0", "-5.5", "-11", "-5.5")
    begun = answer(whole | {"rounds.0.bore.sweeps.1.0": "0.5"})
    assert begun["sheet"]["headline"] == answer(whole)["sheet"]["headline"]
    assert codes(begun)[0] == "sweep-unfinished"
    wrong = answer(whole | {"rounds.0.bore.sweeps.1.0": "o"})
    assert wrong["faults"][0]["field"] == "rounds.0.bore.sweeps.1.0"


def test_a_recheck_counts_once_its_sweep_can_be_fitted() -> None:
    whole = sweep_form("0", "-10", "-20", "-10")
    recheck = {"rounds.1.dowels.0.offset": "7", "rounds.1.dowels.0.aim": "12"}
    begun = answer(whole | recheck | {"rounds.1.bore.sweeps.0.0": "0"})
    assert "Sweep 1 of the bore (Recheck 1) is not finished" in begun["sheet"]["remarks"][0]["text"]
    swept = sweep_form("0", "-3", "-6", "-3", at="rounds.1.bore.sweeps.0")
    done = answer(whole | recheck | swept)
    assert done["sheet"]["headline"] == "3.8 thou off, toward 6 o'clock (TIR 7.5 thou)"
    assert [s["name"] for s in done["sheet"]["sections"]] == ["trim"]


def test_a_skipped_recheck_keeps_the_names_of_the_form() -> None:
    """Round 3 of the form is round 2 of the job while nothing was typed in round 2."""
    form = sweep_form("0", "-10", "-20", "-10")
    form |= sweep_form("0", "-3", "x", "-3", at="rounds.2.bore.sweeps.0")
    assert answer(form)["faults"][0]["field"] == "rounds.2.bore.sweeps.0.2"


def test_handle_request_leads_through_a_sweep() -> None:
    request = json.dumps({"guide": {"form": {"positions": "12 4 8"}, "at": "rounds.0.bore"}})
    assert len(json.loads(handle_request(request))["steps"]) == 5


@pytest.mark.parametrize(
    "asked", ["1", "{}", '{"form": {}}', '{"form": {"a": 1}, "at": "rounds.0.bore"}']
)
def test_a_sweep_to_be_led_through_must_be_named(asked: str) -> None:
    with pytest.raises(InputError):
        handle_request(f'{{"guide": {asked}}}')


def test_handle_request_is_json_in_and_out() -> None:
    request = json.dumps({"form": sweep_form("0", "-5.5", "-11", "-5.5")})
    assert json.loads(handle_request(request))["state"] == "answer"


@pytest.mark.parametrize("request_text", ["", "[]", "{}", '{"form": []}', '{"form": {"a": 1}}'])
def test_handle_request_failure(request_text: str) -> None:
    with pytest.raises(InputError):
        handle_request(request_text)


NAMES = st.sampled_from(
    [
        "units", "positions", "limits.bore_offset", "limit_as", "stock.dowel_offsets",
        "indicator.sag", "indicator.plus_when", "bore.contact", "face.radius", "face.end_float",
        "housing.depth", "housing.pilot_distance", "bolts.at", "bolts.radius", "dowel_holes.at",
        "dowel_holes.radius", "chip.height", "chip.at", "chip.radius", "chip.joint",
        "rounds.1.alike", "rounds.1.dowels.0.offset", "rounds.1.dowels.1.aim", "crank.lift",
        *(f"rounds.{n}.{part}.sweeps.{j}.{i}" for n in (0, 1, 99) for part in ("bore", "face")
          for j in (0, 1, 77) for i in range(4)),
        *(f"companions.pilot_bore.{rest}" for rest in ("sweeps.0.0", "sweeps.0.2", "limit")),
        "rounds.0.face.opposite.0.0", "rounds.0.bore.closing.0", "__proto__", "about.notes",
    ]
)  # fmt: skip
TEXTS = st.one_of(
    st.sampled_from(["", "-", "0", "12", "-5.5", "7,14", "3 o'clock", "1e400", "nan", "٣", "½"]),
    st.text(max_size=20),
    st.floats(-600, 600).map(str),
)


@given(st.dictionaries(NAMES, TEXTS, max_size=12))
def test_whatever_is_typed_there_is_an_answer(extra: dict[str, str]) -> None:
    """No text in any field brings anything but one of the three states."""
    shown = answer(sweep_form("0", "-5.5", "-11", "-5.5") | extra)
    assert shown["state"] in ("waiting", "faults", "answer")
    json.dumps(shown, allow_nan=False)
    for fault in shown.get("faults", []):
        assert fault["text"]
