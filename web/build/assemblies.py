"""Writes what the pages say of other assemblies than the main one: a file for each language.

Pages fetch it when such an assembly is chosen. It has the sentences that their scripts say by key,
and the texts of the templates piece by piece: a template's sentence stands in the page cut at its
tags and at the units that change, and each piece is put in the place of its like.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from functools import cache

from web.build.core import core
from web.build.languages import WEB, Words, said_in
from web.build.trouble import TroubleError

CUT = re.compile(r"<[^>]*>|\{(?:unit|long_unit)\}")
PLACE = re.compile(r"\{\w+\}")
NAMED = re.compile(r"\{\{say ([\w.-]+)\}\}")


def written(words: Words, scripts: Iterable[str]) -> bytes:
    """Give the file of a language, for pages with these scripts."""
    keys = said_in(scripts, words)
    folder = core("words.languages").FOLDERS[words.code]
    spoken = core(f"{folder}.assemblies").WORDS, core(f"{folder}.assembly_pages").PAGE_WORDS
    found = {}
    for assembly in spoken[0].own:
        said = {key: text for each in spoken for key, text in each.of(assembly).items()}
        shown = {key: text for key, text in said.items() if in_a_page(key, words)}
        found[assembly] = {
            "said": {key: text for key, text in said.items() if key in keys},
            "pieces": pieces(assembly, shown, words),
        }
    return json.dumps(found, ensure_ascii=False, separators=(",", ":")).encode()


def in_a_page(key: str, words: Words) -> bool:
    """Tell whether a sentence may stand in a page: its own, those of templates, what is ticked."""
    folder = core("words.languages").FOLDERS[words.code]
    its_own = key in core(f"{folder}.pages").PAGE
    return its_own or key in in_templates() or key.startswith("checklist.")


@cache
def in_templates() -> frozenset[str]:
    """Give the sentences that templates name."""
    texts = (path.read_text("utf-8") for path in (WEB / "pages").rglob("*.html"))
    return frozenset(key for text in texts for key in NAMED.findall(text))


def pieces(assembly: str, said: dict[str, str], words: Words) -> dict[str, str]:
    """Give what stands in the place of each piece of text, where it differs.

    It must be told from a piece what stands instead, and from that, which piece it was.
    """
    found: dict[str, str] = {}
    for key, text in said.items():
        before, now = (cut(each) for each in (words.sentences[key], text))
        if len(before) != len(now):
            raise TroubleError(f"{key} of {assembly} has other pieces than in the main assembly.")
        for old, new in zip(before, now, strict=True):
            if old != new and found.setdefault(old, new) != new:
                raise TroubleError(f"{assembly} has two sentences for {old!r}.")
    if len(set(found.values())) < len(found):
        twice = sorted(v for v in found.values() if list(found.values()).count(v) > 1)
        raise TroubleError(f"{assembly} has one sentence for two: {twice}.")
    return found


def cut(sentence: str) -> list[str]:
    """Cut a sentence as it is cut in a page; one that a script fills in is in no page."""
    parts = CUT.split(sentence)
    return [part.strip() for part in parts if part.strip() and not PLACE.search(part)]
