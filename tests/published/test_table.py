"""The table of published figures is the one that the checks made."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.published.record import check, shown
from tests.published.table import FOLDER, TABLE

ROOT = FOLDER.parents[1]


@pytest.mark.slow
def test_the_table_says_what_was_checked(tmp_path: Path) -> None:
    """All the checks of the folder, made once more in a process of their own, write the same."""
    command = [sys.executable, "-m", "tests.published.table", str(tmp_path / "TABLE.md")]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout
    assert (tmp_path / "TABLE.md").read_text("utf-8") == TABLE.read_text("utf-8"), (
        "python -m tests.published.table makes it anew"
    )


def test_a_wrong_figure_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tests.published.record.ROWS", {})
    check("none", "a figure", 1.0, 1.04, within=0.05)
    with pytest.raises(AssertionError, match="a figure"):
        check("none", "a figure", 1.0, 1.06, within=0.05)
    with pytest.raises(AssertionError):
        check("none", "a figure", [1.0, 2.0], [1.0, 2.2], within=0.05)


def test_what_rounding_leaves_is_nothing() -> None:
    assert shown([1e-15, -1e-13, 0.1 + 0.2, -2.5]) == "0, 0, 0.3, -2.5"
