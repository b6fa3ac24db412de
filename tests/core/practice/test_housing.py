"""The practice housing: solids in space, the trade's signs, and the core finds what is hidden."""

from __future__ import annotations

import math
from functools import cache
from itertools import product
from typing import Any

import numpy as np
import pytest

from sweepsheet import solve
from sweepsheet.job.model import Dowel
from sweepsheet.maths.vector import ZERO, Vec2
from sweepsheet.practice.housing import (
    BORE_RADIUS,
    FACE_RADIUS,
    HIGHEST_SEED,
    LEVELS,
    LOOSE,
    PILOT_DISTANCE,
    PLATE,
    TIPPED,
    TURN,
    SetUp,
    TrueHousing,
    bore_after,
    dial_turn,
    droop_on_a_bar,
    face_distance,
    true_housing_of,
    wall_distance,
)
from tests.cases.jobs import EIGHTHS, QUARTERS, Data

THOU = 0.0254
CHI2_95 = -2.0 * math.log(0.05)
SET_UPS = [
    SetUp(contact, plus_when, plunger, clockwise)  # type: ignore[arg-type]  # a text from a table of them
    for contact, plus_when, plunger, clockwise in product(
        ("inside", "outside"),
        ("plunger_in", "plunger_out"),
        ("forward", "rearward"),
        (True, False),
    )
]


def housing(
    center: Vec2 = ZERO, slope: Vec2 = ZERO, droop: float = 0.0, level: int = 1
) -> TrueHousing:
    """A housing with just this wrong, and nothing that scatters."""
    return TrueHousing(1, level, center, slope, droop, 1.0, 0.0, 0.0, 0.0, 0.0)


def shown(hidden: TrueHousing, set_up: SetUp, part: str, angle: float) -> float:
    """What the dial shows at a clock angle, in thou."""
    travel = round(angle if set_up.clockwise else -angle) % TURN
    return dial_turn(hidden, [], set_up, part, 0)[travel] / THOU


# The solids ----------------------------------------------------------------------------------


@pytest.mark.parametrize("angle", [0.0, 0.7, 2.5, 4.0])
@pytest.mark.parametrize(("reach", "inward"), [(30.0, False), (90.0, True)])
def test_the_plunger_ends_on_the_wall(angle: float, reach: float, inward: bool) -> None:  # noqa: FBT001 - a column of the table
    """Its end is the radius away from the leaning axis, on the side that the dial stands on."""
    center, slope = Vec2(0.3, -0.5), Vec2(0.002, -0.003)
    out = np.array([math.sin(angle), math.cos(angle), 0.0])
    way = -out if inward else out
    t = wall_distance(
        center, slope, Vec2(reach * out[0], reach * out[1]), Vec2(float(way[0]), float(way[1]))
    )
    end = reach * out + t * way
    axis = np.array([-slope.x, -slope.y, 1.0])
    from_axis = np.cross(end - [center.x, center.y, 0.0], axis / np.linalg.norm(axis))
    assert float(np.linalg.norm(from_axis)) == pytest.approx(BORE_RADIUS, abs=1e-9)
    assert 0.0 < t < 35.0


def test_the_axial_plunger_ends_on_the_plane() -> None:
    """From behind and from before, the two add up to the way between their bases."""
    slope, base = Vec2(0.001, 0.002), Vec2(40.0, -20.0)
    both = [face_distance(slope, base, plunger) for plunger in ("forward", "rearward")]
    assert both[1] - both[0] == pytest.approx(2.0 * (0.001 * 40.0 - 0.002 * 20.0))


# Signs: facts of the trade (common practice, no source) --------------------------------------

LOW = housing(Vec2(0.0, -5.0 * THOU))
RIGHT = housing(Vec2(5.0 * THOU, 0.0))
LEANS = housing(slope=Vec2(0.0, 2.0 * THOU / FACE_RADIUS))


def test_a_low_bore_reads_highest_on_top() -> None:
    """Inside contact, plus when pushed in: on top the wall is nearest; the TIR is twice 5."""
    readings = [shown(LOW, SetUp(), "bore", a) for a in QUARTERS]
    assert readings == pytest.approx([0.0, -5.0, -10.0, -5.0], abs=0.01)


@pytest.mark.parametrize("set_up", SET_UPS)
def test_each_turned_sense_turns_the_reading(set_up: SetUp) -> None:
    """A dial that reads the other way and one that touches from outside each change the sign."""
    turned = (set_up.contact == "outside") != (set_up.plus_when == "plunger_out")
    assert shown(LOW, set_up, "bore", 180.0) == pytest.approx(10.0 if turned else -10.0, abs=0.01)


@pytest.mark.parametrize("clockwise", [True, False])
def test_right_is_right_whichever_way_the_crank_turns(clockwise: bool) -> None:  # noqa: FBT001 - a column of the table
    """A bore that is off to the right reads lowest at 3 o'clock, highest at 9."""
    set_up = SetUp(clockwise=clockwise)
    assert shown(RIGHT, set_up, "bore", 90.0) == pytest.approx(-5.0, abs=0.01)
    assert shown(RIGHT, set_up, "bore", 270.0) == pytest.approx(5.0, abs=0.01)
    quarter = dial_turn(RIGHT, [], set_up, "bore", 0)[90] / THOU
    assert quarter == pytest.approx(-5.0 if clockwise else 5.0, abs=0.01)


