"""What is typed beside a photo of a dial, as the numbers of which a reader of photos makes use."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sweepsheet.form.parse import number_or_text
from sweepsheet.picture.request import RANGES


def typed_dial(asked: Mapping[str, Any]) -> dict[str, Any] | None:
    """The request with numbers for typed texts; ``None`` where a text is no number that can be.

    >>> typed_dial({"scale": {"divisions": "100", "step": "0,5", "clockwise": True}})
    {'scale': {'divisions': 100.0, 'step': 0.5, 'clockwise': True}}
    >>> typed_dial({"scale": {"divisions": "a lot", "step": "1"}}) is None
    True
    """
    found = dict(asked)
    for part, ranges in RANGES.items():
        given = asked.get(part)
        if not isinstance(given, dict):
            continue
        found[part] = dict(given)
        for name, (least, most) in ranges.items():
            if not isinstance(given.get(name), str):
                continue  # a number already, or nothing that was typed
            number = number_or_text(given[name])
            if not isinstance(number, float) or not least <= number <= most:
                return None
            if name == "divisions" and number != int(number):
                return None
            found[part][name] = number
    return found
