"""Lengths and quantities in and out: parsing, formatting, rounding, tolerance."""

from elevation.units.length import Length

__all__ = ["Length"]
