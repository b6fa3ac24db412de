"""A gearbox to practise on: solids of another hand, and the tool that is fed with its lengths."""

from __future__ import annotations

import json
from typing import Any

import pytest

from sweepsheet.drawing.depth_measures import LETTERS
from sweepsheet.form.to_job import job_of
from sweepsheet.job.read import read_job
from sweepsheet.link.results import open_results, read_results, results_link
from sweepsheet.maths.units import MM_PER_INCH
from sweepsheet.page import handle_request
from sweepsheet.practice.exercise import LENGTH_FIELDS, answer_form, exercise_of
from sweepsheet.practice.housing import LENGTHS
from sweepsheet.practice.lengths import MANUAL, Solid, TrueGearbox, true_gearbox_of
from sweepsheet.practice.marking import mark
from sweepsheet.solution import Solution, work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.gearbox import Engine, Fit, Gearbox, Span

Form = dict[str, str]
SEEDS = range(1, 301)
FITS = next(seed for seed in SEEDS if true_gearbox_of(seed).fits(0.0))
BOTTOMS = next(seed for seed in SEEDS if not true_gearbox_of(seed).fits(0.0))
HANDED_OUT = {
    "to_face": 159.12,
    "to_pilot": 4.62,
    "pilot_length": 20.14,
    "to_bottom": 27.59,
    "to_hub_front": 24.06,
    "to_hub_rear": 50.24,
    "to_fingers": 63.82,
    "to_tip": 188.07,
    "journal_length": 20.96,
    "to_splines_front": 142.84,
    "to_splines_rear": 98.45,
    "to_bearing": 94.56,
}
GOOD = {"0": "0", "1": "-1", "2": "-2", "3": "-1"}


def asked(seed: int, units: str = "inch", added: str = "", *, swept: bool = True) -> Form:
    """The practice form, every length typed as the gauge shows it."""
    per, digits = (MM_PER_INCH, 3) if units == "inch" else (1.0, 2)
    gearbox = true_gearbox_of(seed)
    lengths = {f"depth.{n}": f"{gearbox.length(n) / per:.{digits}f}" for n in LETTERS}
    small = 1.0 if units == "inch" else 0.0254
    readings = {f"rounds.0.bore.sweeps.0.{i}": f"{float(m) * small:g}" for i, m in GOOD.items()}
    return {
        "exercise.seed": str(seed), "exercise.level": str(LENGTHS), "units": units,
        "rounds.0.bore.closing.0": "0", "depth.added": added,
        **lengths, **(readings if swept else {}),
    }  # fmt: skip


def solved(form: Form) -> Solution:
    return work_out(read_job(job_of(answer_form(exercise_of(form), form)).job))


def practised(form: Form) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(handle_request(json.dumps({"practice": form})))
    return found


def in_other_solids(gearbox: TrueGearbox) -> Fit:
    """The same places in the solids that the tests of the core are made with, in inches."""

    def span(solid: Solid) -> Span:
        return Span(solid.front / MM_PER_INCH, solid.rear / MM_PER_INCH)

    return Fit(
        Engine(
            span(gearbox.pilot), gearbox.hole / MM_PER_INCH, span(gearbox.hub),
            gearbox.fingers / MM_PER_INCH, gearbox.face / MM_PER_INCH,
        ),
        Gearbox(
            span(gearbox.shaft), span(gearbox.journal), span(gearbox.splines),
            gearbox.bearing / MM_PER_INCH, MANUAL["bearing_stroke"] / MM_PER_INCH,
        ),
        *(MANUAL[n] / MM_PER_INCH for n in ("disc_wear", "fingers_worn", "release_travel")),
    )  # fmt: skip


@pytest.mark.parametrize("seed", range(1, 21))
@pytest.mark.parametrize("spacer", [0.0, 4.0])
def test_its_gaps_are_those_of_other_solids(seed: int, spacer: float) -> None:
    gearbox = true_gearbox_of(seed)
    expected = in_other_solids(gearbox).gaps(spacer / MM_PER_INCH)
    found = {name: mm / MM_PER_INCH for name, mm in gearbox.gaps(spacer).items()}
    assert found == pytest.approx(expected)


def test_one_that_was_handed_out_stays_what_it_was() -> None:
    """To the hundredth of a millimetre."""
    found = {name: round(true_gearbox_of(7).length(name), 2) for name in LETTERS}
    assert found == HANDED_OUT


def test_one_in_three_fits_and_all_others_bottom_and_can_be_put_right() -> None:
    fitting = 0
    for seed in range(1, 1001):
        gearbox = true_gearbox_of(seed)
        if gearbox.fits(0.0):
            fitting += 1
            continue
        assert gearbox.gaps(0.0)["tip"] < 0.0
        assert any(gearbox.fits(0.5 * n) for n in range(1, 20)), seed
    assert 0.28 <= fitting / 1000 <= 0.38


