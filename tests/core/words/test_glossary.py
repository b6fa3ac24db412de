"""Every part of the sheet has its plain words, two sentences a figure."""

from __future__ import annotations

import json
import re
from itertools import chain

import pytest

from sweepsheet.page import handle_request
from sweepsheet.words.en.core import ENGLISH, TABLE
from sweepsheet.words.glossary import TERMS, plain_words
from tests.cases.forms import WHOLE

NAMES = sorted(set(chain.from_iterable(TERMS.values())))


def test_every_part_of_the_sheet_has_its_words() -> None:
    """The bore, and each part that has a title."""
    titled = {key.partition(".")[2] for key in TABLE if key.startswith("section.")}
    assert set(TERMS) == {"bore"} | titled


def test_a_meaning_is_two_sentences() -> None:
    for name in NAMES:
        assert len(re.findall(r"[.!?](?= [A-Z]|$)", TABLE[f"means.{name}"])) == 2, name
        assert len(TABLE[f"means.{name}"]) < 200, name
        assert len(TABLE[f"term.{name}"]) < 25, name


def test_an_answer_brings_the_words_of_what_it_shows() -> None:
    shown = json.loads(handle_request(json.dumps({"form": WHOLE})))
    names = ["bore", *(section["name"] for section in shown["sheet"]["sections"])]
    assert list(shown["words"]) == names
    assert len(names) > 5
    assert shown["words"]["bore"][1]["term"] == "TIR"


def test_a_part_that_is_not_known_is_our_own_mistake() -> None:
    with pytest.raises(KeyError):
        plain_words(["gearbox"], ENGLISH, 0.95)
