"""The stops of a sweep on film: on films made by hand, on drawn ones, and what is asked of them."""

from __future__ import annotations

import json
import math
import random
import re
from base64 import b64encode
from pathlib import Path
from typing import Any

import pytest

from sweepsheet.page import handle_request
from sweepsheet.picture.film import WINDOW, find_stops, movements, sharpness
from sweepsheet.picture.film_request import SIDE, STEP_S
from sweepsheet.words.en.core import TABLE
from sweepsheet.words.faults import InputError
from tests.cases.dial_films import SMALL, any_film
from tests.core.picture.film_measure import FilmTally, kind_of, measure

SCRIPTS = Path(__file__).parents[3] / "web" / "scripts" / "photos"


def hand(turn: float, *, dx: float = 0.0, light: float = 1.0, rng: random.Random) -> bytes:
    """A frame of 32 x 32: a hand on a face of rings, with a little noise."""
    frame = []
    for y in range(32):
        for x in range(32):
            u, v = x - 15.5 - dx, y - 15.5
            r, off = math.hypot(u, v), abs(u * math.cos(turn) + v * math.sin(turn))
            grey = 120 + 60 * math.sin(r / 2.0)
            along = u * math.sin(turn) - v * math.cos(turn)
            grey -= 100 * math.exp(-((off / 2.0) ** 2)) / (1.0 + math.exp(-along))
            frame.append(min(255, max(0, round(light * grey + rng.gauss(0, 1.5)))))
    return bytes(frame)


def film_of(turns: list[float], **how: Any) -> list[bytes]:
    rng = random.Random(1)
    return [hand(turn, rng=rng, **how) for turn in turns]


def stops_of(frames: list[bytes], side: int = 32) -> list[tuple[int, int]]:
    moved = movements(frames, side)
    found = find_stops(moved, [sharpness(frame, side) for frame in frames])
    return [(stop.first, stop.last) for stop in found]


def test_stops_are_where_the_hand_stands_still() -> None:
    way = [0.08 * i for i in range(1, 9)]
    turns = [0.0] * 10 + way + [0.7] * 10 + [0.7 + each for each in way] + [1.4] * 10
    found = stops_of(film_of(turns))
    assert len(found) == 3
    for (first, last), (begin, end) in zip(found, [(0, 9), (18, 27), (36, 45)], strict=True):
        assert begin - 1 <= first <= begin + 2
        assert end - 2 <= last <= end + 1


def test_a_brighter_light_and_a_small_shift_are_no_movement() -> None:
    rng = random.Random(2)
    still = [hand(0.5, rng=rng) for _ in range(WINDOW)]
    lit = [hand(0.5, light=0.9 + 0.05 * (i % 3), rng=rng) for i in range(WINDOW)]
    shaken = [hand(0.5, dx=0.25 * (i % 2), rng=rng) for i in range(WINDOW)]
    turned = [hand(0.5 + 0.1 * i, rng=rng) for i in range(WINDOW)]
    noise, light, shake, turn = (movements(each, 32)[0] for each in (still, lit, shaken, turned))
    assert abs(light - noise) < 0.15
    assert shake - noise < 0.3
    assert turn - noise > 1.0


def test_a_window_s_movement_by_hand() -> None:
    """A pattern that changes its sign in three of seven frames, on a pattern that stays.

    Inside the rim, 4 x 4: stripes of +-20 stay, blocks of +-10 change. The mean has the stripes and
    a seventh of the blocks. Each frame's blocks less that are 6/7 or -8/7 of 10: a mean square of
    (4 (6/7)^2 + 3 (8/7)^2) 100 / 7 = 97.96, over the mean's variance of 400 + 100/49 = 402.04.
    What the mean explains of it is the part of the blocks along it, 100/49 in 402.04: 0.5 %.
    """
    columns, rows = [1, -1, -1, 1, 1, -1], [1, 1, 1, -1, -1, 1]
    one, other = (
        bytes(100 + 20 * c + sign * 10 * r * columns[(i + 1) % 6]
              for r in rows for i, c in enumerate(columns))
        for sign in (1, -1)
    )  # fmt: skip
    (moved,) = movements([one, other] * 3 + [one], 6)
    assert moved == pytest.approx(math.log10(97.96 / 402.04), abs=0.1)
    assert movements([one] * 6, 6) == []
    assert movements([], 6) == []


def test_a_film_of_nothing_or_of_one_stop_has_none() -> None:
    assert find_stops([], []) == []
    assert find_stops([-3.0] * 10, [1.0] * 16) == []
    assert stops_of(film_of([0.3] * 20)) == []


def test_a_valley_counts_by_its_rise_on_both_sides() -> None:
    low, high = -3.0, -2.0
    shallow = [low, high, high - 0.25, high, low, high]
    assert [stop.first for stop in find_stops(shallow, [1.0] * 12)] == [0, 4]
    deep = [low, high, high - 0.35, high, low, high]
    assert [stop.first for stop in find_stops(deep, [1.0] * 12)] == [0, 2, 4]
    # A film that ends while it comes to a stop has that one, too.
    assert [stop.first for stop in find_stops([low, high, high - 0.31], [1.0] * 9)] == [0, 2]
    assert [stop.first for stop in find_stops([low, high, high - 0.29], [1.0] * 9)] == [0]


def test_the_sharpest_frames_of_the_stillest_window_are_the_best() -> None:
    sharp = [9.0, 1.0, 5.0, 2.0, 4.0, 3.0, 8.0, 9.0]
    (stop,) = find_stops([-3.0, -1.0], sharp)
    assert stop.best == (2, 4, 5)
    assert (stop.first, stop.last) == (0, 6)


