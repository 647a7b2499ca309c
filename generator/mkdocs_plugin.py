"""MkDocs as the host of the site: a thin adapter.

Records are checked before MkDocs touches its target; it makes the frames and the hand-written
pages, and the pages of records are filled in when it is done. Under ``serve`` a bad record leaves
the last good pages up with the findings on top.
"""

from __future__ import annotations

import logging
from pathlib import Path
from typing import Any

import jinja2
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation

from generator import manual, site
from generator.memory import keep
from generator.pages import routes
from generator.pages.page import Page
from generator.pages.policy import POLICY
from generator.pages.strings import say
from generator.problems import Problem, Severity, has_errors, summary
from generator.publish import complete, finish, host, joined
from generator.publish.frame import BadFrame, stand_of
from generator.publish.notes import Notes
from generator.publish.tables import labelled
from generator.publish.target import Folder

log = logging.getLogger("mkdocs.plugins.fettlebook")


class FettlebookPlugin(BasePlugin):  # type: ignore[type-arg,no-untyped-call]
    """Gives MkDocs the pages of the manual that lies beside its settings file."""

    def __init__(self) -> None:
        self.serving = False
        self.asked: host.Asked | None = None
        self.pages: dict[str, Page] = {}
        self.texts: dict[str, str] = {}
        self.findings: list[Problem] = []
        self.nav: Navigation | None = None
        self.hosted_only = False
        # What one save does not change is not made again at the next.
        self.kept = keep.InProcess()

    def host_only(self, asked: host.Asked) -> None:
        """Take the pages for checked and made elsewhere: only what the host makes is wanted."""
        self.asked = asked
        self.hosted_only = True

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Note whether pages are served or built; keeps this object alive between rebuilds."""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Check the records and make the pages, before the host empties its target."""
        if not self.hosted_only:
            self._read(Path(config.config_file_path or "mkdocs.yml").resolve().parent)
        short_name = config.site_name
        if self.asked is not None:
            config.site_name = self.asked.title
        config.extra_javascript.append(joined.READER)
        config.theme.dirs.insert(0, str(manual.theme_folder()))
        config.extra["fettlebook"] = {
            "findings": self.findings,
            "say": say,
            "short_name": short_name,
            "routes": routes,
            "revision": host.revision_of_written,
            "has_pages": self.asked is not None,
            # The host's own script, which refreshes served pages, stands in the page itself.
            "policy": "" if self.serving else POLICY,
        }
        return config

    def _read(self, folder: Path) -> None:
        read = manual.read(folder, None, self.kept if self.serving else None)
        for finding in read.problems:
            # A warning of ours stops no build, and a strict host stops at any of its log.
            level = logging.ERROR if finding.severity is Severity.ERROR else logging.INFO
            if not (self.serving and self.pages):
                place = f"{finding.path}:{finding.line}:{finding.column}"
                log.log(level, "%s: %s: %s", place, finding.code, finding.message)
        self.findings = []
        if read.kb is None or has_errors(read.problems):
            if not self.serving:
                raise PluginError(f"the records have errors: {summary(read.problems)}")
            self.findings = read.problems
            log.error("the records have errors: %s", summary(read.problems))
            return
        made = site.make(read.kb, read.problems, preview=self.serving)
        read.keep()
        self.pages = {page.url: page for page in made.pages}
        self.texts = dict(made.files)
        stands = {stand_of(p.url, bool(p.contents), host.LISTED) for p in made.pages}
        self.asked = host.Asked(made.title, [*self.pages, *self.texts], stands)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Tell the host the addresses of our pages, and the short navigation."""
        joined.join(files, config)
        if self.asked is None:  # served, and not one good version yet
            if files.get_file_from_path("index.md") is None:
                files.append(File.generated(config, "index.md", content=say("findings.first")))
            return files
        try:
            host.announce(self.asked, files, config)
        except host.AddressTaken as fault:
            raise PluginError(str(fault)) from None
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation | None:
        """Leave out "previous" and "next": hubs are not chapters."""
        self.nav = nav
        for page in nav.pages:
            page.previous_page = page.next_page = None
        return nav

    def on_page_content(self, html: str, **_: Any) -> str:
        """Name the columns of a hand-written page's tables in their cells."""
        return labelled(html)

    def on_env(
        self, env: jinja2.Environment, *, config: MkDocsConfig, files: Files
    ) -> jinja2.Environment | None:
        """Render the frames, once for all pages."""
        if self.asked is not None and self.nav is not None:
            host.collect(self.asked, env, self.nav, files, config)
            if not self.hosted_only:
                self._look_at_links(config)
        return env

    def _look_at_links(self, config: MkDocsConfig) -> None:
        assert self.asked is not None
        texts = {address: page.html for address, page in self.pages.items()}
        for message in host.dead_anchors(self.asked.links, lambda address: texts.get(address, "")):
            log.log(config.validation.links.anchors, message)

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Fill our pages into the frames, and finish the whole site."""
        if self.asked is None or self.hosted_only:
            return
        target = Folder(Path(config.site_dir))
        try:
            shells = complete.shells(self.asked.frames, target.files())
        except BadFrame as fault:
            raise PluginError(str(fault)) from None
        # Nobody takes a preview along: packing it would only make the author wait.
        steps = () if self.serving else finish.ON_FILES
        ours = complete.filled(shells, self.pages.values(), self.texts)
        complete.lay_out(target, shells, ours, Notes(), steps)

    def on_serve(self, server: Any, *, config: MkDocsConfig, builder: Any) -> Any:
        """Watch the records and the look, never the folder we are imported from."""
        folder = Path(config.config_file_path or "mkdocs.yml").resolve().parent
        server.watch(str(folder / manual.RECORDS))
        server.watch(str(manual.theme_folder()))
        return server
