"""Migration: from every format there was to the current one, without losing a comment."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from generator.edit import migrate
from generator.edit.migrate import BadStep, CannotMigrate, Plan, UnreadableManual, plan
from generator.edit.source import Source
from generator.records.load import load

FIXTURES = Path(__file__).parent / "fixtures"
NOW = migrate.current()
NEXT = NOW + 1


def rename_means(kind: str, source: Source) -> str:
    """Lift a record to a made-up format, in which a term's `means` is called `says`."""
    if kind != "terms" or "means" not in source.data:
        return source.text
    key = source.places[("means",)].key
    assert key is not None
    return source.spliced([(key, "says")])


STEPS = {NOW: rename_means}


@pytest.fixture
def manual(tmp_path: Path) -> Path:
    """Give a copy of the manual in the current format that a test may change."""
    return Path(shutil.copytree(FIXTURES / f"format-{NOW}", tmp_path / "kb_source"))


def carry_out(made: Plan) -> None:
    """Write what a plan says."""
    for change in made.changes:
        change.file.replace(change.before, change.after)


def texts(folder: Path) -> dict[str, str]:
    """Give every file of a folder."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    return {path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8") for path in files}


def comments(text: str) -> list[str]:
    """Give every comment of a record; none of these records has a # in a text."""
    return re.findall(r"#.*", text)


def test_every_format_has_a_manual_and_a_way_on() -> None:
    """For each format there was, a manual is kept here and a step leads to the next."""
    kept = {int(folder.name.removeprefix("format-")) for folder in FIXTURES.iterdir()}
    assert kept == set(range(min(kept), NOW + 1))
    assert set(migrate.STEPS) == set(range(min(kept), NOW))


@pytest.mark.parametrize("folder", sorted(FIXTURES.iterdir()), ids=lambda folder: folder.name)
def test_a_manual_of_every_format_is_lifted(folder: Path, tmp_path: Path) -> None:
    """Lifted to the current format it reads without a finding, with every comment it had."""
    lifted = Path(shutil.copytree(folder, tmp_path / "kb_source"))
    carry_out(plan(lifted, "kb_source"))
    loaded = load(lifted)
    assert loaded.problems == []
    assert loaded.kb is not None and loaded.kb.settings.format == NOW
    before, after = texts(folder), texts(lifted)
    assert after.keys() == before.keys()
    assert {name: comments(after[name]) for name in after} == {
        name: comments(before[name]) for name in before
    }


def test_the_current_format_is_left_alone(manual: Path) -> None:
    """A manual that has the format already has nothing to change."""
    assert plan(manual, "kb_source") == Plan(NOW, NOW, ())


def test_a_step_changes_stretches_and_nothing_else(manual: Path) -> None:
    """Lifted by a made-up step: the key and the number change, and not one character more."""
    before = texts(manual)
    made = plan(manual, "kb_source", steps=STEPS, end=NEXT)
    assert texts(manual) == before, "a plan writes nothing"
    carry_out(made)
    after = texts(manual)
    assert after["terms/air-gap.yml"] == before["terms/air-gap.yml"].replace("means:", "says:")
    assert after["settings.yml"] == before["settings.yml"].replace(
        f"format: {NOW}", f"format: {NEXT}"
    )
    assert after["people/workshop-lead.yml"] == before["people/workshop-lead.yml"]
    assert [change.file.kind for change in made.changes] == ["terms", "settings"]


def test_a_run_that_was_cut_short_is_run_again(manual: Path) -> None:
    """The settings come last, so a second run finds the old number and does the rest."""
    made = plan(manual, "kb_source", steps=STEPS, end=NEXT)
    made.changes[0].file.replace(made.changes[0].before, made.changes[0].after)
    carry_out(plan(manual, "kb_source", steps=STEPS, end=NEXT))
    assert f"format: {NEXT}" in texts(manual)["settings.yml"]
    assert "says: >-" in texts(manual)["terms/air-gap.yml"]
    assert plan(manual, "kb_source", steps=STEPS, end=NEXT).changes == ()


def test_steps_follow_one_another(manual: Path) -> None:
    """Over two formats both steps are taken, in order."""

    def rename_says(kind: str, source: Source) -> str:
        place = source.places.get(("says",))
        return source.spliced([(place.key, "tells")]) if place and place.key else source.text

    carry_out(plan(manual, "kb_source", steps={**STEPS, NEXT: rename_says}, end=NEXT + 1))
    assert "\ntells: >-" in texts(manual)["terms/air-gap.yml"]
    assert f"format: {NEXT + 1} # the number" in texts(manual)["settings.yml"]


@pytest.mark.parametrize(
    ("settings", "word"),
    [
        (f"format: {NEXT}\n", "install the version it was written for"),
        ("format: 999999999\n", "knows none above"),
        ("format: 0\n", "no way from format 0"),
        ("format: -3\n", "no way from format -3"),
        ("format: one\n", "do not state"),
        ("format: true\n", "do not state"),
        ("format: 1.0\n", "do not state"),
        ("title: A manual\n", "do not state"),
        (None, "no settings"),
    ],
)
def test_a_format_that_cannot_be_lifted(manual: Path, settings: str | None, word: str) -> None:
    """A newer format, one nobody knows and none at all are refused with a clear word."""
    if settings is None:
        (manual / "settings.yml").unlink()
    else:
        (manual / "settings.yml").write_text(settings, encoding="utf-8")
    before = texts(manual)
    with pytest.raises(CannotMigrate, match=word):
        plan(manual, "kb_source")
    assert texts(manual) == before


def test_an_unreadable_record_stops_all(manual: Path) -> None:
    """Where one record cannot be read, none is lifted, and every finding is told."""
    (manual / "terms" / "slit.yml").write_text("title: a\ntitle: b\n", encoding="utf-8")
    (manual / "terms" / "slot.yml").write_text("title: 010\n", encoding="utf-8")
    with pytest.raises(UnreadableManual) as refused:
        plan(manual, "kb_source", steps=STEPS, end=NEXT)
    assert [(one.path, one.code) for one in refused.value.problems] == [
        ("kb_source/terms/slit.yml", "duplicate-key"), ("kb_source/terms/slot.yml", "leading-zero")
    ]  # fmt: skip
    assert set(refused.value.sources) == {"kb_source/terms/slit.yml", "kb_source/terms/slot.yml"}


@pytest.mark.parametrize(
    ("text", "word"), [("title: [\n", "air-gap"), (None, "lifted twice")], ids=["broken", "endless"]
)
def test_a_bad_step_is_caught(manual: Path, text: str | None, word: str) -> None:
    """A step whose result cannot be read, or that changes its own result, writes nothing."""

    def bad(kind: str, source: Source) -> str:
        return (text or source.text + "# again\n") if kind == "terms" else source.text

    with pytest.raises(BadStep, match=word):
        plan(manual, "kb_source", steps={NOW: bad}, end=NEXT)