def test_a_face_that_stands_rearward_pushes_in_a_plunger_that_points_forward() -> None:
    """It stands rearward on top: the dial falls by the runout, 4 thou, from 12 to 6."""
    assert shown(LEANS, SetUp(), "face", 180.0) == pytest.approx(-4.0)
    assert shown(LEANS, SetUp(plunger="rearward"), "face", 180.0) == pytest.approx(4.0)
    assert shown(LEANS, SetUp(plus_when="plunger_out"), "face", 180.0) == pytest.approx(4.0)


def test_droop_reads_as_a_bore_that_is_high() -> None:
    """Plus from top to bottom inside a true bore; as much as on a bar that is rolled over."""
    hangs = housing(droop=1.5 * THOU)
    assert shown(hangs, SetUp(), "bore", 180.0) == pytest.approx(3.0, abs=0.01)
    assert droop_on_a_bar(hangs) / THOU == pytest.approx(3.0)


@pytest.mark.parametrize("aim", [0.0, 90.0, 225.0])
def test_dowels_move_the_housing_the_way_they_are_aimed(aim: float) -> None:
    """By what is written on them; the next pair takes the place of the last."""
    first, second = Dowel(0.5, 10.0), Dowel(7 * THOU, aim)
    after = bore_after(RIGHT, [first, second])
    assert after.x / THOU == pytest.approx(5.0 + 7.0 * math.sin(math.radians(aim)))
    assert after.y / THOU == pytest.approx(7.0 * math.cos(math.radians(aim)))


def test_pushing_the_highest_reading_away_makes_it_worse() -> None:
    """The housing must go toward the highest reading; the other way doubles the error."""
    toward = bore_after(LOW, [Dowel(5.0 * THOU, 0.0)])
    away = bore_after(LOW, [Dowel(5.0 * THOU, 180.0)])
    assert toward.length / THOU == pytest.approx(0.0, abs=1e-9)
    assert away.length / THOU == pytest.approx(10.0)


# Exercises -----------------------------------------------------------------------------------


@pytest.mark.parametrize("level", LEVELS)
def test_a_seed_always_makes_the_same_housing(level: int) -> None:
    for seed in (1, 417, HIGHEST_SEED):
        hidden = true_housing_of(seed, level)
        assert hidden == true_housing_of(seed, level)
        turn = dial_turn(hidden, [Dowel(0.1, 30.0)], SetUp(), "bore", 1)
        assert turn == dial_turn(hidden, [Dowel(0.1, 30.0)], SetUp(), "bore", 1)
        assert len(turn) == TURN + 1


def test_this_exercise_stays_what_it_was() -> None:
    """A teacher has handed it out: another release must not change it."""
    hidden = true_housing_of(417, 2)
    found = (hidden.center.x, hidden.center.y, hidden.droop, hidden.gain, hidden.lag_deg)
    assert found == pytest.approx(
        (-0.2294085, 0.3934763, 0.0109507, 1.0274703, 3.1533896), abs=1e-6
    )


def test_exercises_are_within_what_was_promised() -> None:
    offsets: dict[int, list[float]] = {level: [] for level in LEVELS}
    for level, seed in product(LEVELS, range(1, 400)):
        hidden = true_housing_of(seed, level)
        offsets[level].append(hidden.center.length / THOU)
        runout = 2.0 * FACE_RADIUS * hidden.slope.length / THOU
        assert 8.0 <= runout <= 14.0 if level == TIPPED else runout <= 4.0
        assert droop_on_a_bar(hidden) / THOU <= 0.9
        assert (hidden.slope == ZERO) == (level not in (3, TIPPED))
        assert (hidden.seat == 0.0) == (level != LOOSE)
        assert (hidden.plate == ZERO) == (level != PLATE)
        assert (hidden.scatter == 0.0) == (level == 1)
    assert min(offsets[1]) >= 6.0
    assert max(offsets[1]) <= 12.0
    assert max(offsets[2] + offsets[3] + offsets[LOOSE] + offsets[PLATE]) <= 20.0
    # Some are good as they are, and best left alone.
    assert 5 < sum(offset < 4.0 for offset in offsets[2]) < 40


def test_sweeps_scatter_and_fits_come_to_rest_anew() -> None:
    hidden = true_housing_of(417, 2)
    sweeps = [dial_turn(hidden, [], SetUp(), "bore", n) for n in (0, 1)]
    differ = [a - b for a, b in zip(*sweeps, strict=True)]
    assert 0.1 < max(map(abs, differ)) / THOU < 2.0
    pair = Dowel(0.1, 30.0)
    once, twice = bore_after(hidden, [pair]), bore_after(hidden, [pair, pair])
    assert 0.0 < (once - twice).length / THOU < 3.0


