"""What leads through the lengths along the crank axis, one at a time: words and a picture of each.

In the order of the form: on the engine with its clutch, then on the gearbox. Each length has the
letter that it has there, and its picture shows that one alone.
"""

from __future__ import annotations

from typing import Any

from sweepsheet.drawing.depth_measures import ENGINE, FIELDS, LETTERS, one_measure
from sweepsheet.words.messages import Language

# What is watched for at a length, beside what is said of it.
_ON_ENGINE = ("guide.lengths.edge", "guide.lengths.push", "guide.lengths.places")
_ON_GEARBOX = ("guide.lengths.edge", "guide.lengths.places")
_OWN_LENGTH = ("guide.lengths.places",)
# These are the length of a part, from no place.
_PARTS = ("pilot_length", "journal_length")


def guide_lengths(language: Language) -> dict[str, Any]:
    """The steps through the lengths: make ready, each length; ``state`` is ``guide``.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> steps = guide_lengths(ENGLISH)["steps"]
    >>> len(steps), steps[1]["label"], steps[1]["field"]
    (13, 'A', 'depth.to_face')
    """
    ready = {
        "label": language.say("guide.ready"),
        "turn": language.say("guide.lengths.ready"),
        "watch": [
            language.say(key)
            for key in (
                "guide.lengths.tools", "guide.lengths.safe", "guide.lengths.one_place",
                "guide.lengths.clutch",
            )
        ],
        "spoken": language.say("guide.lengths.tools"),
        "field": "",
        "picture": "",
    }  # fmt: skip
    steps = [ready, *(_step(name, language) for name in LETTERS)]
    return {"state": "guide", "picture": "", "steps": steps}


def _step(name: str, language: Language) -> dict[str, Any]:
    """One length: how it is taken, and what spoils it."""
    watch = _OWN_LENGTH if name in _PARTS else _ON_ENGINE if name in ENGINE else _ON_GEARBOX
    label, turn = LETTERS[name], language.say(f"guide.length.{name}")
    return {
        "label": label,
        "turn": turn,
        "watch": [language.say(key) for key in watch],
        "spoken": f"{label}. {turn}",
        "field": FIELDS[name],
        "picture": one_measure(name, language),
    }
