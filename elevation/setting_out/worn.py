"""What a treatment wears beside rod and cloth, set out: tie-backs, boards, pelmets and blinds, in mm of the wall."""

from __future__ import annotations

from math import sqrt

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.model import Ref
from elevation.setting_out.carried import HoldOut
from elevation.setting_out.standing import Point, Span


class TieOut(Struct, frozen=True, gc=False):
    """A panel gathered by its tie-back, as far as it is drawn just now.

    ``hook`` is the centre of the hook (or arm) on the wall. ``waist`` and ``foot`` are the (left, right) of the gathered
    cloth at the hook's height and at the hem. ``edge`` is the swept leading edge from the top of the cloth down to the
    waist; ``hem_mm`` the hem's height at the fixed edge, ``lift_mm`` how much higher the leading edge's corner hangs.
    ``is_loop``: of cord or cloth; ``is_there``: nothing new is drilled for it.
    ``floor_mm`` is the floor under the hook, as it was read after hanging where it was.
    """

    hook: Point
    waist: Span
    foot: Span
    edge: tuple[Point, ...]
    hem_mm: float
    lift_mm: float
    is_loop: bool
    is_there: bool
    floor_mm: float = 0.0


class BoardOut(Struct, frozen=True, gc=False):
    """A mounting board on the wall: its face, how thick it is, and what holds it."""

    left_mm: float
    bottom_mm: float
    right_mm: float
    top_mm: float
    thick_mm: float
    held: HoldOut | None = None


class PelmetOut(Struct, frozen=True, gc=False):
    """A pelmet or valance: its face, how far that stands out from the wall, and the centre line it is held over.

    ``irons_mm`` is where along the wall angle irons hold its shelf. ``tilt`` is how steep it stands, rise to the right over
    length, along with all its rods; heights are then those in its middle.
    """

    kind: str
    left_mm: float
    bottom_mm: float
    right_mm: float
    top_mm: float
    out_mm: float
    over_mm: float
    irons_mm: tuple[float, ...] = ()
    tilt: float = 0.0

    @property
    def length_mm(self) -> float:
        """How long its board is: along its slope."""
        return (self.right_mm - self.left_mm) * sqrt(1.0 + self.tilt * self.tilt)

    def up_at(self, x_mm: float) -> float:
        """How much higher it stands at a place along the wall than in its middle."""
        return self.tilt * (x_mm - (self.left_mm + self.right_mm) / 2)

    def level_at(self, x_mm: float) -> PelmetOut:
        """A level one as high as it is at a place along the wall."""
        up = self.up_at(x_mm)
        if not up:
            return self
        return replace(self, bottom_mm=self.bottom_mm + up, top_mm=self.top_mm + up, over_mm=self.over_mm + up, tilt=0.0)


class BlindOut(Struct, frozen=True, gc=False):
    """A blind behind: its box, how far that reaches out from the wall's face (negative: within the reveal), its cloth.

    ``hem_mm`` is the lower edge of the cloth as it is let down just now (the box's own where it is raised). ``opening`` is
    the ref of the opening that it hangs before; ``in_reveal`` whether inside it. ``back_mm`` is the box's own back.
    ``cord_x_mm`` is where cord or chain hangs, None where there is none.
    """

    opening: Ref
    in_reveal: bool
    left_mm: float
    bottom_mm: float
    right_mm: float
    top_mm: float
    back_mm: float
    out_mm: float
    hem_mm: float
    cord: str
    cord_x_mm: float | None
