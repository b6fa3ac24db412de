"""The check of the table comes last: it looks at what the others wrote down."""

from __future__ import annotations

import pytest


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the check of the table behind all others."""
    items.sort(key=lambda item: item.path.name == "test_table.py")
