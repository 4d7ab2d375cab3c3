"""Combwright: from the keeper's notes to the next round."""

__version__ = "0.1.0"
