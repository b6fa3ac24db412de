"""Spanish says what English says: the same numbers, positions and warnings, and no English word."""

from __future__ import annotations

import json
import random
import re
import string
from collections.abc import Iterator
from html import unescape
from typing import Any

import pytest

from sweepsheet.drawing.flange_view import flange_view_of
from sweepsheet.drawing.housing import drawing_of
from sweepsheet.drawing.side_view import side_view_of
from sweepsheet.findings.job import findings_for
from sweepsheet.form.from_job import form_of
from sweepsheet.job.read import read_job
from sweepsheet.page import handle_request
from sweepsheet.report.paper import paper_of
from sweepsheet.report.sheet import sheet_of, sheet_text
from sweepsheet.solution import work_out
from sweepsheet.words.assemblies import worded
from sweepsheet.words.en import core as en_core
from sweepsheet.words.en import pages as en_pages
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.es import core as es_core
from sweepsheet.words.es import pages as es_pages
from sweepsheet.words.es.core import SPANISH
from sweepsheet.words.faults import InputError
from sweepsheet.words.messages import Language
from tests.cases import forms
from tests.cases.forms import sweep
from tests.cases.orders import bore_order, face_order
from tests.cases.strategies import any_job, spoil

FIRST = en_core.TABLE | en_pages.PAGE
OTHER = es_core.TABLE | es_pages.PAGE
# What is the same in both: marks, units, abbreviations, sentences that are all placeholders.
ALIKE = {
    "unit.mm", "unit.mm_one", "got.value", "option.expected", "sheet.reading", "sheet.option",
    "sheet.section", "sheet.finding", "term.tir", "term.plus-minus", "practice.spoken",
    "practice.no",
    "paper.length.metric", "paper.pm", "paper.head.tir", "paper.sweep", "flange.shim",
    "unit.small.metric", "unit.long.metric", "units.metric", "view.judged",
    "view.term.tir", "guide.position", "limit.tir", "field.stock.shim_thicknesses.example",
    "mark.plain", "mark.wheel", "usual.named", "usual.since",
    "what.of_round", "depth.size", "depth_view.gap", "photos.choice_none",
    "order.unit.mm", "order.at", "order.at_pm",
}  # fmt: skip
# What tells an English sentence from a Spanish one.
WORDS = re.compile(
    r"(?<![\w/.-])(the|of|is|are|was|and|or|with|at|to|toward|off|by|for|from|in|not|it|this|that|"
    r"o'clock|thou|inch|under|over|inside|outside|within|bore|face|sweep|swept|reading|readings|"
    r"dowel|dowels|dial|crank|round|found|offset|aimed|wanted|limit|right|left|up|down|clockwise)"
    r"(?![\w/-])",
    re.IGNORECASE,
)
NUMBER = re.compile(r"\d{1,2}:\d\d|[+−-]?\d+(?:[.,]\d+)?(?:e-?\d+)?")
TAG = re.compile(r"<[^>]*>")
# What is no sentence: codes, fields, names of parts, and what was typed.
CODES = {
    "state", "verdict", "code", "level", "field", "name", "form", "fragment", "typed", "droop",
    "needle", "counter", "stage", "lists", "place", "measure",
}  # fmt: skip


def numbers(text: str) -> list[str]:
    """Every number and clock position, in the order of the text, with a decimal point."""
    return [found.replace(",", ".") for found in NUMBER.findall(unescape(text))]


def pairs(one: Any, other: Any, at: str = "") -> Iterator[tuple[str, str, str]]:
    """Every text of an answer beside that of the other language; both are built alike."""
    assert type(one) is type(other), at
    if isinstance(one, str):
        yield at, one, other
    elif isinstance(one, dict):
        assert one.keys() == other.keys(), at
        for key in one.keys() - CODES:
            yield from pairs(one[key], other[key], f"{at}.{key}")
    elif isinstance(one, list | tuple):
        assert len(one) == len(other), at
        for i, each in enumerate(one):
            yield from pairs(each, other[i], f"{at}.{i}")
    else:
        assert one == other, at


def spoken(text: str) -> str:
    """A text without its markup."""
    return unescape(TAG.sub(" ", text))


def compare(one: Any, other: Any) -> int:
    """Hold a Spanish answer against the English one; give the number of numbers in it."""
    count = 0
    for at, first, second in pairs(one, other):
        assert numbers(first) == numbers(second), (at, first, second)
        assert not WORDS.search(spoken(second)), (at, second)
        assert "{" not in second, (at, second)
        assert "." not in "".join(re.findall(r"\d\.\d", spoken(second))), (at, second)
        count += len(numbers(spoken(second)))
    return count


def ask(request: dict[str, Any], language: str) -> dict[str, Any]:
    answered: dict[str, Any] = json.loads(
        handle_request(json.dumps(request | {"language": language}))
    )
    return answered


