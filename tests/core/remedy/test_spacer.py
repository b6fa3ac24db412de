"""What put between puts right, tried on the solids."""

from __future__ import annotations

import math
import random
from dataclasses import replace

import pytest

from sweepsheet.alignment.depth import Gap, GapName, Room
from sweepsheet.job.read import read_job
from sweepsheet.maths.verdict import NOT_JUDGED
from sweepsheet.remedy.spacer import Band, DepthFit, depth_fit, spacer_for
from tests.cases.gearbox import DEEP, Engine, Fit, Gearbox, Span, any_fit, depth_job
from tests.cases.jobs import Data

GOOD = Fit()
NEEDED: Data = {
    "engagement_min": 0.3, "tip_gap_min": 0.1, "release_gap_min": 0.05, "release_gap_max": 0.4,
}  # fmt: skip


def fitted(data: Data) -> DepthFit:
    found = depth_fit(read_job(data))
    assert found is not None
    return found


def is_as_needed(fit: Fit, spacer: float) -> bool:
    """Whether the solids, put together with a spacer, are as needed."""
    gaps = fit.gaps(spacer)
    least = {"engagement": 0.3, "tip": 0.1, "release": 0.05}
    return gaps["release"] <= 0.4 and all(
        size >= least.get(name, 0.0) for name, size in gaps.items()
    )


@pytest.mark.slow
def test_a_spacer_from_the_band_makes_all_of_it_fit() -> None:
    """Both ends of the band, on 300 fits measured with errors: all fits in nineteen of twenty."""
    rng = random.Random(11)
    offered = ends = held = 0
    while offered < 300:
        fit = any_fit(rng)
        band = fitted(depth_job(fit, rng, **NEEDED)).spacer
        if band is None or band.low <= 0:
            continue
        offered += 1
        for end in (band.low, band.high):
            made = end + rng.uniform(-0.005, 0.005)
            ends += 1
            held += is_as_needed(fit, made)
    assert held / ends >= 0.95


def test_where_none_is_offered_though_something_is_wrong_there_is_hardly_any() -> None:
    """The solids are tried with every thickness: what fits is a narrow band, if anything."""
    rng = random.Random(12)
    tried = 0
    while tried < 60:
        fit = any_fit(rng)
        found = fitted(depth_job(fit, rng, **NEEDED))
        if not found.wrong or found.spacer is not None:
            continue
        tried += 1
        steps = [i * 0.002 - fit.engine.between for i in range(500)]
        fits = [t for t in steps if is_as_needed(fit, t)]
        # No wider than what measuring leaves open at both ends.
        assert not fits or max(fits) - min(fits) < 0.08


def test_by_hand() -> None:
    """The tip 0.05 into the bottom, 0.1 needed: 0.15 and what three lengths leave open."""
    band = fitted(depth_job(DEEP, tip_gap_min=0.1)).spacer
    assert band is not None
    guard = 1.644854 * math.sqrt((0.01**2 * 2 + 0.005**2 * 2) / 3.0)
    assert band.low == pytest.approx(0.15 + guard, abs=1e-6)
    # No more than keeps the stroke: 0.2 is left of it.
    assert band.high == pytest.approx(0.2 - 1.644854 * math.sqrt((2 * 0.01**2 + 3 * 0.005**2) / 3))


def test_less_between_only_as_far_as_something_is_between() -> None:
    thick = replace(GOOD, engine=replace(Engine(), between=0.3))
    band = fitted(depth_job(thick, engagement_min=0.3, release_gap_max=0.4)).spacer
    assert band is not None
    assert band.high < 0
    assert is_as_needed(thick, (max(band.low, -0.3) + band.high) / 2.0)
    short = Fit(gearbox=Gearbox(shaft=Span(-6.5, 0.0), journal=Span(-6.5, -5.7)))
    assert fitted(depth_job(short, engagement_min=0.3)).spacer is None


def test_nothing_is_put_between_where_all_is_as_needed() -> None:
    found = fitted(depth_job(GOOD, **NEEDED))
    assert (found.wrong, found.spacer, found.release_shim) == ((), None, None)


