"""What to do, in the order of the work: each rule at jobs that fall under it, and at its edge."""

from __future__ import annotations

from typing import Any

import pytest

from sweepsheet import sheet, solve
from sweepsheet.job.read import read_job
from sweepsheet.solution import work_out
from sweepsheet.words.languages import FOLDERS, language_of
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    TWO_HOLES,
    Data,
    face_readings,
    make_job,
    readings_of,
    then,
    with_dowels,
    with_face,
)

GOOD: Data = {**PERFECT, "step": 0.1, "accuracy": 0.1, "repeatability": 0.1}


def advice(job: Data) -> list[Data]:
    steps: list[Data] = solve(job)["advice"]
    return steps


def codes(job: Data) -> list[str]:
    return [step["code"] for step in advice(job)]


def swept(x: float, y: float, gx: float = 0.0, gy: float = 0.0, **keys: Any) -> Data:
    """A job of one round by a good dial, its face swept with the crank held."""
    job = make_job(readings_of(x, y, EIGHTHS), positions=EIGHTHS, indicator=GOOD)
    return with_face(job, face_readings(gx, gy, EIGHTHS), positions=EIGHTHS, **keys)


# 1: what can't be right is cleared up first ---------------------------------------------------


@pytest.mark.parametrize(
    ("finding", "job"),
    [
        ("closing-error", make_job(readings_of(0.0, -8.0), closing=[3.0])),
        ("looks-like-inches", make_job((0.0, -0.004, -0.008, -0.004))),
        (
            "foreign-reading",
            make_job((0.0, 2.0, 3.0, 12.0, 5.0, 4.0, 3.0, 1.0), positions=EIGHTHS),
        ),
        (
            "moved-wrong-way",
            then(
                make_job(readings_of(0.0, -8.0)),
                with_dowels(make_job(readings_of(0.0, -15.0)), (7.0, 0.0)),
            ),
        ),
        (
            "interference",
            make_job(
                readings_of(0.0, -8.0),
                housing={"bore_diameter": 4.685, "register_diameter": 4.6855},
            ),
        ),
    ],
)
def test_what_cannot_be_right_comes_first_and_alone(finding: str, job: Data) -> None:
    """Nothing is fitted, moved or left on figures that do not count."""
    (only,) = advice(job)
    assert (only["code"], only["finding"]) == ("fix-stop", finding)


def test_a_reading_of_an_earlier_round_cannot_be_taken_again() -> None:
    """Dowels were fitted since: the latest sweep is what there is to act on."""
    early = make_job((0.0, 2.0, 3.0, 12.0, 5.0, 4.0, 3.0, 1.0), positions=EIGHTHS)
    late = with_dowels(make_job(readings_of(0.0, -1.0)), (7.0, 0.0))
    assert "fix-stop" not in codes(then(early, late))


# 2: the return to the start -------------------------------------------------------------------


@pytest.mark.parametrize("y", [-1.0, -8.0])
def test_a_sweep_whose_return_was_not_noted_is_turned_on_first(y: float) -> None:
    job = make_job(readings_of(0.0, y), closing=[None])
    assert advice(job)[0]["code"] == "note-return"
    assert advice(job)[0]["field"] == "rounds.0.bore.closing.0"
    assert "note-return" not in codes(make_job(readings_of(0.0, y)))


def test_a_job_is_not_done_while_a_return_is_missing() -> None:
    twice = then(swept(0.0, -1.0), swept(0.0, -1.0))
    assert codes(twice) == ["done"]
    twice["rounds"][1]["bore"]["closing"] = [None]
    assert codes(twice) == ["note-return", "leave"]


# 3 and 4: the face ----------------------------------------------------------------------------


def test_a_face_never_swept_is_swept_before_any_dowel() -> None:
    found = codes(make_job(readings_of(0.0, -8.0)))
    assert found.index("sweep-face") < found.index("fit-dowels")


def test_who_blanks_the_limit_of_the_face_is_not_asked_for_it_failure() -> None:
    job = make_job(readings_of(0.0, -8.0), limits={"face_runout": None})
    assert "sweep-face" not in codes(job)


def test_a_face_swept_with_end_play_is_swept_again_and_nothing_is_cut() -> None:
    """However far out it seems: end play reads as tilt."""
    job = swept(0.0, -8.0, 0.0, 4.0, end_float="free")
    assert codes(job) == ["resweep-face"]
    text = sheet(job).partition("What each choice")[0]
    assert "shim" not in text.lower()


def test_a_face_out_once_is_cleaned_and_swept_again() -> None:
    """No surface plate, no shim, no cutter for what a chip may have done."""
    assert codes(swept(0.0, -8.0, 0.0, 4.0)) == ["clean-joint"]


def test_a_tilt_is_seen_again_where_both_its_sweeps_count() -> None:
    """Not after a face that stood true, and not by readings of which one does not belong."""
    true, out = swept(0.0, -8.0), swept(0.0, -8.0, 0.0, 4.0)
    wrong = swept(0.0, -8.0, 0.0, 4.0)
    wrong["rounds"][0]["face"]["sweeps"][0][3] += 9.0
    seen = {
        "twice": then(out, out), "true before": then(true, out), "wrong before": then(wrong, out),
        "wrong now": then(out, wrong), "true now": then(out, true),
        "not swept now": then(out, make_job(readings_of(0.0, -8.0))),
    }  # fmt: skip
    found = {name: work_out(read_job(job)).tilt_seen_again for name, job in seen.items()}
    assert found == dict.fromkeys(seen, False) | {"twice": True}
    assert codes(seen["twice"]) == ["sweep-face-twice"]
    assert codes(seen["true before"]) == ["clean-joint"]


