"""Packs and the folder: what a reader takes along is the site, byte by byte, made once."""

from __future__ import annotations

import gzip
import hashlib
import io
import json
import re
import zipfile
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.pages import routes
from generator.publish import folder, packs
from generator.publish.files import Made
from generator.publish.notes import Notes
from tests.demonstration import ROOT
from tests.site.links import crawl

Bytes = dict[str, bytes]

SITE: Bytes = {
    "index.html": b"<title>Home - Manual</title>hello",
    "safety.html": b"<title>Safety &amp; sense - Manual</title>",
    "tests/coil.html": b"<title>Coil - rest - Manual</title>" + b"ohm " * 500,
    "tests/plug.html": b"no title",
    "assets/look.css": b"body{}",
    "assets/Not a section/x.png": bytes(range(256)),
    "Prüfen/a b.html": "<title>Prüfen - Manual</title>".encode(),
    "worker.js": b"// worker",
    "offline/index.html": b"<title>Take it - Manual</title>",
    routes.CAUTIONS: b'{"tests/coil.html":"abc","safety.html":"def"}',
}


def finished(site: Bytes, notes: Notes | None = None) -> dict[str, Made]:
    """Do both steps over a site."""
    notes = notes or Notes()
    found = {address: Made.of(content) for address, content in site.items()}
    return dict(folder.step(packs.step(found, notes), notes))


def read(found: dict[str, Made]) -> Bytes:
    """Give every file's bytes."""
    return {address: made.read() for address, made in found.items()}


def manifest_of(found: Bytes) -> dict[str, Any]:
    """Give the manifest."""
    manifest: dict[str, Any] = json.loads(found[packs.MANIFEST])
    return manifest


def inflated(found: Bytes) -> Bytes:
    """Cut every member out as the manifest says, and inflate it with the standard library."""
    out = {}
    for pack in manifest_of(found)["packs"]:
        start = 0
        for address, digest, length in pack["members"]:
            out[address] = gzip.decompress(found[pack["file"]][start : start + length])
            assert hashlib.sha256(out[address]).hexdigest().startswith(digest)
            start += length
        assert start == len(found[pack["file"]])
        assert hashlib.sha256(found[pack["file"]]).hexdigest() == pack["digest"]
        assert pack["digest"][:20] in pack["file"]
    return out


def taken(site: Bytes) -> Bytes:
    """Give what of a site a reader takes along."""
    left = {"worker.js", routes.CAUTIONS}
    return {address: content for address, content in site.items() if address not in left}


def test_the_packs_hold_every_file_of_the_site_and_nothing_else() -> None:
    """Each member, cut out and inflated by itself, is the file that the manifest names."""
    found = read(finished(SITE))
    assert inflated(found) == taken(SITE)
    assert manifest_of(found)["bytes"] == sum(
        len(content) for address, content in found.items() if address.endswith(".pack")
    )
    assert routes.CAUTIONS not in found


def test_the_manifest_knows_titles_and_cautions_of_pages() -> None:
    """Titles lose the manual's name and nothing of their own; cautions stand beside them."""
    assert manifest_of(read(finished(SITE)))["pages"] == {
        "Prüfen/a b.html": ["Prüfen"],
        "index.html": ["Home"],
        "offline/index.html": ["Take it"],
        "safety.html": ["Safety & sense", "def"],
        "tests/coil.html": ["Coil - rest", "abc"],
        "tests/plug.html": [""],
    }


def test_the_version_is_the_manifests_and_changes_with_anything() -> None:
    """A page, a title or a caution that changes gives another version; nothing else does."""
    before = read(finished(SITE))
    version = json.loads(before[packs.VERSION])
    assert version["version"] == manifest_of(before)["version"]
    assert version["bytes"] == manifest_of(before)["bytes"]
    for change in (
        {"tests/coil.html": b"<title>Coil - Manual</title>"},
        {"assets/look.css": b"body{margin:0}"},
        {routes.CAUTIONS: b'{"tests/coil.html":"abd","safety.html":"def"}'},
    ):
        after = json.loads(read(finished({**SITE, **change}))[packs.VERSION])
        assert after["version"] != version["version"]
    same = json.loads(read(finished(dict(reversed(SITE.items()))))[packs.VERSION])
    assert same == version


def test_the_same_site_gives_the_same_bytes() -> None:
    """Neither the clock nor the order of files gets into a pack or the folder."""
    assert read(finished(SITE)) == read(finished(dict(reversed(SITE.items()))))


def test_a_member_is_a_plain_gzip_file_without_a_date() -> None:
    """The head is that of RFC 1952, 2.3: magic, deflate, no flags, no time."""
    member = packs.member_of(b"ohm " * 500)
    assert member[:8] == bytes.fromhex("1f8b080000000000")
    assert gzip.decompress(member) == b"ohm " * 500
    assert len(member) < 100


