"""Elements of SVG as text, with everything escaped: what a person typed never becomes markup."""

from __future__ import annotations

from html import escape

Attribute = str | float | int


def element(name: str, *children: str, **attributes: Attribute) -> str:
    """One element. Underscores in attribute names stand for hyphens; children are markup already.

    >>> element("circle", cx=1.0, cy=2.25, r=3)
    '<circle cx="1" cy="2.25" r="3"/>'
    >>> element("text", text("<b> & c"), text_anchor="end")
    '<text text-anchor="end">&lt;b&gt; &amp; c</text>'
    """
    listed = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{escape(_shown(value))}"'
        for key, value in attributes.items()
    )
    inner = "".join(children)
    return f"<{name}{listed}>{inner}</{name}>" if inner else f"<{name}{listed}/>"


def text(content: str) -> str:
    """A text node."""
    return escape(content)


def _shown(value: Attribute) -> str:
    """A number to a hundredth of a unit, without trailing zeros or minus zero."""
    if isinstance(value, str):
        return value
    # Adding nothing turns minus zero into zero.
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")
