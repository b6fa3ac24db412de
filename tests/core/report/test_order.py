"""The work order, tried on solids by a machinist who has nothing but the sheet."""

from __future__ import annotations

import math
import random
import re
from typing import Any

import numpy as np
import pytest

from sweepsheet.findings.job import findings_for
from sweepsheet.job.read import read_job
from sweepsheet.report.order import order_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.es.core import SPANISH
from tests.cases.jobs import EIGHTHS, SEVEN_BOLTS, Data, apart, make_job, then, with_face
from tests.cases.machinist import (
    MM,
    SVG,
    Array,
    Solid,
    bore_by_holes,
    bore_by_sight,
    clock_way,
    degrees,
    drawn_arrow,
    line_of,
    part_of,
    printed,
    recut,
    row,
    side_to_look_at,
    view_from,
)

STEP, ACCURACY, REPEATABILITY, SETTING = 0.5, 0.5, 0.25, 5.0  # thou and degrees
SWEPT = 3.0 * 25.4
LIMIT = 5.0 * MM
PLAY = 1.0 * MM
HOLES = {
    "left and right": ((270.0, 7.0), (90.0, 7.0)),
    "right and left": ((90.0, 7.0), (270.0, 7.0)),
    "top and bottom": ((5.0, 6.5), (172.0, 7.2)),
    "both on the right": ((40.0, 7.0), (150.0, 6.4)),
    "both on the left": ((215.0, 7.0), (318.0, 6.4)),
}
UNITS = ("inch", "metric")


def at(angle_deg: float, radius: float) -> Array:
    """A place from behind."""
    a = math.radians(angle_deg)
    return np.array([radius * math.sin(a), radius * math.cos(a)])


def solid_of(
    bore: tuple[float, float] = (0.0, 0.0),
    front: tuple[float, float] = (0.0, 0.0),
    rear: tuple[float, float] = (0.0, 0.0),
    block: tuple[float, float] = (0.0, 0.0),
    holes: str = "left and right",
) -> Solid:
    """A housing; bore in thou, slopes in thou per inch."""
    a, b = (at(angle, radius * 25.4) for angle, radius in HOLES[holes])
    own, back, engine = (np.array(each) / 1000.0 for each in (front, rear, block))
    return Solid(np.array(bore) * MM, a, b, own, back, engine)


def sweeps_of(
    readings: Any, positions: tuple[float, ...], size: float, rng: random.Random | None
) -> list[list[float]]:
    """Two sweeps of what a dial shows at each angle (mm), in units of ``size`` mm, with errors."""

    def off(by: float) -> float:
        return rng.uniform(-by, by) if rng else 0.0

    step = STEP * MM / size
    stands = [a + off(SETTING) for a in positions]
    errors = [off(ACCURACY) * MM for _ in positions]
    sweeps = []
    for _ in range(2):
        scatter = [rng.gauss(0.0, REPEATABILITY) * MM if rng else 0.0 for _ in positions]
        shown = [
            (readings(a) + e + s) / size for a, e, s in zip(stands, errors, scatter, strict=True)
        ]
        first = shown[0]
        sweeps.append([round((m - first) / step) * step if rng else m - first for m in shown])
    return sweeps


