"""The pair that is drawn is the pair that the steps speak of."""

from __future__ import annotations

from typing import Any

from sweepsheet.findings.advice import Step, advice_for, step
from sweepsheet.findings.fitting import Fitting, fitting_of
from sweepsheet.findings.job import findings_for
from sweepsheet.job.model import Dowel
from sweepsheet.job.read import read_job
from sweepsheet.solution import Solution, work_out
from tests.cases.jobs import apart, make_job, readings_of, then, with_dowels

Data = dict[str, Any]


def worked(job: Data) -> tuple[Solution, tuple[Step, ...], Fitting | None]:
    solution = work_out(read_job(job))
    steps = advice_for(solution, findings_for(solution))
    return solution, steps, fitting_of(steps, solution)


def test_a_pair_to_fit_is_drawn_as_the_step_says() -> None:
    """A bore 14 low wants the housing moved up: both dowels of 14 aimed at 12."""
    _, steps, fitting = worked(make_job(readings_of(0.0, -14.0)))
    assert "fit-dowels" in [each.code for each in steps]
    assert fitting is not None
    assert fitting.now is None
    assert [dowel.offset for dowel in fitting.dowels] == [14.0, 14.0]
    assert [apart(dowel.aim_deg, 0.0) < 1e-9 for dowel in fitting.dowels] == [True, True]


def test_a_pair_that_is_in_is_drawn_turning() -> None:
    """Aimed 30 degrees off, a pair of 14 leaves 7: 14 toward 12 and 14 low, turned by 30."""
    found = make_job(readings_of(0.0, -14.0))
    fitted = with_dowels(make_job(readings_of(7.0, -1.9)), (14.0, 30.0))
    _, steps, fitting = worked(then(found, fitted))
    assert "trim" in [each.code for each in steps]
    assert fitting is not None
    assert fitting.now == (Dowel(14.0, 30.0), Dowel(14.0, 30.0))
    aims = {dowel.aim_deg for dowel in fitting.dowels}
    (turned,) = (each.numbers["aim_deg"] for each in steps if each.code == "trim")
    assert aims == {turned}


def test_unlike_dowels_are_each_drawn() -> None:
    dowels = [{"offset": 7.0, "aim_deg": 10.0}, {"offset": 14.0, "aim_deg": 20.0}]
    solution = work_out(read_job(make_job([0, -5, -11, -5])))
    fitting = fitting_of([step("recheck"), step("fit-unlike", {"dowels": dowels})], solution)
    assert fitting == Fitting((Dowel(7.0, 10.0), Dowel(14.0, 20.0)), None)


def test_without_such_a_step_nothing_is_drawn() -> None:
    assert worked(make_job([0, -1, -2, -1]))[2] is None
    # Where to move the bore, and what size to get, is no pair.
    _, steps, fitting = worked(make_job(readings_of(0.0, -60.0)))
    assert steps
    assert fitting is None
