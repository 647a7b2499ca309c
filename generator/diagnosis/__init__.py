"""What to test first: a complaint's causes and tests to an order, with the reason for each place."""

from generator.diagnosis.order import Order, Place, order

__all__ = ["Order", "Place", "order"]
