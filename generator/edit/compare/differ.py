"""Two checked manuals in, every effect for the reader out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from generator.edit.compare import cautions, values
from generator.edit.compare.effects import Comparison, Effect, Sort
from generator.hazards import rules_for
from generator.pages import routes
from generator.pages.book import Book
from generator.records.kinds import Record
from generator.records.kinds.base import links_of
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

CONTROL = ("author", "owner", "reviewed", "approved", "status")
HANDLED = frozenset((*CONTROL, "exceptions", "steps", "outcomes"))
"""Fields that have effects of their own; every other field is compared as it reads."""

COMPUTED = frozenset(("value", "at", "model", "band", "needs"))
"""Fields of a value whose effect is the limits that come of them."""


def compare(before: KnowledgeBase, after: KnowledgeBase) -> Comparison:
    """Give what a reader finds otherwise.

    Parameters
    ----------
    before, after : KnowledgeBase
        Two versions of a manual, checked; no error stands in either.

    Returns
    -------
    Comparison
        Every effect. What changes in the files and not for the reader is none: a key moved, a
        comment, a fact that calls for the same cautions, a reference that follows a new name.
    """
    old, new = Book.of(before.released()), Book.of(after.released())
    names = _names(before, after)
    found: list[Effect] = []
    found += _pages(old.kb, new.kb, names)
    found += _values(old.kb, new.kb, names)
    found += _jobs(old, new, names)
    found += cautions.rule_effects(before, after)
    for key, record in _by_key(new.kb).items():
        was = _by_key(old.kb).get(_back(names).get(key, key))
        if was is not None:
            found += _record(was, record, names)
            found += _exceptions(was, record)
    found += _orders(old, new, names)
    return Comparison.of(found)


def _by_key(kb: KnowledgeBase) -> dict[str, Record]:
    return {record.key: record for record in kb}


def _names(before: KnowledgeBase, after: KnowledgeBase) -> dict[str, str]:
    """Give old record keys to new ones, for each record that was renamed in between."""
    known = {(m.kind, m.old) for m in before.settings.moved}
    there = {record.key for record in before}
    return {
        f"{m.kind}/{m.old}": f"{m.kind}/{m.new}"
        for m in after.settings.moved
        if (m.kind, m.old) not in known and f"{m.kind}/{m.old}" in there
    }


def _back(names: Mapping[str, str]) -> dict[str, str]:
    return {new: old for old, new in names.items()}


def _pages(old: KnowledgeBase, new: KnowledgeBase, names: Mapping[str, str]) -> Iterator[Effect]:
    was, now = _by_key(old), _by_key(new)
    came_from = _back(names)
    for key, record in was.items():
        after = now.get(names.get(key, key))
        if after is None:
            sort = Sort.VALUE_GONE if record.kind == "specs" else Sort.PAGE_GONE
            yield Effect(sort, key, record.title, _place(record))
        elif key in names:
            yield Effect(
                Sort.PAGE_MOVED, after.key, after.title, "it has another name", key, after.key
            )  # fmt: skip
    for key, record in now.items():
        if came_from.get(key, key) not in was:
            sort = Sort.VALUE_NEW if record.kind == "specs" else Sort.PAGE_NEW
            yield Effect(sort, key, record.title, _place(record))


def _place(record: Record) -> str:
    if record.kind in routes.PAGED:
        return "a page of its own"
    return "a value" if record.kind == "specs" else "an entry of a list"


def _values(old: KnowledgeBase, new: KnowledgeBase, names: Mapping[str, str]) -> Iterator[Effect]:
    came_from = _back(names)
    for spec in new.all("specs", Spec):
        was = _by_key(old).get(came_from.get(spec.key, spec.key))
        if isinstance(was, Spec):
            judges = spec.standing != "plausibility_band"
            yield from values.effects(
                spec, values.lines(old, was), values.lines(new, spec), judges
            )  # fmt: skip


def _jobs(old: Book, new: Book, names: Mapping[str, str]) -> list[Effect]:
    """Give what is otherwise about steps; what a called procedure brings is told there, once."""
    titles = {rule.id: rule.title for kb in (old.kb, new.kb) for rule in rules_for(kb)}
    came_from = _back(names)
    found = [
        effect
        for key, guarded in new.guarded.items()
        if (was := old.guarded.get(came_from.get(key, key))) is not None
        for effect in cautions.job_effects(was, guarded, titles, names)
    ]
    own = {_same(effect) for effect, written_in in found if written_in == effect.record}
    return [
        effect
        for effect, written_in in found
        if written_in == effect.record or _same(effect) not in own
    ]


def _same(effect: Effect) -> tuple[Any, ...]:
    """Give what makes two effects the same but for the job and the number of the step."""
    return effect.sort, effect.what.partition(" ")[2].partition(" ")[2], effect.before, effect.after


def _record(was: Record, now: Record, names: Mapping[str, str]) -> Iterator[Effect]:
    old, new = _data(was, names), now.model_dump(mode="json")
    if isinstance(was, Test) and isinstance(now, Test):
        yield from _outcomes(now, old["outcomes"], new["outcomes"])
    for name in type(now).model_fields:
        if old.get(name) == new.get(name) or name in HANDLED:
            continue
        if isinstance(now, Spec) and name in COMPUTED:
            continue
        sort = Sort.LINK if _links(new.get(name)) and _links(old.get(name)) else Sort.WORDS
        yield Effect(
            sort, now.key, now.title, name.replace("_", " "), *_differing(old[name], new[name])
        )  # fmt: skip
    for name in CONTROL:
        if old.get(name) != new.get(name):
            yield Effect(
                Sort.CONTROL, now.key, now.title, name, _flat(old.get(name)), _flat(new.get(name))
            )  # fmt: skip


def _data(record: Record, names: Mapping[str, str]) -> dict[str, Any]:
    """Give a record as plain data, each link to a renamed record by its new name."""
    data = record.model_dump(mode="json")
    for path, kinds, id_ in links_of(record, keys=True):
        new = next((names[f"{k}/{id_}"] for k in kinds if f"{k}/{id_}" in names), None)
        if new is not None:
            _put(data, path, id_, new.partition("/")[2])
    return data


def _put(data: Any, path: tuple[str | int, ...], old: str, new: str) -> None:
    """Put the new name at a path, which ends at a value or at a key."""
    *way, last = path
    for segment in way:
        data = data[segment]
    if isinstance(data, dict) and last == old:
        data[new] = data.pop(old)
    else:
        data[last] = new


def _links(value: Any) -> bool:
    """Say whether a field reads like a list of ids."""
    return isinstance(value, list) and all(isinstance(one, str) and " " not in one for one in value)


def _differing(old: Any, new: Any) -> tuple[str, str]:
    """Give what of two fields differs: of lists the items, of the rest the whole."""
    if isinstance(old, list) and isinstance(new, list):
        gone = [one for one in old if one not in new]
        come = [one for one in new if one not in old]
        if gone or come:
            return _flat(gone), _flat(come)
    return _flat(old), _flat(new)


def _flat(value: Any) -> str:
    """Give a field's content in one line."""
    if isinstance(value, dict):
        if "text" in value:
            return str(value["text"])
        return ", ".join(
            f"{key.replace('_', ' ')} {_flat(item)}" for key, item in value.items() if _flat(item)
        )
    if isinstance(value, list):
        return "; ".join(_flat(item) for item in value)
    return "" if value is None else str(value)


