"""The readings on their wave, read back as SVG: points and curve lie where the figures say."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET

import pytest

from sweepsheet.drawing.wave import HEIGHT, LEFT, MIDDLE, REACH, RIGHT, WIDTH, wave_of, x_of
from sweepsheet.job.read import read_job
from sweepsheet.solution import Solution, work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.jobs import EIGHTHS, make_job, readings_of

SVG = "{http://www.w3.org/2000/svg}"
Point = tuple[float, float]


def solved(*sweeps: list[float | None]) -> Solution:
    positions = [360.0 * i / len(sweeps[0]) for i in range(len(sweeps[0]))]
    return work_out(read_job(make_job(*sweeps, positions=positions)))


def drawn(solution: Solution) -> ET.Element:
    # Parsed here is only what our own code drew.
    return ET.fromstring(wave_of(solution, ENGLISH))  # noqa: S314 - our own drawing


def curve(root: ET.Element) -> list[Point]:
    (line,) = root.iter(f"{SVG}polyline")
    pairs = [pair.split(",") for pair in line.get("points", "").split()]
    return [(float(x), float(y)) for x, y in pairs]


def circles(root: ET.Element, name: str) -> list[Point]:
    return [
        (float(node.get("cx", "nan")), float(node.get("cy", "nan")))
        for node in root.iter(f"{SVG}circle")
        if name in node.get("class", "").split()
    ]


def words(root: ET.Element) -> list[str]:
    return [node.text or "" for node in root.iter(f"{SVG}text")]


def test_a_figure_by_hand() -> None:
    """Readings 4 0 -4 0 from 12 by the clock are the wave 4 cos a: crest at 12, trough at 6."""
    root = drawn(solved([4.0, 0.0, -4.0, 0.0]))
    quarter = (RIGHT - LEFT) / 4
    by_hand = [
        (LEFT, MIDDLE - REACH), (LEFT + quarter, MIDDLE), (LEFT + 2 * quarter, MIDDLE + REACH),
        (LEFT + 3 * quarter, MIDDLE),
    ]  # fmt: skip
    for point, expected in zip(circles(root, "reading"), by_hand, strict=True):
        assert point == pytest.approx(expected, abs=0.01)
    points = dict(curve(root))
    assert points[LEFT] == points[RIGHT] == MIDDLE - REACH
    assert points[LEFT + 2 * quarter] == MIDDLE + REACH
    assert points[LEFT + quarter] == pytest.approx(MIDDLE, abs=0.01)


def test_the_curve_goes_through_the_fitted_values() -> None:
    """For even positions the harmonic is ``(2/n) sum m u`` (as in ISO 4291), here anew."""
    readings: list[float | None] = [0.0, -5.5, -11.5, -14.0, -12.0, -6.5, -1.0, 2.0]
    root = drawn(solved(readings))
    known = [(math.radians(45.0 * i), m or 0.0) for i, m in enumerate(readings)]
    x = 2 / 8 * math.fsum(m * math.sin(a) for a, m in known)
    y = 2 / 8 * math.fsum(m * math.cos(a) for a, m in known)
    zero = math.fsum(m for _, m in known) / 8
    pixels = REACH / max(math.hypot(x, y), *(abs(m - zero) for _, m in known))
    for at, height in curve(root):
        a = 2 * math.pi * (at - LEFT) / (RIGHT - LEFT)
        fitted = x * math.sin(a) + y * math.cos(a)
        assert height == pytest.approx(MIDDLE - fitted * pixels, abs=0.02)
    for (at, height), (a, m) in zip(circles(root, "reading"), known, strict=True):
        assert at == pytest.approx(x_of(math.degrees(a)), abs=0.01)
        assert height == pytest.approx(MIDDLE - (m - zero) * pixels, abs=0.02)


def test_what_is_left_has_the_scale_of_the_readings() -> None:
    """Each stroke from the wave to its reading, and the bar, are to one scale."""
    root = drawn(solved([0.0, -5.5, -11.5, -14.0, -12.0, -6.5, -1.0, 2.0]))
    (bar,) = (node for node in root.iter(f"{SVG}line") if node.get("class") == "bar")
    long = float(bar.get("y1", "nan")) - float(bar.get("y2", "nan"))
    (label,) = (text for text in words(root) if text.endswith(" thou") and ":" not in text)
    pixels = long / float(label.split()[0])
    rests = [
        abs(float(node.get("y1", "nan")) - float(node.get("y2", "nan")))
        for node in root.iter(f"{SVG}line")
        if node.get("class") == "rest"
    ]
    (told,) = (text for text in words(root) if text.startswith("farthest"))
    assert max(rests) / pixels == pytest.approx(float(told.split()[-2]), abs=0.06)


def test_the_reading_that_does_not_belong_is_marked() -> None:
    wrong: list[float | None] = [round(2 * m) / 2 for m in readings_of(8.0, -7.0, EIGHTHS)]
    assert circles(drawn(solved(wrong)), "odd") == []
    wrong[3] = (wrong[3] or 0.0) + 6.0
    root = drawn(solved(wrong))
    assert circles(root, "odd") == [circles(root, "reading")[3]]
    assert "looks wrong" in words(root)


def test_where_sweeps_differ_is_marked() -> None:
    root = drawn(solved([0.0, -5.0, -11.0, -5.0], [0.0, -5.0, -11.0, 4.0]))
    ((x, _),) = circles(root, "odd")
    assert x == x_of(270.0)
    assert "sweeps differ here" in words(root)


def test_a_reading_that_was_not_taken_has_no_point() -> None:
    assert len(circles(drawn(solved([0.0, -2.0, None, -2.0, 0.0, 2.0])), "reading")) == 5


@pytest.mark.parametrize("size", [0.0, 0.001, 1.0, 400.0])
def test_everything_stays_on_the_paper_whatever_was_read(size: float) -> None:
    root = drawn(solved([0.0, -size / 2, -size, -size / 2]))
    names = {"x": WIDTH, "cx": WIDTH, "x1": WIDTH, "x2": WIDTH} | dict.fromkeys(
        ("y", "cy", "y1", "y2"), HEIGHT
    )
    for node in root.iter():
        for name, most in names.items():
            assert 0 <= float(node.get(name, "0")) <= most
    assert all(MIDDLE - REACH - 0.01 <= y <= MIDDLE + REACH + 0.01 for _, y in curve(root))
    told = root.find(f"{SVG}desc")
    assert told is not None
    assert "No reading is farther than" in (told.text or "")