def job_of(
    solid: Solid,
    units: str,
    holes: list[Data] | None,
    rng: random.Random | None = None,
    axis: str = "horizontal",
    since: str = "dowels",
    **housing: object,
) -> Data:
    """Two rounds of sweeps of a solid on the engine; each time it sits elsewhere in its play."""
    size = MM if units == "inch" else 1.0
    per = 1.0 if units == "inch" else 25.4
    rounds = []
    wall = 60.0
    for _ in range(2):
        play = np.array([rng.uniform(-0.5, 0.5) * PLAY if rng else 0.0 for _ in "xy"])
        x, y = solid.bore + play
        slope = solid.rear_at_engine

        def bore(angle: float, x: float = x, y: float = y) -> float:
            u = at(angle, 1.0)
            along = float(u @ [x, y])
            return -along - math.sqrt(wall**2 - (x * x + y * y - along * along))

        def face(angle: float, slope: Array = slope) -> float:
            return float(slope @ at(angle, SWEPT))

        each = with_face(
            make_job(
                *sweeps_of(bore, EIGHTHS, size, rng), positions=EIGHTHS, units=units,
                indicator={"sag": 0.0}, crank={"axis": axis}, stock={"dowel_offsets": []},
                housing={"dowel_holes": holes, **housing},
            ),
            *sweeps_of(face, EIGHTHS, size, rng), positions=EIGHTHS, radius=3.0 * per,
        )  # fmt: skip
        rounds.append(each)
    rounds[-1]["rounds"][0]["since"] = since
    return then(*rounds)


def holes_of(solid: Solid, units: str, rng: random.Random | None = None) -> list[Data]:
    """The holes as a mechanic measures them: the clock as sure as a mark of the crank."""
    per = 25.4 if units == "inch" else 1.0
    found = []
    for hole in (solid.hole_a, solid.hole_b):
        angle = math.degrees(math.atan2(hole[0], hole[1])) % 360.0
        off = rng.uniform(-SETTING, SETTING) if rng else 0.0
        found.append({"at_deg": (angle + off) % 360.0, "radius": float(np.hypot(*hole)) / per})
    return found


def holes_measured(solid: Solid, units: str, within: float, rng: random.Random) -> list[Data]:
    """The holes as measured from the crank axis, each coordinate wrong by up to ``within`` (mm).

    The housing sits somewhere in its play while that is done.
    """
    per = 25.4 if units == "inch" else 1.0
    play = np.array([rng.uniform(-0.5, 0.5) * PLAY for _ in "xy"])
    found = []
    for hole in (solid.hole_a, solid.hole_b):
        x, y = hole + play + np.array([rng.uniform(-within, within) for _ in "xy"])
        angle = math.degrees(math.atan2(x, y)) % 360.0
        found.append({"at_deg": angle, "radius": float(np.hypot(x, y)) / per})
    return found


def order_in(job: Data, language: Any = ENGLISH) -> Any:
    solution = work_out(read_job(job))
    return order_of(solution, findings_for(solution), language)


def sheet_in(job: Data, language: Any = ENGLISH) -> Any:
    order = order_in(job, language)
    assert order is not None
    assert order["sheet"] is not None, order["lacks"]
    return order["sheet"]


def offset_of(there: Array) -> float:
    """How far a centre is from the crank axis, in mm."""
    return float(np.linalg.norm(there))


# One by one, without errors ------------------------------------------------------------------

BORES = [(12.0, 0.0), (0.0, 12.0), (-9.0, 7.0), (-8.0, -11.0), (10.0, -6.0)]


@pytest.mark.parametrize("holes", HOLES)
@pytest.mark.parametrize("units", UNITS)
@pytest.mark.parametrize("bore", BORES)
def test_a_bore_cut_by_the_sheet_is_on_the_crank_axis(
    bore: tuple[float, float], units: str, holes: str
) -> None:
    """From both sides, in both unit systems, by the line of the holes and by right and up.

    A clock position on the sheet is rounded, and so are the figures: a twentieth of the limit.
    """
    solid = solid_of(bore, holes=holes)
    sheet = sheet_in(job_of(solid, units, holes_of(solid, units)))
    assert side_to_look_at(sheet) == "behind"
    for side in ("behind", "front"):
        for unit in (1, 2):
            for way in (bore_by_holes, bore_by_sight):
                there = way(solid, sheet, unit, side)
                assert offset_of(there) < LIMIT / 20.0, (side, unit, way.__name__)


