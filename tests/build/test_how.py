"""The page that tells how it is worked out says what the core says, of all that computes."""

from __future__ import annotations

import ast
import re
import shutil
from html.parser import HTMLParser
from pathlib import Path

import pytest

import build
from tests.core.source import computing, modules
from web.build.how import docstrings, in_markup
from web.build.languages import languages, translate
from web.build.release import explained
from web.build.template import places
from web.build.trouble import TroubleError

TEMPLATE = (build.WEB / "pages" / "how.html").read_text("utf-8")
WORDS, *OTHERS = languages()
ENGLISH_PAGE = explained(translate("how.html", TEMPLATE, WORDS, [WORDS, *OTHERS]), WORDS)
LISTED = {module: names for module, *names in places(TEMPLATE, "doc")}


class Text(HTMLParser):
    """The text of a page by the id of the part it stands in, and the ids and links in it."""

    def __init__(self, page: str) -> None:
        """Read a page."""
        super().__init__()
        self.parts: dict[str, str] = {}
        self.ids: list[str] = []
        self.links: list[str] = []
        self._in = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note where a part begins."""
        named = dict(attrs)
        if place := named.get("id"):
            self.ids.append(place)
            if tag == "details":
                self._in = place
        if tag == "a" and (to := named.get("href")):
            self.links.append(to)

    def handle_endtag(self, tag: str) -> None:
        """Note where it ends."""
        if tag == "details":
            self._in = ""

    def handle_data(self, data: str) -> None:
        """Keep the text."""
        self.parts[self._in] = self.parts.get(self._in, "") + data + " "


def plain(text: str) -> str:
    """Text without the marks of code and without regard to where lines and tags break."""
    return re.sub(r"[\s`]+", "", text)


@pytest.fixture(scope="module")
def page() -> Text:
    return Text(ENGLISH_PAGE)


def test_every_module_that_computes_is_told_of() -> None:
    assert set(LISTED) == computing()
    assert len(places(TEMPLATE, "doc")) == len(LISTED), "each once"


@pytest.mark.parametrize("module", sorted(LISTED))
def test_what_is_told_is_what_the_core_says(page: Text, module: str) -> None:
    """Word for word, formulas and examples too."""
    told = plain(page.parts[f"doc-{module}"])
    for name, docstring in docstrings(module, LISTED[module]).items():
        assert plain(docstring) in told, (module, name)
        assert len(plain(docstring)) > 20


@pytest.mark.parametrize("module", sorted(LISTED))
def test_what_is_named_is_public_and_there(module: str) -> None:
    tops = {
        node.name: node
        for node in modules()[module].body
        if isinstance(node, ast.FunctionDef | ast.ClassDef)
    }
    assert set(LISTED[module]) <= set(tops)
    assert not [name for name in LISTED[module] if name.startswith("_")]


def test_links_lead_somewhere(page: Text) -> None:
    """Each heading is in the contents, each place of the page but once."""
    inside = [link[1:] for link in page.links if link.startswith("#")]
    assert inside == re.findall(r'<h2 id="(\w+)">', TEMPLATE)
    assert len(set(page.ids)) == len(page.ids)


def test_every_source_is_one_that_the_core_names() -> None:
    core = " ".join(
        Path(path).read_text("utf-8") for path in build.ROOT.glob("core/sweepsheet/**/*.py")
    )
    sources = re.findall(r"<li><b>(.+?)</b>", TEMPLATE)
    assert len(sources) > 5
    assert [source for source in sources if source not in " ".join(core.split())] == []


def test_markup_in_a_docstring_stays_text() -> None:
    assert in_markup("a < b & ``x <i> y``") == "<p>a &lt; b &amp; <code>x &lt;i&gt; y</code></p>"
    assert in_markup(">>> f('<b>')\n1") == "<pre>&gt;&gt;&gt; f(&#x27;&lt;b&gt;&#x27;)\n1</pre>"


def test_a_docstring_that_is_not_there_stops_the_build(library: Path, tmp_path: Path) -> None:
    web = shutil.copytree(build.WEB, tmp_path / "web")
    (web / "pages" / "how.html").write_text(
        TEMPLATE.replace("{{doc sweep.harmonic fit}}", "{{doc sweep.harmonic fat}}"), "utf-8"
    )
    with pytest.raises(TroubleError, match=r"sweep\.harmonic fat"):
        build.assemble(library, tmp_path / "dist", web)


def test_the_page_is_built_and_needs_no_script(dist: Path) -> None:
    """But the one that sees to the language."""
    text = (dist / "how.html").read_text("utf-8")
    assert "{{" not in text
    assert re.findall("<script.*?>", text) == ["<script>"]
    assert "m[j][i] = k[j] + h . u(a[i])" in text
