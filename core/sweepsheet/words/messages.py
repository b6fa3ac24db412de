"""Messages without words, and the languages that put them into words.

The modules that compute never hold a sentence: they give a ``Message``, a key with the
quantities that belong in it. A ``Language`` (one table in one file, such as ``en.core``) turns it
into text. So a number cannot be worded in two ways, and another language is one file more.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sweepsheet.maths.clock import clock_time, hour_at, normalise
from sweepsheet.maths.units import UnitSystem


@dataclass(frozen=True, slots=True)
class Distance:
    """A small distance (offset, TIR, reading) that is shown with its unit."""

    value: float
    units: UnitSystem

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        return f"{language.number(self.units.show(self.value))} {language.unit(self.units)}"


@dataclass(frozen=True, slots=True)
class BareDistance:
    """A small distance beside others of its kind, shown without its unit."""

    value: float
    units: UnitSystem

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        return language.number(self.units.show(self.value))


@dataclass(frozen=True, slots=True)
class Length:
    """A length along the crank axis, as a caliper shows it: ``0.430 in``, ``10.92 mm``."""

    value: float
    units: UnitSystem

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        inches = self.units.name == "inch"
        text = f"{self.value:.3f}" if inches else f"{self.value:.2f}"
        plain = text.removeprefix("-") if float(text) == 0 else text
        return language.say(f"paper.length.{self.units.name}", value=language.number(plain))


@dataclass(frozen=True, slots=True)
class StockSize:
    """A size by which a part is bought, shown as it is written on it: ``7 thou``."""

    value: float
    units: UnitSystem

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        text = f"{self.value:g}"
        return f"{language.number(text)} {language.unit(self.units, text)}"


@dataclass(frozen=True, slots=True)
class Direction:
    """A direction, shown as a clock position in words."""

    angle_deg: float

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        return language.toward(self.angle_deg)


@dataclass(frozen=True, slots=True)
class ClockPosition:
    """A position on the clock, shown as short as can be: ``9 o'clock`` or ``10:30``."""

    angle_deg: float

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        return language.at(self.angle_deg)


@dataclass(frozen=True, slots=True)
class Side:
    """A direction, shown as the nearest of eight: up, up and right, right."""

    angle_deg: float

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        return language.side(self.angle_deg)


@dataclass(frozen=True, slots=True)
class Degrees:
    """An angle, shown in whole degrees; a direction that rounds to a full turn is 0."""

    value: float

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        # Adding nothing turns minus zero into zero.
        whole = round(self.value) + 0.0
        return language.number(f"{0.0 if whole == 360 else whole:.0f}") + "°"


@dataclass(frozen=True, slots=True)
class Angle:
    """A tilt or misalignment in radians, shown as thou an inch or mm a metre, which is mrad."""

    value: float
    units: UnitSystem

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        unit = language.table[f"unit.slope.{self.units.name}"]
        return f"{language.number(f'{self.value * 1000:.2f}')} {unit}"


@dataclass(frozen=True, slots=True)
class Probability:
    """A probability, shown in percent and never as a certainty."""

    value: float

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        return language.chance(self.value)


@dataclass(frozen=True, slots=True)
class Message:
    """What is to be said: the key of a sentence and the quantities that go into it."""

    key: str
    values: Mapping[str, Quantity] = field(default_factory=dict)

    def in_words(self, language: Language) -> str:
        """The quantity in a language."""
        return language.text(self)


def round_called(index: int) -> Message:
    """What a round is called: as found, or the number of its recheck.

    >>> round_called(2)
    Message(key='usual.later', values={'n': 2})
    """
    return Message("usual.later", {"n": index}) if index else Message("usual.first")


Quantity = (
    str
    | int
    | float
    | Distance
    | BareDistance
    | Length
    | StockSize
    | Direction
    | ClockPosition
    | Side
    | Degrees
    | Angle
    | Probability
    | Message
    | tuple["Quantity", ...]
)


@dataclass(frozen=True, slots=True)
class Language:
    """A language: its code (BCP 47) and its table of sentences, with ``{name}`` for quantities."""

    code: str
    table: Mapping[str, str]

    def say(self, key: str, /, **values: Quantity) -> str:
        """The sentence ``key`` with its quantities in words.

        Raises ``KeyError`` where the table lacks the sentence or the sentence a quantity: that
        is a bug of ours, which the tests look for, and not bad input.
        """
        return self.table[key].format_map({name: self.word(v) for name, v in values.items()})

    def text(self, message: Message) -> str:
        """A message in words."""
        return self.say(message.key, **message.values)

    def word(self, quantity: Quantity) -> str:
        """One quantity in words."""
        match quantity:
            case str() | int():
                return str(quantity)
            case float():
                return self.number(f"{quantity:g}")
            case tuple():
                return self.listed([self.word(each) for each in quantity])
            case _:
                return quantity.in_words(self)

    def unit(self, units: UnitSystem, number: str = "") -> str:
        """The name of the small unit, alone or after a number: 1 has a name of its own."""
        return self.table[f"unit.{units.small}_one" if number == "1" else f"unit.{units.small}"]

    def number(self, plain: str) -> str:
        """A number's text with this language's decimal mark."""
        return plain.replace(".", self.table["number.decimal_mark"]).replace("-", "\N{MINUS SIGN}")

    def at(self, angle_deg: float) -> str:
        """A full hour, ``9 o'clock``, else the time of the hour hand, ``10:30``.

        Hour 1 has sentences of its own: in some languages it alone is not a plural.
        """
        time = clock_time(angle_deg)
        hour, minute = time.split(":")
        if minute == "00":
            return self._hour(hour)
        return self.table["clock.time_one" if hour == "1" else "clock.time"].format(time=time)

    def _hour(self, hour: str) -> str:
        return self.table["clock.hour_one" if hour == "1" else "clock.hour"].format(hour=hour)

    def toward(self, angle_deg: float) -> str:
        """A direction in clock words: the hour it lies at, or the time between two.

        >>> from sweepsheet.words.en.core import ENGLISH
        >>> ENGLISH.toward(180.0), ENGLISH.toward(309.8)
        ("6 o'clock", '10:20')
        """
        hour = hour_at(angle_deg)
        return self.at(angle_deg) if hour is None else self._hour(str(hour))

    def side(self, angle_deg: float) -> str:
        """Up, right, down or left, for the nearest of the eight directions."""
        eighth = round(normalise(angle_deg) / 45.0) % 8
        return self.table[f"side.{eighth}"]

    def chance(self, probability: float) -> str:
        """A probability in percent; the last half percent is never rounded to certainty."""
        if probability > 0.995:
            return self.table["chance.over"]
        if probability < 0.005:
            return self.table["chance.under"]
        return f"{probability * 100:.0f}%"

    def listed(self, words: list[str]) -> str:
        """Words as a list: ``a, b and c``."""
        if len(words) < 2:
            return "".join(words)
        return self.table["list"].format(first=", ".join(words[:-1]), last=words[-1])
