"""The parts from the side: to scale, each gap between the places that make it."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from sweepsheet.drawing.depth_view import depth_view_of
from sweepsheet.job.read import read_job
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from tests.cases.gearbox import DEEP, Fit, depth_job
from tests.cases.jobs import make_job, readings_of

SVG = "{http://www.w3.org/2000/svg}"
GOOD = Fit()


def drawn(fit: Fit, **depth: None) -> str:
    return depth_view_of(work_out(read_job(depth_job(fit, **depth))), ENGLISH)


def tree(svg: str) -> ET.Element:
    return ET.fromstring(svg)  # noqa: S314 - our own drawing


def dimensions(svg: str) -> dict[str, tuple[float, float]]:
    """The ends of each dimension, by the words that stand with it."""
    root, found = tree(svg), {}
    for group in root.iter(f"{SVG}g"):
        texts = [text.text or "" for text in group.findall(f"{SVG}text")]
        lines = group.findall(f"{SVG}g/{SVG}line")
        if texts and lines:
            found[texts[0]] = (float(lines[0].get("x1", "")), float(lines[0].get("x2", "")))
    return found


def test_without_lengths_there_is_none() -> None:
    assert depth_view_of(work_out(read_job(make_job(readings_of(0.0, -1.0)))), ENGLISH) == ""


def test_gaps_are_to_one_scale() -> None:
    """From the bottom of the hole, 1.5 in before the flange, to the face 6.3 in behind it."""
    found = dimensions(drawn(GOOD))
    assert list(found) == [
        "shaft in the pilot bearing: 0.500 in", "tip to the bottom of the hole: 0.900 in",
        "splines ahead of the hub: 0.250 in", "splines behind the hub: 0.350 in",
        "release bearing to the fingers: 0.150 in",
    ]  # fmt: skip
    pixels = (338.0 - 22.0) / 7.8
    for told, (left, right) in found.items():
        size = float(re.sub(r"[^\d.]", "", told))
        assert right - left == pytest.approx(size * pixels, abs=0.02)
    assert found["tip to the bottom of the hole: 0.900 in"][0] == pytest.approx(22.0)


def test_what_does_not_fit_is_red_and_said() -> None:
    svg = drawn(DEEP)
    (red,) = (g for g in tree(svg).iter(f"{SVG}g") if g.get("class") == "pencil")
    assert [text.text for text in red.iter(f"{SVG}text")] == [
        "tip to the bottom of the hole: \N{MINUS SIGN}0.050 in"
    ]
    assert "tip to the bottom of the hole \N{MINUS SIGN}0.050 in" in svg.partition("</desc>")[0]
    assert 'class="pencil"' not in drawn(GOOD)


def parts(svg: str) -> int:
    """How many marks stand above the dimensions."""
    return len([e for e in tree(svg) if e.tag in (f"{SVG}path", f"{SVG}line")])


@pytest.mark.parametrize(
    "unknown", ["to_bottom", "pilot_length", "to_splines_rear", "to_hub_rear", "to_bearing"]
)
def test_a_part_that_was_not_measured_is_not_drawn(unknown: str) -> None:
    assert parts(drawn(GOOD, **{unknown: None})) < parts(drawn(GOOD))


def test_shaft_and_fingers_may_be_missing_too() -> None:
    no_tip = drawn(GOOD, to_tip=None)
    assert parts(no_tip) < parts(drawn(GOOD))
    assert parts(drawn(GOOD, to_fingers=None)) < parts(drawn(GOOD))
    # A shaft whose pilot end was not measured is drawn in one thickness.
    assert parts(drawn(GOOD, journal_length=None)) == parts(drawn(GOOD))
