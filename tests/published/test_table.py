"""The table of published figures is the one that the checks made."""

from __future__ import annotations

import ast

import pytest

from tests.published.record import HEAD, ROWS, check, shown
from tests.published.table import FOLDER, TABLE


def test_the_table_says_what_was_checked(request: pytest.FixtureRequest) -> None:
    """Every line checked in this run stands in it; where all ran, no other does."""
    lines = [line for line in TABLE.read_text("utf-8").splitlines() if line.startswith("| ")]
    assert lines[0] == f"| {' | '.join(HEAD)} |"
    missing = {row.line for row in ROWS.values()} - set(lines[1:])
    assert not missing, "python -m tests.published.table makes it anew"
    ran = {item.function.__name__ for item in request.session.items if hasattr(item, "function")}
    if all_tests() <= ran:
        assert set(lines[1:]) == {row.line for row in ROWS.values()}


def all_tests() -> set[str]:
    """The names of all tests of the folder."""
    return {
        node.name
        for path in FOLDER.glob("test_*.py")
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_")
    }


def test_a_wrong_figure_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tests.published.record.ROWS", {})
    check("none", "a figure", 1.0, 1.04, within=0.05)
    with pytest.raises(AssertionError, match="a figure"):
        check("none", "a figure", 1.0, 1.06, within=0.05)
    with pytest.raises(AssertionError):
        check("none", "a figure", [1.0, 2.0], [1.0, 2.2], within=0.05)


def test_what_rounding_leaves_is_nothing() -> None:
    assert shown([1e-15, -1e-13, 0.1 + 0.2, -2.5]) == "0, 0, 0.3, -2.5"
