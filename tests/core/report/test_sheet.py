"""The sheet in words: the number, what it means, what to do."""

from __future__ import annotations

import pytest

from sweepsheet import sheet
from tests.cases.jobs import EIGHTHS, Data, make_job, readings_of


def lines(job: Data) -> list[str]:
    return sheet(job).splitlines()


def test_the_worked_example_reads_as_it_should() -> None:
    text = sheet(make_job((0.0, -5.5, -11.0, -5.5)))
    assert "5.5 thou off, toward 6 o'clock (TIR 11.0 thou)." in text
    assert "Limit: 5.0 thou offset (10.0 thou TIR)" in text
    assert "Fit 7 thou offset dowels, both aimed at 12 o'clock." in text
    assert "Expected after: 1.5 thou offset (3.0 thou TIR)." in text


def test_outside_says_where_to_move() -> None:
    text = sheet(make_job(readings_of(-7.0, 0.0)))
    assert "Outside the limit. 7.0 thou off, toward 9 o'clock (TIR 14.0 thou)." in text
    assert "Move the housing right, toward 3 o'clock, by 7.0 thou." in text
    assert "Then sweep again" in text


def test_within_says_to_leave_it() -> None:
    text = sheet(make_job(readings_of(0.0, -2.0)))
    assert "Within the limit." in text
    assert "Leave the housing where it is." in text
    assert "Move the housing" not in text


def test_undecided_says_what_would_settle_it_before_what_could_be_fitted() -> None:
    text = sheet(make_job(readings_of(0.0, -5.5)))
    assert "Too close to call." in text
    assert text.index("Measure again before you decide.") < text.index("Or move it now.")


def test_no_offset_has_no_direction() -> None:
    text = sheet(make_job((0.0, 0.0, 0.0, 0.0)))
    assert "0.0 thou off, direction not known (TIR 0.0 thou)." in text
    assert "clockwise from 12, seen from behind" not in text


def test_a_stop_is_all_there_is_to_do() -> None:
    """No dowels, no move: the figures do not count before it is cleared up."""
    found = lines(make_job(readings_of(0.0, -7.0), closing=[5.0]))
    assert any("Find what slipped or stuck" in line for line in found)
    assert not any(line.startswith(("Fit", "Move the housing")) for line in found)
    assert any(line.startswith("STOP: After the full turn") for line in found)


def test_beyond_the_stock_nothing_is_fitted() -> None:
    text = sheet(make_job(readings_of(0.0, -40.0)))
    assert "Beyond dowels. Find the cause" in text
    assert "\nFit " not in text


def test_the_chosen_option_is_marked() -> None:
    marked = [line for line in lines(make_job(readings_of(0.0, -7.0))) if line.startswith(">")]
    (line,) = marked
    assert line.startswith("> 7 thou dowels, aimed at 12 o'clock: 0.0 (TIR 0.0)")
    assert line.endswith("over 99%")


@pytest.mark.parametrize(("units", "unit"), [("inch", "thou"), ("metric", "mm")])
def test_the_options_have_their_unit_in_their_head(units: str, unit: str) -> None:
    head = f"What each choice would leave (offset in {unit}, TIR beside it):"
    assert head in lines(make_job(readings_of(0.0, -7.0), units=units))


def test_without_a_limit_no_chance_is_said() -> None:
    """... and no line ends in the middle of a sentence."""
    text = sheet(make_job(readings_of(0.0, -7.0), limits={"bore_offset": None}))
    assert "No limit" in text
    assert "Chance" not in text
    assert not [
        line for line in text.splitlines() if line.rstrip().endswith(":") and "inside" in line
    ]


def test_readings_are_shown_as_typed() -> None:
    text = sheet(make_job((0.0, -5.25, None, 3.0, 1.0), positions=(0.0, 72.0, 144.0, 216.0, 285.0)))
    assert "Bore: 12 o'clock +0, 2:25 −5.25, 4:50 —, 7:10 +3, 9:30 +1" in text


def test_every_sweep_and_round_is_shown() -> None:
    job = make_job(*[readings_of(0.0, -7.0, EIGHTHS)] * 2, positions=EIGHTHS)
    job["rounds"].append(
        {**make_job(readings_of(0.0, -1.0))["rounds"][0], "name": "{after} <dowels>"}
    )
    found = lines(job)
    assert sum(line.startswith("Bore:") for line in found) == 3
    assert "Round 2: {after} <dowels>" in found


@pytest.mark.parametrize(
    ("units", "offset"),
    [
        ("inch", "7.0 thou off, toward 6 o'clock (TIR 14.0 thou)"),
        ("metric", "7.000 mm off, toward 6 o'clock (TIR 14.000 mm)"),
    ],
)
def test_units_stand_beside_every_figure(units: str, offset: str) -> None:
    assert offset in sheet(make_job(readings_of(0.0, -7.0), units=units))


def test_the_sheet_says_from_where_one_looks() -> None:
    assert "Seen from behind the engine" in sheet(make_job((0.0, 0.0, 0.0, 0.0)))
