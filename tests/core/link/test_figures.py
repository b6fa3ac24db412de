"""The figures a link carries: what the sheet says, as short texts in a fixed order."""

from __future__ import annotations

import re
from typing import Any, get_args

import pytest

from sweepsheet import solve
from sweepsheet.findings.job import findings_for
from sweepsheet.job.read import read_job
from sweepsheet.link.figures import JOB_FIGURES, ROUND_FIGURES, figures_of
from sweepsheet.maths.verdict import Verdict
from sweepsheet.report.sheet import sheet_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.jobs import make_job, then, whole_job, with_dowels, with_face

Data = dict[str, Any]


def lines_of(job: Data) -> tuple[str, ...]:
    solution = work_out(read_job(job))
    return figures_of(solution, findings_for(solution))


def named(names: tuple[str, ...], line: str) -> dict[str, str]:
    texts = line.split("|")
    return dict(zip(names, [*texts, *[""] * (len(names) - len(texts))], strict=True))


def round_of(job: Data, n: int = 0) -> dict[str, str]:
    return named(ROUND_FIGURES, lines_of(job)[1 + n])


def test_the_first_line_holds_the_limits_as_offset_and_as_tir() -> None:
    whole = named(JOB_FIGURES, lines_of(make_job([0, -5, -11, -5]))[0])
    assert whole == {
        "unit": "thou", "limit_offset": "5.0", "limit_tir": "10.0", "limit_pilot": "", "stops": "",
    }  # fmt: skip
    none = make_job([0, -5, -11, -5], limits={"bore_offset": None, "pilot_offset": 6})
    assert lines_of(none)[0] == "thou|||6.0"


def test_a_round_s_figures_are_those_of_the_result_rounded() -> None:
    """Whatever the sheet rounds, the link rounds the same way."""
    job = whole_job()
    for n, each in enumerate(solve(job)["rounds"]):
        figures = round_of(job, n)
        bore, face, pilot = each["bore"], each["face"], each["pilot"]
        assert figures["offset"] == f"{bore['offset']:.1f}"
        assert figures["tir"] == f"{bore['tir']:.1f}"
        assert figures["pm"] == f"{bore['offset_pm']:.1f}"
        assert figures["verdict"] == bore["verdict"]
        assert figures["face_runout"] == f"{face['runout']:.1f}"
        assert figures["face_verdict"] == face["verdict"]
        assert figures["pilot_offset"] == f"{pilot['offset']:.1f}"
        assert figures["pilot_verdict"] == pilot["verdict"]


def test_a_direction_that_means_nothing_is_left_out() -> None:
    assert round_of(make_job([0, 0, -0.5, 0]))["toward"] == ""
    assert round_of(make_job([0, -5, -11, -5]))["toward"] == "6"


def test_what_stands_behind_a_stop_is_counted() -> None:
    bad = make_job([0, -5, -11, -5], closing=[9.0])
    assert named(JOB_FIGURES, lines_of(bad)[0])["stops"] == "1"


@pytest.mark.parametrize(
    "job",
    [
        make_job([0, -1, -2, -1], closing=[9.0]),
        with_face(
            make_job([0, -1, -2, -1], limits={"bore_offset": 5.0, "face_runout": 1.0}),
            [0, 3, 6, 3],
        ),
    ],
    ids=["again", "within_but_face"],
)
def test_where_the_sheet_does_not_plainly_say_within_the_link_says_stop(job: Data) -> None:
    """The customer's view goes by the stops: no plain verdict is above such a job."""
    solution = work_out(read_job(job))
    findings = findings_for(solution)
    sheet = sheet_of(solution, findings, ENGLISH)
    plain = [ENGLISH.say(f"answer.verdict.{verdict}") for verdict in get_args(Verdict)]
    assert sheet.verdict_text not in plain
    assert int(named(JOB_FIGURES, lines_of(job)[0])["stops"]) > 0


def test_dowels_are_named_once_where_they_are_alike() -> None:
    found = make_job([0, -5, -11, -5])
    alike = then(found, with_dowels(make_job([0, -1, -2, -1]), (7.0, 0.0)))
    assert lines_of(found)[1].count("|") == 5
    fitted = {key: text for key, text in round_of(alike, 1).items() if key.endswith(("set", "aim"))}
    assert fitted | {"offset": "", "pilot_offset": ""} == {
        "offset": "", "pilot_offset": "", "dowel_offset": "7", "dowel_aim": "12",
        "other_offset": "", "other_aim": "",
    }  # fmt: skip
    differ = then(found, with_dowels(make_job([0, -1, -2, -1]), (7.0, 315.0), (0.0, 0.0)))
    one = round_of(differ, 1)
    assert (one["dowel_offset"], one["dowel_aim"]) == ("7", "10:30")
    assert (one["other_offset"], one["other_aim"]) == ("0", "")


def test_figures_are_free_of_language() -> None:
    """Digits, signs and codes alone: no word of any language stands in them."""
    codes = {"within", "outside", "undecided", "thou", "mm"}
    found = set()
    for job in (whole_job(), make_job([0, -5, -11, -5]), make_job([0, 0, -0.5, 0])):
        for text in "|".join(lines_of(job)).split("|"):
            assert text in codes or re.fullmatch(
                r"|\d+(\.\d+)?|\d{1,2}(:\d\d)?|\d{1,2}%|>99%|<1%", text
            ), text
            found.add(text)
    assert {"thou", "<1%"} <= found