@pytest.mark.parametrize("bore", BORES)
def test_the_wrong_side_is_not_in_limit(bore: tuple[float, float]) -> None:
    """So that the trial can fail: what is right from behind, laid off from the front."""
    solid = solid_of(bore)
    sheet = sheet_in(job_of(solid, "inch", holes_of(solid, "inch")))
    if bore[0] == 0.0:
        return  # straight up and down there is no mirror
    right = row(sheet, 0, "From behind: right", 1).value
    wrong = solid.bore + np.array([-right, row(sheet, 0, "From behind: up", 1).value])
    assert offset_of(wrong) > LIMIT


@pytest.mark.parametrize("holes", HOLES)
@pytest.mark.parametrize("bore", BORES)
def test_the_drawing_of_a_bore_shows_it_from_its_side(
    bore: tuple[float, float], holes: str
) -> None:
    """Arrow, holes and hours lie as one sees them from there."""
    solid = solid_of(bore, holes=holes)
    sheet = sheet_in(job_of(solid, "inch", holes_of(solid, "inch")))
    for side in ("behind", "front"):
        drawing = view_from(sheet, side)
        tail, head = drawn_arrow(part_of(drawing, "detail"))
        seen = np.array([1.0 if side == "behind" else -1.0, 1.0]) * -solid.bore
        drawn = head - tail
        cosine = float(drawn @ seen / np.linalg.norm(drawn) / np.linalg.norm(seen))
        assert cosine > 0.995
        hours = {
            t.text: float(t.get("x", "")) for t in drawing.iter(f"{SVG}text")
            if t.get("class") == "hour"
        }  # fmt: skip
        assert (hours["3"] > hours["9"]) == (side == "behind")
        letters = {
            t.text: np.array([float(t.get("x", "")), -float(t.get("y", ""))])
            for t in drawing.iter(f"{SVG}text") if t.get("class") == "datum"
        }  # fmt: skip
        for name, (angle, _) in zip("AB", HOLES[holes], strict=True):
            drawn = letters[name] - np.array([180.0, -182.0])
            assert float(drawn @ clock_way(angle, side)) > 0.0
        texts = " ".join(t.text or "" for t in drawing.iter(f"{SVG}text"))
        for unit in (1, 2):
            for axis in "XY":
                cell = row(sheet, 0, f"{axis}, toward", unit)
                assert any(
                    printed(*size).value == pytest.approx(cell.value)
                    for size in re.findall(r"([+\N{MINUS SIGN}][\d.]+) (mm|in)", texts)
                )


TILTS = [(3.0, 0.0), (0.0, -2.5), (-2.0, 2.0), (1.5, 2.5)]


@pytest.mark.parametrize("units", UNITS)
@pytest.mark.parametrize("tilt", TILTS)
@pytest.mark.parametrize("side", ["front", "rear"])
@pytest.mark.parametrize("bolts", [SEVEN_BOLTS, []])
def test_a_face_cut_by_the_sheet_is_square(
    tilt: tuple[float, float], units: str, side: str, bolts: list[Data]
) -> None:
    """By the text and by the drawing of the side that lies toward the machinist."""
    solid = solid_of(block=tilt) if side == "front" else solid_of(rear=tilt)
    per = 1.0 if units == "inch" else 25.4
    at_bolts = [{**bolt, "radius": bolt["radius"] * per} for bolt in bolts]
    job = job_of(solid, units, None, tilt_from=side, bolts=at_bolts)
    sheet = sheet_in(job)
    seen = side_to_look_at(sheet)
    assert seen == ("front" if side == "front" else "behind")
    assert ("FROM BEHIND" in sheet["views"][0]) == (side == "rear")
    tail, head = drawn_arrow(part_of(view_from(sheet, seen), "deepest"))
    inward = (head - tail) / np.linalg.norm(head - tail)
    for unit in (1, 2):
        for way in (None, -inward):
            after = recut(solid, sheet, unit, way)
            runout = 2.0 * SWEPT * float(np.linalg.norm(after.rear_at_engine))
            assert runout < LIMIT / 10.0, (unit, way)
    before = 2.0 * SWEPT * float(np.linalg.norm(solid.rear_at_engine))
    assert before > LIMIT
    # A cut laid out in the mirror leaves it worse than the limit.
    if tilt[0]:
        mirror = recut(solid, sheet, 1, np.array([inward[0], -inward[1]]))
        assert 2.0 * SWEPT * float(np.linalg.norm(mirror.rear_at_engine)) > LIMIT


