"""A language as it speaks of another assembly than the main one: the same keys, other sentences.

What the main assembly says goes nowhere near any of this.
"""

from __future__ import annotations

from functools import lru_cache

from sweepsheet.words.assembly_words import AssemblyWords
from sweepsheet.words.messages import Language


def worded(language: Language, assembly: object) -> Language:
    """The language as it speaks of an assembly; as ever of the main one, and of no known one.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> worded(ENGLISH, "pump").say("drawing.crank"), worded(ENGLISH, None).say("drawing.crank")
    ('shaft', 'crank')
    """
    if not isinstance(assembly, str) or not assembly:
        return language
    return _worded(language.code, assembly) or language


@lru_cache(maxsize=16)
def _worded(code: str, assembly: str) -> Language | None:
    language, words = _tables(code)
    if assembly not in words.nouns:
        return None
    return Language(code, {**language.table, **words.of(assembly)})


def _tables(code: str) -> tuple[Language, AssemblyWords]:
    """A language with what it says of other assemblies, which only they need."""
    if code == "es":
        from sweepsheet.words.es.assemblies import WORDS as SPANISH_WORDS  # noqa: PLC0415
        from sweepsheet.words.es.core import SPANISH  # noqa: PLC0415

        return SPANISH, SPANISH_WORDS
    from sweepsheet.words.en.assemblies import WORDS  # noqa: PLC0415
    from sweepsheet.words.en.core import ENGLISH  # noqa: PLC0415

    return ENGLISH, WORDS