def test_a_face_too_close_to_call_is_measured_not_cut() -> None:
    job = with_face(make_job(readings_of(0.0, -8.0)), face_readings(0.0, 0.75))
    assert codes(job) == ["settle-face"]


# 5: within ------------------------------------------------------------------------------------


def test_within_once_is_tightened_and_swept_once_more() -> None:
    assert codes(swept(0.0, -1.0)) == ["leave", "tighten-and-sweep"]


def test_within_twice_in_a_row_is_done() -> None:
    assert codes(then(swept(0.0, -1.0), swept(0.3, -1.0))) == ["done"]


@pytest.mark.parametrize(
    "before",
    [
        swept(0.0, -8.0),  # another place
        with_dowels(swept(0.0, -1.0), (7.0, 0.0)),  # other dowels
    ],
)
def test_within_after_something_else_is_not_done_failure(before: Data) -> None:
    assert codes(then(before, swept(0.0, -1.0))) == ["leave", "tighten-and-sweep"]


def test_a_bore_within_and_a_face_never_swept_is_not_done_failure() -> None:
    job = make_job(readings_of(0.0, -1.0), indicator=GOOD)
    assert codes(then(job, job)) == ["sweep-face", "leave"]


# 6 and 7: too close to call, outside ----------------------------------------------------------


def test_too_close_to_call_is_measured_first() -> None:
    found = codes(with_face(make_job(readings_of(0.0, -5.5))))
    assert found[0] == "settle-bore"
    assert "fit-dowels" not in found
    assert found[-1] == "or-fit"


def test_what_no_measuring_can_settle_is_not_measured_for_ever() -> None:
    """A hair from the limit: the pair is fitted where that leaves less, else it is out."""
    found = codes(with_face(make_job(readings_of(0.0, -5.05))))
    assert found == ["cannot-settle", "reseat", "fit-dowels", "recheck"]
    bare = make_job(readings_of(0.0, -5.05), stock={"dowel_offsets": []})
    assert codes(with_face(bare)) == ["cannot-settle", "treat-as-out"]


def test_a_pair_that_was_fitted_six_times_is_not_fitted_once_more() -> None:
    """It would be so for ever: a hair from the limit each time."""
    job = with_face(make_job(readings_of(0.0, -12.05)))
    pair = with_dowels(with_face(make_job(readings_of(0.0, -5.05))), (7.0, 0.0))
    for _ in range(5):
        job = then(job, pair)
    assert codes(job) == ["cannot-settle", "fit-dowels", "recheck"]
    assert codes(then(job, pair)) == ["cannot-settle", "treat-as-out"]


def test_one_of_two_unlike_dowels_may_be_a_standard_one() -> None:
    """Half of 7 is 3.5: one hole keeps what it has."""
    job = swept(0.0, -3.5) | {"limits": {"bore_offset": 1.5}, "housing": {"dowel_holes": TWO_HOLES}}
    (fit,) = [step for step in advice(job) if step["code"] == "fit-unlike"]
    assert "at 9 o'clock the stock one" in fit["text"]
    assert "at 3 o'clock the 7 thou one, aimed at 12 o'clock" in fit["text"]


def test_a_face_at_its_limit_is_neither_measured_for_ever_nor_cut() -> None:
    """... and the bore goes on."""
    found = codes(with_face(make_job(readings_of(0.0, -8.0)), face_readings(0.0, 0.83)))
    assert found == ["face-at-limit", "move", "reseat", "fit-dowels", "recheck"]


def test_outside_is_put_right_from_the_drawer() -> None:
    """The move, the same answer on a clean joint, the pair and its aim, the recheck."""
    steps = advice(swept(0.0, -8.0))
    assert [step["code"] for step in steps] == ["move", "reseat", "fit-dowels", "recheck"]
    assert steps[2]["offset"] == 7.0
    assert steps[2]["aim_deg"] == pytest.approx(0.0, abs=1e-6)


def test_a_pair_that_is_in_is_turned() -> None:
    """... and the joint that was just opened is not opened twice."""
    turned = with_dowels(swept(5.3, -0.8), (7.0, 40.0))
    steps = advice(then(swept(0.0, -7.0), turned))
    trim = next(step for step in steps if step["code"] == "trim")
    assert trim["turn_deg"] < 0
    assert "reseat" not in [step["code"] for step in steps]


def test_without_a_limit_nothing_is_called_within() -> None:
    job = swept(0.0, -1.0)
    job["limits"] = {"bore_offset": None}
    assert codes(job)[0] == "no-limit"
    assert not {"leave", "done"} & set(codes(job))


@pytest.mark.parametrize("code", FOLDERS)
def test_every_step_is_a_sentence_in_every_language(code: str) -> None:
    for job in (swept(0.0, -8.0), swept(0.0, -1.0), swept(0.0, 0.0, 0.0, 4.0)):
        for step in solve(job, language_of(code))["advice"]:
            assert step["text"].endswith((".", "?")), step