@pytest.mark.parametrize("tilt", TILTS)
def test_the_depths_and_the_shims_make_the_plane_of_the_cut(tilt: tuple[float, float]) -> None:
    """What is printed at each bolt: a plane through the depths, and one through the shims."""
    solid = solid_of(block=tilt)
    sheet = sheet_in(job_of(solid, "inch", None, tilt_from="front", bolts=SEVEN_BOLTS))
    radius = {round(b["at_deg"], 1): b["radius"] * 25.4 for b in SEVEN_BOLTS}
    for table, sense, column in ((1, 1.0, 1), (2, -1.0, 2)):
        rows = sheet["tables"][table]["rows"]
        design, sizes = [], []
        for cells in rows:
            angle = degrees(cells[0])
            x, y = at(angle, radius[round(angle, 1)])
            design.append([1.0, x, y])
            sizes.append(printed(cells[column], "mm").value)
        _, *slope = np.linalg.lstsq(np.array(design), np.array(sizes), rcond=None)[0]
        assert np.array(slope) * sense == pytest.approx(np.array(tilt) / 1000.0, abs=3e-5)
        assert min(sizes) >= 0.0


def test_a_crank_on_end_is_told_in_the_same_way() -> None:
    """Its clock has no up: 12 is where the mechanic put it."""
    solid = solid_of((-9.0, 7.0))
    lying, standing = (
        sheet_in(job_of(solid, "inch", holes_of(solid, "inch"), axis=axis))
        for axis in ("horizontal", "vertical")
    )
    values = [
        [printed(cells[1], "mm").value for cells in each["tables"][0]["rows"][:6]]
        for each in (lying, standing)
    ]
    assert values[0] == pytest.approx(values[1], abs=0.011)


def test_spanish_says_the_same_figures() -> None:
    solid = solid_of((-9.0, 7.0))
    job = job_of(solid, "metric", holes_of(solid, "metric"), bore_diameter=119.0)
    one, other = sheet_in(job), sheet_in(job, SPANISH)
    for first, second in zip(one["tables"][0]["rows"], other["tables"][0]["rows"], strict=True):
        assert printed(first[1], "mm") == printed(second[1], "mm")
        assert printed(first[2], "in") == printed(second[2], "pulg")


# Finished diameter, both unit systems --------------------------------------------------------


def test_the_finished_diameter_is_what_was_entered_or_that_of_the_drawing() -> None:
    solid = solid_of((-9.0, 7.0))
    holes = holes_of(solid, "inch")
    known = sheet_in(job_of(solid, "inch", holes, bore_diameter=4.685))
    assert known["tables"][0]["rows"][6][1:] == ("118.999", "4.6850")
    unknown = sheet_in(job_of(solid, "inch", holes))
    assert unknown["tables"][0]["rows"][6][1:] == ("as drawing", "as drawing")


