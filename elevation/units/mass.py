"""Masses as people type them: kilograms or pounds."""

from __future__ import annotations

import re

from elevation.errors import BadInput

KG_A_LB = 0.45359237
"""Kilograms in a pound, by definition."""

_MASS = re.compile(r"\s*(\d+(?:[.,]\d+)?)\s*(kg|lb|lbs)?\s*\Z", re.IGNORECASE)


def read_kg(text: str, unit: str) -> float:
    """A mass in kg from what was typed.

    Parameters
    ----------
    text : str
        Such as ``4 kg``, ``8.5 lb`` or ``4``.
    unit : str
        The room's: a bare number is pounds in a room of inches, else kilograms.

    Raises
    ------
    BadInput
        It is no mass.
    """
    found = _MASS.match(text)
    if found is None:
        raise BadInput("", "", f'"{text}" is no mass', "write for example 4 kg or 9 lb")
    value = float(found[1].replace(",", "."))
    asked = (found[2] or ("lb" if unit == "in" else "kg")).lower()
    return value if asked == "kg" else value * KG_A_LB


def say_kg(mass_kg: float, unit: str) -> str:
    """A mass as ``read_kg`` reads it, in pounds in a room of inches; four figures are more than any packet gives."""
    value = mass_kg / KG_A_LB if unit == "in" else mass_kg
    return f"{value:.4g} {'lb' if unit == 'in' else 'kg'}"
