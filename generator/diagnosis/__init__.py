"""What to test first: a complaint to an order of tests, with the reason for each place."""

from generator.diagnosis.order import Order, Place, order

__all__ = ["Order", "Place", "order"]
