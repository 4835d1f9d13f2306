"""Rod placement as the trade does it: common practice, plain numbers in and out, all in one unit."""

from __future__ import annotations


def rod_between(head: float, ceiling: float, part: float) -> float:
    """The height that stands at ``part`` (0 to 1) of the way from head to ceiling."""
    return head + part * (ceiling - head)


def split_gap(head: float, ceiling: float, above: float, below: float) -> float:
    """The height that shares a gap too small for both in the ratio of what each asks for.

    Parameters
    ----------
    head, ceiling : float
        Bottom and top of the gap.
    above, below : float
        What is asked for above the head and below the ceiling.
    """
    asked = above + below
    return head + (ceiling - head) * (above / asked if asked else 0.5)


def finished_length(top: float, floor_low: float, floor_high: float, clear: float) -> float:
    """Length of a level hem that clears the floor everywhere: taken at the shortest drop, where the floor is highest."""
    return top - max(floor_low, floor_high) - clear


def rod_to_clear(glass_left: float, glass_right: float, stack_left: float, stack_right: float) -> float:
    """Length of cloth's travel that leaves all glass clear: the glass and both stacks."""
    return (glass_right + stack_right) - (glass_left - stack_left)
