"""The rounds of a job taken together: what its dowels did, and the trim that follows."""

from __future__ import annotations

import math

import pytest

from sweepsheet import sheet, solve
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2
from sweepsheet.remedy.dowel_uncertainty import at_least
from tests.cases.jobs import (
    PERFECT,
    TWO_HOLES,
    Data,
    apart,
    codes_of,
    make_job,
    readings_of,
    then,
    with_dowels,
)

EXACT: Data = {"dowel_clearance": 0.0}
NO_MISS: Data = {"aim_setting_deg": 0.0}


def on(x: float, y: float, *dowels: tuple[float, float]) -> Data:
    """A bore at (x, y) on these dowels."""
    return with_dowels(make_job(readings_of(x, y)), *dowels)


def perfect(*rounds: Data, **parts: object) -> Data:
    """Rounds of a job in which dial, fit and aim leave no doubt."""
    known = {"indicator": PERFECT, "housing": EXACT, "stock": NO_MISS, **parts}
    return then({**rounds[0], **known}, *rounds[1:])


def test_gain_and_lag_come_out_of_a_job() -> None:
    """Nine tenths of 7 thou, 10 degrees clockwise of the aim, seen once."""
    a = math.radians(10.0)
    job = perfect(
        on(0.0, -8.0, (0.0, 0.0)), on(6.3 * math.sin(a), -8.0 + 6.3 * math.cos(a), (7.0, 0.0))
    )
    did, trim = solve(job)["dowels_did"], solve(job)["trim"]
    assert did["offset"] == pytest.approx(6.3, abs=1e-6)
    assert apart(did["direction_deg"], 10.0) < 1e-6
    assert did["gain"] == pytest.approx(0.9, abs=1e-6)
    assert did["lag_deg"] == pytest.approx(10.0, abs=1e-4)
    # Ten degrees back, so that they move it straight up; 8 less 6.3 is left.
    assert trim["turn_deg"] == pytest.approx(-10.0, abs=1e-4)
    assert apart(trim["aim_deg"], 350.0) < 1e-4
    assert trim["expected_offset"] == pytest.approx(1.7, abs=1e-6)


def test_a_trim_that_was_made_is_reckoned_with() -> None:
    """After turning as told the bore is where it was expected, and no turn is left."""
    a = math.radians(10.0)
    job = perfect(
        on(0.0, -8.0, (0.0, 0.0)),
        on(6.3 * math.sin(a), -8.0 + 6.3 * math.cos(a), (7.0, 0.0)),
        on(0.0, -1.7, (7.0, 350.0)),
    )
    assert solve(job)["trim"]["turn_deg"] == pytest.approx(0.0, abs=1e-3)


@pytest.mark.parametrize(
    "rounds",
    [
        [on(0.0, -8.0, (0.0, 0.0))],
        [on(0.0, -8.0, (0.0, 0.0)), on(0.0, -8.0, (0.0, 0.0))],
        [on(0.0, -8.0, (0.0, 0.0)), on(0.0, -1.0, (7.0, 0.0)), on(0.0, -8.0, (0.0, 0.0))],
    ],
)
def test_without_offset_dowels_there_is_nothing_to_trim_failure(rounds: list[Data]) -> None:
    result = solve(then(rounds[0], *rounds[1:]))
    assert result["trim"] is result["dowels_did"] is None


def test_a_pair_swept_without_standard_dowels_before_has_a_trim_and_no_observed_move() -> None:
    result = solve(on(3.0, -4.0, (7.0, 0.0)))
    assert result["dowels_did"] is None
    assert result["trim"] is not None


def test_unlike_dowels_have_no_trim_failure() -> None:
    """There is no one turn for both; what they did is told where their holes are known."""
    rounds = [on(0.0, -8.0, (0.0, 0.0)), on(0.0, -4.5, (7.0, 0.0), (0.0, 0.0))]
    without = solve(then(rounds[0], rounds[1]))
    assert without["trim"] is without["dowels_did"] is None
    assert "dowels-differ" in codes_of(then(rounds[0], rounds[1]))
    known = then({**rounds[0], "housing": {"dowel_holes": TWO_HOLES}}, rounds[1])
    result = solve(known)
    assert result["trim"] is None
    assert result["dowels_did"]["offset"] == pytest.approx(3.5, abs=1e-9)
    assert result["dowels_did"]["agrees"] is True
    assert "dowels-differ" not in codes_of(known)


