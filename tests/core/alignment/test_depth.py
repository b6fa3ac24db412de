"""Lengths along the crank axis, held against solids whose places are known."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest

from sweepsheet import solve
from sweepsheet.alignment.depth import Gap, Room, gaps_of, judge_all
from sweepsheet.job.read import read_job
from tests.cases.gearbox import Engine, Fit, Gearbox, Span, any_fit, depth_job
from tests.cases.jobs import Data, make_job, readings_of

GOOD = Fit()
NAMES = list(GOOD.gaps())


def gaps(data: Data) -> dict[str, Gap]:
    return {gap.name: gap for gap in gaps_of(read_job(data))}


def test_by_hand() -> None:
    """The figures on paper: the shaft's tip at 6.3 - 6.9 = -0.6, the bearing from -0.1 to -0.85."""
    found = gaps(depth_job(GOOD))
    assert {name: round(gap.size, 9) for name, gap in found.items()} == {
        "engagement": 0.5, "tip": 0.9, "hub_front": 0.25, "hub_front_worn": 0.22,
        "hub_rear": 0.35, "release": 0.15, "release_worn": 0.05, "stroke": 0.2,
    }  # fmt: skip
    # Three lengths: 1.96 sqrt((0.01² + 0.01² + 0.005²) / 3).
    assert found["tip"].pm == pytest.approx(1.959964 * (0.000225 / 3) ** 0.5, rel=1e-6)


@pytest.mark.parametrize("seed", range(40))
def test_gaps_are_those_between_the_parts(seed: int) -> None:
    """Without errors of measuring, every gap is what there is between two solids."""
    fit = any_fit(random.Random(seed))
    found = gaps(depth_job(fit))
    assert list(found) == NAMES
    for name, truth in fit.gaps().items():
        assert found[name].size == pytest.approx(truth, abs=1e-12), name


@pytest.mark.parametrize("seed", range(10))
def test_a_spacer_moves_each_gap_as_it_says(seed: int) -> None:
    """What ``per_spacer`` tells of the room that bounds a gap, seen on the solids."""
    fit = any_fit(random.Random(100 + seed))
    after = fit.gaps(0.001)
    for gap in gaps_of(read_job(depth_job(fit))):
        bound = min(gap.needs, key=lambda room: room.size)
        moved = after[gap.name] - fit.gaps()[gap.name]
        assert moved == pytest.approx(0.001 * bound.per_spacer, abs=1e-12), gap.name


@pytest.mark.slow
@pytest.mark.parametrize("pm", [(0.01, 0.005), (0.02, 0.002), (0.005, 0.005)])
def test_the_95_region_holds_the_truth(pm: tuple[float, float]) -> None:
    """In 93 to 99 of 100 gaps of three lengths and more, measured with errors anywhere within ±."""
    rng = random.Random(20261127)
    held = dict.fromkeys(NAMES, 0)
    tries = 1500
    for _ in range(tries):
        fit = any_fit(rng)
        engine_pm, gearbox_pm = pm
        data = make_job(readings_of(0.0, -1.0), depth=fit.measured(rng, engine_pm, gearbox_pm))
        truth = fit.gaps()
        for name, gap in gaps(data).items():
            held[name] += abs(gap.size - truth[name]) <= gap.pm
    for name, count in held.items():
        # An overlap bounded by one length alone is surer than it says: one error has hard ends.
        most = 1.0 if name == "engagement" else 0.99
        assert 0.93 <= count / tries <= most, (name, count / tries)


