"""The sections of a WebAssembly file: just what `runtime.py` reads and writes of them.

The format is that of the WebAssembly Core Specification, chapter "Binary Format". What is laid out
in another way than Emscripten lays it out today is refused, never guessed at.
"""

from __future__ import annotations

from web.build.trouble import TroubleError

MAGIC = b"\0asm\1\0\0\0"
CUSTOM, IMPORTS, GLOBALS, EXPORTS, ELEMENTS, CODE, DATA, COUNT = 0, 2, 6, 7, 9, 10, 11, 12
FUNCTION, GLOBAL = 0, 3
# Opcodes of constant expressions, and how an active segment of table or memory 0 begins.
CONST, FLOAT, GLOBAL_GET, END = 0x41, 0x44, 0x23, 0x0B
ACTIVE = b"\0\x41"
# The fewest zeros for which a new segment takes less room than they do.
ZEROS = 12


def unsigned(data: bytes, at: int) -> tuple[int, int]:
    """Read an unsigned LEB128 number; give it and the place after it."""
    number = shift = 0
    while True:
        number |= (data[at] & 127) << shift
        shift, at = shift + 7, at + 1
        if data[at - 1] < 128:
            return number, at


def signed(data: bytes, at: int) -> tuple[int, int]:
    """Read a signed LEB128 number; give it and the place after it."""
    number, end = unsigned(data, at)
    is_negative = data[end - 1] & 64
    return number - (1 << 7 * (end - at)) if is_negative else number, end


def as_unsigned(number: int) -> bytes:
    """Write an unsigned LEB128 number."""
    out = bytearray()
    while number > 127:
        out.append(number & 127 | 128)
        number >>= 7
    return bytes([*out, number])


def as_signed(number: int) -> bytes:
    """Write a signed LEB128 number that is not negative."""
    plain = bytearray(as_unsigned(number))
    if plain[-1] & 64:
        plain[-1] |= 128
        plain.append(0)
    return bytes(plain)


def vector(items: list[bytes]) -> bytes:
    """Write a number of things, one after the other."""
    return as_unsigned(len(items)) + b"".join(items)


def sized(data: bytes) -> bytes:
    """Write bytes with their number before them."""
    return as_unsigned(len(data)) + data


def holding(name: str, data: bytes) -> bytes:
    """Write a module that holds nothing but a custom section of this name."""
    return MAGIC + bytes([CUSTOM]) + sized(sized(name.encode()) + data)


