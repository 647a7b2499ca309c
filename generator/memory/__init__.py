"""What was worked out once need not be worked out again, as long as what it came from stands.

Nobody declares what a result depends on. Records are read through :class:`Watched` mappings, and
:class:`Memory` writes down what was read while a result was made. At the next run a result stands
if nothing that was read has changed, and is made anew otherwise.
"""

from __future__ import annotations

from generator.memory.trace import Memory, Result
from generator.memory.watched import Watched, watched

__all__ = ["Memory", "Result", "Watched", "watched"]