def _outcomes(test: Test, was: list[Any], now: list[Any]) -> Iterator[Effect]:
    old = {(one["finding"], one["label"]): one for one in was}
    new = {(one["finding"], one["label"]): one for one in now}
    gone, come = [n for n in old if n not in new], [n for n in new if n not in old]
    for name in list(gone):  # the same finding under another label is re-worded, not another
        other = next((c for c in come if c[0] == name[0]), None)
        if other is not None:
            gone.remove(name)
            come.remove(other)
            yield _outcome(test, name[0], "label", name[1], other[1])
            yield from _one_outcome(test, old[name], new[other])
    for name in gone:
        yield _outcome(test, name[0], "no longer told", name[1], "")
    for name in come:
        yield _outcome(test, name[0], "new", "", f"{name[1]}: {new[name]['verdict']}")
    for name in old.keys() & new.keys():
        yield from _one_outcome(test, old[name], new[name])


def _one_outcome(test: Test, old: Mapping[str, Any], new: Mapping[str, Any]) -> Iterator[Effect]:
    for name in ("verdict", "reading", "about", "means", "next"):
        if old[name] != new[name]:
            yield _outcome(test, new["finding"], name, _flat(old[name]), _flat(new[name]))


def _outcome(test: Test, finding: str, name: str, before: str, after: str) -> Effect:
    sort = {"verdict": Sort.VERDICT, "next": Sort.LINK}.get(name, Sort.OUTCOME)
    words = finding.replace("_", " ")
    return Effect(sort, test.key, test.title, f"found {words}, {name}", before, after)


def _exceptions(was: Record, now: Record) -> Iterator[Effect]:
    old = {one.check: one.reason for one in was.exceptions}
    new = {one.check: one.reason for one in now.exceptions}
    for check, reason in new.items():
        if old.get(check) != reason:
            yield Effect(
                Sort.EXCEPTION, now.key, now.title, check, old.get(check, ""), reason
            )  # fmt: skip
    for check in old.keys() - new.keys():
        yield Effect(Sort.EXCEPTION_GONE, now.key, now.title, check, old[check])


def _orders(old: Book, new: Book, names: Mapping[str, str]) -> Iterator[Effect]:
    came_from = _back(names)
    for id_, by_vehicle in new.orders.items():
        symptom = new.kb.get("symptoms", id_, Symptom)
        before = old.orders.get(came_from.get(symptom.key, symptom.key).partition("/")[2], {})
        for vehicle, order in by_vehicle.items():
            was = before.get(came_from.get(f"vehicles/{vehicle}", f"vehicles/{vehicle}")[9:])
            if was is None:
                continue
            tests = [
                names.get(place.test.key, place.test.key).partition("/")[2] for place in was.places
            ]
            now = [place.test.id for place in order.places]
            if tests != now:
                yield Effect(
                    Sort.ORDER, symptom.key, symptom.title, f"on {vehicle}",
                    ", ".join(tests), ", ".join(now),
                )  # fmt: skip
