"""Writes ``TABLE.md``: runs the published checks and puts down what they compared.

``python -m tests.published.table``, from the root of the repository; with a file's name, writes
that instead.
"""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from tests.published.record import table

FOLDER = Path(__file__).parent
TABLE = FOLDER / "TABLE.md"
TOP = """# Published figures, and what comes out here

Made by `python -m tests.published.table` from the checks of this folder, which assert every line;
do not edit. Sources, pages and what is from memory stand beside each check in the code too.

"""


def main(out: Path) -> int:
    """Run the checks but the one of the table itself."""
    code = pytest.main([str(FOLDER), "-q", "--ignore", str(FOLDER / "test_table.py")])
    if code == 0:
        out.write_text(TOP + table(), "utf-8")
    return int(code)


if __name__ == "__main__":
    sys.exit(main(Path(*sys.argv[1:]) if sys.argv[1:] else TABLE))
