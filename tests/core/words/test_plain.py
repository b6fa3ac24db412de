"""The English is plain: no word that has a better one, short sentences, and easy to read."""

from __future__ import annotations

import re
import string
from pathlib import Path

import pyphen

from sweepsheet.words.en.core import TABLE
from sweepsheet.words.en.pages import PAGE

PAGES = Path(__file__).parents[3] / "web" / "pages"
ENGLISH = TABLE | PAGE
MOST = 72
HIGHEST_GRADE = 4.0

# What is not said, and what is said instead; patterns of whole words.
BETTER = {
    "wanted": "needed, enter",
    "(?<!proper )(?<!on )stands|stood": "is, sits",
    "reckon|reckons|reckoned": "uses",
    "otherwise": "differently",
    "told": "nothing: cut it",
    "said": "nothing: cut it",
    "come to|comes to|came to": "is, result",
    "but in": "except",
    "nobody": "no … entered",
    "maker|makers": "manufacturer",
    "battery off": "battery disconnected",
    "practise|practises|practised": "practice",
    "licence|licences": "license",
    "anticlockwise": "counterclockwise",
    "end float": "end play",
    "droop|droops|drooping": "sag",
    "metre|metres|millimetre|millimetres|centre|centres|colour": "meter, center, color",
    "pointer": "needle",
    "peg|pegs": "dowel, or high side",
    "standard dowel|standard dowels": "stock dowels",
    "inside": "within",
    "lean|leans|leaning|tilted": "out of square, runout",
    "stands proud|nothing proud": "sticks out",
    "in truth": "actual",
}
# Where the word is the right one.
RIGHT = {
    "set_up.touches.inside": "the dial touches the bore from inside, no limit",
    "set_up.usual": "the dial touches the bore from inside, no limit",
    "contact.inside": "from inside the bore, no limit",
    "practice.touches.inside": "from inside the bore, no limit",
    "paper.inside": "from inside the bore, no limit",
    "how.bore.text": "in the bore, no limit",
}
# Sentences that stay longer than two lines of a phone, and why.
LONGER: dict[str, str] = {}

TYPICAL = {
    "name": "9 o'clock reading", "got": "'12x'", "n": "2", "what": "bore", "at": "4:30",
    "sweep": "bore sweep 2", "error": "2.0 thou", "most": "1.5 thou", "excess": "6.2 thou",
    "sense": "high", "tir": "21.6 thou", "opposite": "10:30", "first": "12", "second": "6",
    "third": "3", "fourth": "9", "difference": "3.1 thou", "left": "7", "largest": "0.011",
    "limit": "5.0 thou", "offset": "10.8 thou", "pm": "0.8", "settle": "Sweep once more.",
    "wanted": "10.8 thou", "expected": "1.9 thou", "size": "10.8 thou", "change": "2.5 thou",
    "runout": "8.4 thou", "total": "9.1 thou", "tilt": "6.0 thou", "rest": "3.1 thou",
    "move": "3.0 thou", "before": "10.8", "after": "7.9 thou", "height": "4.2 thou",
    "angle": "1.2 thou per inch", "sure": "1.5", "careful": "0.5", "generous": "1.0 thou per inch",
    "bearing": "a needle bearing", "tight": "1.0 thou", "clearance": "2.0 thou",
    "half": "1.0 thou", "chance": "97%", "direction": "4:30", "aim": "10:30", "told": "7.0 thou",
    "causes": "the dial's plus and minus", "gain": "0.4 thou", "trimmed": "3.0 thou",
    "turn": "12°", "measure": "sweep once more", "now": "0.8", "then": "0.5 thou", "step": "0.1",
    "positions": "3 and 9", "hole": "9 o'clock", "dowels": "at 9 the 7.0 one, at 3 the stock one",
    "side": "up and left", "way": "clockwise", "degrees": "315°", "fit": "Fit 7.0 offset dowels.",
    "unit": "thou", "long_unit": "inch", "low": "0", "high": "120", "choices": "inch, metric",
    "why": "line 1", "kind": "the pilot bore", "swing": "21.6 thou", "of": "8",
    "where": "4:30", "status": "404", "path": "main.js", "slope": "1.2 thou per inch",
    "round": "Recheck 1", "radius": "1.8 thou", "dial": "0.9 thou", "times": "3",
    "need": "at least 0.100 in", "band": "0.118 in to 0.182 in",
    "along": "3 o'clock", "across": "12 o'clock", "a": "9:00 (270°)", "b": "3:00 (90°)",
    "x": "178 mm = 7.00 in", "y": "-12 mm = -0.45 in", "time": "9:00",
    "depth": "4 thou", "rock": "0.5 thou", "stack": "3", "value": "4",
    "scatter": "0.25 thou", "dof": "12", "ratio": "12", "offer": "0.25",
    "tested": "8 in", "reach": "10 in", "date": "May 2", "bar": "a 2 in bar",
}  # fmt: skip


