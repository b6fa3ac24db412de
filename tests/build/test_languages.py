"""Every sentence stands in one place, in every language, and each that is said is there."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from pathlib import Path

import pytest

import build
from sweepsheet.words.en.pages import PAGE
from sweepsheet.words.languages import FOLDERS, language_of
from web.build.fields import verbs_of
from web.build.languages import (
    BEGINNING,
    QUOTED,
    Words,
    compare,
    data_block,
    languages,
    placeholders,
    said_in,
    translate,
    words_of,
)
from web.build.release import LATER, PAGES, WITHIN
from web.build.template import fill, places
from web.build.trouble import TroubleError

FIRST, *OTHERS = languages()
SCRIPTS = {
    path.name: path.read_text("utf-8") for path in sorted(build.WEB.glob("scripts/**/*.js"))
}  # fmt: skip
TEMPLATES = {
    path.name: path.read_text("utf-8")
    for path in (
        *sorted(build.WEB.glob("pages/**/*.html")),
        build.WEB / "manifest.webmanifest",
    )
}
# Titles end in the page's name; sources are known by theirs.
NAMES = {"Sweepsheet", "– Sweepsheet", ": Sweepsheet", "Piotrowski", "Frisch and Waugh 1933"}
# say('key'), say(`beginning.${rest}`), say(one ? 'key' : 'other'), with or without values.
SAID = re.compile(r"\bsay\(([^;{]*?)(, \{|[,)])")


def keys_in(scripts: Iterable[str]) -> set[str]:
    return {
        key
        for script in scripts
        for said in SAID.findall(script)
        for key in re.findall(r"'([\w.-]+)'", said[0])
    }


def data_in(page: str) -> dict[str, str]:
    found = re.search(r'<script type="application/json" id="words">(.*?)</script>', page)
    assert found
    said: dict[str, str] = json.loads(found[1])
    return said


def test_every_language_is_found_by_its_code() -> None:
    assert [words.code for words in languages()] == list(FOLDERS)
    assert [language_of(code).code for code in FOLDERS] == list(FOLDERS)
    assert len(FOLDERS) > 1


def test_every_sentence_that_a_script_says_is_there() -> None:
    """Whole keys and the beginnings of those that are put together."""
    keys = keys_in(SCRIPTS.values())
    assert len(keys) > 60
    assert sorted(keys - FIRST.sentences.keys()) == []
    beginnings = {b for script in SCRIPTS.values() for b in re.findall(r"say\(`([^`$]*)\$", script)}
    assert "offline." in beginnings
    for beginning in beginnings:
        assert [key for key in FIRST.sentences if key.startswith(beginning)] != [], beginning


def test_every_sentence_of_the_pages_is_said() -> None:
    """By a template, by a script, or by the build itself."""
    said = said_in(SCRIPTS.values(), FIRST)
    fields = verbs_of(FIRST.sentences)
    said |= {
        key for text in TEMPLATES.values() for (key,) in places(fill(text, fields), "say")
    }  # fmt: skip
    own = (build.WEB / "build").glob("*.py")
    said |= {key for path in own for key in QUOTED.findall(path.read_text("utf-8"))}
    assert sorted(PAGE.keys() - said) == []


def test_each_place_in_a_sentence_is_filled_by_the_script_that_says_it() -> None:
    """As far as the values stand beside the key."""
    checked = 0
    for name, script in SCRIPTS.items():
        for key, values in re.findall(r"say\('([\w.-]+)'(?:, \{([^}]*)\})?\)", script):
            wanted = placeholders(FIRST.sentences[key])
            if "..." not in values:
                given = set(re.findall(r"(?:^|,)\s*(\w+)", values))
                assert wanted <= given, (name, key)
                checked += 1
    assert checked > 60


def test_no_sentence_stands_in_a_script_or_a_template() -> None:
    """Text between tags, and what is read aloud, comes from the tables."""
    for name in TEMPLATES.keys() - {"manifest.webmanifest"}:
        bare = re.sub(r"\{\{.*?\}\}", "", TEMPLATES[name])
        texts = re.sub(r"<[^>]*>", "\n", bare).split("\n")
        left = {text.strip() for text in texts if re.search(r"[a-z]{3}", text)}
        assert left <= NAMES, name
        spoken = re.findall(r'(?:aria-label|placeholder|title|alt)="([^"]*)"', bare)
        assert [text for text in spoken if re.search(r"[a-z]{2}", text)] == [], name


@pytest.mark.parametrize("words", languages(), ids=lambda words: words.code)
@pytest.mark.parametrize(("page", "script"), PAGES.items())
def test_a_page_holds_the_sentences_that_its_scripts_say(
    dist: Path, words: Words, page: str, script: str
) -> None:
    text = (dist / words.name_of(page)).read_text("utf-8")
    assert f'<html lang="{words.code}"' in text
    assert "{{" not in text
    assert "{unit}" not in text.partition('id="words"')[0]
    if not script:
        return
    data = data_in(text)
    assert {key: words.sentences[key] for key in data} == data
    (release,) = dist.glob("r-*")
    files = [name for name in (script, *LATER.get(script, ())) if name not in WITHIN]
    within = re.findall(r'<script(?: type="module")?>(.*?)</script>', text, re.DOTALL)
    bundle = "\n".join([*within, *((release / name).read_text("utf-8") for name in files)])
    said = {key for key in QUOTED.findall(bundle) if key in PAGE}
    assert said | {"start.too_old"} <= data.keys()
    for beginning in BEGINNING.findall(bundle):
        assert {key for key in PAGE if key.startswith(beginning)} <= data.keys()


@pytest.mark.parametrize("page", PAGES)
def test_each_page_leads_to_itself_in_the_other_languages(dist: Path, page: str) -> None:
    everyone = languages()
    for words in everyone:
        text = (dist / words.name_of(page)).read_text("utf-8")
        for other in everyone:
            address = other.address_of(page)
            assert f'<link rel="alternate" hreflang="{other.code}" href="{address}">' in text
            by_hand = f'href="{address}?language={other.code}" lang="{other.code}"'
            assert (by_hand in text) == (other is not words)
        # ... and to pages of its own language otherwise.
        plain = re.findall(r'<a [^>]*?href="([^"?#]+\.html)"', text)
        assert [name for name in plain if name not in map(words.name_of, PAGES)] == []


def test_every_manifest_opens_the_page_in_the_language_that_was_chosen(dist: Path) -> None:
    for words in languages():
        manifest = json.loads((dist / words.name_of("manifest.webmanifest")).read_text("utf-8"))
        assert manifest["start_url"] == manifest["scope"] == "./"
        assert manifest["lang"] == words.code
        assert manifest["description"] == words.sentences["manifest.description"]


# What stops the build ---------------------------------------------------------------------------


def test_a_template_that_names_what_is_not_there_is_refused() -> None:
    with pytest.raises(TroubleError, match=r"index\.html names the sentence lost\.key"):
        translate("index.html", "<p>{{say lost.key}}</p>", FIRST, [FIRST])
    with pytest.raises(TroubleError, match=r"files\.failed, which wants \['why'\]"):
        translate("index.html", "<p>{{say files.failed}}</p>", FIRST, [FIRST])


@pytest.mark.parametrize(
    ("theirs", "complaint"),
    [
        ({"a.x": "{n} uno"}, "a.y is missing"),
        ({"a.x": "{n} uno", "a.y": "dos", "a.z": "tres"}, "a.z is not wanted"),
        ({"a.x": "{m} uno", "a.y": "dos"}, r"a.x has places for \['m'\], not \['n'\]"),
    ],
)
def test_a_language_that_differs_is_refused(theirs: dict[str, str], complaint: str) -> None:
    with pytest.raises(TroubleError, match=complaint):
        compare(Words("en", {"a.x": "{n} one", "a.y": "two"}), Words("xx", theirs))


def test_a_sentence_in_both_tables_is_refused() -> None:
    with pytest.raises(TroubleError, match=r"both tables: a\.x"):
        words_of("en", {"a.x": "one"}, {"a.x": "one"})


def test_only_fragments_may_hold_markup() -> None:
    units = {"unit.small.inch": "thou", "unit.long.inch": "inch"}
    said = {"a": 'x < "y" & z', "html.a": "<b>x</b>", "b": "in {unit}"}
    words = Words("en", units | said)
    template = "<p>{{say a}}</p>{{say html.a}}{{say b}}"
    assert translate("index.html", template, words, [words]) == (
        "<p>x &lt; &quot;y&quot; &amp; z</p><b>x</b>in <span data-unit>thou</span>"
    )
    assert "</script>" not in data_block(Words("en", {"a": "</script>"}), ["a"])[:-9]
    assert [key for key, said in PAGE.items() if "<" in said and not key.startswith("html.")] == []
