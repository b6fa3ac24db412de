"""The document on the start, into which each bench writes its table."""

from __future__ import annotations

import build

DOCUMENT = build.WEB / "start-up.md"


def write_table(begin: str, table: str, end: str) -> None:
    """Put a table between its two marks, in place of the last one."""
    before, _, rest = DOCUMENT.read_text("utf-8").partition(begin)
    _, _, after = rest.partition(end)
    DOCUMENT.write_text(f"{before}{begin}{table}\n{end}{after}", "utf-8")
