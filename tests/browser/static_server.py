"""A plain web server for a built site, as a shop would have: files, and 404 for the rest."""

from __future__ import annotations

import gzip
import io
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any, ClassVar
from urllib.parse import urlsplit


class StaticServer:
    """Serves a folder on this machine alone, at the root or under a path.

    Stopping it is how a test goes without a signal: a browser's own offline switch does not
    reach its service worker. Started again it keeps its port, so the origin stays the same.

    Parameters
    ----------
    folder : Path
        The built site.
    prefix : str
        Where it appears, with a slash at both ends; every address outside gives 404.
    packed : bool
        Whether text is sent packed, as most hosts do.
    """

    origins: ClassVar[set[str]] = set()
    """Every origin a server of ours has had in this run."""

    def __init__(self, folder: Path, prefix: str = "/", packed: bool = False) -> None:
        self.folder = folder
        self.prefix = prefix
        self.packed = packed
        self._port = 0
        self._server: ThreadingHTTPServer | None = None

    @property
    def origin(self) -> str:
        """Give scheme, host and port."""
        return f"http://127.0.0.1:{self._port}"

    def url(self, path: str = "index.html") -> str:
        """Give the address of a page by its path in the site."""
        return f"{self.origin}{self.prefix}{path}"

    def start(self) -> None:
        """Begin to serve."""
        kind = _Packing if self.packed else _Handler
        handler = partial(kind, prefix=self.prefix, directory=str(self.folder))
        self._server = ThreadingHTTPServer(("127.0.0.1", self._port), handler)
        self._server.daemon_threads = True
        self._port = self._server.server_address[1]
        self.origins.add(self.origin)
        Thread(target=self._server.serve_forever, args=(0.05,), daemon=True).start()

    def stop(self) -> None:
        """Take the site off the air; harmless if it is off already."""
        if self._server is not None:
            self._server.shutdown()
            self._server.server_close()
            self._server = None


class _Handler(SimpleHTTPRequestHandler):
    extensions_map = {  # noqa: RUF012  # the base class says so
        **SimpleHTTPRequestHandler.extensions_map,
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".webmanifest": "application/manifest+json",
    }

    def __init__(self, *arguments: Any, prefix: str, **more: Any) -> None:
        self.prefix = prefix  # before the base class, which answers while it is being made
        super().__init__(*arguments, **more)

    def translate_path(self, path: str) -> str:
        """Take the prefix off; what lies outside it does not exist."""
        inside = urlsplit(path).path
        if not inside.startswith(self.prefix):
            return str(Path(self.directory) / "no such file")
        return super().translate_path("/" + inside[len(self.prefix) :])

    def list_directory(self, path: Any) -> None:
        """Refuse to list: a link that needs a listing is broken."""
        self.send_error(404)

    def end_headers(self) -> None:
        """Have the browser ask again each time, so that no test sees a stale file."""
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()

    def log_message(self, format: str, *arguments: Any) -> None:
        """Keep quiet."""


class _Packing(_Handler):
    texts = (".html", ".js", ".css", ".json", ".svg")

    def send_head(self) -> Any:
        """Send the head of a text that is packed, or of any other file as it is."""
        path = Path(self.translate_path(self.path))
        takes = "gzip" in self.headers.get("Accept-Encoding", "")
        if not (takes and path.suffix in self.texts and path.is_file()):
            return super().send_head()
        content = gzip.compress(path.read_bytes())
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        return io.BytesIO(content)
