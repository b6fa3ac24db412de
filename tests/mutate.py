"""Mutation testing: change the computing modules bit by bit, and see whether a test notices.

``python3 build.py mutate [MODULE ...]`` works on one module after another, each in a folder of its
own below ``.build/mutants``, with the tests that are about that module. mutmut makes the
mutants (not of properties and constants: it leaves out what stands outside plain functions and
methods) and forks a process for each. Prints every mutant that no test noticed, then a table;
``tests/MUTANTS.md`` keeps the last one, with a word on each survivor.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
WORK = ROOT / ".build" / "mutants"

# The modules that compute. The tests of each are tests/core/test_MODULE.py, the figures worked out
# by hand, and those named here (below tests/). maths.eccentricity has properties only, which
# mutmut leaves.
FITS, BY_HAND = "published/test_fits.py", "core/test_by_hand.py"
MODULES: dict[str, tuple[str, ...]] = {
    "maths.vector": (),
    "maths.clock": (),
    "maths.linear": (),
    "maths.units": (),
    "maths.rounding": (),
    "sweep.corrections": ("published/test_face_pilot_and_droop.py",),
    "sweep.harmonic": (),
    "sweep.uncertainty": (FITS,),
    "sweep.repeats": ("core/sweep/test_uncertainty.py",),
    "sweep.rig_check": (),
    "sweep.checks": (),
    "maths.halving": ("core/maths/test_normal.py", "core/maths/test_quantiles.py"),
    "maths.median": ("core/picture/test_needle.py",),
    "maths.normal": (),
    "maths.pooled": (),
    "maths.quantiles": (),
    "maths.verdict": (),
    "sweep.analysis": ("core/findings/test_job.py",),
    "alignment.bore": (),
    "alignment.depth": (),
    "alignment.places": (),
    "alignment.plate": (),
    "alignment.face": (),
    "alignment.rotating_part": (),
    "remedy.chip": (),
    "alignment.seat": (),
    "alignment.pilot": (),
    "alignment.rounds": ("core/alignment/test_pilot.py", "core/test_corners.py"),
    "remedy.rigid": (),
    "remedy.dowel_uncertainty": (),
    "remedy.response": ("core/remedy/test_trim.py",),
    "remedy.trim": (),
    "remedy.history": (),
    "remedy.dowels": (),
    "remedy.unequal_pairs": (),
    "remedy.shims": (),
    "remedy.spacer": (),
    "remedy.seating": (),
    "remedy.squaring": (),
    "remedy.machining": (),
    "remedy.observed_move": ("core/remedy/test_trim.py", "core/remedy/test_history.py"),
    "remedy.settling": (),
    "job.positions": ("core/job/test_read.py",),
    "job.sag": ("core/alignment/test_bore.py", "core/job/test_read.py"),
    "findings.reach": (),
    "picture.scale": ("core/picture/test_taps.py",),
    "picture.taps": (),
    "picture.outline": (),
    "picture.ticks": (),
    "picture.straight": ("core/picture/test_needle.py",),
    "picture.needle": (),
    "picture.match": (),
    "picture.dial": (),
    "picture.film": (),
    "findings.order": (),
    "memory.usual": (),
    "memory.together": (),
    "solution": (),
}
# Exit codes by which mutmut files a mutant.
SURVIVED, NO_TESTS, SKIPPED = {0}, {5, 33}, {34}


@dataclass(frozen=True)
class Tally:
    """What became of the mutants of one module; ``equal`` ones are not counted among them."""

    module: str
    mutants: int
    equal: int
    survivors: tuple[str, ...]

    @property
    def killed(self) -> int:
        """How many a test noticed."""
        return self.mutants - len(self.survivors)

    @property
    def row(self) -> str:
        """The module's row of the table."""
        share = 100.0 * self.killed / self.mutants if self.mutants else 100.0
        return f"| {self.module} | {self.mutants} | {self.killed} | {share:.1f} | {self.equal} |"


