"""Areas, masses and forces in the units that a reader knows, converted by pint.

pint is imported at the first conversion and never sees a person's text: it reads ``63 1/2 in`` as 31.5 in. Lengths are
read by ``parse`` and shown by ``format``, which are exact; everything here is for showing, in floats.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pint import UnitRegistry

KNOWN = frozenset(
    {
        "mm", "cm", "m", "inch", "foot", "yard",
        "mm**2", "cm**2", "m**2", "inch**2", "foot**2", "yard**2",
        "g", "kg", "ounce", "pound",
        "N", "kN", "force_pound", "kg * standard_gravity",
        "g/m**2", "ounce/yard**2",
        "N/mm**2", "psi",
    }
)  # fmt: skip
"""Units that the program converts between: written in code, never taken from a file or a field."""


@lru_cache(maxsize=1)
def registry() -> UnitRegistry[Any]:
    """The one registry, made at first use, from pint's own cache where the machine lets it be written."""
    from pint import UnitRegistry

    try:
        made: UnitRegistry[Any] = UnitRegistry(cache_folder=":auto:")
        # The cache is written at the first look-up.
        made.Unit("mm")
    except OSError:
        made = UnitRegistry()
    return made


@lru_cache(maxsize=256)
def factor(from_unit: str, to_unit: str) -> float:
    """How many of ``to_unit`` one ``from_unit`` is.

    Raises
    ------
    ValueError
        A unit that is not in ``KNOWN``, or two of different kinds.
    """
    for unit in (from_unit, to_unit):
        if unit not in KNOWN:
            raise ValueError(f"no such unit: {unit!r}")
    from pint import DimensionalityError

    units = registry()
    try:
        return float(units.Quantity(1.0, from_unit).m_as(to_unit))
    except DimensionalityError as wrong:
        raise ValueError(str(wrong)) from None


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """``value`` of ``from_unit`` in ``to_unit``; both from ``KNOWN``."""
    return value * factor(from_unit, to_unit)


def format_area(area_mm2: float, style_unit: str, *, decimal_mark: str = ".") -> str:
    """An area in mm2 as "14.3 sq ft" for inch rooms or "1.33 m²" for mm rooms."""
    if style_unit == "in":
        return f"{convert(area_mm2, 'mm**2', 'foot**2'):.1f}".replace(".", decimal_mark) + " sq ft"
    return f"{convert(area_mm2, 'mm**2', 'm**2'):.2f}".replace(".", decimal_mark) + " m²"


def format_mass(mass_kg: float, style_unit: str, *, decimal_mark: str = ".") -> str:
    """A mass in kg as "5.3 lb" for inch rooms or "2.4 kg" for mm rooms."""
    if style_unit == "in":
        return f"{convert(mass_kg, 'kg', 'pound'):.1f}".replace(".", decimal_mark) + " lb"
    return f"{mass_kg:.1f}".replace(".", decimal_mark) + " kg"


def format_force(force_n: float, style_unit: str, *, decimal_mark: str = ".") -> str:
    """A force in N as "12 lbf" for inch rooms or "53 N" for mm rooms."""
    if style_unit == "in":
        return f"{convert(force_n, 'N', 'force_pound'):.0f}".replace(".", decimal_mark) + " lbf"
    return f"{force_n:.0f}".replace(".", decimal_mark) + " N"
