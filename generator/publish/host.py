"""What MkDocs does for a site: the theme's frames, the hand-written pages, the theme's files.

MkDocs never sees a page of records. It is told their addresses, so that it can check links from
hand-written pages, and renders the theme once for every stand-in that these pages need.
"""

from __future__ import annotations

import html
import logging
import re
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, field
from fnmatch import fnmatch
from pathlib import Path
from typing import TYPE_CHECKING, Any

from generator.pages import routes
from generator.pages.page import revision_of
from generator.pages.strings import say
from generator.publish.frame import (
    ANCHOR,
    BODY,
    DESCRIPTION,
    ENTRY,
    NAME,
    TITLE,
    BadFrame,
    Stand,
)

if TYPE_CHECKING:
    import jinja2
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.files import File, Files
    from mkdocs.structure.nav import Navigation
    from mkdocs.structure.pages import Page as HostPage

log = logging.getLogger("mkdocs.plugins.fettlebook")

PLUGIN = "fettlebook"

LISTED = (routes.HOME, *(routes.hub(kind) for kind in routes.HUBS), routes.SAFETY)
"""Pages of records in the navigation; one that lists every page grows quadratically."""

NOT_NEEDED = ("assets/javascripts/*.map", "assets/stylesheets/*.map", "sitemap.xml*")
OF_SEARCH = ("assets/javascripts/lunr/*", "assets/javascripts/workers/search.*")
OF_STYLE = ("assets/stylesheets/*", "assets/javascripts/*")
"""Files of the theme that our pages do without: its own search, style sheets and scripts."""


@dataclass
class Asked:
    """What is asked of the host, and what it gave.

    Parameters
    ----------
    title : str
        The manual's name.
    addresses : collection of str
        Every page and file that is not the host's.
    stands : collection of Stand
        The stand-ins that the pages need.
    frames : mapping
        Stand-in to its HTML.
    links : mapping
        Address and anchor, on a page of records, to the link of a hand-written page that leads
        there.
    """

    title: str
    addresses: Collection[str]
    stands: Collection[Stand]
    frames: dict[Stand, str] = field(default_factory=dict)
    links: dict[tuple[str, str], str] = field(default_factory=dict)


class AddressTaken(ValueError):
    """A hand-written file has the address of one of ours."""


def announce(asked: Asked, files: Files, config: MkDocsConfig) -> None:
    """Tell the host the addresses, and take the theme's leftovers away.

    Raises
    ------
    AddressTaken
        If a hand-written page or file has one of them.
    """
    from mkdocs.structure.files import File, InclusionLevel

    _leave_out(files, config)
    taken = {file.dest_uri: file.src_uri for file in files}
    for address in asked.addresses:
        if address in taken:
            raise AddressTaken(
                f"docs/{taken[address]} has the address of a page made from records; rename it"
            )
        level = InclusionLevel.INCLUDED
        files.append(File.generated(config, address, content="", inclusion=level))
    config.nav = _navigation(files)


def _leave_out(files: Files, config: MkDocsConfig) -> None:
    patterns = list(NOT_NEEDED)
    if not any(name.split("/")[-1] == "search" for name in config.plugins):
        patterns += OF_SEARCH
    if not config.theme.custom_dir:
        patterns += OF_STYLE
    docs = Path(config.docs_dir)
    for file in list(files):
        of_theme = file.generated_by is None and Path(file.src_dir or docs) != docs
        if of_theme and any(fnmatch(file.src_uri, pattern) for pattern in patterns):
            files.remove(file)
    config.theme.static_templates -= {"sitemap.xml"}


def _navigation(files: Files) -> list[Any]:
    nav: list[Any] = [{say("nav.home"): routes.HOME}]
    nav += [{say(f"nav.{kind}"): routes.hub(kind)} for kind in routes.HUBS]
    nav.append({say("nav.safety"): routes.SAFETY})
    written = sorted(file.src_uri for file in files.documentation_pages())
    return [*nav, {say("nav.guide"): written}] if written else nav


def collect(
    asked: Asked, env: jinja2.Environment, nav: Navigation, files: Files, config: MkDocsConfig
) -> None:
    """Render the frames and note the links into our pages, and take our addresses back."""
    asked.links = _links(asked, files)
    for stand in sorted(asked.stands):
        page = _stand_in(stand, files, config)
        asked.frames[stand] = _rendered(page, env, nav, files, config)
        page.active = False
    for address in asked.addresses:
        file = files.get_file_from_path(address)
        if file is not None:
            files.remove(file)


