"""MkDocs as the host of the site: a thin adapter, and the only room that knows it from inside.

Records are checked before MkDocs touches its target, pages are handed over finished, and under
``serve`` a bad record leaves the last good pages up with the findings on top.
"""

from __future__ import annotations

import logging
from pathlib import Path
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as HostPage
from mkdocs.structure.toc import AnchorLink, TableOfContents

from generator import manual, site
from generator.pages import routes
from generator.pages.page import Page
from generator.pages.strings import say
from generator.problems import Problem, Severity, has_errors, summary

log = logging.getLogger("mkdocs.plugins.fettlebook")

NAVIGATION = (*routes.HUBS,)

SCRIPTS = ("assets/steps.js",)
"""The reader's scripts, in the theme folder; every page stands without them."""


class FettlebookPlugin(BasePlugin):  # type: ignore[type-arg,no-untyped-call]
    """Gives MkDocs the pages of the manual that lies beside its settings file."""

    def __init__(self) -> None:
        self.serving = False
        self.pages: dict[str, Page] = {}
        self.files: dict[str, str] = {}
        self.findings: list[Problem] = []

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Note whether pages are served or built; keeps this object alive between rebuilds."""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Check the records and make the pages, before the host empties its target."""
        folder = Path(config.config_file_path or "mkdocs.yml").resolve().parent
        read = manual.read(folder)
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
        else:
            made = site.make(read.kb, read.problems)
            self.pages = {routes.source_name(page.url): page for page in made.pages}
            self.files = dict(made.files)
            config.site_name = made.title
        config.extra_javascript.extend(SCRIPTS)
        config.theme.dirs.insert(0, str(manual.theme_folder()))
        config.extra["fettlebook"] = {
            "findings": self.findings,
            "say": say,
            "routes": routes,
            "has_pages": bool(self.pages),
        }
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add the finished pages and the short navigation."""
        if not self.pages:  # served, and not one good version yet
            self.pages_missing(files, config)
            return files
        hubs = {routes.source_name(routes.hub(kind)) for kind in NAVIGATION}
        hubs |= {routes.source_name(routes.HOME), routes.source_name(routes.SAFETY)}
        for source in self.pages:
            if files.get_file_from_path(source) is not None:
                raise PluginError(
                    f"docs/{source} has the address of a page made from records; rename it"
                )
            level = InclusionLevel.INCLUDED if source in hubs else InclusionLevel.NOT_IN_NAV
            files.append(File.generated(config, source, content="", inclusion=level))
        for address, text in self.files.items():
            if files.get_file_from_path(address) is not None:
                raise PluginError(f"docs/{address} has the address of a file of ours; rename it")
            files.append(File.generated(config, address, content=text))
        config.nav = self._navigation(files)
        return files

    def pages_missing(self, files: Files, config: MkDocsConfig) -> None:
        """Give the host a first page, so that a reader of a bad manual sees its findings."""
        if files.get_file_from_path("index.md") is None:
            files.append(File.generated(config, "index.md", content=say("findings.first")))

    def _navigation(self, files: Files) -> list[Any]:
        """List hubs and hand-written pages only: one with every page grows quadratically."""
        nav: list[Any] = [{say("nav.home"): routes.source_name(routes.HOME)}]
        nav += [{say(f"nav.{kind}"): routes.source_name(routes.hub(kind))} for kind in NAVIGATION]
        nav.append({say("nav.safety"): routes.source_name(routes.SAFETY)})
        written = [
            file.src_uri
            for file in files.documentation_pages()
            if file.src_uri not in self.pages and file.inclusion is not InclusionLevel.EXCLUDED
        ]
        if written:
            nav.append({say("nav.guide"): sorted(written)})
        return nav

    def on_page_markdown(
        self, markdown: str, *, page: HostPage, config: MkDocsConfig, files: Files
    ) -> str | None:
        """Give a page of ours its title and description."""
        made = self.pages.get(page.file.src_uri)
        if made is None:
            return None
        page.meta = {"title": made.title, "description": made.description}
        return ""

    def on_page_content(
        self, html: str, *, page: HostPage, config: MkDocsConfig, files: Files
    ) -> str | None:
        """Hand a page of ours over, finished, with its list of contents and its anchors."""
        made = self.pages.get(page.file.src_uri)
        if made is None:
            return None
        page.toc = TableOfContents(
            [AnchorLink(heading.text, heading.anchor, 2) for heading in made.contents]
        )
        page.present_anchor_ids = {heading.anchor for heading in made.contents}
        return made.html

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation | None:
        """Leave out "previous" and "next": hubs are not chapters."""
        for page in nav.pages:
            page.previous_page = page.next_page = None
        return nav

    def on_serve(self, server: Any, *, config: MkDocsConfig, builder: Any) -> Any:
        """Watch the records and the look, never the folder we are imported from."""
        folder = Path(config.config_file_path or "mkdocs.yml").resolve().parent
        server.watch(str(folder / manual.RECORDS))
        server.watch(str(manual.theme_folder()))
        return server
