"""From the text of a job file to data: bounded in size and depth, and nothing but JSON."""

from __future__ import annotations

import json
import re
from typing import Any

from sweepsheet.words.faults import refused

LONGEST_JOB = 200_000
DEEPEST_JOB = 12

# A string, however it goes on, or one bracket.
_PIECE = re.compile(r'"(?:[^"\\]++|\\.)*+"?|[\[{]|[\]}]', re.DOTALL)


def load_json(text: str, longest: int = LONGEST_JOB, deepest: int = DEEPEST_JOB) -> Any:
    """The data in a JSON text. Raises ``InputError`` where there is none or too much of it.

    ``NaN`` and ``Infinity``, which JSON does not have, are refused, and so is a key that stands
    twice in one object: nobody could tell which of its values counts.

    >>> load_json('{"a": [1]}')
    {'a': [1]}
    """
    if len(text) > longest:
        raise refused("fault.too_big", got=len(text), high=longest)
    if _depth(text) > deepest:
        raise refused("fault.too_deep")
    try:
        return json.loads(
            text.removeprefix("\ufeff"),
            parse_constant=_no_constant,
            object_pairs_hook=_each_key_once,
        )
    except ValueError as error:
        raise refused("fault.json", why=str(error)) from None


def _no_constant(name: str) -> float:
    raise ValueError(f"{name} is not a number")


def _each_key_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        raise ValueError("a key stands twice in one object")
    return found


def _depth(text: str) -> int:
    """The deepest nesting of brackets outside strings."""
    depth = deepest = 0
    for piece in _PIECE.finditer(text):
        if text[piece.start()] in "[{":
            depth += 1
            deepest = max(deepest, depth)
        elif text[piece.start()] in "]}":
            depth -= 1
    return deepest
