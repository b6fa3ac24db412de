"""Writes ``core-values.js``: the limits and lists that the scripts share with the core.

The build puts the values of today into the bundles. ``python -m web.build.core_values`` writes the
file among the sources anew, which type checkers and readers see; a test tells when it is old.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any, get_args

from web.build.core import core

NAME = "core-values.js"
SOURCE = Path(__file__).resolve().parents[1] / "scripts" / "common" / NAME
HEAD = "// Limits and lists of the core. Written by web/build/core_values.py: change them there.\n"
# What is read of a link before Python is there.
READ_OF_LINK = (
    "about", "limits", "source", "rounds", "vehicle", "engine", "gearbox", "housing", "technician",
    "customer", "date", "notes", "name", "shop", "assembly",
)  # fmt: skip


def values() -> dict[str, tuple[str, Any]]:
    """Each value by its name, with what it is."""
    codec, figures, model = core("link.codec"), core("link.figures"), core("job.model")
    assembly = core("job.assembly")
    verdicts = get_args(core("maths.verdict").Verdict)
    return {
        "LONGEST_LINK": ("Characters of a link.", codec.LONGEST_LINK),
        "LONGEST_UNPACKED": ("Bytes of a link that was unpacked.", codec.LONGEST_UNPACKED),
        "LONGEST_LINE": ("Characters of a line of figures.", codec.LONGEST_LINE),
        "LONGEST_TEXT": ("Characters of a text in a job.", core("job.fields").LONGEST_TEXT),
        "LONGEST_FILE": ("Bytes of a file.", core("files.exchange").LONGEST_FILE),
        "LARGEST_PICTURE": ("Bytes of a picture.", core("files.pictures").LARGEST_PICTURE),
        "MOST_PHOTOS": ("Photos of a job.", core("job.photos").MOST_PHOTOS),
        "PHOTO": (
            "What stands behind the name of a reading, in the name of its photo's field.",
            core("form.photos").SUFFIX,
        ),
        "MOST_ROUNDS": ("Rounds of a job.", core("job.read").MOST_ROUNDS),
        "MOST_SWEEPS": ("Sweeps of a part.", core("job.sweeps").MOST_SWEEPS),
        "FEWEST_MARKS": ("Marks round the crank, at least.", core("form.marks").FEWEST),
        "MOST_POSITIONS": ("Positions of a sweep.", core("job.sweeps").MOST_POSITIONS),
        "LINK_VERSIONS": (
            "Versions of links that are read.", [*codec.OLDER_VERSIONS, codec.LINK_VERSION],
        ),
        "VERDICTS": ("What a result may be.", verdicts),
        "STANDINGS": ("What may stand over an answer.", core("report.sheet").STANDINGS),
        "LACKS": (
            "What an assembly has none of.",
            {name: " ".join(places) for name, places in assembly.LACKS.items()},
        ),
        "BELLHOUSING_LIMITS": (
            "Limits that are usual for the main assembly alone.", assembly.BELLHOUSING_LIMITS,
        ),
        "ABOUT": ("Texts of a job.", model.ABOUT_KEYS),
        "JOB_FIGURES": ("Figures of a link, of the job.", figures.JOB_FIGURES),
        "ROUND_FIGURES": ("Figures of a link, of a round.", figures.ROUND_FIGURES),
        "LENGTHS": (
            "Lengths along the crank axis, in the order in which they are taken.",
            [*core("drawing.depth_measures").FIELDS.values()],
        ),
        "RIG_FIELDS": ("Fields of a rig.", core("files.rig_file").RIG_FIELDS),
        "SHORT": ("Short names of keys in a link.", {k: codec.SHORT[k] for k in READ_OF_LINK}),
    }  # fmt: skip


def script() -> str:
    """The values as a module of JavaScript."""
    lines = [
        f"\n/** {told} */\nexport const {name} = {in_js(value)};\n"
        for name, (told, value) in values().items()
    ]
    return HEAD + "".join(lines)


def in_js(value: Any) -> str:
    """A value as JavaScript writes it; a list or table has a line for each item."""
    if isinstance(value, int):
        return str(value)
    if isinstance(value, str):
        return f"'{value}'"
    if isinstance(value, dict):
        listed = in_lines("{", (f"{key}: '{text}'" for key, text in value.items()), "}")
    else:
        listed = in_lines("[", (f"'{text}'" for text in value), "]")
    return f"/** @type {{const}} */ ({listed})"


def in_lines(begin: str, items: Iterable[str], end: str) -> str:
    """A list between its brackets."""
    rows = "".join(f"  {item},\n" for item in items)
    return f"{begin}\n{rows}{end}"


if __name__ == "__main__":
    SOURCE.write_text(script(), "utf-8")
