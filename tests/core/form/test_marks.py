"""Even steps from a first mark: where each mark is, what it is called, and nothing else changes.

The angles are arithmetic: 360° divided by the number of marks.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.form.marks import Marks, marks_of
from sweepsheet.guide.steps import guide
from sweepsheet.page import answer
from sweepsheet.words.en.core import ENGLISH

BORE = "rounds.0.bore"
COUNTED = {"positions_choice": "bolts", "marks.count": "9", "marks.first": "12"}
QUARTERS = {"positions_choice": "12 3 6 9", "turn": "anticlockwise"}


def typed(readings: list[float]) -> dict[str, str]:
    """The readings of a bore sweep that came back to zero."""
    fields = {f"{BORE}.sweeps.0.{i}": f"{m:.12f}" for i, m in enumerate(readings)}
    return fields | {f"{BORE}.closing.0": "0", "indicator.sag": "0"}


def labels(form: dict[str, str]) -> list[str]:
    """What the rows are called."""
    marks = marks_of(form)
    assert marks is not None
    return [ENGLISH.text(marks.label(i)) for i in range(len(marks.positions))]


def test_nine_flywheel_bolts_are_forty_degrees_apart() -> None:
    """40° are an hour and twenty minutes of the clock; counterclockwise the time runs back."""
    marks = marks_of(COUNTED)
    assert marks is not None
    assert marks.positions == [0, 320, 280, 240, 200, 160, 120, 80, 40]
    assert labels(COUNTED)[:4] == [
        "bolt 1: 12 o'clock", "bolt 2: 10:40", "bolt 3: 9:20", "bolt 4: 8 o'clock",
    ]  # fmt: skip
    clockwise = marks_of(COUNTED | {"turn": "clockwise"})
    assert clockwise is not None
    assert clockwise.positions == [0, 40, 80, 120, 160, 200, 240, 280, 320]


def test_a_degree_wheel_is_called_by_its_degrees() -> None:
    wheel = {"positions_choice": "wheel", "marks.count": "8", "marks.first": "1:30"}
    assert labels(wheel)[:3] == ["0°: 1:30", "45°: 12 o'clock", "90°: 10:30"]


def test_quarters_from_any_first_mark_are_called_by_the_clock() -> None:
    assert labels(QUARTERS | {"marks.first": "4:10"}) == ["4:10", "1:10", "10:10", "7:10"]


@pytest.mark.parametrize("first", ["", "12", " 12 "])
def test_a_first_mark_at_12_is_the_list_of_before(first: str) -> None:
    assert marks_of(QUARTERS | {"marks.first": first}) is None
    assert marks_of({"positions_choice": "own", "marks.first": "3"}) is None
    assert marks_of({}) is None
    assert answer(QUARTERS | {"marks.first": first})["marks"] == []


@pytest.mark.parametrize("count", ["", "2", "73", "8.5", "x", "1e9", "-8", "<b>"])
def test_a_number_of_marks_that_is_none_is_a_fault_at_its_field(count: str) -> None:
    found = answer(COUNTED | {"marks.count": count} | typed([0.0] * 4))
    assert found["state"] == "faults"
    (fault,) = found["faults"]
    assert fault["field"] == "marks.count"
    assert "a whole number from 3 to 72" in fault["text"]


@pytest.mark.parametrize("first", ["25", "noon", "<svg/onload=x>", "13:61"])
def test_a_first_mark_that_is_no_position_is_a_fault_at_its_field(first: str) -> None:
    found = answer(QUARTERS | {"marks.first": first} | typed([0.0] * 4))
    assert {fault["field"] for fault in found["faults"]} == {"marks.first"}
    assert len(found["marks"]) == 4


def test_a_sweep_with_positions_of_its_own_keeps_them() -> None:
    form = QUARTERS | {"marks.first": "1:30", f"{BORE}.positions": "12 4 8"}
    assert guide(form, BORE, ENGLISH)["steps"][2]["label"] == "4 o'clock"
    del form[f"{BORE}.positions"]
    steps = guide(form, BORE, ENGLISH)["steps"]
    assert [step["label"] for step in steps[1:5]] == ["1:30", "10:30", "7:30", "4:30"]
    assert guide(COUNTED, BORE, ENGLISH)["steps"][2]["label"] == "bolt 2: 10:40"


@given(
    n=st.integers(4, 72),
    first=st.integers(0, 719),
    toward=st.integers(0, 359),
    clockwise=st.booleans(),
    kind=st.sampled_from(["bolts", "wheel"]),
)
def test_the_same_bore_comes_out_wherever_one_begins(
    n: int, first: int, toward: int, *, clockwise: bool, kind: str
) -> None:
    """``m(a) = k - c u(a)``, read at the marks: offset 5 comes back, and its direction."""
    form = {
        "positions_choice": kind, "marks.count": str(n), "marks.first": f"{first / 2}°",
        "turn": "clockwise" if clockwise else "anticlockwise",
    }  # fmt: skip
    marks = marks_of(form)
    assert marks is not None
    readings = [
        5.0 - 5.0 * math.cos(math.radians(a - toward))
        for a in marks.positions
        if isinstance(a, float)
    ]
    figures = answer(form | typed(readings))["sheet"]
    assert figures["headline"].startswith(("5.0 thou off", "5.0 thou off"))
    assert any(line.startswith(f"{toward}°") for line in figures["figures"])


def test_the_first_mark_stands_as_it_is_where_it_is_none() -> None:
    assert Marks("", 4.0, None, clockwise=True).positions[0] is None
    assert ENGLISH.text(Marks("", 4.0, "x", clockwise=True).label(0)) == "12 o'clock"
