"""The table of sentences and the code that speaks them fit one another."""

from __future__ import annotations

import ast
import string
from itertools import chain

from sweepsheet.job.model import ABOUT_KEYS, SETTINGS
from sweepsheet.maths.units import SYSTEMS
from sweepsheet.words.en.core import TABLE
from sweepsheet.words.en.pages import PAGE
from sweepsheet.words.languages import FOLDERS
from tests.core.source import calls, literals, modules, prefixes, strings

LANGUAGES = tuple(FOLDERS.values())
CODE = {name: tree for name, tree in modules().items() if not name.startswith(LANGUAGES)}
# The first words of dotted keys; a literal that begins with one of them is meant as a key.
GROUPS = {key.partition(".")[0] for key in TABLE if "." in key}

# Who says a sentence, what stands before the key it is given, and at which place it stands.
SPEAKERS = {
    "say": ("", 0),
    "Message": ("", 0),
    "_refused": ("", 0),
    "fault": ("", 1),
    "PositionFault": ("", 0),
    "name_of": ("name.", 0),
    "finding": ("finding.", 0),
    "step": ("do.", 0),
}


def placeholders(sentence: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(sentence) if name is not None}


def given(call: ast.Call) -> set[str] | None:
    """The names of the quantities handed over; ``None`` where the code does not tell."""
    names = {word.arg for word in call.keywords if word.arg is not None}
    if any(word.arg is None for word in call.keywords):
        return None
    for argument in call.args:
        if isinstance(argument, ast.Dict):
            names |= set(chain.from_iterable(literals(key) for key in argument.keys))
        elif getattr(argument, "id", getattr(argument, "attr", None)) == "values":
            return None
    return names


def spoken() -> list[tuple[str, str, frozenset[str]]]:
    """Module, key and quantities of every sentence that is said with a literal key."""
    found: list[tuple[str, str, frozenset[str]]] = []
    for module, tree in CODE.items():
        for name, call in calls(tree):
            if name not in SPEAKERS:
                continue
            before, place = SPEAKERS[name]
            names = given(call)
            if len(call.args) > place and names is not None:
                keys = literals(call.args[place])
                found.extend((module, before + key, frozenset(names)) for key in keys)
    return found


def test_enough_is_found_to_be_checked() -> None:
    assert len(spoken()) > 80


def test_every_sentence_that_is_said_is_in_the_table() -> None:
    """... and gets every quantity it has a place for."""
    wrong = [
        f"{module} says {key} with {sorted(names)}"
        for module, key, names in spoken()
        if key not in TABLE or not placeholders(TABLE[key]) <= names
    ]
    assert wrong == []


def test_literals_that_look_like_keys_are_in_the_table() -> None:
    """A field is no key, though it may look like one: its name is in the table.

    The form's fields have names of their own, and its modules say nothing.
    """
    missing = {
        (module, text)
        for module, tree in CODE.items()
        if not module.startswith("form.")
        for text in strings(tree)
        if "." in text
        and text.partition(".")[0] in GROUPS
        and text.replace(".", "").replace("_", "").replace("-", "").isalnum()
        and text not in TABLE
        and f"name.{text}" not in TABLE
    }
    assert missing == set()


def is_used(key: str, texts: set[str], starts: set[str]) -> bool:
    """Whether code holds the key, or a beginning of it and all of the rest."""
    if key in texts or key.isdigit():
        return True
    return any(
        is_used(key.removeprefix(start), texts, starts) for start in starts if key.startswith(start)
    )


def test_every_sentence_in_the_table_is_said() -> None:
    texts = set().union(*(strings(tree) for tree in CODE.values())) | set(ABOUT_KEYS)
    texts |= SETTINGS.keys()
    # Some keys are put together: a beginning in an f-string or a sum, the rest elsewhere.
    starts = set().union(*(prefixes(tree) for tree in CODE.values()))
    assert {"name.", "finding.", "side.", "pilot-"} <= starts
    unused = {key for key in TABLE if not is_used(key, texts, starts)}
    unused -= {key for key in TABLE if key.startswith("unit.")}
    assert unused == set()


def test_every_unit_in_the_table_is_one_that_is_shown() -> None:
    """Looked up by the name of a system or its small unit, too short a word to search for."""
    shown = {f"unit.{units.small}" for units in SYSTEMS.values()}
    shown |= {f"unit.{units.small}_one" for units in SYSTEMS.values()}
    shown |= {f"unit.slope.{name}" for name in SYSTEMS}
    assert {key for key in TABLE if key.startswith("unit.")} == shown


def is_well_formed(sentence: str) -> bool:
    """Plain names in braces, no format tricks, no stray blanks."""
    parts = list(string.Formatter().parse(sentence))
    plain = all(name is None or name.isidentifier() for _, name, _, _ in parts)
    tricks = any(spec or conversion for _, _, spec, conversion in parts)
    return plain and not tricks and "  " not in sentence and sentence == sentence.strip() != ""


def test_every_sentence_is_well_formed() -> None:
    for bad in ("two  blanks", " first", "{0}", "{x:.1f}", "{x!r}", ""):
        assert not is_well_formed(bad)
    assert [key for key, said in (TABLE | PAGE).items() if not is_well_formed(said)] == []
