"""The language of the pages' templates: ``{{VERB}}``, or ``{{VERB WORD WORD}}``, and no other.

============================  ====================================================================
``{{part answer}}``           the file ``pages/parts/answer.html``, itself a template
``{{say KEY}}``               a sentence
``{{field PATH ID}}``         the whole field of a setting of the job: label, control, help
``{{control PATH ID HELP}}``  its label and control alone, described by the element HELP
``{{measures engine}}``       the picture of where to measure depths; or ``gearbox``
``{{checklist GROUP}}``       what can be ticked
``{{most NAME}}``             how long a text may be
``{{to PAGE}}``               the address of another page in the same language
``{{language}}``              the code of the language
``{{alternates}}``            what tells browsers where the page is in each language
``{{other_languages}}``       links to the same page in the others
``{{doc MODULE NAME ...}}``   docstrings of the core; ``{{contents}}``: links to the headings
``{{style NAME MEDIA}}``      a style sheet, within the page
``{{script NAME}}``           a script, within the page
``{{first_round}}``           the first round's fields, as the page's own script draws them
``{{words}}``                 the sentences that the page's scripts say, as data
``{{release}}``               the folder of the release; in ``sw.js`` also ``files`` and ``policy``
============================  ====================================================================

Who knows what a verb stands for gives ``fill`` a function for it; the places of verbs that are not
known yet stay as they are, for the next step of the build.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from web.build.trouble import TroubleError

Verbs = Mapping[str, Callable[..., str]]
PLACE = re.compile(r"\{\{(\w+)((?: [\w.-]+)*)\}\}")


def fill(text: str, verbs: Verbs) -> str:
    """Put in each place what its verb gives, which is a template again.

    >>> fill("{{say hello world}}, {{release}}", {"say": lambda *words: "-".join(words)})
    'hello-world, {{release}}'
    """

    def filled(place: re.Match[str]) -> str:
        verb = verbs.get(place[1])
        if verb is None:
            return place[0]
        try:
            given = verb(*place[2].split())
        except TypeError as error:
            raise TroubleError(f"A template says {place[0]}: {error}.") from error
        return fill(given, verbs)

    return PLACE.sub(filled, text)


def places(text: str, verb: str) -> list[list[str]]:
    """The words after a verb, for each of its places.

    >>> places("{{say one}} {{to two}} {{say three four}}", "say")
    [['one'], ['three', 'four']]
    """
    return [words.split() for found, words in PLACE.findall(text) if found == verb]


def nothing_left(text: str) -> str:
    """The text, if no place is left in it."""
    if left := re.search(r"\{\{[^}]*\}\}", text):
        raise TroubleError(f"Nothing is known to fill in for {left[0]}.")
    return text
