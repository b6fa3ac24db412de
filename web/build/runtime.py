"""Cuts from Pyodide's compiled code what no page can reach; half of it as hosts send it.

Pyodide hands out every function, so that packages written in C can be linked to it while it runs,
and brings all of Python's modules that are written in C, SQLite among them. Here nothing is ever
linked, and `runtime.txt` names what is never imported. So the exports go that Pyodide's own scripts
do not use, the modules' entries in Python's table of built-in modules, and the pointers to their
functions; then Binaryen's wasm-opt takes out every function that nothing leads to. A function too
many traps, but one constant too many would be a wrong figure that nobody sees: of those only two
long stretches go, which are known to be of nothing else, tables of East Asian writing and of the
names of characters for the most part. Numbers of places and addresses stay as they are, since they
are written into the code.

What is called all the same traps, which Pyodide tells as a fatal error: the build asks Python a
question on what is left, and every test of the pages runs on it.
"""

from __future__ import annotations

import hashlib
import re
import struct
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from web.build.trouble import TroubleError
from web.build.wasm import FUNCTION, GLOBAL, Wasm

LIST = Path(__file__).with_name("runtime.txt")
CODE, SCRIPT, STARTER = "pyodide.asm.wasm", "pyodide.asm.mjs", "pyodide.mjs"
BEGIN = "function assignWasmExports(wasmExports){"
ASSIGNED = re.compile(r'([\w$]+)=Module\["[\w$]+"\]=wasmExports\["(\w+)"\](?:\.value>>>0)?')
WRAPPED = re.compile(r'wasmExports\["(\w+)"\]=makeWrapper_\w+\(wasmExports\["\w+"\]\);')
DIRECT = re.compile(r"wasmExports\.(\w+)")
WORD = re.compile(r"[A-Za-z_$][\w$]*")
# Emscripten calls these by other names, or before its names are set.
ALWAYS = {"__wasm_call_ctors", "__main_argc_argv", "__stack_pointer"}
# A function of one parameter that gives it back: no locals, local.get 0, end.
GIVES_BACK = bytes([0, 0x20, 0, 0x0B])
MODULES = "PyImport_Inittab"
# A source's functions stand side by side in the table, with few others between.
APART = 40
# What Emscripten builds for, as wasm-opt calls it; the same that Pyodide's file makes use of.
FEATURES = (
    *("bulk-memory", "bulk-memory-opt", "call-indirect-overlong", "exception-handling"),
    *("multivalue", "mutable-globals", "nontrapping-float-to-int", "reference-types"),
    *("sign-ext", "simd"),
)
OPTIMISE = (*(f"--enable-{name}" for name in FEATURES), "--remove-unused-module-elements")


@dataclass(frozen=True)
class Cuts:
    """What is cut, as the list has it."""

    file: str
    functions: list[tuple[str, str]]
    idle: list[str]
    constants: list[tuple[int, int]]
    numbers: set[int]


def read_list(text: str) -> Cuts:
    """Read the list of what is cut."""
    lines = [line.split("#")[0].split() for line in text.splitlines()]
    told = {kind: [rest for first, *rest in filter(None, lines) if first == kind] for kind in KINDS}
    if sum(map(len, told.values())) != sum(map(bool, lines)):
        raise TroubleError(f"Each line of {LIST.name} begins with one of: {', '.join(KINDS)}.")
    return Cuts(
        file=told["file"][0][0],
        functions=[(first, after) for first, after in told["functions"]],
        idle=[name for (name,) in told["idle"]],
        constants=[(int(start), int(end)) for start, end in told["constants"]],
        numbers={int(number) for numbers in told["numbers"] for number in numbers},
    )


KINDS = ("file", "functions", "idle", "constants", "numbers")


def reduce_runtime(stock: Path, out: Path, optimise: Callable[[Path, Path], None]) -> None:
    """Write the compiled code and its script to `out`, without what no page reaches.

    `stock` is Pyodide's folder; `optimise` runs wasm-opt from one file to another.
    """
    cuts = read_list(LIST.read_text("utf-8"))
    code = (stock / CODE).read_bytes()
    if hashlib.sha256(code).hexdigest() != cuts.file:
        raise TroubleError(
            f"{CODE} is another file than web/build/{LIST.name} is of. Make the list anew"
            " (web/building.md tells how), or build with --whole-runtime."
        )
    script = (stock / SCRIPT).read_text("utf-8")
    wasm = Wasm(code)
    cut_what_is_listed(wasm, cuts)
    words = words_of(script) | set(WORD.findall((stock / STARTER).read_text("utf-8")))
    wasm.exports = [each for each in wasm.exports if is_wanted(each, words)]
    unlinked, left = out / "unlinked.wasm", out / CODE
    unlinked.write_bytes(wasm.to_bytes())
    optimise(unlinked, left)
    unlinked.unlink()
    kept = {name for name, _, _ in Wasm(left.read_bytes()).exports}
    (out / SCRIPT).write_text(without_names(script, kept), "utf-8")


