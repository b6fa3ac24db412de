"""What differs in what is said of another assembly than the main one, in one language.

The sentences that differ are laid over the language's own in four steps, from what is said of every
such assembly to what is said of one alone, and the names of its parts are put into their places:
``[driving shaft]`` or, in short, ``[shaft]``, ``[housing]`` and ``[unit]``. In a language with
genders and articles all names for one place are of one gender, so that a sentence fits each.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

# Here a crank carries the dial, as in the main one.
_ON_A_CRANK = ("converter",)


@dataclass(frozen=True, slots=True)
class AssemblyWords:
    """The sentences of a language that differ, by their keys; the later rule.

    ``nouns`` are the names of the parts of each assembly; ``every`` is said of all of them,
    ``of_a_shaft`` where no crank carries the dial, ``own`` of one assembly alone.
    """

    nouns: Mapping[str, Mapping[str, str]]
    every: Mapping[str, str]
    of_a_shaft: Mapping[str, str]
    own: Mapping[str, Mapping[str, str]]

    def of(self, assembly: str) -> dict[str, str]:
        """The sentences of one assembly, with the names of its parts in them."""
        of_a_shaft = {} if assembly in _ON_A_CRANK else self.of_a_shaft
        found = {**self.every, **of_a_shaft, **self.own[assembly]}
        return {key: self._named(text, assembly) for key, text in found.items()}

    def _named(self, text: str, assembly: str) -> str:
        for place, noun in self.nouns[assembly].items():
            text = text.replace(f"[{place}]", noun)
            text = text.replace(f"[{place.capitalize()}]", noun[0].upper() + noun[1:])
        return text