def test_a_blurred_frame_is_less_sharp() -> None:
    rng = random.Random(3)
    frame = hand(0.4, rng=rng)
    row = [*frame[-1:], *frame, *frame[:1]]
    blurred = bytes((a + b + c) // 3 for a, b, c in zip(row, row[1:], row[2:], strict=False))
    assert sharpness(frame, 32) > 1.05 * sharpness(blurred, 32)


@pytest.mark.slow
def test_stops_and_readings_of_drawn_films() -> None:
    """As measured on the family that is held out; ``film_measure`` has the figures of 200."""
    tally = FilmTally()
    for seed in range(10):
        measure(any_film("held-out", seed, kind=kind_of(seed)), tally)
    assert tally.right >= 9, tally.text
    assert tally.shifted == 0
    assert len(tally.errors) > 50
    assert max(tally.errors) < 1.0
    assert sorted(tally.errors)[int(0.95 * len(tally.errors))] < 0.25


def test_a_rest_on_the_way_is_one_stop_more_and_a_position_passed_one_less() -> None:
    for kind, difference in (("rest", 1), ("missed", -1)):
        film = any_film("tuning", 7, stops=6, kind=kind)
        tally = FilmTally()
        measure(film, tally, reading=False)
        assert len(film.stops) == 6 + difference
        assert tally.right == 1, tally.wrong


# Asked by the page ------------------------------------------------------------------------------


def asked(film: dict[str, Any], language: str = "en") -> dict[str, Any]:
    shown: dict[str, Any] = json.loads(
        handle_request(json.dumps({"film": film, "language": language}))
    )
    return shown


def piece(frames: list[bytes]) -> dict[str, Any]:
    return {"frames": b64encode(b"".join(frames)).decode("ascii"), "count": len(frames)}


def test_the_page_is_told_its_words_and_how_frames_are_taken() -> None:
    shown = asked({"open": True})
    scripts = "".join(path.read_text("utf-8") for path in SCRIPTS.glob("film*.js"))
    said = set(re.findall(r"say\('(film\.\w+)'", scripts))
    said |= {f"film.{name}" for name in re.findall(r"key\('(\w+)'", scripts)}
    assert shown["words"] == {key: TABLE[key] for key in said}
    assert asked({"open": True}, "es")["words"].keys() == shown["words"].keys()
    assert (shown["side"], shown["step"], shown["window"]) == (SIDE, STEP_S, WINDOW)
    assert SIDE == SMALL


def test_a_film_handed_over_in_pieces_is_the_whole_film() -> None:
    film = any_film("tuning", 2, stops=5)
    frames = [film.small(i) for i in range(len(film.times))]
    moved, sharp = [], []
    for start in range(0, len(frames) - WINDOW + 1, 20):
        part = frames[start : start + 20 + WINDOW - 1]
        told = asked(piece(part))
        assert told["state"] == "seen"
        moved += told["movements"]
        sharp += told["sharpness"][WINDOW - 1 if start else 0 :]
    assert moved == movements(frames, SIDE)
    shown = asked({"movements": moved, "sharpness": sharp, "positions": 4})
    assert (shown["state"], shown["fits"]) == ("stops", True)
    assert shown["text"] == "5 stops: 4 positions and the return."
    found = [(film.stops[i], stop["best"][0]) for i, stop in enumerate(shown["stops"])]
    assert all(stop.start < STEP_S * frame < stop.end for stop, frame in found)
    assert shown["stops"][0]["text"].startswith("Stop 1, at ")
    spanish = asked({"movements": moved, "sharpness": sharp, "positions": 4}, "es")
    assert "," in spanish["stops"][0]["text"].removeprefix("Parada 1, ")


@pytest.mark.parametrize(
    ("count", "fits", "said"),
    [
        (9, True, "9 stops: 8 positions"), (8, False, "no return"), (10, False, "too many"),
        (7, False, "too few"), (1, False, "too few"),
    ],
)  # fmt: skip
def test_stops_that_do_not_fit_say_why(count: int, fits: object, said: str) -> None:
    shown = asked({"pictures": count, "positions": 8})
    assert shown["fits"] == fits
    assert said in shown["text"]
    assert [stop["best"] for stop in shown["stops"]] == [[i] for i in range(count)]


def test_no_stops_are_refused_in_words() -> None:
    for moved, sharp in (([], []), ([-3.0] * 5, [1.0] * 11), ([], [1.0] * 3)):
        shown = asked({"movements": moved, "sharpness": sharp, "positions": 4})
        assert shown == {"state": "refused", "text": TABLE["film.no_stops"]}


@pytest.mark.parametrize(
    "wrong",
    [
        {}, {"frames": "", "count": 0}, {"frames": "AAAA", "count": 1}, {"frames": 7, "count": 1},
        {"frames": "", "count": 101}, {"frames": "", "count": 1.5}, {"frames": "", "count": None},
        {"movements": [1.0], "sharpness": [1.0], "positions": 4},
        {"movements": None, "sharpness": [], "positions": 4},
        {"movements": ["1"], "sharpness": [1.0] * 7, "positions": 4},
        {"movements": [1e9], "sharpness": [1.0] * 7, "positions": 4},
        {"movements": [0.0] * 1000, "sharpness": [1.0] * 1006, "positions": 4},
        {"movements": [], "sharpness": []}, {"pictures": 4}, {"pictures": 0, "positions": 4},
        {"pictures": 61, "positions": 4}, {"pictures": 4, "positions": True},
        {"pictures": 4, "positions": 0},
    ],
)  # fmt: skip
def test_what_is_no_request_is_refused(wrong: dict[str, Any]) -> None:
    with pytest.raises(InputError):
        asked(wrong)
