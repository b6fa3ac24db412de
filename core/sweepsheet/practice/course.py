"""A teacher's set: up to ten exercises in one text, such as ``2-417.6-12``, level and number.

It is readable, and stands in the address of the practice page as it is.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from sweepsheet.practice.housing import HIGHEST_SEED, LEVELS
from sweepsheet.words.faults import Fault, InputError
from sweepsheet.words.messages import Message

MOST_EXERCISES = 10
SET, AT = "exercise.set", "exercise.at"

_ONE = rf"[{LEVELS[0]}-{LEVELS[-1]}]-[1-9][0-9]{{0,{len(str(HIGHEST_SEED)) - 1}}}"
_SET = re.compile(rf"{_ONE}(?:\.{_ONE}){{0,{MOST_EXERCISES - 1}}}")


def exercises_of(text: str) -> tuple[tuple[str, str], ...]:
    """Level and number of each exercise of a set. Raises ``InputError`` where it is none.

    >>> exercises_of("2-417.6-12")
    (('2', '417'), ('6', '12'))
    """
    if not _SET.fullmatch(text):
        raise _refused(SET)
    found = (each.partition("-") for each in text.split("."))
    return tuple((level, seed) for level, _, seed in found)


def in_set(form: Mapping[str, str]) -> Mapping[str, str]:
    """The form of one exercise of a set, by its place in it; another form as it is.

    >>> dict(in_set({"exercise.set": "2-417.6-12", "exercise.at": "2"}))["exercise.seed"]
    '12'
    """
    place = place_of(form)
    if place is None:
        return form
    level, seed = exercises_of(form[SET])[place[0] - 1]
    return {**form, "exercise.level": level, "exercise.seed": seed}


def place_of(form: Mapping[str, str]) -> tuple[int, int] | None:
    """Which exercise of how many a form asks for; ``None`` where it is of no set.

    >>> place_of({"exercise.set": "2-417.6-12", "exercise.at": "2"})
    (2, 2)
    """
    if not form.get(SET):
        return None
    places = [str(n + 1) for n in range(len(exercises_of(form[SET])))]
    at = form.get(AT, "1")
    if at not in places:
        raise _refused(AT)
    return places.index(at) + 1, len(places)


def _refused(field: str) -> InputError:
    return InputError((Fault(field, Message("fault.set", {"most": MOST_EXERCISES})),))
