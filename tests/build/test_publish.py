"""The workflow that publishes the page: well formed, with no more rights than it needs.

It runs on its host alone. Here zizmor reads it against the schema of workflows and looks for holes.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

from build import ROOT

FOLDER = ROOT / ".github"
WORKFLOW = FOLDER / "workflows" / "publish.yml"


def audit(folder: Path) -> subprocess.CompletedProcess[str]:
    """Read every workflow of a folder."""
    zizmor = shutil.which("zizmor", path=str(Path(sys.executable).parent))
    assert zizmor
    command = [zizmor, "--offline", "--strict-collection", "--quiet"]
    command += ["--persona=pedantic", "--config", str(FOLDER / "zizmor.yml"), str(folder)]
    return subprocess.run(command, capture_output=True, text=True, check=False)


def spoiled(folder: Path, was: str, becomes: str) -> Path:
    """Copy the workflow with a fault in it."""
    text = WORKFLOW.read_text("utf-8")
    assert was in text
    copy = shutil.copytree(FOLDER, folder / ".github")
    (copy / "workflows" / "publish.yml").write_text(text.replace(was, becomes), "utf-8")
    return copy


def test_the_workflow_is_well_formed_and_has_no_holes() -> None:
    done = audit(FOLDER)
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_misspelt_key_is_found(tmp_path: Path) -> None:
    assert "was unexpected" in audit(spoiled(tmp_path, "runs-on:", "run-on:")).stderr


def test_rights_for_all_are_found(tmp_path: Path) -> None:
    done = audit(spoiled(tmp_path, "permissions: {}", "permissions: write-all"))
    assert done.returncode != 0
    assert "excessive-permissions" in done.stdout


def test_nothing_is_published_that_was_not_tested() -> None:
    text = WORKFLOW.read_text("utf-8")
    steps = [".ci/run", "build.py build", "path: dist", "needs: build", "actions/deploy-pages"]
    places = [text.index(step) for step in steps]
    assert places == sorted(places)
    assert (ROOT / ".ci" / "run").is_file()