def test_the_folder_is_the_site_in_a_zip_that_others_can_read() -> None:
    """The standard library reads it, finds every checksum right, and the day of no clock."""
    content = read(finished(SITE))[routes.FOLDER]
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        assert archive.testzip() is None
        found = {info.filename: archive.read(info) for info in archive.infolist()}
        assert {info.date_time for info in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert {info.external_attr >> 16 for info in archive.infolist()} == {0o100644}
        assert archive.namelist() == sorted(archive.namelist(), key=str.encode)
    assert found == {f"manual/{address}": content for address, content in taken(SITE).items()}


def test_a_manual_beyond_a_plain_zip_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """More files than the format counts give an error, never a broken file."""
    monkeypatch.setattr(folder, "MOST_FILES", 2)
    entry = folder.Entry(b"x", b"", 0, 0)
    assert folder.archive([entry, entry])
    with pytest.raises(folder.TooLarge):
        folder.archive([entry] * 3)


def big(changed: str = "") -> Bytes:
    """Give a site of several packs, one page of it edited."""
    pages = {f"tests/t{n}.html": b"<title>T</title>%d" % n for n in range(300)}
    edit = {changed: pages[changed] + b"!"} if changed else {}
    return {**SITE, **pages, **edit}


def names(found: Bytes) -> set[str]:
    """Give the names of the packs, which hold their digests."""
    return {address for address in found if address.endswith(".pack")}


def test_an_edit_packs_one_pack_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """With the notes and files of the last build, only the pack of the edited page is made."""
    notes = Notes()
    before = finished(big(), notes)
    held = {made.digest: made.read() for made in before.values()}
    packed: list[bytes] = []

    def counting(content: bytes, pack: Any = packs.member_of) -> bytes:
        packed.append(content)
        made: bytes = pack(content)
        return made

    monkeypatch.setattr(packs, "member_of", counting)
    after = read(finished(big("tests/t7.html"), Notes(notes.after, held.get)))
    assert 1 <= len(packed) <= 2 * packs.FULL
    assert big("tests/t7.html")["tests/t7.html"] in packed
    assert len(names(after) ^ names(read(before))) == 2
    packed.clear()
    assert read(finished(big(), Notes(notes.after, held.get))) == read(before)
    assert packed == []


def test_a_new_page_moves_no_other() -> None:
    """The packs of a section that grows stay the same but one."""
    before, after = (read(finished(site)) for site in (big(), {**big(), "tests/new.html": b"x"}))
    assert len(names(after) - names(before)) == 1


@given(st.sets(st.integers(0, 10**9), min_size=1, max_size=300))
def test_no_pack_is_crowded_and_no_file_is_lost(numbers: set[int]) -> None:
    """However many files a section has, each goes into one pack, and packs stay small."""
    addresses = [f"tests/{number}.html" for number in numbers]
    groups = [part for _section, part in packs._groups(addresses)]
    assert sorted(address for part in groups for address in part) == sorted(addresses)
    # Twice the mean and a little more: hashes spread unevenly.
    assert max(map(len, groups)) <= 2 * packs.FULL + 16


def test_the_scripts_know_the_same_format() -> None:
    """The number of the manifest's format stands in both scripts that read it."""
    for script in ("worker.js", "assets/offline.js"):
        text = (ROOT / "site_overrides" / script).read_text("utf-8")
        assert re.findall(r"const FORMAT = (\d+);", text) == [str(packs.FORMAT)], script


def test_the_demonstration_site_is_packed_whole(site_dir: Path, tmp_path: Path) -> None:
    """Packs and folder hold every file of the built site; the folder alone has no dead link."""
    site = {
        path.relative_to(site_dir).as_posix(): path.read_bytes()
        for path in site_dir.rglob("*")
        if path.is_file()
    }
    wanted = {
        address: content
        for address, content in site.items()
        if address != "worker.js"
        and (address == routes.OFFLINE or not address.startswith("offline/"))
    }
    assert len(wanted) > 200
    assert {"search-index.js", "assets/search-rank.js", "404.html", routes.AUDIT} <= wanted.keys()
    assert inflated(site) == wanted
    with zipfile.ZipFile(site_dir / routes.FOLDER) as archive:
        archive.extractall(tmp_path)
    unpacked = tmp_path / "manual"
    for address, content in wanted.items():
        assert (unpacked / address).read_bytes() == content, address
    # The zip cannot hold itself: its own link is dead there, and the page's script hides it.
    assert [fault.what for fault in crawl(unpacked).faults] == ["manual.zip is not there"]


def test_cautions_of_the_demonstration_are_known_to_the_manifest(site_dir: Path) -> None:
    """Every page that the account of cautions names has a digest, and so has the safety page."""
    pages = json.loads((site_dir / packs.MANIFEST).read_text("utf-8"))["pages"]
    jobs = json.loads((site_dir / routes.AUDIT).read_text("utf-8"))["jobs"]
    told = {job["page"] for job in jobs} | {routes.SAFETY}
    assert {address for address, entry in pages.items() if len(entry) == 2} == told
