"""What the figures of the answer are, in two sentences each, for who meets them the first time."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from sweepsheet.words.messages import Language, Probability

# The terms of each part of the sheet, in the order in which its figures stand.
TERMS: dict[str, tuple[str, ...]] = {
    "bore": ("offset", "tir", "plus-minus", "direction", "limit", "chance", "left"),
    "face": ("runout", "rearmost", "slope", "total"),
    "squaring": ("taper", "shim", "swing"),
    "pilot": ("gearbox-axis", "out-of-line"),
    "seat": ("clearance", "finished-joint"),
    "plate": ("plate-error",),
    "seating": ("comes-back",),
    "depth": ("engagement", "room"),
    "trim": ("moved", "turn"),
    "pairs": ("unlike", "misfit"),
    "chip": ("chip",),
    "companion": ("companion",),
}


@dataclass(frozen=True, slots=True)
class PlainWord:
    """A term and what it means."""

    term: str
    meaning: str


def plain_words(
    parts: Iterable[str], language: Language, confidence: float
) -> dict[str, tuple[PlainWord, ...]]:
    """The terms of each of these parts of the sheet, by part; ``companion-0`` counts as companion.

    ``confidence`` is the probability from which the job calls it within.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> words = plain_words(["bore", "companion-1"], ENGLISH, 0.95)
    >>> words["bore"][0].term, len(words["companion-1"])
    ('Offset', 1)
    """
    chances = {"sure": Probability(confidence), "rest": Probability(1.0 - confidence)}
    return {
        part: tuple(
            PlainWord(language.say(f"term.{name}"), language.say(f"means.{name}", **chances))
            for name in TERMS[part.partition("-")[0]]
        )
        for part in parts
    }
