"""Folds away what the first picture of the main page does without.

The closed parts of the form hold most of its fields. As templates they are neither laid out nor
made ready for it, which is much of the work before the first picture; ``rest-of-form.js`` puts them
in after that. Closed parts without a field stay as they are, and so do those marked ``data-whole``,
such as the cautions, which are to be read whatever becomes of the scripts.
"""

from __future__ import annotations

import re

from web.build.trouble import TroubleError

TAG = re.compile(r"<(/?)(details|template)\b([^>]*)>")
FIELD = re.compile(r"<(?:input|select|textarea|button)\b")
HEAD = "</summary>"


def fold(page: str) -> str:
    """Put what stands in the outermost closed parts that hold fields into templates."""
    folded, end = [], 0
    for start, stop in closed_parts(page):
        head = page.index(HEAD, start, stop) + len(HEAD)
        if FIELD.search(page, head, stop):
            within = f"<template data-folded>{page[head:stop]}</template>"
            folded += [page[end:head], within]
            end = stop
    return "".join([*folded, page[end:]])


def closed_parts(page: str) -> list[tuple[int, int]]:
    """Find where the outermost closed parts begin, and where their end tags begin.

    What stands in a template is inert already.
    """
    parts: list[tuple[int, int]] = []
    opened: list[tuple[str, int, bool]] = []
    for tag in TAG.finditer(page):
        ends, name, attributes = tag.groups()
        if not ends:
            is_drawn = name == "details" and re.search(r" (?:open|data-whole)\b", attributes)
            opened.append((name, tag.start(), bool(is_drawn)))
            continue
        if not opened or opened[-1][0] != name:
            raise TroubleError(f"A {name} ends that has not begun.")
        _, start, is_drawn = opened.pop()
        if name == "details" and not is_drawn and all(outer for *_, outer in opened):
            parts.append((start, tag.start()))
    return parts
