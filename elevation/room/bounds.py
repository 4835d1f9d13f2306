"""What a number in a room may be: finite, of the right sign, and of a size that a house has."""

from __future__ import annotations

import math

from elevation.errors import BadInput, Said, said
from elevation.room.nearest import quoted
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM
from elevation.units.wrong import Amount, Marked, marked

FAR_MM = 100_000.0
"""Longest wall, and the farthest that anything on it can be: 100 m."""

TALL_MM = 20_000.0
"""Highest ceiling, and the highest that anything can be: 20 m."""

DEEP_MM = 5_000.0
"""Farthest that anything stands out from a wall: 5 m."""


class Place:
    """A place in a file, for sentences.

    Parameters
    ----------
    name : str
        The file's name.
    path : str
        The path inside it.
    """

    __slots__ = ("name", "path")

    def __init__(self, name: str, path: str = "") -> None:
        self.name = name
        self.path = path

    def at(self, key: str) -> Place:
        """The place of a field."""
        return Place(self.name, f"{self.path}.{key}" if self.path else key)

    def item(self, key: str, index: int) -> Place:
        """The place of one of several."""
        return self.at(f"{key}[{index}]")

    def cannot(self, fault: Marked, remedy: Marked, **params: str | Amount) -> BadInput:
        """The error to raise here for something that a person may type: it can be said in any language."""
        return BadInput(self.name, self.path, Said(fault, params), Said(remedy, params))

    def bad(self, wrong: str, right: str = "") -> BadInput:
        """The error to raise here."""
        return BadInput(self.name, self.path, wrong, right)


def check_length(length: Length | None, place: Place, low_mm: float, high_mm: float, *, above: bool = False) -> None:
    """Refuse a length that is not finite or outside ``low_mm .. high_mm``.

    Parameters
    ----------
    length : Length or None
        None (not measured) is always right.
    place : Place
        Where it stands.
    low_mm, high_mm : float
        The range, ends included.
    above : bool
        The lower end itself is not allowed: a width of nothing.

    Raises
    ------
    BadInput
        It is outside.
    """
    if length is None:
        return
    if not math.isfinite(length.mm):
        raise place.bad(said("is not a finite length"), said("write for example 50 3/8 in"))
    if above and length.mm <= low_mm + TOUCH_MM:
        raise place.cannot(
            marked("is {length}"), marked("it must be more than {low}"), length=length.text, low=Amount(low_mm)
        )
    if length.mm < low_mm - TOUCH_MM:
        raise place.cannot(
            marked("is {length}"), marked("it must be at least {low}"), length=length.text, low=Amount(low_mm)
        )
    if length.mm > high_mm + TOUCH_MM:
        raise place.cannot(
            marked("is {length}"), marked("it must be at most {high}"), length=length.text, high=Amount(high_mm)
        )


def check_count(count: int, place: Place, low: int, high: int) -> None:
    """Refuse a count outside ``low .. high``.

    Raises
    ------
    BadInput
        It is outside.
    """
    if not low <= count <= high:
        raise place.bad(
            said("is {count}", count=quoted(count)), said("it must be from {low} to {high}", low=low, high=high)
        )
