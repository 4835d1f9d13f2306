"""Rod placement as the trade does it: common practice, plain numbers in and out, all in one unit."""

from __future__ import annotations


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