# The core finds what is hidden ---------------------------------------------------------------


def round_of(hidden: TrueHousing, fits: list[Dowel], set_up: SetUp, units: str) -> Data:
    """One round read off the dial by the mechanic: eight positions of bore and face."""
    mm, step = (THOU, 0.5) if units == "inch" else (1.0, 0.01)
    parts: Data = {}
    for part in ("bore", "face"):
        turn = dial_turn(hidden, fits, set_up, part, 0)
        at = [round(a if set_up.clockwise else -a) % TURN for a in EIGHTHS]
        parts[part] = {
            "positions_deg": list(EIGHTHS),
            "sweeps": [[round(turn[t] / mm / step) * step for t in at]],
            "closing": [round(turn[TURN] / mm / step) * step],
        }
    long = 25.4 if units == "inch" else 1.0
    parts["bore"]["contact"] = set_up.contact
    parts["face"] |= {
        "radius": FACE_RADIUS / long, "plunger": set_up.plunger, "end_float": "held",
    }  # fmt: skip
    if fits:
        pair = {"offset": fits[-1].offset / mm, "aim_deg": fits[-1].aim_deg}
        parts["dowels"] = [pair, pair]
    return parts


def job_of(rounds: list[Data], set_up: SetUp, units: str, **dial: object) -> Data:
    """A job of these rounds; the bracket of an exercise is a stiff one that hangs a little."""
    long = 25.4 if units == "inch" else 1.0
    return {
        "format": "sweepsheet-job", "version": 1, "units": units, "rounds": rounds,
        "indicator": {"plus_when": set_up.plus_when, "holder": "bracket", **dial},
        "housing": {"pilot_distance": PILOT_DISTANCE / long},
    }  # fmt: skip


def holds(center: list[float], covariance: list[list[float]], truth: Vec2) -> bool:
    """Whether the 95 % region holds the truth."""
    miss = np.array([truth.x, truth.y]) - np.array(center)
    return bool(miss @ np.linalg.solve(np.array(covariance), miss) <= CHI2_95)


@pytest.mark.parametrize("set_up", SET_UPS)
def test_a_perfect_dial_finds_the_housing_to_the_step(set_up: SetUp) -> None:
    """Level 1 in every set-up: the centre to half a step each way, and the aim after it."""
    for seed in range(1, 6):
        hidden = true_housing_of(seed, 1)
        rounds = [round_of(hidden, [], set_up, "inch")]
        found: Any = solve(job_of(rounds, set_up, "inch", sag=0))
        bore = found["rounds"][0]["bore"]
        assert bore["center"] == pytest.approx(
            [hidden.center.x / THOU, hidden.center.y / THOU], abs=0.25
        )
        choice = found["dowel_choice"]
        after = bore_after(hidden, [Dowel(choice["offset"] * THOU, choice["aim_deg"])])
        assert after.length / THOU == pytest.approx(choice["expected_offset"], abs=0.4)


@cache
def runs() -> list[dict[str, Any]]:
    """Many exercises of levels 2 and 3, each worked to its end as the result says."""
    done = []
    for seed in range(1, 121):
        level, units = 2 + seed % 2, ("inch", "metric")[seed % 3 == 0]
        mm = THOU if units == "inch" else 1.0
        set_up, hidden = SET_UPS[seed % len(SET_UPS)], true_housing_of(seed, level)
        fits: list[Dowel] = []
        rounds: list[Data] = []
        held, face_held = [], []
        for _ in range(4):
            rounds.append(round_of(hidden, fits, set_up, units))
            result: Any = solve(job_of(rounds, set_up, units))
            latest, choice = result["rounds"][-1], result["dowel_choice"]
            true = bore_after(hidden, fits).scaled(1.0 / mm)
            bore, face = latest["bore"], latest["face"]
            held.append(holds(bore["center"], bore["covariance"], true))
            face_held.append(holds(face["slope"], face["slope_covariance"], hidden.slope))
            if bore["verdict"] == "within" or choice is None or choice["leave"]:
                break
            fits.append(Dowel(choice["offset"] * mm, choice["aim_deg"]))
        limit = 5.0 if units == "inch" else 0.127
        done.append(
            {
                "held": held, "face_held": face_held, "verdict": bore["verdict"],
                "inside": true.length <= limit,
            }
        )  # fmt: skip
    return done


@pytest.mark.slow
@pytest.mark.parametrize("part", ["held", "face_held"])
def test_the_stated_doubt_covers_the_truth(part: str) -> None:
    """In at least 93 of 100 sweeps; 95 are promised, some 200 sweeps tell it to 1.5."""
    every = [held for run in runs() for held in run[part]]
    assert len(every) > 150
    assert sum(every) >= 0.93 * len(every), (sum(every), len(every))


def test_most_exercises_end_within_and_are_within() -> None:
    within = [run for run in runs() if run["verdict"] == "within"]
    assert len(within) > 0.85 * len(runs())
    assert sum(run["inside"] for run in within) >= 0.95 * len(within)
