"""Every finding has a job that brings it up, and one beside it that does not."""

from __future__ import annotations

import pytest

from sweepsheet import solve
from sweepsheet.english import TABLE
from tests.core.jobs import (
    EIGHTHS,
    PERFECT,
    Data,
    Reading,
    codes_of,
    finding_of,
    make_job,
    readings_of,
)

GOOD = readings_of(0.0, -1.0)
OFF = readings_of(0.0, -7.0)


def changed(place: int, by: float, positions: tuple[float, ...] = EIGHTHS) -> list[float]:
    """Readings of a bore that is a little off, with one of them wrong."""
    return [m + by * (i == place) for i, m in enumerate(readings_of(0.0, -1.0, positions))]


def with_dowels(job: Data, *dowels: tuple[float, float]) -> Data:
    job["rounds"][-1]["dowels"] = [{"offset": o, "aim_deg": a} for o, a in dowels]
    return job


def with_face(job: Data) -> Data:
    job["rounds"][-1]["face"] = {"radius": 3.0, "sweeps": [[0, 0, 0, 0]], "closing": [0]}
    return job


OVAL = [m + 2.0 * (-1) ** (i // 2) * (i % 2 == 0) for i, m in enumerate([0.0] * 8)]
BLOCKED: list[Reading] = [None, *readings_of(0.0, -1.0, EIGHTHS)[1:]]

# Code, level, field, a phrase of its sentence, a job with it, and a job like it without it.
CASES: list[tuple[str, str, str, str, Data, Data]] = [
    (
        "closing-error", "stop", "rounds.0.bore.closing.0", "the dial was 1.5 thou off; up to 1.0",
        make_job(GOOD, closing=[1.5]), make_job(GOOD, closing=[1.0]),
    ),
    (
        "closing-spread", "note", "rounds.0.bore.closing.1",
        "full turn of sweep 2 the dial was 0.5",
        make_job(GOOD, GOOD, closing=[0.0, -0.5]), make_job(GOOD, closing=[0.0]),
    ),
    (
        "closing-missing", "note", "rounds.0.bore.closing.0", "after the full turn of the sweep",
        make_job(GOOD, closing=[None]), make_job(GOOD, closing=[0.0]),
    ),
    (
        "foreign-reading", "stop", "rounds.0.bore.sweeps",
        "at 4:30 does not belong: it is 6.0 thou too high",
        make_job(changed(3, 6.0), positions=EIGHTHS), make_job(changed(3, 0.3), positions=EIGHTHS),
    ),
    (
        "sweeps-disagree", "caution", "rounds.0.bore.sweeps.1",
        "at 6 o'clock, more than the dial explains",
        make_job(changed(4, 0.0), changed(4, 4.0), positions=EIGHTHS),
        make_job(changed(4, 0.0), changed(4, 0.5), positions=EIGHTHS),
    ),
    (
        "out-of-round", "caution", "rounds.0.bore.sweeps", "highest near 12 o'clock and 6 o'clock",
        make_job(OVAL, positions=EIGHTHS), make_job([m / 8 for m in OVAL], positions=EIGHTHS),
    ),
    (
        "pair-sums", "caution", "rounds.0.bore.sweeps",
        "12 o'clock plus 6 o'clock and 9 o'clock plus 3 o'clock differ by 8.0 thou",
        make_job((2.0, -2.0, 2.0, -2.0)), make_job((0.25, -0.25, 0.25, -0.25)),
    ),
    (
        "not-reached", "note", "rounds.0.bore.sweeps",
        "No reading at 12 o'clock: this is worked out from the other 7",
        make_job(BLOCKED, positions=EIGHTHS), make_job(changed(0, 0.0), positions=EIGHTHS),
    ),
    (
        "no-check", "caution", "rounds.0.bore.positions_deg", "Three readings always fit",
        make_job((0.0, 1.0, 0.5), positions=(0.0, 120.0, 240.0)), make_job(GOOD),
    ),
    (
        "looks-like-inches", "stop", "rounds.0.bore.sweeps",
        "The largest reading is 0.007: that looks like inches",
        make_job((0.0, -0.003, -0.007, -0.004)), make_job((0.0, -3.0, -7.0, -4.0)),
    ),
    (
        "no-limit", "caution", "limits.bore_offset", "no limit to hold the bore to",
        make_job(GOOD, limits={"bore_offset": None}), make_job(GOOD),
    ),
    (
        "undecided", "caution", "rounds.0.bore", "Too close to call: 4.9 ± 0.8 against 5.0 thou.",
        make_job(readings_of(0.0, 4.9)), make_job(GOOD),
    ),
    (
        "too-coarse", "caution", "limits.bore_offset",
        "Even a perfect bore could not be shown to hold 0.5 thou",
        make_job(GOOD, limits={"bore_offset": 0.5}), make_job(GOOD),
    ),
    (
        "limit-source", "note", "limits.source", "only common practice",
        make_job(GOOD, limits={"source": " "}),
        make_job(GOOD, limits={"source": "the maker's manual"}),
    ),
    (
        "direction-unknown", "note", "rounds.0.bore", "its direction means nothing",
        make_job((0.0, 0.0, 0.0, 0.0)), make_job(OFF),
    ),
    (
        "droop-unmeasured", "note", "indicator.sag", "up to 1.0 thou from top to bottom",
        make_job(GOOD), make_job(GOOD, indicator={"sag": 0.5}),
    ),
    (
        "dowels-differ", "caution", "rounds.0.dowels", "differ in offset or aim",
        with_dowels(make_job(OFF), (7, 0), (7, 90)), with_dowels(make_job(OFF), (7, 0), (7, 0)),
    ),
    (
        "no-stock", "caution", "stock.dowel_offsets", "A pair of about 7.0 thou offset",
        make_job(OFF, stock={"dowel_offsets": []}), make_job(OFF),
    ),
    (
        "beyond-stock", "stop", "stock.dowel_offsets",
        "best pair in stock (largest 21 thou) would leave 19.0 thou",
        make_job(readings_of(0.0, -40.0)), make_job(readings_of(0.0, -22.0)),
    ),
    (
        "stock-doubtful", "caution", "stock.dowel_offsets",
        "the best is expected to leave 4.6 thou",
        make_job(readings_of(0.0, -11.6), stock={"dowel_offsets": [7.0]}), make_job(OFF),
    ),
    (
        "face-not-swept", "note", "rounds.0.face", "Sweep the rear face too",
        make_job(GOOD), with_face(make_job(GOOD)),
    ),
    (
        "face-not-judged", "caution", "rounds.0.face", "Judge the face yourself",
        with_face(make_job(GOOD)), make_job(GOOD),
    ),
]  # fmt: skip


@pytest.mark.parametrize(("code", "level", "field", "phrase", "job"), [case[:5] for case in CASES])
def test_finding(code: str, level: str, field: str, phrase: str, job: Data) -> None:
    found = finding_of(job, code)
    assert (found["level"], found["field"]) == (level, field)
    assert phrase in found["text"]


@pytest.mark.parametrize(("code", "job"), [(case[0], case[5]) for case in CASES])
def test_finding_failure(code: str, job: Data) -> None:
    """A job like it does not bring it up."""
    assert code not in codes_of(job)


def test_every_finding_has_its_case() -> None:
    known = {key.removeprefix("finding.") for key in TABLE if key.startswith("finding.")}
    assert {case[0] for case in CASES} == known


def test_stop_comes_first_and_notes_last() -> None:
    job = with_face(make_job(changed(3, 6.0), positions=EIGHTHS, closing=[3.0]))
    levels = [finding["level"] for finding in solve(job)["findings"]]
    assert levels == sorted(levels, key=["stop", "caution", "note"].index)
    assert {"stop", "caution", "note"} == set(levels)


def test_a_crank_on_end_asks_for_no_droop_test() -> None:
    assert "droop-unmeasured" not in codes_of(make_job(GOOD, crank={"axis": "vertical"}))


def test_millimetres_are_never_taken_for_inches() -> None:
    """A bore in mm may well read a few thousandths."""
    assert "looks-like-inches" not in codes_of(make_job((0.0, -0.001, -0.001, 0.0), units="metric"))


@pytest.mark.parametrize("wrong", [4.0, 6.0, 9.0])
def test_sweeps_are_never_said_to_differ_by_more_than_they_do(wrong: float) -> None:
    """Of three sweeps one is wrong at one place: by so much they differ there, at most."""
    good, bad = changed(4, 0.0), changed(4, wrong)
    found = finding_of(make_job(good, good, bad, positions=EIGHTHS), "sweeps-disagree")
    said = float(found["text"].partition("up to ")[2].partition(" ")[0])
    assert said <= wrong


@pytest.mark.parametrize(
    ("job", "steps"),
    [
        (make_job(readings_of(0.0, 4.9)), "sweep at eight positions"),
        (
            make_job(readings_of(0.0, 4.9), indicator={"sag_allowance": 6}),
            "To settle it: measure the droop",
        ),
        (
            make_job(readings_of(0.0, 4.9, EIGHTHS), positions=EIGHTHS, indicator={"sag": 0}),
            "To settle it: sweep a second time.",
        ),
        (
            make_job(
                *[readings_of(0.0, 4.9, EIGHTHS)] * 2, positions=EIGHTHS, indicator={"sag": 0}
            ),
            "A dial with a finer step",
        ),
    ],
)  # fmt: skip
def test_what_would_settle_it_is_what_is_still_missing(job: Data, steps: str) -> None:
    """The largest doubt first."""
    assert steps in finding_of(job, "undecided")["text"]


def test_what_would_settle_it_failure() -> None:
    """Nothing is proposed twice: who swept eight positions is not sent to do so."""
    job = make_job(readings_of(0.0, 4.9, EIGHTHS), positions=EIGHTHS)
    assert "eight" not in finding_of(job, "undecided")["text"]


def test_findings_of_readings_name_their_round() -> None:
    job = make_job(GOOD, closing=[3.0])
    job["rounds"].append(make_job(GOOD, closing=[3.0])["rounds"][0])
    fields = [f["field"] for f in solve(job)["findings"] if f["code"] == "closing-error"]
    assert fields == ["rounds.0.bore.closing.0", "rounds.1.bore.closing.0"]


def test_a_good_bore_brings_up_nothing() -> None:
    job = make_job(OFF, indicator={**PERFECT, "step": 0.1}, limits={"source": "the maker's manual"})
    assert codes_of(job) == ["face-not-swept"]
