"""The sheet on paper: every reading as typed, every round, what was not ticked."""

from __future__ import annotations

from typing import Any

import pytest

from sweepsheet.findings.job import findings_for
from sweepsheet.job.checklist import CODES, RECORDED
from sweepsheet.job.read import read_job
from sweepsheet.report.paper import paper_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.jobs import EIGHTHS, make_job, readings_of, then, whole_job, with_face

Data = dict[str, Any]


def paper(job: Data) -> Data:
    solution = work_out(read_job(job))
    return paper_of(solution, findings_for(solution), ENGLISH)


def cells(job: Data) -> list[str]:
    """Every cell of the tables of readings."""
    return [cell for table in paper(job)["readings"] for row in table["rows"] for cell in row]


def test_every_reading_stands_as_it_was_typed() -> None:
    job = make_job([0, -5.25, None, -11, 0.004], positions=[0, 60, 120, 180, 240], closing=[0.5])
    (table,) = paper(job)["readings"]
    assert table["head"] == ("Swept", "12:00", "2:00", "4:00", "6:00", "8:00", "Return")
    assert table["rows"] == (("Bore", "0", "−5.25", "—", "−11", "+0.004", "+0.5"),)


def test_a_position_between_the_minutes_is_given_exactly() -> None:
    (table,) = paper(make_job([0, 1, 2, 1], positions=[0, 91.3, 180, 270]))["readings"]
    assert table["head"][2] == "91.3°"


def test_many_positions_are_folded_into_tables_side_by_side() -> None:
    positions = [10.0 * i for i in range(36)]
    tables = paper(make_job(readings_of(3, 4, positions), positions=positions))["readings"]
    assert [len(table["head"]) for table in tables] == [13, 13, 14]
    assert tables[2]["head"][-1] == "Return"


def test_bore_and_face_over_the_same_positions_share_a_table() -> None:
    job = with_face(make_job([0, -5, -11, -5], [0, -6, -11, -5]), [0, 1, 2, 1])
    (table,) = paper(job)["readings"]
    assert [row[0] for row in table["rows"]] == [
        "Bore, 1", "Bore, 2", "Face, radius 3 in, plunger forward, crank held one way",
    ]  # fmt: skip
    other = with_face(make_job([0, -5, -11, -5]), readings_of(0, 1, EIGHTHS), positions=EIGHTHS)
    assert len(paper(other)["readings"]) == 2


def test_a_second_dial_has_rows_of_its_own() -> None:
    opposite = [[-1.0, 3.0, -2.0, 3.0]]
    job = with_face(make_job([0, -5, -11, -5]), [1, 3, -4, 3], opposite=opposite, end_float="free")
    last = paper(job)["readings"][0]["rows"][-1]
    assert last == ("Face, second dial", "−1", "+3", "−2", "+3", "—")


def test_every_part_of_a_whole_job_is_there() -> None:
    sheet = paper(whole_job())
    assert len(sheet["readings"]) == 5  # three rounds, two parts that turn with the crank
    assert len(sheet["results"]["rows"]) == 3
    assert [row[0] for row in sheet["results"]["rows"]] == [
        "As found", "Recheck 1: dowels", "Recheck 2: trim",
    ]  # fmt: skip
    assert "Source of the limits: the maker's manual" in sheet["limits"]
    assert "Limit for the face: runout (TIR) 1.0 thou at a radius of 1 in" in sheet["limits"]
    assert {"face", "pilot", "trim"} <= {section["name"] for section in sheet["sections"]}
    assert sheet["drawing"].count("paper-hatch") == 2
    assert "sweepsheet-hatch" not in sheet["drawing"]


def test_a_round_with_its_usual_name_is_called_by_its_number() -> None:
    job = then(make_job([0, -5, -11, -5]), make_job([0, -1, -2, -1]))
    assert [row[0] for row in paper(job)["results"]["rows"]] == ["As found", "Recheck 1"]


