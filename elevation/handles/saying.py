"""What stands at a handle: its figure and what that is, said the way it lies."""

from __future__ import annotations

from elevation.handles.model import Handle
from elevation.words import Message, Mm, msg

_OTHER_WAY: dict[str, Message] = {
    "above the head": msg("below the head"),
    "above the casing": msg("below the casing's upper edge"),
    "below the ceiling": msg("above the ceiling"),
    "above the floor": msg("below the level line"),
    "below the head": msg("above the head"),
    "above the sill": msg("below the sill"),
    "above that share of the opening": msg("below that share of the opening"),
    "beyond the opening, left": msg("inside the opening, left"),
    "beyond the opening, right": msg("inside the opening, right"),
    "beyond the casing, left": msg("inside the casing, left"),
    "beyond the casing, right": msg("inside the casing, right"),
    "inside the left jamb": msg("past the left jamb"),
    "inside the right jamb": msg("past the right jamb"),
}
"""What a figure below zero is, by what it is above zero: nobody measures less than nothing above a casing."""


def figure_said(handle: Handle, shown_mm: float) -> Message:
    """A handle's figure and what it is.

    Parameters
    ----------
    handle : Handle
    shown_mm : float
        As ``handle.shown_mm`` gives it, in mm.
    """
    other = _OTHER_WAY.get(handle.shown_as.template) if shown_mm < 0 else None
    if other is not None:
        return msg("{figure} {where}", figure=Mm(-shown_mm), where=other)
    return msg("{figure} {where}", figure=Mm(shown_mm), where=handle.shown_as)