def test_both_systems_are_rounded_from_the_full_value_and_by_their_doubt() -> None:
    """No inch figure is made of a rounded one in mm; no step is finer than a tenth of the doubt."""
    fine = 0
    for seed in range(20):
        rng = random.Random(seed)
        solid = solid_of((rng.uniform(8, 14), rng.uniform(-9, 9)))
        order = order_in(job_of(solid, "inch", holes_of(solid, "inch", rng), rng))
        if order is None or order["sheet"] is None:
            continue  # by chance not seen again
        for cells in order["sheet"]["tables"][0]["rows"][:6]:
            mm, inch = printed(cells[1], "mm"), printed(cells[2], "in")
            # Half a step each, and a step is at most a quarter of the doubt.
            assert abs(mm.value - inch.value) <= 0.25 * mm.pm + 1e-9
            fine += abs(mm.value - inch.value) > 1e-6
            for cell in cells[1:]:
                value, pm = re.findall(r"[\d.]+", cell)[:2]
                digit = 10.0 ** -len(value.partition(".")[2])
                steps = [n for n in (1, 2, 5, 10) if round(float(value) / digit) % n == 0]
                # The half width is rounded up, by no more than a fifth.
                assert max(steps) * digit >= float(pm) / 12.0
    assert fine > 40


# By chance: what is stated holds in 93 to 99 of 100 -------------------------------------------

JOBS = 500


@pytest.mark.slow
@pytest.mark.parametrize(
    ("units", "holes", "since"),
    [
        *(
            (units, holes, "dowels")
            for units in UNITS
            for holes in ("left and right", "both on the left")
        ),
        ("inch", "left and right", "reseated"),
    ],
)
def test_what_is_stated_of_a_bore_holds(units: str, holes: str, since: str) -> None:
    """The true move of the housing in the middle of its play, laid off by the true holes.

    Whoever cuts by the sheet and puts it back is in limit: the 95 % region says how far off. A seat
    that was only tried twice is given more room than it needs.
    """
    rng = random.Random(f"{units} {holes}")
    held = dict.fromkeys(("x", "y", "right", "up", "left"), 0)
    within = given = 0
    while given < JOBS:
        toward, size = rng.uniform(0, 360), rng.uniform(9.0, 18.0)
        solid = solid_of(tuple(at(toward, size)), holes=holes)
        order = order_in(job_of(solid, units, holes_of(solid, units, rng), rng, since=since))
        if order is None or order["sheet"] is None:
            continue
        given += 1
        sheet, unit = order["sheet"], rng.choice((1, 2))
        true = -solid.bore
        x_axis = (solid.hole_b - solid.hole_a) / np.linalg.norm(solid.hole_b - solid.hole_a)
        y_axis = np.array([-x_axis[1], x_axis[0]])
        parts = {
            "x": (x_axis, "X, toward"), "y": (y_axis, "Y, toward"),
            "right": (np.array([1.0, 0.0]), "From behind: right"),
            "up": (np.array([0.0, 1.0]), "From behind: up"),
        }  # fmt: skip
        for name, (axis, begins) in parts.items():
            told = row(sheet, 0, begins, unit)
            held[name] += abs(told.value - float(true @ axis)) <= told.pm
        there = bore_by_holes(solid, sheet, unit, rng.choice(("behind", "front")))
        refit = np.array([rng.uniform(-0.5, 0.5) * PLAY for _ in "xy"])
        off = offset_of(there + refit)
        held["left"] += off <= row(sheet, 0, "Offset that measuring", unit).value
        within += off <= LIMIT
    shares = {name: count / JOBS for name, count in held.items()}
    most = 0.99 if since == "dowels" else 1.0
    assert all(0.93 <= share <= most for share in shares.values()), shares
    assert within / JOBS > 0.99