# The tables -----------------------------------------------------------------------------------


def test_both_have_the_same_sentences_in_the_same_order() -> None:
    assert list(en_core.TABLE) == list(es_core.TABLE)
    assert list(en_pages.PAGE) == list(es_pages.PAGE)


def differences(key: str, one: str, other: str) -> list[str]:
    """In what a sentence is not what the other language says, as far as its form can tell."""

    def places(text: str) -> set[str]:
        return {name for _, name, _, _ in string.Formatter().parse(text) if name is not None}

    is_page = key.startswith("html.")
    ends = () if key == "number.decimal_mark" else (".", ":", "…", "?", ",", ";")
    checks = {
        "places": places(one) == places(other),
        "markup": TAG.findall(other) == (TAG.findall(one) if is_page else []),
        "blanks": other.strip() == other != "" and "  " not in other,
        "end": [one.endswith(end) for end in ends] == [other.endswith(end) for end in ends],
        "not translated": (one == other) == (key in ALIKE),
        # Those written as digits: 0.0254 mm, 12 to 3, 95%. "9 o'clock" may want its number
        # elsewhere, never another one.
        "numbers": sorted(numbers(one)) == sorted(numbers(other)),
    }
    return [f"{key}: {name}" for name, holds in checks.items() if not holds]


def test_every_sentence_has_the_same_places_markup_and_numbers_in_both() -> None:
    found = [each for key, one in FIRST.items() for each in differences(key, one, OTHER[key])]
    assert found == []


def test_a_sentence_that_differs_is_seen() -> None:
    assert differences("x", "Turn {a} to 3.", "Gire {b} a las 4") == [
        "x: places", "x: end", "x: numbers",
    ]  # fmt: skip
    assert differences("x", "Turn", "Turn") == ["x: not translated"]
    assert differences("html.x", "<b>a</b>", " b") == ["html.x: markup", "html.x: blanks"]


def test_no_sentence_has_an_english_word() -> None:
    """But for names of units and files as they are typed, and the title of a book."""
    named = {"csv.units", "csv.unit", "how.sources.opposite"}
    found = {
        key: WORDS.findall(spoken(text))
        for key, text in OTHER.items()
        if key not in named and WORDS.search(re.sub(r"\{\w+\}", "", spoken(text)))
    }
    assert found == {}


# Whole answers ---------------------------------------------------------------------------------

FACE_WARPED = forms.BORE | {"face.radius": "3"} | sweep(
    "rounds.0.face.sweeps.0", "0", "9", "1", "8"
)  # fmt: skip
FORMS = forms.ALL | {
    "looks like inches": forms.BORE
    | sweep("rounds.0.bore.sweeps.0", "0", "-0.005", "-0.011", "-0.005"),
    "closing": forms.BORE | {"rounds.0.bore.closing.0": "9"},
    "ten to one": forms.BORE | sweep("rounds.0.bore.sweeps.0", "0", "2.4", "-4", "-6.4"),
    "turned the other way": forms.BORE
    | {"rounds.1.dowels.0.offset": "7", "rounds.1.dowels.0.aim": "12"}
    | sweep("rounds.1.bore.sweeps.0", "0", "-12", "-24", "-12"),
    "interference": forms.WHOLE | {"housing.register_diameter": "4.860"},
    "pilot far": forms.WHOLE
    | {"companions.pilot_bore.limit": "1"}
    | sweep("companions.pilot_bore.sweeps.0", "0", "6", "12.5", "6"),
    "warped": FACE_WARPED,
    "three": forms.BORE | {"positions": "12 4 8"},
    "unreached": forms.BORE
    | {"positions": "12 1:30 3 4:30 6 7:30 9 10:30"}
    | sweep("rounds.0.bore.sweeps.0", "0", "-1", "", "-9", "-11", "-9", "-5.5", "-1"),
    "nothing in stock": forms.BORE | {"stock.dowel_offsets": ""},
    "nothing typed": {"positions": "12 1 3 9"},
    "order, bore": form_of(bore_order()),
    "order, front": form_of(face_order("front")),
    "order, rear": form_of(face_order("rear", dowel_holes=None)),
    "order, lacking": form_of(bore_order(dowel_holes=None)),
}


@pytest.mark.parametrize("name", FORMS)
def test_an_answer_is_the_same_in_both(name: str) -> None:
    """Every sentence of it: figures, steps, choices, parts, remarks, faults, drawings."""
    form = FORMS[name]
    one, other = ask({"form": form}, "en"), ask({"form": form}, "es")
    assert one["state"] == other["state"]
    if one["state"] == "faults":
        # What was typed, and the codes one may choose from, are quoted as they are.
        for fault in other["faults"]:
            fault["text"] = re.sub(r"«[^»]*»|inch|metric", "", fault["text"])
        for fault in one["faults"]:
            fault["text"] = re.sub(r"'[^']*'$|inch|metric", "", fault["text"])
    compare(one, other)


