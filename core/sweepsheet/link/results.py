"""A pupil's results in the fragment of a link: what he typed, and nothing that was worked out.

A fragment is ``P1`` and then, packed as in ``codec``, ``[set, name, [work, ...]]``, one work for
each exercise. A work holds texts as they were typed: a letter for each setting that is not as
usual; ``a1`` for what was done before round 1, by its name and its fields; ``b0.1`` for the second
sweep of the bore in the first round, ``f0.0`` for one of the face, its readings and at the end the
return to zero; ``l`` for the lengths, and what is put between. Within one of these a stroke stands
between the texts.
"""

from __future__ import annotations

import json
import re
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from sweepsheet.job.fields import is_harmful
from sweepsheet.job.strict_json import load_json
from sweepsheet.link.codec import LONGEST_LINK, LONGEST_UNPACKED, packed, unpacked
from sweepsheet.practice.course import exercises_of
from sweepsheet.practice.exercise import LENGTH_FIELDS
from sweepsheet.practice.marking import HEAD, mark
from sweepsheet.words.faults import InputError, refused
from sweepsheet.words.messages import Language

Work = Mapping[str, str]

BEGINNING = "P1"
LONGEST_NAME = 60
LONGEST_TYPED = 20
MOST_PUPILS = 60
# Each setting by its letter, and what it usually is.
_SETTINGS = {
    "u": ("units", "inch"), "c": ("bore.contact", "inside"), "t": ("turn", "clockwise"),
    "p": ("indicator.plus_when", "plunger_in"), "f": ("face.plunger", "forward"),
    "n": ("exercise.positions", "4"), "s": ("indicator.sag", ""), "r": ("exercise.rounds", "1"),
}  # fmt: skip
_ACTS = {
    "dowels": ("dowels.0.offset", "dowels.0.aim"), "squared": ("square.runout", "square.at"),
    "reseated": (), "cleaned": (), "plate_turned": (),
}  # fmt: skip
_PARTS = {"b": "bore", "f": "face"}
_READING = re.compile(
    r"rounds\.(\d{1,2})\.(bore|face)\.(?:sweeps\.(\d{1,2})\.(\d{1,2})|closing\.(\d{1,2}))"
)
_SWEEP = re.compile(r"([bf])(\d{1,2})\.(\d{1,2})")
_ACT = re.compile(r"a(\d{1,2})")
_MOST_READINGS = 12


@dataclass(frozen=True, slots=True)
class Results:
    """The work of one pupil: a form for each exercise of the set."""

    set: str
    name: str
    work: tuple[dict[str, str], ...]


def results_link(given: str, name: str, work: Sequence[Work]) -> str:
    """The fragment for the forms of a set. Raises ``InputError`` where it would be too long.

    >>> read_results(results_link("2-417", "Ana", [{"units": "metric"}])).work
    ({'units': 'metric', 'exercise.set': '2-417', 'exercise.at': '1'},)
    """
    exercises = exercises_of(given)
    forms = [*work, *({} for _ in exercises)][: len(exercises)]
    called = "".join(c for c in name.strip() if not is_harmful(c))[:LONGEST_NAME]
    parts = [given, called, [_short(form) for form in forms]]
    text = json.dumps(parts, ensure_ascii=False, separators=(",", ":"))
    payload = packed(text)
    too_long = len(payload) > LONGEST_LINK - len(BEGINNING)
    if too_long or len(text.encode("utf-8")) > LONGEST_UNPACKED:
        raise refused("link.too_long", got=len(payload), high=LONGEST_LINK)
    return BEGINNING + payload


def read_results(fragment: str) -> Results:
    """What a pupil's link holds. Raises ``InputError`` where it is none."""
    if not fragment.startswith(BEGINNING):
        raise refused("results.foreign")
    if len(fragment) > LONGEST_LINK:
        raise refused("link.longer", high=LONGEST_LINK)
    try:
        parts = load_json(unpacked(fragment.removeprefix(BEGINNING)))
    except (InputError, ValueError, zlib.error):
        raise refused("results.cut") from None
    match parts:
        case [str() as given, str() as name, list() as work] if len(name) <= LONGEST_NAME:
            count = len(exercises_of(given))
            if len(work) == count and not any(is_harmful(c) for c in name):
                forms = (_long(each) for each in work)
                at = ({"exercise.set": given, "exercise.at": str(n + 1)} for n in range(count))
                return Results(given, name, tuple(a | b for a, b in zip(forms, at, strict=True)))
    raise refused("results.cut")


