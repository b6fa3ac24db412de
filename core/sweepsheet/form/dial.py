"""Readings as the face of a dial shows them.

Most dials are read plus and minus from zero. One whose numbers go all the way round shows 93.5 for
minus 6.5 where a whole turn of the pointer is 100: the pointer stands 6.5 short of zero. The form
may tell so; everywhere else a reading has its sign.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from sweepsheet.form.parse import Value, number_or_text
from sweepsheet.job.fields import shown
from sweepsheet.words.faults import Fault
from sweepsheet.words.messages import Message

ALL_ROUND = "all_round"
_SIGNS = ("+", "-", "\N{MINUS SIGN}", "\N{EN DASH}")


@dataclass(frozen=True, slots=True)
class Dial:
    """How the readings of a form are written.

    ``turn``: the reading of a whole turn of the pointer, in small units; ``None`` where readings
    have their sign; the text itself where something else than a number above 0 was typed.
    """

    turn: Value

    @property
    def fault(self) -> Fault | None:
        """What is wrong where it can't be told what a reading means."""
        if not isinstance(self.turn, str):
            return None
        return Fault("indicator.turn", Message("fault.turn", {"got": shown(self.turn)}))

    def reading(self, typed: str, *, whole: bool = False) -> Value:
        """A typed reading with its sign; the text itself where it can't be told.

        On a dial that goes all the way round, what is below half a turn is plus, what is above is
        minus; half a turn itself may be either, and a whole turn or more is not on it. What is
        typed with a sign is taken as it stands. ``whole``: a number that can't be told stays a
        text that is no number, so that nobody takes it for one that has its sign.

        >>> dial = Dial(100.0)
        >>> dial.reading("93.5"), dial.reading("6.5"), dial.reading("-6.5"), dial.reading("50")
        (-6.5, 6.5, -6.5, '50')
        >>> Dial(None).reading("93.5"), dial.reading("50", whole=True)
        (93.5, '50 ?')
        """
        value = number_or_text(typed)
        if self.turn is None or not isinstance(value, float) or typed.strip().startswith(_SIGNS):
            return value
        if isinstance(self.turn, str):
            return f"{typed.strip()} ?" if whole else value
        if value >= self.turn or 2.0 * value == self.turn:
            return f"{typed.strip()} ?" if whole else typed.strip()
        # Rounded as a reading of twelve digits: 1 less 0.935 is to be 0.065.
        return value if 2.0 * value < self.turn else -round(self.turn - value, 12)


SIGNED = Dial(None)


def dial_of(form: Mapping[str, str]) -> Dial:
    """The dial that a form tells of.

    >>> dial_of({}).turn, dial_of({"indicator.shows": "all_round", "indicator.turn": "100"}).turn
    (None, 100.0)
    """
    if form.get("indicator.shows") != ALL_ROUND:
        return SIGNED
    typed = form.get("indicator.turn", "")
    turn = number_or_text(typed)
    return Dial(turn if isinstance(turn, float) and 0.0 < turn <= 1e6 else typed.strip())
