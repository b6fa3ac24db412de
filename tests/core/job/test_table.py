"""The document of the job file is of today."""

from __future__ import annotations

from sweepsheet.job.model import SETTINGS
from tests.core.job.table import PAGE, filled, table


def test_the_table_of_the_settings_is_of_today() -> None:
    """``python -m tests.core.job.table`` writes it anew."""
    page = PAGE.read_text("utf-8")
    assert filled(page) == page
    assert table().count("\n") == len(SETTINGS) + 2