class Wasm:
    """A module whose exports, table, function bodies and first memory can be changed."""

    def __init__(self, data: bytes) -> None:
        """Take the file apart into its sections."""
        if not data.startswith(MAGIC):
            raise TroubleError("Pyodide's code is no WebAssembly file.")
        self.sections: list[tuple[int, bytes]] = []
        at = len(MAGIC)
        while at < len(data):
            kind = data[at]
            size, start = unsigned(data, at + 1)
            at = start + size
            self.sections.append((kind, data[start:at]))
        self._count_imports()

    def _section(self, kind: int) -> bytes:
        return next(data for each, data in self.sections if each == kind)

    def _put(self, kind: int, data: bytes) -> None:
        self.sections = [(each, data if each == kind else old) for each, old in self.sections]

    def to_bytes(self) -> bytes:
        """Put the file together."""
        return MAGIC + b"".join(bytes([kind]) + sized(data) for kind, data in self.sections)

    def _count_imports(self) -> None:
        """Count what comes before the module's own functions and globals in their numbering."""
        data = self._section(IMPORTS)
        count, at = unsigned(data, 0)
        kinds = []
        for _ in range(count):
            for _ in ("module", "name"):
                length, at = unsigned(data, at)
                at += length
            kind, at = data[at], at + 1
            if kind not in (FUNCTION, GLOBAL):
                raise TroubleError("Pyodide's code imports more than functions and globals now.")
            at = unsigned(data, at)[1] if kind == FUNCTION else at + 2
            kinds.append(kind)
        self.imported = {kind: kinds.count(kind) for kind in (FUNCTION, GLOBAL)}

    @property
    def exports(self) -> list[tuple[str, int, int]]:
        """Name, kind and number of each export."""
        data = self._section(EXPORTS)
        count, at = unsigned(data, 0)
        found = []
        for _ in range(count):
            length, at = unsigned(data, at)
            name, at = data[at : at + length].decode(), at + length
            number, end = unsigned(data, at + 1)
            found.append((name, data[at], number))
            at = end
        return found

    @exports.setter
    def exports(self, exports: list[tuple[str, int, int]]) -> None:
        items = [sized(n.encode()) + bytes([k]) + as_unsigned(i) for n, k, i in exports]
        self._put(EXPORTS, vector(items))

    def addresses(self) -> dict[str, int]:
        """Where each exported variable stands in memory."""
        data = self._section(GLOBALS)
        count, at = unsigned(data, 0)
        values = []
        for _ in range(count):
            code, at = data[at + 2], at + 3  # after its type and whether it changes
            value = 0
            if code == FLOAT:
                at += 8
            elif code in (CONST, CONST + 1):  # of 32 or 64 bits
                value, at = signed(data, at)
            elif code == GLOBAL_GET:
                at = unsigned(data, at)[1]
            else:
                raise TroubleError("A global of Pyodide's code starts in another way now.")
            values.append(value)
            at += 1  # END
        first = self.imported[GLOBAL]
        return {n: values[i - first] for n, k, i in self.exports if k == GLOBAL and i >= first}

    @property
    def table(self) -> dict[int, int]:
        """The function at each place of the table; a pointer to a function is such a place."""
        data = self._section(ELEMENTS)
        count, at = unsigned(data, 0)
        functions = {}
        for _ in range(count):
            if not data[at:].startswith(ACTIVE):
                raise TroubleError("The table of Pyodide's code is laid out in another way now.")
            start, at = signed(data, at + len(ACTIVE))
            length, at = unsigned(data, at + 1)
            for place in range(start, start + length):
                functions[place], at = unsigned(data, at)
        return functions

    @table.setter
    def table(self, functions: dict[int, int]) -> None:
        runs: list[tuple[int, list[bytes]]] = []
        for place, function in sorted(functions.items()):
            if not runs or runs[-1][0] + len(runs[-1][1]) != place:
                runs.append((place, []))
            runs[-1][1].append(as_unsigned(function))
        items = [ACTIVE + as_signed(start) + bytes([END]) + vector(run) for start, run in runs]
        self._put(ELEMENTS, vector(items))

    @property
    def bodies(self) -> list[bytes]:
        """The code of each function of the module's own."""
        data = self._section(CODE)
        count, at = unsigned(data, 0)
        found = []
        for _ in range(count):
            length, at = unsigned(data, at)
            found.append(data[at : at + length])
            at += length
        return found

    @bodies.setter
    def bodies(self, bodies: list[bytes]) -> None:
        self._put(CODE, vector([sized(body) for body in bodies]))

    @property
    def memory(self) -> bytearray:
        """The memory as it is before anything has run, from its beginning."""
        data = self._section(DATA)
        count, at = unsigned(data, 0)
        memory = bytearray()
        for _ in range(count):
            if not data[at:].startswith(ACTIVE):
                raise TroubleError("The memory of Pyodide's code is laid out in another way now.")
            start, at = signed(data, at + len(ACTIVE))
            length, at = unsigned(data, at + 1)
            memory.extend(bytes(max(0, start + length - len(memory))))
            memory[start : start + length] = data[at : at + length]
            at += length
        return memory

    @memory.setter
    def memory(self, memory: bytearray) -> None:
        items = []
        at = 0
        while at < len(memory):
            end = memory.find(bytes(ZEROS), at)
            end = len(memory) if end < 0 else end
            if end > at:
                part = bytes(memory[at:end])
                items.append(ACTIVE + as_signed(at) + bytes([END]) + sized(part))
            at = end
            while at < len(memory) and not memory[at]:
                at += 1
        self._put(DATA, vector(items))
        self._put(COUNT, as_unsigned(len(items)))
