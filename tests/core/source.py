"""The core's own source, for the tests that read it."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

import sweepsheet

FOLDER = Path(sweepsheet.__file__).parent


@cache
def modules() -> dict[str, ast.Module]:
    """Every module of the package, by its name below it, parsed; folders by their own name."""
    return {
        name_of(path): ast.parse(path.read_text(encoding="utf-8"), filename=path.name)
        for path in sorted(FOLDER.rglob("*.py"))
    }


def name_of(path: Path) -> str:
    """``maths.vector``; the folder ``maths`` for what stands in its ``__init__``."""
    parts = path.relative_to(FOLDER).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" and len(parts) > 1 else parts)


def computing() -> set[str]:
    """Every module that works something out, and the one that tells a person what to do by it."""
    folders = ("maths.", "sweep.", "alignment.", "remedy.")
    others = {"job.sag", "job.positions", "findings.reach", "findings.advice", "practice.housing"}
    others |= {"practice.acts", "practice.lengths"}
    asked = {"picture.request", "picture.film_request"}
    others |= {name for name in modules() if name.startswith("picture.")} - asked
    others |= {"findings.order", "memory.together", "memory.usual"}
    return {name for name in modules() if name.startswith(folders)} | others


def calls(tree: ast.AST) -> list[tuple[str, ast.Call]]:
    """Every call with the last part of the name that is called."""
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            if isinstance(node.func, ast.Attribute):
                found.append((node.func.attr, node))
            elif isinstance(node.func, ast.Name):
                found.append((node.func.id, node))
    return found


def literals(node: ast.AST | None) -> list[str]:
    """The strings an argument can be: a literal, or either arm of an ``if`` expression."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return [node.value]
    if isinstance(node, ast.IfExp):
        return literals(node.body) + literals(node.orelse)
    return []


def strings(tree: ast.AST) -> set[str]:
    """Every string literal but the parts of f-strings and the docstrings."""
    inside = {
        id(part)
        for node in ast.walk(tree)
        if isinstance(node, ast.JoinedStr)
        for part in node.values
    }
    docs = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    return {
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant)
        and isinstance(node.value, str)
        and id(node) not in inside | docs
    }


def prefixes(tree: ast.AST) -> set[str]:
    """How keys begin that are put together: ``f"side.{n}"``, ``f"pilot-{v}"``, ``"unit." + x``."""
    found: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr) and node.values:
            found.update(text for text in literals(node.values[0]) if text.endswith((".", "-")))
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
            found.update(text for text in literals(node.left) if text.endswith("."))
    return found