def test_columns_that_nothing_stands_in_are_left_out() -> None:
    head = paper(make_job([0, -5, -11, -5], limits={"bore_offset": None}))["results"]["head"]
    assert head == ("Round", "Dowels in", "Offset", "TIR", "Toward")


def test_a_limit_without_a_source_is_said_to_have_none() -> None:
    limits = paper(make_job([0, -5, -11, -5]))["limits"]
    assert limits[-1] == "Source of the limits: none entered; the bore's is common practice"
    own = paper(make_job([0, -5, -11, -5], limits={"bore_offset": 4.0}))["limits"]
    assert own[-1] == "Source of the limits: none entered"


@pytest.mark.parametrize("ticked", [[], ["faces_clean", "crank_turns"], list(CODES)])
def test_what_is_not_ticked_is_named(ticked: list[str]) -> None:
    sheet = paper(make_job([0, -5, -11, -5], checklist=ticked))
    said = {code: ENGLISH.say(f"checklist.{code}") for code in RECORDED}
    assert sheet["done"] == [said[code] for code in RECORDED if code in ticked]
    assert sheet["open"] == [said[code] for code in RECORDED if code not in ticked]


def test_remarks_in_the_same_words_stand_once() -> None:
    job = with_face(make_job([0, -5, -11, -5], closing=[None]))
    texts = [remark["text"] for remark in paper(then(job, job))["remarks"]]
    assert len(texts) == len(set(texts))
    assert sum("No return to zero for the bore sweep" in text for text in texts) == 1


def test_a_dial_that_reads_the_other_way_is_told() -> None:
    indicator = {"plus_when": "plunger_out", "contact_angle_deg": 20, "sag": None}
    dial = paper(make_job([0, 5, 11, 5], indicator=indicator, crank={"lift": 1}))["dial"]
    assert "plus when the plunger comes out" in dial[0]
    assert dial[1:] == [
        "Sag of the bracket: not measured, at most 3 thou", "Contact angle 20°",
        "Crank lift 1 thou",
    ]  # fmt: skip


def test_the_rig_and_the_test_of_its_sag_are_on_record() -> None:
    tested = {
        "rig": "Long arm", "sag": 2, "sag_date": "May 2", "sag_bar": "a 2 in bar",
        "sag_reach": 8, "reach": 10,
    }  # fmt: skip
    told = paper(make_job([0, -5, -11, -5], indicator=tested))["dial"]
    assert told[1:] == [
        "Rig: Long arm", "Sag of the bracket, measured: 2 thou", "Sag test done: May 2",
        "Sag test on: a 2 in bar", "Sag test at a reach of 8 in",
        "Reach of the dial in this job: 10 in",
        "Sag of the bracket at this reach: 2.0 to 4.9 thou",
    ]  # fmt: skip
    standing = paper(make_job([0, -5, -11, -5], indicator=tested, crank={"axis": "vertical"}))
    assert standing["dial"][1:] == ["Rig: Long arm"]


def test_lengths_are_told_in_their_own_unit() -> None:
    job = with_face(make_job([0, -0.1, -0.3, -0.1], units="metric"), radius=75.5)
    assert "radius 75.5 mm" in paper(job)["readings"][0]["rows"][1][0]


def test_the_plate_between_block_and_housing_is_told_where_it_is_known() -> None:
    for units, told in (("inch", "0.09 in"), ("metric", "0.09 mm")):
        plate = {"plate_thickness": 0.09}
        lines = paper(make_job((0, 1, 2, 1), units=units, housing=plate))["dial"]
        assert f"Plate between block and housing: {told} thick" in lines
    assert "Plate" not in str(paper(make_job((0, 1, 2, 1)))["dial"])


def test_the_shop_is_beside_the_title_and_not_among_the_rest() -> None:
    sheet = paper(make_job([0, -5, -11, -5], about={"shop": " Winter Driveline ", "engine": "V8"}))
    assert sheet["shop"] == "Winter Driveline"
    assert [entry["text"] for entry in sheet["about"]] == ["V8"]
    assert paper(make_job([0, -5, -11, -5]))["shop"] == ""