@pytest.mark.parametrize("name", sorted(FORMS.keys() - {"empty", "faults", "nothing typed"}))
def test_a_sheet_on_paper_is_the_same_in_both(name: str) -> None:
    one, other = ask({"share": FORMS[name]}, "en"), ask({"share": FORMS[name]}, "es")
    assert one["state"] == other["state"] == "share"
    assert one["fragment"] == other["fragment"]
    assert compare(one["paper"], other["paper"]) > 20


@pytest.mark.parametrize("truth", ["", "1"])
@pytest.mark.parametrize("level", ["1", "2", "3", "4", "5", "6"])
def test_a_practice_housing_is_the_same_in_both(level: str, truth: str) -> None:
    form = {"exercise.seed": "417", "exercise.level": level, "exercise.positions": "4"}
    practice = ask({"practice": form}, "es")["practice"]
    marks = [practice["turn"][stop] for stop in practice["stops"]]
    typed = {mark["field"]: mark["typed"] for mark in marks}
    form |= typed | {"exercise.truth": truth}
    one, other = ask({"practice": form}, "en"), ask({"practice": form}, "es")
    assert compare(one, other) > 100


def both(job: Any, assembly: str = "") -> tuple[dict[str, Any], dict[str, Any]]:
    """All that is said of a job, in both languages, as of an assembly."""
    solution = work_out(job)
    findings = findings_for(solution)

    def said(language: Language) -> dict[str, Any]:
        sheet = sheet_of(solution, findings, language)
        return {
            "sheet": {key: getattr(sheet, key) for key in ("headline", "figures", "steps")},
            "choices": [[c.what, c.expected, c.chance, c.pilot] for c in sheet.choices],
            "sections": [
                [s.title, s.verdict_text, s.lines, s.head, s.rows] for s in sheet.sections
            ],
            "remarks": [[r.label, r.text] for r in sheet.remarks],
            "text": sheet_text(solution, findings, language).splitlines(),
            "paper": paper_of(solution, findings, language),
            "drawings": [
                view(solution, language) for view in (drawing_of, side_view_of, flange_view_of)
            ],
        }

    return said(worded(ENGLISH, assembly)), said(worded(SPANISH, assembly))


def nameless(job: dict[str, Any]) -> dict[str, Any]:
    """The job without what a person typed in English."""
    plain = {key: part for key, part in job.items() if key not in ("name", "about")}
    limits = {key: part for key, part in job.get("limits", {}).items() if key != "source"}
    typed = ("rig", "sag_date", "sag_bar")
    dial = {key: part for key, part in job.get("indicator", {}).items() if key not in typed}
    rounds = [{k: part for k, part in each.items() if k != "name"} for each in job["rounds"]]
    return plain | {"limits": limits, "indicator": dial, "rounds": rounds}


@pytest.mark.parametrize("start", range(0, 200, 20))
def test_any_job_is_told_the_same_in_both(start: int) -> None:
    """Jobs by chance, of one to three rounds: bore, face, pilot, chip, companions, shims, pairs."""
    told, codes = 0, set()
    for seed in range(start, start + 20):
        data = nameless(any_job(random.Random(seed), tame=seed % 2 == 0))
        try:
            job = read_job(data)
        except InputError:
            continue
        one, other = both(job)
        assert compare(one, other) > 50
        codes |= {len(job.rounds)}
        told += 1
    assert told > 10
    assert len(codes) > 1


def test_faults_are_told_the_same_in_both() -> None:
    """Of job files spoiled by chance; what stands there is quoted as it is."""
    told = set()
    for seed in range(1600):
        rng = random.Random(seed)
        try:
            read_job(spoil(rng, nameless(any_job(rng))))
        except InputError as error:
            for fault in error.faults:
                one, other = fault.text(ENGLISH), fault.text(SPANISH)
                assert numbers(one) == numbers(other), (one, other)
                assert "{" not in other
                told.add(fault.message.key)
    assert len(told) > 12


def test_a_comparison_sees_figures_that_changed_places() -> None:
    """So that the tests above can fail."""
    swung = ENGLISH.say("finding.face-swings-bore", move="1", before="2", after="3")
    swapped = SPANISH.say("finding.face-swings-bore", move="1", before="3", after="2")
    with pytest.raises(AssertionError):
        compare([swung], [swapped])
    with pytest.raises(AssertionError):
        compare(["9:30"], ["las 3:30"])
    with pytest.raises(AssertionError):
        compare(["−5.5"], ["5,5"])


# Warnings -------------------------------------------------------------------------------------


