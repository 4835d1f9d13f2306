"""Pleats: how many, how much cloth each takes up, what lies between them, and where they are marked.

``take-up = flat - finished``, ``pleat = take-up / number``, ``space = (finished - leading - return) / (number - 1)``
(How to Make Draperies, Singer Sewing Library 102, 1960; S. Woodcock 2019; a UK workroom course).
"""

from __future__ import annotations

from msgspec import Struct

MOST = 400
"""More pleats than this in one panel are a slip of the pen, not a curtain."""


class Pleats(Struct, frozen=True, gc=False):
    """The pleats of one panel, in mm.

    ``at_mm`` are their middles from the leading edge along the finished heading; ``marks_mm`` where each begins and ends on
    the flat panel, from its leading edge.
    """

    count: int
    take_up_mm: float
    space_mm: float
    at_mm: tuple[float, ...]
    marks_mm: tuple[tuple[float, float], ...]


def count_of(take_up_mm: float, between_mm: float, pleat: tuple[float, float], space: tuple[float, float]) -> int:
    """How many pleats suit best.

    Parameters
    ----------
    take_up_mm : float
        Flat less finished width: all pleats together.
    between_mm : float
        Finished width less leading edge and return: all spaces together.
    pleat, space : (low, high)
        What is usual, mm.

    Returns
    -------
    int
        At least 2: that whose space and pleat lie nearest to the middle of what is usual, each against its own range;
        at a draw the fewer.
    """
    middle_pleat, middle_space = sum(pleat) / 2, sum(space) / 2
    if take_up_mm <= 0 or between_mm <= 0 or middle_pleat <= 0 or middle_space <= 0:
        return 0
    most = min(MOST, max(2, int(max(take_up_mm / middle_pleat, between_mm / middle_space)) + 2))

    def miss(count: int) -> float:
        got_pleat, got_space = take_up_mm / count, between_mm / (count - 1)
        return max(abs(got_pleat / middle_pleat - 1), abs(got_space / middle_space - 1))

    return min(range(2, most + 1), key=lambda count: (round(miss(count), 12), count))


def pleats_of(
    flat_mm: float,
    finished_mm: float,
    leading_mm: float,
    return_mm: float,
    pleat: tuple[float, float],
    space: tuple[float, float],
    count: int | None = None,
) -> Pleats | None:
    """The pleats of one panel.

    Parameters
    ----------
    flat_mm : float
        Hemmed panel laid flat.
    finished_mm : float
        With overlap and return.
    leading_mm, return_mm : float
        Left flat at the leading edge and at the return.
    pleat, space : (low, high)
        What is usual, mm.
    count : int or None
        How many are wanted; None: what suits best.

    Returns
    -------
    Pleats or None
        None where there is nothing to pleat, or no room for two.
    """
    take_up, between = flat_mm - finished_mm, finished_mm - leading_mm - return_mm
    number = count_of(take_up, between, pleat, space) if count is None else count
    if number < 2 or number > MOST or take_up <= 0 or between <= 0:
        return None
    each, apart = take_up / number, between / (number - 1)
    at = tuple(leading_mm + index * apart for index in range(number))
    marks = tuple(
        (leading_mm + index * (apart + each), leading_mm + index * (apart + each) + each) for index in range(number)
    )
    return Pleats(number, each, apart, at, marks)