def cut_what_is_listed(wasm: Wasm, cuts: Cuts) -> None:
    """Take out what the list names: modules, pointers, bodies, constants."""
    numbers = {name: number for name, kind, number in wasm.exports if kind == FUNCTION}
    named = {name for pair in cuts.functions for name in pair} | {*cuts.idle}
    if missing := sorted(named - numbers.keys()):
        raise TroubleError(f"Pyodide's code has no function {' or '.join(missing)} any more.")
    table, memory = wasm.table, wasm.memory
    ranges = [range(numbers[first], numbers[after]) for first, after in cuts.functions]
    dropped = {place for each in ranges for place in places(table, each)}
    dropped |= cut_modules(memory, wasm.addresses()[MODULES], table, ranges)
    wasm.table = {place: n for place, n in table.items() if place not in dropped}
    for start, end in cuts.constants:
        memory[start:end] = bytes(end - start)
    wasm.memory = memory
    bodies = wasm.bodies
    for name in cuts.idle:
        bodies[numbers[name] - wasm.imported[FUNCTION]] = GIVES_BACK
    wasm.bodies = bodies


def places(table: dict[int, int], functions: range) -> set[int]:
    """Places of the table that sources with these functions have filled.

    Functions alike to the byte were made one by the linker, wherever they come from. Such a one may
    stand outside the sources' own stretch of the table, or at its end, for another source's sake.
    """
    runs: list[list[int]] = [[]]
    for place in (place for place, number in sorted(table.items()) if number in functions):
        if runs[-1] and place - runs[-1][-1] > APART:
            runs.append([])
        runs[-1].append(place)
    longest = max(runs, key=len)
    often = Counter(table.values())
    own = [place for place in longest if often[table[place]] == 1]
    return {place for place in longest if own and own[0] <= place <= own[-1]}


def cut_modules(
    memory: bytearray, pointer: int, table: dict[int, int], ranges: list[range]
) -> set[int]:
    """Take modules that start in these functions from Python's table of built-in modules.

    It is an array of pairs of pointers, name and function, with a pair of zeros at its end. Give
    the places of the functions.
    """
    (start,) = struct.unpack_from("<I", memory, pointer)
    end, kept, gone = start, b"", set()
    while any(pair := struct.unpack_from("<II", memory, end)):
        if any(table.get(pair[1]) in each for each in ranges):
            gone.add(pair[1])
        else:
            kept += struct.pack("<II", *pair)
        end += 8
    if not gone:
        raise TroubleError("Python's table of built-in modules is laid out in another way now.")
    memory[start:end] = kept.ljust(end - start, b"\0")
    return gone


def parts(script: str) -> tuple[str, list[str], str, list[str], str]:
    """Take the script apart: what stands before, between and after two lists.

    These are the list of variables for what the code exports, and that of their assignments.
    """
    if script.count(BEGIN) != 1:
        raise TroubleError("Pyodide's script takes over what its code exports in another way now.")
    start = script.index(BEGIN) + len(BEGIN)
    end = script.index("}", start)
    declared = script.rindex("var ", 0, start) + len("var ")
    closed = script.index(";", declared)
    assigned = script[start:end].split(";")
    names = script[declared:closed].split(",")
    return script[:declared], names, script[closed:start], assigned, script[end:]


def words_of(script: str) -> set[str]:
    """Every word of the script beside those two lists; `_name` for a `wasmExports.name`."""
    before, _, between, _, after = parts(script)
    rest = before + between + after
    return {*WORD.findall(rest), *(f"_{name}" for name in DIRECT.findall(rest))}


def is_wanted(export: tuple[str, int, int], words: set[str]) -> bool:
    """Tell whether the script uses an export: in it the name has a `_` before it."""
    name, kind, _ = export
    return kind not in (FUNCTION, GLOBAL) or name in ALWAYS or f"_{name}" in words


def without_names(script: str, kept: set[str]) -> str:
    """Write the script without the names that its code does not export any more."""
    before, names, between, assigned, after = parts(script)
    gone = {
        found[1]: line
        for line in assigned
        if (found := ASSIGNED.fullmatch(line)) and found[2] not in kept
    }
    if not gone:
        raise TroubleError("Pyodide's script names what its code exports in another way now.")
    lines = set(gone.values())
    names = [name for name in names if name not in gone]
    assigned = [line for line in assigned if line not in lines]
    after = WRAPPED.sub(lambda found: found[0] if found[1] in kept else "", after)
    return before + ",".join(names) + between + ";".join(assigned) + after
