"""The folder on a plain host: any sub-folder, and types that nobody set for it."""

from __future__ import annotations

import mimetypes
import os
import shutil
import threading
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from typing import TYPE_CHECKING
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from tests.web.page import wait_for_offline, wait_for_python
from tests.web.test_page import type_worksheet

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import BrowserContext

pytestmark = pytest.mark.kept

# With a space and a letter beyond ASCII, which browsers write otherwise than folders do.
FOLDER = "the shop/gearbox é"
HEADLINE = "3.4 thou off, toward 4 o'clock (TIR 6.7 thou)"


class BareDistance(SimpleHTTPRequestHandler):
    """Python's own file server with the table of types that comes with Python, and no other."""

    types = mimetypes.MimeTypes()

    def guess_type(self, path: str | os.PathLike[str]) -> str:
        """Give the type by the end of the name."""
        return self.types.guess_type(str(path))[0] or "application/octet-stream"

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the base's own name
        """Keep the terminal for what matters."""


@pytest.fixture
def plain(dist: Path, tmp_path: Path) -> Iterator[tuple[ThreadingHTTPServer, str]]:
    """A plain host with the page in a sub-folder; gives it and the page's address."""
    shutil.copytree(dist, tmp_path / FOLDER)
    handler = partial(BareDistance, directory=str(tmp_path))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as host:
        thread = threading.Thread(target=host.serve_forever, args=(0.05,))
        thread.start()
        yield host, f"http://127.0.0.1:{host.server_port}/{quote(FOLDER)}/"
        host.shutdown()
        thread.join()


def test_copied_to_any_sub_folder_of_a_plain_host_it_works_and_is_kept(
    context: BrowserContext, plain: tuple[ThreadingHTTPServer, str]
) -> None:
    host, address = plain
    page = context.new_page()
    page.goto(address)
    wait_for_python(page)
    wait_for_offline(page)
    host.shutdown()
    host.server_close()
    page.reload()
    wait_for_python(page)
    type_worksheet(page)
    expect(page.locator("#headline")).to_have_text(HEADLINE)
