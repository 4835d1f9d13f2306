"""Places brought to the tape: running marks from one datum, and the lengths between them, which add up."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.units.rounding import mark_of, mm_of_mark


class Running(Struct, frozen=True, gc=False):
    """Marks from 0 on, each brought to the tape by itself, and the lengths between them: what a tape shows.

    A mark is never off by more than half a graduation, however many stand before it; the lengths add up because they
    are the differences of the marks.
    """

    marks_mm: tuple[float, ...]
    between_mm: tuple[float, ...]


def running(places_mm: Sequence[float], graduation_mm: float) -> Running:
    """Running marks of places in mm, in order.

    Parameters
    ----------
    places_mm : sequence of float
        From the datum, the datum itself (0) among them if it is to be marked.
    graduation_mm : float
        The tape's smallest mark.
    """
    marks = [mark_of(place, graduation_mm) for place in places_mm]
    return Running(
        tuple(mm_of_mark(mark, graduation_mm) for mark in marks),
        tuple(mm_of_mark(b - a, graduation_mm) for a, b in pairwise(marks)),
    )
