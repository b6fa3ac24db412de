"""Every finding has a job that brings it up, and one beside it that does not."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from sweepsheet import sheet, solve
from sweepsheet.words.en.core import TABLE
from tests.cases.gearbox import DEEP, Engine, Fit, Gearbox, Span, depth_job
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    SEVEN_BOLTS,
    TWO_HOLES,
    Data,
    Reading,
    codes_of,
    face_readings,
    finding_of,
    make_job,
    readings_of,
    then,
    with_dowels,
    with_face,
)

GOOD = readings_of(0.0, -1.0)
FIT = Fit()
OFF = readings_of(0.0, -7.0)


# A release bearing half an inch from the fingers.
WIDE = replace(FIT, gearbox=Gearbox(release_bearing=-3.3, stroke=2.0))


def changed(place: int, by: float, positions: tuple[float, ...] = EIGHTHS) -> list[float]:
    """Readings of a bore that is a little off, with one of them wrong."""
    return [m + by * (i == place) for i, m in enumerate(readings_of(0.0, -1.0, positions))]


def joint(readings: list[float], **sections: object) -> Data:
    """A job with its face square and every dimension measured, but for what is changed.

    A section given takes the place of the whole of it.
    """
    parts: Data = {
        "limits": {"source": "the maker's manual", "pilot_offset": 20.0},
        "indicator": {"sag": 0.0},
        "housing": {
            "depth": 6.0, "pilot_distance": 7.0, "dowel_holes": TWO_HOLES, "bolts": SEVEN_BOLTS,
        },
    }  # fmt: skip
    parts |= sections
    return with_face({**make_job(readings), **parts})


def leaning(slope: float, job: Data, **keys: object) -> Data:
    """The job with its face rearward at 12 by so many thou per inch, swept at eight positions."""
    return with_face(job, face_readings(0.0, slope, EIGHTHS), positions=EIGHTHS, **keys)


def seated_again(*heights: float) -> Data:
    """A bore at these heights, the housing loosened and torqued again between the sweeps."""
    job = then(*(make_job(readings_of(0.0, y)) for y in heights))
    for each in job["rounds"][1:]:
        each["since"] = "reseated"
    return job


def tipped(job: Data) -> Data:
    """The job, its housing known to stand tipped at the block."""
    return {**job, "housing": {**job["housing"], "tilt_from": "front"}}


def near(radius: float) -> Data:
    """A job whose flange was measured at this radius alone."""
    return make_job(GOOD, housing={"bolts": [{"at_deg": 0, "radius": radius}]})


def part(kind: str, offset: float) -> Data:
    """A companion sweep of a part that is off by so much, with a limit of 3 TIR."""
    return {"kind": kind, "limit": 3.0, "sweeps": [readings_of(0.0, offset)], "closing": [0.0]}


def after(x: float, y: float, offset: float, aim_deg: float, **sections: object) -> Data:
    """A bore 10 low as found, and where it lay with this pair of dowels."""
    first = {**make_job(readings_of(0.0, -10.0)), **sections}
    return then(first, with_dowels(make_job(readings_of(x, y)), (offset, aim_deg)))


OVAL = [m + 2.0 * (-1) ** (i // 2) * (i % 2 == 0) for i, m in enumerate([0.0] * 8)]
BLOCKED: list[Reading] = [None, *readings_of(0.0, -1.0, EIGHTHS)[1:]]

# Code, level, field, a phrase of its sentence, a job with it, and a job like it without it.
CASES: list[tuple[str, str, str, str, Data, Data]] = [
    (
        "closing-error", "stop", "rounds.0.bore.closing.0", "the dial was 1.5 thou off. Up to 1.0",
        make_job(GOOD, closing=[1.5]), make_job(GOOD, closing=[1.0]),
    ),
    (
        "closing-spread", "note", "rounds.0.bore.closing.1",
        "full turn of bore sweep 2 the dial was 0.5",
        make_job(GOOD, GOOD, closing=[0.0, -0.5]), make_job(GOOD, closing=[0.0]),
    ),
    (
        "closing-missing", "note", "rounds.0.bore.closing.0",
        "No return to zero for the bore sweep",
        make_job(GOOD, closing=[None]), make_job(GOOD, closing=[0.0]),
    ),
    (
        "foreign-reading", "stop", "rounds.0.bore.sweeps",
        "at 4:30 looks wrong: 6.0 thou too high",
        make_job(changed(3, 6.0), positions=EIGHTHS), make_job(changed(3, 0.3), positions=EIGHTHS),
    ),
    (
        "earlier-unreliable", "caution", "rounds.0.bore",
        "As found: its bore sweep can't be trusted. It does not count",
        then(make_job(GOOD, closing=[1.5]), make_job(GOOD)),
        then(make_job(GOOD, closing=[1.0]), make_job(GOOD, closing=[1.5])),
    ),
    (
        "sweeps-disagree", "caution", "rounds.0.bore.sweeps.1",
        "at 6 o'clock. The dial does not explain that",
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
        "No bore reading at 12 o'clock: worked out from the other 7",
        make_job(BLOCKED, positions=EIGHTHS), make_job(changed(0, 0.0), positions=EIGHTHS),
    ),
    (
        "no-check", "caution", "rounds.0.bore.positions_deg", "Three bore readings always fit",
        make_job((0.0, 1.0, 0.5), positions=(0.0, 120.0, 240.0)), make_job(GOOD),
    ),
    (
        "looks-like-inches", "stop", "rounds.0.bore.sweeps",
        "The largest bore reading is 0.007: that looks like inches",
        make_job((0.0, -0.003, -0.007, -0.004)), make_job((0.0, -3.0, -7.0, -4.0)),
    ),
    (
        "no-limit", "caution", "limits.bore_offset", "No limit entered for the bore",
        make_job(GOOD, limits={"bore_offset": None}), make_job(GOOD),
    ),
    (
        "undecided", "caution", "rounds.0.bore", "Too close to call: 4.9 ± 0.7 against 5.0 thou.",
        make_job(readings_of(0.0, 4.9)), make_job(GOOD),
    ),
    (
        "too-coarse", "caution", "limits.bore_offset",
        "even a perfect bore holds 0.5 thou",
        make_job(GOOD, limits={"bore_offset": 0.5}), make_job(GOOD),
    ),
    (
        "limit-source", "note", "limits.source", "The limit is common practice (5.0 thou offset).",
        make_job(GOOD, limits={"source": " "}),
        make_job(GOOD, limits={"source": "the maker's manual"}),
    ),
    (
        "direction-unknown", "note", "rounds.0.bore", "ignore its direction",
        make_job((0.0, 0.0, 0.0, 0.0)), make_job(OFF),
    ),
    (
        "droop-unmeasured", "note", "indicator.sag", "up to 1.0 thou top to bottom",
        make_job(GOOD, indicator={"sag_allowance": 1}), make_job(GOOD, indicator={"sag": 0.5}),
    ),
    (
        "sag-other-reach", "note", "indicator.reach", "There it may sag 2.0 to 4.9 thou.",
        make_job(GOOD, indicator={"sag": 2, "sag_reach": 8, "reach": 10}),
        make_job(GOOD, indicator={"sag": 2, "sag_reach": 8, "reach": 8}),
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
        "the largest in the drawer (21 thou) would leave 19.0 thou",
        make_job(readings_of(0.0, -40.0)), make_job(readings_of(0.0, -22.0)),
    ),
    (
        "between-sizes", "caution", "stock.dowel_offsets",
        "the best leaves 3.5 thou. A pair of about 10.5 thou offset would do.",
        make_job(readings_of(0.0, -10.5), limits={"bore_offset": 3.0}),
        make_job(readings_of(0.0, -10.5)),
    ),
    (
        "unlike-reach", "caution", "stock.dowel_offsets",
        "Two unlike dowels should leave 0.0 thou: see their table. A pair of about 10.5 thou",
        make_job(
            readings_of(0.0, -10.5), limits={"bore_offset": 3.0},
            housing={"dowel_holes": TWO_HOLES}, indicator={"sag": 0.0},
        ),
        make_job(readings_of(0.0, -10.5), limits={"bore_offset": 3.0}, indicator={"sag": 0.0}),
    ),
    (
        "stock-doubtful", "caution", "stock.dowel_offsets",
        "The best pair that fits may not bring it within. It should leave 4.6 thou",
        make_job(readings_of(0.0, -11.6), stock={"dowel_offsets": [7.0]}), make_job(OFF),
    ),
    (
        "face-not-swept", "note", "rounds.0.face", "Sweep the rear face too",
        make_job(GOOD), with_face(make_job(GOOD)),
    ),
    (
        "face-not-trusted", "caution", "rounds.0.face.end_float",
        "push the crank to its stop one way, let go, read",
        with_face(make_job(GOOD), end_float="free"), with_face(make_job(GOOD)),
    ),
    (
        "no-face-limit", "caution", "limits.face_runout", "No limit entered for the face",
        with_face(make_job(GOOD, limits={"face_runout": None})), with_face(make_job(GOOD)),
    ),
    (
        "face-first", "stop", "rounds.0.face", "Face first: its runout is 9.0 ± 0.8 against 5.0",
        leaning(1.5, make_job(GOOD)), leaning(0.6, make_job(GOOD)),
    ),
    (
        "face-changed", "caution", "rounds.1.face", "than before (As found), by 3.0 thou",
        then(with_face(make_job(GOOD)), with_face(make_job(GOOD), face_readings(0.0, 0.5))),
        then(with_face(make_job(GOOD), face_readings(0.0, 0.5)), with_face(make_job(GOOD))),
    ),
    (
        "face-undecided", "caution", "rounds.0.face",
        "Face too close to call: runout 4.8 ± 0.8 against 5.0 thou",
        leaning(0.8, make_job(GOOD)), leaning(0.6, make_job(GOOD)),
    ),
    (
        "face-warp", "caution", "rounds.0.face.sweeps",
        "Of 6.0 thou TIR only 0.0 thou is out of square: 6.0 thou is left over",
        with_face(make_job(GOOD), [0.0, 6.0] * 4, positions=EIGHTHS),
        leaning(1.0, make_job(GOOD)),
    ),
    (
        "face-tir-over", "caution", "rounds.0.face.sweeps",
        "own TIR of 6.0 thou is over the limit of 5.0 thou",
        with_face(make_job(GOOD), [0.0, 6.0] * 4, positions=EIGHTHS),
        with_face(make_job(GOOD), [0.0, 5.0] * 4, positions=EIGHTHS),
    ),
    (
        "face-swings-bore", "caution", "rounds.0.face",
        "swing the bore 9.0 thou: 1.0 to 8.0 thou offset",
        leaning(1.5, tipped(joint(GOOD))), joint(GOOD),
    ),
    (
        "face-may-swing-bore", "caution", "rounds.0.face",
        "squaring swings the bore 9.0 thou: 1.0 to 8.0 thou offset",
        leaning(1.5, joint(GOOD)), leaning(1.5, tipped(joint(GOOD))),
    ),
    (
        "shims-short", "caution", "stock.shim_thicknesses",
        "needed, three thickest 15.0 thou",
        leaning(1.5, joint(GOOD, stock={"shim_thicknesses": [1, 2, 5]})),
        leaning(1.5, joint(GOOD, stock={"shim_thicknesses": [1, 2, 5, 10]})),
    ),
    (
        "depth-wanted", "note", "housing.depth", "enter the housing depth",
        leaning(1.5, make_job(GOOD)), leaning(1.5, joint(GOOD)),
    ),
    (
        "bolts-wanted", "note", "housing.bolts", "Enter where the bolts are",
        leaning(1.5, make_job(GOOD)), leaning(1.5, joint(GOOD)),
    ),
    (
        "chip-explains", "note", "rounds.0.face", "A chip or burr of 10.0 thou would explain",
        leaning(1.5, near(3.33)), leaning(1.5, near(3.34)),
    ),
    (
        "too-thick-for-dirt", "note", "rounds.0.face", "It would take 25.8 thou at the rim",
        leaning(1.5, joint(GOOD)), leaning(1.5, near(3.33)),
    ),
    (
        "companion-end-play", "caution", "companions.0",
        "End play goes straight into the flywheel face sweep",
        make_job(GOOD, companions=[part("flywheel_face", 0.0)]),
        make_job(GOOD, companions=[part("pilot_bore", 0.0)]),
    ),
    (
        "holes-wanted", "note", "housing.dowel_holes", "enter the dowel holes",
        make_job(OFF), joint(OFF),
    ),
    (
        "pilot-distance-wanted", "note", "housing.pilot_distance",
        "To see the effect at the pilot bearing",
        with_face(make_job(GOOD)), joint(GOOD),
    ),
    (
        "aim-for-bore", "caution", "stock.aim_for", "The dowels are aimed for the bore",
        make_job(GOOD, stock={"aim_for": "pilot"}), joint(GOOD, stock={"aim_for": "pilot"}),
    ),
    (
        "pilot-outside", "caution", "limits.pilot_offset",
        "Outside at the pilot bearing: 8.0 ± 1.2 off against 5.0 thou",
        leaning(1.0, joint(readings_of(0.0, 1.0), limits={"pilot_offset": 5.0})),
        leaning(0.4, joint(readings_of(0.0, -1.0), limits={"pilot_offset": 5.0})),
    ),
    (
        "pilot-undecided", "caution", "limits.pilot_offset",
        "Pilot bearing too close to call: 5.2 ± 1.2 off against 5.0 thou",
        leaning(0.6, joint(readings_of(0.0, 1.0), limits={"pilot_offset": 5.0})),
        leaning(0.4, joint(readings_of(0.0, -1.0), limits={"pilot_offset": 5.0})),
    ),
    (
        "angle-near", "caution", "housing.pilot_bearing",
        "axis is 1.00 thou per inch out of line, no more than 1.11 thou",
        leaning(1.0, joint(GOOD, housing={"pilot_distance": 7.0, "pilot_bearing": "ball"})),
        leaning(0.8, joint(GOOD, housing={"pilot_distance": 7.0, "pilot_bearing": "ball"})),
    ),
    (
        "angle-beyond", "caution", "housing.pilot_bearing",
        "more than a tapered roller bearing takes: 0.50 thou per inch to 1.20 thou per inch",
        leaning(1.3, joint(GOOD, housing={"pilot_distance": 7, "pilot_bearing": "tapered_roller"})),
        leaning(1.3, joint(GOOD, housing={"pilot_distance": 7, "pilot_bearing": "ball"})),
    ),
    (
        "interference", "stop", "housing.register_diameter", "register is 1.0 thou larger",
        joint(GOOD, housing={"bore_diameter": 4.0, "register_diameter": 4.001}),
        joint(GOOD, housing={"bore_diameter": 4.001, "register_diameter": 4.0}),
    ),
    (
        "seat-loose", "caution", "housing.register_diameter",
        "The gearbox has 8.0 thou clearance in it and may sit 4.0 thou off",
        joint(readings_of(0.0, -3.0), housing={"bore_diameter": 4.008, "register_diameter": 4.0}),
        joint(readings_of(0.0, -3.0), housing={"bore_diameter": 4.001, "register_diameter": 4.0}),
    ),
    (
        "plate-unknown", "stop", "housing.plate_concentricity", "Swept in a plate's bore",
        joint(GOOD, housing={"swept_bore": "plate"}),
        joint(GOOD, housing={"swept_bore": "plate", "plate_concentricity": 0.5}),
    ),
    (
        "seat-scatters", "caution", "rounds.1.since", "lands up to 12.3 thou from its place",
        seated_again(-3.0, -7.0), seated_again(-3.0, -3.5),
    ),
    (
        "moved-wrong-way", "stop", "rounds.1.dowels",
        "the aim of the dowels (other side?), the dial's plus and minus and the dowels entered",
        after(0.0, -17.0, 7.0, 0.0), after(0.0, -3.0, 7.0, 0.0),
    ),
    (
        "moved-otherwise", "caution", "rounds.1.dowels",
        "Moved 4.0 ± 1.0 toward 12 o'clock; expected 7.0 thou toward 12 o'clock. Is the",
        after(0.0, -6.0, 7.0, 0.0), after(0.0, -3.5, 7.0, 0.0),
    ),
    (
        "moved-mirrored", "stop", "rounds.1.dowels",
        "as if 3 and 9 were swapped. It went 7.0 thou toward 10:30",
        after(-4.95, -5.05, 7.0, 45.0), after(4.95, -5.05, 7.0, 45.0),
    ),
    (
        "trim-noise", "note", "rounds.1.dowels", "Turning the dowels would gain 0.1 thou",
        after(0.7, -4.7, 7.0, 0.0, limits={"bore_offset": 4.0}, stock={"dowel_offsets": [7.0]}),
        after(5.0, -2.8, 7.0, 45.0, limits={"bore_offset": 4.0}),
    ),
    (
        "trim-other-size", "caution", "rounds.1.dowels", "Another size is better: 9 thou dowels",
        after(1.0, -7.0, 4.0, 0.0, stock={"dowel_offsets": [4.0, 9.0, 14.0]}),
        after(4.0, -5.0, 7.0, 30.0),
    ),
    (
        "bolt-holes", "caution", "housing.bolt_clearance",
        "7 thou dowels. Clearance on the diameter: 14.0 thou needed, there is 10.0 thou",
        make_job(OFF, housing={"bolt_clearance": 10.0}),
        make_job(OFF, housing={"bolt_clearance": 14.0}),
    ),
    (
        "companion-outside", "caution", "companions.0",
        "The pilot bore runs out: 6.0 ± 1.1 TIR against 3.0 thou",
        make_job(GOOD, companions=[part("pilot_bore", 3.0)]),
        make_job(GOOD, companions=[part("pilot_bore", 0.2)]),
    ),
    (
        "companion-undecided", "caution", "companions.1",
        "The crank flange is too close to call: 3.2 ± 1.1 TIR against 3.0 thou",
        make_job(GOOD, companions=[part("pilot_bore", 3.0), part("crank_flange", 1.6)]),
        make_job(GOOD, companions=[part("crank_flange", 0.2)]),
    ),
    (
        "depth-outside", "stop", "depth.to_bottom",
        "It does not fit: tip to the bottom of the hole −0.050 in ± 0.017 in. Needed: more than 0.",
        depth_job(DEEP), depth_job(FIT),
    ),
    (
        "depth-undecided", "caution", "depth.to_tip",
        "shaft in the pilot bearing 0.500 in ± 0.017 in. Needed: at least 0.500 in",
        depth_job(FIT, engagement_min=0.5), depth_job(FIT, engagement_min=0.45),
    ),
    (
        "spacer", "caution", "depth.added", "fits with 0.065 in to 0.184 in more between",
        depth_job(DEEP), depth_job(FIT),
    ),
    (
        "less-between", "caution", "depth.added", "in less between housing and gearbox",
        depth_job(replace(FIT, engine=Engine(between=0.3))), depth_job(DEEP),
    ),
    (
        "no-spacer", "caution", "depth.added", "No spacer makes all of it fit",
        depth_job(replace(FIT, gearbox=Gearbox(shaft=Span(-6.2, 0.0), journal=Span(-6.2, -5.4)))),
        depth_job(DEEP),
    ),
    (
        "spacer-unknown", "note", "depth.added", "To know, enter the lengths for pilot bearing",
        depth_job(replace(FIT, gearbox=Gearbox(release_bearing=-4.0)), to_bottom=None),
        depth_job(DEEP),
    ),
    (
        "release-shim", "caution", "depth.to_bearing",
        "Shim the release bearing forward by 0.318 in to 0.385 in",
        depth_job(WIDE, release="hydraulic", release_gap_max=0.2),
        depth_job(WIDE, release="lever", release_gap_max=0.2),
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


# A dimension that was not measured, the finding that asks for it, and what it would give.
MISSING: list[tuple[str, str, Callable[[Data], object], object]] = [
    ("depth", "depth-wanted", lambda r: r["squaring"]["bore_if_tipped"], None),
    ("bolts", "bolts-wanted", lambda r: r["shims"], []),
    ("pilot_distance", "pilot-distance-wanted", lambda r: r["rounds"][0]["pilot"], None),
    ("dowel_holes", "holes-wanted", lambda r: r["fine_options"], []),
]  # fmt: skip


@pytest.mark.parametrize(("dimension", "code", "given_by_it", "nothing"), MISSING)
def test_a_missing_dimension_is_named_and_not_assumed(
    dimension: str, code: str, given_by_it: Callable[[Data], object], nothing: object
) -> None:
    """With face and bore outside all is wanted, and with the dimension it is there."""
    whole = leaning(1.5, joint(OFF))
    assert code not in codes_of(whole)
    assert given_by_it(solve(whole)) != nothing
    without = {**whole, "housing": {k: v for k, v in whole["housing"].items() if k != dimension}}
    assert finding_of(without, code)["field"] == f"housing.{dimension}"
    assert given_by_it(solve(without)) == nothing


def test_a_face_outside_takes_the_dowels_from_the_steps() -> None:
    """... though the table still shows what each would leave."""
    text = sheet(leaning(1.5, joint(OFF)))
    steps, _, table = text.partition("What each choice would leave")
    assert "sweep face and bore again as a recheck." in steps
    assert "\nFit " not in steps
    assert "7 thou dowels, aimed at 12 o'clock" in table


def test_a_trim_within_says_stop_and_turns_nothing() -> None:
    job = after(0.5, -1.5, 7.0, 0.0)
    assert {"trim-noise", "trim-other-size"} & set(codes_of(job)) == set()
    assert "The bore is within: stop here." in sheet(job)


def test_every_sentence_of_a_finding_begins_with_a_capital() -> None:
    for code, *_, job, _ in CASES:
        text = finding_of(job, code)["text"]
        heads = [sentence[0] for sentence in re.split(r"(?<=[.!?]) ", text)]
        assert not [head for head in heads if head.islower()], text


def test_bolt_holes_too_tight_are_not_beyond_dowels() -> None:
    """Fourteen low, room for 10: a pair of 14 does it, and needs 28 on the diameter."""
    job = make_job(readings_of(0.0, -14.0), housing={"bolt_clearance": 20.0})
    assert (
        "14 thou dowels. Clearance on the diameter: 28.0 thou"
        in finding_of(job, "bolt-holes")["text"]
    )
    assert not {"beyond-stock", "between-sizes"} & set(codes_of(job))


def test_a_smaller_pair_that_goes_in_and_may_do_is_said_to_be_doubtful() -> None:
    """11.5 low: 14 would leave 2.5 and does not go in; 7 goes in and leaves 4.5 of 5."""
    job = make_job(readings_of(0.0, -11.5), housing={"bolt_clearance": 15.0})
    assert (
        "14 thou dowels. Clearance on the diameter: 28.0 thou"
        in finding_of(job, "bolt-holes")["text"]
    )
    assert "It should leave 4.5 thou" in finding_of(job, "stock-doubtful")["text"]
    assert solve(job)["dowel_choice"]["offset"] == 7.0


def test_bolt_holes_are_not_spoken_of_where_a_smaller_pair_does() -> None:
    """Nine low: 9 would be best, 7 leaves 2 and goes in."""
    housing, stock = {"bolt_clearance": 15.0}, {"dowel_offsets": [7.0, 9.0]}
    assert "bolt-holes" not in codes_of(
        make_job(readings_of(0.0, -9.0), housing=housing, stock=stock)
    )


def test_the_size_that_is_needed_may_not_go_in() -> None:
    """10.5 is needed with a limit of 3, and 21 of clearance; there are 15."""
    job = make_job(
        readings_of(0.0, -10.5), limits={"bore_offset": 3.0}, housing={"bolt_clearance": 15.0}
    )
    assert (
        "10.5 thou dowels. Clearance on the diameter: 21.0 thou"
        in finding_of(job, "bolt-holes")["text"]
    )
    assert "between-sizes" in codes_of(job)


def test_while_something_else_comes_first_the_drawer_is_not_spoken_of() -> None:
    """Squaring the face may bring the bore nearer; a foreign reading may have made it far."""
    far = readings_of(0.0, -40.0)
    assert "beyond-stock" not in codes_of(leaning(1.5, make_job(far)))
    assert "beyond-stock" not in codes_of(make_job(far, closing=[3.0]))
    assert "beyond-stock" in codes_of(make_job(far))


@pytest.mark.parametrize(
    ("limits", "said"),
    [
        ({}, True),
        ({"bore_offset": 5.0}, True),
        ({"bore_offset": 4.0}, False),
        ({"bore_offset": 5.0, "source": "the manual"}, False),
    ],
)
def test_only_the_usual_limit_is_called_common_practice(limits: Data, *, said: bool) -> None:
    """A figure of the person's own may well be the manufacturer's: nothing is said of it."""
    assert ("limit-source" in codes_of(make_job(GOOD, limits=limits))) is said


def test_dowels_that_moved_otherwise_are_no_matter_once_within() -> None:
    """Told 7 and moved 3.8, from 5.5 low to 1.7 low: it is within, and there is no alarm."""
    first = make_job(readings_of(0.0, -5.5), indicator={"sag": 0.0})
    job = then(first, with_dowels(make_job(readings_of(0.0, -1.7)), (7.0, 0.0)))
    result = solve(job)
    assert result["rounds"][-1]["bore"]["verdict"] == "within"
    assert result["dowels_did"]["agrees"] is False
    assert not [code for code in codes_of(job) if code.startswith("moved-")]


def test_unlike_dowels_that_moved_otherwise_are_told_with_the_move_they_should_make() -> None:
    """7 up on the left alone moves the middle by 3.5; it moved by 7."""
    first = make_job(readings_of(0.0, -14.0), housing={"dowel_holes": TWO_HOLES})
    job = then(first, with_dowels(make_job(readings_of(0.0, -7.0)), (7.0, 0.0), (0.0, 0.0)))
    assert "expected 3.5 thou toward 12 o'clock" in finding_of(job, "moved-otherwise")["text"]


@pytest.mark.parametrize("aim", [90.0, 270.0])
def test_aimed_at_3_or_9_the_wrong_way_may_be_the_wrong_side(aim: float) -> None:
    """Seen from the front, a move to the right is one to the left."""
    way = 1.0 if aim == 90.0 else -1.0
    job = then(
        make_job(readings_of(-10.0 * way, 0.0)),
        with_dowels(make_job(readings_of(-17.0 * way, 0.0)), (7.0, aim)),
    )
    assert (
        "which side is 3 o'clock (seen from behind)" in finding_of(job, "moved-wrong-way")["text"]
    )


def test_stop_comes_first_and_notes_last() -> None:
    job = with_face(make_job(changed(3, 6.0), positions=EIGHTHS, closing=[3.0]), end_float="free")
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


def test_findings_of_readings_name_their_round() -> None:
    """A stop is of the latest round: what came before can't be swept again."""
    job = then(make_job(GOOD, closing=[3.0]), make_job(GOOD, closing=[3.0]))
    found = {f["code"]: f["field"] for f in solve(job)["findings"]}
    assert found["closing-error"] == "rounds.1.bore.closing.0"
    assert found["earlier-unreliable"] == "rounds.0.bore"


def test_a_round_that_cannot_be_trusted_tells_nothing_of_the_dowels() -> None:
    """A face swept then is named, too; where the bore was is taken from the later round alone."""
    early = with_face(make_job(GOOD, closing=[3.0]), closing=[3.0])
    late = with_dowels(make_job(readings_of(0.0, -1.0)), (7.0, 0.0))
    result = solve(then(early, late))
    assert [f["field"] for f in result["findings"] if f["code"] == "earlier-unreliable"] == [
        "rounds.0.bore", "rounds.0.face",
    ]  # fmt: skip
    assert result["dowels_did"] is None
    # Standard dowels would bring it back to where the later round alone says that it was.
    standard = next(o for o in result["dowel_options"] if not o["leave"] and not o["offset"])
    assert standard["expected_offset"] == pytest.approx(8.0)


def test_a_good_bore_brings_up_nothing() -> None:
    job = joint(GOOD, indicator={**PERFECT, "step": 0.1})
    assert codes_of(job) == []