def test_what_is_called_within_and_outside_is_so() -> None:
    """Of 2,000 fits near their limits at most one in twenty of either word is wrong."""
    rng = random.Random(5)
    said = {"within": 0, "outside": 0}
    wrong = {"within": 0, "outside": 0}
    needed: Data = {"engagement_min": 0.45, "tip_gap_min": 0.85, "release_gap_min": 0.1}
    least = {"engagement": 0.45, "tip": 0.85, "release": 0.1}
    for _ in range(700):
        fit = GOOD.nearer(rng.uniform(-0.1, 0.1))
        truth = fit.gaps()
        for name, gap in gaps(depth_job(fit, rng, **needed)).items():
            verdict = gap.judged.verdict
            if verdict in said:
                said[verdict] += 1
                holds = truth[name] >= least.get(name, 0.0)
                wrong[verdict] += holds != (verdict == "within")
    assert min(said.values()) > 100
    assert all(wrong[word] <= said[word] / 20 for word in said), (said, wrong)


def test_a_tip_that_goes_through_the_bearing_fills_its_length() -> None:
    """Also where the journal's own rear end has gone into it: then less of it bears."""
    through = Fit(gearbox=Gearbox(shaft=Span(-7.4, 0.0), journal=Span(-7.4, -6.0)))
    assert gaps(depth_job(through))["engagement"].size == pytest.approx(0.75)
    beyond = Fit(gearbox=Gearbox(shaft=Span(-7.4, 0.0), journal=Span(-7.4, -6.8)))
    assert gaps(depth_job(beyond))["engagement"].size == pytest.approx(beyond.gaps()["engagement"])
    assert beyond.gaps()["engagement"] == pytest.approx(0.35)
    # Five lengths bound it then: bearing, journal, and the three of the tip's way.
    squares = 0.01**2 + 0.005**2 + (2 * 0.01**2 + 0.005**2)
    pm = gaps(depth_job(beyond))["engagement"].pm
    assert pm == pytest.approx(1.959964 * (squares / 3.0) ** 0.5, rel=1e-6)


def test_a_shaft_that_does_not_reach_is_outside_whatever_is_needed() -> None:
    short = Fit(gearbox=Gearbox(shaft=Span(-6.2, 0.0), journal=Span(-6.2, -5.4)))
    gap = gaps(depth_job(short))["engagement"]
    assert gap.size == pytest.approx(-0.2)
    assert (gap.judged.verdict, gap.is_given) == ("outside", False)
    # One that does is not called within as long as nobody says how much is needed.
    assert gaps(depth_job(GOOD))["engagement"].judged.verdict is None
    assert gaps(depth_job(GOOD, engagement_min=0.4))["engagement"].judged.verdict == "within"
    assert gaps(depth_job(GOOD, engagement_min=0.5))["engagement"].judged.verdict == "undecided"
    assert gaps(depth_job(GOOD, engagement_min=0.6))["engagement"].judged.verdict == "outside"


@pytest.mark.parametrize("unknown", ["pilot_length", "journal_length"])
def test_an_engagement_bounded_by_what_is_not_known_is_never_within(unknown: str) -> None:
    """It is at most what the tip reaches: too little may be said of it, enough may not."""
    for least, verdict in ((0.1, None), (0.6, "outside")):
        found = gaps(depth_job(GOOD, engagement_min=least, **{unknown: None}))["engagement"]
        assert found.judged.verdict == verdict
        assert found.size == pytest.approx(0.5)


def test_a_release_gap_too_wide_is_outside_as_one_too_narrow_is() -> None:
    cases: list[tuple[Data, str]] = [
        ({"release_gap_min": 0.1, "release_gap_max": 0.2}, "within"),
        ({"release_gap_min": 0.2, "release_gap_max": 0.3}, "outside"),
        ({"release_gap_max": 0.1}, "outside"),
        ({"release_gap_max": 0.15}, "undecided"),
    ]
    for limits, verdict in cases:
        assert gaps(depth_job(GOOD, **limits))["release"].judged.verdict == verdict, limits


def test_measured_from_the_bearing_itself_has_one_error_less() -> None:
    """Then the bearing's end is where the other lengths begin."""
    flush = replace(GOOD, engine=replace(Engine(), pilot=Span(-0.75, 0.0)))
    pm = gaps(depth_job(flush))["engagement"].pm
    assert pm == pytest.approx(1.959964 * ((0.01**2 + 0.005**2) / 3) ** 0.5, rel=1e-6)
    assert pm < gaps(depth_job(GOOD))["engagement"].pm