@pytest.mark.parametrize("units", ["inch", "metric"])
def test_what_the_tool_finds_holds(units: str) -> None:
    """Each gap, over all seeds: the hand is better than the tool is told, so that nearly all do."""
    per = MM_PER_INCH if units == "inch" else 1.0
    held: dict[str, int] = {}
    for seed in SEEDS:
        depth = solved(asked(seed, units)).depth
        assert depth is not None
        true = true_gearbox_of(seed).gaps(0.0)
        assert {gap.name for gap in depth.gaps} == set(true)
        for gap in depth.gaps:
            held[gap.name] = held.get(gap.name, 0) + (
                abs(gap.size - true[gap.name] / per) <= gap.pm
            )
    assert all(count / len(SEEDS) >= 0.93 for count in held.values()), held


def test_who_puts_the_spacer_between_that_is_told_has_a_gearbox_that_fits() -> None:
    """In the middle of what the tool tells; and where it tells that all fits, it does."""
    cured = right = 0
    for seed in SEEDS:
        depth, gearbox = solved(asked(seed)).depth, true_gearbox_of(seed)
        assert depth is not None
        if all(gap.judged.verdict == "within" for gap in depth.gaps):
            assert gearbox.fits(0.0), seed
            right += 1
            continue
        assert depth.spacer is not None, seed
        low, high = max(0.0, depth.spacer.low), depth.spacer.high
        cured += gearbox.fits(MM_PER_INCH * (low + high) / 2.0)
        again = solved(asked(seed, added=f"{(low + high) / 2.0:.3f}")).depth
        assert again is not None
        assert all(gap.judged.verdict == "within" for gap in again.gaps), seed
    assert right > 80
    assert cured == len(SEEDS) - right


def test_the_page_shows_a_gauge_for_each_length_and_nothing_that_is_hidden() -> None:
    shown = practised({"exercise.seed": "7", "exercise.level": "7"})["practice"]
    assert [each["field"] for each in shown["lengths"]] == list(LENGTH_FIELDS[:-1])
    first = shown["lengths"][0]
    assert first["label"] == "A: length to the rear face"
    assert f"{true_gearbox_of(7).length('to_face') / MM_PER_INCH:.3f} in" in first["picture"]
    metric = practised({"exercise.seed": "7", "exercise.level": "7", "units": "metric"})
    assert " mm" in metric["practice"]["lengths"][0]["picture"]
    assert practised({"exercise.seed": "7", "exercise.level": "2"})["practice"]["lengths"] == []


def test_the_answer_is_that_of_the_main_page() -> None:
    found = practised(asked(BOTTOMS))["answer"]
    assert "depth does not fit" in found["sheet"]["verdict_text"]
    cured = practised(asked(BOTTOMS, added="0.2"))["answer"]
    assert cured["sheet"]["verdict_text"] == "Within the limit"


def test_the_truth_has_every_gap_beside_what_was_found() -> None:
    form = asked(BOTTOMS, added="0.2") | {"exercise.truth": "1"}
    truth = practised(form)["practice"]["truth"]
    rows = {row[0]: row[1:] for row in truth["rows"]}
    true = true_gearbox_of(BOTTOMS).gaps(0.2 * MM_PER_INCH)["tip"] / MM_PER_INCH
    tip = rows["tip to the bottom of the hole"]
    assert tip[0] == f"{true:.3f} in"
    assert tip[2].endswith("within the ± of the readings")
    assert "With 0.200 in between, the gearbox really fits." in truth["lines"]
    bare = practised({**form, "depth.to_tip": "", "depth.added": ""})["practice"]["truth"]
    rows = {row[0]: row[1:] for row in bare["rows"]}
    assert rows["tip to the bottom of the hole"][1] == "not measured"
    assert "With 0.000 in between, the gearbox really does not fit." in bare["lines"]


@pytest.mark.parametrize(
    ("form", "within", "stopped"),
    [
        (asked(FITS), "yes", "yes"),
        (asked(BOTTOMS), "no", "no, not shown to be within"),
        (asked(BOTTOMS, added="0.2"), "yes", "yes"),
        (asked(BOTTOMS, added="0.2") | {"depth.to_bottom": ""},
         "yes", "no, not shown to be within"),
        (asked(BOTTOMS, swept=False), "no", "no, not swept at the end"),
        # Typed as if it were longer: shown to fit, and it does not.
        (asked(BOTTOMS) | {"depth.to_face": "6.5", "depth.to_hub_front": "1.2",
                           "depth.to_hub_rear": "2.2", "depth.to_fingers": "2.6"},
         "no", "no, it is really outside"),
    ],
)  # fmt: skip
def test_what_became_of_it_is_marked(form: Form, within: str, stopped: str) -> None:
    named, _, _, left, *rest = mark(form, ENGLISH)
    assert named.endswith("level 7")
    assert "tip gap" in left
    assert rest == [within, stopped]


def test_a_set_and_its_results_hold_lengths() -> None:
    form = asked(BOTTOMS, added="0.2")
    fragment = results_link(f"2-417.7-{BOTTOMS}", "Ana", [{}, form])
    back = read_results(fragment).work[1]
    assert {name: back[name] for name in LENGTH_FIELDS} == {n: form[n] for n in LENGTH_FIELDS}
    row = open_results(fragment, ENGLISH)["rows"][1]
    assert row[-2:] == ["yes", "yes"]
    assert not any(name in read_results(fragment).work[0] for name in LENGTH_FIELDS)
