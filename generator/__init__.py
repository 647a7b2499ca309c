"""Fettlebook: vehicle-repair records in, a trusted manual out."""

__version__ = "0.1.0"