def test_a_stop_says_so_as_strongly() -> None:
    """The word is in capitals on the sheet; the one who pays reads it in place of a verdict."""
    assert OTHER["level.stop"] == "ALTO"
    assert FIRST["view.verdict.stop"].startswith("Not finished")
    assert OTHER["view.verdict.stop"].startswith("Sin terminar")
    assert OTHER["paper.open"].startswith("SIN ")
    assert OTHER["job.not_kept"].startswith("NO SE GUARDA")


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("finding.closing-error", ("No se fíe",)),
        ("do.fix.closing-error", ("repita",)),
        ("finding.foreign-reading", ("no encaja", "antes de actuar")),
        ("finding.face-not-trusted", ("No se fíe",)),
        ("finding.face-first", ("Primero la cara", "no vale")),
        ("do.find-tilt-cause", ("mármol",)),
        ("finding.moved-wrong-way", ("al revés", "antes de girar nada")),
        ("finding.moved-mirrored", ("cambiadas", "antes de girar nada")),
        ("finding.interference", ("no entra", "a la fuerza")),
        ("finding.beyond-stock", ("Busque primero la causa",)),
        ("checklist.slid_home", ("nunca",)),
        ("cautions.jack", ("Nunca", "Avise")),
        ("html.cautions.first", ("caballetes", "batería desconectada", "a mano", "dedos lejos")),
        ("sheet.caution", ("Mandan", "fabricante", "desconecte la batería", "a mano")),
        ("view.caution.stop", ("deje de conducir",)),
    ],
)
def test_a_warning_is_as_strong(key: str, words: tuple[str, ...]) -> None:
    assert [word for word in words if word not in OTHER[key]] == []


# Grammar and signs ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("angle", "at", "toward"),
    [
        (0.0, "las 12", "las 12"), (30.0, "la 1", "la 1"), (90.0, "las 3", "las 3"),
        (315.0, "las 10:30", "las 10:30"),
        (45.0, "la 1:30", "la 1:30"),
        (15.0, "las 12:30", "las 12:30"),
    ],
)  # fmt: skip
def test_clock_positions_have_their_article(angle: float, at: str, toward: str) -> None:
    assert (SPANISH.at(angle), SPANISH.toward(angle)) == (at, toward)


@pytest.mark.parametrize(
    ("angle", "words"),
    [
        (0, {"arriba"}), (45, {"arriba", "derecha"}), (90, {"derecha"}),
        (135, {"abajo", "derecha"}), (180, {"abajo"}), (225, {"abajo", "izquierda"}),
        (270, {"izquierda"}), (315, {"arriba", "izquierda"}),
    ],
)  # fmt: skip
def test_up_down_right_and_left(angle: float, words: set[str]) -> None:
    ways = {"arriba", "abajo", "derecha", "izquierda"}
    assert set(SPANISH.side(angle).split()) & ways == words


@pytest.mark.parametrize("name", FORMS)
def test_what_is_put_together_keeps_to_the_grammar(name: str) -> None:
    """No article before an article, no ``a el`` or ``de el``, and hour 1 is not a plural."""
    wrong = re.compile(
        r"\b(a|de) el\b|\b(el|la|los|las) (el|la|los|las)\b|\blas 1\b(?!\d)|\bla 1\d"
    )
    answered = ask({"form": FORMS[name]}, "es")
    for _, text, _ in pairs(answered, answered):
        assert not wrong.search(spoken(text)), text


@pytest.mark.parametrize(
    ("english_form", "typed"),
    [
        ({"rounds.0.bore.sweeps.0.1": "-5.5"}, {"rounds.0.bore.sweeps.0.1": "\N{MINUS SIGN}5,5"}),
        ({"limits.bore_offset": "4.5"}, {"limits.bore_offset": "4,5"}),
        ({"stock.dowel_offsets": "7.5 14.5"}, {"stock.dowel_offsets": "7,5 14,5"}),
        ({"stock.dowel_offsets": "7.5 14.5"}, {"stock.dowel_offsets": "7,5; 14,5"}),
        ({"positions": "0° 92.5° 180° 270°"}, {"positions": "0° 92,5° 180° 270°"}),
        ({"positions": "0° 92.5° 180° 270°"}, {"positions": "0°, 92,5°, 180°, 270°"}),
    ],
)
def test_a_decimal_comma_may_be_typed(english_form: dict[str, str], typed: dict[str, str]) -> None:
    wanted = ask({"form": forms.BORE | english_form}, "es")
    assert wanted["state"] == "answer"
    assert ask({"form": forms.BORE | typed}, "es") == wanted


def test_a_csv_may_have_decimal_commas() -> None:
    csv = ask({"csv": forms.METRIC}, "es")["text"]
    comma = csv.replace(",", ";").replace(".", ",")
    one, other = ({"import": {"text": text, "here": []}} for text in (comma, csv))
    assert ask(one, "es")["jobs"] == ask(other, "es")["jobs"]
