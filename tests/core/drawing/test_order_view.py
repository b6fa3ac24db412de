"""The drawings of a work order: to scale, mirrored from the front, and to be read without colour.

What they show is tried by a machinist in tests/core/report/test_order.py.
"""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest

from sweepsheet.drawing.order_view import (
    BEHIND,
    FRONT,
    MoveDrawn,
    Side,
    Size,
    bore_view_of,
    cut_view_of,
    profile_view_of,
)
from sweepsheet.job.model import Hole
from sweepsheet.maths.vector import ZERO, Vec2
from sweepsheet.words.en.core import ENGLISH

SVG = "{http://www.w3.org/2000/svg}"
HOLES = (Hole(270.0, 7.0), Hole(80.0, 6.0))
MOVE = MoveDrawn(
    Vec2(-9.0, 0.0), Vec2(0.0, 6.0), Size("−0.230 mm", "−0.0090 in"), Size("+0.15 mm", "+0.006 in")
)


def parsed(drawing: str) -> ET.Element:
    return ET.fromstring(drawing)  # noqa: S314 - our own drawing


def circles(root: ET.Element, r: float) -> list[Vec2]:
    return [
        Vec2(float(c.get("cx", "")), float(c.get("cy", "")))
        for c in root.iter(f"{SVG}circle")
        if float(c.get("r", "")) == pytest.approx(r, abs=0.01)
    ]


@pytest.mark.parametrize("side", [BEHIND, FRONT])
def test_holes_and_bore_are_to_scale(side: Side) -> None:
    root = parsed(bore_view_of(HOLES, 4.0, MOVE, side, ENGLISH))
    a, b = circles(root, 7.0)
    middle = Vec2(180.0, 182.0)
    pixels = (a - middle).length / 7.0
    assert (b - middle).length == pytest.approx(6.0 * pixels, abs=0.02)
    assert circles(root, 2.0 * pixels) == [middle]
    assert (a.x < b.x) == (side is BEHIND)


def test_a_bore_that_was_not_measured_is_not_drawn() -> None:
    with_bore, without = (
        len(list(parsed(bore_view_of(HOLES, d, MOVE, BEHIND, ENGLISH)).iter(f"{SVG}circle")))
        for d in (4.0, None)
    )
    assert with_bore == without + 1


def test_a_move_that_is_nothing_can_be_drawn() -> None:
    nothing = MoveDrawn(ZERO, ZERO, MOVE.along_size, MOVE.across_size)
    assert "nan" not in bore_view_of(HOLES, None, nothing, BEHIND, ENGLISH)


def test_each_leg_carries_its_size_in_both_units() -> None:
    texts = [t.text for t in parsed(bore_view_of(HOLES, None, MOVE, BEHIND, ENGLISH)).iter()]
    for text in ("X −0.230 mm", "−0.0090 in", "Y +0.15 mm", "+0.006 in", "A", "B"):
        assert text in texts


def test_depths_stand_at_their_places_and_turn_with_the_view() -> None:
    places = [(Hole(90.0, 8.0), Size("1 mm", "0.04 in")), (Hole(0.0, 4.0), Size("2 mm", "0.08 in"))]
    for side, right in ((BEHIND, 1.0), (FRONT, -1.0)):
        root = parsed(cut_view_of(places, 100.0, side, ENGLISH))
        three, twelve = circles(root, 6.0)
        assert three.x - 180.0 == pytest.approx(right * 112.0)
        assert (twelve.x, twelve.y) == pytest.approx((180.0, 182.0 - 56.0))
        (one,) = [t for t in root.iter(f"{SVG}text") if t.text == "1 mm"]
        assert (float(one.get("x", "")) - 180.0) * right > 0


def test_the_profile_names_both_ends_and_what_is_clamped() -> None:
    root = parsed(
        profile_view_of(
            112.5, Size("0.41 mm", "0.016 in"), Size("152.4 mm", "6.000 in"), "clamped", ENGLISH
        )
    )
    texts = [t.text for t in root.iter(f"{SVG}text")]
    for text in ("9:45", "3:45", "0", "0.41 mm", "0.016 in", "152.4 mm = 6.000 in", "clamped"):
        assert text in texts
    # The high end is the one that is named by the deepest place.
    (wedge,) = [p for p in root.iter(f"{SVG}path") if p.get("class") == "pencil"]
    corners = [float(v) for v in re.findall(r"[\d.]+", wedge.get("d", ""))]
    assert corners[3] < corners[1]
    ends = {t.text: float(t.get("x", "")) for t in root.iter(f"{SVG}text")}
    assert ends["3:45"] > corners[2] > corners[0] > ends["9:45"]
