"""What is typed beside a photo of a dial, as the numbers of which a reader of photos makes use."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from sweepsheet.form.dial import SIGNED, Dial, dial_of
from sweepsheet.form.parse import number_or_text
from sweepsheet.picture.request import RANGES
from sweepsheet.words.faults import refused


def typed_dial(asked: Mapping[str, Any]) -> dict[str, Any] | str:
    """The request with numbers for typed texts; the code of a refusal where they don't do.

    ``form``, if it is there, tells whether the dial's numbers go all the way round: then the first
    reading is what the dial shows, and the job's turn must be that of the scale, or one of both is
    wrong, and with it every reading. ``picture.refused.CODE`` says what to do.

    >>> asked = {"scale": {"divisions": "100", "step": "0,5", "clockwise": True}}
    >>> typed_dial(asked)
    {'scale': {'divisions': 100.0, 'step': 0.5, 'clockwise': True}, 'all_round': False}
    >>> form = {"indicator.shows": "all_round", "indicator.turn": "50"}
    >>> typed_dial(asked | {"reference": {"reading": "43"}, "form": form})["reference"]
    {'reading': -7.0}
    >>> typed_dial({"scale": {"divisions": "a lot", "step": "1"}})
    'scale'
    """
    found = {name: value for name, value in asked.items() if name != "form"}
    dial = _dial(asked.get("form"))
    found["all_round"] = dial.turn is not None
    for part, ranges in RANGES.items():
        given = asked.get(part)
        if not isinstance(given, dict):
            continue
        found[part] = dict(given)
        for name, (least, most) in ranges.items():
            if not isinstance(given.get(name), str):
                continue  # a number already, or nothing that was typed
            is_first = part == "reference"
            typed = given[name]
            number = dial.reading(typed, whole=True) if is_first else number_or_text(typed)
            if not isinstance(number, float) or not least <= number <= most:
                return "first" if is_first and isinstance(number_or_text(typed), float) else "scale"
            if name == "divisions" and number != int(number):
                return "scale"
            found[part][name] = number
    return found if _is_one_turn(dial, found.get("scale")) else "turn"


def _dial(form: object) -> Dial:
    if form is None:
        return SIGNED
    if not isinstance(form, dict) or not all(isinstance(each, str) for each in form.values()):
        raise refused("fault.request")
    return dial_of(form)


def _is_one_turn(dial: Dial, scale: object) -> bool:
    """Whether a turn of the job is one of the scale; what is no scale is refused elsewhere."""
    if dial.turn is None or not isinstance(scale, dict):
        return True
    divisions, step = scale.get("divisions"), scale.get("step")
    if not isinstance(divisions, int | float) or not isinstance(step, int | float):
        return True
    return isinstance(dial.turn, float) and math.isclose(dial.turn, divisions * step)
