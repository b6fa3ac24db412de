"""The sheet in words: the number, what it means, what to do."""

from __future__ import annotations

from typing import Any

import pytest

from sweepsheet import sheet
from sweepsheet.findings.job import findings_for
from sweepsheet.job.read import read_job
from sweepsheet.report.sheet import STANDINGS, sheet_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.languages import FOLDERS, language_of
from tests.cases.jobs import EIGHTHS, Data, face_readings, make_job, readings_of, with_face


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
    assert "Recheck 1: {after} <dowels>" in found


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


def leaning(slope: float, bore: float = 0.0, **sections: Any) -> Data:
    """A bore so far off at a limit of 5, and a face with this slope, in thou per inch."""
    job = make_job(readings_of(0.0, bore), **sections)
    return with_face(job, face_readings(0.0, slope))


FACE_LIMIT = {"face_runout": 5.0, "face_radius": 3.0}
PILOT: Data = {
    "housing": {"pilot_distance": 7.0},
    "limits": {"pilot_offset": 5.0, "face_runout": None},
}


@pytest.mark.parametrize(
    ("standing", "text", "job"),
    [
        ("within", "Within the limit", leaning(0.4, limits=FACE_LIMIT)),
        ("within_but_face", "Bore within, face outside", leaning(2.0, limits=FACE_LIMIT)),
        ("within_face_open", "Bore within, face too close", leaning(0.8, limits=FACE_LIMIT)),
        ("within", "Within the limit", leaning(0.2, **PILOT)),
        ("within_but_pilot", "Bore within, pilot line outside", leaning(1.5, **PILOT)),
        ("within_pilot_open", "Bore within, pilot line too close", leaning(0.74, **PILOT)),
        ("outside", "Outside the limit", leaning(2.0, 9.0, limits=FACE_LIMIT)),
        ("undecided", "Too close to call", make_job(readings_of(0.0, -5.5))),
        (
            "none",
            "No limit to judge by",
            make_job([0.0, -1.0, -2.0, -1.0], limits={"bore_offset": None}),
        ),
        ("again", "Don't trust it", make_job([0.0, -1.0, -2.0, -1.0], closing=[5.0])),
    ],
)
def test_what_is_within_is_not_called_so_where_more_is_wrong(
    standing: str, text: str, job: Data
) -> None:
    solution = work_out(read_job(job))
    found = sheet_of(solution, findings_for(solution), ENGLISH)
    assert (found.verdict, found.verdict_text[: len(text)]) == (standing, text)


def test_every_standing_has_its_word_in_every_language() -> None:
    for language in map(language_of, FOLDERS):
        said = {language.say(f"answer.verdict.{standing}") for standing in STANDINGS}
        assert len(said) == len(STANDINGS)
