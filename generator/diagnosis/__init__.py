"""What to test first: a complaint to an order of tests, with the reason for each place."""

from generator.diagnosis.evidence import Evidence
from generator.diagnosis.order import Odds, Order, Place, odds_of, order

__all__ = ["Evidence", "Odds", "Order", "Place", "odds_of", "order"]
