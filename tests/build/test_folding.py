"""What the first picture does without is folded away, and nothing else."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from web.build.folding import closed_parts, fold
from web.build.trouble import TroubleError


def inert(html: str) -> str:
    return f"<template data-folded>{html}</template>"


FIELD = "<summary>A</summary><input>"
FOLDED = f"<summary>A</summary>{inert('<input>')}"
TEMPLATE = re.compile(r"</?template[^>]*>")


@pytest.mark.parametrize(
    ("page", "folded"),
    [
        (f"a<details>{FIELD}</details>b", f"a<details>{FOLDED}</details>b"),
        (f'<details id="x">{FIELD}</details>' * 2, f'<details id="x">{FOLDED}</details>' * 2),
        (f"<details open>{FIELD}</details>", f"<details open>{FIELD}</details>"),
        ("<details><summary>A</summary>b</details>", "<details><summary>A</summary>b</details>"),
        (
            f"<details open>{FIELD}<details>{FIELD}</details></details>",
            f"<details open>{FIELD}<details>{FOLDED}</details></details>",
        ),
        (
            f"<details><summary>B</summary><details>{FIELD}</details></details>",
            f"<details><summary>B</summary>{inert(f'<details>{FIELD}</details>')}</details>",
        ),
        (
            f"<details><summary>B</summary><details open>{FIELD}</details></details>",
            f"<details><summary>B</summary>{inert(f'<details open>{FIELD}</details>')}</details>",
        ),
        (inert(f"<details>{FIELD}</details>"), inert(f"<details>{FIELD}</details>")),
        ("<p>none</p>", "<p>none</p>"),
    ],
)
def test_closed_parts_with_fields_are_folded(page: str, folded: str) -> None:
    assert fold(page) == folded
    assert TEMPLATE.sub("", folded) == TEMPLATE.sub("", page)


def test_the_outermost_closed_parts_are_found() -> None:
    assert closed_parts("<details open><details>A</details></details>") == [(14, 24)]


def test_an_end_without_a_beginning_stops_the_build() -> None:
    with pytest.raises(TroubleError, match="has not begun"):
        fold("<details></details></details>")


class Drawn(HTMLParser):
    """Collects what stands in the page outside of templates."""

    def __init__(self) -> None:
        """Begin outside of any."""
        super().__init__()
        self.depth = 0
        self.names: list[str] = []
        self.text: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Go into a template, or note the name of a field."""
        if tag == "template":
            self.depth += 1
        elif not self.depth and (name := dict(attrs).get("name")):
            self.names.append(name)

    def handle_endtag(self, tag: str) -> None:
        """Leave a template."""
        self.depth -= tag == "template"

    def handle_data(self, data: str) -> None:
        """Note a text."""
        if not self.depth:
            self.text.append(data)


def test_readings_and_cautions_stand_in_the_first_picture(dist: Path) -> None:
    drawn = Drawn()
    drawn.feed((dist / "index.html").read_text("utf-8"))
    assert drawn.depth == 0
    assert {f"rounds.0.bore.sweeps.0.{i}" for i in range(4)} <= set(drawn.names)
    assert {"units", "bore.contact", "about.vehicle"}.isdisjoint(drawn.names)
    assert "Never lie under a jack alone." in " ".join(drawn.text)
