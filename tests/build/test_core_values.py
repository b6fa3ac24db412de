"""What the scripts share with the core is the core's own."""

from __future__ import annotations

from sweepsheet.job.model import ABOUT_KEYS
from sweepsheet.link.codec import SHORT
from web.build.core_values import READ_OF_LINK, SOURCE, in_js, script


def test_the_values_among_the_sources_are_of_today() -> None:
    """``python -m web.build.core_values`` writes them anew."""
    assert SOURCE.read_text("utf-8") == script()


def test_every_text_that_is_read_of_a_link_has_its_short_name() -> None:
    assert set(ABOUT_KEYS) < set(READ_OF_LINK) < set(SHORT)


def test_values_are_written_as_javascript_has_them() -> None:
    assert in_js(5) == "5"
    assert in_js(".a") == "'.a'"
    assert in_js(("a",)) == "/** @type {const} */ ([\n  'a',\n])"
    assert in_js({"a": "b"}) == "/** @type {const} */ ({\n  a: 'b',\n})"
