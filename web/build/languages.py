"""Writes each page once for each language, from the sentences that stand beside the core."""

from __future__ import annotations

import json
import re
import string
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from html import escape
from pathlib import Path

from web.build.core import core
from web.build.fields import verbs_of
from web.build.template import fill
from web.build.trouble import TroubleError

WEB = Path(__file__).resolve().parents[1]
# What a script says with a key that it puts together: say(`offline.${state}`).
BEGINNING = re.compile(r"`([a-z_.]+\.)\$\{")
QUOTED = re.compile(r"[\"'`]([\w.-]+)(?=[\"'`])")
MARKUP = "html."  # such a sentence may hold tags
# Units that change with the form stand in places that the scripts find.
PLACES = {
    "unit": "<span data-unit>{}</span>",
    "long_unit": "<span data-long-unit>{}</span>",
}
ASKED = "?language="  # chosen by hand: boot.js remembers it


@dataclass(frozen=True, slots=True)
class Words:
    """One language: its code, and its sentences by their keys, those of the core among them."""

    code: str
    sentences: Mapping[str, str]

    @property
    def is_first(self) -> bool:
        """Whether its pages have the plain names."""
        return self.code == "en"

    def name_of(self, page: str) -> str:
        """The name of a page in this language: ``index.html``, ``index.es.html``."""
        if self.is_first:
            return page
        stem, _, ending = page.rpartition(".")
        return f"{stem}.{self.code}.{ending}"

    def address_of(self, page: str) -> str:
        """Where a link to a page leads; the first page is the folder itself."""
        name = self.name_of(page)
        return "./" if name == "index.html" else name


def languages() -> list[Words]:
    """Read every language that the core has; each must have what the first has, and no more."""
    found = [
        words_of(code, core(f"{folder}.core").TABLE, core(f"{folder}.pages").PAGE)
        for code, folder in core("words.languages").FOLDERS.items()
    ]
    for other in found[1:]:
        compare(found[0], other)
    return found


def words_of(code: str, table: Mapping[str, str], page: Mapping[str, str]) -> Words:
    """Put the sentences of the core and those of the pages together."""
    if twice := table.keys() & page.keys():
        raise TroubleError(f"Language {code}: in both tables: {', '.join(sorted(twice))}.")
    return Words(code, {**table, **page})


def compare(first: Words, other: Words) -> None:
    """Stop where a language lacks a sentence, has one too many, or has other places in one."""
    theirs, ours = other.sentences.keys(), first.sentences.keys()
    faults = [f"{key} is missing" for key in sorted(ours - theirs)]
    faults += [f"{key} is not wanted" for key in sorted(theirs - ours)]
    for key in sorted(ours & theirs):
        wanted, got = placeholders(first.sentences[key]), placeholders(other.sentences[key])
        if wanted != got:
            faults.append(f"{key} has places for {sorted(got)}, not {sorted(wanted)}")
    if faults:
        raise TroubleError(f"Language {other.code}: {'; '.join(faults)}.")


def placeholders(sentence: str) -> set[str]:
    """The names in braces."""
    return {name for _, name, _, _ in string.Formatter().parse(sentence) if name is not None}


def translate(
    name: str, template: str, words: Words, everyone: Iterable[Words], web: Path = WEB
) -> str:
    """Write a template in one language: its parts, fields and sentences, and the links."""
    parts = web / "pages" / "parts"
    write = in_json if name.endswith(".webmanifest") else in_markup
    return fill(
        template,
        {
            "part": lambda part: (parts / f"{part}.html").read_text("utf-8").rstrip("\n"),
            "say": lambda key: write(name, key, words),
            "to": words.address_of,
            "language": lambda: words.code,
            "alternates": lambda: alternates(name, everyone),
            "other_languages": lambda: others(name, words, everyone),
            **verbs_of(words.sentences),
        },
    )


def sentence(name: str, key: str, words: Words) -> str:
    """Find a sentence that a template names."""
    try:
        return words.sentences[key]
    except KeyError:
        raise TroubleError(f"{name} names the sentence {key}, and there is none.") from None


def in_json(name: str, key: str, words: Words) -> str:
    """A sentence within a JSON text."""
    return json.dumps(sentence(name, key, words), ensure_ascii=False)[1:-1]


def in_markup(name: str, key: str, words: Words) -> str:
    """A sentence within HTML, in an attribute or between tags."""
    said = sentence(name, key, words)
    if unknown := placeholders(said) - PLACES.keys():
        raise TroubleError(f"{name} names the sentence {key}, which wants {sorted(unknown)}.")
    text = said if key.startswith(MARKUP) else escape(said, quote=False).replace('"', "&quot;")
    units = {
        "unit": words.sentences["unit.small.inch"],
        "long_unit": words.sentences["unit.long.inch"],
    }
    return text.format_map({place: form.format(units[place]) for place, form in PLACES.items()})


def alternates(name: str, everyone: Iterable[Words]) -> str:
    """Tell browsers, search engines and boot.js where the page is in each language."""
    return "\n".join(
        f'<link rel="alternate" hreflang="{words.code}" href="{words.address_of(name)}">'
        for words in everyone
    )


def others(name: str, words: Words, everyone: Iterable[Words]) -> str:
    """Links to the same page in the other languages, each in its own."""
    return " ".join(
        f'<a class="language" href="{other.address_of(name)}{ASKED}{other.code}"'
        f' lang="{other.code}" hreflang="{other.code}">{other.sentences["language.name"]}</a>'
        for other in everyone
        if other is not words
    )


def data_block(words: Words, keys: Iterable[str]) -> str:
    """The sentences of these keys, as data for scripts: not run, so the policy allows it."""
    said = {key: words.sentences[key] for key in sorted(keys)}
    data = json.dumps(said, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return f'<script type="application/json" id="words">{data}</script>'


def said_in(scripts: Iterable[str], words: Words) -> set[str]:
    """The keys of the sentences that scripts say, whole or put together."""
    quoted: set[str] = set()
    beginnings: set[str] = set()
    for script in scripts:
        quoted |= set(QUOTED.findall(script))
        beginnings |= set(BEGINNING.findall(script))
    return {
        key
        for key in words.sentences
        if "." in key
        and not key.startswith(MARKUP)
        and (key in quoted or key.startswith(tuple(beginnings)))
    }
