"""Masses as people type them: kilograms or pounds; and weights of cloth: grams a square metre or ounces a square yard."""

from __future__ import annotations

import re

from elevation.errors import BadInput, said

KG_A_LB = 0.45359237
"""Kilograms in a pound, by definition."""

G_M2_AN_OZ_YD2 = KG_A_LB / 16 * 1000 / 0.9144**2
"""Grams a square metre in an ounce a square yard, by definition of both: 33.906."""

_AREAL = re.compile(r"\s*(\d+(?:[.,]\d+)?)\s*(?:(g|gsm|g/m2|g/m\u00b2)|(oz|oz/yd2|oz/yd\u00b2))?\s*\Z", re.IGNORECASE)

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
        raise BadInput("", "", said('"{text}" is no mass', text=text), said("write for example 4 kg or 9 lb"))
    value = float(found[1].replace(",", "."))
    asked = (found[2] or ("lb" if unit == "in" else "kg")).lower()
    return value if asked == "kg" else value * KG_A_LB


def say_kg(mass_kg: float, unit: str) -> str:
    """A mass as ``read_kg`` reads it, in pounds in a room of inches; four figures are more than any packet gives."""
    value = mass_kg / KG_A_LB if unit == "in" else mass_kg
    return f"{value:.4g} {'lb' if unit == 'in' else 'kg'}"


def read_grams(text: str, unit: str) -> float:
    """What a square metre of cloth weighs in grams, from what was typed.

    Parameters
    ----------
    text : str
        Such as ``180 g``, ``180 g/m2``, ``5.3 oz`` (a square yard) or ``180``.
    unit : str
        The room's: a bare number is ounces a square yard in a room of inches, else grams a square metre; but one above 40
        is grams, for no cloth weighs 40 ounces.

    Raises
    ------
    BadInput
        It is no weight of cloth.
    """
    found = _AREAL.match(text)
    if found is None:
        raise BadInput("", "", said('"{text}" is no weight of cloth', text=text), said("write for example 180 g or 5.3 oz"))
    value = float(found[1].replace(",", "."))
    is_ounces = found[3] is not None or (found[2] is None and unit == "in" and value <= 40)
    return value * G_M2_AN_OZ_YD2 if is_ounces else value


def say_grams(grams: float, unit: str) -> str:
    """A weight of cloth as ``read_grams`` reads it."""
    return f"{grams / G_M2_AN_OZ_YD2:.4g} oz" if unit == "in" else f"{grams:.4g} g"
