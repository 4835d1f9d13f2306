"""Cloth to buy: finished and flat width, widths of usable cloth, cut lengths with hems and pattern repeat.

Every sum is exact: lengths come in as millimetres, are taken as the rational they stand for, and three widths of 50 in are
150 in, never a hair more. Four published conventions say what fullness multiplies; ``Convention`` names them.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Literal

from msgspec import Struct

from elevation.units.graduation import ratio_of

Convention = Literal["all", "rod", "fixed", "narrower"]
"""What fullness multiplies.

``all``: rod, overlap and returns; hems are inside (workroom formulas: mylltd.com/commonly-used-formulas.html).
``rod``: the rod alone; returns and side hems are added after (ehow.co.uk/how_6326063; V. Willis, mycurtainstyles.com).
``fixed``: the rod alone, and a fixed sum for all the rest (et-wholesale.com.au, instruction sheet).
``narrower``: as ``all``, and every width counts less what selvedge and seam take (drapesmadeeasy.com).
"""

_FINEST = 1_000_000


def exact(mm: float) -> Fraction:
    """The rational number of millimetres that a float stands for: 1371.6 is 6858/5, whatever its last bits are."""
    return Fraction(mm).limit_denominator(_FINEST)


class Width(Struct, frozen=True, gc=False):
    """How wide cloth is made: finished, flat before pleating, and how many widths of cloth that takes.

    ``widths`` is a whole number, or a multiple of a half where half widths are bought.
    """

    finished_mm: float
    flat_mm: float
    widths: float


def finished_width(face_mm: float, overlap_mm: float, returns_mm: float) -> Fraction:
    """What finished cloth covers: the rod's face, the overlap in the middle and all returns to the wall."""
    return exact(face_mm) + exact(overlap_mm) + exact(returns_mm)


def flat_width(
    convention: Convention,
    face_mm: float,
    overlap_mm: float,
    returns_mm: float,
    fullness: float,
    side_hems_mm: float,
    fixed_mm: float,
) -> Fraction:
    """Flat cloth, in mm.

    Parameters
    ----------
    convention : str
        What fullness multiplies (``Convention``).
    face_mm, overlap_mm, returns_mm : float
        Rod's face; overlap and returns in all.
    fullness : float
        Flat over finished.
    side_hems_mm : float
        All side hems together; only ``rod`` adds them.
    fixed_mm : float
        What ``fixed`` adds.
    """
    times = exact(fullness)
    if convention == "rod":
        return exact(face_mm) * times + exact(returns_mm) + exact(overlap_mm) + exact(side_hems_mm)
    if convention == "fixed":
        return exact(face_mm) * times + exact(fixed_mm)
    return finished_width(face_mm, overlap_mm, returns_mm) * times


def widths_of(flat_mm: Fraction | float, usable_mm: float, *, halves: bool = False) -> Fraction:
    """Widths of cloth that make ``flat_mm``, rounded up to whole ones, or to halves.

    Parameters
    ----------
    flat_mm : Fraction or float
    usable_mm : float
        Of one width; more than 0.
    halves : bool
        A width may be parted between two panels.

    Raises
    ------
    ValueError
        There is no cloth to a width.
    """
    flat, usable = exact(float(flat_mm)) if isinstance(flat_mm, float) else flat_mm, exact(usable_mm)
    if usable <= 0:
        raise ValueError("cloth without width")
    step = 2 if halves else 1
    return Fraction(math.ceil(flat * step / usable), step)


def cut_length(finished_mm: float, heading_mm: float, hem_mm: float, shrinks: float = 0.0) -> Fraction:
    """Length of one cut before any pattern: finished length, heading and hem, and what the first wash will take."""
    cut = exact(finished_mm) + exact(heading_mm) + exact(hem_mm)
    return cut / (1 - exact(shrinks))


def to_mark(length_mm: Fraction, graduation_mm: float) -> Fraction:
    """The length up to the tape's next mark: a hair too long is right, a hair too short is not."""
    step = Fraction(*ratio_of(graduation_mm))
    return math.ceil(length_mm / step) * step


def to_repeat(cut_mm: Fraction, repeat_mm: float, *, add_one: bool = False) -> Fraction:
    """A cut that starts at the same place of the pattern each time.

    Parameters
    ----------
    cut_mm : Fraction
    repeat_mm : float
        0: plain cloth.
    add_one : bool
        The older rule: one repeat more to every cut, instead of the next whole number of repeats.
    """
    repeat = exact(repeat_mm)
    if repeat <= 0:
        return cut_mm
    return cut_mm + repeat if add_one else math.ceil(cut_mm / repeat) * repeat


def drop_match(cut_mm: Fraction, patterned_mm: Fraction, repeat_mm: float, cuts: int) -> Fraction:
    """What a half-drop pattern adds to the whole order: nothing for one cut or where each has half a repeat to spare.

    Else one repeat (livingstonetextiles.com, half drop repeat, 2011; the slack: mydecozo.co.uk forum).
    """
    repeat = exact(repeat_mm)
    if cuts < 2 or repeat <= 0 or patterned_mm - cut_mm >= repeat / 2:
        return Fraction(0)
    return repeat


def sold(total_mm: Fraction | float, step_mm: float) -> Fraction:
    """Cloth as it is sold: up to the next step (half a yard, half a metre)."""
    total = exact(float(total_mm)) if isinstance(total_mm, float) else total_mm
    step = exact(step_mm)
    return math.ceil(total / step) * step


def can_railroad(bolt_mm: float, cut_mm: Fraction, *, one_way: bool) -> bool:
    """Whether cloth may be turned on its side: as wide as the drop with heading and hem, without pile or one-way print."""
    return not one_way and exact(bolt_mm) >= cut_mm


class Split(Struct, frozen=True, gc=False):
    """How widths are parted among panels alike: whole ones each, and whether each has half a width more.

    The half stands at the return side, out of sight.
    """

    whole: int
    half: bool


def split(widths: Fraction, panels: int) -> Split | None:
    """Widths parted evenly among ``panels``; None where they do not part into halves."""
    each = widths / panels
    if (2 * each).denominator != 1:
        return None
    return Split(int(each), each.denominator == 2)
