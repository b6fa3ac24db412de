"""What the page asks of a film: small grey frames in, the stops of a sweep out, and in words.

A film goes through in pieces, so that nothing typed meanwhile waits for it: the page hands over
some frames at a time, keeps what comes back for each, and asks for the stops at the end.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sweepsheet.picture.film import WINDOW, find_stops, movements, sharpness
from sweepsheet.picture.request import number_of, unpacked, whole_of
from sweepsheet.words.faults import refused
from sweepsheet.words.messages import Language

# The sides of a small frame in pixels, the seconds between two, and what a film may last.
SIDE, STEP_S, LONGEST_S = 64, 0.2, 180
# How many pixels the shorter side of a film has at least, and how many pictures a burst at most.
SMALLEST, MOST_PICTURES = 240, 60
# Frames in one piece, and positions of a sweep, at most.
_MOST_FRAMES, _MOST_POSITIONS = 100, 100
_LARGEST = 1e6
# What the page says of a film by itself: `film.NAME`.
WORDS = (
    "title", "help", "tried", "first", "keep", "choose", "record", "burst", "working", "pictures",
    "reading", "cancel", "cancelled", "close", "empty", "not_a_film", "too_long", "too_small",
    "stuck", "unsure", "many", "position", "turn", "none", "twice", "right", "again", "no_first",
    "first_is", "typed", "replace", "all", "done", "moved",
)  # fmt: skip


def answer_film(asked: Mapping[str, Any], language: Language) -> dict[str, Any]:
    """What is asked of a film, one of these; anything else raises ``InputError``.

    - ``open``: what the page needs to know: its words, and how frames are to be taken.
    - ``frames``: some frames in a row, as Base64 of SIDE x SIDE bytes each, and their ``count``.
      The answer has ``movements``, one for each window of seven frames, and ``sharpness``, one a
      frame. Of the next piece the first six frames are the last six of this one.
    - ``movements`` and ``sharpness`` of the whole film, and how many ``positions`` the sweep has.
      The answer has its ``stops``, and whether they fit.
    - ``pictures``: how many there are in a burst, each of which is a stop; and ``positions``.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> shown = answer_film({"pictures": 9, "positions": 8}, ENGLISH)
    >>> shown["fits"], shown["text"], shown["stops"][0]["text"]
    (True, '9 stops: 8 positions and the return.', 'Picture 1')
    """
    if "open" in asked:
        return _opened(language)
    if "frames" in asked:
        return _seen(asked)
    positions = whole_of(asked.get("positions"), 1, _MOST_POSITIONS)
    if "pictures" in asked:
        count = whole_of(asked["pictures"], 1, MOST_PICTURES)
        shown = [{"best": [i], "text": language.say("film.picture", n=i + 1)} for i in range(count)]
        return _matched(shown, positions, language)
    moved, sharp = _numbers(asked.get("movements")), _numbers(asked.get("sharpness"))
    if len(moved) != max(0, len(sharp) - WINDOW + 1):
        raise refused("fault.request")
    stops = find_stops(moved, sharp)
    if not stops:
        return {"state": "refused", "text": language.say("film.no_stops")}
    shown = []
    for i, stop in enumerate(stops):
        at = language.number(f"{STEP_S * (stop.first + stop.last) / 2.0:.1f}")
        text = language.say("film.stop", n=i + 1, at=at)
        shown.append({"best": list(stop.best), "text": text})
    return _matched(shown, positions, language)


def _opened(language: Language) -> dict[str, Any]:
    return {
        "state": "open",
        "words": {f"film.{name}": language.table[f"film.{name}"] for name in WORDS},
        "side": SIDE,
        "window": WINDOW,
        "step": STEP_S,
        "longest": LONGEST_S,
        "smallest": SMALLEST,
        "most": MOST_PICTURES,
    }


def _seen(asked: Mapping[str, Any]) -> dict[str, Any]:
    count = whole_of(asked.get("count"), 1, _MOST_FRAMES)
    size = SIDE * SIDE
    pixels = unpacked(asked["frames"], count * size)
    frames = [pixels[i * size : (i + 1) * size] for i in range(count)]
    return {
        "state": "seen",
        "movements": movements(frames, SIDE),
        "sharpness": [sharpness(frame, SIDE) for frame in frames],
    }


def _matched(stops: list[dict[str, Any]], positions: int, language: Language) -> dict[str, Any]:
    """The stops, and whether there is one for each position and for the return to the first."""
    n, wanted = len(stops), positions + 1
    how = "fits" if n == wanted else "no_return" if n == positions else "fewer"
    text = language.say(f"film.{'more' if n > wanted else how}", n=n, positions=positions)
    return {"state": "stops", "stops": stops, "fits": n == wanted, "text": text}


def _numbers(asked: object) -> list[float]:
    if not isinstance(asked, list) or len(asked) > LONGEST_S / STEP_S + 1:
        raise refused("fault.request")
    return [number_of(value, -_LARGEST, _LARGEST) for value in asked]
