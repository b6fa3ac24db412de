"""Puts the core's own docstrings into how.html, so that page and program can't drift apart.

Of a module its own docstring is shown, and those of the functions and classes named with it.
"""

from __future__ import annotations

import ast
import re
from html import escape

from web.build.core import FOLDER
from web.build.template import fill

CODE = re.compile(r"``(.+?)``")
HEADING = re.compile(r'<h2 id="(\w+)">(.+?)</h2>')


def docstrings(module: str, names: list[str]) -> dict[str, str]:
    """Read the docstrings of a module (under "") and of things in it, without importing it."""
    tree = ast.parse((FOLDER / "sweepsheet" / f"{module.replace('.', '/')}.py").read_text("utf-8"))
    found: dict[str, ast.Module | ast.FunctionDef | ast.ClassDef] = {"": tree}
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            found[node.name] = node
    told = {}
    for name in ["", *names]:
        text = ast.get_docstring(found[name]) if name in found else None
        if not text:
            raise LookupError(f"how.html wants the docstring of {module} {name}, and there is none")
        told[name] = text
    return told


def in_markup(docstring: str) -> str:
    """Turn a docstring into paragraphs and examples, with everything escaped."""
    parts = []
    for block in re.split(r"\n\s*\n", docstring):
        if block.lstrip().startswith(">>>"):
            parts.append(f"<pre>{escape(block)}</pre>")
        else:
            text = escape(" ".join(block.split()), quote=False)
            parts.append("<p>" + CODE.sub(r"<code>\1</code>", text) + "</p>")
    return "\n".join(parts)


def document(module: str, names: list[str], own_words: str) -> str:
    """Show a module's docstring and those of the things named, which are English on every page."""
    told = docstrings(module, names)
    parts = [in_markup(told.pop(""))]
    parts += [f"<h3><code>{name}</code></h3>\n{in_markup(text)}" for name, text in told.items()]
    summary = f"<summary>{escape(own_words, quote=False)} <code>{module}</code></summary>"
    opening = [f'<details class="more" id="doc-{module}">', summary, '<div lang="en">']
    return "\n".join([*opening, *parts, "</div>", "</details>"])


def fill_how(page: str, *, contents: str, own_words: str) -> str:
    """Fill in the docstrings and the contents, with what is said above them."""
    links = "\n".join(f'<a href="#{place}">{title}</a>' for place, title in HEADING.findall(page))
    title = escape(contents, quote=False)
    listed = (
        f'<details class="more">\n<summary>{title}</summary>\n<nav>\n{links}\n</nav>\n</details>'
    )
    return fill(
        page,
        {
            "contents": lambda: listed,
            "doc": lambda module, *names: document(module, list(names), own_words),
        },
    )
