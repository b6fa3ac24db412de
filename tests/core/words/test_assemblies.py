"""Every assembly is spoken of in its own words, and in no word of a part that it has none of."""

from __future__ import annotations

import json
import random
import re
import string
from collections.abc import Iterator, Mapping
from typing import Any, get_args

import pytest

from sweepsheet.findings.job import findings_for
from sweepsheet.job.assembly import Assembly, lacks
from sweepsheet.job.read import read_job
from sweepsheet.job.sweeps import MOST_POSITIONS
from sweepsheet.page import handle_request
from sweepsheet.report.glance import glance_of
from sweepsheet.report.order import order_of
from sweepsheet.solution import work_out
from sweepsheet.words.assemblies import worded
from sweepsheet.words.assembly_words import AssemblyWords
from sweepsheet.words.en import core as en_core
from sweepsheet.words.en import pages as en_pages
from sweepsheet.words.en.assemblies import WORDS as ENGLISH_WORDS
from sweepsheet.words.en.assembly_pages import PAGE_WORDS as ENGLISH_PAGE_WORDS
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.es import core as es_core
from sweepsheet.words.es import pages as es_pages
from sweepsheet.words.es.assemblies import WORDS as SPANISH_WORDS
from sweepsheet.words.es.assembly_pages import PAGE_WORDS as SPANISH_PAGE_WORDS
from sweepsheet.words.es.core import SPANISH
from sweepsheet.words.faults import InputError
from sweepsheet.words.glossary import TERMS, plain_words
from tests.cases import forms
from tests.cases.jobs import Data
from tests.cases.strategies import any_job
from tests.core.words.test_languages import (
    FORMS,
    WORDS,
    both,
    compare,
    differences,
    nameless,
    numbers,
    spoken,
)
from tests.core.words.test_plain import BETTER, MOST, TYPICAL, of_the_page

ASSEMBLIES = get_args(Assembly)
SHAFTS = ("transfer_case", "pump", "other")
# A language's own sentences, what the core says instead, and what the pages do.
TABLES = {
    "en": (en_core.TABLE, ENGLISH_WORDS, en_pages.PAGE, ENGLISH_PAGE_WORDS),
    "es": (es_core.TABLE, SPANISH_WORDS, es_pages.PAGE, SPANISH_PAGE_WORDS),
}
# Parts that an assembly has none of, as words of both languages. A transfer case is bolted to a
# gearbox, a pump to an engine.
_NO_CLUTCH = (
    r"clutch|pilot bearing|input shaft|bellhousing|spline\w*|release bearing|flywheel|"
    r"embrague|desembrague|rodamiento piloto|eje primario|estriado|volante|collarín"
)
_NO_CRANK = (
    r"crank\w*|pilot|starter|block|cars?|plugs|converter|cigüeñal|piloto|arranque|bloque|auto|"
    r"bujías|convertidor|transmission|transmisión"
)
FOREIGN = {
    "converter": rf"{_NO_CLUTCH}|gearbox|caja de cambios",
    "transfer_case": rf"{_NO_CLUTCH}|{_NO_CRANK}|engine|motor|pump|bomba",
    "pump": rf"{_NO_CLUTCH}|{_NO_CRANK}|gearbox|caja|vehicle|vehículo|transfer|transferencia",
    "other": rf"{_NO_CLUTCH}|{_NO_CRANK}|engine|motor|gearbox|caja|vehicle|vehículo|pump|bomba",
}
# "Before the first start" is no starter; this is what Spanish calls both.
ALLOWED = re.compile(r"antes del primer arranque|puede arrancar")


def foreign(assembly: str, text: str) -> str:
    """The first word of a part that the assembly has none of."""
    plain = ALLOWED.sub("", spoken(text))
    found = re.search(rf"(?<!\w)({FOREIGN[assembly]})(?!\w)", plain, re.IGNORECASE)
    return found[0] if found else ""


def places(text: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(text) if name is not None}


def groups(words: AssemblyWords) -> Iterator[tuple[str, Mapping[str, str]]]:
    yield "every", words.every
    yield "of_a_shaft", words.of_a_shaft
    yield from words.own.items()


# The tables -----------------------------------------------------------------------------------


