"""What is seen first: nothing twice, nothing lost, and what stops the work always in sight."""

from __future__ import annotations

import pytest

from sweepsheet.findings.advice import advice_for
from sweepsheet.findings.job import findings_for
from sweepsheet.job.checklist import GROUPS
from sweepsheet.job.read import read_job
from sweepsheet.report.glance import ALWAYS, BLANKS, LISTS, REASONS, STAGES, Glance, glance_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH, TABLE
from tests.cases.jobs import Data, make_job, then
from tests.core.states import STATES, State

# No face is asked for; the bore is far outside, by a dial that does not sag.
LIMITS = {"source": "a manual", "face_runout": None}
OUT = make_job([0, -8, -16, -8], closing=[0], limits=LIMITS)


def seen(job: Data) -> Glance:
    """What is seen first of a job."""
    solution = work_out(read_job(job))
    return glance_of(solution, findings_for(solution), ENGLISH)


def test_its_tables_name_steps_findings_and_lists_that_there_are() -> None:
    steps = {key.removeprefix("do.") for key in TABLE if key.startswith("do.")} | {"trim"}
    findings = {key.removeprefix("finding.") for key in TABLE if key.startswith("finding.")}
    assert (REASONS.keys() | STAGES.keys() | set(ALWAYS)) - steps == set()
    assert {code for codes in REASONS.values() for code in codes} | BLANKS.keys() <= findings
    assert {code for codes in LISTS.values() for code in codes} <= steps
    assert LISTS.keys() <= GROUPS.keys()
    assert {key.removeprefix("why.") for key in TABLE if key.startswith("why.")} == set(ALWAYS)
    assert REASONS.keys().isdisjoint(ALWAYS)


@pytest.mark.parametrize("state", STATES, ids=lambda state: state.name)
def test_every_finding_has_one_place_and_a_stop_is_in_sight(state: State) -> None:
    solution = work_out(read_job(state.mechanic().job))
    findings = findings_for(solution)
    glance = glance_of(solution, findings, ENGLISH)
    assert [action.code for action in glance.actions] == [
        step.code for step in advice_for(solution, findings)
    ]
    whys = " ".join(action.why for action in glance.actions)
    for each in findings:
        place, text = glance.place_of(each.code, each.level), ENGLISH.text(each.message)
        assert place in ("", "reason", "not_entered")
        if each.level == "stop":
            assert place == ""
        # Folded away as a reason only where it is read with a step, and then in full.
        assert (place == "reason") <= (text in whys)
        # A line that is a tap away holds nothing that warns.
        assert place != "not_entered" or each.level == "note"
    assert bool(glance.not_entered) == any(
        each.level == "note" and each.code in BLANKS for each in findings
    )


def test_a_bore_that_is_out_has_its_steps_with_reasons_and_the_list_of_the_fit() -> None:
    glance = seen(OUT)
    assert [action.code for action in glance.actions] == ["move", "reseat", "fit-dowels", "recheck"]
    assert all(action.why for action in glance.actions)
    assert (glance.stage, glance.lists) == ("fit", ("fit",))
    assert glance.not_entered == (
        "Not entered: face, distance to the pilot bearing and dowel holes"
    )


def test_a_finding_that_is_a_steps_reason_is_read_with_it() -> None:
    glance = seen(make_job([0, -8, -16, -8], closing=[None], limits=LIMITS))
    (first, *_) = glance.actions
    assert first.code == "note-return"
    assert "did not" not in first.text
    assert glance.place_of("closing-missing", "caution") == "reason"
    assert glance.place_of("closing-missing", "stop") == ""
    assert first.why


def test_the_stage_follows_the_work() -> None:
    assert seen(make_job([0, -1, -2, -1], closing=[0])).stage == "face"
    within = make_job([0, -1, -2, -1], closing=[0], limits=LIMITS)
    assert seen(within).stage == "close"
    assert "closing_up" in seen(within).lists
    # A bracket whose sag nobody measured: the sag test comes first.
    close_call = make_job([0, -5, -10, -5], closing=[0], limits=LIMITS, indicator={})
    assert seen(close_call).stage == "bore"
    assert seen(then(close_call, close_call)).stage == "recheck"
