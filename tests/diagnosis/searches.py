"""Made-up searches for one fault, and slow ways to value them that share no code with ours."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import permutations
from math import prod
from random import Random

from generator.diagnosis.model import Fault, Probe, Search


def simple(*rows: tuple[float, float], concludes_last: bool = False) -> Search:
    """Give a search with one perfect test for each fault, from (p, c)."""
    return Search(
        faults=tuple(Fault(f"f{n}", p) for n, (p, _) in enumerate(rows)),
        probes=tuple(
            Probe(id=f"t{n}", minutes=c, proves={f"f{n}": 1.0}) for n, (_, c) in enumerate(rows)
        ),
        concludes_last=concludes_last,
    )


def drawn(random: Random, tests: int, *, pointing: float = 0.3) -> Search:
    """Give a random search: shared and imperfect tests, set-up, prerequisites, false alarms."""
    faults = [f"f{n}" for n in range(random.randint(2, 6))]
    probes = []
    for n in range(tests):
        shown = random.sample(faults, random.randint(1, min(3, len(faults))))
        proves: dict[str, float] = {}
        points: dict[str, float] = {}
        for name in shown:
            # Short of 1: a fault ruled out for good makes later tests idle, which a search leaves
            # out and a fixed order of all tests still pays. Perfect tests have cases of their own.
            share = round(random.uniform(0.3, 0.99), 2)
            (points if random.random() < pointing else proves)[name] = share
        probes.append(
            Probe(
                id=f"t{n}",
                minutes=random.randint(1, 40),
                proves=proves,
                points=points,
                specificity=round(random.uniform(0.85, 1), 2),
                wrong_minutes=random.choice([0, 60]),
                after=frozenset(f"t{k}" for k in range(n) if random.random() < 0.12),
                leaves=frozenset(g for g in "abc" if random.random() < 0.3),
                takes=frozenset(g for g in "abc" if random.random() < 0.3),
            )
        )
    weights = [random.randint(1, 40) for _ in faults]
    return Search(
        faults=tuple(Fault(f, w) for f, w in zip(faults, weights, strict=True)),
        probes=tuple(probes),
        setup_minutes={"a": 3, "b": 6, "c": 2},
    )


def cost_of_sequence(search: Search, sequence: Sequence[str]) -> float:
    """Give the expected minutes of a fixed sequence of tests that only prove.

    Written straight from the definition: each test is paid with the probability that nothing
    before it has shown the fault, and its false alarms with that of the faults it cannot show.
    """
    probes = {probe.id: probe for probe in search.probes}
    total = sum(fault.weight for fault in search.faults)
    cost = 0.0
    for n, id_ in enumerate(sequence):
        probe = probes[id_]
        saved = 0.0
        if n:
            shared = probes[sequence[n - 1]].leaves & probe.takes
            saved = min(sum(search.setup_minutes[g] for g in shared), probe.minutes / 2)
        for fault in search.faults:
            alive = (
                fault.weight
                / total
                * prod(1 - probes[earlier].proves.get(fault.name, 0.0) for earlier in sequence[:n])
            )
            cost += alive * (probe.minutes - saved)
            if fault.name not in probe.proves:
                cost += alive * (1 - probe.specificity) * probe.wrong_minutes
    return cost


def best_sequence(search: Search) -> float:
    """Give the least of all orders, by trying each."""
    probes = {probe.id: probe for probe in search.probes}
    pairs = [(a, id_) for id_, probe in probes.items() for a in probe.after]
    pairs += search.precedence
    return min(
        cost_of_sequence(search, way)
        for way in permutations(probes)
        if all(way.index(first) < way.index(second) for first, second in pairs)
    )


def best_tree(search: Search) -> float:
    """Give the least over all ways to react to what is found, history by history."""
    probes = {probe.id: probe for probe in search.probes}
    weights = {f.name: f.weight / sum(g.weight for g in search.faults) for f in search.faults}

    def probability(probe: Probe, fault: str, pointed: bool) -> float:
        if fault in probe.proves:
            return 0.0 if pointed else 1 - probe.proves[fault]
        if fault in probe.points:
            return probe.points[fault] if pointed else 1 - probe.points[fault]
        if probe.points and not probe.proves:
            return 1 - probe.specificity if pointed else probe.specificity
        return 0.0 if pointed else 1.0

    @cache
    def value(history: tuple[tuple[str, bool], ...]) -> float:
        mass = {
            fault: weight * prod(probability(probes[i], fault, pointed) for i, pointed in history)
            for fault, weight in weights.items()
        }
        made = {id_ for id_, _ in history}
        telling = {
            id_ for id_, probe in probes.items()
            if id_ not in made and any(mass[f] > 1e-12 for f in (*probe.proves, *probe.points))
        }  # fmt: skip
        wanted = set(telling)
        while more := {a for id_ in wanted for a in probes[id_].after} - made - wanted:
            wanted |= more
        if not wanted:
            return 0.0
        ways = []
        for id_ in wanted:
            probe = probes[id_]
            if not probe.after <= made:
                continue
            saved = 0.0
            if history:
                shared = probes[history[-1][0]].leaves & probe.takes
                saved = min(sum(search.setup_minutes[g] for g in shared), probe.minutes / 2)
            cost = sum(mass.values()) * (probe.minutes - saved)
            if probe.proves:
                strangers = set(mass) - set(probe.proves) - set(probe.points)
                cost += sum(mass[f] for f in strangers) * (
                    (1 - probe.specificity) * probe.wrong_minutes
                )
            cost += value((*history, (id_, False)))
            if probe.points:
                cost += value((*history, (id_, True)))
            ways.append(cost)
        return min(ways)

    return value(())
