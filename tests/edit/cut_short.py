"""Commands that write, killed before each of their steps in turn and then run once more.

``python -m tests.edit.cut_short FOLDER`` prints each command with the number of its steps, and
every fault it finds. It is a process of its own because it forks.
"""

from __future__ import annotations

import mmap
import os
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import suppress
from functools import partial
from pathlib import Path

from generator.edit import rename, start
from generator.edit.files import create, every, put
from generator.records.load import load
from tests.demonstration import SMALLEST_RECORDS
from tests.steps import STEPS, forked

Tree = dict[str, bytes]
Work = Callable[[], object]
"""What is killed: it was made ready, records read, by a process that lives on."""


def replaced(folder: Path) -> Work:
    """Put another title into each term."""
    changes = []
    for file in every(folder, "kb_source"):
        before = file.read()
        if file.kind == "terms" and b"title: Other " not in before:
            after = before.replace(b"title: ", b"title: Other ", 1)
            changes.append(partial(file.replace, before, after))
    return lambda: [change() for change in changes]


def created(folder: Path) -> Work:
    """Make a record that is not there."""

    def work() -> None:
        with suppress(FileExistsError):
            create(folder / "new.yml", b"title: new\n" * 99)

    return work


def put_there(folder: Path) -> Work:
    """Put a file of ours in the place of an older one."""
    return partial(put, folder / "settings.yml", b"{}\n" * 99)


def renamed(folder: Path) -> Work:
    """Give a record another id."""
    if not (folder / "tools" / "multimeter.yml").exists():
        return lambda: None
    kb = load(folder, "kb_source").kb
    assert kb is not None
    plan = rename.plan(kb, folder, "kb_source", "tools", "multimeter", "meter")
    return partial(rename.carry_out, plan)


def started(folder: Path) -> Work:
    """Lay down a new manual."""

    def work() -> None:
        with suppress(start.CannotStart):
            start.lay_down(folder, {"a.yml": "a\n" * 99, "kb/b.yml": "b\n", "kb/c/d.yml": "d\n"})

    return work


COMMANDS: dict[str, Callable[[Path], Work]] = {
    "replace": replaced, "create": created, "put": put_there, "rename": renamed, "start": started,
}  # fmt: skip


def tree(folder: Path) -> Tree:
    """Give every file of a folder."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def faults(command: str, root: Path, told: mmap.mmap) -> Iterator[str]:
    """Kill a command before its first step, its second, and so on; give what went wrong."""
    task = COMMANDS[command]
    old, folder = root / "old", root / "manual"
    if command == "start":
        (old / ".git").mkdir(parents=True)
    else:
        shutil.copytree(SMALLEST_RECORDS, old)
    shutil.copytree(old, folder)
    task(folder)()
    before, after = tree(old), tree(folder)
    step = 0
    ended = False
    while not ended:
        step += 1
        shutil.rmtree(folder)
        shutil.copytree(old, folder)
        told[:] = bytes(STEPS.size)
        _, how = os.waitpid(forked(task(folder), step, told), 0)
        ended = how == 0
        found = tree(folder)
        for path, content in found.items():
            hidden = any(part.startswith(".fettlebook") for part in path.split("/"))
            temporary = hidden or ".fettlebook-" in path
            if not temporary and content not in (before.get(path), after.get(path)):
                yield f"before step {step}: {path} is neither the old nor the new"
        for path in before.keys() & after.keys():
            if path not in found:
                yield f"before step {step}: {path} is lost"
        task(folder)()
        if tree(folder) != after:
            yield f"after step {step}: {sorted(tree(folder).keys() ^ after.keys())}"
    print(command, step - 1, flush=True)


if __name__ == "__main__":
    shared = mmap.mmap(-1, STEPS.size)
    for name in COMMANDS:
        for fault in faults(name, Path(sys.argv[1]) / name, shared):
            print(f"fault: {name}: {fault}", flush=True)