def send_results(asked: Mapping[str, Any], language: Language) -> dict[str, str]:
    """The fragment for a pupil's work; else ``trouble`` in words."""
    try:
        return {"fragment": results_link(asked["set"], asked["name"], asked["work"]), "trouble": ""}
    except InputError as error:
        return {"fragment": "", "trouble": error.faults[0].text(language)}


def open_results(lines: str, language: Language) -> dict[str, Any]:
    """A table of pupils by exercises, every figure worked out again from what was typed.

    ``lines`` holds links, one a line. ``troubles`` says which of them could not be opened.
    """
    rows: list[list[str]] = []
    troubles = []
    links = [line.strip() for line in lines.splitlines() if line.strip()]
    for n, link in enumerate(links[:MOST_PUPILS], 1):
        try:
            results = read_results(link.rpartition("#results=")[2])
            name = results.name or language.say("results.nameless", n=n)
            rows += [[name, *mark(form, language)] for form in results.work]
        except InputError as error:
            why = error.faults[0].text(language)
            troubles.append(language.say("results.trouble", n=n, why=why))
    if len(links) > MOST_PUPILS:
        troubles.append(language.say("results.too_many", most=MOST_PUPILS))
    head = [language.say(f"results.head.{key}") for key in ("pupil", *HEAD)]
    return {"head": head, "rows": rows, "troubles": troubles}


def _short(form: Work) -> dict[str, str]:
    """The form in short: what is as usual is left out, readings of a sweep stand together."""
    found = {
        letter: _typed(form[name])
        for letter, (name, usual) in _SETTINGS.items()
        if form.get(name, usual) != usual
    }
    sweeps: dict[str, dict[int, str]] = {}
    for name, text in form.items():
        match = _READING.fullmatch(name)
        if not text or match is None or int(match[4] or 0) >= _MOST_READINGS:
            continue
        n, part, j, i, closing = match.groups()
        place = _MOST_READINGS if i is None else int(i)
        sweeps.setdefault(f"{part[0]}{n}.{j or closing}", {})[place] = _typed(text)
    for key, readings in sweeps.items():
        count = 1 + max((i for i in readings if i < _MOST_READINGS), default=-1)
        texts = [readings.get(i, "") for i in range(count)]
        found[key] = "|".join([*texts, readings.get(_MOST_READINGS, "")])
    lengths = [_typed(form.get(name, "")) for name in LENGTH_FIELDS]
    if any(lengths):
        found["l"] = "|".join(lengths)
    for n in range(1, _rounds(form)):
        act = form.get(f"rounds.{n}.act", "dowels")
        fields = (form.get(f"rounds.{n}.{name}", "") for name in _ACTS.get(act, ()))
        found[f"a{n}"] = "|".join(map(_typed, (act, *fields)))
    return found


def _long(work: object) -> dict[str, str]:
    """The form again. Raises ``InputError`` where there is anything else in it."""
    if not isinstance(work, dict) or not all(isinstance(text, str) for text in work.values()):
        raise refused("results.cut")
    form: dict[str, str] = {}
    for key, text in work.items():
        texts = text.split("|")
        if any(len(each) > LONGEST_TYPED for each in texts):
            raise refused("results.cut")
        if key in _SETTINGS and len(texts) == 1:
            form[_SETTINGS[key][0]] = text
        elif key == "l" and len(texts) == len(LENGTH_FIELDS):
            form |= dict(zip(LENGTH_FIELDS, texts, strict=True))
        elif (sweep := _SWEEP.fullmatch(key)) and len(texts) <= _MOST_READINGS + 1:
            at = f"rounds.{int(sweep[2])}.{_PARTS[sweep[1]]}"
            *readings, closing = texts
            form |= {f"{at}.sweeps.{int(sweep[3])}.{i}": each for i, each in enumerate(readings)}
            form[f"{at}.closing.{int(sweep[3])}"] = closing
        elif (act := _ACT.fullmatch(key)) and len(texts) == 1 + len(_ACTS.get(texts[0], texts)):
            at = f"rounds.{int(act[1])}"
            fields = dict(zip(_ACTS[texts[0]], texts[1:], strict=True))
            form |= {f"{at}.act": texts[0], **{f"{at}.{k}": each for k, each in fields.items()}}
        else:
            raise refused("results.cut")
    return form


def _rounds(form: Work) -> int:
    text = form.get("exercise.rounds", "1")
    return int(text) if re.fullmatch(r"[1-9][0-9]?", text) else 1


def _typed(text: str) -> str:
    """A text that was typed, as far as a number or a clock position can go."""
    return text.strip().replace("|", "")[:LONGEST_TYPED]
