"""Bad input: every fault at once, each with its field and what is wanted."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.messages import Language, Message, Quantity


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with the input.

    ``field`` is the path into the job (``rounds.0.bore.sweeps.0.3``), empty for the whole of it;
    ``message`` says what is wanted there.
    """

    field: str
    message: Message

    def text(self, language: Language = ENGLISH) -> str:
        """The fault in words."""
        return language.text(self.message)


class InputError(ValueError):
    """The input can't be used. Nothing else is ever raised for bad input."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        """Keep the faults, of which there is at least one."""
        self.faults = faults
        super().__init__(
            "\n".join(f"{f.field}: {f.text()}" if f.field else f.text() for f in faults)
        )


def refused(key: str, **values: Quantity) -> InputError:
    """The error for the whole of an input: one fault without a field.

    >>> str(refused("fault.too_deep"))
    'This is nested more deeply than any job.'
    """
    return InputError((Fault("", Message(key, values)),))
