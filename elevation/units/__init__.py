"""Lengths and quantities in and out: parsing, formatting, rounding, tolerance."""

from elevation.units.format import format_at_mark, format_length, format_mark
from elevation.units.length import Length
from elevation.units.parse import parse_length
from elevation.units.reconcile import Chain, reconcile, reconcile_chain
from elevation.units.rounding import mark_of, mm_of_mark, quantise
from elevation.units.writing import length_of
from elevation.units.wrong import BadLength

__all__ = [
    "BadLength",
    "Chain",
    "Length",
    "format_at_mark",
    "format_length",
    "format_mark",
    "length_of",
    "mark_of",
    "mm_of_mark",
    "parse_length",
    "quantise",
    "reconcile",
    "reconcile_chain",
]
