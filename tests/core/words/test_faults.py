"""Bad input, every fault at once."""

from __future__ import annotations

from sweepsheet import Fault, InputError
from sweepsheet.words.messages import Language, Message


def test_every_fault_stands_on_a_line_of_its_own_with_its_field() -> None:
    error = InputError((
        Fault("rounds", Message("fault.list", {"name": "rounds", "got": Message("got.nothing")})),
        Fault("", Message("fault.too_deep")),
    ))  # fmt: skip
    assert str(error).splitlines() == [
        "rounds: rounds: enter a list, not nothing",
        "This is nested more deeply than any job.",
    ]
    assert [fault.field for fault in error.faults] == ["rounds", ""]


def test_a_fault_speaks_another_language() -> None:
    other = Language("xx", {"fault.too_deep": "zu tief"})
    assert Fault("", Message("fault.too_deep")).text(other) == "zu tief"


def test_it_is_a_value_error() -> None:
    assert issubclass(InputError, ValueError)