def _links(asked: Asked, files: Files) -> dict[tuple[str, str], str]:
    ours = frozenset(asked.addresses)
    return {
        (target.dest_uri, anchor): f"docs/{file.src_uri} contains a link '{link}'"
        for file in files.documentation_pages()
        if file.page is not None
        for target, anchors in (file.page.links_to_anchors or {}).items()
        if target.dest_uri in ours
        for anchor, link in anchors.items()
    }


def revision_of_written(content: str) -> str:
    """Give the revision of a hand-written page; "" for a stand-in, whose pages have their own."""
    return "" if BODY in content else revision_of(content)


def _stand_in(stand: Stand, files: Files, config: MkDocsConfig) -> HostPage:
    from mkdocs.structure.files import File
    from mkdocs.structure.pages import Page
    from mkdocs.structure.toc import AnchorLink, TableOfContents

    file: File | None = files.get_file_from_path(stand.place)
    if file is None:
        name = f"{stand.place.lstrip('/')}{NAME}.html"
        file = File.generated(config, name, content="")
    page = file.page or Page(TITLE, file, config)
    page.markdown, page.content = "", BODY
    page.meta = {"title": TITLE, "description": DESCRIPTION}
    entries = [AnchorLink(ENTRY, ANCHOR, 2)] if stand.contents else []
    page.toc = TableOfContents(entries)
    page.active = True
    return page


def _rendered(
    page: HostPage, env: jinja2.Environment, nav: Navigation, files: Files, config: MkDocsConfig
) -> str:
    from mkdocs.commands.build import get_context

    context = get_context(nav, files, config, page)
    return str(env.get_template("main.html").render(context))


def dead_anchors(
    links: Mapping[tuple[str, str], str], page_html: Callable[[str], str]
) -> Iterable[str]:
    """Give a message for each link of a hand-written page to an anchor that is not there.

    Parameters
    ----------
    links : mapping
        As in :class:`Asked`.
    page_html : callable
        Gives a page's own content by its address, "" for a file that is no page.
    """
    for (address, anchor), link in sorted(links.items()):
        if anchor not in anchors_of(page_html(address)):
            yield f"{link}, but the page '{address}' does not contain an anchor '#{anchor}'"


def anchors_of(page_html: str) -> set[str]:
    """Give every anchor of a page."""
    return {html.unescape(id_) for id_ in re.findall(r'\bid="([^"]*)"', page_html)}


class NotHosted(RuntimeError):
    """The host could not make its part; its words say why."""


def run(settings_file: Path, folder: Path, asked: Asked) -> None:
    """Let MkDocs make its part of a site.

    Parameters
    ----------
    settings_file : Path
        The manual's mkdocs.yml.
    folder : Path
        Where the host puts its files; it is emptied first.
    asked : Asked
        What is wanted; the frames and the links are filled in.

    Raises
    ------
    NotHosted
        If the host reports a fault, or warns of anything.
    """
    from mkdocs.commands.build import build
    from mkdocs.config import load_config
    from mkdocs.exceptions import Abort, MkDocsException

    counter = _Counter()
    logger = logging.getLogger("mkdocs")
    logger.addHandler(counter)
    try:
        config = load_config(str(settings_file), site_dir=str(folder))
        plugin = config.plugins.get(PLUGIN)
        if plugin is None:
            raise NotHosted(f"{settings_file.name} does not list {PLUGIN} among its plugins")
        plugin.host_only(asked)
        config.plugins.on_startup(command="build", dirty=False)
        try:
            build(config)
        finally:
            config.plugins.on_shutdown()
    except (Abort, MkDocsException, BadFrame) as fault:
        # Its own stop carries no words, its log does.
        words = "; ".join(counter.messages[:3]) or str(fault) or "the host stopped"
        raise NotHosted(words) from fault
    finally:
        logger.removeHandler(counter)
    if counter.messages:
        raise NotHosted("; ".join(counter.messages[:3]))


class _Counter(logging.Handler):
    """Collects the host's warnings, which its own command alone would stop at."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Keep the message."""
        self.messages.append(record.getMessage())
