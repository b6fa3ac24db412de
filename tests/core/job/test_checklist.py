"""What is ticked: in the job file, in the form, on the page."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sweepsheet.form.to_job import job_of
from sweepsheet.job.checklist import CODES, GROUPS
from sweepsheet.job.read import read_job
from sweepsheet.words.en.core import TABLE
from sweepsheet.words.faults import InputError
from tests.cases.jobs import make_job
from web.build.fields import checklist
from web.build.template import places

PAGE = Path("web/pages/index.html").read_text()


def test_ticks_come_in_the_order_of_the_list() -> None:
    job = read_job(make_job((0, 1, 2, 1), checklist=["crank_turns", "faces_clean"]))
    assert job.checklist == ("faces_clean", "crank_turns")
    assert read_job(make_job((0, 1, 2, 1))).checklist == ()


@pytest.mark.parametrize("value", [["soap"], [1], "faces_clean", {}, ["faces_clean"] * 99])
def test_checklist_failure(value: object) -> None:
    with pytest.raises(InputError, match="checklist"):
        read_job(make_job((0, 1, 2, 1), checklist=value))


def test_a_box_of_the_form_is_ticked_by_yes_alone() -> None:
    form = {"checklist.end_float": "yes", "checklist.car_safe": "", "checklist.soap": "yes"}
    assert job_of(form).job["checklist"] == ["end_float"]


def test_the_page_has_a_box_for_each_in_its_order_and_words() -> None:
    assert [group for (group,) in places(PAGE, "checklist")] == list(GROUPS)
    drawn = "".join(map(checklist, GROUPS))
    boxes = re.findall(r'name="checklist\.(\w+)" value="yes"> ([^<]+)</label>', drawn)
    assert boxes == [(code, f"{{{{say checklist.{code}}}}}") for code in CODES]
    assert all(f"checklist.{code}" in TABLE for code in CODES)
    for group in GROUPS:
        assert f">{{{{say checklist.{group}}}}}<" in PAGE