@pytest.mark.slow
@pytest.mark.parametrize("holes", HOLES)
@pytest.mark.parametrize("units", UNITS)
def test_what_is_stated_of_a_center_by_the_holes_alone_holds(units: str, holes: str) -> None:
    """The crank axis from the true hole A, along the true line; and the move is still as stated.

    Where play, which has hard ends, is most of a doubt, 1.96 deviations hold nearly all.
    """
    rng = random.Random(f"center {units} {holes}")
    held = dict.fromkeys(("center x", "center y", "x", "y"), 0)
    size = MM if units == "inch" else 1.0
    given = 0
    while given < JOBS:
        solid = solid_of(tuple(at(rng.uniform(0, 360), rng.uniform(9.0, 18.0))), holes=holes)
        within = rng.uniform(0.5, 3.0) * MM
        measured = holes_measured(solid, units, within, rng)
        order = order_in(job_of(solid, units, measured, rng, hole_accuracy=within / size))
        if order is None or order["sheet"] is None:
            continue
        given += 1
        sheet, unit = order["sheet"], rng.choice((1, 2))
        assert "Check it by the holes" in line_of(sheet, "Check it by the holes")
        x_axis = (solid.hole_b - solid.hole_a) / np.linalg.norm(solid.hole_b - solid.hole_a)
        y_axis = np.array([-x_axis[1], x_axis[0]])
        for letter, axis in zip("xy", (x_axis, y_axis), strict=True):
            center = row(sheet, 0, f"New center from A by the holes alone: {letter.upper()}", unit)
            held[f"center {letter}"] += abs(center.value - float(-solid.hole_a @ axis)) <= center.pm
            move = row(sheet, 0, f"{letter.upper()}, toward", unit)
            held[letter] += abs(move.value - float(-solid.bore @ axis)) <= move.pm
    shares = {name: count / JOBS for name, count in held.items()}
    assert all(0.93 <= share < 1.0 for share in shares.values()), shares


@pytest.mark.slow
@pytest.mark.parametrize("units", UNITS)
@pytest.mark.parametrize("side", ["front", "rear"])
def test_what_is_stated_of_a_face_holds(units: str, side: str) -> None:
    rng = random.Random(f"{units} {side}")
    held = dict.fromkeys(("rise", "deepest", "places", "left"), 0)
    within = given = depths = 0
    per = 1.0 if units == "inch" else 25.4
    bolts = [{**bolt, "radius": bolt["radius"] * per} for bolt in SEVEN_BOLTS]
    while given < JOBS:
        tilt = tuple(at(rng.uniform(0, 360), rng.uniform(1.4, 3.0)))
        solid = solid_of(block=tilt) if side == "front" else solid_of(rear=tilt)
        order = order_in(job_of(solid, units, None, rng, tilt_from=side, bolts=bolts))
        if order is None or order["sheet"] is None:
            continue
        given += 1
        sheet, unit = order["sheet"], rng.choice((1, 2))
        slope = np.array(tilt) / 1000.0
        steep = float(np.linalg.norm(slope))
        rim = row(sheet, 0, "Circle", unit).value / 2.0
        rise = row(sheet, 0, "Rise", unit)
        held["rise"] += abs(rise.value - 2.0 * rim * steep) <= rise.pm
        line = line_of(sheet, "Deepest")
        pm = re.search(r"± ([\d.]+)°", line)
        assert pm
        true = math.degrees(math.atan2(slope[0], slope[1])) % 360.0
        held["deepest"] += apart(degrees(line), true) <= float(pm[1])
        radius = {round(b["at_deg"], 1): b["radius"] * 25.4 for b in SEVEN_BOLTS}
        for cells in sheet["tables"][1]["rows"]:
            angle, told = degrees(cells[0]), printed(cells[unit], ("", "mm", "in")[unit])
            place = at(angle, radius[round(angle, 1)] if side == "front" else rim)
            depths += 1
            depth = float(slope @ place) + rim * steep
            held["places"] += abs(told.value - depth) <= told.pm
        after = recut(solid, sheet, unit)
        runout = 2.0 * SWEPT * float(np.linalg.norm(after.rear_at_engine))
        held["left"] += runout <= row(sheet, 0, "Runout that measuring", unit).value
        within += runout <= LIMIT
    shares = {name: count / JOBS for name, count in held.items() if name != "places"}
    shares["places"] = held["places"] / depths
    assert all(0.93 <= share <= 0.99 for share in shares.values()), shares
    assert within == JOBS
