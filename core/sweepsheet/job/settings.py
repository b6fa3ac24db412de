"""What each setting of a job may be, said once, where it stands in its dataclass (``model``).

``number``, ``choice``, ``text`` and ``sizes`` make a field whose metadata tells how it is read from
a job file, what is usual where it is left out, and how the form and the files hold it; all of them
ask ``settings_of``. A field without such a description is read by code of its own (``read``).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from functools import cache
from typing import Any, Literal, TypeVar, dataclass_transform

from sweepsheet.maths.units import UnitSystem

LONGEST_MM = 5000.0
MOST_SIZES = 8

Kind = Literal["number", "choice", "text", "sizes"]
Bound = Callable[[UnitSystem], float]
Part = TypeVar("Part")


@dataclass(frozen=True, slots=True)
class Span:
    """From where to where a number may lie, in a unit system."""

    low: Bound
    high: Bound


def between(low: float, high: float) -> Span:
    """A span that is the same in every unit."""
    return Span(lambda _: low, lambda _: high)


def longest(units: UnitSystem) -> float:
    """The longest length, in the long unit."""
    return LONGEST_MM / units.long_mm


def shortest(units: UnitSystem) -> float:
    """The shortest length, in the long unit."""
    return longest(units) / 1e5


SMALL = Span(lambda _: 0.0, lambda units: units.largest_reading)
# A limit smaller than what a result shows can never be seen to be held.
LIMIT = Span(lambda units: 10.0**-units.decimals, lambda units: units.largest_reading)
LENGTH = Span(shortest, longest)
# A place along an axis, before or behind where it is measured from.
PLACE = Span(lambda units: -longest(units), longest)
# What may be nothing: how far a length may be wrong, or what is put between.
THICKNESS = Span(lambda _: 0.0, longest)


@dataclass(frozen=True, slots=True)
class Setting:
    """One setting: a number within a span, one of some choices, a text, or sizes in stock.

    ``usual`` stands where it is left out: a value, or the name of what a unit system has for it.
    ``nullable``: it may be ``null``, not known. ``name`` names one of the sizes in a fault;
    ``retired`` are choices that older files have and the form no longer offers.
    """

    kind: Kind
    usual: float | str | tuple[float, ...] | None = None
    nullable: bool = False
    span: Span = SMALL
    choices: tuple[str, ...] = ()
    retired: tuple[str, ...] = ()
    name: str = ""

    def usual_in(self, units: UnitSystem) -> Any:
        """What is usual in a unit system."""
        named = isinstance(self.usual, str) and self.kind in ("number", "sizes")
        return getattr(units, str(self.usual)) if named else self.usual

    @property
    def blank_is_unknown(self) -> bool:
        """Whether a blank field says that it is not known, rather than that it is as usual."""
        return self.kind == "number" and self.nullable and self.usual is not None


def number(span: Span, usual: float | str | None = None, *, nullable: bool = True) -> Any:
    """A number within a span; where it is not nullable it has a usual value."""
    return field(metadata={"setting": Setting("number", usual, nullable, span)})


def choice(
    choices: tuple[str, ...], *, nullable: bool = False, retired: tuple[str, ...] = ()
) -> Any:
    """One of some words; the first where it is left out, or ``None`` where that may be."""
    usual = None if nullable else choices[0]
    setting = Setting("choice", usual, nullable, choices=choices, retired=retired)
    return field(metadata={"setting": setting})


def text() -> Any:
    """A text; blank where it is left out."""
    return field(metadata={"setting": Setting("text", "")})


def sizes(name: str, usual: str | tuple[float, ...] = ()) -> Any:
    """Small distances in stock, each once, the smallest first."""
    return field(metadata={"setting": Setting("sizes", usual, name=name)})


@dataclass_transform(frozen_default=True, field_specifiers=(number, choice, text, sizes))
def described(part: type[Part]) -> type[Part]:
    """Make a frozen dataclass of a part whose settings are described."""
    return dataclass(frozen=True, slots=True)(part)


@cache
def settings_of(part: type) -> Mapping[str, Setting]:
    """The settings of a part that are described, by their keys, in its order."""
    found = {each.name: each.metadata.get("setting") for each in fields(part)}
    return {name: setting for name, setting in found.items() if setting is not None}


@cache
def keys_of(part: type) -> tuple[str, ...]:
    """All keys of a part, in its order."""
    return tuple(each.name for each in fields(part))
