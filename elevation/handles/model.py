"""What can be dragged, nudged or typed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.model import Ref, Room
from elevation.setting_out.model import Point, Span
from elevation.units import Length
from elevation.words import Message, msg


class Handle(Struct, frozen=True):
    """One thing that moves along one axis.

    Attributes
    ----------
    axis : str
        ``rod-height``, ``rod-left``, ``rod-right``, ``bracket``, ``hem``, ``lead``, ``opening-left``, ``opening-right``,
        ``opening-head``, ``opening-sill``, ``obstacle-x``, ``obstacle-y``, ``ceiling``, ``floor``, ``wall-end``,
        ``stud``, ``projection``, ``corner-left``, ``corner-right``.
    ref : Ref
        What it belongs to; stations and studs add their index as a last id.
    at : Point
        Where it is drawn, wall mm.
    along : str
        ``x`` or ``y``.
    value_mm : float
        Wall coordinate along its axis just now.
    low_mm, high_mm : float
        Hard range of that coordinate.
    name : Message
        "Rod height, window 1".
    shown_mm : callable
        ``(value) -> mm`` that a person reads and types ("4 in above the casing"), from the wall coordinate.
    from_shown : callable
        The inverse: what was typed, as wall coordinate.
    shown_as : Message
        What the shown figure is ("above the casing").
    move : callable
        ``(room, value_mm, alone) -> Room``: a new room with the handle at ``value_mm`` (already quantised);
        ``alone`` moves one end only where both would move.
    """

    axis: str
    ref: Ref
    at: Point
    along: Literal["x", "y"]
    value_mm: float
    low_mm: float
    high_mm: float
    name: Message
    shown_as: Message
    shown_mm: Callable[[float], float]
    from_shown: Callable[[float], float]
    move: Callable[[Room, float, bool], Room]
    hold: Callable[[Room, Length, bool], Room]
    both_mm: Span | None = None
    low_why: Message = msg("as far as it goes")
    high_why: Message = msg("as far as it goes")
    sheet: Literal["elevation", "section", "plan"] = "elevation"
    """Where it is drawn; in a section ``x`` is how far out from the wall's face, in a plan ``y`` is."""

    @property
    def key(self) -> tuple[str, Ref]:
        """Axis and ref, which together name the handle whatever the room."""
        return (self.axis, self.ref)

    @property
    def subject(self) -> Ref:
        """What is selected with it: the thing itself, for a station or a stud its wall."""
        return self.ref[:1] if self.axis in ("ceiling", "floor", "stud") else self.ref

    def bound(self, alone: bool) -> Handle:
        """The handle with its range narrowed to where both ends can go, unless it moves ``alone``."""
        if alone or self.both_mm is None:
            return self
        low_mm, high_mm = self.both_mm
        other = msg("as far as the other end can go with it")
        return replace(
            self,
            low_mm=low_mm,
            high_mm=high_mm,
            low_why=self.low_why if low_mm <= self.low_mm else other,
            high_why=self.high_why if high_mm >= self.high_mm else other,
        )


class Stuck(Struct, frozen=True, gc=False):
    """Where a dragged handle came to rest: the value, why (None on a bare graduation), and a rule broken there."""

    value_mm: float
    reason: Message | None = None
    breaks: str | None = None
