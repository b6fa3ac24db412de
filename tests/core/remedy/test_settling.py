"""What would settle a verdict that is too close to call: by its own promise, measured again."""

from __future__ import annotations

from typing import Any

import pytest

from sweepsheet import solve
from sweepsheet.job.read import read_job
from sweepsheet.remedy.settling import Settling
from sweepsheet.solution import work_out
from tests.cases.jobs import (
    EIGHTHS,
    QUARTERS,
    Data,
    bore_of,
    face_readings,
    finding_of,
    make_job,
    readings_of,
    with_face,
)


def settled(job: Data) -> Settling:
    found = work_out(read_job(job)).bore_settling
    assert found is not None
    return found


def off(y: float, *, sweeps: int = 1, positions: tuple[float, ...] = QUARTERS, **dial: Any) -> Data:
    """A bore that reads so far off straight up, by the usual dial but for what is said of it."""
    rows = [readings_of(0.0, y, positions)] * sweeps
    return make_job(*rows, positions=positions, indicator=dial)


def test_a_finer_step_does_not_help_where_the_dial_is_not_right() -> None:
    """4.9 +- .4 against 5: nothing that a mechanic can do settles a tenth of a thou."""
    job = off(4.9, sweeps=3, positions=EIGHTHS, sag=0, step=0.1, accuracy=0.5, repeatability=0.1)
    settling = settled(job)
    assert settling.pm_now == pytest.approx(0.4, abs=0.1)
    assert [measure.code for measure in settling.measures] == ["dial"]
    assert not settling.can_settle
    assert "No practical measuring will settle it." in finding_of(job, "undecided")["text"]


def test_a_sag_that_may_be_large_is_measured_first() -> None:
    """A jointed arm: no other measure comes near."""
    job = off(-4.0, holder="jointed_arm")
    best, second = settled(job).measures[:2]
    assert (best.code, best.settles) == ("sag", True)
    assert best.pm_after < 0.6 * second.pm_after
    assert "To settle it, do a sag test: ± 1.5 becomes" in finding_of(job, "undecided")["text"]


@pytest.mark.parametrize(
    ("job", "left"),
    [
        (off(5.0, sag=0), {"sweep", "positions", "dial"}),
        (off(5.0, sag=0, sweeps=3), {"positions", "dial"}),
        (off(5.0, sag=0, positions=EIGHTHS), {"sweep", "dial"}),
        (off(5.0, sag=0, step=0.1, accuracy=0.2), {"sweep", "positions"}),
        (off(4.8, holder="bracket"), {"sag", "sweep", "positions", "dial"}),
    ],
)
def test_nothing_is_asked_for_that_was_done(job: Data, left: set[str]) -> None:
    assert {measure.code for measure in settled(job).measures} == left


def test_a_crank_on_end_has_no_sag_to_measure() -> None:
    job = off(5.0, holder="jointed_arm") | {"crank": {"axis": "vertical"}}
    assert "sag" not in {measure.code for measure in settled(job).measures}


@pytest.mark.parametrize(
    ("code", "better"),
    [
        ("sweep", {"sweeps": 2}),
        ("positions", {"positions": EIGHTHS}),
        ("dial", {"step": 0.1, "accuracy": 0.2}),
        ("sag", {"sag": [1.5, 1.5, 1.5]}),
    ],
)
def test_each_measure_keeps_its_promise(code: str, better: dict[str, Any]) -> None:
    """What was promised is what comes out when it is done, and the offset stays what it was.

    A second sweep that agrees to the last digit is weighed with the stated scatter, so it gains a
    little more than one that scatters as stated would.
    """
    before = off(-4.3)
    promised = next(m.pm_after for m in settled(before).measures if m.code == code)
    done = bore_of(off(-4.3, **better))
    assert done["offset_pm"] == pytest.approx(promised, rel=0.04)
    assert done["offset_pm"] < bore_of(before)["offset_pm"]


def test_where_one_measure_is_not_enough_it_says_so() -> None:
    """All of them together would do it; the best is said to be a beginning."""
    job = off(4.6, sag=0)
    settling = settled(job)
    assert settling.can_settle
    assert settling.best is not None
    assert not settling.best.settles
    assert "It takes more than that." in finding_of(job, "undecided")["text"]


def test_what_settles_comes_before_what_gains_more() -> None:
    for y in (4.2, 4.3, 4.4, 4.5, 4.6):
        for holder in ("bracket", "short_arm", "jointed_arm"):
            settling = work_out(read_job(off(-y, holder=holder))).bore_settling
            if settling is not None:
                keys = [(not m.settles, m.pm_after) for m in settling.measures]
                assert keys == sorted(keys)


@pytest.mark.parametrize("y", [1.0, 9.0])
def test_a_verdict_that_stands_needs_no_settling(y: float) -> None:
    job = with_face(off(y, sag=0))
    solution = work_out(read_job(job))
    assert solution.bore_settling is solution.face_settling is None


def test_a_face_is_settled_in_the_same_way() -> None:
    """Its half width is that of the runout, and sag is no measure for it."""
    job = with_face(off(1.0), face_readings(0.0, 0.76))
    settling = work_out(read_job(job)).face_settling
    assert settling is not None
    assert settling.pm_now == pytest.approx(solve(job)["rounds"][0]["face"]["runout_pm"])
    assert {measure.code for measure in settling.measures} == {"sweep", "positions", "dial"}
    afloat = with_face(off(1.0), face_readings(0.0, 0.76), end_float="free")
    assert work_out(read_job(afloat)).face_settling is None


def test_millimetres_are_settled_like_thous() -> None:
    job = make_job(readings_of(0.0, 0.118), units="metric", indicator={"sag": 0})
    text = finding_of(job, "undecided")["text"]
    assert "± 0.0" in text
    codes = {measure.code for measure in settled(job).measures}
    assert codes == {"sweep", "positions", "dial"}