def test_a_round_on_unlike_dowels_does_not_hide_the_others() -> None:
    """Where its holes are not known it is passed over."""
    rounds = [
        on(0.0, -8.0, (0.0, 0.0)), on(3.0, 3.0, (7.0, 0.0), (0.0, 0.0)), on(0.0, -1.0, (7.0, 0.0)),
    ]  # fmt: skip
    with_it = solve(then(rounds[0], *rounds[1:]))
    without = solve(then(rounds[0], rounds[2]))
    assert with_it["trim"] == without["trim"]
    assert with_it["dowels_did"] == without["dowels_did"]


def test_what_went_the_wrong_way_is_not_trimmed() -> None:
    """The advice starts again from the bore on standard dowels."""
    job = then(on(0.0, -8.0, (0.0, 0.0)), on(0.0, -15.0, (7.0, 0.0)))
    result = solve(job)
    assert result["dowels_did"]["opposite"] is True
    assert result["dowels_did"]["gain"] is result["dowels_did"]["lag_deg"] is None
    assert result["trim"] is None
    steps = sheet(job).partition("What each choice")[0]
    assert "Is the aim of the dowels wrong" in steps
    assert "\nFit " not in steps
    assert "\nTurn both" not in steps


# What wrong hands do, worked with true places: a housing, a dial and dowels, each as it is.


def worked(aim_off_deg: float = 0.0, *, front: bool = False, sign: float = 1.0) -> Data:
    """A bore that is truly 10 off toward 4:30, swept, fitted as the result says, and swept again.

    ``front``: the clock is read from the front of the engine, so that 3 and 9 are swapped in what
    is typed. ``sign``: the dial's. ``aim_off_deg``: by how much the dowels were fitted beside the
    aim that was told. The mechanic fits by what he sees from behind.
    """
    x, y = 7.07, -7.07

    def typed(tx: float, ty: float) -> Data:
        return make_job([sign * m for m in readings_of(-tx if front else tx, ty)])

    choice = solve(typed(x, y))["dowel_choice"]
    a = math.radians(choice["aim_deg"] + aim_off_deg)
    x, y = x + choice["offset"] * math.sin(a), y + choice["offset"] * math.cos(a)
    return then(typed(7.07, -7.07), with_dowels(typed(x, y), (choice["offset"], choice["aim_deg"])))


def forgotten() -> Data:
    """Dowels of 14 aimed at 12 were in as found, entered as stock ones: 20 low without them."""
    first = make_job(readings_of(0.0, -20.0 + 14.0))
    choice = solve(first)["dowel_choice"]
    assert choice["offset"] == 7.0
    assert apart(choice["aim_deg"], 0.0) < 1e-9
    return then(first, with_dowels(make_job(readings_of(0.0, -20.0 + 7.0)), (7.0, 0.0)))


@pytest.mark.parametrize(
    ("job", "code"),
    [
        (worked(), None),
        (forgotten(), "moved-wrong-way"),
        (worked(front=True), "moved-mirrored"),
        (worked(sign=-1.0), "moved-wrong-way"),
        (worked(180.0), "moved-wrong-way"),
        (worked(40.0), "moved-otherwise"),
    ],
    ids=[
        "as told",
        "dowels forgotten",
        "from the front",
        "sign of the dial",
        "other side",
        "turned while fitted",
    ],
)
def test_what_wrong_hands_do_is_told_by_what_it_is(job: Data, code: str | None) -> None:
    found = [each for each in codes_of(job) if each.startswith("moved-")]
    assert found == ([code] if code else [])
    if code in ("moved-wrong-way", "moved-mirrored"):
        result = solve(job)
        assert result["trim"] is result["dowel_choice"] is None
        assert result["dowels_did"]["gain"] is None


