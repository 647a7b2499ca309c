"""Ten realistic changes: each names its effects on the reader, and nothing else."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.asking import Answer, ask, replace_in
from tests.demonstration import copy_manual

Change = Callable[[Path], None]


@pytest.fixture(scope="module")
def repository(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a copy of the demonstration manual as a repository with one commit."""
    folder = tmp_path_factory.mktemp("base") / "manual"
    copy_manual(folder)
    for words in (
        ["init", "-q"], ["add", "-A"],
        ["-c", "user.name=t", "-c", "user.email=t@example.org", "commit", "-qm", "base"],
    ):  # fmt: skip
        subprocess.run(["git", *words], cwd=folder, check=True)
    return folder


@pytest.fixture
def manual(repository: Path, tmp_path: Path) -> Path:
    """Give a clone to change."""
    shutil.copytree(repository, tmp_path / "manual")
    return tmp_path / "manual"


def effects(manual: Path, *arguments: str) -> list[tuple[str, str, str, str, str]]:
    """Give what the command finds between the commit and the folder as it lies there."""
    done = ask("compare", "HEAD", "--format", "json", *arguments, manual=manual)
    assert done.status == 0, done.err
    return [
        (e["sort"], e["record"], e["what"], e["before"], e["after"]) for e in done.data["effects"]
    ]


def record(manual: Path, key: str) -> Path:
    """Give a record's file."""
    return manual / "kb_source" / f"{key}.yml"


WINDING = "tests/winding-resistance"


def test_nothing_changed_is_said(manual: Path) -> None:
    """A comment and another order of keys are nothing to a reader."""
    path = record(manual, WINDING)
    path.write_text("# a word to ourselves\n" + path.read_text("utf-8"), "utf-8")
    assert effects(manual) == []


def test_a_limit_edited(manual: Path) -> None:
    """Old and new limits with units and percent, and the readings that are judged otherwise."""
    replace_in(record(manual, "specs/inductive-winding"), "860 ohm ± 10 %", "860 ohm ± 5 %")
    found = effects(manual)
    assert {(sort, of) for sort, of, *_ in found} == {
        ("value changed", "specs/inductive-winding"), ("verdict changed", "specs/inductive-winding")
    }  # fmt: skip
    # 860 ohm less and plus 10 and 5 percent at 20 degrees; copper at -20 by 1 - 40 * 0.00393.
    first = next(e for e in found if e[0] == "value changed")
    scale = 1 + 0.00393 * (-20 - 20)
    assert [float(n) for n in re.findall(r"[\d.]+", first[3])[:2]] == [
        pytest.approx(860 * share * scale, rel=2e-3) for share in (0.9, 1.1)
    ]
    assert "+5.6 %" in first[4] and "-4.5 %" in first[4]
    assert {(e[3], e[4]) for e in found if e[0] == "verdict changed"} == {
        ("in limits", "low"), ("in limits", "high")
    }  # fmt: skip


def test_a_fact_dropped(manual: Path) -> None:
    """What warned of it is lost, at its step, and stands before everything else."""
    replace_in(
        record(manual, WINDING),
        "    supplies: [contact-cleaner, lint-free-cloth]", "    supplies: [lint-free-cloth]",
    )  # fmt: skip
    found = effects(manual)
    assert found
    assert {(sort, of) for sort, of, *_ in found} == {("caution lost", WINDING)}
    assert all(what.startswith("step 4 (Clean the pins") for _s, _r, what, *_ in found)
    assert ask("compare", "HEAD", "--fail-on-lost-caution", manual=manual).status == 1
    assert ask("compare", "HEAD", manual=manual).out.startswith("CAUTION LOST")


def test_a_tool_renamed(manual: Path) -> None:
    """One page moved; the many references that follow it are no effects."""
    assert ask("rename", "tools", "multimeter", "bench-meter", manual=manual).status == 0
    assert effects(manual) == [
        ("page moved", "tools/bench-meter", "it has another name", "tools/multimeter",
         "tools/bench-meter")
    ]  # fmt: skip


def test_a_term_deleted(manual: Path) -> None:
    """An entry is gone, and nothing else."""
    record(manual, "terms/true-rms").unlink()
    found = effects(manual)
    assert ("page gone", "terms/true-rms") in {(sort, of) for sort, of, *_ in found}
    assert {of for _sort, of, *_ in found} == {"terms/true-rms"}


