"""What pages fetch when another assembly is chosen: each piece of their text, told apart."""

from __future__ import annotations

import json

import pytest

from sweepsheet.job.assembly import LACKS
from web.build.assemblies import cut, pieces, written
from web.build.languages import Words, languages
from web.build.trouble import TroubleError

WORDS = Words("en", {"a": "Limit, {unit}", "b": "<b>One.</b> Two.", "c": "Gearbox", "d": "Engine"})


@pytest.mark.parametrize("words", languages(), ids=lambda words: words.code)
def test_each_assembly_has_its_pieces_and_what_scripts_say(words: Words) -> None:
    found = json.loads(written(words, ["say('what.crank_flange'); say(`turned.line.${at}`)"]))
    assert set(found) == set(LACKS)
    for each in found.values():
        assert len(each["pieces"]) > 25
        assert not any(piece == instead for piece, instead in each["pieces"].items())
    assert "what.crank_flange" in found["pump"]["said"]
    assert "about.gearbox" not in found["pump"]["said"]
    gearbox = words.sentences["about.gearbox"]
    assert found["pump"]["pieces"][gearbox] in ("Pump", "Bomba")


def test_a_sentence_is_cut_at_tags_and_units() -> None:
    assert cut("<b>One.</b> Two, {long_unit} (three)") == ["One.", "Two,", "(three)"]
    assert cut("{n} marks") == []


def test_pieces_are_put_in_the_place_of_their_like() -> None:
    said = {"a": "Most, {unit}", "b": "<b>One.</b> Three."}
    assert pieces("pump", said, WORDS) == {"Limit,": "Most,", "Two.": "Three."}


@pytest.mark.parametrize(
    ("said", "trouble"),
    [
        ({"b": "One. Two."}, "other pieces"),
        ({"c": "Pump", "d": "Pump"}, "one sentence for two"),
    ],
)
def test_what_could_not_be_taken_back_stops_the_build(said: dict[str, str], trouble: str) -> None:
    with pytest.raises(TroubleError, match=trouble):
        pieces("pump", said, WORDS)


def test_two_sentences_for_one_piece_stop_the_build() -> None:
    words = Words("en", {"c": "Gearbox", "d": "Gearbox"})
    with pytest.raises(TroubleError, match="two sentences"):
        pieces("pump", {"c": "Pump", "d": "Motor"}, words)