@pytest.mark.parametrize("code", TABLES)
def test_each_is_instead_of_a_sentence_and_no_more(code: str) -> None:
    """No key that there is not, none that says what would be said without it."""
    for table, words in (TABLES[code][:2], TABLES[code][2:]):
        assert set(words.nouns) == set(words.own) == set(ASSEMBLIES)
        wanted = {"driving shaft", "shaft", "housing", "unit"}
        assert all(set(nouns) == wanted for nouns in words.nouns.values())
        for name, group in groups(words):
            assert group.keys() - table.keys() == set(), name
        for assembly in ASSEMBLIES:
            for key, text in words.of(assembly).items():
                assert places(text) == places(table[key]), (assembly, key)
                assert "[" not in text, (assembly, key)
        needless = {
            key for key in words.every if all(words.of(a)[key] == table[key] for a in SHAFTS)
        }
        assert needless == set()


def test_both_languages_have_the_same_in_the_same_order() -> None:
    for one, other in ((ENGLISH_WORDS, SPANISH_WORDS), (ENGLISH_PAGE_WORDS, SPANISH_PAGE_WORDS)):
        for (name, first), (_, second) in zip(groups(one), groups(other), strict=True):
            assert list(first) == list(second), name


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_both_languages_say_the_same(assembly: str) -> None:
    found = []
    for one, other in ((ENGLISH_WORDS, SPANISH_WORDS), (ENGLISH_PAGE_WORDS, SPANISH_PAGE_WORDS)):
        first, second = one.of(assembly), other.of(assembly)
        found += [
            each for key, text in first.items() for each in differences(key, text, second[key])
        ]
        said = {key: re.sub(r"\{\w+\}", "", spoken(text)) for key, text in second.items()}
        english = {key: WORDS.findall(text) for key, text in said.items()}
        assert {key: words for key, words in english.items() if words} == {}
    assert found == []


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_spanish_keeps_to_its_articles(assembly: str) -> None:
    """The names for one place are of one gender in every assembly."""
    nouns = SPANISH_WORDS.nouns[assembly]
    masculine, feminine = (
        ("cigüeñal", "árbol"),
        ("campana", "transmisión", "caja", "bomba", "pieza"),
    )
    assert nouns["shaft"].split()[0] in masculine
    assert nouns["housing"].split()[0] in feminine
    assert nouns["unit"].split()[0] in feminine
    wrong = re.compile(r"\b(a|de) el\b|\b(el|la|los|las) (el|la|los|las)\b", re.IGNORECASE)
    for words in (SPANISH_WORDS, SPANISH_PAGE_WORDS):
        assert [key for key, text in words.of(assembly).items() if wrong.search(text)] == []


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_the_english_is_plain_and_short(assembly: str) -> None:
    """By the rules of the main one (``test_plain``)."""
    said = ENGLISH_WORDS.of(assembly) | ENGLISH_PAGE_WORDS.of(assembly)
    on_page, long = of_the_page(), []
    for key, text in said.items():
        plain = re.sub(r"<[^>]*>|\{\w+\}", "", text)
        assert [w for w in BETTER if re.search(rf"\b(?:{w})\b", plain, re.IGNORECASE)] == [], key
        if key in on_page:
            filled = re.sub(r"<[^>]*>", "", text).format(**{n: TYPICAL[n] for n in places(text)})
            long += [each for each in re.split(r"(?<=[.?!])\s+", filled) if len(each) > MOST]
    assert long == []


def test_a_language_speaks_of_an_assembly() -> None:
    assert worded(ENGLISH, None) is ENGLISH
    assert worded(ENGLISH, "") is ENGLISH
    assert worded(SPANISH, "gearbox") is SPANISH
    assert worded(SPANISH, ["pump"]) is SPANISH
    assert worded(ENGLISH, "pump") is worded(ENGLISH, "pump")
    assert worded(SPANISH, "pump").say("section.seat") == "La bomba en el alojamiento"
    assert worded(ENGLISH, "converter").say("dowel_view.view") == ENGLISH.say("dowel_view.view")


# Whole answers --------------------------------------------------------------------------------


def texts(part: Any) -> Iterator[str]:
    """Every text that is shown; what stands as a code or a field is none."""
    if isinstance(part, str):
        yield part
    elif isinstance(part, dict):
        for key, each in part.items():
            if key not in ("code", "field", "name", "measure", "stage", "form"):
                yield from texts(each)
    elif isinstance(part, list | tuple):
        for each in part:
            yield from texts(each)


