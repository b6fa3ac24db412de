"""What is cut from Pyodide's code: what the list says, no more; a new Pyodide stops the build."""

from __future__ import annotations

import struct
import subprocess
from pathlib import Path

import brotli
import pytest

import build
from web.build import constants, runtime
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
    words = ["--input-type=module", "-e", SCRIPT, str(folder / "pyodide.mjs"), str(library)]
    asked = subprocess.run(
        [build.PYTHON, "-c", build.START_NODE, *words], capture_output=True, text=True, check=True
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


def test_half_of_it_is_left_as_a_host_sends_it(library: Path) -> None:
    whole, left = (
        len(brotli.compress((each / runtime.CODE).read_bytes(), quality=9))
        for each in (STOCK, library.with_name("runtime"))
    )
    assert left < 0.6 * whole


def test_places_and_addresses_stay_as_they_are(library: Path) -> None:
    whole, left = (
        Wasm((each / runtime.CODE).read_bytes()) for each in (STOCK, library.with_name("runtime"))
    )
    assert left.table.keys() < whole.table.keys()
    addresses = whole.addresses()
    assert {addresses[name] == at for name, at in left.addresses().items()} == {True}
    before, after = whole.memory, left.memory
    stretches = runtime.read_list(runtime.LIST.read_text("utf-8")).constants
    for start, end in stretches:
        assert any(before[start:end])
        assert not any(after[start:end])
        before[start:end] = after[start:end]
    changed = [at for at, byte in enumerate(after) if byte != before[at]]
    # No constant of what stays: beside them the table of modules is all that changed.
    assert changed
    assert max(changed) - min(changed) < 1000


def test_what_stays_of_the_code_names_no_place_among_the_constants_that_are_cut(
    library: Path,
) -> None:
    cuts = runtime.read_list(runtime.LIST.read_text("utf-8"))
    code = library.with_name("runtime") / runtime.CODE
    users = constants.named(constants.written_out(code), cuts.constants)
    assert users.keys() == cuts.numbers
    # Nothing is read from such an address, and nothing is written there.
    assert not [each for names in users.values() for each in names if ".load" in each]


def test_constants_that_are_cut_are_those_of_what_is_cut() -> None:
    # What stands at both ends, and just beside them.
    memory = Wasm((STOCK / runtime.CODE).read_bytes()).memory
    (xml, fcntl), (encodings, _) = runtime.read_list(runtime.LIST.read_text("utf-8")).constants
    assert memory[xml:].startswith(b"Python wrapper for Expat parser.\0")
    assert memory[:xml].rstrip(b"\0").endswith(b"Return a new BLAKE2s hash object.")
    assert memory[fcntl:].startswith(b"This module performs file control and I/O control")
    assert memory[encodings:].startswith(b"utf8\0char\0")
    # Of variables and tables with addresses those of the same modules lead there, which stand side
    # by side; of what stays nothing but a few round numbers does.
    words = struct.unpack(f"<{len(memory) // 4}I", memory[: len(memory) // 4 * 4])
    leads = [4 * at for at, word in enumerate(words) if xml <= word < fcntl and 4 * at > 3_180_000]
    own = [at for at in leads if 3_625_152 <= at < 3_690_520]
    assert words[own[0] // 4] == xml
    assert len(own) > 1900
    assert {words[at // 4] % 8 for at in leads if at not in own} == {0}
    assert len(leads) - len(own) < 25


def test_another_pyodide_stops_the_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    listed = tmp_path / "runtime.txt"
    listed.write_text("file 0123\n", "utf-8")
    monkeypatch.setattr(runtime, "LIST", listed)
    with pytest.raises(TroubleError, match=r"Make the list anew.*--whole-runtime"):
        runtime.reduce_runtime(STOCK, tmp_path, lambda *_: None)


def test_a_name_that_is_not_there_stops_the_build() -> None:
    wasm = Wasm((STOCK / runtime.CODE).read_bytes())
    cuts = runtime.Cuts("", [("PyInit_zlib", "no_such")], idle=[], constants=[], numbers=set())
    with pytest.raises(TroubleError, match="no function no_such"):
        runtime.cut_what_is_listed(wasm, cuts)


def test_a_line_of_another_kind_is_refused() -> None:
    with pytest.raises(TroubleError, match="begins with one of"):
        runtime.read_list("file 1\nfunction a b\n")


@pytest.mark.parametrize("number", [0, 1, 63, 64, 127, 128, 8191, 8192, 3_820_747])
def test_numbers_are_written_as_they_are_read(number: int) -> None:
    assert unsigned(as_unsigned(number), 0)[0] == number
    assert signed(as_signed(number), 0)[0] == number
