"""The drawings, read back as SVG: they show what was found, where it was found."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET

import pytest

from sweepsheet.drawing.flange_view import flange_view_of
from sweepsheet.drawing.housing import HEIGHT, WIDTH, drawing_of, reach_of
from sweepsheet.drawing.marks import nice_length
from sweepsheet.drawing.side_view import side_view_of
from sweepsheet.drawing.svg import element, text
from sweepsheet.job.read import read_job
from sweepsheet.maths.vector import Vec2
from sweepsheet.solution import Solution, work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.jobs import Data, make_job, readings_of, then, with_dowels

SVG = "{http://www.w3.org/2000/svg}"


def solved(*readings: float | None, **others: object) -> Solution:
    """A job with one bore sweep of these readings, and whatever else is given."""
    bore = {
        "positions_deg": [360.0 * i / len(readings) for i in range(len(readings))],
        "sweeps": [list(readings)],
        "closing": [0],
    }
    return work_out(
        read_job({"format": "sweepsheet-job", "version": 1, "rounds": [{"bore": bore}], **others})
    )


def parsed(drawing: str) -> ET.Element:
    # Parsed here is only what our own code drew.
    return ET.fromstring(drawing)  # noqa: S314 - our own drawing


def words(root: ET.Element) -> list[str]:
    return [node.text or "" for node in root.iter(f"{SVG}text")]


def bore_mark(root: ET.Element) -> tuple[float, float]:
    """Where the bore centre is drawn: beside its region, before the legend."""
    mark = next(c for c in root.iter(f"{SVG}circle") if c.get("r") == "2.5")
    return float(mark.get("cx", "nan")), float(mark.get("cy", "nan"))


@pytest.mark.parametrize(
    ("readings", "right", "down"),
    [
        ((-11.0, -5.5, 0.0, -5.5), 0, -1),  # pushed in most at 6: the bore is off toward 12
        ((-5.5, -11.0, -5.5, 0.0), 1, 0),
        ((0.0, -5.5, -11.0, -5.5), 0, 1),
        ((-5.5, 0.0, -5.5, -11.0), -1, 0),
    ],
)
def test_the_bore_is_drawn_on_the_side_where_it_lies(
    readings: tuple[float, ...], right: int, down: int
) -> None:
    """Seen from behind: 12 is up and 3 is right, and the bore lies away from the high reading."""
    x, y = bore_mark(parsed(drawing_of(solved(*readings), ENGLISH)))
    crank = parsed(drawing_of(solved(0.0, 0.0, 0.0, 0.0), ENGLISH))
    x0, y0 = bore_mark(crank)
    away = math.hypot(x - x0, y - y0)
    assert away > 20.0
    assert (round((x - x0) / away), round((y - y0) / away)) == (right, down)


def test_the_drawing_says_what_it_shows() -> None:
    stiff = {"sag": 0}
    root = parsed(drawing_of(solved(0.0, -5.0, -17.0, -12.0, indicator=stiff), ENGLISH))
    shown = words(root)
    for reading in ("0", "−5", "−17", "−12"):
        assert reading in shown
    for label in ("crank", "bore", "95% region", "limit 5.0 thou", "move", "after dowels"):
        assert label in shown
    assert "seen from behind, looking forward" in shown
    assert any("life size" in label for label in shown)
    assert root.find(f"{SVG}title") is not None
    described = root.find(f"{SVG}desc")
    assert described is not None
    assert described.text == ("The bore center is 9.2 thou from the crank center toward 6:45.")


def test_a_bore_within_asks_for_no_move() -> None:
    shown = words(parsed(drawing_of(solved(0.0, -0.5, -1.0, -0.5), ENGLISH)))
    assert "move" not in shown
    assert "after dowels" not in shown


@pytest.mark.parametrize(
    "job",
    [
        make_job(readings_of(0.0, -8.0), closing=[5.0]),
        then(
            make_job(readings_of(0.0, -10.0)),
            with_dowels(make_job(readings_of(0.0, -17.0)), (7.0, 0.0)),
        ),
    ],
    ids=["slipped", "wrong way"],
)
def test_readings_that_are_not_to_be_trusted_point_nowhere(job: Data) -> None:
    shown = words(parsed(drawing_of(work_out(read_job(job)), ENGLISH)))
    assert "move" not in shown
    assert "after dowels" not in shown


def test_a_reading_that_was_not_taken_is_a_dash() -> None:
    shown = words(parsed(drawing_of(solved(0.0, -2.0, None, -2.0, 0.0, 2.0), ENGLISH)))
    assert "–" in shown


def numbers(root: ET.Element) -> list[float]:
    names = ("x", "y", "cx", "cy", "x1", "x2", "y1", "y2", "r", "rx", "ry")
    return [float(node.get(name, "0")) for node in root.iter() for name in names]


@pytest.mark.parametrize("size", [0.0, 0.01, 1.0, 30.0, 400.0])
def test_everything_stays_on_the_paper_whatever_the_offset(size: float) -> None:
    root = parsed(drawing_of(solved(0.0, -size / 2, -size, -size / 2), ENGLISH))
    assert all(math.isfinite(n) and -1 <= n <= max(WIDTH, HEIGHT) for n in numbers(root))
    x, y = bore_mark(root)
    assert 60 <= x <= 300
    assert 60 <= y <= 300


FACE = {
    "radius": 3.0, "end_float": "held", "closing": [0],
    "positions_deg": [0, 90, 180, 270], "sweeps": [[0.0, 1.0, 2.0, 1.0]],
}  # fmt: skip


BOLTS = [{"at_deg": 90.0 * i, "radius": 7.5} for i in range(4)]


def with_face(pilot_distance: float | None, **others: object) -> Solution:
    bore = {"sweeps": [[0.0, -5.0, -17.0, -12.0]], "closing": [0]}
    return work_out(
        read_job(
            {
                "format": "sweepsheet-job",
                "version": 1,
                "housing": {"pilot_distance": pilot_distance, "depth": 6.0, "bolts": BOLTS},
                **others,
                "rounds": [{"bore": bore, "face": FACE}],
            }
        )
    )


def test_the_side_view_shows_the_gearbox_axis_and_says_that_it_is_exaggerated() -> None:
    """The bore lies low and the face stands rearward at 6, so the nose lies lower still."""
    solution = with_face(7.0)
    root = parsed(side_view_of(solution, ENGLISH))
    assert any("times as large as lengths" in label for label in words(root))
    assert "From the side (9 o'clock)" in words(root)
    points = [
        (float(c.get("cx", "nan")), float(c.get("cy", "nan"))) for c in root.iter(f"{SVG}circle")
    ]
    (face_x, face_y), (pilot_x, pilot_y) = points[0], points[1]
    crank_y = next(
        float(line.get("y1", "nan"))
        for line in root.iter(f"{SVG}line")
        if line.get("stroke-dasharray")
    )
    assert pilot_x < face_x  # forward is left
    assert crank_y < face_y < pilot_y  # down is down
    assert all(math.isfinite(n) for n in numbers(root))


def test_the_side_view_failure_without_the_distance_there_is_none() -> None:
    assert side_view_of(with_face(None), ENGLISH) == ""
    assert side_view_of(solved(0.0, 1.0, 2.0, 1.0), ENGLISH) == ""


def test_the_flange_shows_a_shim_at_each_bolt_thickest_where_the_face_lies_forward() -> None:
    """The face stands rearward at 6 by 1/3 thou per inch: 5 thou at 12, half of it beside."""
    solution = with_face(7.0, limits={"face_runout": 0.5})
    root = parsed(flange_view_of(solution, ENGLISH))
    described = root.find(f"{SVG}desc")
    assert described is not None
    assert described.text == (
        "Shims: 12 o'clock: 5.0 thou, 3 o'clock: 2.5 thou, 6 o'clock: 0.0 thou and "
        "9 o'clock: 2.5 thou."
    )
    top = next(n for n in root.iter(f"{SVG}text") if n.text == "5.0")
    bottom = next(n for n in root.iter(f"{SVG}text") if n.text == "0.0")
    assert float(top.get("y", "nan")) < float(bottom.get("y", "nan"))
    assert all(math.isfinite(n) for n in numbers(root))


def test_the_flange_failure_of_a_face_within_needs_no_shims() -> None:
    assert flange_view_of(with_face(7.0), ENGLISH) == ""


def test_a_face_out_of_square_is_marked_and_no_dowels_are_drawn_for_it() -> None:
    within = words(parsed(drawing_of(with_face(7.0), ENGLISH)))
    outside = words(parsed(drawing_of(with_face(7.0, limits={"face_runout": 0.5}), ENGLISH)))
    assert "face most rearward" in outside
    assert "after dowels" in within
    assert "after dowels" not in outside


def test_markup_in_a_text_stays_text() -> None:
    drawn = element("g", element("text", text('<script>"&')), title='"><b>')
    assert drawn == ('<g title="&quot;&gt;&lt;b&gt;"><text>&lt;script&gt;&quot;&amp;</text></g>')


@pytest.mark.parametrize(("most", "nice"), [(7.3, 5.0), (5.0, 5.0), (0.19, 0.1), (1999.0, 1000.0)])
def test_a_scale_bar_has_a_round_length(most: float, nice: float) -> None:
    assert nice_length(most) == pytest.approx(nice, rel=1e-12)


# Two drawings on one scale, and the movement -----------------------------------------------------


STIFF = {"sag": 0}
CENTRED = solved(0.0, 0.0, 0.0, 0.0, indicator=STIFF)


def test_two_drawings_with_one_reach_have_one_scale() -> None:
    """A bore 8 off is drawn four times as far out as one 2 off, and the limits are of one size."""
    far, near = (solved(0.0, -d, -2 * d, -d, indicator=STIFF) for d in (8.0, 2.0))
    reach = max(reach_of(far), reach_of(near))
    away, rings, bars = [], [], []
    for each in (far, near):
        root = parsed(drawing_of(each, ENGLISH, reach=reach))
        away.append(bore_mark(root)[1] - bore_mark(parsed(drawing_of(CENTRED, ENGLISH)))[1])
        rings.append(
            next(
                float(c.get("r", "nan"))
                for c in root.iter(f"{SVG}circle")
                if c.get("stroke-dasharray") == "7 4"
            )
        )
        bars.append([text for text in words(root) if "life size" in text])
    assert away[0] == pytest.approx(4.0 * away[1], abs=0.05)
    assert rings[0] == rings[1]
    assert bars[0] == bars[1]
    # By itself each fills its own paper.
    assert reach_of(near) < reach


def shifts(root: ET.Element) -> list[tuple[float, float]]:
    """The shifts that the bore goes through once it is made to move."""
    (moves,) = root.iter(f"{SVG}animateTransform")
    assert moves.get("begin") == "indefinite"  # nothing moves by itself
    pairs = [pair.split() for pair in moves.get("values", "").split(";")]
    return [(float(x), float(y)) for x, y in pairs]


def test_the_bore_can_be_moved_to_where_the_dowels_should_bring_it() -> None:
    root = parsed(drawing_of(solved(0.0, -5.0, -17.0, -12.0), ENGLISH))
    x, y = bore_mark(root)
    start, end, rest = shifts(root)
    assert start == (0.0, 0.0)
    assert end == rest
    after = next(
        node.get("d", "")
        for node in root.iter(f"{SVG}path")
        if "l6 6l-6 6l-6 -6z" in node.get("d", "")
    )
    to_x, to_y = (float(n) for n in after[1:].partition("l")[0].split())
    # The open square's path begins at its upper corner.
    assert (x + end[0], y + end[1]) == pytest.approx((to_x, to_y + 6.0), abs=0.02)


def test_the_bore_can_be_shown_to_come_from_where_it_was_found() -> None:
    """From 8 to the right of the crank to 2 to its left: 10 to the right of where it is drawn."""
    now = solved(0.0, 2.0, 0.0, -2.0, indicator=STIFF)
    root = parsed(drawing_of(now, ENGLISH, reach=20.0, came_from=Vec2(8.0, 0.0)))
    start, end, rest = shifts(root)
    assert start == pytest.approx((10.0 * 80.0 / 20.0, 0.0), abs=0.02)
    assert end == rest == (0.0, 0.0)


def test_a_bore_that_stays_has_no_movement() -> None:
    root = parsed(drawing_of(solved(0.0, -0.5, -1.0, -0.5), ENGLISH))
    assert list(root.iter(f"{SVG}animateTransform")) == []