def test_dowels_that_do_something_else_are_reckoned_with_as_they_are() -> None:
    """Half of what is written on them, and sure of it: the belief of about 1 hardly pulls."""
    job = then(on(0.0, -10.0, (0.0, 0.0)), on(0.0, -6.5, (7.0, 0.0)))
    did = solve(job)["dowels_did"]
    assert did["agrees"] is False
    assert did["gain"] == pytest.approx(0.5, abs=0.02)


def test_the_chance_of_a_trim_needs_a_limit() -> None:
    rounds = [on(0.0, -8.0, (0.0, 0.0)), on(2.0, -2.0, (7.0, 0.0))]
    job = then(rounds[0], rounds[1])
    assert 0.0 < solve(job)["trim"]["probability_within"] < 1.0
    unlimited = {**job, "limits": {"bore_offset": None}}
    assert solve(unlimited)["trim"]["probability_within"] is None


def test_the_fitted_size_among_the_options_is_the_trim() -> None:
    """One and the same advice in both places."""
    job = then(on(0.0, -8.0, (0.0, 0.0)), on(2.0, -2.0, (7.0, 0.0)))
    result = solve(job)
    (same,) = [o for o in result["dowel_options"] if o["offset"] == 7.0]
    assert apart(same["aim_deg"], result["trim"]["aim_deg"]) < 1e-9
    assert same["expected_offset"] == pytest.approx(result["trim"]["expected_offset"], abs=1e-9)
    assert same["probability_within"] == pytest.approx(
        result["trim"]["probability_within"], abs=1e-9
    )


def test_the_play_of_the_fit_makes_a_move_less_sure() -> None:
    """A round after the first is a new fit; the first is as it was found."""
    widths = []
    for clearance in (0.0, 4.0):
        job = then(on(0.0, -8.0, (0.0, 0.0)), on(0.0, -1.0, (7.0, 0.0)))
        job["housing"] = {"dowel_clearance": clearance}
        widths.append(solve(job)["dowels_did"]["offset_pm"])
    variances = [(w / 1.96) ** 2 for w in widths]
    assert variances[1] - variances[0] == pytest.approx(2.0**2 / 3.0, rel=1e-3)


@pytest.mark.parametrize("aim", [0.0, 30.0, 45.0])
@pytest.mark.parametrize("angle_setting", [0.0, 5.0])
def test_a_perfect_dial_breaks_nothing(aim: float, angle_setting: float) -> None:
    """Next to no doubt, or doubt one way only, from one round or from three."""
    dial = {**PERFECT, "angle_setting_deg": angle_setting}
    rounds = [on(0.0, -8.0, (0.0, 0.0)), on(2.0, -2.0, (7.0, aim)), on(0.0, -1.0, (7.0, aim))]
    for job in (perfect(rounds[0]), perfect(rounds[1]), perfect(*rounds)):
        result = solve({**job, "indicator": dial})
        assert all(math.isfinite(o["expected_offset"]) for o in result["dowel_options"])


def test_the_same_round_twice_is_no_contradiction() -> None:
    job = perfect(on(0.0, -8.0, (0.0, 0.0)), *[on(0.0, -1.0, (7.0, 0.0))] * 3)
    assert solve(job)["dowels_did"]["agrees"] is True
    assert solve(job)["trim"]["turn_deg"] == pytest.approx(0.0, abs=1e-3)


def test_at_least_leaves_a_usual_covariance_as_it_is() -> None:
    usual = Sym2(0.2, 0.05, 0.3)
    found = at_least(usual)
    assert (found.xx, found.xy, found.yy) == pytest.approx((0.2, 0.05, 0.3), abs=1e-8)


@pytest.mark.parametrize("thin", [ZERO_COVARIANCE, Sym2(1.0, 0.0, 0.0), Sym2(1e4, 1e4, 1e4)])
def test_at_least_failure(thin: Sym2) -> None:
    """A covariance that can't be inverted can be afterwards."""
    assert thin.determinant == 0.0
    found = at_least(thin)
    back = found.inverse()
    assert found.xx * back.xx + found.xy * back.xy == pytest.approx(1.0, abs=1e-6)
