"""The table of the settings in ``core/job-file.md``, made from the settings themselves.

``PYTHONPATH=core python -m tests.core.job.table`` writes it anew; a test tells when it is old.
"""

from __future__ import annotations

from pathlib import Path

from sweepsheet.job.model import SETTINGS
from sweepsheet.job.settings import LENGTH, LIMIT, SMALL, Setting
from sweepsheet.maths.units import INCH
from sweepsheet.words.en.core import ENGLISH

PAGE = Path(__file__).resolve().parents[3] / "core" / "job-file.md"
HEAD = "| key | what | values | usual |\n|---|---|---|---|\n"
BEGIN, END = "<!-- made by python -m tests.core.job.table -->\n", "<!-- end -->"


def values(setting: Setting) -> str:
    """What a setting may be."""
    if setting.kind == "choice":
        return ", ".join(f'`"{each}"`' for each in setting.choices)
    if setting.kind == "text":
        return "text"
    if setting.kind == "sizes":
        return "list of S"
    units = {LENGTH: "L", LIMIT: "S, more than 0", SMALL: "S"}
    low, high = (bound(INCH) for bound in (setting.span.low, setting.span.high))
    return units.get(setting.span) or f"from {low:g} to {high:g}"


def usual(setting: Setting) -> str:
    """What counts where a setting is left out; in thou and inches."""
    value = setting.usual_in(INCH)
    if value is None:
        return "`null`"
    if isinstance(value, tuple):
        return " ".join(f"{each:g}" for each in value) or "none"
    text = f'`"{value}"`' if isinstance(value, str) else f"{value:g}"
    return f"{text}; or `null`" if setting.nullable else text


def table() -> str:
    """A row for each setting."""
    rows = (
        f"| `{path}` | {ENGLISH.say(f'name.{path}')} | {values(each)} | {usual(each)} |\n"
        for path, each in SETTINGS.items()
    )
    return HEAD + "".join(rows)


def filled(page: str) -> str:
    """The page with the table of today."""
    before, _, rest = page.partition(BEGIN)
    _, _, after = rest.partition(END)
    return f"{before}{BEGIN}{table()}{END}{after}"


if __name__ == "__main__":
    PAGE.write_text(filled(PAGE.read_text("utf-8")), "utf-8")