def of(assembly: str, data: Data) -> Data:
    return {**data, "housing": {**data.get("housing", {}), "assembly": assembly}}


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_any_job_is_told_in_its_own_words(assembly: Assembly) -> None:
    """Jobs by chance, in both languages: sheet, paper, remarks, steps, drawings."""
    told = 0
    for seed in range(120):
        data = nameless(of(assembly, any_job(random.Random(seed), tame=seed % 2 == 0)))
        try:
            job = read_job(data)
        except InputError:
            continue
        one, other = both(job, assembly)
        assert compare(one, other) > 40
        solution = work_out(job)
        findings = findings_for(solution)
        for language, said in ((ENGLISH, one), (SPANISH, other)):
            own = worded(language, assembly)
            glance = glance_of(solution, findings, own)
            steps = [[a.text, a.why] for a in glance.actions]
            shown = [said, glance.not_entered, steps, order_of(solution, findings, own)]
            found = {text: word for text in texts(shown) if (word := foreign(assembly, text))}
            assert found == {}, seed
        told += 1
    assert told > 60


@pytest.mark.parametrize("name", FORMS)
@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_what_the_page_is_answered_is_in_its_own_words(assembly: Assembly, name: str) -> None:
    """With the faults at its fields, the pictures, the link's page and the sheet on paper."""
    form = FORMS[name] | {"housing.assembly": assembly}
    for code in ("en", "es"):
        answered = _ask({"form": form}, code)
        shown = [answered]
        if answered["state"] == "answer":
            share = _ask({"share": form}, code)
            assert share["fragment"]
            shown += [share["paper"], _ask({"link": share["fragment"]}, code)]
            assert shown[-1]["agrees"]
        # What a person typed is shown as it is.
        for part in shown:
            labels = [{"label": each["label"]} for each in part.get("about", [])]
            part.update({"texts": "", "about": labels})
        found = {text: word for text in texts(shown) if (word := foreign(assembly, text))}
        assert found == {}


@pytest.mark.parametrize("at", ["rounds.0.bore", "rounds.0.face"])
@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_who_is_led_is_led_in_its_own_words(assembly: str, at: str) -> None:
    for more in ({}, {"face.end_float": "held"}, {"turn": "clockwise"}, {"positions": "12 6 3"}):
        form = forms.BORE | {"housing.assembly": assembly} | more
        one, other = (_ask({"guide": {"form": form, "at": at}}, code) for code in ("en", "es"))
        assert compare(one, other) > 20
        for shown in (one, other):
            found = {text: word for text in texts(shown) if (word := foreign(assembly, text))}
            assert found == {}


def test_terms_are_explained_in_its_own_words() -> None:
    for assembly in ASSEMBLIES:
        parts = [part for part in TERMS if not lacks(assembly, _needs(part))]
        assert len(parts) >= len(TERMS) - 2
        for language in (ENGLISH, SPANISH):
            words = plain_words(parts, worded(language, assembly), 0.95)
            for each in (word for listed in words.values() for word in listed):
                assert foreign(assembly, f"{each.term}. {each.meaning}") == "", each


def _needs(part: str) -> str:
    return {"pilot": "housing.pilot_distance"}.get(part, part)


def test_a_foreign_word_is_seen() -> None:
    """So that the tests above can fail."""
    assert foreign("pump", "Base on crank flange or flywheel, clutch cover off.") == "crank"
    assert foreign("converter", "En el rodamiento piloto") == "rodamiento piloto"
    assert foreign("transfer_case", "Carcasa llena antes del primer arranque") == ""
    assert foreign("converter", "<text>converter pilot</text>") == ""
    one, other = both(read_job(of("pump", nameless(any_job(random.Random(0), tame=True)))))
    assert any(foreign("pump", text) for text in texts([one, other]))
    assert numbers("3 and 9") == ["3", "9"]
    assert MOST_POSITIONS > 8


def _ask(request: dict[str, Any], language: str) -> dict[str, Any]:
    answered: dict[str, Any] = json.loads(
        handle_request(json.dumps(request | {"language": language}))
    )
    return answered
