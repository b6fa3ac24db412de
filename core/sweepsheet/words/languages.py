"""The languages there are.

Each is a folder with the sentences of the core (``core.TABLE``) and those of the pages
(``pages.PAGE``), which the build puts into the pages. A language that nobody asks for is not
imported.
"""

from __future__ import annotations

from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.messages import Language

# The folder of each language, by its code (BCP 47). The first is the one that stands for any other.
FOLDERS = {"en": "words.en", "es": "words.es"}


def language_of(code: object) -> Language:
    """The language with a code; English for a code that is not known, and for anything else.

    >>> language_of("en").code, language_of("tlh").code, language_of(None).code
    ('en', 'en', 'en')
    """
    if code == "es":
        from sweepsheet.words.es.core import SPANISH  # noqa: PLC0415 - English pages need not wait for it

        return SPANISH
    return ENGLISH
