"""Random damage to real records: never a traceback, a hang or a heap of memory.

The short run is part of every test run; the long one takes as many damages as the environment
variable ``FUZZ_RUNS`` says, a million unless told otherwise. Every damage comes from its own seed,
so a failure names the one number that brings it back.
"""

from __future__ import annotations

import os
import random
import resource
import time

import pytest
import yaml

from generator.problems import as_text, in_order
from generator.records import shape, strict_yaml
from generator.records.kinds import KINDS
from tests.demonstration import SMALL_RECORDS

RECORDS = [(path.parent.name, path.read_bytes()) for path in sorted(SMALL_RECORDS.glob("*/*.yml"))]

SHORT_RUNS = 1500
LONGEST_S = 5.0
"""Processor time of one reading: a hang has no end, and a machine at other work is no hang."""
MOST_MEMORY_KB = 400_000
"""Growth over a whole run."""

PIECES = [
    b"\t", b"\r", b"\n", b"\r\n", b" ", b"  ", b"\n  ", b"[", b"]", b"{", b"}", b", ", b": ", b":",
    b"- ", b"? ", b"|", b">", b"|-\n", b">+2\n", b"'", b'"', b"#", b" #", b"%", b"@", b"`", b"!",
    b"!!str ", b"&a ", b"*a", b"<<: ", b"~", b"\\", b"\\u00", b"\\U99999999",
    b"\n---\n", b"\n...\n", b"%YAML 1.1\n", b"\x00", b"\x1b[2J", b"\xff", b"\xc3",
    b"\xe2\x84\xa6", b"\xf0\x9f\x94\x8b", b"\xed\xa0\x80", b"\xef\xbb\xbf",
    b"\xc2\x85", b"\xc2\xa0", b"\xe2\x80\xa8", b"\xe2\x80\xae",
    b"010", b"0x1F", b"1:30", b"yes", b"on", b"1e3", b".nan", b"2026-02-30", b"null",
    b"9" * 20, b"[" * 50, b"{a: " * 50, b"- " * 50, b" \xc2\xb1 ", b"9**9**9",
]  # fmt: skip


def damaged(seed: int) -> tuple[str, bytes]:
    """Give a record with one to eight random damages, and its kind."""
    chance = random.Random(seed)
    kind, source = chance.choice(RECORDS)
    out = bytearray(source)
    for _ in range(chance.randrange(1, 9)):
        at = chance.randrange(len(out) + 1)
        length = chance.choice([1, 1, 1, 2, 4, 10, 40])
        match chance.randrange(6):
            case 0:
                out[at:at] = chance.choice(PIECES)
            case 1:
                out[at : at + length] = b""
            case 2:
                out[at : at + 1] = bytes([chance.randrange(256)])
            case 3:
                start = chance.randrange(len(out) + 1)
                out[at:at] = out[start : start + length * 4]
            case 4:
                out[at : at + length] = chance.choice(PIECES)
            case 5 if chance.random() < 0.1:
                del out[at:]  # an upload that broke off
    return kind, bytes(out)


def check(seed: int, *, both_parsers: bool) -> int:
    """Read, fit and print one damaged record; give the count of findings."""
    kind, source = damaged(seed)
    start = time.process_time()
    reading = strict_yaml.read(source, "x.yml")
    if both_parsers:
        assert reading == strict_yaml.read(source, "x.yml", yaml.SafeLoader), f"seed {seed}"
    found = list(reading.problems)
    record = None
    if reading.data is not None:
        record, misfits = shape.fit(kind, "x", reading.data, reading.places, "x.yml")
        found.extend(misfits)
    found = strict_yaml.bounded(in_order(found), "x.yml")
    assert record is not None or found, f"seed {seed}"
    assert len(found) <= strict_yaml.MOST_FOUND + 1, f"seed {seed}"
    lines = reading.text.split("\n")
    for one in found:
        assert 1 <= one.line <= len(lines), f"seed {seed}: {one}"
        assert 1 <= one.column <= len(lines[one.line - 1]) + 1, f"seed {seed}: {one}"
    printed = as_text(found, {"x.yml": reading.text}, colour=False)
    assert printed.replace("\n", "").isprintable(), f"seed {seed}"
    assert time.process_time() - start < LONGEST_S, f"seed {seed}"
    return len(found)


def _run(first: int, runs: int, every: int) -> None:
    """Check `runs` damages, one in `every` with both parsers, and watch the memory."""
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    found = sum(
        check(seed, both_parsers=seed % every == 0) for seed in range(first, first + runs)
    )  # fmt: skip
    assert found > runs / 2  # the damages do damage
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < MOST_MEMORY_KB


def test_every_kind_is_damaged() -> None:
    """The records that are damaged are of every kind that the manual has."""
    kinds = {kind for kind, _ in RECORDS}
    assert kinds <= set(KINDS) and len(kinds) > 10


def test_short_fuzz() -> None:
    """Some damages, the same ones in every run, are findings and nothing else."""
    _run(0, SHORT_RUNS, 5)


@pytest.mark.soak
def test_long_fuzz() -> None:
    """A million damages, from the seed that FUZZ_SEED names, are findings and nothing else."""
    first, runs = (int(os.environ.get(name, "1000000")) for name in ("FUZZ_SEED", "FUZZ_RUNS"))
    _run(first, runs, 10)
