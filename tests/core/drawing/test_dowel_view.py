"""The dowels from their ends, read back as SVG: each mark points to its aim, seen from behind."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET

import pytest

from sweepsheet.drawing.dowel_view import HEIGHT, LEFT, RIGHT, WIDTH, dowel_view_of
from sweepsheet.job.model import Dowel, Hole
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.es.core import SPANISH
from tests.cases.jobs import apart

SVG = "{http://www.w3.org/2000/svg}"
Line = tuple[float, float, float, float]


def pair(offset: float, aim_deg: float) -> tuple[Dowel, Dowel]:
    return (Dowel(offset, aim_deg), Dowel(offset, aim_deg))


def parsed(drawing: str) -> ET.Element:
    # Parsed here is only what our own code drew.
    return ET.fromstring(drawing)  # noqa: S314 - our own drawing


def lines(root: ET.Element, name: str) -> list[Line]:
    """The lines of a class: where each begins and ends."""
    found = []
    for node in root.iter(f"{SVG}line"):
        if name in node.get("class", "").split():
            x1, y1, x2, y2 = (float(node.get(key, "nan")) for key in ("x1", "y1", "x2", "y2"))
            found.append((x1, y1, x2, y2))
    return found


def points_to(drawn: Line) -> float:
    """The clock angle of a line from its inner to its outer end; y points down on paper."""
    x1, y1, x2, y2 = drawn
    return math.degrees(math.atan2(x2 - x1, y1 - y2)) % 360.0


def pegs(root: ET.Element) -> list[tuple[float, float]]:
    return [
        (float(node.get("cx", "nan")), float(node.get("cy", "nan")))
        for node in root.iter(f"{SVG}circle")
        if node.get("class") == "paper"
    ]


def words(root: ET.Element) -> list[str]:
    return [node.text or "" for node in root.iter(f"{SVG}text")]


@pytest.mark.parametrize("aim", [0.0, 37.5, 90.0, 200.0, 270.0, 359.0])
def test_the_mark_points_to_the_aim_and_stands_on_the_high_side(aim: float) -> None:
    """Angles are drawn to a hundredth of a pixel, over 26 of them."""
    root = parsed(dowel_view_of(pair(7.0, aim), None, None, ENGLISH))
    marks = lines(root, "mark")
    assert len(marks) == 2
    for mark, hole, (x, y) in zip(marks, (LEFT, RIGHT), pegs(root), strict=True):
        assert apart(points_to(mark), aim) < 0.1
        # The end face lies off its hole to the same side: that is the high side.
        assert apart(points_to((hole.x, hole.y, x, y)), aim) < 0.1
    assert all(math.isfinite(n) and 0 <= n <= WIDTH for mark in marks for n in mark)


def test_three_o_clock_is_on_the_right_when_seen_from_behind() -> None:
    """By hand: the hole's middle at (94, 104), the step 12 and the radius 44 to the right."""
    (mark, _) = lines(parsed(dowel_view_of(pair(14.0, 90.0), None, None, ENGLISH)), "mark")
    assert mark == pytest.approx((94 + 12 + 0.4 * 44, 104, 94 + 12 + 44, 104), abs=0.01)


@pytest.mark.parametrize(("now", "aim", "sweep"), [(350.0, 10.0, "1"), (10.0, 350.0, "0")])
def test_a_turn_shows_the_old_mark_and_goes_the_shorter_way(
    now: float, aim: float, sweep: str
) -> None:
    root = parsed(dowel_view_of(pair(14.0, aim), pair(14.0, now), None, ENGLISH))
    assert [apart(points_to(old), now) < 0.1 for old in lines(root, "old")] == [True, True]
    arcs = [node.get("d", "") for node in root.iter(f"{SVG}path") if "A70" in node.get("d", "")]
    # In an arc of SVG the second flag is 1 for clockwise on paper.
    assert [arc.split("A")[1].split()[4] for arc in arcs] == [sweep, sweep]
    assert any("mark now" in text for text in words(root))


def test_a_turn_too_small_for_an_arc_shows_both_marks() -> None:
    root = parsed(dowel_view_of(pair(14.0, 33.0), pair(14.0, 30.0), None, ENGLISH))
    assert len(lines(root, "old")) == len(lines(root, "mark")) == 2
    assert not any("A70" in node.get("d", "") for node in root.iter(f"{SVG}path"))


@pytest.mark.parametrize("first_is_left", [True, False])
def test_the_hole_that_is_farther_left_is_drawn_on_the_left(first_is_left: bool) -> None:  # noqa: FBT001 - a case
    left, right = Hole(250.0, 7.0), Hole(80.0, 7.0)
    holes = (left, right) if first_is_left else (right, left)
    one, stock = Dowel(7.0, 45.0), Dowel(0.0, 0.0)
    dowels = (one, stock) if first_is_left else (stock, one)
    root = parsed(dowel_view_of(dowels, None, holes, ENGLISH))
    (mark,) = lines(root, "mark")
    assert mark[0] < WIDTH / 2
    named = {node.text: float(node.get("x", "nan")) for node in root.iter(f"{SVG}text")}
    assert named["hole at 8:20"] == LEFT.x
    assert named["hole at 2:40"] == RIGHT.x
    assert named["stock: no mark"] == RIGHT.x


def test_the_steps_of_unlike_dowels_are_to_one_scale() -> None:
    dowels = (Dowel(14.0, 0.0), Dowel(7.0, 180.0))
    (_, up), (_, down) = pegs(parsed(dowel_view_of(dowels, None, None, ENGLISH)))
    assert LEFT.y - up == pytest.approx(2 * (down - RIGHT.y))


@pytest.mark.parametrize(
    ("dowels", "now", "told"),
    [
        (pair(7.0, 300.0), None, "Both marks point to 10 o'clock."),
        (pair(7.0, 300.0), pair(7.0, 270.0), "Both marks turn from 9 o'clock to 10 o'clock."),
        (
            (Dowel(7.0, 90.0), Dowel(0.0, 0.0)),
            None,
            "In order: mark at 3 o'clock and stock: no mark.",
        ),
    ],
)
def test_it_is_told_to_who_cannot_see_it(
    dowels: tuple[Dowel, Dowel], now: tuple[Dowel, Dowel] | None, told: str
) -> None:
    root = parsed(dowel_view_of(dowels, now, None, ENGLISH))
    described = root.find(f"{SVG}desc")
    assert described is not None
    assert described.text == told
    assert root.find(f"{SVG}title") is not None
    assert root.get("viewBox") == f"0 0 {WIDTH} {HEIGHT}"
    assert "visto desde atrás del motor" in words(parsed(dowel_view_of(dowels, now, None, SPANISH)))
