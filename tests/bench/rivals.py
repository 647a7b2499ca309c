"""What a user would pick instead, on pages of one size, and the floors nobody gets under."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path
from random import Random

from tests.bench.measure import Cost, Failed, python, run

PAGE_BYTES = 4600
"""Of Markdown in every page: a table, an admonition, steps, a figure as a file, and prose."""

SECTION = 250
"""Pages in a folder; the navigation lists the folders alone."""

PROSE = """
sensor winding reading meter ohm volt crank cable ground plug part engine test when warm cold
measure between pins and compare with the value then turn off disconnect behind under before
"""

FIGURE = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 300 180"><path d="{}"/></svg>\n'

MATERIAL = """\
site_name: Bench
theme: {{name: material, font: false}}
use_directory_urls: false
plugins: [search]
markdown_extensions: [admonition, tables]
validation: {{nav: {{omitted_files: ignore}}}}
nav: [{nav}]
"""

HUGO = {
    "hugo.toml": """\
baseURL = "http://localhost/"
title = "Bench"
disableKinds = ["taxonomy", "term", "RSS", "sitemap"]
[outputs]
home = ["HTML", "JSON"]
""",
    "layouts/baseof.html": """\
<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{{ .Title }}</title></head><body>
<nav>{{ range site.Sections }}<a href="{{ .RelPermalink }}">{{ .Title }}</a>{{ end }}</nav>
<aside>{{ .TableOfContents }}</aside><main>{{ block "main" . }}{{ .Content }}{{ end }}</main>
</body></html>
""",
    "layouts/single.html": '{{ define "main" }}<h1>{{ .Title }}</h1>{{ .Content }}{{ end }}\n',
    "layouts/list.html": '{{ define "main" }}<ul>{{ range .Pages }}'
    '<li><a href="{{ .RelPermalink }}">{{ .Title }}</a></li>{{ end }}</ul>{{ end }}\n',
    "layouts/home.html": '{{ define "main" }}{{ .Content }}{{ end }}\n',
    "layouts/home.json": '[{{ range $i, $p := site.RegularPages }}{{ if $i }},{{ end }}{{ dict'
    ' "title" $p.Title "url" $p.RelPermalink "text" $p.Plain | jsonify }}{{ end }}]\n',
}  # fmt: skip


def material(folder: Path, pages: int) -> Cost:
    """Build pages with MkDocs and its theme, search on, the navigation slim."""
    shutil.rmtree(folder, ignore_errors=True)
    sections = _pages(folder / "docs", pages, "index.md")
    (folder / "docs" / "index.md").write_text("# Home\n")
    nav = ", ".join(["index.md", *(f"{name}/index.md" for name in sections)])
    (folder / "mkdocs.yml").write_text(MATERIAL.format(nav=nav))
    return run(python("-m", "mkdocs", "build", "-q", "-f", str(folder / "mkdocs.yml")), folder)


def hugo(folder: Path, pages: int) -> Cost:
    """Build the same pages with Hugo, with a dump of all text for a search."""
    program = shutil.which("hugo", path=str(Path(sys.executable).parent)) or shutil.which("hugo")
    if program is None:
        raise Failed("hugo is not installed; make bench installs it")
    shutil.rmtree(folder, ignore_errors=True)
    for name, text in HUGO.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    _pages(folder / "content", pages, "_index.md")
    return run([program, "--quiet", "-s", str(folder)], folder)


def compose(folder: Path) -> Cost:
    """Compose every YAML file of a folder with the C parser."""
    code = (
        "import sys, pathlib, yaml\n"
        "for path in pathlib.Path(sys.argv[1]).rglob('*.yml'):\n"
        "    yaml.compose(path.read_bytes(), Loader=yaml.CSafeLoader)\n"
    )
    return run(python("-c", code, str(folder)), folder.parent)


def write(site: Path, to: Path) -> Cost:
    """Read every file of a site and write it elsewhere."""
    code = (
        "import sys, pathlib\n"
        "site, to = map(pathlib.Path, sys.argv[1:])\n"
        "for path in site.rglob('*'):\n"
        "    if path.is_file():\n"
        "        other = to / path.relative_to(site)\n"
        "        other.parent.mkdir(parents=True, exist_ok=True)\n"
        "        other.write_bytes(path.read_bytes())\n"
    )
    shutil.rmtree(to, ignore_errors=True)
    cost = run(python("-c", code, str(site), str(to)), site.parent)
    shutil.rmtree(to)
    return cost


def _pages(folder: Path, count: int, index: str) -> list[str]:
    """Write so many pages and their figures; give the sections."""
    sections = []
    for number in range(count):
        name = f"section-{number // SECTION}"
        if name not in sections:
            sections.append(name)
            (folder / name).mkdir(parents=True)
            (folder / name / index).write_text(f"---\ntitle: {name}\n---\n# {name}\n")
        (folder / name / f"page-{number}.md").write_text(page(number))
        points = " ".join(f"L{x} {(x * number) % 180}" for x in range(0, 300, 3))
        (folder / name / f"figure-{number}.svg").write_text(FIGURE.format("M0 0 " + points))
    return sections


def page(number: int) -> str:
    """Give a page of Markdown, the same one every time."""
    random = Random(number)

    def words(count: int) -> str:
        return " ".join(random.choices(PROSE.split(), k=count)).capitalize() + "."

    rows = "".join(f"| {n * 10} °C | {n * 37} | {n * 41} |\n" for n in range(1, 13))
    steps = "".join(f"{n}. {words(14)}\n" for n in range(1, 9))
    text = (
        f"---\ntitle: Page {number}\n---\n\n"
        f"## Values\n\n| At | Low | High |\n|---|---|---|\n{rows}\n"
        f"![Figure](figure-{number}.svg)\n\n"
        f"## Steps\n\n!!! warning\n    {words(20)}\n\n{steps}\n## More\n\n"
    )
    while len(text.encode()) < PAGE_BYTES:
        text += f"{words(12)} **{words(2)}** {words(20)}\n\n"
    return text.encode()[: PAGE_BYTES - 1].decode("utf-8", "ignore") + "\n"
