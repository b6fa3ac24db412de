"""The rules of the house, read from the source: nothing outside, one direction of flow."""

from __future__ import annotations

import ast
import sys

from tests.core.source import FOLDER, calls, modules

# The folders and single modules of the package, from the ground up: each may import itself and what
# stands before it, and nothing else. This is the one rule of how the house is built.
ORDER = (
    "maths", "words", "picture", "job", "form", "files", "sweep", "alignment", "remedy", "solution",
    "drawing", "findings", "report", "guide", "practice", "link",
    "memory", "api", "page", "__init__", "__main__",
)  # fmt: skip
# What works something out; what is said of it stands further up.
WITHOUT_SENTENCES = ("maths", "sweep", "alignment", "remedy", "solution")

# What the core may use of the standard library: arithmetic, text and types. No files, no clock, no
# network, no process, no browser. ``random`` makes the practice housing, always from a seed.
ALLOWED = {
    "__future__", "binascii", "cmath", "collections.abc", "csv", "dataclasses", "functools",
    "hashlib", "html", "itertools", "json", "math", "operator", "random", "re", "typing", "zlib",
}  # fmt: skip
COMMAND_LINE = {"argparse", "io", "sys", "pathlib"}
FORBIDDEN_CALLS = {"open", "print", "input", "exec", "eval", "compile", "__import__", "breakpoint"}

MODULES = sorted(modules().items())


def imported(tree: ast.AST) -> set[str]:
    """Every module an import statement names, wherever it stands."""
    found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are written in full"
            assert node.module is not None
            found.add(node.module)
    return found


def own(tree: ast.AST) -> set[str]:
    """The modules of the package that are imported, by their name below it."""
    names = {name for name in imported(tree) if name.partition(".")[0] == "sweepsheet"}
    return {name.partition(".")[2] or "__init__" for name in names}


def floor(module: str) -> int:
    """On which floor a module stands."""
    return ORDER.index(module.partition(".")[0])


def outside(name: str, tree: ast.Module) -> set[str]:
    """What a module imports that it must not."""
    found = {each for each in imported(tree) if each.partition(".")[0] != "sweepsheet"}
    return found - (ALLOWED | COMMAND_LINE if name == "__main__" else ALLOWED)


def forbidden(name: str, tree: ast.Module) -> set[str]:
    """What a module calls that it must not; only the command line prints."""
    found = {called for called, _ in calls(tree)} & FORBIDDEN_CALLS
    # ``re.compile`` is no ``compile``.
    found -= {"compile"} if "re" in imported(tree) else set()
    return found - ({"print"} if name == "__main__" else set())


def test_only_harmless_parts_of_the_standard_library() -> None:
    assert {name: outside(name, tree) for name, tree in MODULES if outside(name, tree)} == {}
    tops = {each.partition(".")[0] for each in ALLOWED | COMMAND_LINE}
    assert tops <= set(sys.stdlib_module_names)


def test_nothing_is_read_or_printed() -> None:
    """But by the command line, whose job it is to print."""
    assert {name: forbidden(name, tree) for name, tree in MODULES if forbidden(name, tree)} == {}


def test_nothing_is_kept_between_calls() -> None:
    """No ``global`` and no ``nonlocal``: the same job gives the same result."""
    keeping = [
        name
        for name, tree in MODULES
        for node in ast.walk(tree)
        if isinstance(node, ast.Global | ast.Nonlocal)
    ]
    assert keeping == []


def test_every_module_has_its_place_in_the_order() -> None:
    assert {name.partition(".")[0] for name, _ in MODULES} == set(ORDER)


def test_nothing_imports_what_stands_above_it() -> None:
    up = [
        f"{name} imports {other}"
        for name, tree in MODULES
        for other in own(tree)
        if floor(other) > floor(name)
    ]
    assert up == []


def test_what_computes_holds_no_sentence() -> None:
    speaking = [
        f"{name} imports {other}"
        for name, tree in MODULES
        for other in own(tree)
        if name.startswith(WITHOUT_SENTENCES) and other.startswith("words")
    ]
    assert speaking == []


def test_a_folder_s_own_file_is_a_bare_docstring() -> None:
    """So that importing a module runs that module and what it imports, and nothing else."""
    folders = [tree for name, tree in MODULES if name in ORDER and (FOLDER / name).is_dir()]
    assert len(folders) > 10
    for tree in folders:
        assert ast.get_docstring(tree)
        assert len(tree.body) == 1


def test_no_imports_in_a_circle() -> None:
    names = {name for name, _ in MODULES}
    needs = {name: own(tree) & names for name, tree in MODULES}
    ready: set[str] = set()
    while len(ready) < len(needs):
        free = {name for name, others in needs.items() if name not in ready and others <= ready}
        assert free, f"imports in a circle: {sorted(set(needs) - ready)}"
        ready |= free


def test_the_checks_find_what_they_look_for() -> None:
    """A module that breaks the rules is seen to break them."""
    bad = ast.parse("import os\nfrom sweepsheet.page import x\ndef f():\n    print(open('a'))\n")
    assert imported(bad) == {"os", "sweepsheet.page"}
    assert own(bad) == {"page"}
    assert outside("page", bad) == {"os"}
    assert forbidden("page", bad) == {"print", "open"}
