"""The account at the end of a test run: seconds by suite, budgets, and an honest verdict."""

from __future__ import annotations

import pytest

from tests.run import Stage, account, main, suites_in

REPORT = """<testsuites><testsuite>
  <testcase classname="tests.physics.test_coils" name="test_a" time="1.5"/>
  <testcase classname="tests.physics.test_wheels.TestGap" name="test_b" time="0.5"/>
  <testcase classname="tests.test_floors" name="test_c" time="0.25"/>
  <testcase classname="" name="tests.browser.test_x" time="0.125"><error/></testcase>
</testsuite></testsuites>"""


def test_seconds_and_failures_are_told_by_suite() -> None:
    """Tests count for the folder they lie in, those in tests/ itself for the house."""
    assert suites_in(REPORT) == [
        Stage("tests/browser", 0.125, passed=False),
        Stage("tests/house", 0.25, passed=True),
        Stage("tests/physics", 2.0, passed=True),
    ]


def test_all_well_is_said_last() -> None:
    """With every stage passed and in time, the last line says so."""
    lines, passed = account([Stage("ruff", 1.0), Stage("mypy", 2.0)], 3.0)
    assert passed
    assert lines[-1] == "all passed"


def test_a_failed_stage_fails_the_whole() -> None:
    """One failed stage is named in its row and in the verdict, whatever came after it."""
    lines, passed = account([Stage("ruff", 1.0, passed=False), Stage("mypy", 2.0)], 3.0)
    assert not passed
    assert lines[1].endswith("FAILED")
    assert lines[-1] == "FAILED: ruff"


def test_a_slow_stage_is_marked_and_a_slow_whole_fails() -> None:
    """A stage over its budget is remarked on; fifteen minutes in all are the limit."""
    lines, passed = account([Stage("ruff", 16.0)], 900.0)
    assert passed
    assert "over budget" in lines[1]
    assert not account([Stage("ruff", 1.0)], 900.1)[1]


@pytest.mark.parametrize("arguments", [[], ["publish"], ["site", "physics"]])
def test_a_task_that_is_not_there_prints_the_usage(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """A slip of the pen gives the list of tasks and status 2."""
    assert main(arguments) == 2
    assert "site|test|soak|bench|lighthouse|pictures|lock" in capsys.readouterr().out


def test_a_suite_that_is_not_there_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    """Nobody believes a suite passed because its name was misspelt."""
    with pytest.raises(SystemExit) as stopped:
        main(["test", "phisics"])
    assert stopped.value.code == 2
    assert "physics" in capsys.readouterr().err