def test_a_step_re_worded(manual: Path) -> None:
    """The words before and after, with no caution moved."""
    replace_in(record(manual, WINDING), "Clean the pins and let them dry.",
               "Clean both pins and let them dry.")  # fmt: skip
    assert effects(manual) == [
        ("step changed", WINDING, "step 4, re-worded", "Clean the pins and let them dry.",
         "Clean both pins and let them dry.")
    ]  # fmt: skip


def test_a_verdict_turned(manual: Path) -> None:
    """An outcome that no longer condemns is told as a verdict."""
    path = record(manual, WINDING)
    text = path.read_text("utf-8")
    start = text.index("  - finding: changes_when_moved")
    turned = text[start:].replace("verdict: condemns", "verdict: neither", 1)
    turned = re.sub(r"    about: .*\n", "", turned, count=1)
    turned = turned.replace("- replacement: replace-crank-sensor-inductive",
                            "- test: heat-and-wiggle-inductive", 1)  # fmt: skip
    path.write_text(text[:start] + turned, "utf-8")
    found = effects(manual)
    assert found[0] == ("verdict changed", WINDING, "found changes when moved, verdict",
                        "condemns", "neither")  # fmt: skip
    assert {of for _sort, of, *_ in found} >= {WINDING}
    assert {sort for sort, of, *_ in found if of == WINDING} == {
        "verdict changed", "outcome changed", "link changed"
    }  # fmt: skip


def test_a_vehicle_added(manual: Path) -> None:
    """A page is new, and no other page says anything else."""
    text = record(manual, "vehicles/corrie-1-2").read_text("utf-8")
    text = text.replace("title: Corrie 1.2", "title: Corrie 1.0")
    record(manual, "vehicles/corrie-1-0").write_text(text, "utf-8")
    assert [(sort, of) for sort, of, *_ in effects(manual)] == [
        ("page new", "vehicles/corrie-1-0")
    ]  # fmt: skip


def test_an_exception_taken(manual: Path) -> None:
    """A check silenced is told with its reason."""
    replace_in(record(manual, WINDING), "Clean the pins and let them dry.",
               "Clean the pins and then let them both stand for as long as it takes until "
               "they look and feel quite dry again.")  # fmt: skip
    path = record(manual, WINDING)
    path.write_text(
        path.read_text("utf-8") + "exceptions:\n  - check: long-step\n    reason: It is one act."
        "\n    approved_by: workshop-lead\n    date: 2026-09-21\n", "utf-8",
    )  # fmt: skip
    found = effects(manual)
    assert ("exception new", WINDING, "long-step", "", "It is one act.") in found
    assert {sort for sort, *_ in found} == {"exception new", "step changed"}


def test_a_weight_moved(manual: Path) -> None:
    """Causes weighed otherwise, and with them the order of tests."""
    path = record(manual, "symptoms/cuts-out-hot")
    weights = re.findall(r"weight: (\d+)", path.read_text("utf-8"))
    replace_in(path, f"weight: {weights[0]}", "weight: 1")
    found = effects(manual)
    assert {of for _sort, of, *_ in found} == {"symptoms/cuts-out-hot"}
    assert {sort for sort, *_ in found} <= {"words changed", "order of tests changed"}
    assert any(what == "causes" for _sort, _of, what, *_ in found)


def test_the_comment_is_text_and_nothing_else(manual: Path) -> None:
    """What a stranger wrote into a record stays words in the comment: no markup, no mention."""
    replace_in(record(manual, WINDING), "Clean the pins and let them dry.",
               "Clean | the <b>pins</b> @somebody [x](y) and dry.")  # fmt: skip
    text = ask("compare", "HEAD", "--format", "markdown", manual=manual).out
    assert "<b>" not in text and "[x](y)" not in text and "@somebody" not in text
    row = next(line for line in text.splitlines() if "re-worded" in line)
    assert len(re.findall(r"(?<!\\)\|", row)) == 5


@pytest.mark.parametrize("wrong", ["no-such-revision", "--output=x", "HEAD~9"])
def test_a_wrong_revision_is_a_word(repository: Path, wrong: str) -> None:
    """It stops with what it wants, and no traceback."""
    done: Answer = ask("compare", "--", wrong, manual=repository)
    assert done.status == 2 and "neither a revision" in done.err


def test_two_folders_are_compared_without_git(repository: Path, manual: Path) -> None:
    """Folders do as well as revisions."""
    record(manual, "terms/true-rms").unlink()
    done = ask("compare", str(repository), str(manual), "--format", "json", manual=repository)
    assert json.loads(done.out)["effects"]
