"""The language of the templates, and the fields that are drawn from the core's settings."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import build
from sweepsheet.job.fields import LONGEST_TEXT
from sweepsheet.job.model import SETTINGS
from sweepsheet.maths.units import SYSTEMS
from web.build.fields import control, field
from web.build.languages import languages
from web.build.release import PAGES
from web.build.template import fill, nothing_left, places
from web.build.trouble import TroubleError

WORDS = {"field.housing.depth": "Depth", "field.limits.face_radius.help": "Help"}
TEMPLATES = {path.name: path.read_text("utf-8") for path in build.WEB.glob("pages/**/*.html")}


def test_a_part_may_hold_parts_and_what_is_not_known_yet_stays() -> None:
    parts = {"outer": "<{{part inner}}>", "inner": "{{say a.b}} {{release}}"}
    verbs = {"part": parts.__getitem__, "say": str.upper}
    assert fill("{{part outer}}", verbs) == "<A.B {{release}}>"
    assert places(parts["inner"], "say") == [["a.b"]]
    with pytest.raises(TroubleError, match=r"\{\{release\}\}"):
        nothing_left("{{release}}")


def test_a_verb_with_words_too_many_or_too_few_is_refused() -> None:
    for wrong in ("{{say}}", "{{say a b}}"):
        with pytest.raises(TroubleError, match="A template says"):
            fill(wrong, {"say": lambda key: key})


def test_every_part_is_used_and_every_verb_is_known(dist: Path) -> None:
    used = {name for text in TEMPLATES.values() for (name,) in places(text, "part")}
    assert {f"{name}.html" for name in used} == TEMPLATES.keys() - PAGES.keys()
    for path in dist.glob("*.html"):
        nothing_left(path.read_text("utf-8"))


def test_every_setting_has_its_field_in_the_page_once(dist: Path) -> None:
    """Drawn, with its usual value in each unit, its choices, and a label that is a sentence."""
    for words in languages():
        page = (dist / words.name_of("index.html")).read_text("utf-8")
        faults = []
        for path, setting in SETTINGS.items():
            label_of = r'<label class="name" for="([\w-]+)">([^<]+).*\n'
            drawn = re.findall(rf'{label_of}<(\w+) id="([\w-]+)" name="{path}"(.*)>', page)
            if len(drawn) != 1 or drawn[0][0] != drawn[0][3]:
                faults.append(path)
                continue
            _, label, tag, _, attributes = drawn[0]
            usual = setting.usual_in(SYSTEMS["metric"])
            shown = re.search(r'data-metric="([^"]*)"', attributes)
            given = tuple(map(float, shown[1].split())) if shown else ()
            wanted = () if usual is None else usual if isinstance(usual, tuple) else (usual,)
            is_number = setting.kind in ("number", "sizes")
            if not label.strip() or (tag == "select") != (setting.kind == "choice"):
                faults.append(path)
            if is_number and given != wanted:
                faults.append(f"{path}: {given} for {wanted}")
            if setting.kind == "text" and f'maxlength="{LONGEST_TEXT}"' not in attributes:
                faults.append(f"{path}: length")
        assert faults == []


def test_a_field_that_is_no_setting_is_refused() -> None:
    with pytest.raises(TroubleError, match=r"housing\.colour"):
        control("housing.colour", "", "", WORDS)


def test_help_and_label_belong_to_the_control() -> None:
    with_help = field("limits.face_radius", "face-limit-radius", WORDS)
    assert 'for="face-limit-radius"' in with_help
    assert 'aria-describedby="face-limit-radius-help"' in with_help
    assert '<p class="help" id="face-limit-radius-help">' in with_help
    assert "aria-describedby" not in field("housing.depth", "", WORDS)
    assert 'data-inch="7 14 21"' in field("stock.dowel_offsets", "", WORDS)


def test_a_choice_that_is_no_longer_offered_stays_for_older_files() -> None:
    drawn = control("housing.pilot_bearing", "", "", WORDS)
    assert re.findall(r'<option value="(\w*)"( data-old hidden disabled)?>', drawn)[0] == ("", "")
    assert '<option value="tapered_roller" data-old hidden disabled>' in drawn
