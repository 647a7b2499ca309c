"""All tasks of make: ``python3 tests/run.py TASK [WORD ...]``.

TASK is one of site|test|soak|bench|lighthouse|pictures|lock.

Needs nothing but Python 3.11, since it runs before anything is installed. The tasks set
themselves up; a second run finds all in place.
"""

from __future__ import annotations

import sys

if sys.version_info < (3, 11):  # noqa: UP036  # whoever starts this by hand may have an older one
    sys.exit("fettlebook: Python 3.11 or newer is needed, this is " + sys.version.split()[0])

import os
import subprocess
import tempfile
import time
import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[0] = str(ROOT)  # the folder of this file holds names such as "site"

from tests import environment  # noqa: E402

# What a stage may take on a laptop of the day, in seconds; a suite without a line has the usual.
BUDGETS_S = {
    "environment": 180.0,
    "find a browser": 120.0,
    "ruff": 15.0,
    "mypy": 90.0,
    "tests/browser": 720.0,
    "tests/cli": 180.0,
    "tests/hazards": 90.0,
    "tests/records": 90.0,
    "tests/packaging": 90.0,
    "tests/publish": 120.0,
    "tests/site": 90.0,
    "pytest, all of it": 720.0,
}
USUAL_BUDGET_S = 45.0
# Nobody waits longer for an answer to a pull request.
WHOLE_BUDGET_S = 15 * 60.0

# A file's tests stay together, since what they share is made once a worker. In the order of the
# folders the browser's long files come early, and no worker is left alone with one at the end.
PYTEST = ("-m", "pytest", "-n", "auto", "--dist", "loadfile", "--no-loadscope-reorder")

# The name of the suite made of the files that lie in tests/ itself.
HOUSE_RULES = "house"


@dataclass(frozen=True, slots=True)
class Stage:
    """What one stage took and whether it went well."""

    name: str
    seconds: float
    passed: bool = True

    @property
    def budget_s(self) -> float:
        """Give the seconds it may take."""
        return BUDGETS_S.get(self.name, USUAL_BUDGET_S)


def main(arguments: Sequence[str]) -> int:
    """Carry out one task; give its exit status."""
    task, *rest = arguments or ["help"]
    tasks: dict[str, Callable[[], int]] = {
        "site": site,
        "test": lambda: test(rest),
        "soak": soak,
        "bench": lambda: bench(rest),
        "lighthouse": lighthouse,
        "pictures": pictures,
        "lock": lock,
    }
    if task not in tasks or (rest and task not in ("test", "bench")):
        print(__doc__)
        return 2
    return tasks[task]()


def site() -> int:
    """Check the records and build the manual."""
    python = environment.ready()
    for command in ("check", "build"):
        status = _run(python, "-m", "generator", command)
        if status:
            return status
    environment.say("The manual is built. Open site/index.html in a browser.")
    return 0


def pictures() -> int:
    """Build the manual, and take the pictures of it anew."""
    status = site()
    return status or _run(environment.ready(), "-m", "tests.sights")


def lock() -> int:
    """Bring the lock up to date."""
    environment.lock()
    return 0


def soak() -> int:
    """Run the tests that take minutes."""
    return _run(environment.ready(), *PYTEST, "-m", "soak")


def bench(options: Sequence[str]) -> int:
    """Measure building beside what one would pick instead."""
    python = environment.ready()
    environment.rivals()
    return _run(python, "-m", "tests.bench", *options)


def lighthouse() -> int:
    """Have Lighthouse look at four pages of the small manual, five times each."""
    return _run(environment.ready(), "-m", "tests.lighthouse")


def test(suites: Sequence[str]) -> int:
    """Run every check, or some suites alone; all of them, even after one that failed."""
    began = time.monotonic()
    paths = [path for suite in suites for path in _paths_of(suite)]
    python = environment.ready()
    stages = [Stage("environment", time.monotonic() - began)]
    with ThreadPoolExecutor(1) as beside:
        # The types keep one core busy for a while, which the browser's way here leaves idle.
        types = None if suites else beside.submit(_stage, "mypy", python, "-m", "mypy", aside=True)
        if not suites or "browser" in suites:
            stages.append(_stage("find a browser", python, "-m", "tests.browser.find_browser"))
        if not suites:
            stages.append(_stage("ruff", python, "-m", "ruff", "check", "."))
        with tempfile.TemporaryDirectory() as folder:
            report = Path(folder) / "report.xml"
            whole = _stage("pytest", python, *PYTEST, f"--junitxml={report}", *paths)
            ran = suites_in(report.read_text(encoding="utf-8")) if report.is_file() else []
        if types is not None:
            stages.append(types.result())
    # The suites' seconds are those of the workers, added up; the whole is what one waits for.
    explained = whole.passed or not all(suite.passed for suite in ran)
    stages += [*ran, Stage("pytest, all of it", whole.seconds, explained)]
    lines, passed = account(stages, time.monotonic() - began)
    environment.say("\n".join(["", *lines]))
    return 0 if passed else 1


