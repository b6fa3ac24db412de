"""The check of the table comes last: it looks at what the others wrote down, in one process."""

from __future__ import annotations

from pathlib import Path

import pytest

HERE = Path(__file__).parent


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Keep the tests of this folder together, and the check of the table behind all others."""
    items.sort(key=lambda item: item.path.name == "test_table.py")
    for item in items:
        if item.path.parent == HERE:
            item.add_marker(pytest.mark.xdist_group("published"))