def spoken(key: str) -> list[str]:
    """The sentences of a text, without its markup, filled in with what is usual."""
    text = re.sub(r"<[^>]*>", "", ENGLISH[key])
    names = {name for _, name, _, _ in string.Formatter().parse(text) if name is not None}
    filled = text.format(**{name: TYPICAL[name] for name in names})
    return [each for each in re.split(r"(?<=[.?!])\s+", filled) if each]


def of_the_page() -> set[str]:
    """The keys of what the page of a job says, and what the core says on it."""
    template = (PAGES / "index.html").read_text(encoding="utf-8")
    for part in re.findall(r"\{\{part ([\w-]+)\}\}", template):
        template += (PAGES / "parts" / f"{part}.html").read_text(encoding="utf-8")
    keys = set(re.findall(r"\{\{say ([\w.-]+)\}\}", template))
    fields = re.findall(r"\{\{(?:field|control) ([\w.]+)", template)
    keys |= {key for key in ENGLISH if key.startswith(tuple(f"field.{path}" for path in fields))}
    core = (
        "do.",
        "finding.",
        "fault.",
        "answer.",
        "settle.",
        "checklist.",
        "page.waiting",
        "order.",
    )
    return keys | {key for key in TABLE if key.startswith(core)}


def grade(texts: list[str]) -> float:
    """The US school grade of Flesch and Kincaid (1975), of running sentences."""
    # Breaks after a first letter count too: "a-gain" has two syllables.
    hyphenator = pyphen.Pyphen(lang="en_US", left=1, right=2)
    words = [re.findall(r"[A-Za-z']+", text) for text in texts]
    count = sum(map(len, words))
    syllables = sum(len(hyphenator.positions(word)) + 1 for each in words for word in each)
    return 0.39 * count / len(texts) + 11.8 * syllables / count - 15.59


def unplain() -> dict[str, list[str]]:
    found = {}
    for key, text in ENGLISH.items():
        plain = re.sub(r"<[^>]*>|\{\w+\}", "", text)
        words = [word for word in BETTER if re.search(rf"\b(?:{word})\b", plain, re.IGNORECASE)]
        if words and key not in RIGHT:
            found[key] = [f"{word}: {BETTER[word]}" for word in words]
    return found


def test_no_word_is_said_that_has_a_better_one() -> None:
    assert unplain() == {}


def test_a_word_that_is_allowed_is_said() -> None:
    assert RIGHT.keys() <= ENGLISH.keys()
    for key in RIGHT:
        assert any(re.search(rf"\b(?:{word})\b", ENGLISH[key], re.IGNORECASE) for word in BETTER)


def test_a_sentence_of_the_page_is_short() -> None:
    keys = of_the_page()
    assert len(keys) > 200
    long = {key: [s for s in spoken(key) if len(s) > MOST] for key in keys}
    assert {key: said for key, said in long.items() if said and key not in LONGER} == {}
    assert {key for key in LONGER if not long.get(key)} == set()


def test_the_page_is_easy_to_read() -> None:
    """Labels are left out: they are so short that they would flatter it."""
    running = [s for key in sorted(of_the_page()) for s in spoken(key) if s.endswith((".", "?"))]
    assert len(running) > 150
    assert grade(running) <= HIGHEST_GRADE


def test_the_grade_tells_hard_from_easy() -> None:
    easy = ["Sweep the bore again.", "Turn the dial to 12."]
    hard = ["Eccentricity necessitates additional repeatability investigations."]
    assert grade(easy) < 3
    assert grade(hard) > 15