def test_without_pilot_and_bottom_no_spacer_is_named() -> None:
    """It would be put in for the release bearing and might pull the shaft out of its bearing."""
    near = replace(GOOD, gearbox=replace(Gearbox(), release_bearing=-3.75, stroke=2.0))
    assert fitted(depth_job(near, **NEEDED)).spacer is not None
    for unknown in ("to_bottom", "to_tip"):
        found = fitted(depth_job(near, **NEEDED | {unknown: None}))
        assert found.wrong
        assert not found.is_bounded
        assert found.spacer is None


@pytest.mark.slow
def test_a_shim_behind_the_release_bearing_gives_it_its_room() -> None:
    rng = random.Random(13)
    offered = held = 0
    while offered < 200:
        fit = any_fit(rng)
        shim = fitted(depth_job(fit, rng, **NEEDED, release="hydraulic")).release_shim
        if shim is None:
            continue
        offered += 1
        for end in (shim.low, shim.high):
            box = fit.gearbox
            moved = box.release_bearing - end - rng.uniform(-0.005, 0.005)
            gaps = replace(fit, gearbox=replace(box, release_bearing=moved)).gaps()
            held += (
                0.05 <= gaps["release"] <= 0.4 and min(gaps["release_worn"], gaps["stroke"]) >= 0
            )
    assert held / (2 * offered) >= 0.95


def test_a_bearing_too_short_is_not_cured_by_a_spacer() -> None:
    """Three tenths are needed, and the bearing has a quarter; its tip bottoms, too."""
    short = replace(GOOD, engine=replace(Engine(), pilot=Span(-0.35, -0.1), bottom=-0.55))
    found = fitted(depth_job(short, engagement_min=0.3))
    assert {gap.name for gap in found.wrong} == {"engagement", "tip"}
    assert found.spacer is None


def test_a_lever_is_set_and_not_shimmed() -> None:
    wide = replace(GOOD, gearbox=replace(Gearbox(), release_bearing=-3.3, stroke=2.0))
    for kind, is_shimmed in (("hydraulic", True), ("lever", False), (None, False)):
        found = fitted(depth_job(wide, **NEEDED, release=kind))
        assert [gap.name for gap in found.wrong] == ["release"]
        assert (found.release_shim is not None) == is_shimmed
    # Nor where the shaft is wrong, too.
    both = replace(wide, engine=replace(Engine(), bottom=-0.5))
    assert fitted(depth_job(both, **NEEDED, release="hydraulic")).release_shim is None
    # Nor one too near: no shim takes it back.
    near = replace(GOOD, gearbox=replace(Gearbox(), release_bearing=-3.9, stroke=2.0))
    assert fitted(depth_job(near, **NEEDED, release="hydraulic")).release_shim is None


def gap(name: GapName, *needs: Room) -> Gap:
    return Gap(name, 0.0, 0.0, 0.0, None, is_given=True, needs=needs, judged=NOT_JUDGED)


def test_the_band_of_several_needs() -> None:
    """Each of n needs is held to one less (1 - confidence) / n: two of 97.5 % make 95 %."""
    needs = (Room(-0.1, 0.0001, 1), Room(0.5, 0.0001, -1))
    band = spacer_for((gap("release", *needs),), 0.0, 0.95)
    assert band is not None
    assert band.low == pytest.approx(0.1 + 1.959964 * 0.01, abs=1e-6)
    assert band.high == pytest.approx(0.5 - 1.959964 * 0.01, abs=1e-6)
    # What no thickness changes must be as needed by itself: 1.64 standard deviations and more.
    for size, band in ((0.17, Band(-math.inf, math.inf)), (0.16, None), (-1.0, None)):
        assert spacer_for((gap("engagement", Room(size, 0.01, 0)),), 0.0, 0.95) == band
    apart = Room(-1.0, 0.0, 1), Room(0.5, 0.0, -1)
    assert spacer_for((gap("tip", *apart),), 0.0, 0.95) is None