def tests_of(module: str) -> list[str]:
    """The test files for a module, those that there are."""
    folder, _, name = module.rpartition(".")
    names = (f"core/{folder}/test_{name}.py", BY_HAND, *MODULES[module])
    return [f"tests/{name}" for name in names if (ROOT / "tests" / name).is_file()]


def path_of(module: str) -> str:
    """Where a module stands below the package."""
    return module.replace(".", "/")


def lay_out(module: str) -> Path:
    """A copy of core and tests with a configuration for this module alone."""
    folder = WORK / module
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    ignored = shutil.ignore_patterns("__pycache__", "build", "web", "bench")
    # mutmut knows the names of modules only where they stand in src/.
    shutil.copytree(ROOT / "core", folder / "src", ignore=ignored)
    shutil.copytree(ROOT / "tests", folder / "tests", ignore=ignored)
    (folder / "tests" / "conftest.py").unlink()  # it is about the build
    settings = {
        "source_paths": ["src/"],
        "only_mutate": [f"src/sweepsheet/{path_of(module)}.py"],
        "pytest_add_cli_args_test_selection": tests_of(module),
        "pytest_add_cli_args": ["-p", "no:cacheprovider", "-m", "not slow", "-W", "default"],
        "use_git_change_detection": False,
    }
    lines = [f"{key} = {json.dumps(value)}" for key, value in settings.items()]
    project = (ROOT / "pyproject.toml").read_text("utf-8").replace('["core", "."]', '["src", "."]')
    (folder / "pyproject.toml").write_text(
        "\n".join([project, "[tool.mutmut]", *lines, ""]), "utf-8"
    )
    return folder


def mutmut(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Run mutmut in a folder, and keep what it says."""
    command = [sys.executable, "-m", "mutmut", *words]
    environment = os.environ | {"PYTHONDONTWRITEBYTECODE": "1"}
    return subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, text=True, check=False
    )


def mutate(module: str, children: int) -> Tally:
    """Make and try every mutant of a module."""
    folder = lay_out(module)
    ran = mutmut(folder, "run", "--max-children", str(children))
    meta = folder / "mutants" / "src" / "sweepsheet" / f"{path_of(module)}.py.meta"
    codes = json.loads(meta.read_text("utf-8"))["exit_code_by_key"] if meta.is_file() else {}
    if ran.returncode or None in codes.values():
        raise SystemExit(f"{module}: mutmut did not finish.\n{ran.stdout[-3000:]}{ran.stderr}")
    tried = [name for name, code in codes.items() if code not in SKIPPED]
    alive, same = [], 0
    for name in tried:
        if codes[name] in SURVIVED | NO_TESTS:
            change = mutmut(folder, "show", name).stdout
            if is_only_strict(change):
                same += 1
            else:
                alive.append(name)
                print(change, flush=True)
    tally = Tally(module, len(tried) - same, same, tuple(alive))
    print(tally.row, flush=True)
    return tally


def is_only_strict(change: str) -> bool:
    """Whether a mutant only takes the ``strict=True`` from a ``zip`` (or a comma behind it).

    The readers have made sure that what is zipped is as long: no test can see a difference.
    """
    lines = {
        sign: re.sub(r",?\s*strict=\w+|,\s*(?=\))|\s", "", "".join(
            line[1:] for line in change.splitlines()
            if line.startswith(sign) and not line.startswith(sign * 3)
        ))
        for sign in "+-"
    }  # fmt: skip
    return "strict=True" in change and lines["+"] == lines["-"]


def main(names: list[str]) -> int:
    """Work through the modules named, or all."""
    unknown = set(names) - set(MODULES)
    if unknown:
        print(f"No such module here: {', '.join(sorted(unknown))}", file=sys.stderr)
        return 2
    tallies = [mutate(name, os.cpu_count() or 1) for name in names or MODULES]
    print("| module | mutants | killed | % | equal |\n|---|--:|--:|--:|--:|")
    for tally in tallies:
        print(tally.row)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
