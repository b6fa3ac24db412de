"""Where to measure: every letter of the pictures is the letter of its field, in every language."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest

from sweepsheet.drawing.depth_measures import (
    ENGINE,
    GEARBOX,
    LETTERS,
    engine_measures,
    gearbox_measures,
)
from sweepsheet.words.en.pages import PAGE as ENGLISH
from sweepsheet.words.es.pages import PAGE as SPANISH

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("table", [ENGLISH, SPANISH])
def test_every_field_has_its_letter(table: dict[str, str]) -> None:
    begun = {
        key.removeprefix("field.depth."): text[0]
        for key, text in table.items()
        if key.startswith("field.depth.") and re.match(r"[A-Z]: ", text)
    }
    assert begun == dict(LETTERS)


@pytest.mark.parametrize(
    ("drawn", "names"), [(engine_measures("A"), ENGINE), (gearbox_measures("A"), GEARBOX)]
)
def test_every_letter_is_drawn_once_on_the_paper(drawn: str, names: tuple[str, ...]) -> None:
    root = ET.fromstring(drawn)  # noqa: S314 - our own drawing
    letters = list(root.iter(f"{SVG}text"))
    assert [each.text for each in letters] == [LETTERS[name] for name in names]
    width, height = (float(n) for n in root.attrib["viewBox"].split()[2:])
    for each in letters:
        assert 0.0 < float(each.attrib["x"]) < width - 10.0
        assert 0.0 < float(each.attrib["y"]) < height


def test_the_lengths_of_the_picture_are_those_of_the_form() -> None:
    """A ends farthest back of all on the engine; D reaches farther in than B; H is the longest."""
    rows = re.findall(r'd="M([\d.]+) 98V[\d.]+M([\d.]+) 98', engine_measures("A"))
    spans = {name: (float(a), float(b)) for name, (a, b) in zip(ENGINE, rows, strict=True)}
    flange = spans["to_face"][0]
    assert max(right for _, right in spans.values()) == spans["to_face"][1]
    assert spans["to_bottom"][0] < spans["pilot_length"][0] < spans["to_pilot"][0] < flange
    assert spans["pilot_length"][1] == spans["to_pilot"][0]
    assert flange == spans["to_pilot"][1] == spans["to_fingers"][0] == spans["to_hub_front"][0]
    rows = re.findall(r'd="M([\d.]+) 98V[\d.]+M([\d.]+) 98', gearbox_measures("A"))
    spans = {name: (float(a), float(b)) for name, (a, b) in zip(GEARBOX, rows, strict=True)}
    face = spans["to_tip"][1]
    assert min(left for left, _ in spans.values()) == spans["to_tip"][0]
    assert spans["journal_length"][0] == spans["to_tip"][0]
    assert [spans[each][1] for each in GEARBOX if each != "journal_length"] == [face] * 4
