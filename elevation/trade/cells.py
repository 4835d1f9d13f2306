"""One cell of a table: text in, a typed value out, or a sentence that says what was expected."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from datetime import date

from msgspec import Struct

from elevation.errors import BadInput, said
from elevation.units.parse import parse_length

MM2_OF = {"ft2": 304.8**2, "in2": 25.4**2, "m2": 1e6, "mm2": 1.0}
N_MM2_OF = {"GPa": 1e3, "MPa": 1.0, "ksi": 6.894757293168361, "psi": 6.894757293168361e-3}
N_OF = {"N": 1.0, "kN": 1e3, "lbf": 4.4482216152605}
_KG_OF = {"g": 1e-3, "kg": 1.0}
_KG_M3_OF = {"kg/m3": 1.0}
_BARE = {"": 1.0}
_AMOUNT = re.compile(r"\s*([0-9]+(?:\.[0-9]+)?)\s*(\S*)\s*\Z")
_MOST = 10_000
LEAST_PITCH_MM = 5.0
_UNIT = re.compile(r"[A-Za-z'\"′″]")


def _amount(cell: str, units: Mapping[str, float]) -> float | None:
    """A number with one of those units, in the unit whose size is 1; None where that is not what is written."""
    found = _AMOUNT.match(cell)
    size = units.get(found[2]) if found is not None else None
    return None if found is None or size is None else float(found[1]) * size


def text(cell: str) -> str:
    """Any text that is not empty."""
    if not cell:
        raise BadInput("", "", said("is empty"), said("write a text"))
    return cell


def length(cell: str) -> float:
    """A length with its unit, in mm. A bare number is refused: in a table a forgotten unit is an error of 25 times."""
    if not _UNIT.search(cell):
        raise BadInput("", "", said('"{cell}" has no unit', cell=cell), said("write for example 3/4 in or 19 mm"))
    return parse_length(cell, "mm").mm


def pitch(cell: str) -> float:
    """A length from one thing to the next like it, in mm: what stood closer than 5 mm could not be told apart."""
    found = length(cell)
    if found < LEAST_PITCH_MM:
        raise BadInput("", "", said('"{cell}" is closer than 5 mm', cell=cell), said("write for example 6 in or 15 cm"))
    return found


class Bounded(Struct, frozen=True):
    """Reads what ``read`` reads and refuses what is not from ``least`` to ``most``, in the unit of the field.

    ``is_above``: ``least`` itself is refused as well.
    """

    read: Callable[[str], float]
    least: float
    most: float = math.inf
    is_above: bool = False

    def __call__(self, cell: str) -> float:
        """The figure of a cell.

        Raises
        ------
        BadInput
            It is too little or too much.
        """
        found = self.read(cell)
        if self.is_above and not found > self.least:
            right = said("write more than {least}", least=f"{self.least:g}")
        elif found < self.least:
            right = said("write {least} or more", least=f"{self.least:g}")
        elif found > self.most:
            right = said("write {most} or less", most=f"{self.most:g}")
        else:
            return found
        raise BadInput("", "", said('"{cell}" cannot be', cell=cell), right)


def more_than(least: float, read: Callable[[str], float]) -> Bounded:
    """A reader that refuses all that is not more than ``least``."""
    return Bounded(read, least, is_above=True)


def between(least: float, most: float, read: Callable[[str], float]) -> Bounded:
    """A reader that refuses what is not from ``least`` to ``most``."""
    return Bounded(read, least, most)


size = more_than(0.0, length)
"""A length with its unit, in mm, of something that is there: more than nothing."""

extent = between(0.0, math.inf, length)
"""A length with its unit, in mm, of what may be missing (0) but never lies on the other side."""


def offsets(cell: str) -> tuple[float, ...]:
    """Lengths with their units to either side of a line, in mm: ``1 in; -2 in``; ``none`` for none."""
    if cell == "none":
        return ()
    found = []
    for part in cell.split(";"):
        bare = part.strip()
        found.append(-length(bare[1:].strip()) if bare.startswith("-") else length(bare))
    return tuple(found)


def area(cell: str) -> float:
    """An area with its unit (ft2, in2, m2, mm2), in mm2."""
    found = _amount(cell, MM2_OF)
    if found is None:
        raise BadInput("", "", said('"{cell}" is not an area', cell=cell), said("write for example 5.7 ft2"))
    return found


def stress(cell: str) -> float:
    """A stress or modulus with its unit (GPa, MPa, ksi, psi), in N/mm2."""
    found = _amount(cell, N_MM2_OF)
    if found is None:
        raise BadInput("", "", said('"{cell}" is not a stress', cell=cell), said("write for example 200 GPa or 30 ksi"))
    return found


def force(cell: str) -> float:
    """A force with its unit (N, kN, lbf), in N."""
    found = _amount(cell, N_OF)
    if found is None:
        raise BadInput("", "", said('"{cell}" is not a force', cell=cell), said("write for example 20 lbf or 90 N"))
    return found


def mass(cell: str) -> float:
    """A mass with its unit (g, kg), in kg."""
    found = _amount(cell, _KG_OF)
    if found is None:
        raise BadInput("", "", said('"{cell}" is not a mass', cell=cell), said("write for example 20 g"))
    return found


def density(cell: str) -> float:
    """A density in kg/m3."""
    found = _amount(cell, _KG_M3_OF)
    if found is None:
        raise BadInput("", "", said('"{cell}" is not a density', cell=cell), said("write for example 7850 kg/m3"))
    return found


def ratio(cell: str) -> float:
    """A bare number without a unit."""
    found = _amount(cell, _BARE)
    if found is None or not math.isfinite(found):
        raise BadInput("", "", said('"{cell}" is not a bare number', cell=cell), said("write for example 2.5"))
    return found


def pack(cell: str) -> tuple[float, bool]:
    """What a price buys: so many pieces, or a length with its unit in mm; with whether it is a length."""
    found, is_length = (length(cell), True) if _UNIT.search(cell) else (ratio(cell), False)
    if found <= 0:
        raise BadInput("", "", f'"{cell}" is nothing', "write how many that price buys, for example 10 or 36 in")
    return found, is_length


def whole(cell: str) -> int:
    """How many there are: a whole number, at most 10 000."""
    found = ratio(cell)
    if found != int(found) or found > _MOST:
        raise BadInput("", "", said('"{cell}" is not a count', cell=cell), said("write for example 12"))
    return int(found)


def length_or_none(cell: str) -> float:
    """A length with its unit in mm; ``none`` for things that are counted: 0."""
    return 0.0 if cell == "none" else length(cell)


def day(cell: str) -> str:
    """A day as year, month and day: ``2026-03-31``."""
    try:
        return date.fromisoformat(cell).isoformat()
    except ValueError:
        raise BadInput("", "", f'"{cell}" is not a day', "write for example 2026-03-31") from None


def yes(cell: str) -> bool:
    """``yes`` or ``no``."""
    if cell not in ("yes", "no"):
        raise BadInput("", "", said('"{cell}" is neither yes nor no', cell=cell), said("write yes or no"))
    return cell == "yes"


def one_of(*words: str) -> Callable[[str], str]:
    """A reader of a cell that must hold one of ``words``."""

    def read(cell: str) -> str:
        if cell not in words:
            raise BadInput(
                "", "", said('"{cell}" is unknown', cell=cell), said("write one of {choices}", choices=", ".join(words))
            )
        return cell

    return read
