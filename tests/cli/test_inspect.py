"""check, expect and cautions: data, exit status, and what wrong input gets."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.cli.asking import ask, ask_apart, replace_in

WINDING = "inductive-winding"


@pytest.fixture
def spoilt(manual_dir: Path, tmp_path: Path) -> Path:
    """Give a copy of the manual that a test may spoil."""
    folder = tmp_path / "manual"
    shutil.copytree(manual_dir, folder, ignore=shutil.ignore_patterns("site", ".site*"))
    return folder


def test_the_demonstration_manual_has_no_findings() -> None:
    """Shows that the manual this project ships is clean, warnings included."""
    answer = ask("check", "--format", "json")
    assert answer.status == 0
    assert answer.data["counts"] == {"error": 0, "warning": 0}
    assert answer.data["schema"] == 1


@pytest.mark.parametrize(
    "arguments",
    [
        ["check", "--format", "json"],
        ["judge", WINDING, "850 ohm", "--vehicle", "corrie-1-2"],
        ["expect", "no-such-value"],
        ["check", "--no-such-option"],
    ],
)
def test_a_process_of_its_own_answers_alike(arguments: list[str]) -> None:
    """Shows that what is asked within the tests is what a person gets at a prompt."""
    assert ask_apart(*arguments) == ask(*arguments)


def test_a_finding_stands_at_its_line_and_column(spoilt: Path) -> None:
    """Shows the whole finding shape, at the place of the fault, and exit status 1."""
    path = spoilt / "kb_source" / "specs" / f"{WINDING}.yml"
    replace_in(path, "860 ohm", "860 ohms")
    line = next(n for n, t in enumerate(path.read_text().splitlines(), 1) if "860 ohms" in t)
    answer = ask("check", "--format", "json", manual=spoilt)
    assert answer.status == 1
    found = answer.data["findings"][0]
    assert set(found) == {
        "code", "severity", "path", "line", "column", "end_line", "end_column", "message", "why",
        "hint", "record",
    }  # fmt: skip
    assert (found["path"], found["line"]) == (f"kb_source/specs/{WINDING}.yml", line)
    assert found["column"] == len("value: ") + 1
    assert "ohm" in found["hint"]


def test_text_findings_show_the_line_and_the_count(spoilt: Path) -> None:
    """Shows that a person gets the source line, a mark under it, and the count."""
    replace_in(spoilt / "kb_source" / "specs" / f"{WINDING}.yml", "860 ohm", "860 ohms")
    answer = ask("check", manual=spoilt)
    assert "value: 860 ohms" in answer.out
    assert "^" in answer.out
    assert "1 error" in answer.out
    assert "\x1b[" not in answer.out, "no colour where the output is not a terminal"


def test_expect_gives_plain_numbers_in_the_written_unit() -> None:
    """Shows 860 ohm at 80 °C: 1063 by IEC 60028 (860·1.2358), ± 10 %."""
    answer = ask("expect", WINDING, "--at", "temperature=80degC", "--format", "json")
    assert answer.status == 0
    data = answer.data
    named = {"spec", "quantity", "unit", "low", "nominal", "high", "conditions", "trail"}
    assert named <= set(data)
    assert (data["spec"], data["quantity"], data["unit"]) == (WINDING, "resistance", "ohm")
    assert data["low"] == pytest.approx(956.5, abs=0.1)
    assert data["nominal"] == pytest.approx(1062.8, abs=0.1)
    assert data["high"] == pytest.approx(1169.1, abs=0.1)
    assert data["conditions"]["temperature"]["low"] == 80.0


def test_expect_reads_a_range_and_another_unit() -> None:
    """Shows that 176 °F is 80 °C and that a range covers both its ends."""
    one = ask("expect", WINDING, "--at", "temperature=176 °F", "--format", "json").data
    assert one["nominal"] == pytest.approx(1062.8, abs=0.1)
    span = ask("expect", WINDING, "--at", "temperature=20 to 80 °C", "--format", "json").data
    assert (span["low"], span["high"]) == pytest.approx((774.0, 1169.1), abs=0.1)


@pytest.mark.parametrize(
    ("arguments", "word"),
    [
        (("expect", "inductive-windin"), "did you mean"),
        (("expect", WINDING, "--at", "temperature"), "NAME=VALUE"),
        (("expect", WINDING, "--at", "temprature=80degC"), "did you mean temperature"),
        (("expect", WINDING, "--at", "temperature=80 V"), "temperature is needed"),
        (("expect", WINDING, "--at", "temperature=9**9**9 °C"), "9**9**9"),
        (("expect", WINDING, "--at", "temperature=at least 80 °C"), "one figure or a range"),
        (("expect", WINDING, "--at", "temperature=900 °C"), "outside"),
        (("expect", WINDING, "--at", "engine_speed=200 rpm"), "does not change"),
        (("expect", WINDING, "--at", "temperature=1 °C", "--at", "temperature=2 °C"), "twice"),
        (("expect", WINDING, "--vehicle", "corrie-1-7"), "did you mean"),
        (("expect", WINDING, "--vehicle", "corrie-1-6"), "does not hold"),
        (("cautions", "replace-crank-sensor"), "did you mean"),
        (("check", "--format", "xml"), "xml"),
        (("chek",), "chek"),
        (("expect",), "SPEC"),
    ],
)
def test_wrong_usage_is_told_in_a_line(arguments: tuple[str, ...], word: str) -> None:
    """Shows that a wrong question gets status 2, a clear word, and no traceback."""
    answer = ask(*arguments)
    assert answer.status == 2
    assert word in answer.err
    assert "Traceback" not in answer.err
    assert answer.out == ""


def test_a_folder_without_records_is_a_usage_error(tmp_path: Path) -> None:
    """Shows that a folder that is no manual is said to be none."""
    answer = ask("check", manual=tmp_path)
    assert answer.status == 2
    assert "kb_source" in answer.err


def test_cautions_give_state_and_boxes_step_by_step() -> None:
    """Shows the raised vehicle remembered in later steps, with its box where it begins."""
    answer = ask("cautions", "replace-crank-sensor-inductive", "--format", "json")
    steps = answer.data["steps"]
    assert all({"step", "state", "boxes"} <= set(step) for step in steps)
    assert all({"word", "hazards"} == set(box) for step in steps for box in step["boxes"])
    raised = [step for step in steps if step["state"]["support"] == "lift"]
    assert len(raised) > 3
    assert any(box["word"] == "WARNING" for box in raised[0]["boxes"])


def test_help_is_quick_to_start() -> None:
    """Shows that asking for help imports neither matplotlib, pint nor mkdocs."""
    import subprocess
    import sys

    code = (
        "import sys; from generator.cli.main import group\n"
        "try: group.main(['--help'], prog_name='fettlebook')\n"
        "except SystemExit: pass\n"
        "print([m for m in ('matplotlib', 'pint', 'mkdocs') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"
