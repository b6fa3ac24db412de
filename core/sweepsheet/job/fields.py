"""Reading raw values from outside: each is checked, each fault is noted with its field.

A ``FieldReader`` never stops at the first fault: it notes it, goes on with a harmless value, and
the one who reads asks at the end whether there were any.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from sweepsheet.words.faults import Fault, InputError
from sweepsheet.words.messages import Message, Quantity

LONGEST_TEXT = 2000
_SHOWN = 24
_LINE_BREAKS = "\n\r\t\u2028\u2029"


def shown(value: object) -> Message:  # noqa: PLR0911 - one for each kind of value
    """What was found, as a short quotation for a fault."""
    match value:
        case None:
            return Message("got.nothing")
        case bool():
            return Message("got.value", {"value": "true" if value else "false"})
        case str() if not value.strip():
            return Message("got.nothing")
        case str():
            return Message("got.text", {"value": _in_one_line(value)})
        case int() if abs(value) >= 10**12:
            return Message("got.huge")
        case int() | float():
            return Message("got.value", {"value": float(value)})
        case list() | tuple():
            return Message("got.list")
        case dict():
            return Message("got.object")
        case _:
            return Message("got.other")


def _in_one_line(text: str) -> str:
    """A text as it is quoted: short, in one line, without what must not be printed."""
    cut = text if len(text) <= _SHOWN else text[:_SHOWN] + "…"
    return "".join("�" if is_harmful(c) or c in _LINE_BREAKS else c for c in cut)


def is_harmful(character: str) -> bool:
    r"""Whether a character must not stand in a text: controls, lone surrogates, bidi overrides.

    >>> is_harmful("\n"), is_harmful("\x00"), is_harmful("é")
    (False, True, False)
    """
    code = ord(character)
    return (
        (code < 0x20 and character not in "\n\r\t")
        or 0x7F <= code <= 0x9F
        or 0xD800 <= code <= 0xDFFF
        or 0x202A <= code <= 0x202E
        or 0x2066 <= code <= 0x2069
    )


class FieldReader:
    """Reads values out of JSON-like objects and collects what is wrong with them."""

    def __init__(self) -> None:
        """Start with no faults."""
        self._faults: list[Fault] = []

    def fault(self, path: str, key: str, **values: Quantity) -> None:
        """Note a fault at a field."""
        self._faults.append(Fault(path, Message(key, values)))

    def raise_faults(self) -> None:
        """Raise ``InputError`` with every fault noted, if there is one."""
        if self._faults:
            raise InputError(tuple(self._faults))

    @property
    def count(self) -> int:
        """How many faults were noted so far."""
        return len(self._faults)

    def section(self, value: object, path: str, keys: Iterable[str]) -> Mapping[str, Any]:
        """An object that may hold these keys and no others; empty where it is not one."""
        if not isinstance(value, dict):
            self.fault(path, "fault.object", name=path or Message("name.job"), got=shown(value))
            return {}
        known = frozenset(keys)
        for key in value:
            if key not in known:
                name = _in_one_line(str(key))
                self.fault(f"{path}.{name}" if path else name, "fault.unknown", name=shown(name))
        return value

    def listing(
        self, value: object, path: str, name: Message, least: int, most: int
    ) -> tuple[Any, ...]:
        """A list of ``least`` to ``most`` items; empty where it is not one."""
        if not isinstance(value, list | tuple):
            self.fault(path, "fault.list", name=name, got=shown(value))
            return ()
        if not least <= len(value) <= most:
            self.fault(path, "fault.count", name=name, low=least, high=most, got=len(value))
            return ()
        return tuple(value)

    def number(
        self, value: object, path: str, name: Message, low: float, high: float
    ) -> float | None:
        """A finite number with ``low <= number <= high``; ``None`` where it is not one."""
        if isinstance(value, bool) or not isinstance(value, int | float) or value != value:  # noqa: PLR0124 - a nan is not itself
            self.fault(path, "fault.number", name=name, got=shown(value))
            return None
        if not low <= value <= high:
            self.fault(
                path, "fault.range", name=name, low=float(low), high=float(high), got=shown(value)
            )
            return None
        return float(value)

    def choice(self, value: object, path: str, name: Message, choices: tuple[str, ...]) -> str:
        """One of the choices; the first where it is none of them."""
        if isinstance(value, str) and value in choices:
            return value
        self.fault(path, "fault.choice", name=name, choices=choices, got=shown(value))
        return choices[0]

    def text(self, value: object, path: str, name: Message, most: int = LONGEST_TEXT) -> str:
        """A text of bounded length without control characters; empty where it is not one."""
        if not isinstance(value, str):
            self.fault(path, "fault.text", name=name, got=shown(value))
            return ""
        if len(value) > most:
            self.fault(path, "fault.text_long", name=name, high=most, got=len(value))
            return ""
        if any(is_harmful(c) for c in value):
            self.fault(path, "fault.text_control", name=name)
            return ""
        return value
