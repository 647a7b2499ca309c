"""A record that nobody has looked at for too long.

Wrong: On the day asked about, the last review or approval lies further back than the interval in
the settings: two years, or one for work that carries a DANGER or WARNING box.

Why: Parts are superseded and makers change their data; an old page is trusted like a new one.

Mend: Read it against its sources, mend it, and put the reviewer and the day under `reviewed`.

Fails, in terms/air-gap:

    reviewed:
      by: technician
      date: 2023-09-14
    approved:
      by: workshop-lead
      date: 2023-09-21

Passes:

    reviewed:
      by: technician
      date: 2026-09-14
    approved:
      by: workshop-lead
      date: 2026-09-21
"""

from __future__ import annotations

import calendar
import datetime

from generator.checks.fault_page import fault
from generator.hazards import Word, guard, word_of
from generator.problems import Problem, Severity
from generator.records.kinds import Record
from generator.records.kinds.knowledge import Hazard
from generator.records.kinds.work import Job
from generator.records.knowledge_base import KnowledgeBase, Path

REVIEW_OVERDUE = fault("review-overdue", __doc__, Severity.WARNING)

DANGEROUS = (Word.DANGER, Word.WARNING)


def problems(kb: KnowledgeBase, as_of: datetime.date) -> list[Problem]:
    """Give a warning for each released record whose review was due before a day.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    as_of : date
        The day; a review that is due on it is not overdue yet.
    """
    found = []
    for record in kb:
        last, until = _last_looked_at(record), due(kb, record)
        if record.status == "approved" and last is not None and until is not None and until < as_of:
            path, day = last
            found.append(
                kb.problem(
                    REVIEW_OVERDUE, record, path,
                    f"it was last looked at on {day}, so its review was due on {until}",
                    "read it against its sources, and put reviewer and day under reviewed",
                )
            )  # fmt: skip
    return found


def due(kb: KnowledgeBase, record: Record) -> datetime.date | None:
    """Give the last day on which a record's next review is in time; None where it had none yet."""
    last = _last_looked_at(record)
    if last is None:
        return None
    every = kb.settings.review_every
    months = every.months_with_danger if _is_dangerous(kb, record) else every.months
    return later(last[1], months)


def later(day: datetime.date, months: int) -> datetime.date:
    """Give the day some months later; the last of a month where that month is shorter."""
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    last = calendar.monthrange(year, month + 1)[1]
    return datetime.date(year, month + 1, min(day.day, last))


def _last_looked_at(record: Record) -> tuple[Path, datetime.date] | None:
    """Give the later of review and approval: where it stands, and the day."""
    dated = [
        ((name, "date"), signed.date)
        for name in ("reviewed", "approved")
        if (signed := getattr(record, name)) is not None
    ]
    return max(dated, key=lambda pair: pair[1]) if dated else None


def _is_dangerous(kb: KnowledgeBase, record: Record) -> bool:
    if isinstance(record, Job):
        return kb.remember("dangerous", record.key, lambda: _warns(kb, record))
    return isinstance(record, Hazard) and word_of(record) in DANGEROUS


def _warns(kb: KnowledgeBase, job: Job) -> bool:
    return any(line.word in DANGEROUS for line in guard(kb, job).summary)
