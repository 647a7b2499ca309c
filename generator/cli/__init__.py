"""The command line."""

from generator.cli.main import main

__all__ = ["main"]
