"""Each script is written in the JavaScript that README promises, and no newer."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import build

ACORN = build.NODE / "acorn" / "bin" / "acorn"


def faults(script: Path, *language: str) -> str:
    """Read a script as this language; give what can't be read."""
    command = [
        sys.executable,
        "-c",
        build.START_NODE,
        str(ACORN),
        "--silent",
        *language,
        str(script),
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    return done.stderr.strip()


def test_a_fault_is_found(tmp_path: Path) -> None:
    script = tmp_path / "script.js"
    script.write_text("const x = 1;", "utf-8")
    assert "'const' is reserved" in faults(script, "--ecma5")
    assert faults(script, "--ecma2022") == ""


def test_the_oldest_browser_can_read_why_the_page_cannot_start(dist: Path, tmp_path: Path) -> None:
    for page in dist.glob("*.html"):
        (first,) = re.findall("<script>(.*?)</script>", page.read_text("utf-8"), re.DOTALL)
        script = tmp_path / "first.js"
        script.write_text(first, "utf-8")
        assert faults(script, "--ecma5") == "", page.name


def test_all_others_keep_to_2022(dist: Path, tmp_path: Path) -> None:
    """So does Pyodide: it stands among them."""
    release = next(dist.glob("r-*"))
    view = (dist / "view.html").read_text("utf-8")
    within = tmp_path / "view.js"
    within.write_text(
        re.findall('<script type="module">(.+?)</script>', view, re.DOTALL)[0], "utf-8"
    )
    scripts = [dist / "sw.js", within, *release.rglob("*.js")]
    assert len(scripts) > 4
    for script in scripts:
        assert faults(script, "--ecma2022", "--module") == "", script.name
