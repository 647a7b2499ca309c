"""What a change does to the reader: two versions of a manual, and the effects between them."""

from generator.edit.compare.differ import compare
from generator.edit.compare.effects import Comparison, Effect, Sort

__all__ = ["Comparison", "Effect", "Sort", "compare"]