def suites_in(report: str) -> list[Stage]:
    """Add up a JUnit report by the folder the tests lie in; a suite passes if all its tests do."""
    seconds: dict[str, float] = {}
    failed = set()
    for case in ET.fromstring(report).iter("testcase"):
        # A file that cannot be imported is a case without a class, under its own name.
        _, *place = (case.get("classname") or case.get("name") or "").split(".")
        suite = HOUSE_RULES if not place or place[0].startswith("test_") else place[0]
        seconds[suite] = seconds.get(suite, 0.0) + float(case.get("time", 0))
        if case.find("failure") is not None or case.find("error") is not None:
            failed.add(suite)
    return [
        Stage(f"tests/{suite}", seconds[suite], suite not in failed) for suite in sorted(seconds)
    ]


def account(stages: Iterable[Stage], seconds: float) -> tuple[list[str], bool]:
    """Set each stage's seconds beside its budget.

    Returns
    -------
    lines : list of str
        The table and the verdict, to print.
    passed : bool
        Whether every stage passed and the whole kept within its budget.
    """
    stages = list(stages)
    lines = [f"{'stage':24}{'seconds':>9}{'budget':>9}"]
    for stage in stages:
        remark = "" if stage.passed else "  FAILED"
        remark += "  over budget" if stage.seconds > stage.budget_s else ""
        lines.append(f"{stage.name:24}{stage.seconds:9.1f}{stage.budget_s:9.0f}{remark}")
    lines.append(f"{'total':24}{seconds:9.1f}{WHOLE_BUDGET_S:9.0f}")
    failed = [stage.name for stage in stages if not stage.passed]
    if seconds > WHOLE_BUDGET_S:
        failed.append("the whole took too long")
    lines.append(f"FAILED: {', '.join(failed)}" if failed else "all passed")
    return lines, not failed


def _paths_of(suite: str) -> list[str]:
    """Give what pytest is to run for a suite's name."""
    tests = ROOT / "tests"
    if suite == HOUSE_RULES:
        return sorted(str(path) for path in tests.glob("test_*.py"))
    if not any((tests / suite).rglob("test_*.py")):
        known = sorted({path.parent.name for path in tests.glob("*/test_*.py")})
        environment.stop(f"there is no suite {suite}; there are {HOUSE_RULES}, {', '.join(known)}")
    return [str(tests / suite)]


def _stage(name: str, *command: str | Path, aside: bool = False) -> Stage:
    """Run one stage; one that runs aside says what it has to say when it is done."""
    if not aside:
        environment.say(f"\n--- {name}")
    began = time.monotonic()
    done = _ran(*command, caught=aside)
    if aside:
        environment.say(f"\n--- {name}\n{done.stdout}")
    return Stage(name, time.monotonic() - began, done.returncode == 0)


def _run(*command: str | Path) -> int:
    return _ran(*command).returncode


def _ran(*command: str | Path, caught: bool = False) -> subprocess.CompletedProcess[str]:
    out, err = (subprocess.PIPE, subprocess.STDOUT) if caught else (None, None)
    return subprocess.run(
        list(map(str, command)), cwd=ROOT, env=_surroundings(), text=True, stdout=out, stderr=err
    )


def _surroundings() -> dict[str, str]:
    """Give what a process finds around it, with a place of the project's own for byte code.

    Some machines forbid it. Then each of hundreds of processes compiles all that it imports anew,
    which takes longer than what most of them do.
    """
    found = {**os.environ, "PYTHONPYCACHEPREFIX": str(environment.BYTE_CODE)}
    found.pop("PYTHONDONTWRITEBYTECODE", None)
    return found


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except KeyboardInterrupt:
        sys.exit(130)
