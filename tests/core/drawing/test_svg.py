"""Elements of a drawing as text, with everything escaped."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.drawing.svg import element, text


@pytest.mark.parametrize(
    ("value", "shown"),
    [(1, "1"), (1.0, "1"), (2.25, "2.25"), (2.0049, "2"), (-0.001, "0"), (-3.5, "-3.5"),
     (100, "100")],
)  # fmt: skip
def test_numbers_are_short(value: float, shown: str) -> None:
    """To a hundredth of a unit, without trailing zeros or minus zero."""
    assert element("circle", r=value) == f'<circle r="{shown}"/>'


def test_names_of_attributes() -> None:
    assert element("g", text_anchor="end", class_="a") == '<g text-anchor="end" class="a"/>'


def test_children_stand_inside() -> None:
    inner = element("circle", r=1) + text("a < b")
    assert element("g", inner) == '<g><circle r="1"/>a &lt; b</g>'


printable = st.text(st.characters(blacklist_categories=["Cs", "Cc"]), max_size=20)


@given(printable, printable)
def test_what_a_person_typed_never_becomes_markup(content: str, attribute: str) -> None:
    """A reader of XML sees one element, with just what was typed."""
    parsed = ET.fromstring(element("text", text(content), title=attribute))  # noqa: S314 - our own text
    assert (parsed.text or "") == content
    assert parsed.attrib == {"title": attribute}
    assert len(parsed) == 0