def test_a_plate_that_comes_later_counts_with_its_own_error() -> None:
    later = replace(GOOD, engine=replace(Engine(), between=0.25))
    plain, thicker = gaps(depth_job(GOOD)), gaps(depth_job(later))
    assert thicker["tip"].size == pytest.approx(plain["tip"].size + 0.25)
    squares = 2 * 0.01**2 + 2 * 0.005**2
    assert thicker["tip"].pm == pytest.approx(1.959964 * (squares / 3.0) ** 0.5, rel=1e-6)
    # The stroke is what is left of it: a thicker plate takes from it.
    assert thicker["stroke"].size == pytest.approx(plain["stroke"].size - 0.25)


def test_the_stroke_was_measured_too() -> None:
    found = gaps(depth_job(GOOD))
    assert found["stroke"].pm > found["release"].pm


@pytest.mark.parametrize(
    ("unknown", "gone"),
    [
        ("to_face", set(NAMES)),
        ("to_tip", {"engagement", "tip"}),
        ("to_bottom", {"tip"}),
        ("to_hub_front", {"hub_front", "hub_front_worn"}),
        ("to_splines_front", {"hub_front", "hub_front_worn"}),
        ("disc_wear", {"hub_front_worn"}),
        ("to_hub_rear", {"hub_rear"}),
        ("to_splines_rear", {"hub_rear"}),
        ("to_fingers", {"release", "release_worn", "stroke"}),
        ("to_bearing", {"release", "release_worn", "stroke"}),
        ("fingers_worn", {"release_worn"}),
        ("bearing_stroke", {"stroke"}),
        ("release_travel", {"stroke"}),
        ("pilot_length", set()),
        ("journal_length", set()),
    ],
)
def test_what_was_not_measured_is_not_assumed(unknown: str, gone: set[str]) -> None:
    assert set(NAMES) - gaps(depth_job(GOOD, **{unknown: None})).keys() == gone


def test_a_job_without_lengths_has_none() -> None:
    assert solve(make_job(readings_of(0.0, -1.0)))["depth"] is None


def test_in_millimetres_it_is_the_same() -> None:
    depth = GOOD.measured() | {"engagement_min": 0.45}
    metric = {key: 25.4 * value for key, value in depth.items()}
    inches = {
        gap["name"]: gap for gap in solve(depth_job(GOOD, engagement_min=0.45))["depth"]["gaps"]
    }
    sweep = [m * 0.0254 for m in readings_of(0.0, -1.0)]
    data = make_job(sweep, units="metric", depth=metric)
    for gap in solve(data)["depth"]["gaps"]:
        assert gap["size"] == pytest.approx(25.4 * inches[gap["name"]]["size"], abs=1e-9)
        assert gap["size_pm"] == pytest.approx(25.4 * inches[gap["name"]]["size_pm"])
        assert gap["verdict"] == inches[gap["name"]]["verdict"]


def test_several_needs_are_judged_together() -> None:
    """Within only where the sum of what may fail is small; outside where one surely fails."""
    barely = Room(1.7, 1.0, 0)  # 95.5 % by itself
    assert judge_all((barely,), 0.95).verdict == "within"
    assert judge_all((barely, barely), 0.95).verdict == "undecided"
    assert judge_all((barely, Room(-1.7, 1.0, 0)), 0.95).verdict == "outside"
    hopeless = judge_all((Room(-0.1, 1.0, 0), Room(-0.1, 1.0, 0)), 0.95)
    assert (hopeless.probability, hopeless.verdict) == (0.0, "undecided")


def test_room_above_and_below() -> None:
    room = Room(2.0, 0.04, -1)
    assert room.above(0.5) == Room(1.5, 0.04, -1)
    assert room.below(5.0) == Room(3.0, 0.04, 1)
    assert (room.deviation, Room(0.0, 1.0, 0).chance) == (0.2, 0.5)
